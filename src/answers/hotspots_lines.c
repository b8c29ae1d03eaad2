/* hotspots_lines.c - hot blocks of a farm in a line each: blocks alone, this season, no
 * simulation. */
#include "hotspots_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static void add_line(
	struct hot_lines *out, const struct hot_row *row, const struct pest *pest)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct hot_line *line = &out->items[out->n++];
	*line = (struct hot_line){
		.block = row->block, .pest = pest->id, .grade = row->grade
	};
	if (row->split.moths_out == 0)
		snprintf(line->text, sizeof line->text,
			_("%s, %s: %s, all moths of like traps were here"), row->name,
			pest->code, row->grade_text);
	else
		words_print(line->text, sizeof line->text,
			_("%s, %s: %s, %.1f times the rest"), row->name, pest->code,
			row->grade_text, row->ratio.at);
}

/* A block that two lures hang in may be hot by both; the higher grade stands. */
static bool is_told(const struct hot_rows *rows, size_t r)
{
	for (size_t i = 0; i < rows->n; i++) {
		const struct hot_row *o = &rows->items[i];
		int least = (int)rows->items[r].grade + (i < r ? 0 : 1);
		if (i != r && o->block == rows->items[r].block &&
			(int)o->grade >= least)
			return true;
	}
	return false;
}

static void add_pest(struct hot_lines *out, const struct log *l,
	const struct pest *pest, const struct hot_ask *ask, const struct hot_season *s)
{
	struct hot_rows rows = { 0 };
	struct hot_field field;

	hot_field_take(&field, l, s, ask, hot_window_of(s, 0));
	for (size_t g = 0; g < field.n_alikes; g++) {
		struct hot_set set;
		hot_set_of(&set, l, &field, g, HOT_IN_BLOCKS);
		hot_add_blocks(&rows, &set, HOT_WATCH);
		hot_set_free(&set);
	}
	for (size_t r = 0; r < rows.n; r++)
		if (rows.items[r].grade >= HOT_WATCH && !is_told(&rows, r))
			add_line(out, &rows.items[r], pest);
	free(rows.items);
	hot_field_free(&field);
}

static bool read_pest(struct hot_lines *out, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e)
{
	struct hot_season s;
	bool ok = hot_season_read(&s, b, l, ask, e);

	if (ok && s.series.n > 0)
		add_pest(out, l, log_pest(l, ask->pest), ask, &s);
	hot_season_free(&s);
	return ok;
}

/* Which of the log's pests the farm has counts of: a book may know thousands. */
static bool *pests_of(const struct log *l, int64_t farm)
{
	bool *has = mem_new(l->pests.n, sizeof *has);

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		const struct pest *p = NULL;

		if (t->farm == farm && l->diaries[i].n_visits > 0)
			p = log_pest(l, t->pest);
		if (p)
			has[p - l->pests.items] = true;
	}
	return has;
}

bool hot_lines_read(struct hot_lines *out, struct book *b, const struct log *l,
	int64_t farm, struct err *e)
{
	bool *has = pests_of(l, farm), ok = true;

	out->n = 0;
	for (size_t i = 0; ok && i < l->pests.n; i++)
		if (has[i])
			ok = read_pest(out, b, l,
				&(struct hot_ask){
					.farm = farm, .pest = l->pests.items[i].id },
				e);
	free(has);
	return ok;
}

void hot_lines_free(struct hot_lines *h)
{
	free(h->items);
	*h = (struct hot_lines){ 0 };
}
