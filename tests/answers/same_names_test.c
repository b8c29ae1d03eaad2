/* Block names are a farm's own: where two farms have one of the same name, what bars
 * entry or a pick says of which farm it is. */
#include "acts.h"

#include "answers/alerts.h"

/* Another farm whose block has the name of the first. */
static void second_farm(struct fixture *f, const char *block)
{
	struct farm farm = { .name = "Stone Mill", .season_start = 101 };
	struct block b = f->block;
	struct err e = { 0 };

	must(book_put_farm(f->book, &farm, &e), &e);
	b.id = 0;
	b.farm = farm.id;
	text_copy(b.name, sizeof b.name, block);
	must(book_put_block(f->book, &b, &e), &e);
}

static void a_name_that_two_farms_have_comes_with_its_farm(void **state)
{
	static const struct {
		const char *why, *other, *place;
	} row[] = {
		{ "the same", "Upper Russet", "Upper Russet (Quillback)" },
		{ "another", "Lower Russet", "Upper Russet" },
		{ "it begins alike", "Upper Russet 2", "Upper Russet" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		struct pick_rows picks = { 0 };
		struct block_clocks clocks = { 0 };
		struct alerts alerts = { 0 };
		char want[SAY_LINE];
		fixture_open(&f);
		second_farm(&f, row[i].other);
		fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
		int64_t t = fixture_trap(&f, "3", "2026-08-01");
		fixture_count(&f, t, "2026-08-08", 12);
		acts_treat(&f, "2026-08-08 10:30", 24, 14);
		acts_pick(&f, "2026-08-12", false);
		acts_read(&f, "2026-08-08 12:00");
		bars_of(&f.log, 0, &bars);
		pick_rows_of(&f.log, 0, &picks);
		block_clocks_of(&f.log, 0, &clocks);
		alerts_of(&f.log, 0, &alerts);
		assert_int_equal(bars.n, 1);
		assert_string_equal(bars.items[0].place, row[i].place);
		assert_string_equal(bars.items[0].block_name, "Upper Russet");
		assert_string_equal(picks.items[0].place, row[i].place);
		snprintf(want, sizeof want, "%s: no entry until", row[i].place);
		if (strncmp(clocks.items[0].text, want, strlen(want)) != 0)
			fail_msg("%s: %s", row[i].why, clocks.items[0].text);
		snprintf(want, sizeof want, "%s, CM, trap 3", row[i].place);
		assert_string_equal(alerts.items[0].name, want);
		bars_free(&bars);
		pick_rows_free(&picks);
		block_clocks_free(&clocks);
		alerts_free(&alerts);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_name_that_two_farms_have_comes_with_its_farm),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
