#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "exchange/report_csv.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static struct log sample_log(void)
{
	static struct farm farms[] = { { .id = 1, .name = "Quillet, Upper" } };
	static struct block blocks[] = { { .id = 1, .farm = 1, .name = "=Rows" } };
	static struct trap traps[] = {
		{ .id = 1, .farm = 1, .block = 1, .label = "4" }
	};
	static struct pest pests[] = { { .id = 1, .code = "CM" } };
	static struct rule rules[] = {
		{ .measure = MEASURE_TRAP_WEEK,
			.span = 2,
			.comparator = AT_LEAST,
			.value_x100 = 250,
			.source = "own" },
		{ .measure = MEASURE_BLOCK_TOTAL,
			.span_kind = SPAN_TREATMENT,
			.comparator = MORE_THAN,
			.value_x100 = 1000 },
		{ .measure = MEASURE_NONE, .source = "timing" },
	};

	return (struct log){
		.farms = { farms, 1, 1 },
		.blocks = { blocks, 1, 1 },
		.traps = { traps, 1, 1 },
		.pests = { pests, 1, 1 },
		.rules = { rules, 3, 3 },
	};
}

/* What stands behind the place and pest of a row. */
static void check_row(const char *why, struct verdict_row row, const char *want)
{
	struct log l = sample_log();
	struct verdict_rows rows = { &row, 1, 1 };
	struct buf out = { 0 };

	row.farm = row.block = row.pest = 1;
	week_csv(&l, &rows, &out);
	const char *at = strstr(out.text, "CM,");
	if (!at || strcmp(at + 3, want) != 0)
		fail_msg("%s: %s, not %s", why, at ? at + 3 : out.text, want);
	buf_free(&out);
}

static struct bounds between(int64_t lo, int64_t hi, int64_t den)
{
	return (struct bounds){ { lo, den }, { hi, den }, false };
}

static void week_names_place_and_columns(void **state)
{
	static const char want[] =
		"farm,block,trap,pest,catch_lo,catch_hi,nights,measure,span,comparator,"
		"value,verdict,doubts,source\r\n"
		"\"Quillet, Upper\",'=Rows,,CM,";
	struct log l = sample_log();
	struct verdict_row row = { 1, 1, 1, NO_TRAP, 1, FIT_YES, { 0 }, { 0 } };
	struct verdict_rows rows = { &row, 1, 1 };
	struct buf out = { 0 };

	(void)state;
	week_csv(&l, &rows, &out);
	assert_memory_equal(out.text, want, sizeof want - 1);
	buf_free(&out);
}

static void week_writes_numbers_with_four_decimals_or_none(void **state)
{
	static const struct {
		const char *why;
		int64_t lo, hi, den;
		const char *want;
	} row[] = {
		{ "whole", 14, 14, 1, "14,14" },
		{ "whole after division", 14, 21, 7, "2,3" },
		{ "12 in 10 nights", 84, 84, 10, "8.4000,8.4000" },
		{ "a third", 1, 2, 3, "0.3333,0.6667" },
		{ "half of the last place goes up", 1, 3, 20000, "0.0001,0.0002" },
		{ "rounds up to the next whole", 99999, 199999, 100000,
			"1.0000,2.0000" },
		{ "large", INT64_MAX, INT64_MAX, 1,
			"9223372036854775807,9223372036854775807" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct verdict_row r = { .trap = 0, .rule = 0 };
		char want[120];

		r.judgement.value = between(row[i].lo, row[i].hi, row[i].den);
		r.judgement.nights = 14;
		r.judgement.verdict = VERDICT_UNDER;
		strcpy(want, row[i].want);
		strcat(want, ",14,trap-week,2,>=,2.5000,under,,own\r\n");
		check_row(row[i].why, r, want);
	}
}

static void week_leaves_an_open_bound_empty(void **state)
{
	struct verdict_row r = { .trap = 0, .rule = 0 };

	(void)state;
	r.judgement = (struct judgement){ .verdict = VERDICT_OVER,
		.value = { { 30, 1 }, { 0, 1 }, true },
		.nights = 7,
		.doubts = DOUBT_CARD | DOUBT_LURE,
		.card_moths = 52,
		.lure_overdue_days = 3 };
	check_row("a floor", r,
		"30,,7,trap-week,2,>=,2.5000,over,lure 3 d overdue; card at 52 "
		"moths,own\r\n");
}

static void week_says_what_an_unknown_lacks(void **state)
{
	static const struct {
		const char *why;
		struct judgement j;
		const char *doubts;
	} row[] = {
		{ "stale",
			{ .lacking = LACKING_READING,
				.unread = UNREAD_STALE,
				.unread_nights = 15,
				.traps = 1 },
			"not read for 15 nights" },
		{ "skipped",
			{ .lacking = LACKING_READING,
				.unread = UNREAD_SKIPPED,
				.unread_nights = 14,
				.traps = 1 },
			"\"skipped, not read for 14 nights\"" },
		{ "block", { .lacking = LACKING_TRAPS, .read = 1, .traps = 4 },
			"1 of 4 traps read" },
		{ "block and its doubt once",
			{ .lacking = LACKING_TRAPS,
				.read = 1,
				.traps = 4,
				.doubts = DOUBT_UNREAD },
			"1 of 4 traps read" },
		{ "biofix", { .lacking = LACKING_BIOFIX }, "biofix not set" },
		{ "split",
			{ .lacking = LACKING_SPLIT,
				.doubts = DOUBT_LONG,
				.long_nights = 14 },
			"catch not to be divided; average over 14 nights" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct verdict_row r = { .trap = NO_TRAP, .rule = 1 };
		char want[160] = "0,,,block-total,treatment,>,10,unknown,";

		r.judgement = row[i].j;
		r.judgement.verdict = VERDICT_UNKNOWN;
		r.judgement.value = (struct bounds){ { 0, 1 }, { 0, 1 }, true };
		strcat(want, row[i].doubts);
		strcat(want, ",\r\n");
		check_row(row[i].why, r, want);
	}
}

static void week_without_a_threshold_gives_the_weekly_catch(void **state)
{
	static const struct {
		const char *why;
		struct weekly w;
		int rule;
		const char *want;
	} row[] = {
		{ "read", { .moths = 12, .nights = 10 }, NO_RULE,
			"8.4000,8.4000,10,,,,,none,,\r\n" },
		{ "a floor", { .moths = 30, .nights = 7, .at_least = true }, NO_RULE,
			"30,,7,,,,,none,,\r\n" },
		{ "not read is no zero", { .unread = UNREAD_STALE, .nights = 15 },
			NO_RULE, "0,,,,,,,none,not read for 15 nights,\r\n" },
		{ "for timing", { .moths = 7, .nights = 7 }, 2,
			"7,7,7,none,,,,none,,timing\r\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct verdict_row r = {
			.trap = 0, .rule = row[i].rule, .weekly = row[i].w
		};

		check_row(row[i].why, r, row[i].want);
	}
}

static void due_gives_one_row_for_each_thing(void **state)
{
	struct due_item items[] = {
		{ .is_lure = true,
			.due = day_from_ymd(2026, 7, 18),
			.farm_name = "Quillet Farm",
			.label = "-4",
			.kind_name = "CM 1 mg",
			.state_word = "overdue" },
		{ .due = day_from_ymd(2026, 7, 21),
			.farm_name = "Quillet Farm",
			.label = "A\"5",
			.kind_name = "delta liner",
			.state_word = "due" },
	};
	struct due d = { .items = items, .n = 2 };
	struct buf out = { 0 };

	(void)state;
	due_csv(&d, &out);
	assert_string_equal(out.text,
		"farm,trap,what,kind,due,state,no_entry_until\r\n"
		"Quillet Farm,-4,lure,CM 1 mg,2026-07-18,overdue,\r\n"
		"Quillet Farm,\"A\"\"5\",card,delta liner,2026-07-21,due,\r\n");
	buf_free(&out);
}

static void record_leaves_empty_what_was_not_entered(void **state)
{
	struct treatment t[2] = { treatment_blank, treatment_blank };
	struct record_row rows[] = { { .treatment = &t[0],
					     .farm = "Quillet Farm",
					     .block = "Quarry Rows",
					     .crop = "pear",
					     .pest = "CM",
					     .missing = "product, applicator",
					     .entry_from = { .minute = INSTANT_NONE },
					     .pick_from = DAY_NONE },
		{ .treatment = &t[1], .farm = "Quillet Farm", .block = "Bank" } };
	struct record r = { .rows = rows, .n = 2 };
	struct buf out = { 0 };

	(void)state;
	t[0].day = t[1].day = day_from_ymd(2026, 8, 20);
	t[1].from = (struct instant){ (int64_t)t[1].day * MINUTES_A_DAY + 570, -420 };
	t[1].until = (struct instant){ t[1].from.minute + 60, -420 };
	t[1].border = true;
	t[1].area_x100 = 420;
	t[1].rei_hours = t[1].phi_days = 0;
	rows[1].entry_from = t[1].until;
	rows[1].pick_from = t[1].day;
	text_copy(t[1].note, sizeof t[1].note, "=1");
	record_csv(&r, &out);
	assert_string_equal(out.text,
		"farm,block,crop,pest,date,from,until,border,product,registration,"
		"amount,amount_unit,area_ha,applicator,certificate,rei_hours,phi_days,"
		"entry_from,pick_from,not_entered,note\r\n"
		"Quillet Farm,Quarry Rows,pear,CM,2026-08-20,,,no,,,,,,,,,,,,"
		"\"product, applicator\",\r\n"
		"Quillet Farm,Bank,,,2026-08-20,2026-08-20T02:30-07:00,"
		"2026-08-20T03:30-07:00,yes,,,,,4.2000,,,0,0,"
		"2026-08-20T03:30-07:00,2026-08-20,,'=1\r\n");
	buf_free(&out);
}

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
		cmocka_unit_test(week_names_place_and_columns),
		cmocka_unit_test(week_writes_numbers_with_four_decimals_or_none),
		cmocka_unit_test(week_leaves_an_open_bound_empty),
		cmocka_unit_test(week_says_what_an_unknown_lacks),
		cmocka_unit_test(week_without_a_threshold_gives_the_weekly_catch),
		cmocka_unit_test(due_gives_one_row_for_each_thing),
		cmocka_unit_test(record_leaves_empty_what_was_not_entered),
		cmocka_unit_test(flight_gives_one_row_for_each_flight),
		cmocka_unit_test(hotspots_give_one_row_for_each_answer),
		cmocka_unit_test(proof_gives_one_row_for_each_case),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
