/* season_page_catch.c - what the traps of each chart caught, by which thresholds it was
 * judged when they were cleared, and what was over. Catches are judged by the
 * thresholds, and by biofix and degree-days, as they stand now. */
#include "season_page_parts.h"

#include "answers/alerts.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdlib.h>

enum { A_WEEK = 7 };

static void add_dot(
	struct season_chart *c, int trap, int32_t day, const struct weekly *w)
{
	bool is_read = w->unread == UNREAD_NO;

	/* a spoiled card's count is the least that a week or less had caught */
	if (!is_read &&
		(w->moths == 0 || w->to == DAY_NONE || w->to - w->from > A_WEEK))
		return;
	c->dots = mem_grow(c->dots, &c->cap_dots, c->n_dots + 1, sizeof *c->dots);
	struct season_dot *dot = &c->dots[c->n_dots++];
	*dot = (struct season_dot){ .trap = trap,
		.from = w->from,
		.day = day,
		.rate = is_read ? 7.0 * w->least / w->nights : w->moths,
		.at_least = !is_read || w->at_least || w->is_disputed };
	say_weekly(w, dot->text);
}

static void add_dots(const struct season_work *w, struct season_chart *c, size_t trap)
{
	const struct diary *d = &w->log->diaries[trap];

	for (size_t i = 0; i < d->n; i++) {
		int32_t day = d->items[i].to;
		if (day < w->page->start || day > w->last)
			continue;
		struct weekly weekly = weekly_catch(d, day, &w->log->limits);
		add_dot(c, (int)trap, day, &weekly);
	}
}

static bool is_cleared(const struct diary *d, int32_t day)
{
	for (size_t i = 0; i < d->n; i++)
		if (d->items[i].to == day)
			return true;
	return false;
}

static bool is_read_on(const struct season_work *w, const struct season_chart *c,
	const struct verdict_row *row, int32_t day)
{
	if (row->trap != NO_TRAP)
		return is_cleared(&w->log->diaries[row->trap], day);
	for (size_t i = 0; i < w->log->traps.n; i++)
		if (season_is_of(w, c, i) && is_cleared(&w->log->diaries[i], day))
			return true;
	return false;
}

static bool is_weekly(const struct rule *r)
{
	return r->measure == MEASURE_TRAP_WEEK || r->measure == MEASURE_BLOCK_WEEK;
}

/* The last that the rule has on the chart, if it goes on: at most a week was missed. */
static struct season_limit *limit_going_on(
	struct season_chart *c, int rule, int32_t from)
{
	for (size_t i = c->n_limits; i > 0; i--)
		if (c->limits[i - 1].rule == rule)
			return from <= c->limits[i - 1].to + A_WEEK ? &c->limits[i - 1]
								    : NULL;
	return NULL;
}

static void note_limit(struct season_work *w, struct season_chart *c,
	const struct verdict_row *row, int32_t day)
{
	const struct rule *r = &w->log->rules.items[row->rule];
	int32_t seen = row->judgement.week[0].from;
	int32_t from = is_weekly(r) && seen != DAY_NONE ? seen : day - A_WEEK;
	struct season_limit *limit = limit_going_on(c, row->rule, from);

	if (!limit) {
		c->limits = mem_grow(
			c->limits, &c->cap_limits, c->n_limits + 1, sizeof *c->limits);
		limit = &c->limits[c->n_limits++];
		*limit = (struct season_limit){ .rule = row->rule,
			.from = from,
			.rate = is_weekly(r) ? r->value_x100 / 100.0 : -1,
			.is_block = measure_of_block(r->measure),
			.is_timing = r->measure == MEASURE_NONE,
			.source = season_source_of(w, row->rule) };
		say_rule_short(r, limit->text);
	}
	limit->from = from < limit->from ? from : limit->from;
	limit->to = day;
}

static struct season_alert *add_alert(struct season_chart *c, int trap, int32_t day)
{
	char text[DAY_TEXT_SIZE];

	c->alerts =
		mem_grow(c->alerts, &c->cap_alerts, c->n_alerts + 1, sizeof *c->alerts);
	struct season_alert *a = &c->alerts[c->n_alerts++];
	*a = (struct season_alert){ .trap = trap, .day = day };
	day_short(day, text, sizeof text);
	text_copy(a->day_text, sizeof a->day_text, text);
	text_copy(a->decided, sizeof a->decided, _("not answered"));
	return a;
}

static void note_over(const struct season_work *w, struct season_chart *c,
	const struct verdict_row *row, int32_t day)
{
	struct season_alert *a = add_alert(c, row->trap, day);
	char amount[SAY_SHORT], rule[SAY_SHORT];
	struct buf text = { 0 };

	say_amount(&row->judgement, amount);
	say_rule_short(&w->log->rules.items[row->rule], rule);
	if (row->trap == NO_TRAP)
		buf_addf(&text, _("mean of %d: %s (%s)"), (int)row->judgement.read,
			amount, rule);
	else
		buf_addf(&text, _("trap %s: %s (%s)"),
			w->log->traps.items[row->trap].label, amount, rule);
	text_copy(a->text, sizeof a->text, text.text);
	buf_free(&text);
}

static void judge_day(struct season_work *w, int32_t day)
{
	struct verdict_rows v = { 0 };

	verdicts_of(w->log, w->farm, 0, day, &v);
	for (size_t i = 0; i < v.n; i++) {
		const struct verdict_row *row = &v.items[i];
		struct season_chart *c =
			season_chart_of(w->page, row->block, row->pest);
		if (!c || row->rule == NO_RULE || !is_read_on(w, c, row, day))
			continue;
		if (row->fit == FIT_YES)
			note_limit(w, c, row, day);
		if (row->judgement.verdict == VERDICT_OVER && verdicts_counts(&v, i))
			note_over(w, c, row, day);
	}
	free(v.items);
}

static bool is_any_read_on(const struct season_work *w, int32_t day)
{
	for (size_t i = 0; i < w->log->traps.n; i++)
		if (w->log->traps.items[i].farm == w->farm &&
			is_cleared(&w->log->diaries[i], day))
			return true;
	return false;
}

static int trap_of(const struct log *l, const struct alert *a)
{
	return a->trap == 0 ? NO_TRAP : (int)log_trap(l, a->trap);
}

/* One that was answered, and is under by now, stands with what is said of it now. */
static struct season_alert *find_alert(
	const struct season_work *w, struct season_chart *c, const struct alert *a)
{
	int trap = trap_of(w->log, a);
	struct buf text = { 0 };

	for (size_t i = 0; i < c->n_alerts; i++)
		if (c->alerts[i].trap == trap && c->alerts[i].day == a->day)
			return &c->alerts[i];
	struct season_alert *made = add_alert(c, trap, a->day);
	if (a->trap == 0)
		buf_addf(&text, _("mean: %s"), a->says);
	else
		buf_addf(&text, _("trap %s: %s"),
			trap < (int)w->log->traps.n ? w->log->traps.items[trap].label
						    : "?",
			a->says);
	text_copy(made->text, sizeof made->text, text.text);
	buf_free(&text);
	return made;
}

/* Those of one day stay in the order in which they came: the insertion is stable. */
static void sort_alerts(struct season_chart *c)
{
	for (size_t i = 1; i < c->n_alerts; i++) {
		struct season_alert one = c->alerts[i];
		size_t k = i;
		for (; k > 0 && c->alerts[k - 1].day > one.day; k--)
			c->alerts[k] = c->alerts[k - 1];
		c->alerts[k] = one;
	}
}

/* An answer to a check is one to those before it that were over without a break. */
static void note_answer(
	const struct season_work *w, struct season_chart *c, const struct alert *a)
{
	struct season_alert *to = find_alert(w, c, a);
	int32_t trap = to->trap;

	text_copy(to->after, sizeof to->after, a->after);
	for (size_t i = 0; i < c->n_alerts; i++) {
		struct season_alert *one = &c->alerts[i];
		if (one->trap != trap || one->day < a->since || one->day > a->day)
			continue;
		one->is_answered = true;
		text_copy(one->decided, sizeof one->decided, a->decided);
	}
}

static void note_answers(struct season_work *w)
{
	struct alerts all = { 0 };

	alerts_of(w->log, w->farm, &all);
	for (size_t i = 0; i < all.n; i++) {
		const struct alert *a = &all.items[i];
		struct season_chart *c = season_chart_of(w->page, a->block, a->pest);
		if (c && a->is_answered)
			note_answer(w, c, a);
	}
	alerts_free(&all);
	for (size_t i = 0; i < w->page->n_charts; i++)
		sort_alerts(&w->page->charts[i]);
}

void season_fill_catches(struct season_work *w)
{
	for (size_t i = 0; i < w->page->n_charts; i++)
		for (size_t k = 0; k < w->log->traps.n; k++)
			if (season_is_of(w, &w->page->charts[i], k))
				add_dots(w, &w->page->charts[i], k);
	for (int32_t day = w->page->start; day <= w->last; day++)
		if (is_any_read_on(w, day))
			judge_day(w, day);
	note_answers(w);
}
