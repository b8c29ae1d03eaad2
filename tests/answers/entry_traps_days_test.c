/* The days on which a trap of the Book page was hung and pulled: visits. */
#include "answers/fixture.h"

#include "answers/entry_traps.h"
#include "answers/forms.h"
#include "base/buf.h"

static const struct entry_ask traps = { .kind = ENTRY_TRAPS };

static void hanging_and_pulling_are_visits(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", NULL);
	fixture_read(&f, "2026-06-23");
	must(entry_hang(f.book, trap, day_of("2026-06-01"), &f.log, &e), &e);
	struct visit v = fixture_visit(&f, trap, "2026-06-01");
	assert_int_equal(v.outcome, OUTCOME_HUNG);
	assert_int_equal(v.new_lure, f.lure.id);
	assert_int_equal(v.new_card, f.card.id);
	assert_int_equal(v.count, COUNT_NONE);
	fixture_count(&f, trap, "2026-06-08", 7);
	must(entry_pull(f.book, trap, day_of("2026-06-08"), &f.log, &e), &e);
	v = fixture_visit(&f, trap, "2026-06-08");
	assert_int_equal(v.outcome, OUTCOME_PULLED);
	assert_int_equal(v.count, 7);
	must(entry_hang(f.book, trap, day_of("2026-06-09"), &f.log, &e), &e);
	must(entry_pull(f.book, trap, day_of("2026-06-23"), &f.log, &e), &e);
	assert_int_equal(fixture_visit(&f, trap, "2026-06-23").count, COUNT_NONE);
	fixture_close(&f);
}

static void the_days_of_a_form_are_visits_that_are_made_once(void **state)
{
	static const struct {
		const char *why, *column, *text, *want;
	} row[] = {
		{ "hung after a count", "hung", "2026-06-08",
			"trap 1 of Quillback has a visit on 2026-06-08; the day on "
			"which it was hung lies before that" },
		{ "no hanging", "hung", "",
			"cannot be emptied here: in the trap's diary Delete, twice, "
			"takes that visit out" },
		{ "pulled before it was hung", "pulled", "2026-05-01",
			"\"2026-05-01\" must lie after the day it was hung, "
			"2026-06-01" },
		{ "pulled before its visits", "pulled", "2026-06-05",
			"trap 1 of Quillback has a visit after 2026-06-05, on "
			"2026-06-08; put its diary right first" },
	};
	struct fixture f;
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-06-01");
	fixture_count(&f, trap, "2026-06-08", 2);
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry *r = form_read(f.book, &f.log, &traps, trap);
		assert_string_equal(form_text(r, "hung"), "2026-06-01");
		form_type(r, row[i].column, row[i].text);
		bool ok = entry_put(r, f.book, &f.log, false, &fault);
		if (ok || strcmp(fault.text, row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, ok ? "taken" : fault.text);
		free(r);
	}
	struct entry *r = form_read(f.book, &f.log, &traps, trap);
	form_type(r, "pulled", "2026-06-20");
	form_put(r, f.book, &f.log);
	assert_int_equal(fixture_visit(&f, trap, "2026-06-20").outcome, OUTCOME_PULLED);
	free(r);
	fixture_close(&f);
}

/* A guessed day is kept with one key; the true one is typed where it stands. */
static void the_day_of_a_hanging_is_put_right_in_the_form(void **state)
{
	static const struct {
		const char *why, *day;
	} row[] = {
		{ "earlier", "2026-05-04" },
		{ "the last day before its count", "2026-06-07" },
		{ "back", "2026-06-01" },
	};
	const char *was = "2026-06-01";
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", was);
	fixture_count(&f, trap, "2026-06-08", 2);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct visits all = { 0 };
		struct err e = { 0 };
		const struct visit before = fixture_visit(&f, trap, was);

		fixture_read(&f, "2026-06-23");
		struct entry *r = form_read(f.book, &f.log, &traps, trap);
		form_type(r, "hung", row[i].day);
		form_put(r, f.book, &f.log);
		must(book_trap_visits(f.book, trap, &all, &e), &e);
		const struct visit *now = &all.items[0];
		if (all.n != 2 || now->day != day_of(row[i].day) ||
			now->outcome != OUTCOME_HUNG ||
			now->new_lure != before.new_lure ||
			now->new_card != before.new_card)
			fail_msg("%s: %zu visits", row[i].why, all.n);
		was = row[i].day;
		free(all.items);
		free(r);
	}
	fixture_close(&f);
}

static void a_day_of_pulling_is_not_replaced(void **state)
{
	struct fixture f;
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-06-01");
	struct err e = { 0 };
	fixture_read(&f, "2026-06-23");
	must(entry_pull(f.book, trap, day_of("2026-06-20"), &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	struct entry *r = form_read(f.book, &f.log, &traps, trap);
	form_type(r, "pulled", "2026-06-19");
	assert_false(entry_put(r, f.book, &f.log, false, &fault));
	assert_string_equal(fault.text,
		"\"2026-06-19\" cannot take the place of 2026-06-20: in the trap's "
		"diary Delete, twice, takes that visit out");
	free(r);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hanging_and_pulling_are_visits),
		cmocka_unit_test(the_day_of_a_hanging_is_put_right_in_the_form),
		cmocka_unit_test(a_day_of_pulling_is_not_replaced),
		cmocka_unit_test(the_days_of_a_form_are_visits_that_are_made_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
