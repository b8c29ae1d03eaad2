/* Rates, ratios and the shuffled tests of hot spots against published values and
 * against values computed beforehand with R 4.2.2 and SciPy 1.10.1; each source stands
 * beside its check. */
#include "season/hotspot.h"

#include "../../src/season/hotspot_parts.h"
#include "reference/orchard.h"

#include <math.h>

/* Printed with so many digits only: within half a unit of the last. */
static void printed(const char *what, double got, double want, double unit)
{
	if (!(fabs(got - want) <= unit / 2))
		fail_msg("%s: %.12g, printed %.12g", what, got, want);
}

/* One block of the farm against the rest; R 4.2.2: poisson.test, glm(quasipoisson,
 * offset log nights) stopped at 1e-14; NumPy 1.24.2: the shuffles. */
static const struct {
	int64_t moths, nights;
	struct range rate;
	struct range ratio;
	double greater, central; /* by the exact test */
	int64_t above;           /* y E - e T */
	int as_high, shuffled;   /* of 220, and of 9999 with seed 1 */
	struct hot_quasi quasi;
} blocks[] = {
	{ 92, 245, { 2.628571429, 2.118999565, 3.223709514 },
		{ 4.524590164, 3.238458633, 6.360350823 }, 3.959229874e-20,
		7.918459747e-20, 52675, 1, 47,
		{ true, 1.509527002, 3.500419825, 0.3089206583, 4.886455343,
			0.0003179064513, { 4.524590164, 2.27324626, 9.00558664 } } },
	{ 35, 238, { 1.029411765, 0.7170230118, 1.43166257 },
		{ 0.9247258225, 0.6151975847, 1.358616375 }, 0.6874115931, 0.7660413999,
		-2114, 112, 5021,
		{ true, -0.07825799348, 12.58733553, 0.682869309, -0.1146017143,
			0.5444853916, { 0.9247258225, 0.2019398029, 4.234518578 } } },
	{ 19, 252, { 0.5277777778, 0.317756699, 0.824190377 },
		{ 0.4096185738, 0.239135639, 0.6649969511 }, 0.9999833398,
		8.501817209e-05, -19936, 189, 8616,
		{ true, -0.8925288601, 9.839178271, 0.7689461564, -1.16071698,
			0.8636419976, { 0.4096185738, 0.07384051854, 2.272294119 } } },
	{ 7, 245, { 0.2, 0.0804103729, 0.4120764389 },
		{ 0.1438356164, 0.05682551484, 0.3039361681 }, 1, 2.75897013e-11,
		-30625, 218, 9898,
		{ true, -1.939084184, 7.556247406, 1.063587812, -1.823153821,
			0.9508653331, { 0.1438356164, 0.01344826052, 1.53839112 } } },
};
enum { BLOCKS = sizeof blocks / sizeof *blocks };

static void pick_block(const struct orchard *o, size_t block, bool *in)
{
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		in[i] = o->block[i] == "ABCD"[block];
}

static void same_range(const char *what, size_t i, struct range got, struct range want)
{
	same(what, i, got.at, want.at);
	same(what, i, got.lo, want.lo);
	same(what, i, got.hi, want.hi);
}

static void hot_rates_are_those_of_another_program(void **state)
{
	static const double rate[] = { 3.416666667, 2.416666667, 2, 1, 1.416666667, 0.6,
		0.75, 0.25, 0.5833333333, 0.1818181818, 0.3333333333, 0.08333333333 };
	struct orchard o = orchard_read();

	(void)state;
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		same("trap", i + 1, hot_rate(o.traps[i].moths, o.traps[i].nights).at,
			rate[i]);
	for (size_t i = 0; i < BLOCKS; i++)
		same_range("block", i, hot_rate(blocks[i].moths, blocks[i].nights),
			blocks[i].rate);
	same("farm", 0, hot_rate(153, 980).at, 1.092857143);
	struct range none = hot_rate(0, 70);
	assert_true(none.at == 0 && none.lo == 0);
	same("none in 70 nights", 0, none.hi, 0.3688879454);
}

/* Twice the smaller tail, at most 1: the two-sided form that agrees with the limits. */
static double central(const struct hot_split *s)
{
	struct hot_split rest = { s->moths_out, s->nights_out, s->moths_in,
		s->nights_in, s->n_out, s->n_in };

	return fmin(1, 2 * fmin(hot_luck(s), hot_luck(&rest)));
}

static void hot_blocks_by_the_exact_test(void **state)
{
	struct orchard o = orchard_read();

	(void)state;
	for (size_t i = 0; i < BLOCKS; i++) {
		bool in[ORCHARD_TRAPS];
		pick_block(&o, i, in);
		struct hot_split s = hot_split_of(o.traps, ORCHARD_TRAPS, in);
		assert_true(s.moths_in == blocks[i].moths &&
			    s.moths_out + s.moths_in == 153);
		assert_true(s.nights_in == blocks[i].nights &&
			    s.nights_out + s.nights_in == 980);
		assert_true(s.n_in == 3 && s.n_out == 9);
		assert_true(s.moths_in * 980 - s.nights_in * 153 == blocks[i].above);
		same("luck of block", i, hot_luck(&s), blocks[i].greater);
		same("two-sided, block", i, central(&s), blocks[i].central);
		same_range("ratio of block", i, hot_ratio_exact(&s), blocks[i].ratio);
	}
}

/* M. P. Fay 2014, note on testing the ratio of two Poisson rates: 2 in 17877 against 9
 * in 16660 gives p 0.05011, ratio 0.2070941557, limits 0.02177406 and 1.00054910. */
static void hot_ratio_of_a_published_note(void **state)
{
	const struct hot_split s = { 2, 17877, 9, 16660, 1, 1 };
	struct range r = hot_ratio_exact(&s);

	(void)state;
	printed("p", central(&s), 0.05011, 1e-5);
	printed("ratio", r.at, 0.2070941557, 1e-10);
	printed("low", r.lo, 0.02177406, 1e-8);
	printed("high", r.hi, 1.00054910, 1e-8);
	same("p", 0, central(&s), 0.05010649561);
}

/* The first two counts: lung cancer, data of R's help of poisson.test, values by R
 * 4.2.2. The second: breast cancer and fluoroscopy, data and the printed ratio 1.86
 * from memory, so that only R 4.2.2 is a check. The third: codling moth in
 * Pennsylvania in 1984, one trap in each of nine orchards, data of Pak, Bjornstad and
 * Biddinger 2017 (COS 19-3). */
static void hot_ratio_of_counts_from_elsewhere(void **state)
{
	const struct hot_split lungs = { 11, 800, 21, 3011, 1, 1 };
	const struct hot_split breasts = { 41, 28010, 15, 19017, 1, 1 };
	const struct hot_split moths = { 210, 151, 55, 974, 1, 8 };

	(void)state;
	same_range("lungs", 0, hot_ratio_exact(&lungs),
		(struct range){ 1.971488095, 0.8584264034, 4.277265944 });
	same_range("breasts", 0, hot_ratio_exact(&breasts),
		(struct range){ 1.855758658, 1.005684063, 3.609300311 });
	same("breasts, greater", 0, hot_luck(&breasts), 0.02383012338);
	same("moths", 0, hot_ratio_exact(&moths).at, 24.62853703);
	printed("moths, luck", hot_luck(&moths) * 1e130, 9.4, 0.1);
	assert_int_equal(hot_subsets(9, 1, HOT_ENUMERATE_MAX), 9);
	assert_false(hot_is_enough(&moths));
}

static void hot_blocks_by_quasi_poisson(void **state)
{
	struct orchard o = orchard_read();

	(void)state;
	for (size_t i = 0; i < BLOCKS; i++) {
		bool in[ORCHARD_TRAPS];
		pick_block(&o, i, in);
		struct hot_quasi q = hot_ratio_quasi(o.traps, ORCHARD_TRAPS, in);
		const struct hot_quasi *want = &blocks[i].quasi;
		assert_true(q.is_defined);
		same("lambda", i, q.lambda, want->lambda);
		same("phi", i, q.phi, want->phi);
		same("se", i, q.se, want->se);
		same("t", i, q.t, want->t);
		same("p", i, q.p, want->p);
		same_range("ratio", i, q.ratio, want->ratio);
	}
}

static void hot_blocks_by_all_subsets_and_by_a_sample(void **state)
{
	const struct hot_effort sample = { 0, HOT_SHUFFLES };
	struct orchard o = orchard_read();

	(void)state;
	for (size_t i = 0; i < BLOCKS; i++) {
		bool in[ORCHARD_TRAPS];
		struct dice dice = { HOT_SEED };
		pick_block(&o, i, in);
		struct hot_shuffle all =
			hot_shuffle(o.traps, ORCHARD_TRAPS, in, NULL, HOT_SEED);
		struct hot_shuffle some =
			hot_shuffle_by(o.traps, ORCHARD_TRAPS, in, NULL, sample, &dice);
		assert_true(all.is_all && all.of == 220);
		assert_int_equal(all.as_high, blocks[i].as_high);
		same("p", i, all.p, blocks[i].as_high / 220.);
		assert_true(!some.is_all && some.of == 9999);
		assert_int_equal(some.as_high, blocks[i].shuffled);
		same("p of a sample", i, some.p, (blocks[i].shuffled + 1) / 10000.);
	}
}

static void same_many(const char *what, const double *got, const double *want, size_t n)
{
	for (size_t i = 0; i < n; i++)
		same(what, i, got[i], want[i]);
}

/* Fifteen p of Benjamini and Hochberg 1995: the input and how many are kept (4 and 3
 * at 0.05) are from memory, the adjusted values are R 4.2.2's, p.adjust; so are the
 * rest. */
static void hot_adjusted_p_are_those_of_another_program(void **state)
{
	static const double p[] = { .0001, .0004, .0019, .0095, .0201, .0278, .0298,
		.0344, .0459, .3240, .4262, .5719, .6528, .7590, 1 };
	static const double bh[] = { .0015, .003, .0095, .035625, .0603, .06385714286,
		.06385714286, .0645, .0765, .486, .5811818182, .714875, .7532307692,
		.8132142857, 1 };
	static const double holm[] = { .0015, .0056, .0247, .114, .2211, .278, .278,
		.278, .3213, 1, 1, 1, 1, 1, 1 };
	static const double four[] = { .01, .04, .03, .005 };
	static const double four_holm[] = { .03, .06, .06, .02 };
	static const double farm[] = { 1 / 220., 112 / 220., 189 / 220., 218 / 220. };
	static const double farm_holm[] = { .01818181818, 1, 1, 1 };
	static const double farm_bh[] = { .01818181818, .9909090909, .9909090909,
		.9909090909 };
	double out[15];

	(void)state;
	hot_bh(p, 15, out);
	same_many("BH", out, bh, 15);
	hot_holm(p, 15, out);
	same_many("Holm", out, holm, 15);
	hot_holm(four, 4, out);
	same_many("Holm of four", out, four_holm, 4);
	hot_holm(farm, 4, out);
	same_many("Holm of the farm", out, farm_holm, 4);
	hot_bh(farm, 4, out);
	same_many("BH of the farm", out, farm_bh, 4);
}

/* With Holm 0.018 and a ratio of 4.5 block A is a hot spot, the others are not. */
static void hot_block_of_the_farm_is_clear(void **state)
{
	const struct hot_split a = { 92, 245, 61, 735, 3, 9 };
	const struct hot_evidence e = { hot_luck(&a), .01818181818, .01818181818,
		hot_ratio_exact(&a).at };
	const struct hot_split b = { 35, 238, 118, 742, 3, 9 };
	const struct hot_evidence f = { hot_luck(&b), 1, .9909090909, 0.92 };

	(void)state;
	assert_int_equal(hot_grade_of(&a, &e), HOT_CLEAR);
	assert_int_equal(hot_grade_of(&b, &f), HOT_LUCK);
}

/* How many units hold value 0, 1, 2 ... moths, seven nights each. */
enum { VALUES = 27, UNITS_MAX = 400 };
struct table {
	const char *what;
	int units[VALUES];
	double mean; /* as printed; 0: not printed */
	/* by R's vegan 2.6-4, dispindmorisita; NAN: not known */
	double phi, morisita;
};

static struct hot_clumping clumping_of_table(const struct table *t)
{
	struct hot_catch traps[UNITS_MAX];
	int64_t moths = 0;
	size_t n = 0;

	for (int value = 0; value < VALUES; value++)
		for (int k = 0; k < t->units[value]; k++) {
			assert_true(n < UNITS_MAX);
			traps[n++] = (struct hot_catch){ value, 7 };
			moths += value;
		}
	if (t->mean > 0)
		printed(t->what, (double)moths / (double)n, t->mean, 0.001);
	return hot_clumping_of(traps, n, HOT_SEED);
}

/* Corn borers on 120 hills and webworms on 325 plots: the counts and the printed means
 * are those of Bliss and Fisher 1953, table 3, and of Beall 1940, table 6, as R's
 * agridat keeps them (bliss.borers, beall.webworms, MIT). Red mites on 150 leaves:
 * Bliss and Fisher 1953 from memory, no check of anything published. */
static void hot_clumping_of_published_tables(void **state)
{
	static const struct table tables[] = {
		{ "corn borers 1",
			{ 19, 12, 18, 18, 11, 12, 7, 8, 4, 4, 1, 0, 1, 1, 0, 1, 0, 1, 0,
				1, 0, 0, 0, 0, 0, 0, 1 },
			4.033, 4.079172165, NAN },
		{ "corn borers 2", { 24, 16, 16, 18, 15, 9, 6, 5, 3, 4, 3, 0, 1 },
			3.167, 2.453781513, NAN },
		{ "corn borers 3", { 43, 35, 17, 11, 5, 4, 1, 2, 2 }, 1.483,
			2.152582381, NAN },
		{ "corn borers 4", { 47, 23, 27, 9, 7, 3, 1, 1, 0, 0, 1, 1 }, 1.508,
			2.406750546, NAN },
		{ "webworms 1", { 117, 87, 50, 38, 21, 7, 2, 2, 0, 1 }, 0, 1.662257496,
			1.472624292 },
		{ "webworms 2", { 205, 84, 30, 4, 2 }, 0, 1.157482686, 1.313033069 },
		{ "webworms 3", { 162, 88, 45, 23, 5, 2 }, 0, 1.335918349,
			1.394338932 },
		{ "webworms 4", { 227, 70, 21, 6, 1 }, 0, 1.263220932, 1.641229941 },
		{ "red mites", { 70, 38, 17, 10, 9, 3, 2, 1 }, 0, 1.982831278,
			1.856385149 },
	};
	(void)state;
	for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
		struct hot_clumping c = clumping_of_table(&tables[i]);
		same(tables[i].what, i, c.phi, tables[i].phi);
		if (!isnan(tables[i].morisita))
			same(tables[i].what, i, c.morisita, tables[i].morisita);
		assert_true(c.is_enough && c.is_shuffled);
	}
}

/* R 4.2.2 and vegan 2.6-4 (dispindmorisita, of the counts alone). */
static void hot_clumping_of_the_farm_is_that_of_another_program(void **state)
{
	struct orchard o = orchard_read();
	struct hot_clumping c = hot_clumping_of(o.traps, ORCHARD_TRAPS, HOT_SEED);

	(void)state;
	same("X2", 0, c.x2, 128.1105169);
	same("phi", 0, c.phi, 11.64641063);
	same("p", 0, c.p, 4.196597687e-22);
	assert_true(c.is_clumped && !c.is_shuffled && isnan(c.morisita));
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		o.traps[i].nights = 84;
	same("Morisita", 0, hot_clumping_of(o.traps, ORCHARD_TRAPS, HOT_SEED).morisita,
		1.796697626);
}

/* Sparse sets, thrown with seed 1 in NumPy 1.24.2. The exact multinomial p of the
 * first is 0.09255039545, where the chi-square would say 0.0664. */
static void hot_clumping_of_few_moths_is_thrown(void **state)
{
	static const struct hot_catch twelve[] = { { 0, 7 }, { 0, 7 }, { 1, 7 },
		{ 0, 7 }, { 3, 7 }, { 0, 7 }, { 0, 7 }, { 2, 7 }, { 0, 7 }, { 0, 7 },
		{ 0, 7 }, { 1, 7 } };
	static const struct hot_catch six[] = { { 3, 21 }, { 1, 21 }, { 0, 14 },
		{ 2, 21 }, { 4, 28 }, { 1, 21 } };
	struct hot_clumping a = hot_clumping_of(twelve, 12, 1);
	struct hot_clumping b = hot_clumping_of(six, 6, 1);

	(void)state;
	same("X2", 0, a.x2, 18.71428571);
	assert_int_equal(a.as_high, 907);
	same("p", 0, a.p, 0.0908);
	same("X2", 1, b.x2, 3.727272727);
	assert_int_equal(b.as_high, 6201);
	same("p", 1, b.p, 0.6202);
	assert_true(a.is_shuffled && b.is_shuffled && !a.is_enough && !b.is_enough);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hot_rates_are_those_of_another_program),
		cmocka_unit_test(hot_blocks_by_the_exact_test),
		cmocka_unit_test(hot_ratio_of_a_published_note),
		cmocka_unit_test(hot_ratio_of_counts_from_elsewhere),
		cmocka_unit_test(hot_blocks_by_quasi_poisson),
		cmocka_unit_test(hot_blocks_by_all_subsets_and_by_a_sample),
		cmocka_unit_test(hot_adjusted_p_are_those_of_another_program),
		cmocka_unit_test(hot_block_of_the_farm_is_clear),
		cmocka_unit_test(hot_clumping_of_published_tables),
		cmocka_unit_test(hot_clumping_of_the_farm_is_that_of_another_program),
		cmocka_unit_test(hot_clumping_of_few_moths_is_thrown),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
