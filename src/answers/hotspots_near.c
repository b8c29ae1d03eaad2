/* hotspots_near.c - neighbourhoods: a trap and those near it. */
#include "hotspots_words.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

struct position hot_position(const struct hot_set *set, size_t i)
{
	const struct trap *t = &set->log->traps.items[set->takes[i]->trap];

	return (struct position){ t->lat, t->lon };
}

struct position *hot_positions(const struct hot_set *located)
{
	struct position *at = mem_new(located->n, sizeof *at);

	for (size_t i = 0; i < located->n; i++)
		at[i] = hot_position(located, i);
	return at;
}

static double extent_of(const struct position *at, size_t n)
{
	double far = 0;

	for (size_t i = 0; i < n; i++)
		for (size_t k = i + 1; k < n; k++)
			far = fmax(far, ground_distance(at[i], at[k]));
	return far;
}

double hot_band(const struct hot_set *located)
{
	if (located->n < 2)
		return 0;
	struct position *at = hot_positions(located);
	double band = fmin(ground_band(at, located->n), extent_of(at, located->n) / 2);
	free(at);
	return band;
}

/* Weekly rates, for Gi*. */
static double *rates_of(const struct hot_set *set)
{
	double *x = mem_new(set->n, sizeof *x);

	for (size_t i = 0; i < set->n; i++)
		x[i] = 7.0 * (double)set->catches[i].moths /
		       (double)set->catches[i].nights;
	return x;
}

static size_t choose_near(
	const struct hot_set *set, const struct position *at, size_t i, double band)
{
	size_t n = 0;

	for (size_t k = 0; k < set->n; k++) {
		set->in[k] = k == i || ground_distance(at[i], at[k]) <= band;
		n += set->in[k];
	}
	return n;
}

static bool is_size(const struct hot_set *set, size_t members)
{
	return members >= (size_t)hot_constants.near_members && members <= set->n / 2;
}

static void add_row(struct hot_rows *rows, const struct hot_set *set, size_t i)
{
	const struct trap *t = &set->log->traps.items[set->takes[i]->trap];
	struct hot_row *row = hot_rows_add(rows, set, HOT_OF_NEAR);

	row->trap = set->takes[i]->trap;
	row->block = t->block;
	snprintf(row->name, sizeof row->name, _("trap %s and near"), t->label);
	hot_row_shuffle(row, set, false);
}

/* Their words, once they are graded together. */
static void say_rows(struct hot_rows *rows, size_t first, const struct hot_set *set,
	const struct position *at, double band)
{
	for (size_t r = first; r < rows->n; r++)
		for (size_t i = 0; i < set->n; i++)
			if (set->takes[i]->trap == rows->items[r].trap) {
				choose_near(set, at, i, band);
				hot_say_row(&rows->items[r], set);
			}
}

void hot_add_near(struct hot_rows *rows, const struct hot_set *set, double band)
{
	size_t first = rows->n;

	if (set->n < (size_t)hot_constants.near_traps || !(band > 0))
		return;
	struct position *at = hot_positions(set);
	double *x = rates_of(set);
	for (size_t i = 0; i < set->n; i++)
		if (is_size(set, choose_near(set, at, i, band))) {
			add_row(rows, set, i);
			rows->items[rows->n - 1].gi_star =
				ground_gi_star(x, at, set->n, band, i);
		}
	hot_rows_grade(rows, first);
	hot_rows_sort(rows, first);
	say_rows(rows, first, set, at, band);
	free(x);
	free(at);
}
