/* entry_traps.h - traps moved on the run, hung, pulled and replaced. */
#ifndef ANSWERS_ENTRY_TRAPS_H
#define ANSWERS_ENTRY_TRAPS_H

#include "answers/entry.h"

/* Moves a trap one turn up (-1) or down (1) on its farm's run; true and nothing done at
 * the end of it. */
bool entry_move(
	struct book *b, int64_t trap, int by, const struct log *l, struct err *e);

/* Hangs, pulls or replaces a trap on a day: a visit, and with another pest a new trap
 * in its place, which gets the next free label ("7b") and the same turn and position;
 * the old one is pulled. What was counted on the day of a pulling is its last count. No
 * series is joined that isn't one: a visit on or after the day is refused, but a count
 * or a skipped one on the day of a pulling. */
bool entry_hang(
	struct book *b, int64_t trap, int32_t day, const struct log *l, struct err *e);
bool entry_pull(
	struct book *b, int64_t trap, int32_t day, const struct log *l, struct err *e);
bool entry_replace(struct book *b, int64_t trap, int64_t pest, int32_t day,
	const struct log *l, struct err *e);

/* How the block of a trap stands at log_now: "no entry till Tue 07:00", "entry not
 * known"; "" when it is free. Whoever hangs, pulls or replaces one is told. */
void entry_trap_bar(const struct log *l, int64_t trap, char *out, size_t size);

#endif
