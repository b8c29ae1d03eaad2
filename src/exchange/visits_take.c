#include "visits_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

/* One line of this file that a trap's date was seen in. */
struct seen {
	int32_t day;
	uint32_t line;
};

struct trap_seen {
	struct trap trap;
	struct seen *items; /* by day */
	size_t n, cap;
};

struct visit_state {
	struct names farms;        /* id */
	struct names traps;        /* in a farm: index in trap */
	struct names lures, cards; /* id */
	struct lure_kinds lure_kinds;
	struct trap_seen *trap;
	size_t n_traps;
	/* The latest trap that was looked up: most files go trap by trap. */
	char farm_name[NAME_BYTES], trap_name[NAME_BYTES];
	struct trap_seen *latest;
	struct batch batch;
};

static bool read_traps(struct taking *t, struct visit_state *s, struct err *e)
{
	struct traps traps = { 0 };
	bool ok = book_traps(t->book, 0, &traps, e);

	s->trap = mem_new(traps.n, sizeof *s->trap);
	for (size_t i = 0; ok && i < traps.n; i++) {
		const struct trap *p = &traps.items[i];
		names_add(&s->traps, p->farm, p->label, (int64_t)i);
		s->trap[s->n_traps++].trap = *p;
	}
	free(traps.items);
	return ok;
}

bool visits_begin(struct taking *t, struct err *e)
{
	struct visit_state *s = t->state = mem_new(1, sizeof *s);

	return names_of_farms(t->book, &s->farms, e) &&
	       names_of_lures(t->book, &s->lures, e) &&
	       names_of_cards(t->book, &s->cards, e) &&
	       book_lures(t->book, &s->lure_kinds, e) && read_traps(t, s, e);
}

void visits_end(struct taking *t)
{
	struct visit_state *s = t->state;

	for (size_t i = 0; i < s->n_traps; i++)
		free(s->trap[i].items);
	free(s->trap);
	free(s->lure_kinds.items);
	batch_free(&s->batch);
	names_free(&s->farms);
	names_free(&s->traps);
	names_free(&s->lures);
	names_free(&s->cards);
	free(s);
}

static struct trap_seen *no_trap(
	struct taking *t, const struct visit_row *r, int64_t farm)
{
	const struct visit_state *s = t->state;
	struct buf there = { 0 };

	names_list(&s->traps, farm, 200, &there);
	taking_bad(t, "trap", _("is no trap of %s, which has: %s"), r->farm,
		there.n ? there.text : _("none"));
	buf_free(&there);
	return NULL;
}

/* The row's trap; NULL when the book lacks it, which is noted. */
static struct trap_seen *find_trap(struct taking *t, const struct visit_row *r)
{
	struct visit_state *s = t->state;
	int64_t farm;

	if (s->latest && !strcmp(s->trap_name, r->trap) &&
		!strcmp(s->farm_name, r->farm))
		return s->latest;
	if (!taking_find(t, &s->farms, "farm", r->farm, &farm))
		return NULL;
	int64_t i = names_find(&s->traps, farm, r->trap);
	if (i < 0)
		return no_trap(t, r, farm);
	memcpy(s->farm_name, r->farm, sizeof s->farm_name);
	memcpy(s->trap_name, r->trap, sizeof s->trap_name);
	return s->latest = &s->trap[i];
}

/* Remembers the row's date; the line that had it before, or 0. */
static uint32_t see(struct trap_seen *p, int32_t day, uint32_t line)
{
	size_t from = 0, to = p->n;

	if (p->n && p->items[p->n - 1].day < day)
		from = p->n;
	while (from < to) {
		size_t middle = from + (to - from) / 2;
		if (p->items[middle].day < day)
			from = middle + 1;
		else
			to = middle;
	}
	if (from < p->n && p->items[from].day == day)
		return p->items[from].line;
	p->items = mem_grow(p->items, &p->cap, p->n + 1, sizeof *p->items);
	memmove(p->items + from + 1, p->items + from, (p->n - from) * sizeof *p->items);
	p->items[from] = (struct seen){ day, line };
	p->n++;
	return 0;
}

static void check_day(struct taking *t, const struct visit_row *r, struct trap_seen *p)
{
	char today[DAY_ISO_SIZE];

	if (r->day > t->from->today) {
		day_iso(t->from->today, today);
		taking_bad(t, "date", _("lies after today, %s"), today);
		return;
	}
	uint32_t before = see(p, r->day, (uint32_t)t->csv.line);
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

static void check_lure(struct taking *t, const struct trap_seen *p, int64_t lure)
{
	const struct visit_state *s = t->state;

	for (size_t i = 0; lure && i < s->lure_kinds.n; i++) {
		const struct lure_kind *k = &s->lure_kinds.items[i];
		if (k->id == lure && k->pest && k->pest != p->trap.pest)
			taking_bad(t, "lure",
				_("draws another pest than this trap's; a trap keeps "
				  "the scent, so it has one pest for life"));
	}
}

/* The kinds that were put in: named, kept, or the trap's usual ones when hung. */
static void put_in(struct taking *t, const struct visit_row *r,
	const struct trap_seen *p, struct visit *v)
{
	struct visit_state *s = t->state;
	bool hung = v->outcome == OUTCOME_HUNG;

	if (!*r->card && hung)
		v->new_card = p->trap.card;
	else if (strcmp(r->card, VISIT_KEPT) != 0)
		taking_find(t, &s->cards, "card", r->card, &v->new_card);
	if (!*r->lure && hung)
		v->new_lure = p->trap.lure;
	else if (strcmp(r->lure, VISIT_KEPT) != 0)
		taking_find(t, &s->lures, "lure", r->lure, &v->new_lure);
	check_lure(t, p, v->new_lure);
}

bool visits_take(struct taking *t, const void *row, struct err *e)
{
	const struct visit_row *r = row;
	struct visit_state *s = t->state;
	int64_t problems = t->out->n_problems;
	struct trap_seen *p = find_trap(t, r);
	struct visit v = {
		.day = r->day,
		.outcome = r->outcome < 0 ? OUTCOME_COUNTED : (enum outcome)r->outcome,
		.reason = (enum reason)r->reason,
		.count = r->count,
		.females = r->females,
		.others = r->others,
		.stirred = r->stirred != 0,
	};

	if (!p)
		return true;
	v.trap = p->trap.id;
	check_day(t, r, p);
	check_count(t, r, v.outcome);
	check_reason(t, r, v.outcome);
	put_in(t, r, p, &v);
	return t->out->n_problems != problems || batch_add(t, &s->batch, &v, r, e);
}

bool visits_finish(struct taking *t, struct err *e)
{
	struct visit_state *s = t->state;

	return batch_flush(t, &s->batch, e);
}
