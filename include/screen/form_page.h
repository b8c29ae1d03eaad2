/* form_page.h - one record, a line a field: the same form for every family. */
#ifndef SCREEN_FORM_PAGE_H
#define SCREEN_FORM_PAGE_H

#include "screen/chooser.h"
#include "screen/page.h"

enum { FORM_BOUNCE_MS = 300 }; /* a key that was meant once is not read as two */

struct form_page {
	const struct entry_family *family; /* borrowed */
	struct entry entry, was;           /* as typed; as it was shown first */
	int fields[ENTRY_FIELDS_MAX];      /* columns that stand on the form */
	size_t n, at;                      /* how many; where the hand is */
	size_t cursor;          /* bytes of that field's text in front of it */
	bool touched;           /* something was typed since the hand came there */
	bool turned;            /* its text came from turning through the choices */
	struct chooser chooser; /* its choices, which the loop gives */
	bool asked;             /* about dropping: Esc drops it, Enter saves it */
	bool elsewhere;         /* changed by somebody else: Enter puts this over it */
	bool doubted;           /* something speaks against it: Enter puts it in */
	int how;                /* ENTRY_OVER, ENTRY_SURE that Enter said so far */
	const char *caution;    /* that goes with the family; borrowed; NULL */
	bool typed;             /* something was typed in it since it was shown */
	bool offers;            /* a new one after one that was saved: Enter saves it */
	int64_t now_ms;     /* monotonic; the loop sets it before a key or an offer */
	int64_t offered_ms; /* since when the offer stands, or last heard an Enter */
	bool can_block;     /* then * leads to another block first */
	size_t left;        /* the field the hand came from ... */
	bool by_enter;      /* ... by Enter, which only a good one lets on */
	char live[2][SAY_LINE]; /* what it would do; set by the loop; "" */
	struct message message;
	size_t top;
};

/* Up, Down, Tab and Enter move; Enter on the last field, or after Esc anywhere, wants
 * the record put into the book (WANT_PUT). What is typed stays until it is saved or
 * dropped. WANT_FORM_FIELD after each move: the loop looks at the field that was left,
 * calls form_page_refuse if it is not good, and form_page_choose. */
struct key_rows form_page_keys(void);
const char *const *form_page_notes(void);
struct wish form_page_key(struct form_page *p, struct input in);
void form_page_draw(struct form_page *p, struct canvas *c);

/* Shows a record, the hand on its first field; of a new one on the first that must be
 * filled in, else on the one that names it. */
void form_page_show(struct form_page *p, const struct entry_family *family,
	const struct entry *entry);
/* A new record of the same family to go on with: Enter puts it in as it is, if nothing
 * lacks in it, but not one that comes within FORM_BOUNCE_MS of the one before.
 * `saved`: what was saved before it. */
void form_page_offer(struct form_page *p, const struct entry *entry, const char *saved,
	bool can_block);
/* True if something is typed that is not in the book; of a new record if anything was
 * typed at all: what equals a guess was still meant. */
bool form_page_changed(const struct form_page *p);

/* Columns of the field under the hand and of the one that it left; -1: none. */
int form_page_field(const struct form_page *p);
int form_page_left(const struct form_page *p);
/* The choices for the field under the hand, borrowed until the next call. */
void form_page_choose(struct form_page *p, const struct entry_choices *choices);
/* The field that was left is not good: says so; after Enter the hand goes back. */
void form_page_refuse(struct form_page *p, const struct entry_fault *fault);
/* A question before it is put: Enter wants it put again, Esc drops what is typed. */
void form_page_ask(struct form_page *p, const char *question);
/* The record was not put into the book: says why, the hand is on the field. */
void form_page_not_saved(struct form_page *p, const struct entry_fault *fault);

#endif
