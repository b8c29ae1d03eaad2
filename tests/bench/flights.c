/* flights.c - the weeks of 50 seasons of 200 traps, 40 times over, for
 * tests/bench/run: by src/season or by the plainest loop, which spreads each count over
 * its nights. `flights ours` or `flights plain`; prints the sum of the weekly rates,
 * which is the same either way. Ours looks for flights, too. */
#include "season/flights.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	PASSES = 40,
	SEASONS = 50,
	TRAPS = 200,
	VISITS = 26,
	FIRST_DAY = 20567, /* a Monday */
	LAST_DAY = FIRST_DAY + 7 * (VISITS - 1),
};

static struct visit visits[TRAPS][VISITS];
static struct diary diaries[TRAPS];
static const struct diary *all[TRAPS];

/* Two humps; the same numbers everywhere. */
static void make_season(int season)
{
	int64_t state = 20260721 + season;

	for (int t = 0; t < TRAPS; t++) {
		for (int w = 0; w < VISITS; w++) {
			state = state * 16807 % 2147483647;
			double first = (w - 6) / 2.5, second = (w - 16) / 2.5;
			double mean =
				9 * exp(-first * first) + 9 * exp(-second * second);
			visits[t][w] = (struct visit){ .trap = t + 1,
				.day = FIRST_DAY + 7 * w,
				.outcome = w ? OUTCOME_COUNTED : OUTCOME_HUNG,
				.count =
					w ? (int32_t)(mean * (double)(state % 100) / 50)
					  : COUNT_NONE,
				.females = COUNT_NONE,
				.others = COUNT_NONE };
		}
		diary_read(&diaries[t], visits[t], VISITS);
		all[t] = &diaries[t];
	}
}

static double sum_of(const struct flight_series *s)
{
	double sum = 0;

	for (size_t w = 0; w < s->n; w++)
		sum += s->nights[w] > 0 ? 7 * s->moths[w] / s->nights[w] : 0;
	return sum;
}

static double ours(void)
{
	static struct flights found;
	struct flight_series s;

	if (!flight_series_of(all, TRAPS, FIRST_DAY, LAST_DAY, &s))
		exit(1);
	flights_find(&s, &found);
	return sum_of(&s);
}

static double plain(void)
{
	struct flight_series s = { .n = VISITS };

	for (int t = 0; t < TRAPS; t++)
		for (int w = 1; w < VISITS; w++) {
			int32_t from = visits[t][w - 1].day, to = visits[t][w].day;
			for (int32_t day = from; day < to; day++) {
				int week = (day - FIRST_DAY) / 7;
				s.moths[week] +=
					(double)visits[t][w].count / (to - from);
				s.nights[week] += 1;
			}
		}
	return sum_of(&s);
}

int main(int argc, char **argv)
{
	double sum = 0;

	if (argc != 2 ||
		(strcmp(argv[1], "ours") != 0 && strcmp(argv[1], "plain") != 0))
		return fprintf(stderr, "usage: flights ours|plain\n"), 2;
	bool is_plain = strcmp(argv[1], "plain") == 0;
	for (int season = 0; season < SEASONS; season++) {
		make_season(season);
		for (int pass = 0; pass < PASSES; pass++)
			sum += is_plain ? plain() : ours();
	}
	for (int t = 0; t < TRAPS; t++)
		diary_free(&diaries[t]);
	return printf("%.3f\n", sum) < 0;
}
