/* verdicts.h - every trap and block against every rule that holds for it. */
#ifndef ANSWERS_VERDICTS_H
#define ANSWERS_VERDICTS_H

#include "answers/log.h"
#include "season/judge.h"

enum { NO_TRAP = -1, NO_RULE = -1 };

/* One rule and one trap, or one rule and one block's traps of a pest. A trap for which
 * no rule of its own holds has one row with rule = NO_RULE; a block has none then. */
struct verdict_row {
	int64_t farm, block, pest;
	int trap; /* index in log.traps; NO_TRAP: the block's */
	int rule; /* index in log.rules; NO_RULE: no threshold set */
	enum fit fit;
	struct weekly weekly; /* of the trap; for a block zero */
	struct judgement judgement;
};

struct verdict_rows {
	struct verdict_row *items;
	size_t n, cap;
};

/* As at the end of `day` (usually log.today), farm by farm in driving order, each
 * block's rows where its first trap comes: block rows, then its traps' rows. farm and
 * pest 0 = all. Traps out of season are left out, and
 * those pulled more than limits.stale_nights ago. */
void verdicts_of(const struct log *l, int64_t farm, int64_t pest, int32_t day,
	struct verdict_rows *out);

/* The same of one block, all pests; and of the blocks and pests alone of which a trap
 * was cleared on the day (farm, block: 0 = all). */
void verdicts_of_block(
	const struct log *l, int64_t block, int32_t day, struct verdict_rows *out);
void verdicts_cleared_on(const struct log *l, int64_t farm, int64_t block, int32_t day,
	struct verdict_rows *out);

/* The worst row of one trap (trap measures only), or of one block and pest with its
 * traps; NULL when there is none. */
const struct verdict_row *verdicts_worst_of_trap(
	const struct verdict_rows *v, int trap);
const struct verdict_row *verdicts_worst_of_block(
	const struct verdict_rows *v, int64_t block, int64_t pest);

/* The worst row of the block's own rules (mean or total) for a pest; NULL when it has
 * none. A trap without a rule of its own is judged with its block then. */
const struct verdict_row *verdicts_of_block_itself(
	const struct verdict_rows *v, int64_t block, int64_t pest);

/* True if row i is the one that counts for its trap, or for its block's mean: the worst
 * of several. */
bool verdicts_counts(const struct verdict_rows *v, size_t i);

/* True if row i is a trap's and no threshold holds for it, nor for its block. */
bool verdicts_has_none(const struct verdict_rows *v, size_t i);

/* True if an under or near of the block is questionable: then the block's is too. */
bool verdicts_doubt_block(const struct verdict_rows *v, int64_t block, int64_t pest);

/* Traps and block means, each by the row that counts for it. near and under are those
 * that are not questionable; none: traps without a threshold. */
struct verdict_sums {
	int over, unknown, near, near_doubted, under, under_doubted, none;
};
struct verdict_sums verdicts_sum(const struct verdict_rows *v);

/* Where a trap stands, with the lure that made its latest catch up to `day`. */
struct spot verdicts_spot(const struct log *l, size_t trap, int32_t day);

/* What is known of biofix, flight, degree-days and treatments for a block and pest on a
 * day up to the log's; of an earlier one as far as today's season tells. A treatment of
 * the border alone counts for traps there (PLACE_BORDER), not for the block, which
 * log_moment is of. */
struct moment log_moment_at(const struct log *l, int64_t block, int64_t pest,
	enum place place, int32_t day);
struct moment log_moment(const struct log *l, int64_t block, int64_t pest, int32_t day);

/* Whether the block is disrupted for the pest on that day: as its dispensers say, where
 * the book has any of that pest or of all; else as the block itself says. */
enum condition log_condition(
	const struct log *l, int64_t block, int64_t pest, int32_t day);

#endif
