/* Alerts that were answered with "treated" while nobody entered the treatment. */
#include "acts.h"

#include "answers/answered.h"
#include "answers/forms.h"
#include "answers/record.h"
#include "answers/verdicts.h"

#define TODAY "2026-07-22 08:00"

/* Trap 3 was over on 14 July; what was decided on the 20th. */
static void answer_of(struct fixture *f, enum decision decision)
{
	struct answer a = answer_blank;
	struct err e = { 0 };

	a.trap = fixture_trap(f, "3", "2026-07-01");
	a.block = f->block.id;
	a.pest = f->cm.id;
	a.day = day_of("2026-07-14");
	a.on = day_of("2026-07-20");
	a.decision = decision;
	must(book_put_answer(f->book, &a, &e), &e);
}

static void treat_on(struct fixture *f, const char *day)
{
	char ended[32];

	snprintf(ended, sizeof ended, "%s 10:30", day);
	acts_treat(f, ended, 0, 0);
}

static void a_treatment_that_is_only_answered_leaves_entry_and_picks_open(void **state)
{
	static const struct {
		const char *why;
		enum decision decision;
		const char *treated; /* NULL: none was entered */
		bool is_open;
	} row[] = {
		{ "no treatment entered", DECISION_TREATED, NULL, true },
		{ "looked bars nothing", DECISION_LOOKED, NULL, false },
		{ "left bars nothing", DECISION_LEFT, NULL, false },
		{ "entered for that day", DECISION_TREATED, "2026-07-20", false },
		{ "two days before", DECISION_TREATED, "2026-07-18", false },
		{ "three days before is another", DECISION_TREATED, "2026-07-17",
			true },
		{ "a week after", DECISION_TREATED, "2026-07-27", false },
		{ "eight days after is another", DECISION_TREATED, "2026-07-28", true },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct bars bars = { 0 };
		struct pick_rows p = { 0 };
		fixture_open(&f);
		answer_of(&f, row[i].decision);
		if (row[i].treated)
			treat_on(&f, row[i].treated);
		acts_read(&f, TODAY);
		bars_of(&f.log, 0, &bars);
		pick_rows_of(&f.log, 0, &p);
		if (bars.n != row[i].is_open || p.n != row[i].is_open)
			fail_msg("%s: %zu barred, %zu picks", row[i].why, bars.n, p.n);
		bars_free(&bars);
		pick_rows_free(&p);
		fixture_close(&f);
	}
}

#define SAID "answered as treated 20 Jul, no treatment entered"

static void what_is_only_answered_is_said_to_be_so(void **state)
{
	struct fixture f;
	struct bars bars = { 0 };
	struct pick_rows p = { 0 };

	(void)state;
	fixture_open(&f);
	answer_of(&f, DECISION_TREATED);
	acts_pick(&f, "2026-07-24", false);
	acts_read(&f, TODAY);
	bars_of(&f.log, 0, &bars);
	assert_int_equal(bars.n, 1);
	assert_string_equal(bars.items[0].brief, "entry not known");
	assert_string_equal(
		bars.items[0].text, "whether it may be entered is not known: " SAID);
	const struct entry_ask ask = { .kind = ENTRY_PICKS };
	struct entry_list list = list_of(f.book, &f.log, &ask);
	assert_string_equal(list.rows[0].note, "not known: " SAID);
	entry_list_free(&list);
	pick_rows_of(&f.log, 0, &p);
	assert_int_equal(p.n, 2);
	assert_string_equal(p.items[0].says, "not known: " SAID);
	assert_int_equal(p.items[0].tone, TONE_UNSURE);
	assert_string_equal(p.items[1].says, "earliest pick not known: " SAID);
	bars_free(&bars);
	pick_rows_free(&p);
	fixture_close(&f);
}

/* Which rows the record has; "20 answered": only an answer tells of one of that day. */
static void record_has(struct fixture *f, const char *from, const char *to,
	const char *why, const char *want)
{
	const struct record_ask ask = {
		.farm = f->farm.id, .from = day_of(from), .to = day_of(to)
	};
	struct record r = { 0 };
	struct err e = { 0 };
	struct buf got = { 0 };

	must(record_read(&r, f->book, &f->log, &ask, &e), &e);
	buf_add(&got, "");
	for (size_t i = 0; i < r.n; i++)
		buf_addf(&got, "%s%d%s", i ? ", " : "",
			(int)day_to_ymd(r.rows[i].treatment->day).day,
			*r.rows[i].answered ? " answered" : "");
	if (strcmp(got.text, want) != 0)
		fail_msg("%s: \"%s\", not \"%s\"", why, got.text, want);
	buf_free(&got);
	record_free(&r);
}

static void the_record_has_what_is_only_answered(void **state)
{
	static const struct {
		const char *why, *from, *to;
		const char *treated; /* NULL: none was entered */
		const char *want;
	} row[] = {
		{ "no treatment entered", "2026-01-01", "2026-12-31", NULL,
			"20 answered" },
		{ "entered a week after", "2026-01-01", "2026-12-31", "2026-07-27",
			"27" },
		{ "of another week", "2026-01-01", "2026-12-31", "2026-07-28",
			"20 answered, 28" },
		{ "up to its day", "2026-01-01", "2026-07-20", NULL, "20 answered" },
		{ "up to the day before", "2026-01-01", "2026-07-19", NULL, "" },
		{ "from its day, the alert was before", "2026-07-20", "2026-12-31",
			NULL, "20 answered" },
		{ "from the day after", "2026-07-21", "2026-12-31", NULL, "" },
		{ "entered beyond the span", "2026-01-01", "2026-07-20", "2026-07-27",
			"" },
		{ "entered before the span", "2026-07-20", "2026-12-31", "2026-07-18",
			"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		answer_of(&f, DECISION_TREATED);
		if (row[i].treated)
			treat_on(&f, row[i].treated);
		acts_read(&f, TODAY);
		record_has(&f, row[i].from, row[i].to, row[i].why, row[i].want);
		fixture_close(&f);
	}
}

static void the_record_says_what_is_missing_of_what_is_only_answered(void **state)
{
	struct fixture f;
	struct record r = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	answer_of(&f, DECISION_TREATED);
	acts_read(&f, TODAY);
	const struct record_ask ask = { .from = day_of("2026-01-01"),
		.to = day_of("2026-12-31") };
	must(record_read(&r, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(r.n, 1);
	assert_string_equal(r.rows[0].answered, SAID);
	assert_string_equal(r.rows[0].when, "Mon 20 July 2026, hours not entered");
	assert_string_equal(r.rows[0].missing,
		"product, registration number, total amount, unit of the amount, size "
		"of the area, applicator, certificate number");
	assert_string_equal(r.rows[0].entry, "re-entry interval not entered");
	assert_string_equal(r.rows[0].pick, "preharvest interval not entered");
	assert_int_equal(r.rows[0].pick_from, DAY_NONE);
	assert_int_equal(r.rows[0].entry_from.minute, INSTANT_NONE);
	record_free(&r);
	fixture_close(&f);
}

/* It may have been of the border alone, or not have been at all. */
static void what_is_only_answered_restarts_no_total(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	answer_of(&f, DECISION_TREATED);
	acts_read(&f, TODAY);
	struct moment m = log_moment(&f.log, f.block.id, f.cm.id, day_of("2026-07-22"));
	assert_int_equal(m.treated, DAY_NONE);
	fixture_close(&f);
}

static void two_answers_of_a_day_tell_of_one_treatment(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	answer_of(&f, DECISION_TREATED);
	struct answer a = answer_blank;
	struct err e = { 0 };
	a.block = f.block.id;
	a.pest = f.cm.id;
	a.trap = fixture_trap(&f, "4", "2026-07-01");
	a.day = day_of("2026-07-14");
	a.on = day_of("2026-07-20");
	a.decision = DECISION_TREATED;
	must(book_put_answer(f.book, &a, &e), &e);
	acts_read(&f, TODAY);
	assert_int_equal(f.log.treatments.n, 1);
	assert_int_equal(f.log.treatments.items[0].id, TREATMENT_ANSWERED);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			a_treatment_that_is_only_answered_leaves_entry_and_picks_open),
		cmocka_unit_test(what_is_only_answered_is_said_to_be_so),
		cmocka_unit_test(the_record_has_what_is_only_answered),
		cmocka_unit_test(
			the_record_says_what_is_missing_of_what_is_only_answered),
		cmocka_unit_test(what_is_only_answered_restarts_no_total),
		cmocka_unit_test(two_answers_of_a_day_tell_of_one_treatment),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
