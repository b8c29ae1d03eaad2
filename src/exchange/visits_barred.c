/* Visits on days on which nobody might enter the block. A visit has no hour: of a day
 * that was free for a part of it nothing can be told. */
#include "visits_parts.h"

#include "answers/entry_acts.h"
#include "answers/say.h"
#include "base/words.h"
#include "book/acts.h"
#include "season/waiting.h"

#include <stdlib.h>

struct barring {
	struct taking *t;
	const struct known *known;
	struct treatments all;
	const struct zone *zone;
};

static void warn_barred(const struct barring *b, const struct trap *trap, int32_t day,
	struct instant until)
{
	const struct block *in = known_block(b->known, trap->block);
	char iso[DAY_ISO_SIZE], end[INSTANT_SIZE];

	day_iso(day, iso);
	instant_write(until, end);
	taking_warn(b->t,
		_("trap %s of %s was visited on %s; nobody was to enter %s before %s"),
		trap->label, known_farm(b->known, trap->farm), iso, in ? in->name : "",
		end);
}

/* The block's treatments. Where it was not entered when one began, it surely had when
 * it ended: who was there in the morning of that day may have been before it. */
static struct treatments begun_surely(const struct barring *b, int64_t block)
{
	struct treatments of = treatments_of_block(&b->all, block);

	for (size_t i = 0; i < of.n; i++) {
		struct treatment *t = &of.items[i];
		if (t->from.minute != INSTANT_NONE)
			continue;
		t->from = t->until;
		if (t->until.minute == INSTANT_NONE)
			t->from = zone_local(b->zone, t->day, MINUTES_A_DAY);
	}
	return of;
}

static bool is_in_file(const struct series *s)
{
	for (size_t i = 0; i < s->n; i++)
		if (s->items[i].line != 0)
			return true;
	return false;
}

static void check_series(const struct barring *b, const struct series *s)
{
	const struct trap *trap = is_in_file(s) ? known_trap(b->known, s->trap) : NULL;
	struct treatments of = begun_surely(b, trap ? trap->block : 0);

	for (size_t i = 0; of.n > 0 && i < s->n; i++) {
		const struct series_day *d = &s->items[i];
		if (d->line == 0 || d->outcome == OUTCOME_SKIPPED)
			continue;
		struct instant from = zone_local(b->zone, d->day, 0);
		struct waiting w = waiting_entry(of.items, of.n, b->zone, from);
		if (w.state == WAITING_BARRED && instant_day(w.until) > d->day)
			warn_barred(b, trap, d->day, w.until);
	}
	free(of.items);
}

bool visits_barred(struct taking *t, const struct known *k, const struct series *series,
	size_t n, struct err *e)
{
	static const struct zone utc = { .n = 0 };
	struct barring b = { .t = t, .known = k };
	int64_t before = t->out->n_warnings;

	b.zone = t->from->zone ? t->from->zone : &utc;
	if (!book_treatments(t->book, 0, day_from_ymd(DAY_YEAR_MIN, 1, 1),
		    day_from_ymd(DAY_YEAR_MAX, 12, 31), &b.all, e))
		return false;
	for (size_t i = 0; b.all.n > 0 && i < n; i++)
		check_series(&b, &series[i]);
	free(b.all.items);
	if (t->out->n_warnings > before)
		sentences_add(&t->out->notes, say_caution_acts());
	return true;
}
