#include "answers/today.h"

#include "answers/alerts.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "today_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int count_hanging(const struct log *l, int64_t farm)
{
	int n = 0;

	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm && log_hangs(l, i))
			n++;
	return n;
}

/* When it is next driven; of one that is to be driven today, when it was last. */
static void say_run(const struct log *l, struct today_run *r)
{
	char day[DAY_TEXT_SIZE];

	if (!r->due && r->next_run > l->today) {
		day_short(r->next_run, day, sizeof day);
		snprintf(r->last_text, sizeof r->last_text, _("next run %s"), day);
		return;
	}
	if (r->last_run == DAY_NONE) {
		text_copy(r->last_text, sizeof r->last_text, _("not run yet"));
		return;
	}
	int32_t ago = l->today - r->last_run;
	if (ago == 0) {
		text_copy(r->last_text, sizeof r->last_text, _("last run today"));
		return;
	}
	day_short(r->last_run, day, sizeof day);
	snprintf(r->last_text, sizeof r->last_text,
		ngettext("last run %s, %d day", "last run %s, %d days", (unsigned)ago),
		day, (int)ago);
}

/* Of a trap that was visited in the run only what is due by today: it was forgotten. */
void today_brings(const struct log *l, int64_t farm, struct brings *out)
{
	int32_t next = log_next_run(l, farm);
	int32_t run = next > l->today ? next : l->today;
	int32_t after = log_run_after(log_farm(l, farm), run);
	bool under_way = log_open_traps(l, farm) > 0;

	out->n = 0;
	out->unknown = 0;
	for (size_t i = 0; i < l->traps.n; i++) {
		bool visited = under_way && log_visited_in_run(l, i);
		if (l->traps.items[i].farm == farm)
			service_bring(out, &l->diaries[i], &l->lures, &l->cards, run,
				visited ? l->today + 1 : after);
	}
}

void today_say_unknown(int32_t n, char out[static SAY_SHORT * 2])
{
	text_copy(out, SAY_SHORT * 2, "");
	if (n > 0)
		snprintf(out, SAY_SHORT * 2,
			ngettext("; %d lure not known", "; %d lures not known",
				(unsigned)n),
			(int)n);
}

static void say_run_bring(const struct log *l, struct today_run *r)
{
	struct brings brings = { 0 };
	char text[SAY_SHORT * 2];

	today_brings(l, r->farm, &brings);
	say_bring(&brings, text, sizeof text);
	snprintf(r->bring, sizeof r->bring, _("bring %.40s"), text);
	today_say_unknown(brings.unknown, r->unknown_text);
	free(brings.items);
}

static void add_run(const struct log *l, const struct farm *f, struct today *out)
{
	out->runs =
		mem_grow(out->runs, &out->cap_runs, out->n_runs + 1, sizeof *out->runs);
	struct today_run *r = &out->runs[out->n_runs++];

	*r = (struct today_run){ .farm = f->id };
	text_copy(r->name, sizeof r->name, f->name);
	r->traps = count_hanging(l, f->id);
	r->open = log_open_traps(l, f->id);
	r->next_run = log_next_run(l, f->id);
	r->last_run = log_last_run(l, f->id, l->today);
	r->due = r->open > 0 && r->next_run <= l->today;
	if (r->due && r->open < r->traps)
		snprintf(r->traps_text, sizeof r->traps_text, _("%d of %d left"),
			r->open, r->traps);
	else
		snprintf(r->traps_text, sizeof r->traps_text,
			ngettext("%d trap", "%d traps", (unsigned)r->traps), r->traps);
	say_run(l, r);
	say_run_bring(l, r);
	bars_say(&out->bars, f->id, r->barred, sizeof r->barred);
}

static int by_due(const void *a, const void *b)
{
	const struct today_run *x = a, *y = b;

	if (x->due != y->due)
		return x->due ? -1 : 1;
	if (x->next_run != y->next_run)
		return x->next_run < y->next_run ? -1 : 1;
	return strcmp(x->name, y->name);
}

static void say_where(
	const struct log *l, const struct verdict_row *row, struct today_line *line)
{
	if (row->trap != NO_TRAP)
		snprintf(line->where, sizeof line->where, _("trap %s"),
			l->traps.items[row->trap].label);
	else if (row->judgement.read > 0)
		snprintf(line->where, sizeof line->where, _("mean of %d"),
			(int)row->judgement.read);
	else
		text_copy(line->where, sizeof line->where, _("block"));
}

static void add_line(
	const struct log *l, const struct verdict_row *row, struct today *out)
{
	out->lines = mem_grow(
		out->lines, &out->cap_lines, out->n_lines + 1, sizeof *out->lines);
	struct today_line *line = &out->lines[out->n_lines++];
	const struct farm *f = log_farm(l, row->farm);
	const struct block *b = log_block(l, row->block);
	const struct pest *p = log_pest(l, row->pest);

	*line = (struct today_line){ .farm = row->farm,
		.block = row->block,
		.pest = row->pest,
		.trap = row->trap,
		.rule = row->rule,
		.verdict = row->judgement.verdict };
	text_copy(line->farm_name, sizeof line->farm_name, f ? f->name : "");
	text_copy(line->block_name, sizeof line->block_name, b ? b->name : "");
	text_copy(line->pest_code, sizeof line->pest_code, p ? p->code : "");
	say_where(l, row, line);
	say_verdict_line(l, row, line->says, sizeof line->says);
	alert_say_answered(l, row, line->says, sizeof line->says);
}

/* Whoever took a trap down knows that nobody reads it any more. */
static bool is_taken_down(const struct verdict_row *row)
{
	return row->judgement.verdict == VERDICT_UNKNOWN && row->trap != NO_TRAP &&
	       row->weekly.unread == UNREAD_PULLED;
}

static void add_lines(const struct log *l, const struct verdict_rows *v,
	enum verdict verdict, struct today *out)
{
	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].judgement.verdict == verdict && verdicts_counts(v, i) &&
			!is_taken_down(&v->items[i]))
			add_line(l, &v->items[i], out);
}

static void count_others(const struct verdict_rows *v, struct today *out)
{
	struct verdict_sums s = verdicts_sum(v);

	out->n_under = s.under;
	out->n_near = s.near;
	say_doubted(&s, out->doubted_text, sizeof out->doubted_text);
}

void today_of(const struct log *l, struct today *out)
{
	struct verdict_rows v = { 0 };

	out->n_runs = out->n_lines = 0;
	out->day = l->today;
	out->no_rules = l->rules.n == 0;
	say_day_title(l->today, out->title, sizeof out->title);
	day_short(l->today, out->title_short, sizeof out->title_short);
	bars_of(l, 0, &out->bars);
	pick_rows_of(l, 0, &out->picks);
	for (size_t i = 0; i < l->farms.n; i++)
		add_run(l, &l->farms.items[i], out);
	if (out->n_runs > 1)
		qsort(out->runs, out->n_runs, sizeof *out->runs, by_due);
	verdicts_of(l, 0, 0, l->today, &v);
	add_lines(l, &v, VERDICT_OVER, out);
	out->n_over = out->n_lines;
	add_lines(l, &v, VERDICT_UNKNOWN, out);
	count_others(&v, out);
	today_say_no_threshold(l, &v, out->no_threshold, sizeof out->no_threshold);
	free(v.items);
}

void today_free(struct today *t)
{
	free(t->runs);
	free(t->lines);
	free(t->hots);
	free(t->nexts);
	bars_free(&t->bars);
	pick_rows_free(&t->picks);
	*t = (struct today){ 0 };
}
