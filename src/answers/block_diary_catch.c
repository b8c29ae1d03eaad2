/* block_diary_catch.c - catches that were over their threshold, and each pest's weeks
 * as a flight line. */
#include "block_diary_parts.h"

#include "answers/week.h"
#include "base/text.h"
#include "base/words.h"

#include <stdlib.h>

enum { MARK_FIRST = 0x2580, MARK_STEPS = 8, DAYS_A_WEEK = 7 };

static bool is_cleared_on(
	const struct block_page *p, const struct verdict_row *row, int32_t day)
{
	const struct log *l = p->log;

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct diary *d = &l->diaries[i];
		if (row->trap != NO_TRAP ? row->trap != (int)i
					 : l->traps.items[i].block != row->block ||
						   l->traps.items[i].pest != row->pest)
			continue;
		for (size_t k = 0; k < d->n; k++)
			if (d->items[k].to == day)
				return true;
	}
	return false;
}

static void add_over(struct block_page *p, const struct verdict_row *row, int32_t day)
{
	const struct pest *pest = log_pest(p->log, row->pest);
	char says[SAY_LINE];
	struct buf text = { 0 };

	say_verdict_line(p->log, row, says, sizeof says);
	buf_addf(
		&text, "%s %s, ", say_verdict(&row->judgement), pest ? pest->code : "");
	if (row->trap != NO_TRAP)
		buf_addf(&text, _("trap %s: "), p->log->traps.items[row->trap].label);
	else
		buf_addf(&text, _("mean of %d: "), (int)row->judgement.read);
	buf_add(&text, says);
	block_page_add(p, day, TONE_OVER, &text);
	buf_free(&text);
}

static void add_overs_of_day(struct block_page *p, int32_t day)
{
	struct verdict_rows v = { 0 };

	verdicts_of(p->log, p->block->farm, 0, day, &v);
	for (size_t i = 0; i < v.n; i++)
		if (v.items[i].block == p->block->id &&
			v.items[i].judgement.verdict == VERDICT_OVER &&
			verdicts_counts(&v, i) && is_cleared_on(p, &v.items[i], day))
			add_over(p, &v.items[i], day);
	free(v.items);
}

static bool is_any_cleared(const struct block_page *p, int32_t day)
{
	for (size_t i = 0; i < p->log->traps.n; i++) {
		const struct diary *d = &p->log->diaries[i];
		if (p->log->traps.items[i].block != p->block->id)
			continue;
		for (size_t k = 0; k < d->n; k++)
			if (d->items[k].to == day)
				return true;
	}
	return false;
}

static int32_t highest_x10(const struct mark *line, size_t n)
{
	int32_t top = 0;

	for (size_t k = 0; k < n; k++)
		if (line[k].kind == MARK_CATCH && line[k].x10 > top)
			top = line[k].x10;
	return top;
}

static void say_mark(struct mark m, int32_t top, struct buf *out)
{
	static const char *const words[] = {
		[MARK_NOTHING] = "\u00b7", /* a blank would be lost where lines wrap */
		[MARK_NOT_READ] = "\u00b7",
		[MARK_ZERO] = "_",
		[MARK_FLOOR] = "+",
	};
	char bar[5];

	if (m.kind != MARK_CATCH) {
		buf_add(out, words[m.kind]);
		return;
	}
	int64_t step = ((int64_t)m.x10 * MARK_STEPS + top - 1) / top;
	step = step < 1 ? 1 : step > MARK_STEPS ? MARK_STEPS : step;
	text_encode((uint32_t)(MARK_FIRST + step), bar);
	buf_add(out, bar);
}

/* "CM, a mark for each week, the highest 14.0 a week: _▂▅█▃·_" */
static void add_line(
	struct block_page *p, const struct week *w, const struct week_row *r)
{
	int32_t top = highest_x10(r->line, w->n_weeks);
	int32_t first = day_monday(w->day) - ((int32_t)w->n_weeks - 1) * DAYS_A_WEEK;
	struct buf text = { 0 };
	size_t from = 0;

	while (from < w->n_weeks && r->line[from].kind == MARK_NOTHING)
		from++;
	buf_addf(&text, _("%s, a mark for each week"), r->pest_code);
	if (top > 0)
		words_addf(&text, _(", the highest %.1f"), (double)top / 10);
	buf_add(&text, ": ");
	for (size_t k = from; k < w->n_weeks; k++)
		say_mark(r->line[k], top, &text);
	first += (int32_t)from * DAYS_A_WEEK;
	block_page_add(p, first > p->from ? first : p->from, TONE_TITLE, &text);
	buf_free(&text);
}

void block_page_catches(struct block_page *p)
{
	int32_t last = p->to < p->log->today ? p->to : p->log->today;
	struct week w = { 0 };

	week_of(p->log, p->block->farm, 0, &w);
	for (size_t i = 0; i < w.n; i++)
		if (w.rows[i].level == WEEK_BLOCK && w.rows[i].block == p->block->id)
			add_line(p, &w, &w.rows[i]);
	week_free(&w);
	for (int32_t day = p->from; day <= last; day++)
		if (is_any_cleared(p, day))
			add_overs_of_day(p, day);
}
