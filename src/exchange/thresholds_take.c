#include "thresholds_parts.h"

#include "base/mem.h"
#include "base/words.h"
#include "season/rule.h"

#include <stdlib.h>
#include <string.h>

struct rule_state {
	struct names pests, lures, farms; /* id */
	struct names blocks;              /* id, in a farm */
	struct lure_kinds lure_kinds;
	struct rules there;
};

bool thresholds_begin(struct taking *t, struct err *e)
{
	struct rule_state *s = t->state = mem_new(1, sizeof *s);

	return names_of_pests(t->book, &s->pests, e) &&
	       names_of_lures(t->book, &s->lures, e) &&
	       names_of_farms(t->book, &s->farms, e) &&
	       names_of_blocks(t->book, &s->blocks, e) &&
	       book_lures(t->book, &s->lure_kinds, e) &&
	       book_rules(t->book, &s->there, e);
}

void thresholds_end(struct taking *t)
{
	struct rule_state *s = t->state;

	names_free(&s->pests);
	names_free(&s->lures);
	names_free(&s->farms);
	names_free(&s->blocks);
	free(s->lure_kinds.items);
	free(s->there.items);
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

static bool same_rule(const struct rule *a, const struct rule *b)
{
	bool where = a->pest == b->pest && !strcmp(a->crop, b->crop) &&
		     a->condition == b->condition && a->lure == b->lure &&
		     a->place == b->place && a->farm == b->farm && a->block == b->block;
	bool when = a->flight == b->flight && a->from == b->from && a->to == b->to &&
		    a->until_dd == b->until_dd;
	bool what = a->measure == b->measure &&
		    (a->measure == MEASURE_NONE ||
			    (a->span_kind == b->span_kind && a->span == b->span &&
				    a->comparator == b->comparator &&
				    a->value_x100 == b->value_x100));

	return where && when && what && !strcmp(a->note, b->note) &&
	       !strcmp(a->source, b->source);
}

static void add_word(struct buf *out, const char *text)
{
	if (*text)
		buf_addf(out, ", %s", text);
}

static void describe_when(const struct threshold_row *row, struct buf *out)
{
	if (row->flight)
		buf_addf(out, _(", flight %d"), (int)row->flight);
	if (row->from)
		buf_addf(out, _(", %02d-%02d to %02d-%02d"), row->from / 100,
			row->from % 100, row->to / 100, row->to % 100);
	if (row->until_dd)
		buf_addf(out, _(", until %d degree-days"), (int)row->until_dd);
}

static void describe_what(const struct threshold_row *row, struct buf *out)
{
	buf_addf(out, ": %s", measure_word((enum measure)row->measure));
	if (row->measure == MEASURE_NONE)
		return;
	if (row->span.kind != SPAN_NUMBER)
		buf_addf(
			out, _(" since %s"), span_word((enum span_kind)row->span.kind));
	else
		buf_addf(out, _(" over %d"), row->span.n ? (int)row->span.n : 1);
	buf_addf(out, " %s %d", comparator_word((enum comparator)row->comparator),
		(int)row->value_x100 / 100);
	if (row->value_x100 % 100)
		buf_addf(out, ".%02d", (int)row->value_x100 % 100);
}

/* "CM, apple, flight 2: trap-week over 1 >= 3", then its note and its source. */
static void tell(struct taking *t, const struct threshold_row *row, bool same)
{
	struct buf out = { 0 };

	buf_addf(&out, "%s", row->pest);
	add_word(&out, row->crop);
	add_word(&out, column_condition(row->condition));
	add_word(&out, row->lure);
	add_word(&out, column_place(row->place));
	describe_when(row, &out);
	describe_what(row, &out);
	if (same)
		buf_add(&out, _(" (already there)"));
	if (*row->note)
		buf_addf(&out, "\n    %s", row->note);
	buf_addf(&out, _("\n    source: %s"), row->source);
	sentences_add(&t->out->notes, out.text);
	buf_free(&out);
}

static bool put_rule(struct taking *t, struct rule *r, bool *same, struct err *e)
{
	struct rule_state *s = t->state;

	*same = false;
	for (size_t i = 0; i < s->there.n; i++)
		*same = *same || same_rule(r, &s->there.items[i]);
	taking_count(t, *same ? TOOK_SAME : TOOK_NEW);
	if (*same)
		return true;
	if (!book_put_rule(t->book, r, e))
		return false;
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->there.items[s->there.n++] = *r;
	return true;
}

bool thresholds_take(struct taking *t, const void *row_in, struct err *e)
{
	const struct threshold_row *row = row_in;
	struct rule_state *s = t->state;
	struct rule r = rule_of(row);
	int64_t problems = t->out->n_problems;
	bool same;

	taking_find(t, &s->pests, "pest", row->pest, &r.pest);
	taking_find(t, &s->lures, "lure", row->lure, &r.lure);
	taking_find(t, &s->farms, "farm", row->farm, &r.farm);
	find_block(t, row, &r);
	check_lure(t, row, &r);
	check_measure(t, row);
	if (t->out->n_problems == problems)
		check_fault(t, &r);
	if (t->out->n_problems != problems)
		return true;
	if (!put_rule(t, &r, &same, e))
		return false;
	if (t->from->wanted)
		tell(t, row, same);
	return true;
}
