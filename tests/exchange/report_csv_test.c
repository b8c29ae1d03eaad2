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
	char lines[2][SAY_LINE * 2] = { "21 Aug 07:42 JR: note was empty, is x",
		"20 Aug 19:00 JR: area was 4 ha, is 4.2 ha" };
	struct record r = { .rows = rows, .n = 2 };
	struct buf out = { 0 };

	(void)state;
	text_copy(rows[0].answered, sizeof rows[0].answered, "in words of people");
	rows[1].corrected.lines = lines;
	rows[1].corrected.n = 2;
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
		"entry_from,pick_from,not_entered,note,told_by,corrected\r\n"
		"Quillet Farm,Quarry Rows,pear,CM,2026-08-20,,,no,,,,,,,,,,,,"
		"\"product, applicator\",,answer,\r\n"
		"Quillet Farm,Bank,,,2026-08-20,2026-08-20T02:30-07:00,"
		"2026-08-20T03:30-07:00,yes,,,,,4.2000,,,0,0,"
		"2026-08-20T03:30-07:00,2026-08-20,,'=1,entry,"
		"\"21 Aug 07:42 JR: note was empty, is x; 20 Aug 19:00 JR: area was 4 "
		"ha, is 4.2 ha\"\r\n");
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
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
