/* hotspots_rows.c - rows: a set of traps against the rest. */
#include "hotspots_words.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Both sides were read, and something was caught. */
static bool is_comparable(const struct hot_split *s)
{
	return s->nights_in > 0 && s->nights_out > 0 && s->moths_in + s->moths_out > 0;
}

/* Limits that count in the spread between traps, or the exact ones when those cannot be
 * had. */
static void fill_ratio(struct hot_row *row, const struct hot_set *set)
{
	struct hot_quasi q = hot_ratio_quasi(set->catches, set->n, set->in);

	row->ratio_is_exact = !q.is_defined;
	row->ratio = q.is_defined ? q.ratio : hot_ratio_exact(&row->split);
}

struct hot_row *hot_rows_add(
	struct hot_rows *rows, const struct hot_set *set, enum hot_what what)
{
	rows->items =
		mem_grow(rows->items, &rows->cap, rows->n + 1, sizeof *rows->items);
	struct hot_row *row = &rows->items[rows->n++];
	*row = (struct hot_row){ .what = what,
		.trap = NO_TRAP,
		.split = hot_split_of(set->catches, set->n, set->in),
		.rate = { NAN, NAN, NAN },
		.ratio = { NAN, NAN, NAN },
		.gi_star = NAN,
		.p_luck = NAN,
		.p_shuffle = NAN,
		.p_holm = NAN,
		.p_bh = NAN };
	for (size_t i = 0; i < set->n; i++)
		if (set->takes[i]->at_least)
			*(set->in[i] ? &row->at_least : &row->rest_at_least) = true;
	if (row->split.nights_in > 0)
		row->rate = hot_rate(row->split.moths_in, row->split.nights_in);
	if (is_comparable(&row->split)) {
		row->p_luck = hot_luck(&row->split);
		fill_ratio(row, set);
	}
	return row;
}

void hot_row_shuffle(struct hot_row *row, const struct hot_set *set, bool in_strata)
{
	if (!hot_is_enough(&row->split))
		return;
	struct hot_shuffle s = hot_shuffle(set->catches, set->n, set->in,
		in_strata ? set->stratum : NULL, HOT_SEED);
	/* within blocks there are fewer ways than hot_is_enough counts */
	if (!s.is_all || s.of >= hot_constants.subsets)
		row->p_shuffle = s.p;
}

static double worth(const struct hot_row *row)
{
	return row->split.moths_out == 0 && row->split.moths_in > 0 ? INFINITY
								    : row->ratio.at;
}

static void grade_tested(struct hot_row *row, double holm, double bh)
{
	const struct hot_evidence e = { row->p_luck, holm, bh, worth(row) };

	row->p_holm = holm;
	row->p_bh = bh;
	row->grade = hot_grade_of(&row->split, &e);
}

void hot_rows_grade(struct hot_rows *rows, size_t first)
{
	size_t most = rows->n - first, n = 0;
	double *p = mem_new(most, sizeof *p), *holm = mem_new(most, sizeof *holm);
	double *bh = mem_new(most, sizeof *bh);

	for (size_t i = first; i < rows->n; i++)
		if (!isnan(rows->items[i].p_shuffle))
			p[n++] = rows->items[i].p_shuffle;
	hot_holm(p, n, holm);
	hot_bh(p, n, bh);
	n = 0;
	for (size_t i = first; i < rows->n; i++)
		if (!isnan(rows->items[i].p_shuffle)) {
			grade_tested(&rows->items[i], holm[n], bh[n]);
			n++;
		}
	free(p);
	free(holm);
	free(bh);
}

void hot_row_grade_low(struct hot_row *row)
{
	const struct hot_split *s = &row->split;

	row->grade = HOT_TOO_LITTLE;
	if (isnan(row->p_luck) || s->n_in + s->n_out <= hot_constants.traps_out ||
		s->moths_in + s->moths_out < hot_constants.moths)
		return;
	row->grade = row->p_luck > hot_constants.luck ? HOT_LUCK : HOT_HIGHER;
}

static int hottest_first(const void *a, const void *b)
{
	const struct hot_row *x = a, *y = b;

	if (x->grade != y->grade)
		return x->grade > y->grade ? -1 : 1;
	if (x->rate.at != y->rate.at)
		return x->rate.at > y->rate.at ? -1 : 1;
	return strcmp(x->name, y->name);
}

void hot_rows_sort(struct hot_rows *rows, size_t first)
{
	if (rows->n > first + 1)
		qsort(rows->items + first, rows->n - first, sizeof *rows->items,
			hottest_first);
}

static void choose_block(const struct hot_set *set, int64_t block)
{
	for (size_t i = 0; i < set->n; i++)
		set->in[i] = set->log->traps.items[set->takes[i]->trap].block == block;
}

static void add_block(struct hot_rows *rows, const struct hot_set *set, size_t i)
{
	const struct block *block = &set->log->blocks.items[i];

	choose_block(set, block->id);
	struct hot_row *row = hot_rows_add(rows, set, HOT_OF_BLOCK);
	row->block = block->id;
	text_copy(row->name, sizeof row->name, block->name);
	hot_row_shuffle(row, set, false);
}

static bool has_block(const struct hot_set *set, size_t block)
{
	for (size_t i = 0; i < set->n; i++)
		if (set->stratum[i] == (int)block)
			return true;
	return false;
}

/* The grade of the chosen traps if all shuffles spoke for it. */
static enum hot_grade grade_at_most(const struct hot_set *set)
{
	struct hot_row row = { .split = hot_split_of(set->catches, set->n, set->in) };

	if (!is_comparable(&row.split))
		return HOT_TOO_LITTLE;
	fill_ratio(&row, set);
	const struct hot_evidence e = { hot_luck(&row.split), 0, 0, worth(&row) };
	return hot_grade_of(&row.split, &e);
}

/* Shuffles take most of the time, and can only take a grade down. */
static bool can_come_to(const struct hot_set *set, enum hot_grade least)
{
	for (size_t i = 0; i < set->log->blocks.n; i++) {
		if (!has_block(set, i))
			continue;
		choose_block(set, set->log->blocks.items[i].id);
		if (grade_at_most(set) >= least)
			return true;
	}
	return false;
}

void hot_add_blocks(
	struct hot_rows *rows, const struct hot_set *set, enum hot_grade least)
{
	size_t first = rows->n;

	if (least > HOT_TOO_LITTLE && !can_come_to(set, least))
		return;
	for (size_t i = 0; i < set->log->blocks.n; i++)
		if (has_block(set, i))
			add_block(rows, set, i);
	hot_rows_grade(rows, first);
	hot_rows_sort(rows, first);
	for (size_t i = first; i < rows->n; i++) {
		choose_block(set, rows->items[i].block);
		hot_say_row(&rows->items[i], set);
	}
}

static void choose_border(const struct hot_set *set)
{
	for (size_t i = 0; i < set->n; i++)
		set->in[i] = set->log->traps.items[set->takes[i]->trap].place ==
			     PLACE_BORDER;
}

/* The traps of one block out of a set; borrows nothing of it but the takes. */
static void narrow(struct hot_set *out, const struct hot_set *set, size_t block)
{
	*out = (struct hot_set){ .log = set->log,
		.takes = mem_new(set->n, sizeof *out->takes),
		.catches = mem_new(set->n, sizeof *out->catches),
		.in = mem_new(set->n, sizeof *out->in),
		.stratum = mem_new(set->n, sizeof *out->stratum) };
	for (size_t i = 0; i < set->n; i++)
		if (set->stratum[i] == (int)block) {
			out->takes[out->n] = set->takes[i];
			out->catches[out->n] = set->catches[i];
			out->stratum[out->n++] = set->stratum[i];
		}
}

static void add_border_of(
	struct hot_rows *rows, const struct hot_set *all, size_t block)
{
	const struct block *b = &all->log->blocks.items[block];
	struct hot_set set;

	narrow(&set, all, block);
	choose_border(&set);
	struct hot_row *row = hot_rows_add(rows, &set, HOT_OF_BORDER);
	row->block = b->id;
	snprintf(row->name, sizeof row->name, _("border of %s"), b->name);
	hot_row_grade_low(row);
	hot_say_row(row, &set);
	hot_set_free(&set);
}

static size_t blocks_in(const struct hot_set *set)
{
	size_t n = 0;

	for (size_t i = 0; i < set->log->blocks.n; i++)
		n += has_block(set, i);
	return n;
}

/* All blocks together, shuffled inside each: the one test of the border. */
static void add_border_test(struct hot_rows *rows, const struct hot_set *set)
{
	choose_border(set);
	struct hot_row *row = hot_rows_add(rows, set, HOT_OF_BORDER);
	text_copy(row->name, sizeof row->name, _("border, all blocks"));
	hot_row_shuffle(row, set, true);
	hot_rows_grade(rows, rows->n - 1);
	hot_say_row(row, set);
}

/* The test, then each block's numbers if there are several. */
void hot_add_borders(struct hot_rows *rows, const struct log *l,
	const struct hot_field *f, size_t group)
{
	struct hot_set set;

	hot_set_of(&set, l, f, group, HOT_SIDES);
	if (set.n > 0)
		add_border_test(rows, &set);
	size_t first = rows->n;
	for (size_t i = 0; i < l->blocks.n && blocks_in(&set) > 1; i++)
		if (has_block(&set, i))
			add_border_of(rows, &set, i);
	hot_rows_sort(rows, first);
	hot_set_free(&set);
}

void hot_add_traps(struct hot_rows *rows, const struct hot_set *set)
{
	size_t first = rows->n;

	for (size_t i = 0; i < set->n; i++) {
		const struct trap *t = &set->log->traps.items[set->takes[i]->trap];
		memset(set->in, 0, set->n * sizeof *set->in);
		set->in[i] = true;
		struct hot_row *row = hot_rows_add(rows, set, HOT_OF_TRAP);
		row->trap = set->takes[i]->trap;
		row->block = t->block;
		snprintf(row->name, sizeof row->name, _("trap %s"), t->label);
		hot_row_grade_low(row);
		hot_say_row(row, set);
	}
	hot_rows_sort(rows, first);
}
