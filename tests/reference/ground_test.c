/* Distances, neighbourhoods and borders against values computed by independent programs
 * and against a published grid. Each source stands beside its check. */
#include "reference/orchard.h"

#include <math.h>

/* Haversine on a sphere of the mean radius of WGS 84; NumPy 1.24.2. */
static void ground_distance_is_the_haversine(void **state)
{
	struct orchard o = orchard_read();

	(void)state;
	same("to trap", 2, ground_distance(o.at[0], o.at[1]), 90.28272423);
	same("to trap", 3, ground_distance(o.at[0], o.at[2]), 126.898063);
	same("to trap", 12, ground_distance(o.at[0], o.at[11]), 633.8061228);
	same("band", 0, ground_band(o.at, ORCHARD_TRAPS), 127.1570977);
}

/* Distances on the local plane agree with those of GEOS through R's sf 1.0-9. */
static void ground_outline_distances_are_those_of_another_library(void **state)
{
	static const double want[] = { 47.57888586, 100.8974051, 163.9208719,
		258.2289521, 279.5650913, 333.052201, 434.2413924, 450.6353168,
		496.5759721, 615.7119663, 637.0109452, 679.318459 };
	struct orchard o = orchard_read();
	struct plane plane = ground_plane(o.at, ORCHARD_TRAPS);
	struct position inside = { 46.1002, -35.5025 };

	(void)state;
	same("latitude of the middle", 0, plane.middle.lat, 46.1005166667);
	same("longitude of the middle", 0, plane.middle.lon, -35.4969333333);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		same("trap", i + 1, o.metres[i], want[i]);
	assert_true(ground_to_outline(&plane, inside, o.outline, ORCHARD_CORNERS) == 0);
}

static void rates_of(const struct orchard *o, double rate[static ORCHARD_TRAPS])
{
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		rate[i] = 7 * (double)o->traps[i].moths / (double)o->traps[i].nights;
}

/* Ord and Getis 1995, Gi and Gi* with 0/1 weights within 250 m: R's spdep 1.2-7,
 * localG, on weekly rates. */
static void ground_gi_is_that_of_another_library(void **state)
{
	static const double star[] = { 2.71982966, 2.71982966, 2.411396519, 1.866059073,
		1.708578856, -0.3704977347, -1.741759678, -2.939456488, -2.023040293,
		-2.161970688, -2.411396519, -2.256015879 };
	static const double without[] = { 2.718563951, 2.501265681, 2.221173001,
		1.839720656, 1.606333432, -0.2254771561, -1.640980533, -2.795763755,
		-1.889740671, -1.950036149, -2.242258557, -2.031405165 };
	struct orchard o = orchard_read();
	double rate[ORCHARD_TRAPS];

	(void)state;
	rates_of(&o, rate);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		same("Gi* of trap", i + 1,
			ground_gi_star(rate, o.at, ORCHARD_TRAPS, 250, i), star[i]);
		same("Gi of trap", i + 1, ground_gi(rate, o.at, ORCHARD_TRAPS, 250, i),
			without[i]);
	}
}

/* The engine's exact p of each neighbourhood, by enumeration in NumPy 1.24.2; their
 * adjusted form, R 4.2.2, p.adjust. */
static void ground_neighbourhoods_are_tested_by_the_engine(void **state)
{
	static const struct {
		int traps, as_high, of;
		double bh;
	} want[] = { { 4, 1, 792, .007575757576 }, { 4, 1, 792, .007575757576 },
		{ 5, 2, 924, .008658008658 }, { 7, 4, 495, .02424242424 },
		{ 8, 3, 220, .03272727273 }, { 5, 590, 924, 1 }, { 6, 758, 792, 1 },
		{ 8, 220, 220, 1 }, { 6, 777, 792, 1 }, { 4, 790, 792, 1 },
		{ 5, 923, 924, 1 }, { 4, 792, 792, 1 } };
	struct orchard o = orchard_read();
	double p[ORCHARD_TRAPS], bh[ORCHARD_TRAPS];

	(void)state;
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		bool in[ORCHARD_TRAPS];
		int n = -1; /* itself is no neighbour */
		for (size_t j = 0; j < ORCHARD_TRAPS; j++)
			n += in[j] = ground_distance(o.at[i], o.at[j]) <= 250;
		struct hot_shuffle s =
			hot_shuffle(o.traps, ORCHARD_TRAPS, in, NULL, HOT_SEED);
		assert_true(s.is_all);
		assert_int_equal(n, want[i].traps);
		assert_int_equal(s.as_high, want[i].as_high);
		assert_int_equal(s.of, want[i].of);
		p[i] = s.p;
	}
	hot_bh(p, ORCHARD_TRAPS, bh);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		same("adjusted p", i + 1, bh[i], want[i].bh);
}

/* A grid of 16 x 16 cells 30 m apart, Getis and Ord 1996, p. 266, their cell 136
 * (x 210, y 210, value 83); the data as redistributed in R's spData 2.2.1 (CC0), the
 * values by the formula of 1995 as R's spdep 1.2-7 gives them. Laid on the equator,
 * where 30 m are 30 m; half a metre more takes in what stands on the band. */
static void ground_gi_of_the_published_grid(void **state)
{
	enum { CELLS = 256, CELL = 119 };
	static const struct {
		double band, star, without;
	} want[] = {
		{ 30, 1.450779807, 1.221979163 },
		{ 60, 1.900558883, 1.748097543 },
		{ 90, 2.096938746, 1.986135427 },
		{ 120, 1.981906852, 1.893373824 },
		{ 150, 1.306698444, 1.237454253 },
	};
	const double degree = 6371008.8 * acos(-1) / 180;
	double rows[CELLS][3], x[CELLS], mean = 0;
	struct position at[CELLS];

	(void)state;
	orchard_rows("getisord_grid.csv", CELLS, 3, *rows);
	for (size_t i = 0; i < CELLS; i++) {
		at[i].lon = rows[i][0] / degree;
		at[i].lat = rows[i][1] / degree;
		mean += (x[i] = rows[i][2]) / CELLS;
	}
	assert_true(rows[CELL][0] == 210 && rows[CELL][1] == 210 && x[CELL] == 83);
	same("mean", 0, mean, 66.609375);
	for (size_t i = 0; i < sizeof want / sizeof *want; i++) {
		double band = want[i].band + 0.5;
		same("Gi* at band", i, ground_gi_star(x, at, CELLS, band, CELL),
			want[i].star);
		same("Gi at band", i, ground_gi(x, at, CELLS, band, CELL),
			want[i].without);
	}
}

/* Border against interior, by enumeration in NumPy 1.24.2: over the whole farm, and
 * inside the blocks, where block and border cannot be mixed up. */
static void ground_border_is_tested_inside_its_blocks(void **state)
{
	struct orchard o = orchard_read();
	struct hot_split split = hot_split_of(o.traps, ORCHARD_TRAPS, o.border);

	(void)state;
	assert_int_equal(split.moths_in, 95);
	assert_int_equal(split.nights_in, 567);
	assert_int_equal(split.moths_out, 58);
	assert_int_equal(split.nights_out, 413);
	same("ratio", 0, hot_ratio_exact(&split).at, 1.193060877);
	struct hot_shuffle all =
		hot_shuffle(o.traps, ORCHARD_TRAPS, o.border, NULL, HOT_SEED);
	assert_int_equal(all.as_high, 310);
	assert_int_equal(all.of, 792);
	same("p", 0, all.p, 0.3914141414);
	struct hot_shuffle inside =
		hot_shuffle(o.traps, ORCHARD_TRAPS, o.border, o.block, HOT_SEED);
	assert_int_equal(inside.as_high, 23);
	assert_int_equal(inside.of, 81);
	same("p inside", 0, inside.p, 0.2839506173);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ground_distance_is_the_haversine),
		cmocka_unit_test(ground_outline_distances_are_those_of_another_library),
		cmocka_unit_test(ground_gi_is_that_of_another_library),
		cmocka_unit_test(ground_neighbourhoods_are_tested_by_the_engine),
		cmocka_unit_test(ground_gi_of_the_published_grid),
		cmocka_unit_test(ground_border_is_tested_inside_its_blocks),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
