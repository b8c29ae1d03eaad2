#include "fixture.h"

static void book_reads_a_season_by_trap_and_day(void **state)
{
	struct visits all = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t two = desk_add_trap(&d, "2");
	const struct {
		int64_t trap;
		int32_t day;
	} in[] = {
		{ two, 105 },
		{ d.trap, 110 },
		{ two, 99 },
		{ d.trap, 100 },
		{ two, 111 },
		{ d.trap, 103 },
	};
	for (size_t i = 0; i < sizeof in / sizeof *in; i++) {
		struct visit v = counted(in[i].trap, in[i].day, (int32_t)i);
		must(book_save_visit(d.book, &v, NULL, e));
	}
	must(book_visits(d.book, d.farm, 100, 110, &all, e));
	assert_int_equal(all.n, 4);
	assert_true(all.items[0].trap == d.trap && all.items[0].day == 100);
	assert_true(all.items[1].trap == d.trap && all.items[1].day == 103);
	assert_true(all.items[2].trap == d.trap && all.items[2].day == 110);
	assert_true(all.items[3].trap == two && all.items[3].day == 105);
	must(book_visits(d.book, 0, INT32_MIN, INT32_MAX, &all, e));
	assert_int_equal(all.n, 6);
	must(book_visits(d.book, d.farm + 1, 0, 1000, &all, e));
	assert_int_equal(all.n, 0);
	free(all.items);
	desk_clear(&d);
}

static void book_days_of_visits_come_newest_first(void **state)
{
	struct desk d;
	int32_t days[3];
	size_t got;

	(void)state;
	desk_memory(&d);
	int64_t two = desk_add_trap(&d, "2");
	for (int32_t day = 100; day <= 128; day += 7) {
		struct visit v = counted(d.trap, day, 1),
			     w = counted(two, day + day % 2, 1);
		must(book_save_visit(d.book, &v, NULL, e));
		must(book_save_visit(d.book, &w, NULL, e));
	}
	must(book_visit_days(d.book, d.farm, 121, days, 3, &got, e));
	assert_int_equal(got, 3);
	assert_int_equal(days[0], 121);
	assert_int_equal(days[1], 114);
	assert_int_equal(days[2], 108); /* the second trap of the run of day 107 */
	must(book_visit_days(d.book, d.farm, 100, days, 3, &got, e));
	assert_int_equal(got, 1);
	must(book_visit_days(d.book, d.farm + 1, 1000, days, 3, &got, e));
	assert_int_equal(got, 0);
	desk_clear(&d);
}

struct walked {
	int n, stop_after;
	int64_t trap[8];
	int32_t day[8];
};

static bool walk(void *arg, const struct visit *v, const struct visit_words *w)
{
	struct walked *x = arg;

	assert_string_equal(w->scout, "Ida");
	x->trap[x->n] = v->trap;
	x->day[x->n] = v->day;
	return ++x->n < x->stop_after;
}

static void book_walks_visits_in_driving_order(void **state)
{
	struct walked all = { .stop_after = 8 }, two_only = { .stop_after = 2 };
	struct visit_words w = { "Ida", "" };
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t second = desk_add_trap(&d, "2");
	struct trap first = { .id = d.trap,
		.farm = d.farm,
		.block = d.block,
		.pest = d.pest,
		.label = "1",
		.order = 3 }; /* now after the second */
	must(book_put_trap(d.book, &first, e));
	for (int32_t day = 10; day < 12; day++) {
		struct visit a = counted(d.trap, day, 1), b = counted(second, day, 1);
		must(book_save_visit(d.book, &a, &w, e));
		must(book_save_visit(d.book, &b, &w, e));
	}
	must(book_each_visit(d.book, 0, 0, 100, walk, &all, e));
	assert_int_equal(all.n, 4);
	assert_true(all.trap[0] == second && all.day[0] == 10);
	assert_true(all.trap[1] == second && all.day[1] == 11);
	assert_true(all.trap[2] == d.trap && all.day[2] == 10);
	must(book_each_visit(d.book, d.farm, 0, 100, walk, &two_only, e));
	assert_int_equal(two_only.n, 2);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_reads_a_season_by_trap_and_day),
		cmocka_unit_test(book_days_of_visits_come_newest_first),
		cmocka_unit_test(book_walks_visits_in_driving_order),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
