/* What lies ahead, for a calendar. */
#include "acts.h"

#include "answers/agenda.h"

/* Reads the agenda as at that minute, of all farms. */
static struct agenda agenda_at(struct fixture *f, const char *now)
{
	struct agenda a = { 0 };
	struct err e = { 0 };

	acts_read(f, now);
	must(agenda_read(&f->log, f->book, 0, &a, &e), &e);
	return a;
}

static const struct agenda_item *find(const struct agenda *a, enum agenda_kind kind)
{
	for (size_t i = 0; i < a->n; i++)
		if (a->items[i].kind == kind)
			return &a->items[i];
	return NULL;
}

static void expect_day(const struct agenda *a, enum agenda_kind kind, const char *day,
	const char *title)
{
	const struct agenda_item *item = find(a, kind);
	char iso[DAY_ISO_SIZE];

	assert_non_null(item);
	day_iso(item->day, iso);
	assert_string_equal(iso, day);
	assert_string_equal(item->title, title);
}

static void runs_lures_and_cards_stand_on_the_day_they_are_due(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-07-01");
	struct agenda a = agenda_at(&f, "2026-07-02 08:00");
	expect_day(&a, AGENDA_RUN, "2026-07-08", "Trap run: Quillback");
	expect_day(&a, AGENDA_LURE, "2026-07-22",
		"Lure due: trap 1, Upper Russet, Quillback");
	expect_day(&a, AGENDA_CARD, "2026-08-30",
		"Card due: trap 1, Upper Russet, Quillback");
	assert_int_equal(a.n, 3);
	agenda_free(&a);
	fixture_close(&f);
}

/* Bounds in pairs: the day it is due, and the day after. */
static void what_was_due_before_today_stands_on_today(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-07-01");
	struct agenda a = agenda_at(&f, "2026-07-22 08:00");
	expect_day(&a, AGENDA_LURE, "2026-07-22",
		"Lure due: trap 1, Upper Russet, Quillback");
	assert_string_equal(find(&a, AGENDA_LURE)->details,
		"three weeks since 1 Jul; due on 22 Jul");
	agenda_free(&a);
	a = agenda_at(&f, "2026-07-23 08:00");
	expect_day(&a, AGENDA_LURE, "2026-07-23",
		"Lure due: trap 1, Upper Russet, Quillback");
	assert_string_equal(find(&a, AGENDA_LURE)->details,
		"three weeks since 1 Jul; it was due on 22 Jul");
	agenda_free(&a);
	fixture_close(&f);
}

static void a_thing_keeps_its_name_and_a_pulled_trap_calls_off(void **state)
{
	struct fixture f;
	struct visit pulled;
	char uid[sizeof((struct agenda_item *)0)->uid];

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-07-01");
	struct agenda a = agenda_at(&f, "2026-07-02 08:00");
	text_copy(uid, sizeof uid, find(&a, AGENDA_LURE)->uid);
	assert_string_not_equal(uid, find(&a, AGENDA_CARD)->uid);
	assert_false(find(&a, AGENDA_LURE)->is_off);
	agenda_free(&a);
	pulled = fixture_counted(trap, "2026-07-09", 2);
	pulled.outcome = OUTCOME_PULLED;
	fixture_save(&f, pulled);
	a = agenda_at(&f, "2026-07-10 08:00");
	if (find(&a, AGENDA_LURE)) {
		assert_string_equal(uid, find(&a, AGENDA_LURE)->uid);
		assert_true(find(&a, AGENDA_LURE)->is_off);
	} else
		fail_msg("the lure is not called off");
	assert_null(find(&a, AGENDA_RUN));
	agenda_free(&a);
	fixture_close(&f);
}

/* Common practice, no source: REI from the end of the application. */
static void nobody_enters_from_the_begin_to_the_end_of_re_entry(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-07-20 10:30", 48, 14);
	struct agenda a = agenda_at(&f, "2026-07-20 12:00");
	const struct agenda_item *item = find(&a, AGENDA_ENTRY);
	assert_non_null(item);
	assert_string_equal(item->title, "No entry: Upper Russet, Quillback");
	assert_int_equal(item->from.minute, acts_at(&f, "2026-07-20 09:30").minute);
	assert_int_equal(item->until.minute, acts_at(&f, "2026-07-22 10:30").minute);
	assert_non_null(strstr(item->details, "The label is the law"));
	agenda_free(&a);
	fixture_close(&f);
}

static void a_bar_that_is_not_known_is_never_left_out(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-07-20 10:30", -1, -1);
	struct agenda a = agenda_at(&f, "2026-07-21 12:00");
	expect_day(&a, AGENDA_ENTRY, "2026-07-21",
		"Entry not known: Upper Russet, Quillback");
	assert_int_equal(find(&a, AGENDA_ENTRY)->until.minute, INSTANT_NONE);
	expect_day(&a, AGENDA_EARLIEST, "2026-07-21",
		"Earliest pick not known: Upper Russet, Quillback");
	agenda_free(&a);
	fixture_close(&f);
}

/* The earliest pick is the treatment's day + PHI days: 20 July + 14 = 3 August. */
static void picks_stand_beside_the_earliest_one(void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-07-20 10:30", 12, 14);
	acts_pick(&f, "2026-08-02", false);
	struct agenda a = agenda_at(&f, "2026-07-21 12:00");
	expect_day(&a, AGENDA_PICK, "2026-08-02",
		"Pick too early: Upper Russet, Quillback");
	expect_day(&a, AGENDA_EARLIEST, "2026-08-03",
		"Earliest pick: Upper Russet, Quillback");
	agenda_free(&a);
	acts_pick(&f, "2026-08-03", false);
	a = agenda_at(&f, "2026-07-21 12:00");
	bool allowed = false;
	for (size_t i = 0; i < a.n; i++)
		allowed |=
			strcmp(a.items[i].title, "Pick: Upper Russet, Quillback") == 0;
	assert_true(allowed);
	agenda_free(&a);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(runs_lures_and_cards_stand_on_the_day_they_are_due),
		cmocka_unit_test(what_was_due_before_today_stands_on_today),
		cmocka_unit_test(a_thing_keeps_its_name_and_a_pulled_trap_calls_off),
		cmocka_unit_test(nobody_enters_from_the_begin_to_the_end_of_re_entry),
		cmocka_unit_test(a_bar_that_is_not_known_is_never_left_out),
		cmocka_unit_test(picks_stand_beside_the_earliest_one),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
