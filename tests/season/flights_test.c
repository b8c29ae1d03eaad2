/* Flights of random seasons against a second way of finding peaks, and what holds for
 * every season. Values from outside stand in tests/reference. */
#include "season/flights.h"

#include "season/logs.h"

#include <math.h>

enum { SEASONS = 20000 };

/* Two humps of moths, low counts with many ties, gaps, weeks with other traps. */
static struct flight_series random_season(uint32_t *seed)
{
	struct flight_series s = { .n = (size_t)draw(seed, FLIGHT_WEEKS_MAX + 1) };
	int top = 1 + draw(seed, draw(seed, 4) == 0 ? 400 : 12);
	bool gaps = draw(seed, 3) == 0, uneven = draw(seed, 3) == 0;

	for (size_t w = 0; w < s.n; w++) {
		if (gaps && draw(seed, 4) == 0)
			continue;
		s.nights[w] = uneven ? 1 + draw(seed, 60) : 28;
		bool up = (w / 6) % 2 == 0;
		s.moths[w] = up ? draw(seed, top + 1) : draw(seed, 1 + top / 6);
	}
	return s;
}

/* With a zero before and after: week -1 and week `end`. */
static double smooth_or_zero(const struct flights *f, int w)
{
	return w < (int)f->first || w >= (int)f->end ? 0 : f->smooth[w];
}

/* Asks each week for itself: the nearest different heights on both sides are lower, and
 * it is the middle of what lies between them. */
static bool is_top(const struct flights *f, int w)
{
	int left = w, right = w;
	double h = smooth_or_zero(f, w);

	while (left >= (int)f->first && smooth_or_zero(f, left) == h)
		left--;
	while (right < (int)f->end && smooth_or_zero(f, right) == h)
		right++;
	return smooth_or_zero(f, left) < h && smooth_or_zero(f, right) < h &&
	       (left + right) / 2 == w && left >= (int)f->first - 1;
}

/* From the far ends inwards: the last higher week on a side, then the least of all
 * weeks between it and the top. */
static double prominence(const struct flights *f, int top)
{
	double h = smooth_or_zero(f, top), least[2] = { h, h };
	int from = (int)f->first - 1, to = (int)f->end;

	for (int w = (int)f->first - 1; w < top; w++)
		if (smooth_or_zero(f, w) > h)
			from = w + 1;
	for (int w = (int)f->end; w > top; w--)
		if (smooth_or_zero(f, w) > h)
			to = w - 1;
	for (int w = from; w <= to; w++) {
		double *side = &least[w > top];
		if (smooth_or_zero(f, w) < *side)
			*side = smooth_or_zero(f, w);
	}
	return h - (least[0] > least[1] ? least[0] : least[1]);
}

static void candidates_agree_with_asking_every_week(void **state)
{
	uint32_t seed = 4;
	(void)state;
	for (int i = 0; i < SEASONS; i++) {
		struct flight_series s = random_season(&seed);
		struct flights f;
		size_t n = 0;
		flights_find(&s, &f);
		for (int w = (int)f.first; w < (int)f.end; w++) {
			if (!is_top(&f, w))
				continue;
			if (n >= f.n_candidates || f.candidates[n].week != w)
				fail_msg("season %d: week %d is no candidate", i, w);
			double want = prominence(&f, w);
			if (f.candidates[n++].prominence != want)
				fail_msg("season %d: week %d stands out by %g", i, w,
					want);
		}
		assert_int_equal(n, f.n_candidates);
	}
}

static void check_flight(const struct flights *f, size_t k)
{
	const struct flight *x = &f->items[k];
	int start = k == 0 ? (int)f->first : f->items[k - 1].last_week + 1;

	assert_int_equal(x->first_week, start);
	assert_true(x->first_week <= x->peak_week && x->peak_week <= x->last_week);
	assert_true(7 * x->first_week <= x->d10 && x->d10 <= x->d50);
	assert_true(x->d50 <= x->d90 && x->d90 <= 7 * (x->last_week + 1));
	assert_int_equal(f->smooth[x->peak_week] > 0, 1);
	if (k + 1 == f->n)
		assert_int_equal(x->last_week, f->end - 1);
	else
		assert_true(f->split_p[k] <= 0.05);
}

static void flights_share_out_the_whole_season(void **state)
{
	uint32_t seed = 11;
	(void)state;
	for (int i = 0; i < SEASONS; i++) {
		struct flight_series s = random_season(&seed);
		struct flights f;
		double all = 0, sum = 0;
		flights_find(&s, &f);
		for (size_t w = 0; w < s.n; w++)
			all += s.moths[w];
		for (size_t k = 0; k < f.n; k++) {
			check_flight(&f, k);
			sum += f.items[k].moths;
		}
		assert_int_equal(f.n > 0, all > 0);
		assert_true(fabs(all - sum) <= 1e-9 * all);
	}
}

/* Ten times the moths or the traps is the same season, the gaps and ties included; only
 * the dip test knows the difference, and it gets surer. */
static void more_traps_change_no_date_of_a_lone_flight(void **state)
{
	uint32_t seed = 5;
	(void)state;
	for (int i = 0; i < SEASONS; i++) {
		struct flight_series s = random_season(&seed), many = s;
		struct flights a, b;
		for (size_t w = 0; w < s.n; w++) {
			many.moths[w] *= 8;
			many.nights[w] *= 8;
		}
		flights_find(&s, &a);
		flights_find(&many, &b);
		assert_true(b.n >= a.n);
		assert_memory_equal(a.smooth, b.smooth, sizeof a.smooth);
		if (a.n == 1 && b.n == 1)
			assert_true(a.items[0].d50 == b.items[0].d50);
	}
}

static void a_thin_week_at_an_end_goes_into_its_neighbour(void **state)
{
	static const struct {
		const char *why;
		size_t n;
		double moths[5], nights[5];
		size_t first, end;
		double first_rate, last_rate;
	} row[] = {
		{ "just under half", 4, { 1, 7, 9, 0 }, { 13, 28, 28, 28 }, 1, 4,
			7 * 8 / 41.0, 0 },
		{ "half stands alone", 4, { 2, 7, 9, 0 }, { 14, 28, 28, 28 }, 0, 4, 1,
			0 },
		{ "at the end", 4, { 0, 7, 9, 1 }, { 28, 28, 28, 4 }, 0, 3, 0,
			7 * 10 / 32.0 },
		{ "both ends", 4, { 1, 7, 7, 1 }, { 4, 28, 28, 4 }, 1, 3, 7 * 8 / 32.0,
			7 * 8 / 32.0 },
		{ "not into a week that nobody looked", 5, { 1, 0, 7, 9, 0 },
			{ 4, 0, 28, 28, 28 }, 0, 5, 1.75, 0 },
		{ "after unread weeks", 5, { 0, 1, 7, 9, 0 }, { 0, 4, 28, 28, 28 }, 2,
			5, 1.75, 0 },
		{ "inside it stays", 4, { 0, 1, 9, 0 }, { 28, 4, 28, 28 }, 0, 4, 0, 0 },
		{ "alone it stays", 1, { 1 }, { 1 }, 0, 1, 7, 7 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct flight_series s = { .n = row[i].n };
		struct flights f;
		memcpy(s.moths, row[i].moths, sizeof row[i].moths);
		memcpy(s.nights, row[i].nights, sizeof row[i].nights);
		flights_find(&s, &f);
		if (f.first != row[i].first || f.end != row[i].end)
			fail_msg("%s: weeks %zu to %zu", row[i].why, f.first, f.end);
		if (fabs(f.rate[f.first] - row[i].first_rate) > 1e-12 ||
			fabs(f.rate[f.end - 1] - row[i].last_rate) > 1e-12)
			fail_msg("%s: %g, %g", row[i].why, f.rate[f.first],
				f.rate[f.end - 1]);
	}
}

static void a_gap_is_filled_and_marked_never_zero(void **state)
{
	struct flight_series s = { .n = 6,
		.moths = { 0, 4, 0, 0, 28, 0 },
		.nights = { 28, 28, 0, 0, 28, 28 } };
	static const double rates[] = { 0, 1, 3, 5, 7, 0 };
	struct flights f;
	(void)state;
	flights_find(&s, &f);
	for (size_t w = 0; w < s.n; w++) {
		assert_true(fabs(f.rate[w] - rates[w]) < 1e-12);
		assert_int_equal(f.filled[w], w == 2 || w == 3);
	}
	assert_int_equal(f.items[0].flags & FLIGHT_GAP_AT_PEAK, FLIGHT_GAP_AT_PEAK);
}

static void flags_tell_of_full_cards_other_traps_and_a_gap_between(void **state)
{
	static const struct {
		const char *why;
		size_t unread, at_least, changed; /* week; 99: none */
		unsigned first, second;
	} row[] = {
		{ "nothing odd", 99, 99, 99, 0, 0 },
		{ "a full card in the first", 99, 3, 99, FLIGHT_AT_LEAST, 0 },
		{ "another trap in the second", 99, 99, 9, 0, FLIGHT_TRAPS_CHANGED },
		{ "another trap as the second begins", 99, 99, 7, 0, 0 },
		{ "the valley not read", 6, 99, 99, FLIGHT_GAP_AT_VALLEY, 0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct flight_series s = { .n = 13,
			.moths = { 0, 8, 20, 8, 0, 0, 0, 0, 0, 6, 18, 7, 0 } };
		struct flights f;
		for (size_t w = 0; w < s.n; w++) {
			s.nights[w] = w == row[i].unread ? 0 : 28;
			s.at_least[w] = w == row[i].at_least;
			s.traps_changed[w] = w == row[i].changed;
		}
		flights_find(&s, &f);
		assert_int_equal(f.n, 2);
		if (f.items[0].flags != row[i].first ||
			f.items[1].flags != row[i].second)
			fail_msg("%s: %#x, %#x", row[i].why, f.items[0].flags,
				f.items[1].flags);
	}
}

static void marks_are_met_beyond_their_share_not_on_it(void **state)
{
	static const struct {
		const char *why;
		double moths[5];
		unsigned want;
	} row[] = {
		{ "a tenth at the start", { 10, 100, 100, 10, 0 }, 0 },
		{ "more than a tenth", { 11, 100, 100, 10, 0 }, FLIGHT_OPEN_START },
		{ "a tenth at the end", { 0, 10, 100, 100, 10 }, 0 },
		{ "more than a tenth", { 0, 10, 100, 100, 11 }, FLIGHT_NOT_FINISHED },
		{ "six of ten in one week", { 0, 20, 60, 20, 0 }, 0 },
		{ "more than six of ten", { 0, 20, 61, 20, 0 }, FLIGHT_SPIKE },
		{ "ten moths", { 0, 3, 4, 3, 0 }, 0 },
		{ "nine", { 0, 3, 3, 3, 0 }, FLIGHT_TOO_FEW },
		{ "peak in the last week but one", { 0, 50, 80, 100, 40 },
			FLIGHT_NOT_FINISHED },
		{ "peak in the last", { 0, 0, 10, 100, 150 }, FLIGHT_STILL_RISING },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct flight_series s = { .n = 5, .nights = { 7, 7, 7, 7, 7 } };
		struct flights f;
		memcpy(s.moths, row[i].moths, sizeof row[i].moths);
		flights_find(&s, &f);
		assert_int_equal(f.n, 1);
		if (f.items[0].flags != row[i].want)
			fail_msg("%s: %#x", row[i].why, f.items[0].flags);
	}
}

static void rounding_does_not_tilt_a_flat_top(void **state)
{
	struct flight_series s = { .n = 4,
		.moths = { 0, 0.5454545454545454, 0.5454545454545455, 0 },
		.nights = { 7, 7, 7, 7 } };
	struct flights f;
	(void)state;
	assert_true(s.moths[1] < s.moths[2]);
	flights_find(&s, &f);
	assert_int_equal(f.n, 1);
	assert_int_equal(f.items[0].peak_week, 1);
}

static void a_full_card_in_a_thin_week_stays_at_least(void **state)
{
	(void)state;
	for (size_t full = 0; full < 7; full++) {
		struct flight_series s = { .n = 6,
			.moths = { 1, 7, 30, 8, 0, 0 },
			.nights = { 4, 28, 28, 28, 28, 28 } };
		struct flights f;
		s.at_least[full] = full < s.n;
		flights_find(&s, &f);
		assert_int_equal(f.first, 1);
		assert_int_equal(f.n, 1);
		assert_int_equal((f.items[0].flags & FLIGHT_AT_LEAST) != 0, full < s.n);
	}
}

static void the_dip_test_takes_nothing_for_granted(void **state)
{
	(void)state;
	assert_true(flight_dip_p(5, 0, 1, 28) == 1);
	assert_true(flight_dip_p(5, 28, 1, 0) == 1);
	assert_true(flight_dip_p(0, 28, 0, 28) == 1);
	assert_true(flight_dip_p(0, 28, 9, 28) == 1);
	assert_true(flight_dip_p(2000000, 28, 0, 28) == 0);
	assert_true(flight_dip_p(5, 28, -1, 28) == 1);
	double sure = flight_dip_p(5, 1e9, 1, 1e-9); /* all nights are the peak's */
	assert_true(sure > 0.999 && sure <= 1);
	double even = flight_dip_p(1000000, 28, 1000000, 28);
	assert_true(even > 0.5 && even < 0.501);
}

/* Strand 1999, UC ANR Publ. 3389: Oriental fruit moth needs about 920 to 1010 F
 * degree-days from flight to flight. */
static void two_humps_within_half_a_generation_are_probably_one(void **state)
{
	(void)state;
	assert_true(flight_same_hump(300, 759, 920));
	assert_false(flight_same_hump(300, 760, 920));
	assert_false(flight_same_hump(300, 1260, 920));
}

static void every_flag_has_a_word_of_its_own(void **state)
{
	(void)state;
	for (int i = 0; i < FLIGHT_FLAG_COUNT; i++)
		for (int k = 0; k < i; k++)
			assert_string_not_equal(
				flight_flag_word(i), flight_flag_word(k));
	assert_string_equal(flight_flag_word(0), "open start");
	assert_string_equal(flight_flag_word(8), "traps changed");
	assert_int_equal(FLIGHT_TRAPS_CHANGED, 1 << 8);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(candidates_agree_with_asking_every_week),
		cmocka_unit_test(flights_share_out_the_whole_season),
		cmocka_unit_test(more_traps_change_no_date_of_a_lone_flight),
		cmocka_unit_test(a_thin_week_at_an_end_goes_into_its_neighbour),
		cmocka_unit_test(a_gap_is_filled_and_marked_never_zero),
		cmocka_unit_test(
			flags_tell_of_full_cards_other_traps_and_a_gap_between),
		cmocka_unit_test(marks_are_met_beyond_their_share_not_on_it),
		cmocka_unit_test(rounding_does_not_tilt_a_flat_top),
		cmocka_unit_test(a_full_card_in_a_thin_week_stays_at_least),
		cmocka_unit_test(the_dip_test_takes_nothing_for_granted),
		cmocka_unit_test(two_humps_within_half_a_generation_are_probably_one),
		cmocka_unit_test(every_flag_has_a_word_of_its_own),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
