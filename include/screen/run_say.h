/* run_say.h - the sentences round the list of the run page. */
#ifndef SCREEN_RUN_SAY_H
#define SCREEN_RUN_SAY_H

#include "screen/run_page.h"

enum { RUN_VISIT = SAY_SHORT + 24 };

/* What a trap has in a run on `day`: "7", "" while open, "7 Fri" from another day. */
void run_say_visit(const struct run_trap *t, int32_t day, char out[static RUN_VISIT]);

/* What to know of an open trap: that people may not go there, else what to do. */
const char *run_say_open(const struct run_trap *t);

/* What is typed is a new visit beside the one of another day: which that is, and how to
 * correct it. Goes before what *m says already, on a narrow page instead of it. */
void run_say_new(const struct run_page *p, const struct run_trap *t, struct message *m);

/* The hand is still at a trap that was counted: adds to *m what is due there and was
 * not changed, and by which key it is. */
void run_say_unchanged(const struct run_trap *t, struct message *m);

/* The lines above and below the list, for a page of `cols` columns. */
void run_say_under(const struct run_page *p, int cols, char *out, size_t size);
void run_say_status(const struct run_page *p, int cols, char *out, size_t size);
/* The message line: what is typed there; else what just happened and what the picked
 * row has no room for (is_cut). Returns the cursor's column when it is there. */
int run_say_message(const struct run_page *p, int cols, bool is_cut, struct message *m);

/* The keys of the key line: what ends a line that is typed, or those of the page. */
struct key_rows run_line_keys(const struct run_page *p);

#endif
