#include "desk.h"

#define HEAD                                                                           \
	"farm,block,trap,pest,lure,card,place,condition,crop,variety,area_ha,lat,lon," \
	"order,hung,pulled\n"

static void farms_and_blocks_are_made(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "traps",
		HEAD "Quarle Top,Slip,1,CM,CM 1 mg,delta liner,border,disrupted,apple,"
		     "Amberlock,1.5,46.25,7.5,,2026-05-01,\n"
		     "Quarle Top,Slip,2,CM,CM 1 mg,delta liner,,,,,,,,,,\n"
		     "Nethermoss,Slip,1,OFM,,,outside,,,,,,,7,,\n",
		&out, &e));
	assert_int_equal(out.n_new, 3);
	expect_text("told", out.notes.items[0], "new farms: 2; new blocks: 2");
	expect_text("told", out.notes.items[1],
		"1 trap without a lure kind (line 4): when its lure is due is not "
		"known");
	char *got = give(b, "traps");
	expect_text("traps", got,
		"farm,block,trap,pest,lure,card,place,condition,crop,variety,area_ha,"
		"lat,"
		"lon,order,hung,pulled\r\n"
		"Nethermoss,Slip,1,OFM,,,outside,,,,,,,7,,\r\n"
		"Quarle Top,Slip,1,CM,CM 1 mg,delta "
		"liner,border,disrupted,apple,Amberlock,"
		"1.5000,46.250000,7.500000,1,2026-05-01,\r\n"
		"Quarle Top,Slip,2,CM,CM 1 mg,delta liner,,disrupted,apple,Amberlock,"
		"1.5000,,,2,,\r\n");
	free(got);
	imported_free(&out);
	book_close(b);
}

static void a_trap_row_is_refused(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "an unknown pest", "F,B,1,XX,,,,,,,,,,,,",
			"column pest: \"XX\" is not in the book; it has: AM, CBFW, CM, "
			"DWB, FTT, GBM, GPTB, LAW, LPTB, OBLR, OFM, PFM, PTB, RBLR, "
			"SFT, SJS, SPFW, STLM, TABM" },
		{ "an unknown lure", "F,B,1,OFM,paper,,,,,,,,,,,",
			"column lure: \"paper\" is not in the book; lures of that "
			"pest: OFM standard" },
		{ "an unknown card", "F,B,1,CM,,paper,,,,,,,,,,",
			"column card: \"paper\" is not in the book; it has: delta "
			"liner, small liner, sticky sphere, wing bottom" },
		{ "a lure of another pest", "F,B,1,CM,OFM standard,,,,,,,,,,,",
			"column lure: \"OFM standard\" draws another pest than CM; a "
			"trap keeps the scent of its first lure, so it has one pest "
			"for life" },
		{ "half a position", "F,B,1,CM,,,,,,,,46.1,,,,",
			"column lon: a position needs both lat and lon, or neither" },
		{ "an unknown place", "F,B,1,CM,,,hedge,,,,,,,,,",
			"column place: \"hedge\" is not right; it takes one of: "
			"border, interior, outside" },
		{ "hung tomorrow", "F,B,1,CM,,,,,,,,,,,2026-07-22,",
			"column hung: \"2026-07-22\" lies after today, 2026-07-21" },
		{ "pulled tomorrow", "F,B,1,CM,,,,,,,,,,,,2026-07-22",
			"column pulled: \"2026-07-22\" lies after today, 2026-07-21" },
		{ "pulled the day it was hung",
			"F,B,1,CM,,,,,,,,,,,2026-07-01,2026-07-01",
			"column pulled: \"2026-07-01\" must lie after the day it was "
			"hung, 2026-07-01" },
		{ "no place in the order", "F,B,1,CM,,,,,,,,,,0,,",
			"column order: \"0\" is not right; it takes a whole number "
			"from 1 to 1000000" },
		{ "no name", "F,B, ,CM,,,,,,,,,,,,",
			"column trap: a value is missing; it takes a text of at most "
			"47 letters in one line (an accented one counts as two)" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf text = { 0 }, want = { 0 };
		buf_addf(&text, HEAD "%s\n", row[i].row);
		buf_addf(&want, "file.csv, line 2, %s", row[i].want);
		expect_refused(b, "traps", row[i].why, text.text, want.text);
		buf_free(&text);
		buf_free(&want);
	}
	book_close(b);
}

static void the_last_good_dates_go_in(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "traps",
		HEAD "F,B,1,CM,,,,,,,,,,,2026-07-20,2026-07-21\n"
		     "F,B,2,CM,,,,,,,,,,,2026-07-21,\n");
	book_close(b);
}

static void a_listed_name_with_a_comma_is_quoted(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "cards", "card,life_days\n\"wing, small\",30\n");
	expect_refused(b, "traps", "a comma",
		"farm,block,trap,pest,card\nF,B,1,CM,paper\n",
		"file.csv, line 2, column card: \"paper\" is not in the book; it has: "
		"delta liner, small liner, sticky sphere, wing bottom, \"wing, small\"");
	book_close(b);
}

static void rows_of_a_block_agree(void **state)
{
	static const struct {
		const char *why, *rows, *want;
	} row[] = {
		{ "crop", "F,B,1,CM,,,,,apple,,,,,,,\nF,B,2,CM,,,,,pear,,,,,,,\n",
			"file.csv, line 3, column crop: \"pear\" differs from line 2, "
			"which is of the same block; a block has one crop" },
		{ "condition; the line between says nothing",
			"F,B,1,CM,,,,disrupted,,,,,,,,\nF,B,2,CM,,,,,,,,,,,,\n"
			"F,B,3,CM,,,,conventional,,,,,,,,\n",
			"file.csv, line 4, column condition: \"conventional\" differs "
			"from line 2, which is of the same block; a block has one "
			"condition" },
		{ "variety",
			"F,B,1,CM,,,,,,Amberlock,,,,,,\nF,B,2,CM,,,,,,Rime,,,,,,\n",
			"file.csv, line 3, column variety: \"Rime\" differs from line "
			"2, which is of the same block; a block has one variety" },
		{ "area", "F,B,1,CM,,,,,,,1,,,,,\nF,B,2,CM,,,,,,,1.01,,,,,\n",
			"file.csv, line 3, column area_ha: \"1.01\" differs from line "
			"2, which is of the same block; a block has one area_ha" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf text = { 0 };
		buf_addf(&text, HEAD "%s", row[i].rows);
		expect_refused(b, "traps", row[i].why, text.text, row[i].want);
		buf_free(&text);
	}
	must_take(b, "traps",
		HEAD "F,B,1,CM,,,,,,,1,,,,,\nF,B,2,CM,,,,,pear,,1.0000,,,,,\n"
		     "G,B,1,CM,,,,,apple,,2,,,,,\n");
	book_close(b);
}

static void a_trap_twice_names_both_lines(void **state)
{
	struct book *b = new_book();

	(void)state;
	expect_refused(b, "traps", "twice",
		HEAD "F,B,1,CM,,,,,,,,,,,,\nF,C,1,CM,,,,,,,,,,,,\n",
		"file.csv, line 3, column trap: \"1\" is in the file twice, in line 2 "
		"too; a farm has it once");
	book_close(b);
}

static void a_trap_in_the_book_is_changed_by_what_is_said(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "traps",
		"farm,block,trap,pest,card,crop,order,variety\n"
		"Quarle Top,Slip,1,CM,,,,\n"
		"Quarle Top,Bank,2,CM,wing bottom,pear,9,Rime\n",
		&out, &e));
	assert_int_equal(out.n_same, 1);
	assert_int_equal(out.n_changed, 1);
	assert_int_equal(out.n_new, 0);
	char *got = give(b, "traps");
	assert_non_null(strstr(got, "\r\nQuarle Top,Slip,1,CM,CM 1 mg,delta liner,,"
				    "conventional,apple,,,,,1,2026-05-01,\r\n"));
	assert_non_null(strstr(got, "\r\nQuarle Top,Bank,2,CM,CM 1 mg,wing bottom,,"
				    "disrupted,pear,Rime,,,,9,,\r\n"));
	free(got);
	imported_free(&out);
	book_close(b);
}

static void a_trap_keeps_its_pest(void **state)
{
	struct book *b = farm_book();

	(void)state;
	expect_refused(b, "traps", "a trap that was hung",
		"farm,block,trap,pest,lure\nQuarle Top,Slip,1,OFM,OFM standard\n",
		"file.csv, line 2: the trap is not saved: it has visits, so its pest "
		"stays: the plastic keeps the scent; make a new trap for the other "
		"pest");
	book_close(b);
}

static void a_finer_position_in_the_book_stays(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct traps traps = { 0 };
	struct err e = { 0 };

	(void)state;
	must_take(b, "traps",
		"farm,block,trap,pest,lat,lon\nF,B,1,CM,46.12345678,7.12345678\n");
	char *file = give(b, "traps");
	assert_true(take(b, "traps", file, &out, &e));
	assert_int_equal(out.n_same, 1);
	assert_true(book_traps(b, 0, &traps, &e));
	assert_true(traps.items[0].lat == 46.12345678);
	free(traps.items);
	free(file);
	imported_free(&out);
	book_close(b);
}

static void hung_and_pulled_make_visits_once(void **state)
{
	static const char text[] =
		"farm,block,trap,pest,lure,card,hung,pulled\n"
		"F,B,1,CM,CM 1 mg,delta liner,2026-04-20,2026-07-01\n";
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	must_take(b, "traps", text);
	char *got = give(b, "visits");
	expect_text("visits", got,
		"farm,trap,date,outcome,reason,count,females,others,card,lure,stirred,"
		"scout,note\r\n"
		"F,1,2026-04-20,hung,,,,,delta liner,CM 1 mg,,,\r\n"
		"F,1,2026-07-01,pulled,,,,,,,,,\r\n");
	free(got);
	assert_true(take(b, "traps", text, &out, &e));
	assert_int_equal(out.n_same, 1);
	imported_free(&out);
	book_close(b);
}

static void a_visit_of_that_day_stays(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "visits",
		"farm,trap,date,outcome,count\nQuarle Top,2,2026-05-01,hung,\n"
		"Quarle Top,2,2026-05-08,counted,4\n");
	char *before = give(b, "visits");
	must_take(b, "traps",
		"farm,block,trap,pest,hung\nQuarle Top,Slip,2,CM,2026-05-08\n");
	char *after = give(b, "visits");
	expect_text("the diary", after, before);
	free(before);
	free(after);
	book_close(b);
}

static void an_export_has_the_first_hanging_and_the_last_pulling(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "visits",
		"farm,trap,date,outcome\n"
		"Quarle Top,2,2024-05-01,hung\nQuarle Top,2,2024-09-01,pulled\n"
		"Quarle Top,2,2025-05-01,hung\nQuarle Top,2,2025-09-01,pulled\n"
		"Quarle Top,3,2025-05-01,hung\nQuarle Top,3,2025-09-01,pulled\n"
		"Quarle Top,3,2026-05-01,hung\n");
	char *got = give(b, "traps");
	assert_non_null(strstr(got, ",2,2024-05-01,2025-09-01\r\n"));
	assert_non_null(strstr(got, ",3,2025-05-01,\r\n"));
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(farms_and_blocks_are_made),
		cmocka_unit_test(a_trap_row_is_refused),
		cmocka_unit_test(the_last_good_dates_go_in),
		cmocka_unit_test(a_listed_name_with_a_comma_is_quoted),
		cmocka_unit_test(rows_of_a_block_agree),
		cmocka_unit_test(a_trap_twice_names_both_lines),
		cmocka_unit_test(a_trap_in_the_book_is_changed_by_what_is_said),
		cmocka_unit_test(a_trap_keeps_its_pest),
		cmocka_unit_test(a_finer_position_in_the_book_stays),
		cmocka_unit_test(hung_and_pulled_make_visits_once),
		cmocka_unit_test(a_visit_of_that_day_stays),
		cmocka_unit_test(an_export_has_the_first_hanging_and_the_last_pulling),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
