#include "answers/week.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>

enum { VALUE_NEVER_REACHED = 99999999 };

static struct week_row *add_row(struct week *out, enum week_level level)
{
	out->rows = mem_grow(out->rows, &out->cap, out->n + 1, sizeof *out->rows);
	struct week_row *row = &out->rows[out->n++];
	*row = (struct week_row){ .level = level, .trap = NO_TRAP, .rule = NO_RULE };
	return row;
}

static void add_farm_row(const struct log *l, int64_t farm, struct week *out)
{
	const struct farm *f = log_farm(l, farm);
	struct week_row *row = add_row(out, WEEK_FARM);

	row->farm = farm;
	text_copy(row->name, sizeof row->name, f ? f->name : "");
}

static void fill_verdict(
	const struct log *l, const struct verdict_row *v, struct week_row *row)
{
	row->rule = v->rule;
	row->verdict = v->judgement.verdict;
	text_copy(row->verdict_text, sizeof row->verdict_text,
		say_verdict(&v->judgement));
	row->tone = say_verdict_tone(&v->judgement);
	row->is_doubted = v->judgement.questionable;
	if (v->rule == NO_RULE) {
		text_copy(row->says, sizeof row->says, _("no threshold set"));
		return;
	}
	say_rule_short(&l->rules.items[v->rule], row->rule_text);
	say_behind(
		&l->rules.items[v->rule], &v->judgement, row->says, sizeof row->says);
}

/* Mean and highest of the block's traps: judged by a rule that nothing reaches. */
static void fill_mean(const struct log *l, const struct verdict_rows *v, size_t first,
	size_t end, struct week_row *row)
{
	static const struct rule mean = { .measure = MEASURE_BLOCK_WEEK,
		.span = 1,
		.value_x100 = VALUE_NEVER_REACHED };
	struct subject *subjects = mem_new(end - first, sizeof *subjects);
	struct moment m = log_moment(l, row->block, row->pest, l->today);
	size_t n = 0;

	for (size_t i = first; i < end; i++)
		if (v->items[i].trap != NO_TRAP &&
			(i == first || v->items[i].trap != v->items[i - 1].trap))
			subjects[n++].diary = &l->diaries[v->items[i].trap];
	struct judgement j = judge_block(&mean, FIT_YES, subjects, n, &m, &l->limits);
	free(subjects);
	int32_t x10 = ratio_x10(j.value.lo);
	if (j.read > 0)
		words_print(row->catch_text, sizeof row->catch_text, "%.1f%s",
			(double)x10 / 10, j.value.open ? "+" : "");
	else
		text_copy(row->catch_text, sizeof row->catch_text, "-");
	if (j.highest_x10 >= 0 && j.traps > 1)
		words_print(row->highest_text, sizeof row->highest_text, "%.1f%s",
			(double)j.highest_x10 / 10, j.highest_open ? "+" : "");
	snprintf(row->nights_text, sizeof row->nights_text, _("%d of %d"), (int)j.read,
		(int)j.traps);
}

/* Where the block's own rule looks at the week, its number is the one that is shown. */
static void fill_judged_mean(
	const struct log *l, const struct verdict_rows *v, struct week_row *row)
{
	const struct verdict_row *own =
		verdicts_of_block_itself(v, row->block, row->pest);

	if (own && l->rules.items[own->rule].measure == MEASURE_BLOCK_WEEK &&
		(own->judgement.read > 0 || own->judgement.verdict == VERDICT_OVER))
		say_amount(&own->judgement, row->catch_text);
}

/* A block or farm is never surer than what is in it. */
static void doubt(struct week_row *row)
{
	const struct judgement j = { .verdict = row->verdict, .questionable = true };

	if (row->verdict != VERDICT_NEAR && row->verdict != VERDICT_UNDER)
		return;
	row->is_doubted = true;
	row->tone = say_verdict_tone(&j);
	text_copy(row->verdict_text, sizeof row->verdict_text, say_verdict(&j));
}

static void add_block_row(const struct log *l, const struct verdict_rows *v,
	size_t first, size_t end, struct week *out)
{
	const struct verdict_row *at = &v->items[first];
	const struct block *b = log_block(l, at->block);
	const struct pest *p = log_pest(l, at->pest);
	const struct verdict_row *worst =
		verdicts_worst_of_block(v, at->block, at->pest);
	struct week_row *row = add_row(out, WEEK_BLOCK);

	row->farm = at->farm;
	row->block = at->block;
	row->pest = at->pest;
	row->is_disrupted =
		log_condition(l, at->block, at->pest, l->today) == CONDITION_DISRUPTED;
	text_copy(row->name, sizeof row->name, b ? b->name : "");
	text_copy(row->pest_code, sizeof row->pest_code, p ? p->code : "");
	fill_mean(l, v, first, end, row);
	fill_judged_mean(l, v, row);
	fill_verdict(l, worst, row);
	if (worst->trap != NO_TRAP && worst->judgement.verdict >= VERDICT_NEAR) {
		snprintf(row->says, sizeof row->says, _("trap %s: %s"),
			l->traps.items[worst->trap].label, row->rule_text);
		row->rule_text[0] = '\0'; /* not what the mean is held against */
	} else if (worst->trap != NO_TRAP && row->says[0] && row->is_doubted) {
		char doubts[SAY_LINE];
		text_copy(doubts, sizeof doubts, row->says);
		snprintf(row->says, sizeof row->says, _("trap %s: %.100s"),
			l->traps.items[worst->trap].label, doubts);
	}
	if (verdicts_doubt_block(v, at->block, at->pest))
		doubt(row);
}

static void add_trap_row(const struct log *l, const struct verdict_rows *all,
	const struct verdict_row *v, struct week *out)
{
	const struct trap *t = &l->traps.items[v->trap];
	const struct pest *p = log_pest(l, v->pest);
	struct week_row *row = add_row(out, WEEK_TRAP);

	row->farm = v->farm;
	row->block = v->block;
	row->pest = v->pest;
	row->trap = v->trap;
	row->is_border = t->place == PLACE_BORDER;
	text_copy(row->name, sizeof row->name, t->label);
	text_copy(row->pest_code, sizeof row->pest_code, p ? p->code : "");
	say_weekly(&v->weekly, row->catch_text);
	if (v->weekly.unread == UNREAD_NO)
		snprintf(row->nights_text, sizeof row->nights_text, _("%d n"),
			(int)v->weekly.nights);
	fill_verdict(l, v, row);
	if (v->rule == NO_RULE && verdicts_of_block_itself(all, v->block, v->pest))
		text_copy(row->says, sizeof row->says, _("judged with its block"));
}

static void count_answers(const struct verdict_rows *v, struct week *out)
{
	struct verdict_sums s = verdicts_sum(v);

	out->n_over = s.over;
	out->n_unknown = s.unknown;
	out->n_near = s.near;
	out->n_under = s.under;
	out->n_none = s.none;
	out->n_doubted = s.near_doubted + s.under_doubted;
	say_doubted(&s, out->doubted_text, sizeof out->doubted_text);
}

static void add_rows(
	const struct log *l, const struct verdict_rows *v, struct week *out)
{
	int64_t farm = 0;

	for (size_t i = 0, end; i < v->n; i = end) {
		for (end = i; end < v->n && v->items[end].block == v->items[i].block &&
			      v->items[end].pest == v->items[i].pest;
			end++)
			;
		if (v->items[i].farm != farm)
			add_farm_row(l, farm = v->items[i].farm, out);
		add_block_row(l, v, i, end, out);
		for (size_t k = i; k < end; k++)
			if (v->items[k].trap != NO_TRAP &&
				verdicts_worst_of_trap(v, v->items[k].trap) ==
					&v->items[k])
				add_trap_row(l, v, &v->items[k], out);
	}
}

static void take_worse(struct week_row *farm, const struct week_row *block)
{
	if (verdict_worse(farm->verdict, block->verdict) == farm->verdict)
		return;
	farm->verdict = block->verdict;
	farm->tone = block->tone;
	text_copy(farm->verdict_text, sizeof farm->verdict_text, block->verdict_text);
}

/* A farm's answer is the worst of its blocks. */
static void fill_farms(struct week *w)
{
	struct week_row *farm = NULL;

	for (size_t i = 0; i < w->n; i++) {
		struct week_row *row = &w->rows[i];
		if (row->level == WEEK_FARM)
			farm = row;
		if (!farm || row->level != WEEK_BLOCK)
			continue;
		take_worse(farm, row);
		farm->is_doubted = farm->is_doubted || row->is_doubted;
	}
	for (size_t i = 0; i < w->n; i++)
		if (w->rows[i].level == WEEK_FARM && w->rows[i].is_doubted)
			doubt(&w->rows[i]);
}

/* The first day of the season on which one of the rows' traps was visited. */
static int32_t first_day(const struct log *l, const struct week *w)
{
	int32_t first = l->today;

	for (size_t i = 0; i < w->n; i++) {
		if (w->rows[i].trap == NO_TRAP)
			continue;
		const struct diary *d = &l->diaries[w->rows[i].trap];
		const struct farm *f = log_farm(l, w->rows[i].farm);
		int32_t start = day_season_start(l->today, f ? f->season_start : 101);
		for (size_t k = 0; k < d->n_visits; k++) {
			if (d->visits[k].day < start)
				continue;
			if (d->visits[k].day < first)
				first = d->visits[k].day;
			break;
		}
	}
	return first;
}

/* The block's line: the mean over its traps' lines, which follow it. */
static void fill_block_line(struct week *w, size_t block)
{
	size_t n = 0;

	while (block + 1 + n < w->n && w->rows[block + 1 + n].level == WEEK_TRAP)
		n++;
	struct mark *all = mem_new(n * w->n_weeks, sizeof *all);
	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < w->n_weeks; k++)
			all[i * w->n_weeks + k] = w->rows[block + 1 + i].line[k];
	flightline_mean(all, n, w->n_weeks, w->rows[block].line);
	free(all);
}

static void fill_lines(const struct log *l, struct week *w)
{
	int32_t first = day_week_start(first_day(l, w));

	w->n_weeks = flightline_weeks(first, l->today);
	for (size_t i = 0; i < w->n; i++) {
		if (w->rows[i].level == WEEK_FARM)
			continue;
		w->rows[i].line = mem_new(w->n_weeks, sizeof *w->rows[i].line);
		if (w->rows[i].trap != NO_TRAP)
			flightline_of_trap(&l->diaries[w->rows[i].trap], first,
				l->today, w->rows[i].line);
	}
	for (size_t i = 0; i < w->n; i++)
		if (w->rows[i].level == WEEK_BLOCK)
			fill_block_line(w, i);
}

static void free_lines(struct week *w)
{
	for (size_t i = 0; i < w->n; i++)
		free(w->rows[i].line);
	w->n = 0;
}

void week_of(const struct log *l, int64_t farm, int64_t pest, struct week *out)
{
	struct verdict_rows v = { 0 };

	free_lines(out);
	out->day = l->today;
	say_day_title(l->today, out->title_day, sizeof out->title_day);
	day_short(l->today, out->title_short, sizeof out->title_short);
	verdicts_of(l, farm, pest, l->today, &v);
	add_rows(l, &v, out);
	fill_farms(out);
	fill_lines(l, out);
	count_answers(&v, out);
	free(v.items);
}

void week_free(struct week *w)
{
	free_lines(w);
	free(w->rows);
	*w = (struct week){ 0 };
}
