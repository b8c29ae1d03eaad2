/* The diary of one trap: visits of a season and what stood there before. */
#include "answers/fixture.h"
#include "answers/trap_diary.h"
#include "base/text.h"

static void read_diary(
	struct fixture *f, struct trap_diary *d, int64_t trap, int season)
{
	struct err e = { 0 };

	must(trap_diary_read(d, f->book, &f->log, trap, season, &e), &e);
}

static void expect_row(const struct diary_row *r, const char *day, const char *visit,
	const char *nights, const char *weekly)
{
	assert_string_equal(r->day_text, day);
	assert_string_equal(r->visit_text, visit);
	assert_string_equal(r->nights_text, nights);
	assert_string_equal(r->weekly_text, weekly);
}

static void trap_diary_lists_the_visits_with_what_they_were_worth(void **state)
{
	struct trap_diary d = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "3", "2026-05-26"),
		other = fixture_trap(&f, "4", "2026-05-26");
	fixture_count(&f, other, "2026-06-02", 99);
	fixture_count(&f, trap, "2026-06-02", 6);
	fixture_skip(&f, trap, "2026-06-09");
	struct visit v = fixture_counted(trap, "2026-06-12", 9);
	v.outcome = OUTCOME_FLOOR;
	v.new_card = f.card.id;
	fixture_save(&f, v);
	v = fixture_counted(trap, "2026-06-16", 3);
	v.outcome = OUTCOME_SPOILED;
	v.reason = REASON_DOWN;
	v.new_lure = f.lure.id;
	fixture_save(&f, v);
	v = fixture_counted(trap, "2026-06-18", COUNT_NONE);
	v.outcome = OUTCOME_SKIPPED;
	v.new_lure = f.lure.id;
	fixture_save(&f, v);
	fixture_count(&f, trap, "2026-06-23", 0);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	assert_string_equal(
		d.title, "Quillback \302\267 Upper Russet \302\267 trap 3 \302\267 CM");
	assert_int_equal(d.season, 2026);
	assert_int_equal(d.n, 7);
	expect_row(&d.rows[0], "Tue 23 Jun", "0", "7 n", "0.0");
	expect_row(&d.rows[1], "Thu 18 Jun", "lure changed", "", "");
	expect_row(&d.rows[2], "Tue 16 Jun", "spoiled, down 3+ l", "4 n", "3.0+");
	expect_row(&d.rows[3], "Fri 12 Jun", "9+ c", "10 n", "6.3+");
	expect_row(&d.rows[4], "Tue 9 Jun", "skipped, weather", "", "");
	expect_row(&d.rows[5], "Tue 2 Jun", "6", "7 n", "6.0");
	expect_row(&d.rows[6], "Tue 26 May", "hung", "", "");
	assert_string_equal(d.rows[0].lure_text, "5 d"); /* since Thursday */
	assert_string_equal(d.rows[0].card_text, "11 d");
	assert_string_equal(d.rows[3].card_text, "17 d"); /* the one taken off */
	assert_string_equal(d.rows[6].lure_text, "");
	assert_string_equal(d.rows[5].words.scout, "JQ");
	assert_int_equal(d.rows[4].tone, TONE_UNSURE);
	assert_int_equal(d.rows[1].tone, TONE_PLAIN);
	assert_false(d.hangs_over);
	trap_diary_free(&d);
	fixture_close(&f);
}

static void trap_diary_keeps_what_stood_there_before(void **state)
{
	struct trap_diary d = { 0 };
	struct err e = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "3", "2026-05-26");
	fixture_count(&f, trap, "2026-06-02", 41);
	fixture_count(&f, trap, "2026-06-02", 14);
	fixture_count(&f, trap, "2026-06-09", 7);
	must(book_remove_visit(f.book, trap, day_of("2026-06-09"), &e), &e);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 2026);
	assert_int_equal(d.n, 2);
	assert_int_equal(d.rows[0].n_old, 1);
	assert_int_equal(d.rows[1].n_old, 0);
	assert_int_equal(d.n_olds, 2);
	assert_int_equal(d.olds[0].day, day_of("2026-06-09"));
	assert_string_equal(d.olds[1].day_text, "Tue 2 Jun");
	assert_non_null(strstr(d.olds[0].text, "was 7 from JQ, taken out "));
	assert_non_null(strstr(d.olds[1].text, "was 41 from JQ, changed "));
	assert_non_null(strstr(d.olds[1].text, " by T"));
	trap_diary_free(&d);
	fixture_close(&f);
}

/* The lure of a visit was another kind: the older one stays readable, and both are
 * named. */
static void trap_diary_names_the_kinds_that_visits_put_in(void **state)
{
	struct trap_diary d = { 0 };
	struct err e = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	struct lure_kind own = f.lure, of_none = f.lure, away = f.lure;
	own.id = of_none.id = away.id = 0;
	text_copy(own.name, sizeof own.name, "Own make");
	text_copy(of_none.name, sizeof of_none.name, "Food bait");
	of_none.pest = 0;
	text_copy(away.name, sizeof away.name, "Old make");
	away.retired = true;
	must(book_put_lure(f.book, &own, &e), &e);
	must(book_put_lure(f.book, &of_none, &e), &e);
	must(book_put_lure(f.book, &away, &e), &e);
	int64_t trap = fixture_trap(&f, "3", "2026-05-26");
	struct visit v = fixture_counted(trap, "2026-06-02", 6);
	v.new_lure = f.lure.id;
	v.new_card = f.card.id;
	fixture_save(&f, v);
	v.new_lure = own.id;
	fixture_save(&f, v);
	v.count = 7; /* of which no kind is told */
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	char both[SAY_LINE];
	snprintf(both, sizeof both, "new lure Own make, new card %s", f.card.name);
	assert_string_equal(d.rows[0].kinds_text, both);
	assert_int_equal(d.n_olds, 2);
	assert_non_null(strstr(d.olds[0].text, "was 6 cl from JQ, changed "));
	assert_non_null(strstr(d.olds[1].text, "was 6 cl from JQ, changed "));
	snprintf(both, sizeof both, "; lure Own make, was %s", f.lure.name);
	assert_non_null(strstr(d.olds[1].text, both));
	assert_int_equal(d.rows[0].card_full_at, f.card.floor_at);
	assert_int_equal(d.blank.card_full_at, f.card.floor_at);
	size_t found = 0;
	for (size_t i = 0; i < d.lures.names.n; i++) {
		int64_t id = d.lures.ids[i];
		found += id == own.id || id == of_none.id || id == away.id;
		assert_true(log_lure(&f.log, id)->pest == 0 ||
			    log_lure(&f.log, id)->pest == f.lure.pest);
	}
	assert_int_equal(found, 3);
	assert_true(d.cards.names.n > 0);
	trap_diary_free(&d);
	fixture_close(&f);
}

/* Taken out and put back just so, it is as it was. */
static void trap_diary_calls_nothing_corrected_that_is_as_it_was(void **state)
{
	struct trap_diary d = { 0 };
	struct err e = { 0 };
	struct undone u;
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "3", "2026-05-26");
	fixture_count(&f, trap, "2026-06-02", 4);
	must(book_remove_visit(f.book, trap, day_of("2026-06-02"), &e), &e);
	must(book_undo_visit(f.book,
		     &(struct undo_reach){ 0, trap, day_of("2026-01-01"),
			     day_of("2026-06-23"), NULL },
		     &u, &e),
		&e);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	assert_int_equal(d.rows[0].visit.count, 4);
	assert_int_equal(d.rows[0].n_old, 0);
	trap_diary_free(&d);
	fixture_close(&f);
}

static void trap_diary_turns_to_the_seasons_that_have_visits(void **state)
{
	struct trap_diary d = { 0 };
	struct err e = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "3", "2023-05-02");
	fixture_count(&f, trap, "2023-05-09", 1);
	fixture_count(&f, trap, "2025-12-31", 2);
	fixture_count(&f, trap, "2026-01-01", 3);
	fixture_count(&f, trap, "2026-08-01", 4); /* after today */
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	assert_int_equal(d.n, 1);
	assert_true(d.hangs_over);
	assert_int_equal(d.earlier, 2025);
	assert_int_equal(d.later, 0);
	read_diary(&f, &d, trap, 2025);
	assert_int_equal(d.n, 1);
	assert_int_equal(d.earlier, 2023);
	assert_int_equal(d.later, 2026);
	f.farm.season_start = 701; /* a southern orchard: one season */
	must(book_put_farm(f.book, &f.farm, &e), &e);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	assert_int_equal(d.season, 2025);
	assert_int_equal(d.n, 2);
	assert_int_equal(d.first, day_of("2025-07-01"));
	assert_int_equal(d.last, day_of("2026-06-23"));
	read_diary(&f, &d, trap, 2022);
	assert_int_equal(d.last, day_of("2023-06-30"));
	assert_false(trap_diary_read(&d, f.book, &f.log, trap, 2030, &e));
	assert_false(trap_diary_read(&d, f.book, &f.log, 999, 0, &e));
	assert_int_equal(e.kind, ERR_NOT_FOUND);
	trap_diary_free(&d);
	fixture_close(&f);
}

/* A lure changed between two runs: its age begins anew, and what was read still
 * holds. */
static void lure_changed_between_runs_leaves_the_count_open(void **state)
{
	struct fixture f;
	struct trap_diary d = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "3", "2026-05-26");
	fixture_count(&f, trap, "2026-06-16", 14);
	struct visit v = fixture_counted(trap, "2026-06-18", COUNT_NONE);
	v.outcome = OUTCOME_SKIPPED;
	v.new_lure = f.lure.id;
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-18");
	struct weekly w = weekly_catch(&f.log.diaries[0], f.log.today, &f.log.limits);
	assert_int_equal(w.unread, UNREAD_NO);
	assert_int_equal(w.moths, 14);
	assert_int_equal(f.log.lure_states[0].since, day_of("2026-06-18"));
	fixture_read(&f, "2026-06-18"); /* the run's visit is that of two days ago */
	assert_int_equal(log_run_visit(&f.log, 0)->day, day_of("2026-06-16"));
	fixture_read(&f, "2026-06-19"); /* on the next the run has no visit of it */
	assert_null(log_run_visit(&f.log, 0));
	fixture_count(&f, trap, "2026-06-23", 5);
	fixture_read(&f, "2026-06-23");
	read_diary(&f, &d, trap, 0);
	expect_row(&d.rows[0], "Tue 23 Jun", "5", "7 n", "5.0");
	v.day = day_of("2026-06-25"); /* a reason says that a count was missed */
	v.reason = REASON_TIME;
	fixture_save(&f, v);
	fixture_read(&f, "2026-06-25");
	w = weekly_catch(&f.log.diaries[0], f.log.today, &f.log.limits);
	assert_int_equal(w.unread, UNREAD_SKIPPED);
	trap_diary_free(&d);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(trap_diary_lists_the_visits_with_what_they_were_worth),
		cmocka_unit_test(trap_diary_keeps_what_stood_there_before),
		cmocka_unit_test(trap_diary_names_the_kinds_that_visits_put_in),
		cmocka_unit_test(trap_diary_calls_nothing_corrected_that_is_as_it_was),
		cmocka_unit_test(trap_diary_turns_to_the_seasons_that_have_visits),
		cmocka_unit_test(lure_changed_between_runs_leaves_the_count_open),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
