/* session_form.h - what the files of the form share. */
#ifndef COMMAND_SESSION_FORM_H
#define COMMAND_SESSION_FORM_H

#include "session_book.h"

/* Index of the first column of a family that is chosen from `pick`; -1: none. */
int session_field_of(const struct entry_family *f, enum pick_from pick);

/* Puts a record into the form, with the choices of the field under the hand. */
void session_show_form(struct session *s, const struct entry *r);
/* The same of the record `id`, 0: a new one, with the log and itself read anew. */
bool session_open_form(
	struct session *s, const struct entry_ask *ask, int64_t id, struct err *e);
/* The choices anew, after the hand moved or the book changed. */
void session_offer_choices(struct session *s);

#endif
