#include "answers/sheet.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void say_since(int32_t day, char out[static 8])
{
	char text[SAY_SHORT];

	say_day(day, text);
	text_copy(out, 8, text);
}

/* True while moths may hang in the trap that nobody has counted. */
static bool is_unread(const struct log *l, size_t trap)
{
	struct weekly w = weekly_catch(&l->diaries[trap], l->today, &l->limits);

	return w.unread == UNREAD_SKIPPED || w.unread == UNREAD_STALE;
}

static void say_total(const struct log *l, size_t trap, char out[static SAY_SHORT])
{
	const struct diary *d = &l->diaries[trap];
	const struct farm *f = log_farm(l, l->traps.items[trap].farm);
	int32_t start = day_season_start(l->today, f ? f->season_start : 101);
	int32_t sum = 0, read = 0;
	bool at_least = is_unread(l, trap);

	for (size_t i = 0; i < d->n; i++) {
		if (d->items[i].to < start)
			continue;
		struct interval sure = interval_sure(&d->items[i]);
		sum += sure.moths;
		read++;
		at_least |= sure.state != CATCH_COUNTED;
	}
	if (read == 0)
		text_copy(out, SAY_SHORT, "-");
	else
		snprintf(out, SAY_SHORT, "%d%s", (int)sum, at_least ? "+" : "");
}

static void fill_answer(const struct log *l, const struct verdict_rows *v,
	const struct verdict_row *row, struct sheet_trap *t)
{
	say_weekly(&row->weekly, t->week);
	if (row->weekly.unread == UNREAD_NO)
		snprintf(t->nights, sizeof t->nights, "%d", (int)row->weekly.nights);
	text_copy(t->verdict, sizeof t->verdict, say_verdict(&row->judgement));
	if (row->rule == NO_RULE) {
		text_copy(t->rule, sizeof t->rule, "-");
		if (verdicts_of_block_itself(v, row->block, row->pest))
			text_copy(t->verdict, sizeof t->verdict, _("block"));
		return;
	}
	say_rule_short(&l->rules.items[row->rule], t->rule);
	say_behind(
		&l->rules.items[row->rule], &row->judgement, t->says, sizeof t->says);
	t->is_over = row->judgement.verdict == VERDICT_OVER;
	t->needs_attention = t->is_over || row->judgement.verdict == VERDICT_UNKNOWN;
}

static void add_trap(const struct log *l, const struct run_trap *from,
	const struct verdict_rows *v, struct sheet *out)
{
	size_t trap = log_trap(l, from->trap);
	const struct verdict_row *row = verdicts_worst_of_trap(v, (int)trap);

	out->traps = mem_grow(out->traps, &out->cap, out->n + 1, sizeof *out->traps);
	struct sheet_trap *t = &out->traps[out->n++];
	*t = (struct sheet_trap){ .is_border = from->is_border,
		.is_disrupted = from->is_disrupted,
		.lure_due = from->lure_due,
		.card_due = from->card_due };
	text_copy(t->label, sizeof t->label, from->label);
	text_copy(t->block, sizeof t->block, from->block);
	text_copy(t->pest, sizeof t->pest, from->pest);
	text_copy(t->lure, sizeof t->lure, from->lure);
	text_copy(t->service, sizeof t->service, from->service);
	text_copy(t->barred, sizeof t->barred, from->barred);
	memcpy(t->last, from->last, sizeof t->last);
	text_copy(t->count, sizeof t->count, from->open ? "" : from->visit_text);
	say_since(l->lure_states[trap].since, t->lure_since);
	say_since(l->card_states[trap].since, t->card_since);
	say_total(l, trap, t->total);
	if (row)
		fill_answer(l, v, row, t);
	t->needs_attention |= l->lure_states[trap].overdue_days > 0 || !from->hangs ||
			      *from->barred || l->card_states[trap].mark >= CARD_CHANGE;
}

/* A sheet is carried for longer than a morning. */
static void say_coming(
	const struct log *l, int64_t farm, struct sheet *out, const struct run *run)
{
	struct bars bars = { 0 };

	bars_of(l, farm, &bars);
	for (size_t i = 0; i < out->n; i++) {
		struct sheet_trap *t = &out->traps[i];
		size_t trap = log_trap(l, run->traps[i].trap);
		for (size_t k = 0; k < bars.n_coming && !t->barred[0]; k++)
			if (bars.coming[k].block == l->traps.items[trap].block)
				snprintf(t->barred, sizeof t->barred,
					_("treatment planned: %s"),
					bars.coming[k].until);
	}
	bars_free(&bars);
}

static void count_trap(const struct run_trap *t, struct sheet *out)
{
	bool counted = !t->open && t->visit.count != COUNT_NONE;

	out->counted += counted;
	out->moths += counted ? t->visit.count : 0;
	out->visited += !t->open;
}

/* The scout of all this run's visits; "" when they differ. */
static void fill_scout(const struct run *run, struct sheet *out)
{
	bool first = true;

	out->scout[0] = '\0';
	for (size_t i = 0; i < run->n; i++) {
		if (run->traps[i].open)
			continue;
		if (first)
			text_copy(out->scout, sizeof out->scout,
				run->traps[i].words.scout);
		else if (strcmp(out->scout, run->traps[i].words.scout) != 0)
			out->scout[0] = '\0';
		first = false;
	}
}

static bool mean_needs_attention(
	const struct verdict_rows *v, const struct week_row *row)
{
	const struct verdict_row *own =
		verdicts_of_block_itself(v, row->block, row->pest);

	return own && own->judgement.verdict >= VERDICT_UNKNOWN;
}

static void fill_blocks(const struct log *l, int64_t farm, const struct verdict_rows *v,
	struct sheet *out)
{
	struct week w = { 0 };

	week_of(l, farm, 0, &w);
	out->n_blocks = 0;
	for (size_t i = 0; i < w.n; i++) {
		const struct week_row *row = &w.rows[i];
		if (row->level != WEEK_BLOCK)
			continue;
		out->blocks = mem_grow(out->blocks, &out->cap_blocks, out->n_blocks + 1,
			sizeof *out->blocks);
		struct sheet_block *b = &out->blocks[out->n_blocks++];
		*b = (struct sheet_block){ 0 };
		text_copy(b->name, sizeof b->name, row->name);
		text_copy(b->pest, sizeof b->pest, row->pest_code);
		text_copy(b->mean, sizeof b->mean, row->catch_text);
		text_copy(b->highest, sizeof b->highest,
			*row->highest_text ? row->highest_text : row->catch_text);
		text_copy(b->read, sizeof b->read, row->nights_text);
		text_copy(b->rule, sizeof b->rule, row->rule_text);
		text_copy(b->verdict, sizeof b->verdict, row->verdict_text);
		text_copy(b->says, sizeof b->says, row->says);
		b->is_over = row->verdict == VERDICT_OVER;
		b->needs_attention = mean_needs_attention(v, row);
	}
	out->over = w.n_over;
	out->unknown = w.n_unknown;
	week_free(&w);
}

static const char *unknown_of(const struct today *t, int64_t farm)
{
	for (size_t i = 0; i < t->n_runs; i++)
		if (t->runs[i].farm == farm)
			return t->runs[i].unknown_text;
	return "";
}

static void fill_bring(const struct log *l, int64_t farm, struct sheet *out)
{
	struct due d = { 0 };
	size_t at = 0;

	due_of(l, farm, &d);
	out->bring[0] = '\0';
	for (size_t i = 0; i < d.n_brings && at < sizeof out->bring - 1; i++) {
		const struct due_bring *b = &d.brings[i];
		const unsigned n = (unsigned)b->n;
		char text[SAY_LINE];

		snprintf(text, sizeof text,
			b->is_lure ? ngettext("%d %s lure", "%d %s lures", n)
				   : ngettext("%d %s card", "%d %s cards", n),
			b->n, words_shipped(b->kind_name));
		at += (size_t)snprintf(out->bring + at, sizeof out->bring - at, "%s%s",
			at ? ", " : "", text);
	}
	const char *unknown = unknown_of(&d.today, farm);
	if (d.n_brings == 0)
		text_copy(out->bring, sizeof out->bring,
			*unknown ? _("nothing known") : _("nothing"));
	at = strlen(out->bring);
	text_copy(out->bring + at, sizeof out->bring - at, unknown);
	due_free(&d);
}

bool sheet_of(const struct log *l, struct book *b, int64_t farm, struct sheet *out,
	struct err *e)
{
	struct verdict_rows v = { 0 };
	struct run run = { 0 };
	const struct farm *f = log_farm(l, farm);

	out->n = out->n_blocks = 0;
	out->visited = out->counted = out->over = out->unknown = 0;
	out->moths = 0;
	text_copy(out->farm, sizeof out->farm, f ? f->name : "");
	say_day_title(l->today, out->day, sizeof out->day);
	run_of(l, farm, l->today, &run);
	bool ok =
		run_read_words(&run, b, e) && hot_lines_read(&out->hot, b, l, farm, e);
	verdicts_of(l, farm, 0, l->today, &v);
	text_copy(out->last_run, sizeof out->last_run, run.last_text);
	for (size_t i = 0; ok && i < run.n; i++) {
		add_trap(l, &run.traps[i], &v, out);
		count_trap(&run.traps[i], out);
	}
	say_coming(l, farm, out, &run);
	fill_scout(&run, out);
	fill_blocks(l, farm, &v, out);
	block_clocks_of(l, farm, &out->clocks);
	fill_bring(l, farm, out);
	run_free(&run);
	free(v.items);
	return ok;
}

void sheet_free(struct sheet *s)
{
	free(s->traps);
	free(s->blocks);
	block_clocks_free(&s->clocks);
	hot_lines_free(&s->hot);
	*s = (struct sheet){ 0 };
}
