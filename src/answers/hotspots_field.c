/* hotspots_field.c - what each trap caught in the window, and which traps may be
 * compared. */
#include "hotspots_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool is_within(const struct interval *it, struct hot_window w)
{
	int32_t middle = it->from + (it->to - it->from) / 2;

	return middle >= w.from && middle < w.to;
}

static int64_t lure_of(
	const struct log *l, const struct diary *d, const struct interval *it, int trap)
{
	struct lure_state s = service_lure(d, &l->lures, it->to - 1, DAY_NONE);

	return s.kind ? s.kind : l->traps.items[trap].lure;
}

/* Nights that each lure kind hung; one more place for the unknown. */
static void take_trap(struct hot_take *t, const struct log *l, const struct diary *d,
	struct hot_window w)
{
	int64_t *nights = mem_new(l->lures.n + 1, sizeof *nights), most = 0;

	t->first = t->last = DAY_NONE;
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *it = &d->items[i];
		size_t k = 0;
		if (!is_within(it, w) || it->state == CATCH_UNKNOWN)
			continue;
		if (it->is_disputed) {
			t->n_disputed++;
			continue;
		}
		int64_t lure = lure_of(l, d, it, t->trap);
		while (k < l->lures.n && l->lures.items[k].id != lure)
			k++;
		nights[k] += it->to - it->from;
		if (nights[k] > most) {
			most = nights[k];
			t->lure = k < l->lures.n ? lure : 0;
		}
		t->catch.moths += it->moths;
		t->catch.nights += it->to - it->from;
		t->at_least |= it->state == CATCH_FLOOR;
		t->first = t->first == DAY_NONE ? it->from : t->first;
		t->last = it->to;
	}
	free(nights);
}

static bool are_alike(const struct hot_take *a, const struct hot_take *b)
{
	return a->lure == b->lure && a->condition == b->condition;
}

/* Against the longest-read trap of its like. */
static void mark_short(struct hot_field *f)
{
	for (size_t i = 0; i < f->n; i++)
		for (size_t k = 0; k < f->n; k++)
			if (are_alike(&f->takes[i], &f->takes[k]) &&
				2 * f->takes[i].catch.nights < f->takes[k].catch.nights)
				f->takes[i].is_short = true;
}

static void say_alike(const struct log *l, struct hot_alike *a)
{
	const struct lure_kind *lure = log_lure(l, a->lure);
	const char *condition = condition_word(a->condition);
	char traps[SAY_SHORT];

	snprintf(traps, sizeof traps, ngettext("%d trap", "%d traps", (unsigned)a->n),
		a->n);
	snprintf(a->text, sizeof a->text, "%s, %s%s%s", traps,
		lure ? words_shipped(lure->name) : _("lure not known"),
		*condition ? ", " : "", *condition ? _(condition) : "");
}

static struct hot_alike *find_alike(struct hot_field *f, const struct hot_take *t)
{
	for (size_t i = 0; i < f->n_alikes; i++)
		if (f->alikes[i].lure == t->lure &&
			f->alikes[i].condition == t->condition)
			return &f->alikes[i];
	f->alikes[f->n_alikes] =
		(struct hot_alike){ .lure = t->lure, .condition = t->condition };
	return &f->alikes[f->n_alikes++];
}

/* Most traps first; few as they are, they keep their order otherwise. */
static void sort_alikes(struct hot_field *f)
{
	for (size_t i = 1; i < f->n_alikes; i++)
		for (size_t k = i; k > 0 && f->alikes[k].n > f->alikes[k - 1].n; k--) {
			struct hot_alike other = f->alikes[k];
			f->alikes[k] = f->alikes[k - 1];
			f->alikes[k - 1] = other;
		}
}

/* No farm hangs so many; a book that says so must not bring the page down. */
static bool may_compare(const struct hot_field *f, const struct hot_take *t)
{
	return t->catch.nights > 0 && !t->is_short && t - f->takes < HOT_TRAPS_MAX;
}

static void group(struct hot_field *f, const struct log *l)
{
	f->alikes = mem_new(f->n, sizeof *f->alikes);
	for (size_t i = 0; i < f->n; i++)
		if (may_compare(f, &f->takes[i]))
			find_alike(f, &f->takes[i])->n++;
	sort_alikes(f);
	for (size_t i = 0; i < f->n_alikes; i++)
		say_alike(l, &f->alikes[i]);
	for (size_t i = 0; i < f->n; i++)
		f->takes[i].group =
			may_compare(f, &f->takes[i])
				? (int)(find_alike(f, &f->takes[i]) - f->alikes)
				: HOT_NO_GROUP;
}

void hot_field_take(struct hot_field *f, const struct log *l,
	const struct hot_season *s, const struct hot_ask *ask, struct hot_window w)
{
	*f = (struct hot_field){ .takes = mem_new(l->traps.n, sizeof *f->takes) };
	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		if (t->farm != ask->farm || t->pest != ask->pest || !s->of[i])
			continue;
		const struct block *block = log_block(l, t->block);
		struct hot_take *take = &f->takes[f->n++];
		*take = (struct hot_take){ .trap = (int)i,
			.condition = block ? block->condition : CONDITION_NONE };
		take_trap(take, l, s->of[i], w);
	}
	mark_short(f);
	group(f, l);
}

void hot_field_free(struct hot_field *f)
{
	free(f->takes);
	free(f->alikes);
	*f = (struct hot_field){ 0 };
}

static enum place place_of(const struct hot_set *set, const struct hot_take *t)
{
	return set->log->traps.items[t->trap].place;
}

static bool is_side(enum place p)
{
	return p == PLACE_BORDER || p == PLACE_INTERIOR;
}

/* True if the block has a trap of the group on the other side. */
static bool has_other_side(
	const struct hot_set *set, const struct hot_field *f, const struct hot_take *t)
{
	const struct trap *traps = set->log->traps.items;

	for (size_t i = 0; i < f->n; i++) {
		const struct hot_take *o = &f->takes[i];
		if (o->group == t->group &&
			traps[o->trap].block == traps[t->trap].block &&
			is_side(place_of(set, o)) &&
			place_of(set, o) != place_of(set, t))
			return true;
	}
	return false;
}

static bool is_chosen(const struct hot_set *set, const struct hot_field *f,
	const struct hot_take *t, enum hot_choice choice)
{
	switch (choice) {
	case HOT_IN_BLOCKS:
		return place_of(set, t) != PLACE_OUTSIDE;
	case HOT_SIDES:
		return is_side(place_of(set, t)) && has_other_side(set, f, t);
	case HOT_LOCATED:
		return set->log->traps.items[t->trap].has_position;
	default:
		return true;
	}
}

/* Index of the block in the log, as its number. */
static int stratum_of(const struct log *l, int64_t block)
{
	for (size_t i = 0; i < l->blocks.n; i++)
		if (l->blocks.items[i].id == block)
			return (int)i;
	return -1;
}

void hot_set_of(struct hot_set *set, const struct log *l, const struct hot_field *f,
	size_t group, enum hot_choice choice)
{
	*set = (struct hot_set){ .log = l,
		.takes = mem_new(f->n, sizeof *set->takes),
		.catches = mem_new(f->n, sizeof *set->catches),
		.in = mem_new(f->n, sizeof *set->in),
		.stratum = mem_new(f->n, sizeof *set->stratum) };
	for (size_t i = 0; i < f->n; i++) {
		const struct hot_take *t = &f->takes[i];
		if (t->group != (int)group || !is_chosen(set, f, t, choice))
			continue;
		set->takes[set->n] = t;
		set->catches[set->n] = t->catch;
		set->stratum[set->n++] = stratum_of(l, l->traps.items[t->trap].block);
	}
}

void hot_set_free(struct hot_set *set)
{
	free(set->takes);
	free(set->catches);
	free(set->in);
	free(set->stratum);
	*set = (struct hot_set){ 0 };
}
