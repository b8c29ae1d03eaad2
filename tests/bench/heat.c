/* heat.c - degree-days of 30 years at 10 stations, ten times over so that making the
 * weather counts little, for tests/bench/run: by src/season or by the plainest loop
 * over the textbook's single sine. `heat ours BASE[:CAP] ...` or
 * `heat plain ...`, degrees F; prints the sum of all, which is the same either way.
 * The temperatures are invented. */
#include "season/degree_days.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	PASSES = 10,
	STATIONS = 10,
	DAYS = 30 * 365 + 7,
	FIRST_DAY = 9131 /* 1995-01-01 */
};

static struct dd_temps temps[STATIONS][DAYS];

/* A year's course with days that differ; the same numbers everywhere. */
static void make_weather(void)
{
	int64_t state = 20260721;

	for (int s = 0; s < STATIONS; s++)
		for (int i = 0; i < DAYS; i++) {
			state = state * 16807 % 2147483647;
			double mean = 52 - 24 * cos((i - 20) / 58.1) +
				      (double)(state % 200) / 10 - 10;
			double half = 5 + (double)(state / 200 % 150) / 10;
			temps[s][i] = (struct dd_temps){ .day = FIRST_DAY + i,
				.min = mean - half,
				.max = mean + half };
		}
}

static double ours(const struct dd_rule *r, int station)
{
	const struct dd_span span = { temps[station], DAYS, FIRST_DAY,
		FIRST_DAY + DAYS - 1 };

	return dd_total(r, &span, NULL, NULL).sum;
}

/* Mean over the day of what a sine from a to b has above t. */
static double above(double a, double b, double t)
{
	const double half_turn = 3.14159265358979323846;
	double mean = (a + b) / 2, swing = (b - a) / 2;

	if (t >= b)
		return 0;
	if (t <= a)
		return mean - t;
	double angle = asin((t - mean) / swing);
	return ((mean - t) * (half_turn / 2 - angle) + swing * cos(angle)) / half_turn;
}

static double plain(const struct dd_rule *r, int station)
{
	double sum = 0;

	for (int i = 0; i < DAYS; i++) {
		double a = temps[station][i].min, b = temps[station][i].max;
		sum += above(a, b, r->base);
		if (r->cutoff == DD_HORIZONTAL)
			sum -= above(a, b, r->cap);
	}
	return sum;
}

int main(int argc, char **argv)
{
	double sum = 0;

	if (argc < 3 || (strcmp(argv[1], "ours") != 0 && strcmp(argv[1], "plain") != 0))
		return fprintf(stderr, "usage: heat ours|plain BASE[:CAP] ...\n"), 2;
	bool is_plain = strcmp(argv[1], "plain") == 0;
	make_weather();
	for (int k = 2; k < argc; k++) {
		char *end;
		struct dd_rule r = { DD_SINE, DD_NO_CUTOFF, strtod(argv[k], &end),
			NAN };
		if (*end == ':') {
			r.cutoff = DD_HORIZONTAL;
			r.cap = strtod(end + 1, NULL);
		}
		for (int s = 0; s < PASSES * STATIONS; s++)
			sum += is_plain ? plain(&r, s % STATIONS)
					: ours(&r, s % STATIONS);
	}
	return printf("%.3f\n", sum) < 0;
}
