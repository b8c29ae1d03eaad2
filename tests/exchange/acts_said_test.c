/* What an import says of picks, visits and treatments that do not go together. */
#include "desk.h"

#define TREATMENTS "farm,block,date,ended_at,product,rei_hours,phi_days\n"

/* PHI: earliest pick = day of the treatment + days (common practice, no source). */
static void no_import_leaves_a_pick_unsaid(void **state)
{
	static const struct {
		const char *why, *first, *first_text, *then, *then_text, *want;
	} row[] = {
		{ "a pick on the last barred day", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n",
			"picks", "farm,block,date\nQuarle Top,Bank,2026-08-02\n",
			"Quarle Top, Bank, pick planned for 2026-08-02: too early: "
			"earliest pick Mon 3 Aug (14 days after 20 Jul)" },
		{ "a pick on the first free day", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n",
			"picks", "farm,block,date\nQuarle Top,Bank,2026-08-03\n",
			NULL },
		{ "a pick of another block", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n",
			"picks", "farm,block,date\nQuarle Top,Slip,2026-08-02\n",
			NULL },
		{ "a treatment that bars a planned pick", "picks",
			"farm,block,date\nQuarle Top,Bank,2026-08-02\n", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n",
			"Quarle Top, Bank, pick planned for 2026-08-02: too early: "
			"earliest pick Mon 3 Aug (14 days after 20 Jul)" },
		{ "one that does not", "picks",
			"farm,block,date\nQuarle Top,Bank,2026-08-03\n", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n",
			NULL },
		{ "a treatment without an interval", "picks",
			"farm,block,date\nQuarle Top,Bank,2026-08-03\n", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,\n",
			"Quarle Top, Bank, pick planned for 2026-08-03: not known: no "
			"preharvest interval entered for Oil, 20 Jul" },
		{ "a pick that was done too early", "picks",
			"farm,block,date,done\nQuarle Top,Bank,2026-07-21,yes\n",
			"treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,2\n",
			"Quarle Top, Bank, picked on 2026-07-21: too early: earliest "
			"pick was Wed 22 Jul (2 days after 20 Jul)" },
		{ "the same pick again", "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,Oil,12,2\n",
			"picks",
			"farm,block,date\nQuarle Top,Bank,2026-07-21\n"
			"Quarle Top,Slip,2026-07-21\n",
			"Quarle Top, Bank, pick planned for 2026-07-21: too early: "
			"earliest pick Wed 22 Jul (2 days after 20 Jul)" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		must_take(b, row[i].first, row[i].first_text);
		for (int again = 0; again < 2; again++) {
			struct imported out = { 0 };
			struct err e = { 0 };
			assert_true(take(b, row[i].then, row[i].then_text, &out, &e));
			if (out.n_warnings != (row[i].want ? 1 : 0))
				fail_msg("%s: %d warnings, %s", row[i].why,
					(int)out.n_warnings,
					out.warnings.n ? out.warnings.items[0] : "");
			if (row[i].want)
				expect_text(
					row[i].why, out.warnings.items[0], row[i].want);
			imported_free(&out);
		}
		book_close(b);
	}
}

/* REI: hours from the end of the application (common practice, no source); without an
 * hour from the end of the day. */
static void a_visit_on_a_barred_day_is_said(void **state)
{
	static const struct {
		const char *why, *treated, *visit, *want;
	} row[] = {
		{ "a day barred to its last minute", "Slip,2026-07-19,,x,24,0",
			"2026-07-20,counted,1,",
			"trap 1 of Quarle Top was visited on 2026-07-20; nobody was to "
			"enter Slip before 2026-07-21T00:00+00:00" },
		{ "an hour less", "Slip,2026-07-19,,x,23,0", "2026-07-20,counted,1,",
			NULL },
		{ "the day of the treatment", "Slip,2026-07-20,10:30,x,48,0",
			"2026-07-20,counted,1,", NULL },
		{ "the day after it", "Slip,2026-07-20,10:30,x,48,0",
			"2026-07-21,counted,1,",
			"trap 1 of Quarle Top was visited on 2026-07-21; nobody was to "
			"enter Slip before 2026-07-22T10:30+00:00" },
		{ "skipped", "Slip,2026-07-20,10:30,x,48,0",
			"2026-07-21,skipped,,re-entry", NULL },
		{ "another block", "Bank,2026-07-20,10:30,x,48,0",
			"2026-07-21,counted,1,", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct book *b = farm_book();
		struct err e = { 0 };
		char text[256];
		snprintf(text, sizeof text, TREATMENTS "Quarle Top,%s\n",
			row[i].treated);
		must_take(b, "treatments", text);
		snprintf(text, sizeof text,
			"farm,trap,date,outcome,count,reason\nQuarle Top,1,%s\n",
			row[i].visit);
		if (!take(b, "visits", text, &out, &e))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		if (out.n_warnings != (row[i].want ? 1 : 0))
			fail_msg("%s: %d warnings", row[i].why, (int)out.n_warnings);
		if (row[i].want)
			expect_text(row[i].why, out.warnings.items[0], row[i].want);
		imported_free(&out);
		book_close(b);
	}
}

/* The same the other way round: the treatment comes after the visit. */
static void a_treatment_that_barred_a_visit_is_said(void **state)
{
	static const struct {
		const char *why, *visit, *treated, *want;
	} row[] = {
		{ "a day barred to its last minute", "2026-07-20,counted,1,",
			"Slip,2026-07-19,,x,24,0",
			"trap 1 of Quarle Top was visited on 2026-07-20; nobody was to "
			"enter Slip before 2026-07-21T00:00+00:00" },
		{ "an hour less", "2026-07-20,counted,1,", "Slip,2026-07-19,,x,23,0",
			NULL },
		{ "its own day", "2026-07-20,counted,1,",
			"Slip,2026-07-20,10:30,x,48,0", NULL },
		{ "skipped", "2026-07-20,skipped,,re-entry", "Slip,2026-07-19,,x,24,0",
			NULL },
		{ "another block", "2026-07-20,counted,1,", "Bank,2026-07-19,,x,24,0",
			NULL },
		{ "no interval: nothing can be told", "2026-07-20,counted,1,",
			"Slip,2026-07-19,,x,,0", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct book *b = farm_book();
		struct err e = { 0 };
		char text[256];
		snprintf(text, sizeof text,
			"farm,trap,date,outcome,count,reason\nQuarle Top,1,%s\n",
			row[i].visit);
		must_take(b, "visits", text);
		snprintf(text, sizeof text, TREATMENTS "Quarle Top,%s\n",
			row[i].treated);
		if (!take(b, "treatments", text, &out, &e))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		if (out.n_warnings != (row[i].want ? 1 : 0))
			fail_msg("%s: %d warnings", row[i].why, (int)out.n_warnings);
		if (row[i].want)
			expect_text(row[i].why, out.warnings.items[0], row[i].want);
		/* What to heed stands below it. */
		assert_int_equal(out.notes.n, row[i].want ? 1 : 0);
		imported_free(&out);
		book_close(b);
	}
}

/* Who hangs or pulls a trap is in its block. */
static void a_trap_hung_or_pulled_on_a_barred_day_is_said(void **state)
{
	static const struct {
		const char *why, *row;
		bool warns;
	} row[] = {
		{ "hung", "Slip,9,CM,2026-07-20,", true },
		{ "pulled", "Slip,1,CM,2026-05-01,2026-07-20", true },
		{ "on the first free day", "Slip,9,CM,2026-07-21,", false },
		{ "in another block", "Bank,9,CM,2026-07-20,", false },
		{ "hung long before", "Slip,1,CM,2026-05-01,", false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct book *b = farm_book();
		struct err e = { 0 };
		char text[256];
		must_take(b, "treatments",
			TREATMENTS "Quarle Top,Slip,2026-07-19,,x,24,0\n");
		snprintf(text, sizeof text,
			"farm,block,trap,pest,hung,pulled\nQuarle Top,%s\n",
			row[i].row);
		if (!take(b, "traps", text, &out, &e))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		if ((out.n_warnings > 0 &&
			    strstr(out.warnings.items[0], "nobody was to enter")) !=
			row[i].warns)
			fail_msg("%s: %d warnings", row[i].why, (int)out.n_warnings);
		imported_free(&out);
		book_close(b);
	}
}

/* At most so many warnings are kept: the worst are among them. */
static void a_pick_too_early_is_said_before_those_not_known(void **state)
{
	struct imported out = { 0 };
	struct book *b = farm_book();
	struct buf text = { 0 };
	struct err e = { 0 };

	(void)state;
	must_take(b, "treatments",
		TREATMENTS "Quarle Top,Slip,2026-07-01,10:30,Oil,12,\n"
			   "Quarle Top,Bank,2026-07-20,10:30,Oil,12,14\n");
	buf_add(&text, "farm,block,date\n");
	for (int i = 0; i < PROBLEMS_MAX + 1; i++)
		buf_addf(&text, "Quarle Top,Slip,2026-07-%02d\n", 1 + i % 31);
	buf_add(&text, "Quarle Top,Bank,2026-07-31\n");
	assert_true(take(b, "picks", text.text, &out, &e));
	assert_int_equal(out.n_warnings, PROBLEMS_MAX + 2);
	assert_int_equal(out.warnings.n, PROBLEMS_MAX);
	assert_non_null(strstr(out.warnings.items[0], "Bank"));
	assert_non_null(strstr(out.warnings.items[0], "too early"));
	buf_free(&text);
	imported_free(&out);
	book_close(b);
}

static void a_treatment_to_come_is_taken_and_said(void **state)
{
	struct imported out = { 0 };
	struct book *b = farm_book();
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "treatments",
		"farm,block,date\nQuarle Top,Bank,2026-07-21\n"
		"Quarle Top,Bank,2026-07-22\n",
		&out, &e));
	assert_int_equal(out.n_warnings, 1);
	assert_string_equal(out.warnings.items[0],
		"Quarle Top, Bank: the treatment of 2026-07-22 lies after today");
	imported_free(&out);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_import_leaves_a_pick_unsaid),
		cmocka_unit_test(a_visit_on_a_barred_day_is_said),
		cmocka_unit_test(a_treatment_that_barred_a_visit_is_said),
		cmocka_unit_test(a_trap_hung_or_pulled_on_a_barred_day_is_said),
		cmocka_unit_test(a_pick_too_early_is_said_before_those_not_known),
		cmocka_unit_test(a_treatment_to_come_is_taken_and_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
