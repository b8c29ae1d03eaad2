/* hotspots_power.c - what a test of so many traps could show at all. */
#include "hotspots_words.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>

enum { POWER_CALLS = 4 };
static const double power_times =
	3; /* the block truly catches this many times as much */

/* "about 1 time in 3" */
static void say_chance(double p, char out[static SAY_LINE])
{
	if (p < 0.05)
		text_copy(out, SAY_LINE, _("hardly ever"));
	else if (p < 0.5)
		snprintf(out, SAY_LINE, _("about 1 time in %.0f"), 1 / p);
	else if (p < 0.95)
		snprintf(out, SAY_LINE, _("about %.0f times in 10"), 10 * p);
	else
		text_copy(out, SAY_LINE, _("nearly always"));
}

static double mean_of(const struct hot_set *set)
{
	double moths = 0;

	for (size_t i = 0; i < set->n; i++)
		moths += (double)set->catches[i].moths;
	return set->n ? moths / (double)set->n : 0;
}

static void say_one(struct hot_row *row, double power)
{
	char chance[SAY_LINE];

	say_chance(power, chance);
	snprintf(row->power, sizeof row->power,
		ngettext("With %d trap here a threefold block would be shown %s.",
			"With %d traps here a threefold block would be shown %s.",
			(unsigned)row->split.n_in),
		row->split.n_in, chance);
}

/* Rows of as many traps share an answer; the rest beyond a few go without, for each is
 * a simulation. */
void hot_say_power(struct hot_rows *rows, const struct hot_set *set)
{
	int sizes[POWER_CALLS], calls = 0;
	double powers[POWER_CALLS], mean = mean_of(set);

	for (size_t i = 0; i < rows->n; i++) {
		struct hot_row *row = &rows->items[i];
		const struct hot_split *s = &row->split;
		int k = 0;
		if (row->what != HOT_OF_BLOCK || row->grade >= HOT_WATCH ||
			s->n_out == 0 || mean <= 0)
			continue;
		while (k < calls && sizes[k] != s->n_in)
			k++;
		if (k == POWER_CALLS)
			continue;
		if (k == calls) {
			sizes[calls] = s->n_in;
			powers[calls++] = hot_power(
				s->n_in + s->n_out, s->n_in, mean, power_times);
		}
		say_one(row, powers[k]);
	}
}
