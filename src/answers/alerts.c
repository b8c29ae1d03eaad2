#include "answers/alerts.h"

#include "alerts_parts.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>

static const char *const decisions[DECISION_COUNT] = {
	[DECISION_LOOKED] = N_("looked"),
	[DECISION_TREATED] = N_("treated"),
	[DECISION_LEFT] = N_("left as it was"),
};

/* The last clearing up to `day` of the trap, or of the block's traps of the pest. */
static int32_t last_cleared(
	const struct log *l, const struct verdict_row *row, int32_t day)
{
	int32_t last = DAY_NONE;

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		const struct diary *d = &l->diaries[i];
		if (row->trap != NO_TRAP
				? row->trap != (int)i
				: t->block != row->block || t->pest != row->pest)
			continue;
		for (size_t k = 0; k < d->n; k++)
			if (d->items[k].to <= day && d->items[k].to > last)
				last = d->items[k].to;
	}
	return last;
}

static void say_name(const struct log *l, const struct alert *a, int32_t read,
	char out[static SAY_LINE])
{
	const struct block *b = log_block(l, a->block);
	const struct pest *p = log_pest(l, a->pest);
	size_t trap = log_trap(l, a->trap);
	struct buf text = { 0 };

	buf_addf(&text, "%s, %s", b ? b->name : "", p ? p->code : "");
	if (a->trap != 0)
		buf_addf(&text, _(", trap %s"),
			trap < l->traps.n ? l->traps.items[trap].label : "?");
	else if (read > 0)
		buf_addf(&text, _(", mean of %d"), (int)read);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

static void say_row(const struct log *l, const struct verdict_row *row, struct alert *a)
{
	char line[SAY_LINE];
	struct buf text = { 0 };

	say_verdict_line(l, row, line, sizeof line);
	if (row->judgement.verdict != VERDICT_OVER)
		buf_addf(&text, _("%s as counts and thresholds stand now: "),
			say_verdict(&row->judgement));
	else
		say_amount(&row->judgement, a->amount);
	buf_add(&text, line);
	text_copy(a->says, sizeof a->says, text.text);
	buf_free(&text);
}

static void say_decided(struct alert *a)
{
	char day[DAY_TEXT_SIZE];
	struct buf text = { 0 };

	day_short(a->answer.on, day, sizeof day);
	buf_addf(&text, "%s %s", _(decisions[a->answer.decision]), day);
	if (*a->answer.note)
		buf_addf(&text, ": %s", a->answer.note);
	text_copy(a->decided, sizeof a->decided, text.text);
	buf_free(&text);
}

static bool is_answer_to(const struct answer *x, const struct alert *a)
{
	return x->block == a->block && x->pest == a->pest && x->trap == a->trap &&
	       x->day == a->day;
}

static bool is_answered(const struct log *l, const struct alert *a)
{
	for (size_t i = 0; i < l->answers.n; i++)
		if (is_answer_to(&l->answers.items[i], a))
			return true;
	return false;
}

static struct alert *grow(struct alerts *out)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	return &out->items[out->n++];
}

/* One that is OVER now, unless it was answered: then it comes with its answer. */
static void add_open(
	const struct log *l, const struct verdict_row *row, struct alerts *out)
{
	struct alert a = { .farm = row->farm,
		.block = row->block,
		.pest = row->pest,
		.trap = row->trap == NO_TRAP ? 0 : l->traps.items[row->trap].id,
		.day = last_cleared(l, row, l->today),
		.answer = answer_blank,
		.tone = TONE_OVER };

	if (is_answered(l, &a))
		return;
	a.answer.block = a.block;
	a.answer.pest = a.pest;
	a.answer.trap = a.trap;
	a.answer.day = a.day;
	a.answer.on = l->today;
	say_name(l, &a, row->judgement.read, a.name);
	say_row(l, row, &a);
	text_copy(a.decided, sizeof a.decided, _("open"));
	*grow(out) = a;
}

static const struct verdict_row *row_of(
	const struct log *l, const struct answer *x, const struct verdict_rows *v)
{
	if (x->trap == 0)
		return verdicts_of_block_itself(v, x->block, x->pest);
	size_t trap = log_trap(l, x->trap);
	return trap < l->traps.n ? verdicts_worst_of_trap(v, (int)trap) : NULL;
}

static void add_answered(
	const struct log *l, const struct answer *x, int64_t farm, struct alerts *out)
{
	struct verdict_rows v = { 0 };
	struct alert a = { .farm = farm,
		.block = x->block,
		.pest = x->pest,
		.trap = x->trap,
		.day = x->day,
		.is_answered = true,
		.answer = *x,
		.tone = TONE_QUIET };

	verdicts_of(l, farm, x->pest, x->day, &v);
	const struct verdict_row *row = row_of(l, x, &v);
	say_name(l, &a, row ? row->judgement.read : 0, a.name);
	if (row)
		say_row(l, row, &a);
	say_decided(&a);
	alert_say_after(l, x, a.after, sizeof a.after);
	free(v.items);
	*grow(out) = a;
}

static void add_answers(const struct log *l, int64_t farm, struct alerts *out)
{
	for (size_t i = 0; i < l->answers.n; i++) {
		const struct answer *x = &l->answers.items[i];
		const struct block *b = log_block(l, x->block);
		const struct farm *f = log_farm(l, b ? b->farm : 0);
		if (f && (farm == 0 || farm == f->id) && x->day <= l->today &&
			x->day >= day_season_start(l->today, f->season_start))
			add_answered(l, x, f->id, out);
	}
}

static int open_and_latest_first(const void *a, const void *b)
{
	const struct alert *x = a, *y = b;

	if (x->is_answered != y->is_answered)
		return x->is_answered - y->is_answered;
	if (x->day != y->day)
		return x->day > y->day ? -1 : 1;
	return x->block != y->block ? (x->block < y->block ? -1 : 1)
				    : (x->trap > y->trap) - (x->trap < y->trap);
}

void alerts_of(const struct log *l, int64_t farm, struct alerts *out)
{
	struct verdict_rows v = { 0 };

	out->n = 0;
	verdicts_of(l, farm, 0, l->today, &v);
	for (size_t i = 0; i < v.n; i++)
		if (v.items[i].judgement.verdict == VERDICT_OVER &&
			verdicts_counts(&v, i))
			add_open(l, &v.items[i], out);
	add_answers(l, farm, out);
	free(v.items);
	if (out->n > 1)
		qsort(out->items, out->n, sizeof *out->items, open_and_latest_first);
}

void alerts_free(struct alerts *a)
{
	free(a->items);
	*a = (struct alerts){ 0 };
}
