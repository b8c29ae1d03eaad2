#include "season/after.h"

#include "season/logs.h"

static struct lure_kind lure_items[] = { { .id = 1, .life_days = 28 } };
static const struct lure_kinds lures = { lure_items, 1, 1 };

struct side {
	int read, week_x10, least, most, lost; /* week_x10 -1: none read */
	bool at_least;
};

struct row {
	const char *why, *traps[LOGS_MAX];
	int day, asked;
	struct side before, after;
	int both, across;
	bool is_over;
};

static struct after ask(const char *const traps[LOGS_MAX], int day, int asked)
{
	struct logs logs;

	logs_read(&logs, traps);
	struct after a =
		after_decision(logs.list, logs.n, &lures, log_day(day), log_day(asked));
	assert_int_equal(a.traps, logs.n);
	logs_free(&logs);
	return a;
}

static void check_side(const char *why, const char *which, const struct after_side *s,
	const struct side *want)
{
	int week = s->read > 0 ? ratio_x10(s->week.lo) : -1;

	if ((int)s->read != want->read || week != want->week_x10 ||
		s->least != want->least || s->most != want->most ||
		(int)s->intervals_lost != want->lost ||
		(s->read > 0 && s->week.open) != want->at_least)
		fail_msg("%s, %s: %zu read, %d, %d to %d nights, %zu lost", why, which,
			s->read, week, (int)s->least, (int)s->most, s->intervals_lost);
}

static void check(const struct row *row)
{
	struct after a = ask(row->traps, row->day, row->asked);

	check_side(row->why, "before", &a.before, &row->before);
	check_side(row->why, "after", &a.after, &row->after);
	if ((int)a.both != row->both || (int)a.across != row->across ||
		a.is_over != row->is_over)
		fail_msg("%s: %zu on both sides, %zu across, over %d", row->why, a.both,
			a.across, a.is_over);
}

static void two_weeks_on_either_side_are_counted(void **state)
{
	static const struct row row[] = {
		{ "decided on the day of the run", { "0h 7c4 14c6 21c9 28c2 35c1" }, 21,
			42, { 1, 75, 14, 14, 0, false }, { 1, 15, 14, 14, 0, false }, 1,
			0, true },
		{ "decided the day after: that week is on neither side",
			{ "0h 7c4 14c6 21c9 28c2 35c1 42c3" }, 22, 60,
			{ 1, 75, 14, 14, 0, false }, { 1, 20, 14, 14, 0, false }, 1, 1,
			true },
		{ "the last day of the two weeks before", { "0h 7c4 14c6 21c9 28c2" },
			20, 28, { 1, 50, 14, 14, 0, false }, { 1, 20, 7, 7, 0, false },
			1, 1, false },
		{ "the mean over traps",
			{ "0h 7c4 14c4 21c2 28c2", "0h 7c10 14c12 21c1 28c0" }, 14, 28,
			{ 2, 75, 14, 14, 0, false }, { 2, 13, 14, 14, 0, false }, 2, 0,
			true },
		{ "each trap counts the same, however many nights",
			{ "0h 7c7 14c7", "0h 7x 14c21" }, 14, 14,
			{ 2, 140, 7, 14, 1, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			false },
		{ "no trap", { NULL }, 14, 28, { 0, -1, 0, 0, 0, false },
			{ 0, -1, 0, 0, 0, false }, 0, 0, true },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check(&row[i]);
}

static void what_was_not_read_is_left_out_and_told(void **state)
{
	static const struct row row[] = {
		{ "a counted zero is read", { "0h 7c0 14c0 21c0 28c0" }, 14, 28,
			{ 1, 0, 14, 14, 0, false }, { 1, 0, 14, 14, 0, false }, 1, 0,
			true },
		{ "spoiled is no zero", { "0h 7c4 14x 21x 28x" }, 14, 28,
			{ 1, 40, 7, 7, 1, false }, { 0, -1, 0, 0, 2, false }, 0, 0,
			true },
		{ "a skipped visit makes one interval of two weeks",
			{ "0h 7c4 14c4 21s 28c6" }, 14, 28, { 1, 40, 14, 14, 0, false },
			{ 1, 30, 14, 14, 0, false }, 1, 0, true },
		{ "14 nights are taken", { "0h 14c8" }, 14, 14,
			{ 1, 40, 14, 14, 0, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			false },
		{ "15 are too long", { "0h 15c8" }, 15, 15, { 0, -1, 0, 0, 1, false },
			{ 0, -1, 0, 0, 0, false }, 0, 0, false },
		{ "a full card is at least its count", { "0h 7c4 14f50 21c2" }, 14, 21,
			{ 1, 270, 14, 14, 0, true }, { 1, 20, 7, 7, 0, false }, 1, 0,
			false },
		{ "a full card first", { "0h 7f50 14c4 21c2" }, 14, 21,
			{ 1, 270, 14, 14, 0, true }, { 1, 20, 7, 7, 0, false }, 1, 0,
			false },
		{ "other traps before than after", { "0h 7c4 14m", "0h 7m 14h 21c2" },
			14, 28, { 1, 40, 7, 7, 2, false }, { 1, 20, 7, 7, 0, false }, 0,
			0, true },
		{ "gone before the day", { "0h 7c4 14p" }, 40, 60,
			{ 0, -1, 0, 0, 0, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			true },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check(&row[i]);
}

static void the_two_weeks_end_where_they_end(void **state)
{
	static const struct row row[] = {
		{ "closed 13 days before", { "0h 7c4" }, 20, 34,
			{ 1, 40, 7, 7, 0, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			true },
		{ "closed 14 days before", { "0h 7c4" }, 21, 34,
			{ 0, -1, 0, 0, 0, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			false },
		{ "began 13 days after", { "0h 7c4 14c3" }, -6, 14,
			{ 0, -1, 0, 0, 0, false }, { 1, 35, 14, 14, 0, false }, 0, 0,
			true },
		{ "began 14 days after", { "0h 7c4 14c3" }, -7, 14,
			{ 0, -1, 0, 0, 0, false }, { 1, 40, 7, 7, 0, false }, 0, 0,
			true },
		{ "a count on the day asked is looked at", { "0h 7c4 14c3" }, 7, 14,
			{ 1, 40, 7, 7, 0, false }, { 1, 30, 7, 7, 0, false }, 1, 0,
			false },
		{ "not one of the day after", { "0h 7c4 14c3" }, 7, 13,
			{ 1, 40, 7, 7, 0, false }, { 0, -1, 0, 0, 0, false }, 0, 0,
			false },
		{ "over after 14 days", { "0h 7c4" }, 7, 21, { 1, 40, 7, 7, 0, false },
			{ 0, -1, 0, 0, 0, false }, 0, 0, true },
		{ "not after 13", { "0h 7c4" }, 7, 20, { 1, 40, 7, 7, 0, false },
			{ 0, -1, 0, 0, 0, false }, 0, 0, false },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++)
		check(&row[i]);
}

static void a_lure_past_its_life_is_told(void **state)
{
	static const struct {
		const char *why, *traps[LOGS_MAX];
		int day, before_old, before_unknown, after_old, after_unknown;
	} row[] = {
		{ "fresh", { "0h* 7c1 14c1 21c1 28c1" }, 14, 0, 0, 0, 0 },
		{ "due on the day it was counted", { "14h* 42c1" }, 42, 0, 0, 0, 0 },
		{ "28 days old when counted", { "0h* 14c1 21c1 28c1 35c1*" }, 21, 0, 0,
			1, 0 },
		{ "changed at the count that it was old for",
			{ "0h* 7c1 14c1 21c1 28c1 35c1* 42c1" }, 35, 1, 0, 0, 0 },
		{ "changed in time", { "0h* 7c1 14c1 21c1 28c1* 35c1" }, 28, 0, 0, 0,
			0 },
		{ "which lure is not known", { "0h 7c1 14c1" }, 7, 0, 1, 0, 1 },
		{ "of two traps one",
			{ "0h* 14c1 28c1* 35c1 42c1", "0h* 14c1 28c1 35c1 42c1" }, 28,
			0, 0, 1, 0 },
		{ "a trap that is not read says nothing", { "0h 7x 14x" }, 7, 0, 0, 0,
			0 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct after a = ask(row[i].traps, row[i].day, 60);
		if ((int)a.before.lures_overdue != row[i].before_old ||
			(int)a.before.lures_unknown != row[i].before_unknown ||
			(int)a.after.lures_overdue != row[i].after_old ||
			(int)a.after.lures_unknown != row[i].after_unknown)
			fail_msg("%s: %zu %zu, %zu %zu", row[i].why,
				a.before.lures_overdue, a.before.lures_unknown,
				a.after.lures_overdue, a.after.lures_unknown);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(two_weeks_on_either_side_are_counted),
		cmocka_unit_test(what_was_not_read_is_left_out_and_told),
		cmocka_unit_test(the_two_weeks_end_where_they_end),
		cmocka_unit_test(a_lure_past_its_life_is_told),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
