/* Re-entry is counted in hours from the end of the application: common practice, no
 * source; the label wins. What is published of it is checked in tests/reference. */
#include "acts.h"

static void a_block_is_barred_to_the_minute(void **state)
{
	static const struct {
		const char *why, *now, *brief, *text;
	} row[] = {
		{ "the minute before it begins", "2026-07-20 05:59", "", "" },
		{ "while it is applied", "2026-07-20 06:00", "no entry till Tue 07:00",
			"no entry until Tue 21 Jul 07:00" },
		{ "the last barred minute", "2026-07-21 06:59",
			"no entry till Tue 07:00", "no entry until Tue 21 Jul 07:00" },
		{ "the first free one", "2026-07-21 07:00", "", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		fixture_open(&f);
		acts_treat(&f, "2026-07-20 07:00", 24, 14);
		acts_read(&f, row[i].now);
		bars_of(&f.log, 0, &bars);
		const struct bar *b = bars_find(&bars, f.block.id);
		if (strcmp(b ? b->brief : "", row[i].brief) != 0 ||
			strcmp(b ? b->text : "", row[i].text) != 0)
			fail_msg("%s: \"%s\", \"%s\"", row[i].why, b ? b->brief : "",
				b ? b->text : "");
		bars_free(&bars);
		fixture_close(&f);
	}
}

static void what_was_not_entered_is_said_and_never_free(void **state)
{
	static const struct {
		const char *why;
		int32_t rei;
		bool hour;
		const char *now, *brief, *text;
	} row[] = {
		{ "no interval: not known", -1, true, "2026-07-20 12:00",
			"entry not known",
			"whether it may be entered is not known: no re-entry interval "
			"entered for Brackwater oil, 20 Jul" },
		{ "no interval, after the longest time it can matter", -1, true,
			"2026-08-19 07:00", "", "" },
		{ "the minute before that", -1, true, "2026-08-19 06:59",
			"entry not known",
			"whether it may be entered is not known: no re-entry interval "
			"entered for Brackwater oil, 20 Jul" },
		{ "no hour: from the end of the day", 4, false, "2026-07-21 03:59",
			"no entry till Tue 04:00",
			"no entry until Tue 21 Jul 04:00 (counted from the end of 20 "
			"Jul)" },
		{ "no hour: first free minute", 4, false, "2026-07-21 04:00", "", "" },
		{ "an interval of none is none", 0, true, "2026-07-20 07:00", "", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		fixture_open(&f);
		struct treatment t =
			acts_treatment(&f, "2026-07-20 07:00", row[i].rei, 14);
		if (!row[i].hour)
			t.from = t.until = (struct instant){ .minute = INSTANT_NONE };
		acts_put(&f, t);
		acts_read(&f, row[i].now);
		bars_of(&f.log, f.farm.id, &bars);
		const struct bar *b = bars_find(&bars, f.block.id);
		if (strcmp(b ? b->brief : "", row[i].brief) != 0 ||
			strcmp(b ? b->text : "", row[i].text) != 0)
			fail_msg("%s: \"%s\", \"%s\"", row[i].why, b ? b->brief : "",
				b ? b->text : "");
		bars_free(&bars);
		fixture_close(&f);
	}
}

static void beyond_a_week_the_date_is_said(void **state)
{
	static const struct {
		const char *why;
		int32_t rei;
		const char *brief;
	} row[] = {
		{ "six days: its name is enough", 6 * 24, "no entry till Sun 07:00" },
		{ "seven: it is not", 7 * 24, "no entry till Mon 27 Jul 07:00" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		fixture_open(&f);
		acts_treat(&f, "2026-07-20 07:00", row[i].rei, 0);
		acts_read(&f, "2026-07-20 08:00");
		bars_of(&f.log, 0, &bars);
		assert_int_equal(bars.n, 1);
		if (strcmp(bars.items[0].brief, row[i].brief) != 0)
			fail_msg("%s: %s", row[i].why, bars.items[0].brief);
		bars_free(&bars);
		fixture_close(&f);
	}
}

/* Without its year 21 July 2027 reads, on 21 July 2026, as a bar that ends today. */
static void a_bar_into_another_year_names_the_year(void **state)
{
	static const struct {
		const char *why, *ended;
		int32_t rei;
		const char *brief, *text;
	} row[] = {
		{ "this year's last hour", "2026-12-20 07:00", 11 * 24 + 16,
			"no entry till Thu 31 Dec 23:00",
			"no entry until Thu 31 Dec 23:00" },
		{ "next year's first", "2026-12-20 07:00", 11 * 24 + 17,
			"no entry till Fri 1 Jan 2027 00:00",
			"no entry until Fri 1 Jan 2027 00:00" },
		{ "a year", "2026-07-20 10:30", 8784,
			"no entry till Wed 21 Jul 2027 10:30",
			"no entry until Wed 21 Jul 2027 10:30" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		char says[SAY_LINE * 2];
		fixture_open(&f);
		acts_treat(&f, row[i].ended, row[i].rei, 0);
		acts_read(&f, row[i].ended);
		bars_of(&f.log, 0, &bars);
		assert_int_equal(bars.n, 1);
		bars_say(&bars, f.farm.id, says, sizeof says);
		if (strcmp(bars.items[0].brief, row[i].brief) != 0 ||
			strcmp(bars.items[0].text, row[i].text) != 0 ||
			!strstr(says, row[i].brief + strlen("no entry till ")))
			fail_msg("%s: \"%s\", \"%s\", \"%s\"", row[i].why,
				bars.items[0].brief, bars.items[0].text, says);
		bars_free(&bars);
		fixture_close(&f);
	}
}

static void what_follows_a_bar_may_be_unknown(void **state)
{
	struct fixture f;
	struct bars bars = { 0 };

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-07-20 07:00", 24, 14);
	struct treatment t = acts_treatment(&f, "2026-07-20 07:00", -1, 14);
	text_copy(t.product, sizeof t.product, "");
	acts_put(&f, t);
	acts_read(&f, "2026-07-20 12:00");
	bars_of(&f.log, 0, &bars);
	assert_int_equal(bars.n, 1);
	assert_string_equal(
		bars.items[0].brief, "no entry till Tue 07:00, then not known");
	assert_string_equal(bars.items[0].text,
		"no entry until Tue 21 Jul 07:00, then not known: no re-entry "
		"interval entered for the treatment of 20 Jul");
	bars_free(&bars);
	fixture_close(&f);
}

static void without_a_clock_a_treated_block_is_not_known(void **state)
{
	struct fixture f;
	struct bars bars = { 0 };

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-07-20 07:00", 24, 14);
	f.log.now.minute = INSTANT_NONE;
	fixture_read(&f, "2026-07-20");
	bars_of(&f.log, 0, &bars);
	assert_int_equal(bars.n, 1);
	assert_string_equal(bars.items[0].brief, "entry not known");
	bars_free(&bars);
	fixture_close(&f);
}

/* A step of an hour: clocks went forward on 29 March 2026 at 01:00 UTC. */
static void hours_are_counted_across_a_change_of_clocks(void **state)
{
	struct fixture f;
	struct bars bars = { 0 };

	(void)state;
	fixture_open(&f);
	f.log.zone.n = 2;
	f.log.zone.steps[0].east = 60;
	f.log.zone.steps[1].from = (int64_t)day_of("2026-03-29") * MINUTES_A_DAY + 60;
	f.log.zone.steps[1].east = 120;
	acts_treat(&f, "2026-03-28 22:00", 12, 0);
	acts_read(&f, "2026-03-29 10:59");
	bars_of(&f.log, 0, &bars);
	assert_int_equal(bars.n, 1);
	assert_string_equal(bars.items[0].text, "no entry until Sun 29 Mar 11:00");
	acts_read(&f, "2026-03-29 11:00");
	bars_of(&f.log, 0, &bars);
	assert_int_equal(bars.n, 0);
	bars_free(&bars);
	fixture_close(&f);
}

static void a_treatment_to_come_is_told_as_long_as_a_sheet_is_carried(void **state)
{
	static const struct {
		const char *why, *now;
		int32_t rei;
		const char *says; /* NULL: nothing */
	} row[] = {
		{ "eight days ahead", "2026-07-12 08:00", 12, NULL },
		{ "seven", "2026-07-13 08:00", 12,
			"Upper Russet: from Mon 20 Jul 13:00 on, no entry until Tue 21 "
			"Jul 02:00" },
		{ "the minute before", "2026-07-20 12:59", 12,
			"Upper Russet: from Mon 20 Jul 13:00 on, no entry until Tue 21 "
			"Jul 02:00" },
		{ "begun: barred now", "2026-07-20 13:00", 12,
			"Upper Russet: no entry until Tue 21 Jul 02:00" },
		{ "no interval", "2026-07-20 12:59", -1,
			"Upper Russet: from Mon 20 Jul 13:00 on, whether it may be "
			"entered is not known: no re-entry interval entered for "
			"Brackwater oil, 20 Jul" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct block_clocks c = { 0 };
		fixture_open(&f);
		acts_treat(&f, "2026-07-20 14:00", row[i].rei, 0);
		acts_treat(&f, "2026-07-20 14:00", row[i].rei, 0);
		acts_read(&f, row[i].now);
		block_clocks_of(&f.log, 0, &c);
		if ((c.n > 0) != (row[i].says != NULL) ||
			(c.n && strcmp(c.items[0].text, row[i].says) != 0))
			fail_msg("%s: %zu, \"%s\"", row[i].why, c.n,
				c.n ? c.items[0].text : "");
		if (c.n > 1 && strcmp(c.items[1].text, c.items[0].text) == 0)
			fail_msg("%s: told twice", row[i].why);
		block_clocks_free(&c);
		fixture_close(&f);
	}
}

static void add_blocks(struct fixture *f, size_t n, int32_t rei)
{
	for (size_t i = 0; i < n; i++) {
		struct block b = f->block;
		struct err e = { 0 };
		b.id = 0;
		snprintf(b.name, sizeof b.name, "Sallow %02zu", i + 1);
		must(book_put_block(f->book, &b, &e), &e);
		struct treatment t = acts_treatment(f, "2026-07-20 07:00", rei, 0);
		t.block = b.id;
		acts_put(f, t);
	}
}

static void a_list_too_long_counts_what_it_leaves_out(void **state)
{
	static const struct {
		const char *why;
		size_t barred, unknown;
		const char *want;
	} row[] = {
		{ "none: nothing is said", 0, 0, "" },
		{ "one of each", 1, 1,
			"no entry: Sallow 01 until Tue 21 Jul 07:00; entry not known: "
			"Sallow 01" },
		{ "too many: counted, and the unknown ones still said", 9, 1,
			"no entry: Sallow 01 until Tue 21 Jul 07:00, Sallow 02 until "
			"Tue 21 Jul 07:00, Sallow 03 until Tue 21 Jul 07:00, Sallow 04 "
			"until Tue 21 Jul 07:00 and 5 more blocks; entry not known: "
			"Sallow 01" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct bars bars = { 0 };
		char text[SAY_LINE * 2];
		for (size_t k = 0; k < 2; k++) {
			struct fixture f;
			struct bars some = { 0 };
			fixture_open(&f);
			add_blocks(&f, k ? row[i].unknown : row[i].barred, k ? -1 : 24);
			acts_read(&f, "2026-07-20 12:00");
			bars_of(&f.log, 0, &some);
			for (size_t n = 0; n < some.n; n++) {
				bars.items = realloc(
					bars.items, (bars.n + 1) * sizeof *bars.items);
				bars.items[bars.n] = some.items[n];
				bars.items[bars.n++].farm = 1;
			}
			bars_free(&some);
			fixture_close(&f);
		}
		bars_say(&bars, 1, text, sizeof text);
		if (strcmp(text, row[i].want) != 0)
			fail_msg("%s: \"%s\"", row[i].why, text);
		bars_free(&bars);
	}
}

/* On the row of the run only what begins while the block is free. */
static void a_row_of_the_run_says_what_is_planned(void **state)
{
	static const struct {
		const char *why, *now, *says;
	} row[] = {
		{ "eight days ahead", "2026-07-12 08:00", "" },
		{ "seven", "2026-07-13 08:00",
			"treatment planned: Upper Russet from Mon 20 Jul 13:00" },
		{ "the minute before", "2026-07-20 12:59",
			"treatment planned: Upper Russet from Mon 20 Jul 13:00" },
		{ "begun; the next one while it bars", "2026-07-20 13:00",
			"no entry: Upper Russet until Tue 21 Jul 16:00; "
			"treatment planned: Upper Russet from Thu 23 Jul 13:00" },
		{ "over", "2026-07-21 16:00",
			"treatment planned: Upper Russet from Thu 23 Jul 13:00" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		char says[SAY_LINE * 2];
		fixture_open(&f);
		acts_treat(&f, "2026-07-20 14:00", 24, 0);
		acts_treat(&f, "2026-07-21 04:00", 12, 0);
		acts_treat(&f, "2026-07-23 14:00", 12, 0);
		acts_read(&f, row[i].now);
		bars_of(&f.log, 0, &bars);
		bars_say(&bars, f.farm.id, says, sizeof says);
		if (strcmp(says, row[i].says) != 0)
			fail_msg("%s: \"%s\"", row[i].why, says);
		bars_free(&bars);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_block_is_barred_to_the_minute),
		cmocka_unit_test(a_row_of_the_run_says_what_is_planned),
		cmocka_unit_test(what_was_not_entered_is_said_and_never_free),
		cmocka_unit_test(beyond_a_week_the_date_is_said),
		cmocka_unit_test(a_bar_into_another_year_names_the_year),
		cmocka_unit_test(what_follows_a_bar_may_be_unknown),
		cmocka_unit_test(without_a_clock_a_treated_block_is_not_known),
		cmocka_unit_test(hours_are_counted_across_a_change_of_clocks),
		cmocka_unit_test(
			a_treatment_to_come_is_told_as_long_as_a_sheet_is_carried),
		cmocka_unit_test(a_list_too_long_counts_what_it_leaves_out),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
