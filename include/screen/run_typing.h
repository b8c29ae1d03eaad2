/* run_typing.h - what is typed in the message line of the run page: a note, numbers
 * beside the count, initials, a date. */
#ifndef SCREEN_RUN_TYPING_H
#define SCREEN_RUN_TYPING_H

#include "screen/run_page.h"

/* Starts with what is there already: a note is added to, the rest is replaced by the
 * first character or edited with Backspace. t: as entry_trap gives it; may be NULL for
 * a date. */
void typing_start(struct run_page *p, enum typing typing, const struct run_trap *t);

/* Enter takes the line over, Esc drops it; a date gives WANT_RUN_DAY, one more than 60
 * days back when Enter is pressed once more. */
struct wish typing_key(struct run_page *p, const struct run_trap *t, struct input in);

/* Prompt of the line, translated: "note (Enter ends it): ". */
const char *typing_prompt(enum typing typing);

/* Reads a date as scouts write it: YYYY-MM-DD, or MM-DD or the day alone, which are
 * the latest such day up to `today`. False, with a sentence, for what is no date or
 * lies ahead. */
bool typing_date(const char *text, int32_t today, int32_t *day, struct message *m);
/* The shortest of these texts that is read as `day`: "22", "05-22", "2025-05-22". */
void typing_short_date(int32_t day, int32_t today, char out[static DAY_ISO_SIZE]);

#endif
