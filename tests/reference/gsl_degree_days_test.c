/* The closed forms against numbers from outside: the GNU Scientific Library's
 * gsl_integration_qagp (QUADPACK's QAGP) integrates the day's temperature curve, cut at
 * the moments where it crosses base and cap. No line of the formulas is used here; only
 * what the methods mean: the shape of the curve and what counts at a temperature. */
#include "season/degree_days.h"

#include "season_2012.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { DAYS = 100000, PIECES = 64 };
static const double tolerance = 1e-9; /* of a degree-day */

/* Temperature over the time 0..1: from a to b and, if there and back, to a again. */
struct curve {
	double a, b;
	bool sine, back;
	struct dd_rule rule;
};

static double temperature(const struct curve *c, double time)
{
	double way = c->back ? 2 * time : time; /* 0 at a, 1 at b, 2 at a again */

	if (c->sine)
		return (c->a + c->b) / 2 - (c->b - c->a) / 2 * cos(M_PI * way);
	return way <= 1 ? c->a + (c->b - c->a) * way : c->b + (c->a - c->b) * (way - 1);
}

/* What counts at an instant. */
static double rate(double time, void *arg)
{
	const struct curve *c = arg;
	const struct dd_rule *r = &c->rule;
	double t = temperature(c, time);

	if (t <= r->base)
		return 0;
	if (t <= r->cap || r->cutoff == DD_NO_CUTOFF)
		return t - r->base;
	if (r->cutoff == DD_HORIZONTAL)
		return r->cap - r->base;
	return r->cutoff == DD_INTERMEDIATE ? r->cap - r->base - (t - r->cap) : 0;
}

/* The way at which the curve passes t, 0..1; beyond that: never. */
static double passes(const struct curve *c, double t)
{
	double part = (t - c->a) / (c->b - c->a);

	if (!(part > 0 && part < 1))
		return 2;
	return c->sine ? acos(1 - 2 * part) / M_PI : part;
}

static double integrated(const struct curve *c, gsl_integration_workspace *w)
{
	double first = passes(c, c->rule.base), second = passes(c, c->rule.cap);
	double ways[] = { fmin(first, second), fmax(first, second) };
	double points[7] = { 0 }, result, error;
	size_t n = 1;

	for (size_t i = 0; i < 2; i++)
		if (ways[i] < 1)
			points[n++] = c->back ? ways[i] / 2 : ways[i];
	if (c->back) {
		points[n++] = 0.5;
		for (size_t i = 2; i > 0; i--)
			if (ways[i - 1] < 1)
				points[n++] = 1 - ways[i - 1] / 2;
	}
	points[n++] = 1;
	gsl_function f = { rate, (void *)(uintptr_t)c };
	int status = gsl_integration_qagp(
		&f, points, n, 1e-11, 1e-13, PIECES, w, &result, &error);
	assert_true(status == GSL_SUCCESS || (status == GSL_EROUND && error < 1e-10));
	return fmax(0, result);
}

struct day {
	double a, b, next, base, cap;
};

static double by_gsl(
	const struct dd_rule *r, const struct day *d, gsl_integration_workspace *w)
{
	struct curve up = { .a = d->a,
		.b = d->b,
		.sine = r->method == DD_SINE || r->method == DD_DOUBLE_SINE,
		.back = !dd_is_double(r->method),
		.rule = *r };
	struct curve down = up;

	if (up.back)
		return integrated(&up, w);
	down.a = d->b;
	down.b = d->next;
	return (integrated(&up, w) + integrated(&down, w)) / 2;
}

/* Largest difference that was met. */
static double compare(enum dd_method m, enum dd_cutoff c, const struct day *d,
	gsl_integration_workspace *w)
{
	struct dd_rule r = { m, c, d->base, d->cap };
	double ours = dd_day(&r, d->a, d->b, d->next), theirs = by_gsl(&r, d, w);
	double apart = fabs(ours - theirs);

	if (!(apart <= tolerance))
		fail_msg("%s, %s, %.17g..%.17g, then %.17g, base %.17g, cap %.17g: "
			 "%.17g, by GSL %.17g",
			dd_method_word(m), dd_cutoff_word(c), d->a, d->b, d->next,
			d->base, d->cap, ours, theirs);
	return apart;
}

/* A linear congruence with the multiplier of Knuth's MMIX: the same in every run. */
static double roll(uint64_t *seed, double lo, double hi)
{
	*seed = *seed * 6364136223846793005u + 1442695040888963407u;
	return lo + (hi - lo) * (double)(*seed >> 11) / 9007199254740992.0;
}

/* A thermometer's tenth, as every second day has it. */
static double tenth(double t)
{
	return round(t * 10) / 10;
}

/* One of the days on which an end or both lie on base, cap or each other. */
static void degenerate(struct day *d, int kind)
{
	double *const on[][2] = { { &d->a, &d->base }, { &d->a, &d->cap },
		{ &d->b, &d->base }, { &d->b, &d->cap } };

	if (kind < 4)
		*on[kind][0] = *on[kind][1];
	else if (kind == 4)
		d->b = d->a;
	else if (kind < 7)
		d->a = d->b = kind == 5 ? d->base : d->cap;
	else if (kind == 7)
		d->a = d->base, d->b = d->cap;
	else if (kind == 8)
		d->a = d->base - 10, d->b = d->cap + 10;
	else
		d->next = kind == 9 ? d->b : kind == 10 ? d->base : d->cap;
	if (d->a > d->b) {
		double b = d->a;
		d->a = d->b;
		d->b = b;
	}
}

enum { KINDS = 12, EVERY = 10 }; /* one day in ten is a degenerate one */

static struct day roll_day(uint64_t *seed, int i)
{
	struct day d = { .base = roll(seed, 35, 55), .cap = roll(seed, 80, 95) };

	d.a = roll(seed, 10, 100);
	d.b = d.a + roll(seed, 0, 60);
	d.next = roll(seed, 10, 100);
	if (i % 2 == 0) {
		d = (struct day){ tenth(d.a), tenth(d.b), tenth(d.next), tenth(d.base),
			tenth(d.cap) };
	}
	if (i % EVERY == 0)
		degenerate(&d, i / EVERY % KINDS);
	return d;
}

static void compare_rolled_days(enum dd_method m)
{
	gsl_integration_workspace *w = gsl_integration_workspace_alloc(PIECES);

	for (int c = 0; c < DD_CUTOFF_COUNT; c++) {
		uint64_t seed = 2012u + (uint64_t)(c * DD_METHOD_COUNT) + m;
		double worst = 0;
		for (int i = 0; i < DAYS; i++) {
			struct day d = roll_day(&seed, i);
			worst = fmax(worst, compare(m, (enum dd_cutoff)c, &d, w));
		}
		print_message("%s, %s: at most %.1e apart\n", dd_method_word(m),
			dd_cutoff_word((enum dd_cutoff)c), worst);
	}
	gsl_integration_workspace_free(w);
}

static void triangles_are_the_integral(void **state)
{
	(void)state;
	compare_rolled_days(DD_TRIANGLE);
}

static void double_triangles_are_the_integral(void **state)
{
	(void)state;
	compare_rolled_days(DD_DOUBLE_TRIANGLE);
}

static void sines_are_the_integral(void **state)
{
	(void)state;
	compare_rolled_days(DD_SINE);
}

static void double_sines_are_the_integral(void **state)
{
	(void)state;
	compare_rolled_days(DD_DOUBLE_SINE);
}

static void a_measured_year_is_the_integral(void **state)
{
	gsl_integration_workspace *w = gsl_integration_workspace_alloc(PIECES);
	static const char *const sites[] = { "Seattle", "New York" };
	struct dd_temps t[SEASON_DAYS];

	(void)state;
	for (int k = 0; k < 2 * DD_METHOD_COUNT * DD_CUTOFF_COUNT; k++) {
		enum dd_method m = (enum dd_method)(k / 2 % DD_METHOD_COUNT);
		if (m < DD_TRIANGLE)
			continue;
		season_2012(sites[k % 2], t);
		for (int i = 0; i + 1 < SEASON_DAYS; i++) {
			struct day d = { t[i].min, t[i].max, t[i + 1].min, 50, 88 };
			compare(m, (enum dd_cutoff)(k / 2 / DD_METHOD_COUNT), &d, w);
		}
	}
	gsl_integration_workspace_free(w);
}

/* One day against the next in all methods and cutoffs. */
static void compare_measured(
	double a, double b, double next, gsl_integration_workspace *w)
{
	struct day d = { a * 9 / 5 + 32, b * 9 / 5 + 32, next * 9 / 5 + 32, 50, 88 };

	for (int m = DD_TRIANGLE; m < DD_METHOD_COUNT; m++)
		for (int c = 0; c < DD_CUTOFF_COUNT; c++)
			compare((enum dd_method)m, (enum dd_cutoff)c, &d, w);
}

/* $OPEN_WEATHER: the whole open series (tests/e2e/open-weather.sh), as rows of
 * station,date,min,max,C; left out without it. */
static void every_day_of_the_open_series_is_the_integral(void **state)
{
	const char *path = getenv("OPEN_WEATHER");
	FILE *in = path ? fopen(path, "r") : NULL;
	char line[128];
	double a = NAN, b = NAN, low, high;
	int days = 0;

	(void)state;
	if (!in)
		skip();
	gsl_integration_workspace *w = gsl_integration_workspace_alloc(PIECES);
	while (fgets(line, sizeof line, in)) {
		if (sscanf(line, "%*[^,],%*[^,],%lf,%lf,C", &low, &high) != 2)
			continue;
		if (days++ > 0)
			compare_measured(a, b, low, w);
		a = low;
		b = high;
	}
	fclose(in);
	gsl_integration_workspace_free(w);
	assert_int_equal(days, 2922); /* four years of two places */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(triangles_are_the_integral),
		cmocka_unit_test(double_triangles_are_the_integral),
		cmocka_unit_test(sines_are_the_integral),
		cmocka_unit_test(double_sines_are_the_integral),
		cmocka_unit_test(a_measured_year_is_the_integral),
		cmocka_unit_test(every_day_of_the_open_series_is_the_integral),
	};
	gsl_set_error_handler_off();
	return cmocka_run_group_tests(tests, NULL, NULL);
}
