/* What a form of a pick or a treatment says while it is filled in, and what is said
 * before a treatment is taken out. The day rule, treatment day + preharvest interval,
 * is common practice, no source; 20 August + 14 days is 3 September by any calendar. */
#include "acts.h"

#include "answers/entry_forms.h"

/* A new record of the block with some of its fields typed in. */
static struct entry typed(struct fixture *f, enum entry_kind kind)
{
	const struct entry_ask ask = {
		.kind = kind, .farm = f->farm.id, .block = f->block.id
	};
	struct entry r;
	struct err e = { 0 };

	must(entry_read(&r, f->book, &ask, 0, &f->log, &e), &e);
	return r;
}

static void type(struct entry *r, const char *column, const char *text)
{
	const struct entry_family *f = &entry_families[r->kind];

	for (size_t i = 0; i < f->n_columns; i++)
		if (strcmp(f->columns[i].name, column) == 0) {
			text_copy(r->text[i], ENTRY_TEXT, text);
			return;
		}
	fail_msg("no column %s", column);
}

static void a_pick_says_the_earliest_day_before_any_is_typed(void **state)
{
	static const struct {
		const char *why, *date, *says, *against;
	} row[] = {
		{ "no day yet", "",
			"Upper Russet: earliest pick Thu 3 Sep (14 days after 20 Aug)",
			"" },
		{ "half a day", "2026-09", "", "" },
		{ "the last day that is barred", "2026-09-02", "",
			"Wed 2 Sep: too early: earliest pick Thu 3 Sep (14 days after "
			"20 Aug)" },
		{ "the first day that is free", "2026-09-03",
			"Thu 3 Sep: not barred from Thu 3 Sep on (14 days after 20 Aug)",
			"" },
	};
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-08-20 10:30", 12, 14);
	acts_read(&f, "2026-08-24 08:00");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry r = typed(&f, ENTRY_PICKS);
		char live[2][SAY_LINE];
		type(&r, "date", row[i].date);
		entry_live(&r, &f.log, live);
		if (strcmp(live[0], row[i].says) != 0 ||
			strcmp(live[1], row[i].against) != 0)
			fail_msg("%s: \"%s\" \"%s\"", row[i].why, live[0], live[1]);
	}
	fixture_close(&f);
}

static void a_pick_in_a_block_that_nothing_bars_says_so(void **state)
{
	struct fixture f;
	char live[2][SAY_LINE];

	(void)state;
	fixture_open(&f);
	acts_read(&f, "2026-08-24 08:00");
	struct entry r = typed(&f, ENTRY_PICKS);
	entry_live(&r, &f.log, live);
	assert_string_equal(
		live[0], "Upper Russet: nothing in the log bars a pick today");
	type(&r, "block", "Lower Russet");
	entry_live(&r, &f.log, live);
	assert_string_equal(live[0], "");
	assert_string_equal(live[1], "");
	fixture_close(&f);
}

static void a_treatment_says_which_planned_pick_it_would_bar(void **state)
{
	static const struct {
		const char *why, *phi, *says, *against;
	} row[] = {
		{ "free on the day of the pick", "10",
			"no entry until Mon 24 Aug 22:30; earliest pick Thu 3 Sep (10 "
			"days after 24 Aug)",
			"" },
		{ "a day more bars it", "11", "no entry until Mon 24 Aug 22:30",
			"Upper Russet, pick planned for Thu 3 Sep: too early: earliest "
			"pick Fri 4 Sep (11 days after 24 Aug)" },
		{ "two of them", "18", "no entry until Mon 24 Aug 22:30",
			"Upper Russet, pick planned for Thu 3 Sep: too early: earliest "
			"pick Fri 11 Sep (18 days after 24 Aug); and 1 more pick" },
		{ "not entered, and never 0", "", "no entry until Mon 24 Aug 22:30",
			"Upper Russet, pick planned for Thu 3 Sep: not known: no "
			"preharvest interval entered for the treatment of 24 Aug; and 1 "
			"more pick" },
	};
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_pick(&f, "2026-09-03", false);
	acts_pick(&f, "2026-09-10", false);
	acts_read(&f, "2026-08-24 12:00");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry r = typed(&f, ENTRY_TREATMENTS);
		char live[2][SAY_LINE];
		type(&r, "ended_at", "10:30");
		type(&r, "rei_hours", "12");
		type(&r, "phi_days", row[i].phi);
		entry_live(&r, &f.log, live);
		if (strcmp(live[0], row[i].says) != 0 ||
			strcmp(live[1], row[i].against) != 0)
			fail_msg("%s: \"%s\" \"%s\"", row[i].why, live[0], live[1]);
	}
	fixture_close(&f);
}

static void what_is_not_typed_yet_is_not_complained_of(void **state)
{
	struct fixture f;
	char live[2][SAY_LINE];

	(void)state;
	fixture_open(&f);
	acts_pick(&f, "2026-09-03", false);
	acts_read(&f, "2026-08-24 12:00");
	struct entry r = typed(&f, ENTRY_TREATMENTS);
	entry_live(&r, &f.log, live);
	assert_string_equal(live[0], "");
	assert_string_equal(live[1], "");
	type(&r, "phi_days", "7");
	entry_live(&r, &f.log, live);
	assert_string_equal(live[0], "");
	assert_non_null(strstr(live[1], "no re-entry interval entered"));
	fixture_close(&f);
}

static void taking_out_a_treatment_says_what_it_changes(void **state)
{
	static const struct {
		const char *why;
		int other_phi; /* of one the day before it; -1: none */
		bool totals;
		const char *says;
	} row[] = {
		{ "alone", -1, false,
			" 1 planned pick is then allowed. Nothing then bars entry. "
			"Nothing then bars a pick." },
		{ "a total runs since it", -1, true,
			" 1 planned pick is then allowed. Nothing then bars entry. "
			"Nothing then bars a pick. Totals since a treatment go on "
			"without it." },
		{ "another bars a pick for less long", 10, false,
			" 1 planned pick is then allowed. Nothing then bars entry. "
			"Still barred: earliest pick Sat 29 Aug (10 days after 19 "
			"Aug)." },
		{ "another that bars as long", 15, false, " Nothing then bars entry." },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		char says[SAY_LINE * 2];
		fixture_open(&f);
		if (row[i].totals) {
			struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 500);
			r.span_kind = SPAN_TREATMENT;
			fixture_put_rule(&f, r);
		}
		acts_treat(&f, "2026-08-20 10:30", 24, 14);
		if (row[i].other_phi >= 0)
			acts_treat(&f, "2026-08-19 10:30", 0, row[i].other_phi);
		acts_pick(&f, "2026-09-02", false);
		acts_read(&f, "2026-08-20 12:00");
		size_t at = f.log.treatments.n - 1;
		entry_removal_says(&f.log, ENTRY_TREATMENTS,
			f.log.treatments.items[at].id, says, sizeof says);
		if (strcmp(says, row[i].says) != 0)
			fail_msg("%s: \"%s\"", row[i].why, says);
		entry_removal_says(&f.log, ENTRY_PICKS, f.log.picks.items[0].id, says,
			sizeof says);
		assert_string_equal(says, "");
		fixture_close(&f);
	}
}

static void a_total_that_it_restarts_nowhere_is_not_told(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	char says[SAY_LINE * 2];

	(void)state;
	fixture_open(&f);
	struct block other = { .farm = f.farm.id, .area_x100 = -1, .name = "Old Kiln" };
	must(book_put_block(f.book, &other, &e), &e);
	struct rule r = fixture_rule(&f, MEASURE_TRAP_TOTAL, 0, 500);
	r.span_kind = SPAN_TREATMENT;
	r.block = other.id;
	fixture_put_rule(&f, r);
	acts_treat(&f, "2026-06-20 10:30", 24, 14);
	acts_read(&f, "2026-08-20 12:00");
	entry_removal_says(&f.log, ENTRY_TREATMENTS, f.log.treatments.items[0].id, says,
		sizeof says);
	assert_string_equal(says, "");
	fixture_close(&f);
}

static void what_bars_nothing_any_more_goes_without_a_word(void **state)
{
	struct fixture f;
	char says[SAY_LINE * 2];

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-06-20 10:30", 24, 14);
	acts_read(&f, "2026-08-20 12:00");
	entry_removal_says(&f.log, ENTRY_TREATMENTS, f.log.treatments.items[0].id, says,
		sizeof says);
	assert_string_equal(says, "");
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_pick_says_the_earliest_day_before_any_is_typed),
		cmocka_unit_test(a_pick_in_a_block_that_nothing_bars_says_so),
		cmocka_unit_test(a_treatment_says_which_planned_pick_it_would_bar),
		cmocka_unit_test(what_is_not_typed_yet_is_not_complained_of),
		cmocka_unit_test(taking_out_a_treatment_says_what_it_changes),
		cmocka_unit_test(a_total_that_it_restarts_nowhere_is_not_told),
		cmocka_unit_test(what_bars_nothing_any_more_goes_without_a_word),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
