#include "thresholds_parts.h"

#include "base/words.h"

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

/* "trap-week, 2 weeks", "block-total since flight" */
static void span_words(const struct rule *r, struct buf *out)
{
	bool weeks =
		r->measure == MEASURE_TRAP_WEEK || r->measure == MEASURE_BLOCK_WEEK;
	int n = (int)r->span;

	buf_add(out, _(measure_word(r->measure)));
	if (r->measure == MEASURE_NONE)
		return;
	if (r->span_kind != SPAN_NUMBER)
		buf_addf(out, _(" since %s"), _(span_word(r->span_kind)));
	else if (weeks)
		buf_addf(out, n == 1 ? _(", %d week") : _(", %d weeks"), n);
	else
		buf_addf(out, n == 1 ? _(", %d night") : _(", %d nights"), n);
}

void rule_words(const struct rule *r, struct buf *out)
{
	span_words(r, out);
	if (r->measure == MEASURE_NONE)
		return;
	words_addf(out, ": %s %.*f", comparator_word(r->comparator),
		r->value_x100 % 100 ? 2 : 0, r->value_x100 / 100.0);
}

/* "CM, apple, flight 2: trap-week, 1 week: >= 3", then its note and its source. */
void thresholds_tell(struct taking *t, const struct threshold_row *row,
	const struct rule *r, bool same)
{
	struct buf out = { 0 };

	buf_addf(&out, "%s", row->pest);
	add_word(&out, words_shipped(row->crop));
	add_word(&out, column_condition(row->condition));
	add_word(&out, words_shipped(row->lure));
	add_word(&out, column_place(row->place));
	describe_when(row, &out);
	buf_add(&out, ": ");
	rule_words(r, &out);
	if (same)
		buf_add(&out, _(" (already there)"));
	if (*row->note)
		buf_addf(&out, "\n    %s", words_shipped(row->note));
	buf_addf(&out, _("\n    source: %s"), words_shipped(row->source));
	sentences_add(&t->out->notes, out.text);
	buf_free(&out);
}
