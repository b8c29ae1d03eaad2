/* entry_hang_bar.c - traps hung and pulled in a block that nobody may enter. */
#include "answers/answered.h"
#include "answers/entry_bar.h"
#include "answers/entry_traps.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "entry_hang.h"

#include <stdio.h>
#include <stdlib.h>

/* As the book stands now, another program's treatment included. */
static bool read_now(
	struct log *now, const struct log *l, struct book *b, struct err *e)
{
	*now = *l;
	now->treatments = (struct treatments){ 0 };
	return treatments_that_bar(b, 0, day_from_ymd(DAY_YEAR_MIN, 1, 1),
		day_from_ymd(DAY_YEAR_MAX, 12, 31), &now->treatments, e);
}

/* Of an earlier day no hour is known: it is told when it was barred from its first
 * minute to its last, by what was applied before it. */
static void stand_on(struct log *now, int32_t day)
{
	size_t kept = 0;

	if (day == now->today)
		return;
	for (size_t i = 0; i < now->treatments.n; i++)
		if (now->treatments.items[i].day < day)
			now->treatments.items[kept++] = now->treatments.items[i];
	now->treatments.n = kept;
	now->today = day;
	now->now = zone_local(&now->zone, day, 0);
}

static bool is_told(const struct log *now, const struct bar *bar, bool is_today)
{
	int64_t end = zone_local(&now->zone, now->today, MINUTES_A_DAY).minute;

	return is_today || (bar->waiting.state == WAITING_BARRED &&
				   bar->waiting.until.minute >= end);
}

bool hang_doubt(struct book *b, const struct log *l, const struct trap *t, int32_t day,
	struct buf *out, struct err *e)
{
	struct bars bars = { 0 };
	char iso[DAY_ISO_SIZE];
	struct log now;

	if (!read_now(&now, l, b, e))
		return false;
	stand_on(&now, day);
	bars_of(&now, t->farm, &bars);
	const struct bar *bar = bars_find(&bars, t->block);
	day_iso(day, iso);
	if (bar && is_told(&now, bar, day == l->today))
		buf_addf(out, _("%s on %s: %s"), bar->block_name, iso, bar->text);
	bars_free(&bars);
	free(now.treatments.items);
	return true;
}

void entry_trap_bar(const struct log *l, int64_t trap, char *out, size_t size)
{
	size_t at = log_trap(l, trap);
	struct bars bars = { 0 };

	text_copy(out, size, "");
	if (at == SIZE_MAX)
		return;
	bars_of(l, l->traps.items[at].farm, &bars);
	const struct bar *bar = bars_find(&bars, l->traps.items[at].block);
	if (bar)
		text_copy(out, size, bar->brief);
	bars_free(&bars);
}
