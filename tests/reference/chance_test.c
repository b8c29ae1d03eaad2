/* Tails, limits and the generator against values computed beforehand by independent
 * programs; each source stands beside its check. */
#include "season/chance.h"

#include "reference/orchard.h"

/* R 4.2.2, qt and pt. */
static void chance_t_is_that_of_another_program(void **state)
{
	static const double quantile[] = { 2.7764451052, 2.57058183564, 2.44691185114,
		2.36462425159, 2.3060041352, 2.2621571628, 2.22813885199, 2.20098516009,
		2.17881282967, 2.16036865646, 2.14478668792, 2.13144954556,
		2.11990529922, 2.10981557783, 2.10092204024, 2.09302405441,
		2.08596344727 };
	static const struct {
		double df, tail;
	} row[] = { { 4, 0.0580582617584 }, { 6, 0.0462131557658 },
		{ 10, 0.0366940173854 }, { 14, 0.0326439764446 },
		{ 30, 0.0273125224815 } };

	(void)state;
	for (size_t i = 0; i < sizeof quantile / sizeof *quantile; i++)
		same("quantile of df", i + 4, chance_t_quantile((double)i + 4),
			quantile[i]);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		same("tail beyond 2, row", i, chance_t(2, row[i].df), row[i].tail);
}

/* R 4.2.2, pchisq. */
static void chance_chi_square_is_that_of_another_program(void **state)
{
	static const struct {
		double x, df, tail;
	} row[] = { { 3.84, 1, 0.0500435212487 },
		{ 18.714285714285715, 11, 0.0664189724725 },
		{ 128.1105169, 11, 4.19659775332e-22 }, { 0.5, 7, 0.99944648139 },
		{ 1013.216727, 8, 2.09518977391e-213 } };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		same("row", i, chance_chi_square(row[i].x, row[i].df), row[i].tail);
}

/* R 4.2.2, pbinom. */
static void chance_binomial_is_that_of_another_program(void **state)
{
	static const struct {
		int64_t k, n;
		double p, tail;
	} row[] = { { 14, 17, .5, 0.00636291503906 }, { 9, 12, .5, 0.072998046875 },
		{ 6, 7, .5, 0.0625 }, { 92, 153, .25, 3.95922987354e-20 },
		{ 600, 1000, .5, 1.36423207803e-10 } };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		same("row", i, chance_binomial(row[i].k, row[i].n, row[i].p),
			row[i].tail);
}

/* R 4.2.2, qgamma. Garwood's printed table has 4.795389 and 18.39036 for 10: from
 * memory, no check. */
static void chance_limits_of_counts_are_those_of_another_program(void **state)
{
	static const double low[] = { 0, 0.0253178079843, 0.242209278544,
		0.618672122896, 1.08986537363, 1.62348639012, 2.20189425349,
		2.81436305152, 3.45383217675, 4.11537309738, 4.79538869613,
		5.49116036724, 6.20057510872, 6.921952491, 7.6539302763, 8.39538613278,
		9.14538245364, 9.90312646961, 10.6679407804, 11.4392411644,
		12.2165195854 };
	static const double high[] = { 3.68887945411, 5.57164339094, 7.22468766772,
		8.76727306974, 10.2415886754, 11.6683320793, 13.0594740225,
		14.4226753617, 15.7631892202, 17.0848034514, 18.390356042,
		19.6820385133, 20.9615850482, 22.2303959182, 23.4896211218,
		24.7402188715, 25.9829975976, 27.2186468159, 28.4477602675,
		29.6708535716, 30.8883779027 };

	(void)state;
	for (size_t y = 0; y < sizeof low / sizeof *low; y++) {
		struct range r = chance_count((int64_t)y);
		same("low of", y, r.lo, low[y]);
		same("high of", y, r.hi, high[y]);
	}
}

/* R 4.2.2, binom.test. */
static void chance_limits_of_shares_are_those_of_another_program(void **state)
{
	static const struct {
		int64_t x, n;
		double low, high;
	} row[] = { { 0, 10, 0, 0.308497107819 },
		{ 1, 10, 0.00252857854446, 0.445016117028 },
		{ 5, 10, 0.187086028447, 0.812913971553 },
		{ 10, 10, 0.691502892181, 1 }, { 2, 11, 0.0228311983, 0.51775585236 },
		{ 92, 153, 0.519111983204, 0.679499192192 } };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct range r = chance_share(row[i].x, row[i].n);
		same("low, row", i, r.lo, row[i].low);
		same("high, row", i, r.hi, row[i].high);
	}
}

/* Steele, Lea and Flood 2014; five numbers of seed 1234567 as they are widely printed
 * are from memory, and so no check; all were computed with NumPy 1.24.2. */
static void dice_are_splitmix64(void **state)
{
	static const uint64_t five[] = { 6457827717110365317u, 3203168211198807973u,
		9817491932198370423u, 4593380528125082431u, 16408922859458223821u };
	static const uint64_t three[] = { 10451216379200822465u, 13757245211066428519u,
		17911839290282890590u };
	static const uint64_t below[] = { 5, 7, 6, 11, 9, 8, 9, 9, 0, 10, 9, 10 };
	struct dice d = { 1234567 }, one = { 1 }, again = { 1 };

	(void)state;
	for (size_t i = 0; i < 5; i++)
		assert_true(dice_next(&d) == five[i]);
	for (size_t i = 0; i < 3; i++)
		assert_true(dice_next(&one) == three[i]);
	for (size_t i = 0; i < 12; i++)
		assert_true(dice_below(&again, 12) == below[i]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(chance_t_is_that_of_another_program),
		cmocka_unit_test(chance_chi_square_is_that_of_another_program),
		cmocka_unit_test(chance_binomial_is_that_of_another_program),
		cmocka_unit_test(chance_limits_of_counts_are_those_of_another_program),
		cmocka_unit_test(chance_limits_of_shares_are_those_of_another_program),
		cmocka_unit_test(dice_are_splitmix64),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
