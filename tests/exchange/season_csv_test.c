/* Flights, hot spots and published cases as CSV. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "exchange/report_csv.h"
#include "report_samples.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void flight_gives_one_row_for_each_flight(void **state)
{
	struct log l = sample_log();
	struct flight_view *v = calloc(1, sizeof *v);
	struct buf out = { 0 };

	(void)state;
	assert_non_null(v);
	v->ask = (struct flight_ask){ .farm = 1, .block = 1, .pest = 1 };
	v->n_rows = 2;
	v->rows[0] = (struct flight_row){
		.flight = { .peak_rate = 9.5,
			.moths = 312,
			.flags = FLIGHT_OPEN_START | FLIGHT_TRAPS_CHANGED },
		.first_day = day_from_ymd(2026, 4, 20),
		.peak_day = day_from_ymd(2026, 5, 18),
		.day10 = day_from_ymd(2026, 5, 9),
		.day50 = day_from_ymd(2026, 5, 21),
		.day90 = day_from_ymd(2026, 6, 7),
	};
	v->rows[1] = v->rows[0];
	v->rows[1].flight = (struct flight){ .peak_rate = 5, .moths = 40.0 / 3 };
	flight_csv_head(&out);
	flight_csv(&l, v, &out);
	v->ask.farm = v->ask.block = 0;
	v->n_rows = 1;
	flight_csv(&l, v, &out);
	assert_string_equal(out.text,
		"farm,block,flight,first,peak_week,peak_catch,d10,d50,d90,moths,flags"
		"\r\n"
		"\"Quillet, Upper\",'=Rows,1,2026-04-20,2026-05-18,9.5000,2026-05-09,"
		"2026-05-21,2026-06-07,312,open start; traps changed\r\n"
		"\"Quillet, Upper\",'=Rows,2,2026-04-20,2026-05-18,5,2026-05-09,"
		"2026-05-21,2026-06-07,13.3333,\r\n"
		",,1,2026-04-20,2026-05-18,9.5000,2026-05-09,2026-05-21,2026-06-07,312,"
		"open start; traps changed\r\n");
	buf_free(&out);
	free(v);
}

/* Names and words as they are; what is not known or has no bound is empty; next to
 * nothing is no 0. */
static void hotspots_give_one_row_for_each_answer(void **state)
{
	static struct hot_row rows[] = {
		{ .what = HOT_OF_BLOCK,
			.name = "Hollow, East",
			.split = { 92, 245, 61, 735, 3, 9 },
			.ratio = { 4.524590164, 2.27324626, 9.00558664 },
			.p_luck = 3.959229874e-20,
			.p_shuffle = 1.0 / 220,
			.p_holm = 4.0 / 220,
			.p_bh = 0.5,
			.grade = HOT_CLEAR },
		{ .what = HOT_OF_BORDER, .name = "border", .grade = HOT_TOO_LITTLE },
		{ .what = HOT_OF_NEAR, .name = "trap 1 and near", .grade = HOT_WATCH },
		{ .what = HOT_OF_TRAP, .name = "trap 1", .grade = HOT_HIGHER },
	};
	static struct hot_source sources[2] = {
		{ .name = "Lane", .gradient = { .say = GRADIENT_DISTANCES } },
		{ .name = "Yard",
			.gradient = { .say = GRADIENT_FALLS,
				.is_fitted = true,
				.b = -0.005118154727,
				.b_lo = -0.007964796451,
				.b_hi = -0.002271513003,
				.p = 62.0 / 40320,
				.n = 8,
				.moths = 60 } },
	};
	struct hot_view v = {
		.rows = rows, .n = 4, .sources = sources, .n_sources = 2
	};
	struct buf out = { 0 };

	(void)state;
	for (size_t i = 1; i < 4; i++)
		rows[i].ratio.at = rows[i].ratio.lo = rows[i].p_luck =
			rows[i].p_shuffle = rows[i].p_holm = rows[i].p_bh = (double)NAN;
	rows[1].ratio.at = rows[1].ratio.hi = (double)INFINITY;
	rows[1].ratio.lo = 1.5;
	hotspots_csv_head(&out);
	hotspots_csv(&v, "", &out);
	assert_string_equal(out.text,
		"kind,name,traps,moths,nights,ratio,ratio_lo,ratio_hi,p_luck,p_shuffle,"
		"p_holm,p_bh,says\r\n"
		"block,\"Hollow, East\",3,92,245,4.5246,2.2732,9.0056,0.0000,0.0045,"
		"0.0182,0.5000,clear\r\n"
		"border,border,0,0,0,,1.5000,,,,,,too little\r\n"
		"near,trap 1 and near,0,0,0,,,0,,,,,watch\r\n"
		"trap,trap 1,0,0,0,,,0,,,,,higher\r\n"
		"source,Lane,,,,,,,,,,,too few distances\r\n"
		"source,Yard,8,60,,0.5994,0.4509,0.7968,,0.0015,,,falls\r\n");
	buf_clear(&out);
	v.n = 1;
	v.n_sources = 0;
	hotspots_csv(&v, "Quillet", &out);
	assert_ptr_equal(
		strstr(out.text, "block,\"Quillet: Hollow, East\",3,"), out.text);
	buf_free(&out);
}

static void proof_gives_one_row_for_each_case(void **state)
{
	const struct proof_case cases[] = {
		{ "CM1", "A source", "2 or more", "", "trap-week 2 >= 2",
			"7 nights: 2 2", "over", "over", true },
		{ "CM1", "A source", "2 or more", "bare", "trap-week 2 >= 2",
			"7 nights: 2 1", "under", "over", false },
	};
	struct buf out = { 0 };

	(void)state;
	proof_csv(cases, 2, &out);
	assert_string_equal(out.text,
		"id,source,printed,remark,rule,input,expected,ours,holds\r\n"
		"CM1,A source,2 or more,,trap-week 2 >= 2,7 nights: 2 "
		"2,over,over,yes\r\n"
		"CM1,A source,2 or more,bare,trap-week 2 >= 2,7 nights: 2 "
		"1,under,over,no"
		"\r\n");
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flight_gives_one_row_for_each_flight),
		cmocka_unit_test(hotspots_give_one_row_for_each_answer),
		cmocka_unit_test(proof_gives_one_row_for_each_case),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
