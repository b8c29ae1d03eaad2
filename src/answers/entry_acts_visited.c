/* entry_acts_visited.c - visits on days on which a treatment that is entered after them
 * barred the block. */
#include "answers/entry_visited.h"

#include "base/buf.h"
#include "base/day.h"
#include "base/words.h"
#include "book/diary.h"
#include "season/waiting.h"

#include <stdlib.h>

/* Until when it bars, asked on the first minute of the day after it; INSTANT_NONE. */
static struct instant bars_until(const struct treatment *t, const struct zone *z)
{
	struct waiting w = waiting_entry(t, 1, z, zone_local(z, t->day, MINUTES_A_DAY));

	return w.until;
}

/* Days behind `after` and before that of `until`, which was free for a part of it. */
struct looking {
	struct book *book;
	const struct known *known;
	const struct said *out;
	int32_t after;
	struct instant until;
};

static void say_visit(
	const struct looking *k, const struct trap *trap, const struct visit *v)
{
	const struct block *in = known_block(k->known, trap->block);
	char iso[DAY_ISO_SIZE], end[INSTANT_SIZE];
	struct buf text = { 0 };

	day_iso(v->day, iso);
	instant_write(k->until, end);
	buf_addf(&text,
		_("trap %s of %s was visited on %s; nobody was to enter %s before %s"),
		trap->label, known_farm(k->known, trap->farm), iso, in ? in->name : "",
		end);
	k->out->say(k->out->arg, text.text);
	buf_free(&text);
}

static bool say_visits(const struct looking *k, const struct trap *trap, struct err *e)
{
	struct visits all = { 0 };
	bool ok = book_trap_visits(k->book, trap->id, &all, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		const struct visit *v = &all.items[i];
		if (v->day > k->after && v->day < instant_day(k->until) &&
			v->outcome != OUTCOME_SKIPPED)
			say_visit(k, trap, v);
	}
	free(all.items);
	return ok;
}

/* Trap by trap: a farm may have thousands of visits in a week, and a file thousands of
 * treatments. */
bool treatment_visited(struct book *b, const struct known *k, const struct treatment *t,
	const struct zone *z, const struct said *out, struct err *e)
{
	const struct looking at = { b, k, out, t->day, bars_until(t, z) };
	bool ok = true;

	if (at.until.minute == INSTANT_NONE || instant_day(at.until) <= t->day + 1)
		return true;
	for (size_t i = 0; ok && i < k->traps.n; i++)
		ok = k->traps.items[i].block != t->block ||
		     say_visits(&at, &k->traps.items[i], e);
	return ok;
}
