#include "exchange/report_csv.h"

#include "base/csv.h"

#include <stdio.h>

enum { NUMBER_BYTES = 40 };

/* num/den, halves rounded up; four decimals unless it is whole. */
static void write_number(int64_t num, int64_t den, char out[static NUMBER_BYTES])
{
	int64_t whole = num / den, rest = num % den, part = 0;

	for (int i = 0; i < 4; i++) {
		rest *= 10;
		part = part * 10 + rest / den;
		rest %= den;
	}
	part += rest >= den - rest;
	whole += part / 10000;
	if (num % den == 0)
		snprintf(out, NUMBER_BYTES, "%lld", (long long)whole);
	else
		snprintf(out, NUMBER_BYTES, "%lld.%04lld", (long long)whole,
			(long long)(part % 10000));
}

static void add_number(struct buf *out, int64_t num, int64_t den)
{
	char text[NUMBER_BYTES];

	write_number(num, den, text);
	csv_add(out, text, false);
}

/* What a trap without a rule caught in a week. */
static struct bounds bounds_of_week(const struct weekly *w)
{
	if (w->unread != UNREAD_NO || w->nights <= 0)
		return (struct bounds){ { 0, 1 }, { 0, 1 }, true };
	struct ratio r = { (int64_t)w->moths * 7, w->nights };
	return (struct bounds){ r, r, w->at_least };
}

static void add_bounds(struct buf *out, struct bounds b)
{
	if (b.lo.den <= 0) /* nothing was compared: all that is known is 0 or more */
		b = (struct bounds){ { 0, 1 }, { 0, 1 }, true };
	add_number(out, b.lo.num, b.lo.den);
	if (b.open || b.hi.den <= 0)
		csv_add(out, "", false);
	else
		add_number(out, b.hi.num, b.hi.den);
}

static void add_rule(struct buf *out, const struct rule *r)
{
	bool decides = r && r->measure != MEASURE_NONE;

	csv_add(out, r ? measure_word(r->measure) : "", false);
	if (decides && r->span_kind == SPAN_NUMBER)
		add_number(out, r->span, 1);
	else
		csv_add(out, decides ? span_word(r->span_kind) : "", false);
	csv_add(out, decides ? comparator_word(r->comparator) : "", false);
	if (decides)
		add_number(out, r->value_x100, 100);
	else
		csv_add(out, "", false);
}

/* Begins a doubt behind those before it. */
static struct buf *next(struct buf *doubts)
{
	if (doubts->n)
		buf_add(doubts, "; ");
	return doubts;
}

static void add_unread(struct buf *doubts, enum unread unread, int32_t nights)
{
	static const char *const words[UNREAD_COUNT] = {
		[UNREAD_NO] = "not read",
		[UNREAD_NOT_HUNG] = "not hung",
		[UNREAD_NOT_YET] = "not read yet",
		[UNREAD_SHORT] = "too few nights",
		[UNREAD_STALE] = "not read",
		[UNREAD_SKIPPED] = "skipped, not read",
		[UNREAD_SPOILED] = "spoiled",
		[UNREAD_MISSING] = "missing",
		[UNREAD_PULLED] = "pulled",
		[UNREAD_SINCE] = "not read since",
	};

	buf_add(next(doubts), words[unread]);
	if (unread == UNREAD_STALE || unread == UNREAD_SKIPPED)
		buf_addf(doubts, " for %d nights", nights);
}

static void add_lacking(struct buf *doubts, const struct judgement *j)
{
	static const char *const words[LACKING_COUNT] = {
		[LACKING_WEEKS] = "hung too short",
		[LACKING_SPLIT] = "catch not to be divided",
		[LACKING_FLOOR] = "card full",
		[LACKING_BIOFIX] = "biofix not set",
		[LACKING_FLIGHT] = "flight not known",
	};

	if (j->verdict != VERDICT_UNKNOWN)
		return;
	if (j->lacking == LACKING_TRAPS ||
		(j->lacking == LACKING_READING && j->traps > 1))
		buf_addf(next(doubts), "%d of %d traps read", j->read, j->traps);
	else if (j->lacking == LACKING_READING)
		add_unread(doubts, j->unread, j->unread_nights);
	else if (words[j->lacking])
		buf_add(next(doubts), words[j->lacking]);
}

static void add_doubts(struct buf *out, const struct verdict_row *row)
{
	const struct judgement *j = &row->judgement;
	struct buf doubts = { 0 };

	buf_add(&doubts, "");
	add_lacking(&doubts, j);
	if (row->rule == NO_RULE && row->weekly.unread != UNREAD_NO)
		add_unread(&doubts, row->weekly.unread, row->weekly.nights);
	if (j->doubts & DOUBT_LURE)
		buf_addf(next(&doubts), "lure %d d overdue", j->lure_overdue_days);
	if (j->doubts & DOUBT_CARD)
		buf_addf(next(&doubts), "card at %d moths", j->card_moths);
	if (j->doubts & DOUBT_CARD_AGE)
		buf_add(next(&doubts), "card overdue by age");
	if (j->doubts & DOUBT_LONG)
		buf_addf(next(&doubts), "average over %d nights", j->long_nights);
	if (j->doubts & DOUBT_TRAPS)
		buf_add(next(&doubts), "trap set changed");
	if (j->doubts & DOUBT_UNREAD && j->verdict != VERDICT_UNKNOWN)
		buf_addf(next(&doubts), "%d of %d traps read", j->read, j->traps);
	csv_add(out, doubts.text, false);
	buf_free(&doubts);
}

static void add_place(
	struct buf *out, const struct log *l, const struct verdict_row *row)
{
	const struct farm *f = log_farm(l, row->farm);
	const struct block *b = log_block(l, row->block);
	const struct pest *p = log_pest(l, row->pest);

	csv_add(out, f ? f->name : "", true);
	csv_add(out, b ? b->name : "", false);
	csv_add(out, row->trap == NO_TRAP ? "" : l->traps.items[row->trap].label,
		false);
	csv_add(out, p ? p->code : "", false);
}

static void add_row(struct buf *out, const struct log *l, const struct verdict_row *row)
{
	const struct rule *r = row->rule == NO_RULE ? NULL : &l->rules.items[row->rule];
	bool compared = r && r->measure != MEASURE_NONE;
	int32_t nights = compared                          ? row->judgement.nights
			 : row->weekly.unread == UNREAD_NO ? row->weekly.nights
							   : 0;

	add_place(out, l, row);
	add_bounds(out, compared ? row->judgement.value : bounds_of_week(&row->weekly));
	if (nights > 0)
		add_number(out, nights, 1);
	else
		csv_add(out, "", false);
	add_rule(out, r);
	csv_add(out, verdict_word(row->judgement.verdict), false);
	add_doubts(out, row);
	csv_add(out, r ? r->source : "", false);
	csv_end_row(out);
}

void week_csv(const struct log *l, const struct verdict_rows *rows, struct buf *out)
{
	buf_add(out,
		"farm,block,trap,pest,catch_lo,catch_hi,nights,measure,span,comparator,"
		"value,verdict,doubts,source\r\n");
	for (size_t i = 0; i < rows->n; i++)
		add_row(out, l, &rows->items[i]);
}
