#include "visits_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

struct visit_state {
	struct names farms; /* id */
	struct names traps; /* in a farm: index in traps and series */
	struct names cards; /* id */
	struct known known;
	struct series *series; /* of each trap */
	/* The latest trap that was looked up: most files go trap by trap. */
	char farm_name[NAME_BYTES], trap_name[NAME_BYTES];
	bool has_latest;
	size_t latest;
	struct batch batch;
};

static bool read_traps(struct taking *t, struct visit_state *s, struct err *e)
{
	const struct traps *traps = &s->known.traps;

	if (!known_read(&s->known, t->book, e))
		return false;
	s->series = mem_new(traps->n, sizeof *s->series);
	for (size_t i = 0; i < traps->n; i++) {
		const struct trap *p = &traps->items[i];
		names_add(&s->traps, p->farm, p->label, (int64_t)i);
		s->series[i].trap = p->id;
		s->series[i].label = p->label;
		s->series[i].farm = known_farm(&s->known, p->farm);
	}
	return series_read(t->book, s->series, traps->n, e);
}

bool visits_begin(struct taking *t, struct err *e)
{
	struct visit_state *s = t->state = mem_new(1, sizeof *s);

	return names_of_farms(t->book, &s->farms, e) &&
	       names_of_cards(t->book, &s->cards, e) && read_traps(t, s, e);
}

void visits_end(struct taking *t)
{
	struct visit_state *s = t->state;

	series_free(s->series, s->series ? s->known.traps.n : 0);
	known_free(&s->known);
	batch_free(&s->batch);
	names_free(&s->farms);
	names_free(&s->traps);
	names_free(&s->cards);
	free(s);
}

static bool no_trap(struct taking *t, const struct visit_row *r, int64_t farm)
{
	const struct visit_state *s = t->state;
	struct buf there = { 0 };

	names_list(&s->traps, farm, 200, &there);
	taking_bad(t, "trap", _("is no trap of %s, which has: %s"), r->farm,
		there.n ? there.text : _("none"));
	buf_free(&there);
	return false;
}

/* Finds the row's trap as s->latest; false when the book lacks it, which is noted. */
static bool find_trap(struct taking *t, const struct visit_row *r)
{
	struct visit_state *s = t->state;
	int64_t farm;

	if (s->has_latest && !strcmp(s->trap_name, r->trap) &&
		!strcmp(s->farm_name, r->farm))
		return true;
	if (!taking_find(t, &s->farms, "farm", r->farm, &farm))
		return false;
	int64_t i = names_find(&s->traps, farm, r->trap);
	if (i < 0)
		return no_trap(t, r, farm);
	memcpy(s->farm_name, r->farm, sizeof s->farm_name);
	memcpy(s->trap_name, r->trap, sizeof s->trap_name);
	s->latest = (size_t)i;
	return s->has_latest = true;
}

/* Remembers the row; the line that had its date before, or 0. */
static uint32_t see(struct series *p, const struct visit *v, int64_t line)
{
	struct series_day *d = series_at(p, v->day);

	if (d->line)
		return d->line;
	d->line = (uint32_t)(line < SERIES_LINE_MAX ? line : SERIES_LINE_MAX) &
		  SERIES_LINE_MAX;
	if (!d->in_book)
		d->outcome = (uint32_t)v->outcome & 7;
	return 0;
}

static void check_day(struct taking *t, const struct visit *v)
{
	struct visit_state *s = t->state;
	char today[DAY_ISO_SIZE];

	if (v->day > t->from->today) {
		day_iso(t->from->today, today);
		taking_bad(t, "date", _("lies after today, %s"), today);
		return;
	}
	uint32_t before = see(&s->series[s->latest], v, t->csv.line);
	if (before)
		taking_bad(t, "date",
			_("is in the file twice for this trap, in line %lu too; a trap "
			  "has one visit a day"),
			(unsigned long)before);
}

static void check_count(
	struct taking *t, const struct visit_row *r, enum outcome outcome)
{
	if (outcome_facts[outcome].count == COUNT_MUST && r->count == COUNT_NONE)
		taking_bad(t, "count",
			_("an empty count is not 0; write 0 if there was no moth, or "
			  "an outcome without a count, such as skipped"));
	if (outcome_facts[outcome].count == COUNT_NEVER && r->count != COUNT_NONE)
		taking_bad(t, "count",
			_("does not go with the outcome %s, which has no count; leave "
			  "it empty, or write counted"),
			outcome_word(outcome));
	if (outcome_facts[outcome].count == COUNT_NEVER && r->females != COUNT_NONE)
		taking_bad(t, "females", _("goes with a count only; leave it empty"));
	if (outcome_facts[outcome].count == COUNT_NEVER && r->others != COUNT_NONE)
		taking_bad(t, "others", _("goes with a count only; leave it empty"));
	if (r->count != COUNT_NONE && r->females > r->count)
		taking_bad(t, "females",
			_("is more than the count; females are a part of it"));
}

static void check_reason(
	struct taking *t, const struct visit_row *r, enum outcome outcome)
{
	struct buf fit = { 0 };

	if (reason_fits((enum reason)r->reason, outcome))
		return;
	for (int i = 1; i < REASON_COUNT; i++)
		if (reason_fits((enum reason)i, outcome))
			buf_addf(&fit, "%s%s", fit.n ? ", " : "",
				reason_word((enum reason)i));
	if (fit.n)
		taking_bad(t, "reason",
			_("is no reason of the outcome %s; there are: %s"),
			outcome_word(outcome), fit.text);
	else
		taking_bad(t, "reason",
			_("does not go with the outcome %s; leave it empty"),
			outcome_word(outcome));
	buf_free(&fit);
}

static void check_lure(struct taking *t, const struct trap *p, int64_t lure)
{
	const struct visit_state *s = t->state;

	for (size_t i = 0; lure && i < s->known.lures.n; i++) {
		const struct lure_kind *k = &s->known.lures.items[i];
		if (k->id == lure && k->pest && k->pest != p->pest)
			taking_bad(t, "lure",
				_("draws another pest than this trap's; a trap keeps "
				  "the scent, so it has one pest for life"));
	}
}

/* The kinds that were put in: named, kept, or the trap's usual ones when hung. */
static void put_in(struct taking *t, const struct visit_row *r, const struct trap *p,
	struct visit *v)
{
	struct visit_state *s = t->state;
	bool hung = v->outcome == OUTCOME_HUNG;

	if (!*r->card && hung)
		v->new_card = p->card;
	else if (strcmp(r->card, VISIT_KEPT) != 0)
		taking_find(t, &s->cards, "card", r->card, &v->new_card);
	if (!*r->lure && hung)
		v->new_lure = p->lure;
	else if (strcmp(r->lure, VISIT_KEPT) != 0)
		row_find_lure(
			&t->hear, &s->known.lures, p->pest, r->lure, &v->new_lure);
	check_lure(t, p, v->new_lure);
}

bool visits_take(struct taking *t, const void *row, struct err *e)
{
	const struct visit_row *r = row;
	struct visit_state *s = t->state;
	int64_t problems = t->out->n_problems;
	struct visit v = {
		.day = r->day,
		.outcome = r->outcome < 0 ? OUTCOME_COUNTED : (enum outcome)r->outcome,
		.reason = (enum reason)r->reason,
		.count = r->count,
		.females = r->females,
		.others = r->others,
		.stirred = r->stirred != 0,
	};

	if (!find_trap(t, r))
		return true;
	const struct trap *p = &s->known.traps.items[s->latest];
	v.trap = p->id;
	check_day(t, &v);
	check_count(t, r, v.outcome);
	check_reason(t, r, v.outcome);
	put_in(t, r, p, &v);
	return t->out->n_problems != problems || batch_add(t, &s->batch, &v, r, e);
}

void visits_look(struct taking *t, const void *row)
{
	const struct visit_row *r = row;
	struct visit_state *s = t->state;
	int64_t pest = 0, id;

	if (*r->trap && *r->farm && find_trap(t, r))
		pest = s->known.traps.items[s->latest].pest;
	if (strcmp(r->card, VISIT_KEPT) != 0)
		taking_find(t, &s->cards, "card", r->card, &id);
	if (strcmp(r->lure, VISIT_KEPT) != 0)
		row_find_lure(&t->hear, &s->known.lures, pest, r->lure, &id);
}

/* Rows that were left out for another reason would look like contradictions. */
bool visits_finish(struct taking *t, struct err *e)
{
	struct visit_state *s = t->state;

	if (!batch_finish(t, &s->batch, e))
		return false;
	if (t->out->n_problems == 0)
		series_check(t, s->series, s->known.traps.n);
	return visits_barred(t, &s->known, s->series, s->known.traps.n, e);
}
