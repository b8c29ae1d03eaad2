/* form_parts.h - what the files of the form share. */
#ifndef SCREEN_FORM_PARTS_H
#define SCREEN_FORM_PARTS_H

#include "screen/form_page.h"

enum form_action {
	FORM_ENTER = 1,
	FORM_DOWN,
	FORM_UP,
	FORM_FIRST,
	FORM_LAST,
	FORM_TYPE,
	FORM_ESC,
	FORM_HELP,
};

/* The column and text of the i-th field; of the one under the hand. */
const struct column *form_column(const struct form_page *p, size_t i);
char *form_text(struct form_page *p, size_t i);
const char *form_has(const struct form_page *p, size_t i);
struct line form_line(const struct form_page *p, char *text);

/* The field that names it: of a trap its label. */
size_t form_name_field(const struct form_page *p);
/* The first field that must be filled in; n: none is left. */
size_t form_first_lacking(const struct form_page *p);
/* Puts a record into it, the hand on its first field. */
void form_take_entry(struct form_page *p, const struct entry *entry);
/* What works on the field under the hand, for the key line; and while an offer
 * stands. */
struct key_rows form_line_keys(const struct form_page *p);
struct key_rows form_offer_keys(const struct form_page *p);
void form_say_offer(const struct form_page *p, struct message *m);
/* A key that bounces, or is held down, gives a second Enter before anybody can have
 * read an offer: true, and said, if it is one; it is taken for nothing. */
bool form_bounces(struct form_page *p, struct input in);

/* Whether its value is chosen from a list and not typed out. */
bool form_only(const struct form_page *p);

/* A key into the field under the hand; false: it is for the page. */
bool form_typing_key(struct form_page *p, struct input in);
/* Takes the choice that is picked in an open list; false, and says so: none matches. */
bool form_take(struct form_page *p);

#endif
