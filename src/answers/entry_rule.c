/* entry_rule.c - what a threshold's row says, and what is wrong with it. */
#include "answers/entry_rules.h"
#include "base/words.h"
#include "season/rule.h"

#include <string.h>

static void find_block(struct hearing *h, const struct known *k,
	const struct threshold_row *row, struct rule *r)
{
	if (*row->block && !*row->farm)
		row_bad(h, "block", _("needs its farm in the column farm"));
	else
		row_find_block(h, k, r->farm, row->block, &r->block);
}

void rule_find(struct hearing *h, const struct known *k,
	const struct threshold_row *row, struct rule *r)
{
	row_find_pest(h, k, row->pest, &r->pest);
	row_find_lure(h, &k->lures, r->pest, row->lure, &r->lure);
	row_find_farm(h, k, row->farm, &r->farm);
	find_block(h, k, row, r);
}

static void check_lure(struct hearing *h, const struct known *k,
	const struct threshold_row *row, const struct rule *r)
{
	const struct lure_kind *lure = known_kind(k, r->lure);

	if (lure && lure->pest && r->pest && lure->pest != r->pest)
		row_bad(h, "lure",
			_("draws another pest than %s, so this would never hold"),
			row->pest);
}

/* A measure of none compares nothing; every other needs its comparator and value. */
static void check_measure(struct hearing *h, const struct threshold_row *row)
{
	bool none = row->measure == MEASURE_NONE;
	bool span = row->span.kind != SPAN_NUMBER || row->span.n;

	if (none && span)
		row_bad(h, "span",
			_("does not go with the measure none, which compares nothing; "
			  "leave it empty"));
	if (none && row->comparator >= 0)
		row_bad(h, "comparator",
			_("does not go with the measure none; leave it empty"));
	if (none && row->value_x100 >= 0)
		row_bad(h, "value",
			_("does not go with the measure none; leave it empty"));
	if (!none && row->comparator < 0)
		row_bad(h, "comparator",
			_("a threshold needs one: >= if the value itself is over, else "
			  ">"));
	if (!none && row->value_x100 < 0)
		row_bad(h, "value", _("a threshold needs one, in moths"));
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

static void check_fault(struct hearing *h, const struct rule *r)
{
	const char *fault = rule_fault(r);

	if (!fault)
		return;
	const char *column = fault_column(r);
	if (*h->value(h->arg, column))
		row_bad(h, column, _("does not fit: %s"), fault);
	else
		row_bad(h, column, _("an empty value does not fit: %s"), fault);
}

bool rule_from(struct hearing *h, const struct known *k,
	const struct threshold_row *row, struct rule *out)
{
	int64_t before = h->n_bad;

	*out = rule_of(row);
	rule_find(h, k, row, out);
	check_lure(h, k, row, out);
	check_measure(h, row);
	if (h->n_bad == before)
		check_fault(h, out);
	return h->n_bad == before;
}
