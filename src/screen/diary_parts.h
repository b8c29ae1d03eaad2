/* diary_parts.h - what the files of the diary page share. */
#ifndef SCREEN_DIARY_PARTS_H
#define SCREEN_DIARY_PARTS_H

#include "screen/diary_page.h"

/* Rows of the list, the new visit among them. */
size_t diary_count(const struct diary_page *p);
/* The visit in row i; NULL: the new one. */
const struct diary_row *diary_row_at(const struct diary_page *p, size_t i);

/* Opens the visit of p->day; is_new: the book has none. */
void diary_open(struct diary_page *p, bool is_new);
/* The open visit anew beside what the book has now; what is typed stays. */
void diary_renew(struct diary_page *p);
void diary_close(struct diary_page *p);
/* A key for the open visit. */
struct wish diary_visit_key(struct diary_page *p, struct input in);

/* The day of a new visit. */
void diary_ask_day(struct diary_page *p);
void diary_day_key(struct diary_page *p, struct input in);

/* The keys of an open visit, for the key line. */
struct key_rows diary_visit_keys(void);

#endif
