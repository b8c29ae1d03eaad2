/* Flights against values computed by independent programs and against published ones.
 * Each source stands beside its check. */
#include "season/flights.h"

#include "reference/flights_vectors.h"
#include "season/log.h"

static bool near(double got, double want, double within)
{
	return got - want <= within && want - got <= within;
}

static struct flight_series series_of_vector(const struct vector *v)
{
	struct flight_series s = { .n = (size_t)v->n };

	for (int w = 0; w < v->n; w++) {
		s.moths[w] = v->moths[w] < 0 ? 0 : v->moths[w];
		s.nights[w] = v->moths[w] < 0 ? 0 : 28;
	}
	return s;
}

static void compare_flights(const struct vector *v, const struct flights *f)
{
	if ((int)f->n != v->n_flights)
		fail_msg("%s, %s: %zu flights", v->id, v->why, f->n);
	for (size_t i = 0; i < f->n; i++) {
		const struct flight *x = &f->items[i];
		if (x->peak_week != v->peaks[i] ||
			x->first_week != v->flights[i].first ||
			x->last_week != v->flights[i].last)
			fail_msg("%s, %s: flight %zu: weeks %d to %d, peak %d", v->id,
				v->why, i, x->first_week, x->last_week, x->peak_week);
		if (!near(x->moths, v->flights[i].moths, 1e-9))
			fail_msg("%s: flight %zu: %g moths", v->id, i, x->moths);
		if (!near(x->d10, v->flights[i].d10, 1e-6) ||
			!near(x->d50, v->flights[i].d50, 1e-6) ||
			!near(x->d90, v->flights[i].d90, 1e-6))
			fail_msg("%s: flight %zu: %.9f / %.9f / %.9f", v->id, i, x->d10,
				x->d50, x->d90);
		if (x->flags != v->flights[i].flags)
			fail_msg("%s, %s: flight %zu: flags %#x", v->id, v->why, i,
				x->flags);
	}
}

static void every_vector_gives_its_flights(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT_OF(vectors); i++) {
		struct flight_series s = series_of_vector(&vectors[i]);
		struct flights f;
		flights_find(&s, &f);
		compare_flights(&vectors[i], &f);
	}
	assert_int_equal(COUNT_OF(vectors), 22);
}

static void every_vector_gives_its_valleys_and_chances(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT_OF(vectors); i++) {
		const struct vector *v = &vectors[i];
		struct flight_series s = series_of_vector(v);
		struct flights f;
		flights_find(&s, &f);
		for (size_t k = 0; k + 1 < f.n; k++) {
			if (f.valley_week[k] != v->valleys[k])
				fail_msg("%s: valley %d", v->id, f.valley_week[k]);
			if (!near(f.split_p[k] / v->split_p[k], 1, 1e-9))
				fail_msg("%s: p %.12g", v->id, f.split_p[k]);
		}
	}
}

static void every_vector_gives_its_candidates(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT_OF(vectors); i++) {
		const struct vector *v = &vectors[i];
		struct flight_series s = series_of_vector(v);
		struct flights f;
		flights_find(&s, &f);
		if ((int)f.n_candidates != v->n_candidates)
			fail_msg("%s: %zu candidates", v->id, f.n_candidates);
		for (size_t k = 0; k < f.n_candidates; k++) {
			const struct flight_candidate *c = &f.candidates[k];
			const struct flight_candidate *w = &v->candidates[k];
			if (c->week != w->week || !near(c->height, w->height, 5e-9) ||
				!near(c->prominence, w->prominence, 5e-9))
				fail_msg("%s: %d, %.10g, %.10g", v->id, c->week,
					c->height, c->prominence);
		}
	}
}

/* Of F01, from the same independent program. */
static void the_smoothed_weeks_of_two_clean_flights(void **state)
{
	static const double want[] = { 0.1666666667, 0.8125, 2.5, 5, 6.5, 5.3125, 2.875,
		1.1875, 0.375, 0.25, 1.125, 3.3125, 5.875, 6.4375, 4.375, 1.9375, 0.625,
		0.1666666667 };
	struct flight_series s = series_of_vector(&vectors[0]);
	struct flights f;
	(void)state;
	flights_find(&s, &f);
	assert_int_equal(f.end - f.first, COUNT_OF(want));
	for (size_t w = 0; w < COUNT_OF(want); w++)
		if (!near(f.smooth[w], want[w], 5e-11))
			fail_msg("week %zu: %.12g", w, f.smooth[w]);
}

/* Exact tails: whole-number arithmetic of Python's fractions and math.comb, not
 * published. The first five agree with SciPy 1.10.1 in ten digits. */
static void the_dip_test_is_exact(void **state)
{
	static const struct {
		int peak, valley;
		double peak_nights, valley_nights, want;
	} row[] = {
		{ 14, 3, 84, 84, 6.3629150390625e-3 },
		{ 9, 3, 84, 84, 7.299804687500000e-2 },
		{ 6, 1, 28, 28, 6.25e-2 },
		{ 30, 18, 84, 84, 5.570144553050937e-2 },
		{ 5, 0, 28, 14, 0.1316872427983539 },
		{ 9, 2, 16660, 17877, 2.505324780705445e-2 },
		{ 92, 61, 245, 735, 3.959229873537210e-20 },
		{ 35, 118, 238, 742, 6.874115930951318e-1 },
		{ 19, 134, 252, 728, 9.999833397775799e-1 },
		{ 2600, 2400, 84, 84, 2.441824868758759e-3 },
		{ 2600, 2550, 84, 84, 2.473689995162813e-1 },
		{ 5000, 4000, 84, 84, 2.790700783506958e-26 },
		{ 3000, 9000, 21, 84, 1.130311844262294e-40 },
		{ 1, 5000, 84, 84, 1 },
		{ 9000, 9000, 84, 84, 5.029734988947054e-1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		double got = flight_dip_p(row[i].peak, row[i].peak_nights,
			row[i].valley, row[i].valley_nights);
		if (!near(got / row[i].want, 1, 1e-11))
			fail_msg("%d v %d: %.15g", row[i].peak, row[i].valley, got);
	}
}

/* M. P. Fay, note on tests of the ratio of two Poisson rates: 2 events in 17877 against
 * 9 in 16660, two-sided p printed as 0.05011; twice the smaller tail. */
static void the_dip_test_agrees_with_a_published_rate_ratio(void **state)
{
	(void)state;
	assert_true(near(2 * flight_dip_p(9, 16660, 2, 17877), 0.05011, 0.000005));
}

/* Wisconsin DATCP Pest Bulletin 58(5), 30 May 2013, and 58(7), 13 June 2013: redbanded
 * leafroller, mean per trap in the weeks to 15, 22 and 29 May 17, 33 and 13; the first
 * flight was ending on 30 May, its peak weeks past on 13 June. The trap that catches
 * the means is ours. */
static void the_published_leafroller_flight_peaked_in_the_week_to_22_may(void **state)
{
	int32_t day = day_from_ymd(2013, 5, 8);
	struct visit visits[] = { { .day = day, .outcome = OUTCOME_HUNG },
		{ .day = day + 7, .outcome = OUTCOME_COUNTED, .count = 17 },
		{ .day = day + 14, .outcome = OUTCOME_COUNTED, .count = 33 },
		{ .day = day + 21, .outcome = OUTCOME_COUNTED, .count = 13 } };
	struct diary d = { 0 };
	const struct diary *const list[] = { &d };
	struct flight_series s;
	struct flights f;
	(void)state;
	diary_read(&d, visits, COUNT_OF(visits));
	assert_true(flight_series_of(
		list, 1, day_from_ymd(2013, 1, 1), day_from_ymd(2013, 12, 31), &s));
	flights_find(&s, &f);
	diary_free(&d);
	assert_int_equal(f.n, 1);
	assert_int_equal(s.first_day + 7 * (f.items[0].peak_week + 1),
		day_from_ymd(2013, 5, 22));
	assert_true(near(f.items[0].peak_rate, 33, 1e-12));
	assert_int_equal(f.items[0].flags & FLIGHT_STILL_RISING, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_vector_gives_its_flights),
		cmocka_unit_test(every_vector_gives_its_valleys_and_chances),
		cmocka_unit_test(every_vector_gives_its_candidates),
		cmocka_unit_test(the_smoothed_weeks_of_two_clean_flights),
		cmocka_unit_test(the_dip_test_is_exact),
		cmocka_unit_test(the_dip_test_agrees_with_a_published_rate_ratio),
		cmocka_unit_test(
			the_published_leafroller_flight_peaked_in_the_week_to_22_may),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
