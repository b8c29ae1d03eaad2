/* diary_parts.h - what the files of the diary page share. */
#ifndef SCREEN_DIARY_PARTS_H
#define SCREEN_DIARY_PARTS_H

#include "screen/diary_page.h"

/* Finds which visits are shown, if that is not known. */
void diary_find(struct diary_page *p);
/* A key of the list that looks for something or moves among what is found. */
bool diary_narrows_or_moves(struct diary_page *p, int action, struct input in);

/* Rows that are shown, the new visit among them. */
size_t diary_count(const struct diary_page *p);
/* Where the picked one stands among them. */
size_t diary_place(const struct diary_page *p);
/* The visit in row i of those; NULL: the new one. */
const struct diary_row *diary_row_at(const struct diary_page *p, size_t i);

/* Opens the visit of p->day; is_new: the book has none. */
void diary_open(struct diary_page *p, bool is_new);
/* The open visit anew beside what the book has now; what is typed stays. */
void diary_renew(struct diary_page *p);
void diary_close(struct diary_page *p);
/* A key for the open visit. */
struct wish diary_visit_key(struct diary_page *p, struct input in);

/* The kinds that the visit of p->day put in, to be picked anew: its lure, then its
 * card; one of which it has none is passed over. */
void diary_kind_open(struct diary_page *p);
struct wish diary_kind_key(struct diary_page *p, struct input in);
/* Beside a diary that was read again: shut, and said, if the visit is another now. */
void diary_kind_renew(struct diary_page *p);
/* "The new lure of Mon 4 May was: ", and what narrows the list. */
void diary_kind_prompt(const struct diary_page *p, char out[static SAY_LINE]);

/* The day of a new visit. */
void diary_ask_day(struct diary_page *p);
void diary_day_key(struct diary_page *p, struct input in);

/* What works now, for the key line. */
struct key_rows diary_line_keys(struct diary_page *p);

#endif
