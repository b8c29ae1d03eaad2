#include "thresholds_parts.h"

#include "base/mem.h"
#include "base/words.h"
#include "season/rule.h"

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

	return names_of_pests(t->book, &s->pests, e) &&
	       names_of_farms(t->book, &s->farms, e) &&
	       names_of_blocks(t->book, &s->blocks, e) &&
	       book_lures(t->book, &s->lure_kinds, e) && read_rules(t, s, e);
}

void thresholds_end(struct taking *t)
{
	struct rule_state *s = t->state;

	names_free(&s->pests);
	names_free(&s->farms);
	names_free(&s->blocks);
	free(s->lure_kinds.items);
	free(s->there);
	free(s);
}

static void find_block(
	struct taking *t, const struct threshold_row *row, struct rule *r)
{
	const struct rule_state *s = t->state;
	struct buf there = { 0 };

	if (!*row->block)
		return;
	if (!*row->farm) {
		taking_bad(t, "block", _("needs its farm in the column farm"));
		return;
	}
	int64_t id = r->farm ? names_find(&s->blocks, r->farm, row->block) : 0;
	if (id >= 0) {
		r->block = id;
		return;
	}
	names_list(&s->blocks, r->farm, 200, &there);
	taking_bad(t, "block", _("is no block of %s, which has: %s"), row->farm,
		there.n ? there.text : _("none"));
	buf_free(&there);
}

/* The pest, lure, farm and block of the row by id. */
static void find_names(
	struct taking *t, const struct threshold_row *row, struct rule *r)
{
	const struct rule_state *s = t->state;

	taking_find(t, &s->pests, "pest", row->pest, &r->pest);
	taking_find_lure(t, &s->lure_kinds, r->pest, row->lure, &r->lure);
	taking_find(t, &s->farms, "farm", row->farm, &r->farm);
	find_block(t, row, r);
}

static void check_lure(
	struct taking *t, const struct threshold_row *row, const struct rule *r)
{
	const struct rule_state *s = t->state;

	for (size_t i = 0; r->lure && i < s->lure_kinds.n; i++) {
		const struct lure_kind *k = &s->lure_kinds.items[i];
		if (k->id == r->lure && k->pest && r->pest && k->pest != r->pest)
			taking_bad(t, "lure",
				_("draws another pest than %s, so this would never "
				  "hold"),
				row->pest);
	}
}

/* A measure of none compares nothing; every other needs its comparator and value. */
static void check_measure(struct taking *t, const struct threshold_row *row)
{
	bool none = row->measure == MEASURE_NONE;
	bool span = row->span.kind != SPAN_NUMBER || row->span.n;

	if (none && span)
		taking_bad(t, "span",
			_("does not go with the measure none, which compares nothing; "
			  "leave it empty"));
	if (none && row->comparator >= 0)
		taking_bad(t, "comparator",
			_("does not go with the measure none; leave it empty"));
	if (none && row->value_x100 >= 0)
		taking_bad(t, "value",
			_("does not go with the measure none; leave it empty"));
	if (!none && row->comparator < 0)
		taking_bad(t, "comparator",
			_("a threshold needs one: >= if the value itself is over, else "
			  ">"));
	if (!none && row->value_x100 < 0)
		taking_bad(t, "value", _("a threshold needs one, in moths"));
}

static struct rule rule_of(const struct threshold_row *row)
{
	bool week =
		row->measure == MEASURE_TRAP_WEEK || row->measure == MEASURE_BLOCK_WEEK;
	struct rule r = {
		.condition = (enum condition)row->condition,
		.place = (enum place)row->place,
		.flight = row->flight,
		.from = row->from,
		.to = row->to,
		.until_dd = row->until_dd,
		.measure = (enum measure)row->measure,
		.span_kind = (enum span_kind)row->span.kind,
		.span = row->span.n,
		.comparator = row->comparator < 0 ? AT_LEAST
						  : (enum comparator)row->comparator,
		.value_x100 = row->value_x100 < 0 ? 0 : row->value_x100,
	};

	if (week && r.span_kind == SPAN_NUMBER && r.span == 0)
		r.span = 1;
	memcpy(r.crop, row->crop, sizeof r.crop);
	memcpy(r.note, row->note, sizeof r.note);
	memcpy(r.source, row->source, sizeof r.source);
	return r;
}

/* The column that a faulty rule is faulty in: putting it right takes the fault away. */
static const char *fault_column(const struct rule *r)
{
	struct rule tried = *r;

	tried.span_kind = SPAN_NUMBER;
	tried.span = 1;
	if (!rule_fault(&tried))
		return "span";
	tried.value_x100 = 100;
	if (!rule_fault(&tried))
		return "value";
	return r->from ? "to" : "from";
}

static void check_fault(struct taking *t, const struct rule *r)
{
	const char *fault = rule_fault(r);

	if (!fault)
		return;
	const char *column = fault_column(r);
	if (*taking_value(t, column))
		taking_bad(t, column, _("does not fit: %s"), fault);
	else
		taking_bad(t, column, _("an empty value does not fit: %s"), fault);
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
	struct rule r = rule_of(row);
	int64_t problems = t->out->n_problems;
	bool same;

	find_names(t, row, &r);
	check_lure(t, row, &r);
	check_measure(t, row);
	if (t->out->n_problems == problems)
		check_fault(t, &r);
	if (t->out->n_problems != problems)
		return true;
	if (!put_rule(t, &r, &same, e))
		return false;
	if (t->from->wanted)
		thresholds_tell(t, row, &r, same);
	return true;
}

void thresholds_look(struct taking *t, const void *row_in)
{
	struct rule r = { 0 };

	find_names(t, row_in, &r);
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
		t->from->name, (long long)b->line, names_text(&s->pests, b->rule.pest),
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
