#include "traps_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "exchange/series.h"

#include <math.h>
#include <stdlib.h>

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
	series_free(all, n);
	return ok;
}

/* First hanging and last pulling of each trap. */
struct hangings {
	const struct traps *traps;
	size_t at;
	int32_t *hung, *pulled; /* by trap; DAY_NONE */
};

/* Visits of one trap come together, traps in the order of the list. */
static bool hanging(void *arg, const struct visit *v, const struct visit_words *w)
{
	struct hangings *h = arg;
	size_t n = h->traps->n, i = 0;

	(void)w;
	while (i < n && h->traps->items[(h->at + i) % n].id != v->trap)
		i++;
	if (i == n)
		return true;
	h->at = (h->at + i) % n;
	if (v->outcome == OUTCOME_HUNG && h->hung[h->at] == DAY_NONE)
		h->hung[h->at] = v->day;
	h->pulled[h->at] = v->outcome == OUTCOME_PULLED ? v->day : DAY_NONE;
	return true;
}

static bool read_hangings(struct book *b, struct hangings *h, struct err *e)
{
	size_t n = h->traps->n;

	h->hung = mem_new(n, sizeof *h->hung);
	h->pulled = mem_new(n, sizeof *h->pulled);
	for (size_t i = 0; i < n; i++)
		h->hung[i] = h->pulled[i] = DAY_NONE;
	return book_each_visit(b, 0, day_from_ymd(DAY_YEAR_MIN, 1, 1),
		day_from_ymd(DAY_YEAR_MAX, 12, 31), hanging, h, e);
}

static struct trap_row row_of(
	const struct known *k, const struct trap *trap, int32_t hung, int32_t pulled)
{
	const struct block *b = known_block(k, trap->block);
	struct trap_row r = {
		.place = (int)trap->place,
		.condition = b ? (int)b->condition : 0,
		.area_x100 = b ? b->area_x100 : -1,
		.lat = trap->has_position ? trap->lat : (double)NAN,
		.lon = trap->has_position ? trap->lon : (double)NAN,
		.order = trap->order,
		.hung = hung,
		.pulled = pulled,
	};

	text_copy(r.farm, sizeof r.farm, known_farm(k, trap->farm));
	text_copy(r.block, sizeof r.block, b ? b->name : "");
	text_copy(r.trap, sizeof r.trap, trap->label);
	text_copy(r.pest, sizeof r.pest, known_pest(k, trap->pest));
	text_copy(r.lure, sizeof r.lure, known_lure(k, trap->lure));
	text_copy(r.card, sizeof r.card, known_card(k, trap->card));
	text_copy(r.crop, sizeof r.crop, b ? b->crop : "");
	text_copy(r.variety, sizeof r.variety, b ? b->variety : "");
	return r;
}

bool traps_give(struct giving *g, struct err *e)
{
	struct known k = { 0 };
	struct hangings h = { .traps = &k.traps };
	bool ok = known_read(&k, g->book, e) && read_hangings(g->book, &h, e);

	for (size_t i = 0; ok && i < k.traps.n; i++) {
		struct trap_row r =
			row_of(&k, &k.traps.items[i], h.hung[i], h.pulled[i]);
		ok = giving_row(g, &r);
	}
	free(h.hung);
	free(h.pulled);
	known_free(&k);
	return ok;
}
