/* Distances and neighbours where the earth or the farm is odd. Values from outside
 * stand in tests/reference. */
#include "season/ground.h"

#include "season/log.h"

#include <math.h>

static void near(const char *what, double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		fail_msg("%s: %.9g, not %.9g", what, got, want);
}

static double apart(struct point a, struct point b)
{
	return hypot(a.x - b.x, a.y - b.y);
}

/* A degree of a great circle is 111 195.08 m on the sphere of ground.h. */
static void ground_distance_goes_the_shorter_way(void **state)
{
	static const struct {
		const char *why;
		struct position a, b;
		double degrees;
	} row[] = {
		{ "one point", { 46.1, -35.5 }, { 46.1, -35.5 }, 0 },
		{ "along a meridian", { -1, 20 }, { 1, 20 }, 2 },
		{ "along the equator", { 0, -1 }, { 0, 1 }, 2 },
		{ "across the date line", { 0, 179.9 }, { 0, -179.9 }, 0.2 },
		{ "both names of the date line", { 7, 180 }, { 7, -180 }, 0 },
		{ "over the pole", { 89, 0 }, { 89, 180 }, 2 },
		{ "all are one at the pole", { 90, -70 }, { 90, 110 }, 0 },
		{ "the other side", { 0, 0 }, { 0, 180 }, 180 },
		{ "from pole to pole", { 90, 0 }, { -90, 33 }, 180 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		double degree = 6371008.8 * acos(-1) / 180;
		double there = ground_distance(row[i].a, row[i].b);
		near(row[i].why, there, row[i].degrees * degree, 0.001);
		near(row[i].why, ground_distance(row[i].b, row[i].a), there, 0);
	}
}

/* Wherever the farm lies, its plane keeps the distances: 4 traps at the corners of some
 * 200 m, to a tenth of a percent. */
static void ground_plane_keeps_distances_everywhere(void **state)
{
	static const struct {
		const char *why;
		struct position middle;
		double half_lon; /* degrees */
	} row[] = {
		{ "on the equator", { 0, 0 }, 0.0009 },
		{ "at sea", { 46.1, -35.5 }, 0.0013 },
		{ "on the date line", { -43, 180 }, 0.0013 },
		{ "short of the pole", { 88.9, 12 }, 0.05 },
		{ "near the pole", { 89.1, 12 }, 0.05 },
		{ "a walk from the pole", { 89.99, 12 }, 5 },
		{ "near the other pole", { -89.99, -170 }, 5 },
	};

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct position at[4];
		for (int k = 0; k < 4; k++) {
			double lon =
				row[i].middle.lon + (k % 2 ? 1 : -1) * row[i].half_lon;
			at[k] = (struct position){ row[i].middle.lat +
							   (k / 2 ? 9e-4 : -9e-4),
				lon > 180 ? lon - 360 : lon };
		}
		struct plane p = ground_plane(at, 4);
		near(row[i].why, ground_distance(p.middle, row[i].middle), 0, 0.01);
		for (int k = 1; k < 4; k++) {
			double want = ground_distance(at[0], at[k]);
			double got =
				apart(ground_point(&p, at[0]), ground_point(&p, at[k]));
			near(row[i].why, got, want, want / 1000);
		}
		assert_true(ground_point(&p, at[3]).x > 0); /* east */
		assert_true(ground_point(&p, at[3]).y > 0); /* north */
	}
}

static void ground_traps_round_the_pole_stay_neighbours(void **state)
{
	static const struct position at[] = { { 89.999, 0 }, { 89.999, 90 },
		{ 89.999, 180 }, { 89.999, -90 }, { 90, 0 } };
	struct plane p = ground_plane(at, 5);

	(void)state;
	for (int a = 0; a < 5; a++)
		for (int b = 0; b < 5; b++)
			near("apart",
				apart(ground_point(&p, at[a]), ground_point(&p, at[b])),
				ground_distance(at[a], at[b]), 0.01);
}

static void ground_plane_of_one_point_is_that_point(void **state)
{
	static const struct position at[] = { { -12.5, -180 }, { -12.5, 180 } };
	struct plane p = ground_plane(at, 2);

	(void)state;
	assert_true(p.middle.lat == -12.5 && fabs(p.middle.lon) == 180);
	near("x", ground_point(&p, at[1]).x, 0, 0);
	near("y", ground_point(&p, at[1]).y, 0, 0);
}

enum { DEGREE_M = 111195 }; /* to a tenth of a metre, near enough for what follows */

static struct position metres(double x, double y)
{
	return (struct position){ y / DEGREE_M, x / DEGREE_M };
}

static void ground_outline_is_felt_from_all_sides(void **state)
{
	/* An L: the corner cut out is outside. */
	const struct position shape[] = { metres(0, 0), metres(200, 0),
		metres(200, 100), metres(100, 100), metres(100, 200), metres(0, 200) };
	const struct position back[] = { shape[5], shape[4], shape[3], shape[2],
		shape[1], shape[0], shape[5] };
	static const struct {
		const char *why;
		double x, y, want;
	} row[] = {
		{ "inside", 50, 50, 0 },
		{ "inside the arm", 50, 190, 0 },
		{ "on an edge", 200, 50, 0 },
		{ "on a corner", 0, 0, 0 },
		{ "to the east", 260, 50, 60 },
		{ "to the west, at the height of a corner", -30, 100, 30 },
		{ "off a corner", 203, -4, 5 },
		{ "in the corner cut out", 130, 140, 30 },
		{ "beyond the end of an edge", 150, 240, 64.0312 },
	};
	struct plane p = ground_plane(shape, 1);

	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct position at = metres(row[i].x, row[i].y);
		near(row[i].why, ground_to_outline(&p, at, shape, 6), row[i].want,
			0.01);
		near(row[i].why, ground_to_outline(&p, at, back, 7), row[i].want, 0.01);
	}
}

static void ground_outline_of_one_point_is_a_point(void **state)
{
	const struct position shape[] = { metres(30, 40), metres(30, 40),
		metres(30, 40) };
	const struct position at = metres(0, 0);
	struct plane p = ground_plane(&at, 1);

	(void)state;
	near("away", ground_to_outline(&p, at, shape, 3), 50, 0.01);
	near("at it", ground_to_outline(&p, shape[0], shape, 3), 0, 0);
}

static void ground_outline_lies_across_the_date_line(void **state)
{
	const struct position shape[] = { { -0.001, 179.999 }, { 0.001, 179.999 },
		{ 0.001, -179.999 }, { -0.001, -179.999 } };
	const struct position at[] = { { 0, 179.9995 }, { 0, -179.998 } };
	struct plane p = ground_plane(at, 2);

	(void)state;
	near("inside", ground_to_outline(&p, at[0], shape, 4), 0, 0);
	near("beside", ground_to_outline(&p, at[1], shape, 4), 111.195, 0.01);
}

static void ground_band_leaves_no_trap_alone(void **state)
{
	const struct position at[] = { metres(0, 0), metres(0, 0), metres(0, 50),
		metres(0, 150) };

	(void)state;
	near("the one far off", ground_band(at, 4), 100, 0.01);
	near("without it", ground_band(at, 3), 50, 0.01);
	assert_true(isinf(ground_band(at, 2))); /* all at one point */
	near("spacing", ground_spacing(at, 4), 50, 0.01);
	near("spacing", ground_spacing(at + 2, 2), 100, 0.01);
	near("at one point", ground_spacing(at, 2), 0, 0);
	near("of one", ground_spacing(at, 1), 0, 0);
}

static void ground_gi_star_says_nothing_where_there_is_nothing(void **state)
{
	const struct position at[] = { metres(0, 0), metres(0, 50), metres(0, 200),
		metres(0, 300) };
	const double none[] = { 0, 0, 0, 0 };
	const double one[] = { 0, 0, 0, 7 };

	(void)state;
	assert_true(isnan(ground_gi_star(none, at, 4, 60, 0)));
	assert_true(isnan(ground_gi_star(one, at, 4, 1000, 0))); /* all are near */
	assert_true(isnan(ground_gi_star(one, at, 1, 60, 0)));
	assert_true(isnan(ground_gi(one, at, 4, 40, 0))); /* none is */
	assert_true(isnan(ground_gi(one, at, 4, 1000, 0)));
	assert_true(isnan(ground_gi(one, at, 4, 60, 3)));
	assert_true(isnan(ground_gi(one, at, 1, 60, 0)));
	/* One of four by itself: mean 7/4, s^2 = 147/16, and so the root of 3. */
	near("by itself", ground_gi_star(one, at, 4, 40, 3), sqrt(3), 1e-12);
	near("two of the rest", ground_gi_star(one, at, 4, 60, 0), -1, 1e-12);
}

static void ground_gi_star_of_equal_rates_is_not_rounding(void **state)
{
	struct position at[10];
	double x[10];

	(void)state;
	for (int i = 0; i < 10; i++) { /* ten tenths are not quite one */
		at[i] = metres(0, 50 * i);
		x[i] = 0.1;
	}
	for (size_t i = 0; i < 10; i++) {
		assert_true(isnan(ground_gi_star(x, at, 10, 60, i)));
		assert_true(isnan(ground_gi(x, at, 10, 60, i)));
	}
}

static void ground_band_takes_in_what_stands_on_it(void **state)
{
	const struct position at[] = { metres(0, 0), metres(0, 50), metres(0, 200) };
	const double x[] = { 1, 2, 6 };
	double band = ground_distance(at[0], at[1]);

	(void)state;
	/* Both low ones: 3 - 2 * 3 over the root of 14/3 * 1. */
	near("on it", ground_gi_star(x, at, 3, band, 0), -3 / sqrt(14.0 / 3), 1e-12);
	near("short of it", ground_gi_star(x, at, 3, band * 0.999, 0),
		-2 / sqrt(14.0 / 3), 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ground_distance_goes_the_shorter_way),
		cmocka_unit_test(ground_plane_keeps_distances_everywhere),
		cmocka_unit_test(ground_traps_round_the_pole_stay_neighbours),
		cmocka_unit_test(ground_plane_of_one_point_is_that_point),
		cmocka_unit_test(ground_outline_is_felt_from_all_sides),
		cmocka_unit_test(ground_outline_of_one_point_is_a_point),
		cmocka_unit_test(ground_outline_lies_across_the_date_line),
		cmocka_unit_test(ground_band_leaves_no_trap_alone),
		cmocka_unit_test(ground_gi_star_says_nothing_where_there_is_nothing),
		cmocka_unit_test(ground_gi_star_of_equal_rates_is_not_rounding),
		cmocka_unit_test(ground_band_takes_in_what_stands_on_it),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
