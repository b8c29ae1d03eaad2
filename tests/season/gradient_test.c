/* What is said of a fall, and when nothing is. Values from outside stand in
 * tests/reference. */
#include "season/gradient.h"

#include "season/log.h"

#include <math.h>

enum { TRAPS_MAX = 20 };

struct orchard {
	struct hot_catch traps[TRAPS_MAX];
	double metres[TRAPS_MAX];
	size_t n;
	double spacing;
};

/* Eight traps away from a source, every week of twelve. */
static struct orchard falling(void)
{
	static const double metres[] = { 50, 100, 150, 200, 250, 300, 400, 500 };
	static const int moths[] = { 40, 30, 25, 17, 13, 9, 5, 2 };
	struct orchard o = { .n = 8, .spacing = 50 };

	for (size_t i = 0; i < o.n; i++) {
		o.metres[i] = metres[i];
		o.traps[i] = (struct hot_catch){ moths[i], 84 };
	}
	return o;
}

static void catches(struct orchard *o, const int *moths)
{
	for (size_t i = 0; i < o->n; i++)
		o->traps[i].moths = moths[i];
}

static struct gradient judged(const struct orchard *o)
{
	return gradient_of(o->traps, o->metres, o->n, o->spacing, HOT_SEED);
}

static void says(const char *why, const struct orchard *o, enum gradient_say want)
{
	struct gradient g = judged(o);

	if (g.say != want)
		fail_msg("%s: %s, not %s (b %g %g, p %g)", why, gradient_word(g.say),
			gradient_word(want), g.b_lo, g.b_hi, g.p);
}

/* Not fitted, and no number pretends to be one. */
static void says_without_slope(
	const char *why, const struct orchard *o, enum gradient_say want)
{
	struct gradient g = judged(o);

	says(why, o, want);
	if (g.is_fitted || !isnan(g.a) || !isnan(g.b) || !isnan(g.phi) ||
		!isnan(g.se) || !isnan(g.b_lo) || !isnan(g.b_hi) ||
		!isnan(g.halving.at) || !isnan(g.halving.lo) || !isnan(g.halving.hi))
		fail_msg("%s: b is %g", why, g.b);
	if (!(g.p > 0 && g.p <= 1))
		fail_msg("%s: p is %g", why, g.p);
}

static void gradient_falls_when_both_legs_say_so(void **state)
{
	struct orchard o = falling();
	struct gradient g = judged(&o);

	(void)state;
	says("a clear fall", &o, GRADIENT_FALLS);
	assert_true(g.b_lo < g.b && g.b < g.b_hi && g.b_hi < 0);
	assert_true(g.halving.lo < g.halving.at && g.halving.at < g.halving.hi);
	assert_true(g.rho == -1 && g.as_low == 1 && g.of == 40320 && g.is_all);
	assert_true(g.nearest == 50 && g.farthest == 500);
	assert_int_equal(g.n, 8);
	assert_int_equal(g.moths, 141);
}

static void gradient_wants_enough_of_everything(void **state)
{
	struct orchard o = falling();

	(void)state;
	o.n = 7;
	says("seven traps", &o, GRADIENT_TRAPS);
	o.n = 0;
	says_without_slope("no trap", &o, GRADIENT_TRAPS);
	assert_true(isnan(judged(&o).nearest) && isnan(judged(&o).farthest));
	o.n = 1;
	says_without_slope("one trap", &o, GRADIENT_TRAPS);
	o.n = 2;
	says_without_slope("two traps", &o, GRADIENT_TRAPS);
	o = falling();
	o.metres[1] = o.metres[2] = 50;
	o.metres[6] = 500;
	says("five distances", &o, GRADIENT_FALLS);
	o.metres[5] = 500;
	says("four distances", &o, GRADIENT_DISTANCES);
	o = falling();
	for (size_t i = 0; i < o.n; i++)
		o.metres[i] += 175;
	says("three times as far", &o, GRADIENT_FALLS);
	for (size_t i = 0; i < o.n; i++)
		o.metres[i] += 1;
	says("not quite", &o, GRADIENT_DISTANCES);
	o = falling();
	catches(&o, (int[]){ 10, 7, 5, 4, 2, 1, 0, 0 });
	says("29 moths", &o, GRADIENT_MOTHS);
	catches(&o, (int[]){ 10, 7, 5, 4, 2, 1, 1, 0 });
	says("30 moths", &o, GRADIENT_FALLS);
}

static void gradient_of_traps_at_one_point_has_no_slope(void **state)
{
	struct orchard o = falling();

	(void)state;
	for (size_t i = 0; i < o.n; i++)
		o.metres[i] = 120;
	says_without_slope("all at one point", &o, GRADIENT_DISTANCES);
	assert_true(isnan(judged(&o).rho) && judged(&o).p == 1);
	for (size_t i = 0; i < o.n; i++)
		o.metres[i] = 0;
	says_without_slope("all in the source", &o, GRADIENT_DISTANCES);
}

static void gradient_of_no_moths_has_no_slope(void **state)
{
	struct orchard o = falling();

	(void)state;
	catches(&o, (int[]){ 0, 0, 0, 0, 0, 0, 0, 0 });
	says_without_slope("all zeros", &o, GRADIENT_MOTHS);
	assert_int_equal(judged(&o).moths, 0);
	assert_true(isnan(judged(&o).rho) && judged(&o).p == 1);
	catches(&o, (int[]){ 1, 0, 0, 0, 0, 0, 0, 0 });
	says_without_slope("one moth", &o, GRADIENT_MOTHS);
	catches(&o, (int[]){ 0, 0, 0, 1, 0, 0, 0, 0 });
	says("one moth in the middle", &o, GRADIENT_MOTHS);
	assert_true(isfinite(judged(&o).b) && isfinite(judged(&o).b_lo));
}

static void gradient_of_moths_at_one_end_has_no_slope(void **state)
{
	struct orchard o = falling();

	(void)state;
	catches(&o, (int[]){ 90, 0, 0, 0, 0, 0, 0, 0 });
	says_without_slope("all in the nearest", &o, GRADIENT_NEAREST);
	catches(&o, (int[]){ 0, 0, 0, 0, 0, 0, 0, 90 });
	says_without_slope("all in the farthest", &o, GRADIENT_NO_CHANGE);
	catches(&o, (int[]){ 90, 1, 0, 0, 0, 0, 0, 0 });
	assert_true(judged(&o).is_fitted);
	o.metres[1] = 50;
	catches(&o, (int[]){ 90, 20, 0, 0, 0, 0, 0, 0 });
	says_without_slope("two are nearest", &o, GRADIENT_NEAREST);
}

static void gradient_of_a_source_round_a_trap_starts_at_nothing(void **state)
{
	struct orchard o = falling();

	(void)state;
	o.metres[0] = 0;
	says("0 m", &o, GRADIENT_FALLS);
	assert_true(judged(&o).nearest == 0);
	o.metres[1] = 0;
	says("two inside", &o, GRADIENT_FALLS);
}

static void gradient_far_away_has_numbers_or_none(void **state)
{
	struct orchard o = falling();

	(void)state;
	o.traps[7].moths = 0;
	o.metres[7] = 1e4; /* e^-70 of a moth is expected there */
	struct gradient g = judged(&o);
	assert_true(g.is_fitted && isfinite(g.phi) && isfinite(g.se));
	says("10 km", &o, GRADIENT_FALLS);
	o.metres[7] = 2e5; /* the slope is out of reach in so few steps */
	says_without_slope("200 km", &o, GRADIENT_DISAGREE);
}

static void gradient_tells_a_rise_and_a_scatter_from_a_fall(void **state)
{
	struct orchard o = falling();

	(void)state;
	catches(&o, (int[]){ 2, 5, 9, 13, 17, 25, 30, 40 });
	says("a rise", &o, GRADIENT_NO_CHANGE);
	struct gradient g = judged(&o);
	assert_true(g.b > 0 && isnan(g.halving.at) && g.rho == 1 && g.p == 1);
	catches(&o, (int[]){ 10, 14, 9, 12, 15, 8, 11, 12 });
	says("scatter", &o, GRADIENT_NO_CHANGE);
	catches(&o, (int[]){ 12, 12, 12, 12, 12, 12, 12, 12 });
	says("all alike", &o, GRADIENT_NO_CHANGE);
	g = judged(&o);
	assert_true(isnan(g.rho) && g.p == 1 && fabs(g.b) < 1e-12);
	catches(&o, (int[]){ 12, 11, 12, 12, 12, 12, 12, 10 });
	g = judged(&o);
	assert_true(g.b < 0 && g.b_hi >= 0 && isinf(g.halving.hi));
}

static void gradient_needs_both_legs(void **state)
{
	struct orchard o = falling();

	(void)state;
	catches(&o, (int[]){ 10, 9, 9, 9, 8, 8, 8, 8 });
	says("ranks alone", &o, GRADIENT_DISAGREE);
	catches(&o, (int[]){ 60, 70, 20, 1, 2, 3, 4, 5 });
	says("the slope alone", &o, GRADIENT_DISAGREE);
}

static void gradient_must_not_hang_on_one_trap(void **state)
{
	struct orchard o = falling();

	(void)state;
	catches(&o, (int[]){ 60, 8, 7, 7, 6, 6, 5, 5 });
	says("but for one", &o, GRADIENT_ONE_TRAP);
	/* On the farthest, which did not catch most: that is what a fall looks like. */
	for (size_t i = 0; i < 7; i++)
		o.metres[i] = 50 + 10 * (double)i;
	catches(&o, (int[]){ 30, 22, 28, 20, 25, 18, 21, 1 });
	says("on the farthest", &o, GRADIENT_FALLS);
	o = falling();
	/* Whichever of two that caught as much comes first. */
	catches(&o, (int[]){ 24, 24, 7, 6, 6, 5, 5, 5 });
	struct orchard turned = o;
	for (size_t i = 0; i < o.n; i++) {
		turned.traps[i] = o.traps[o.n - 1 - i];
		turned.metres[i] = o.metres[o.n - 1 - i];
	}
	assert_int_equal(judged(&o).say, judged(&turned).say);
}

/* So many moths that whole ones are no matter. */
static void halve_every(struct orchard *o, double metres)
{
	for (size_t i = 0; i < o->n; i++)
		o->traps[i].moths = (int64_t)(1e7 * exp2(-o->metres[i] / metres));
}

static void gradient_tells_how_fast_within_what_the_traps_can_see(void **state)
{
	struct orchard o = falling();
	double at = judged(&o).halving.at;

	(void)state;
	o.spacing = at * 2;
	says("half the spacing", &o, GRADIENT_FALLS);
	o.spacing = at * 2.001;
	says("faster than the spacing", &o, GRADIENT_FALLS_SOMEHOW);
	halve_every(&o, 1349);
	says("three ranges of distance", &o, GRADIENT_FALLS);
	halve_every(&o, 1351);
	says("slower than that", &o, GRADIENT_FALLS_SOMEHOW);
	o = falling();
	o.spacing = 0;
	says("spacing not known", &o, GRADIENT_FALLS);
}

static void gradient_compares_rates_and_not_counts(void **state)
{
	struct orchard o = falling();

	(void)state;
	for (size_t i = 0; i < o.n; i++) /* the same rate: a week, two, three .. */
		o.traps[i] = (struct hot_catch){ 3 * (int64_t)(9 - i),
			7 * (int64_t)(9 - i) };
	says("one rate", &o, GRADIENT_NO_CHANGE);
	assert_true(isnan(judged(&o).rho));
	assert_int_equal(judged(&o).as_low, 40320); /* ties are ties */
}

static void gradient_ranks_millimetres_as_one(void **state)
{
	struct orchard o = falling(), p = falling();

	(void)state;
	o.metres[3] = o.metres[2];
	p.metres[3] = p.metres[2] + 1e-7;
	assert_int_equal(judged(&o).as_low, judged(&p).as_low);
	assert_true(judged(&o).rho == judged(&p).rho);
}

static void gradient_of_many_traps_is_shuffled_the_same_way_each_time(void **state)
{
	struct orchard o = falling();
	int64_t first = 0, other = 0;

	(void)state;
	for (o.n = 8; o.n < TRAPS_MAX; o.n++) {
		o.metres[o.n] = 40 + 25 * (double)o.n;
		o.traps[o.n] = (struct hot_catch){ 12 + 5 * (int64_t)(o.n % 3), 84 };
	}
	first = judged(&o).as_low;
	assert_false(judged(&o).is_all);
	assert_int_equal(judged(&o).of, HOT_SHUFFLES);
	assert_int_equal(judged(&o).as_low, first);
	other = gradient_of(o.traps, o.metres, o.n, o.spacing, 2).as_low;
	assert_true(first > 0 && other != first);
	assert_true(judged(&o).p == (double)(first + 1) / (HOT_SHUFFLES + 1));
}

static void gradient_spearman_takes_average_ranks(void **state)
{
	static const double x[] = { 1, 2, 3, 4 }, y[] = { 5, 7, 7, 9 };
	double s = -1;

	(void)state;
	/* Ranks 1, 2.5, 2.5, 4: 4.5 of the root of 5 * 4.5. */
	assert_true(fabs(gradient_spearman(x, y, 4, &s) - sqrt(0.9)) < 1e-15);
	assert_true(s == 0.5);
	assert_true(gradient_spearman(x, x, 4, NULL) == 1);
	assert_true(isnan(gradient_spearman(x, y, 1, &s)) && s == 0);
	assert_true(isnan(gradient_spearman(x, y, 0, &s)));
}

static void gradient_words_differ(void **state)
{
	(void)state;
	for (int a = 0; a < GRADIENT_COUNT; a++)
		for (int b = 0; b < a; b++)
			assert_string_not_equal(gradient_word((enum gradient_say)a),
				gradient_word((enum gradient_say)b));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(gradient_falls_when_both_legs_say_so),
		cmocka_unit_test(gradient_wants_enough_of_everything),
		cmocka_unit_test(gradient_of_traps_at_one_point_has_no_slope),
		cmocka_unit_test(gradient_of_no_moths_has_no_slope),
		cmocka_unit_test(gradient_of_moths_at_one_end_has_no_slope),
		cmocka_unit_test(gradient_of_a_source_round_a_trap_starts_at_nothing),
		cmocka_unit_test(gradient_far_away_has_numbers_or_none),
		cmocka_unit_test(gradient_tells_a_rise_and_a_scatter_from_a_fall),
		cmocka_unit_test(gradient_needs_both_legs),
		cmocka_unit_test(gradient_must_not_hang_on_one_trap),
		cmocka_unit_test(gradient_tells_how_fast_within_what_the_traps_can_see),
		cmocka_unit_test(gradient_compares_rates_and_not_counts),
		cmocka_unit_test(gradient_ranks_millimetres_as_one),
		cmocka_unit_test(
			gradient_of_many_traps_is_shuffled_the_same_way_each_time),
		cmocka_unit_test(gradient_spearman_takes_average_ranks),
		cmocka_unit_test(gradient_words_differ),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
