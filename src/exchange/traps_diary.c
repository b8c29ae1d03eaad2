#include "traps_parts.h"

#include "base/mem.h"
#include "exchange/series.h"
#include "visits_parts.h"

/* A visit of that outcome, unless the diary has one on that day. */
static bool add(struct taking *t, const struct visit *v, int32_t *added, struct err *e)
{
	static const struct visit_words no_words;
	struct visit there;
	struct err why = { 0 };
	bool same;

	if (book_visit(t->book, v->trap, v->day, &there, NULL, &why))
		return true;
	if (why.kind != ERR_NOT_FOUND)
		return err_set(e, why.kind, "%s", why.text);
	*added = v->day;
	return book_add_visit(t->book, v, &no_words, &same, e);
}

bool traps_diary(
	struct taking *t, const struct trap_row *r, struct trap_in *in, struct err *e)
{
	struct visit v = {
		.trap = in->trap.id,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE,
	};

	if (r->hung != DAY_NONE) {
		v.day = r->hung;
		v.outcome = OUTCOME_HUNG;
		v.new_card = in->trap.card;
		v.new_lure = in->trap.lure;
		if (!add(t, &v, &in->hung, e))
			return false;
	}
	if (r->pulled != DAY_NONE) {
		v.day = r->pulled;
		v.outcome = OUTCOME_PULLED;
		v.new_card = v.new_lure = 0;
		return add(t, &v, &in->pulled, e);
	}
	return true;
}

/* The series of the traps whose rows made visits. */
static size_t begin_series(const struct trap_state *s, struct series *all)
{
	size_t n = 0;

	for (size_t i = 0; i < s->n_traps; i++) {
		const struct trap_in *in = &s->trap[i];
		if (in->hung == DAY_NONE && in->pulled == DAY_NONE)
			continue;
		all[n].trap = in->trap.id;
		all[n].label = in->trap.label;
		all[n++].farm = names_text(&s->farms, in->trap.farm);
	}
	return n;
}

static void mark(struct series *s, int32_t day, int64_t line)
{
	if (day == DAY_NONE)
		return;
	struct series_day *d = series_at(s, day);
	d->line = (uint32_t)(line < SERIES_LINE_MAX ? line : SERIES_LINE_MAX) &
		  SERIES_LINE_MAX;
	d->in_book = 0;
}

/* Who hung or pulled one was in its block. The traps of the file are in the book
 * now. */
static bool check_barred(
	struct taking *t, const struct series *all, size_t n, struct err *e)
{
	struct known k = { 0 };
	bool ok = n == 0 ||
		  (known_read(&k, t->book, e) && visits_barred(t, &k, all, n, e));

	known_free(&k);
	return ok;
}

bool traps_diary_finish(struct taking *t, struct err *e)
{
	const struct trap_state *s = t->state;
	struct series *all = mem_new(s->n_traps, sizeof *all);
	size_t n = t->out->n_problems ? 0 : begin_series(s, all), at = 0;
	bool ok = series_read(t->book, all, n, e);

	for (size_t i = 0; ok && at < n; i++)
		if (s->trap[i].trap.id == all[at].trap) {
			mark(&all[at], s->trap[i].hung, s->trap[i].line);
			mark(&all[at++], s->trap[i].pulled, s->trap[i].line);
		}
	if (ok)
		series_check(t, all, n);
	ok = ok && check_barred(t, all, n, e);
	series_free(all, n);
	return ok;
}

bool traps_give(struct giving *g, struct err *e)
{
	struct known k = { 0 };
	bool ok = known_read(&k, g->book, e) && known_read_hangings(&k, g->book, 0, e);

	for (size_t i = 0; ok && i < k.traps.n; i++) {
		struct trap_row r = trap_row_of(&k, &k.traps.items[i]);
		ok = giving_row(g, &r);
	}
	known_free(&k);
	return ok;
}
