/* Files of blocks. */
#include "desk.h"

#define HEAD "farm,block,crop,variety,condition,area_ha,retired\n"

static void blocks_go_out_by_farm_and_come_in_again(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = farm_book(), *again = new_book();

	(void)state;
	must_take(b, "blocks",
		HEAD "Quarle Top,Slip,apple,Amberlock,disrupted,4.25,\n"
		     "Nethermoss,Far Bank,,,,,yes\n");
	char *got = give(b, "blocks");
	expect_text("given out", got,
		"farm,block,crop,variety,condition,area_ha,retired\r\n"
		"Nethermoss,Far Bank,,,,,yes\r\n"
		"Nethermoss,Slip,,,,,no\r\n"
		"Quarle Top,Bank,peach,,disrupted,,no\r\n"
		"Quarle Top,Slip,apple,Amberlock,disrupted,4.2500,no\r\n");
	assert_true(take(b, "blocks", got, &out, &e));
	assert_int_equal(out.n_same, 4);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_true(take(again, "blocks", got, &out, &e));
	assert_int_equal(out.n_new, 4);
	assert_int_equal(out.notes.n, 1);
	assert_string_equal(out.notes.items[0], "new farms: 2");
	imported_free(&out);
	char *two = give(again, "blocks");
	expect_text("in another book", two, got);
	free(got);
	free(two);
	book_close(b);
	book_close(again);
}

/* A column that the file lacks leaves what is there; an empty value is the default. */
static void what_a_file_of_blocks_leaves_out_stays(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "the variety alone", "farm,block,variety\nQuarle Top,Bank,Late\n",
			"Quarle Top,Bank,peach,Late,disrupted,2.5000,no\r\n" },
		{ "no condition", "farm,block,condition\nQuarle Top,Bank,\n",
			"Quarle Top,Bank,peach,Late,,2.5000,no\r\n" },
		{ "no area", "farm,block,area_ha\nQuarle Top,Bank,\n",
			"Quarle Top,Bank,peach,Late,,,no\r\n" },
		{ "an area of nothing is not none",
			"farm,block,area_ha\nQuarle Top,Bank,0\n",
			"Quarle Top,Bank,peach,Late,,0,no\r\n" },
		{ "put away", "farm,block,retired\nQuarle Top,Bank,yes\n",
			"Quarle Top,Bank,peach,Late,,0,yes\r\n" },
		{ "still put away", "farm,block\nQuarle Top,Bank\n",
			"Quarle Top,Bank,peach,Late,,0,yes\r\n" },
	};
	struct book *b = farm_book();

	(void)state;
	must_take(b, "blocks", "farm,block,area_ha\nQuarle Top,Bank,2.5\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must_take(b, "blocks", row[i].text);
		char *got = give(b, "blocks");
		char *line = strstr(got, "Quarle Top,Bank");
		assert_non_null(line);
		strchr(line, '\n')[1] = '\0';
		expect_text(row[i].why, line, row[i].want);
		free(got);
	}
	book_close(b);
}

static void a_wrong_block_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "twice", HEAD "Quarle Top,Q,,,,,\nQuarle Top,Q,,,,,\n",
			"file.csv, line 3, column block: \"Q\" is in this file before" },
		{ "no name", HEAD "Quarle Top,,,,,,\n",
			"file.csv, line 2, column block: a value is missing; it takes a "
			"text of at most 47 letters in one line (an accented one counts "
			"as two)" },
		{ "half put away", HEAD "Quarle Top,Q,,,,,maybe\n",
			"file.csv, line 2, column retired: \"maybe\" is not right; it "
			"takes one of: no, yes" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "blocks", row[i].why, row[i].text, row[i].want);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(blocks_go_out_by_farm_and_come_in_again),
		cmocka_unit_test(what_a_file_of_blocks_leaves_out_stays),
		cmocka_unit_test(a_wrong_block_is_named),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
