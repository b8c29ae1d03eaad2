#include "thresholds_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

static bool read_rules(struct taking *t, struct rule_state *s, struct err *e)
{
	struct rules all = { 0 };
	bool ok = book_rules(t->book, &all, e);

	s->there = mem_grow(s->there, &s->cap, all.n, sizeof *s->there);
	for (size_t i = 0; ok && i < all.n; i++)
		s->there[s->n++].rule = all.items[i];
	free(all.items);
	return ok;
}

bool thresholds_begin(struct taking *t, struct err *e)
{
	struct rule_state *s = t->state = mem_new(1, sizeof *s);

	return known_read(&s->known, t->book, e) && read_rules(t, s, e);
}

void thresholds_end(struct taking *t)
{
	struct rule_state *s = t->state;

	known_free(&s->known);
	free(s->there);
	free(s);
}

static bool same_place_and_time(const struct rule *a, const struct rule *b)
{
	bool where = a->pest == b->pest && !strcmp(a->crop, b->crop) &&
		     a->condition == b->condition && a->lure == b->lure &&
		     a->place == b->place && a->farm == b->farm && a->block == b->block;
	bool when = a->flight == b->flight && a->from == b->from && a->to == b->to &&
		    a->until_dd == b->until_dd;

	return where && when && a->measure == b->measure;
}

static bool same_span(const struct rule *a, const struct rule *b)
{
	return a->span_kind == b->span_kind && a->span == b->span;
}

static bool same_limit(const struct rule *a, const struct rule *b)
{
	return a->comparator == b->comparator && a->value_x100 == b->value_x100;
}

static bool same_rule(const struct rule *a, const struct rule *b)
{
	bool what = a->measure == MEASURE_NONE || (same_span(a, b) && same_limit(a, b));

	return same_place_and_time(a, b) && what && !strcmp(a->note, b->note) &&
	       !strcmp(a->source, b->source);
}

static bool put_rule(struct taking *t, struct rule *r, bool *same, struct err *e)
{
	struct rule_state *s = t->state;

	*same = false;
	for (size_t i = 0; i < s->n; i++)
		if (same_rule(r, &s->there[i].rule)) {
			*same = true;
			s->there[i].line = t->csv.line;
		}
	taking_count(t, *same ? TOOK_SAME : TOOK_NEW);
	if (*same)
		return true;
	if (!book_put_rule(t->book, r, e))
		return false;
	s->there = mem_grow(s->there, &s->cap, s->n + 1, sizeof *s->there);
	s->there[s->n++] = (struct rule_in){ *r, t->csv.line, true };
	return true;
}

bool thresholds_take(struct taking *t, const void *row_in, struct err *e)
{
	const struct threshold_row *row = row_in;
	const struct rule_state *s = t->state;
	struct rule r;
	bool same;

	if (!rule_from(&t->hear, &s->known, row, &r))
		return true;
	if (!put_rule(t, &r, &same, e))
		return false;
	if (t->from->wanted)
		thresholds_tell(t, row, &r, same);
	return true;
}

void thresholds_look(struct taking *t, const void *row_in)
{
	const struct rule_state *s = t->state;
	struct rule r = { 0 };

	rule_find(&t->hear, &s->known, row_in, &r);
}

/* A replacing file is the whole list: what it lacks leaves the book. */
static bool remove_others(struct taking *t, struct err *e)
{
	struct rule_state *s = t->state;
	size_t kept = 0;

	for (size_t i = 0; i < s->n; i++) {
		if (s->there[i].line) {
			s->there[kept++] = s->there[i];
			continue;
		}
		if (!book_remove_rule(t->book, s->there[i].rule.id, e))
			return false;
		t->out->n_removed++;
	}
	s->n = kept;
	return true;
}

static bool waits(const struct rule *r)
{
	return r->flight || r->until_dd || r->span_kind == SPAN_BIOFIX ||
	       r->span_kind == SPAN_FLIGHT;
}

static void tell_waiting(struct taking *t)
{
	const struct rule_state *s = t->state;
	struct buf note = { 0 };
	int n = 0;

	for (size_t i = 0; i < s->n; i++)
		n += s->there[i].line && waits(&s->there[i].rule);
	if (n == 1)
		buf_add(&note,
			_("1 threshold needs a flight, a biofix or degree-days: its "
			  "answer stays unknown (biofix not set) until a biofix is "
			  "set"));
	else
		buf_addf(&note,
			_("%d thresholds need a flight, a biofix or degree-days: their "
			  "answer stays unknown (biofix not set) until a biofix is "
			  "set"),
			n);
	if (n)
		sentences_add(&t->out->notes, note.text);
	buf_free(&note);
}

/* Two rules that differ in nothing but their value both decide; one is likely old. */
static void tell_twins(
	struct taking *t, const struct rule_in *a, const struct rule_in *b)
{
	const struct rule_state *s = t->state;
	struct buf one = { 0 }, two = { 0 };

	if (!b->is_new || a->rule.measure == MEASURE_NONE ||
		!same_place_and_time(&a->rule, &b->rule) ||
		!same_span(&a->rule, &b->rule) || same_limit(&a->rule, &b->rule))
		return;
	rule_words(&a->rule, &one);
	rule_words(&b->rule, &two);
	taking_warn(t,
		_("%s, line %lld: two thresholds of %s now judge the same traps: %s, "
		  "and %s; import with --replace to drop one"),
		t->from->name, (long long)b->line, known_pest(&s->known, b->rule.pest),
		one.text, two.text);
	buf_free(&one);
	buf_free(&two);
}

bool thresholds_finish(struct taking *t, struct err *e)
{
	const struct rule_state *s = t->state;

	if (t->out->n_problems)
		return true;
	if (t->from->replace && !remove_others(t, e))
		return false;
	tell_waiting(t);
	for (size_t i = 0; i < s->n; i++)
		for (size_t j = 0; j < i; j++)
			tell_twins(t, &s->there[j], &s->there[i]);
	return true;
}
