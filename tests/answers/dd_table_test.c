/* Degree-days day by day: gaps at the ends, filled ones, units. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "answers/dd_table.h"
#include "book/rules.h"
#include "book/weather.h"

#include <math.h>
#include <stdio.h>

enum { FIRST = 20574 }; /* 2026-05-01 */

struct desk {
	struct book *book;
	struct dd_ask ask;
	struct dd_table t;
	struct err e;
};

static void must(bool ok, const struct err *e)
{
	if (!ok)
		fail_msg("%s", e->text);
}

/* Maxima 20, minima 10 and more by a degree a day, in C; days 2 and 4 lack. */
static void setup(struct desk *d)
{
	*d = (struct desk){ 0 };
	d->book = book_open(":memory:", BOOK_CREATE, "", &d->e);
	must(d->book != NULL, &d->e);
	snprintf(d->ask.station.name, sizeof d->ask.station.name, "Weir");
	must(book_put_station(d->book, &d->ask.station, &d->e), &d->e);
	for (int i = 0; i < 6; i++) {
		struct weather_day w = { .station = d->ask.station.id,
			.day = FIRST + i,
			.min = 10 + i,
			.max = 20,
			.unit = 'C' };
		if (i == 2)
			continue;
		if (i == 4)
			w.max = (double)NAN;
		must(book_save_weather(d->book, &w, &d->e), &d->e);
	}
	d->ask.rule = (struct dd_rule){ .method = DD_AVERAGE, .base = 10 };
	d->ask.unit = 'C';
	d->ask.from = FIRST;
	d->ask.to = DAY_NONE;
	d->ask.today = FIRST + 100;
}

static void read_table(struct desk *d)
{
	must(dd_table_read(&d->t, d->book, &d->ask, &d->e), &d->e);
}

static void teardown(struct desk *d)
{
	dd_table_free(&d->t);
	book_close(d->book);
}

static void a_missing_day_is_missing_until_filling_is_set(void **state)
{
	struct desk d;

	(void)state;
	setup(&d);
	read_table(&d);
	assert_int_equal(d.t.n, 6);
	assert_int_equal(d.t.ask.to, FIRST + 5);
	assert_true(isnan(d.t.lines[2].dd) && d.t.lines[2].missing == 1);
	assert_true(isnan(d.t.lines[4].dd) && d.t.lines[4].min == 14);
	assert_int_equal(d.t.total.missing, 2);
	assert_true(d.t.total.sum == 5 + 5.5 + 6.5 + 7.5);
	must(book_put_setting(d.book, "fill_days", "1", &d.e), &d.e);
	read_table(&d);
	assert_int_equal(d.t.total.missing, 0);
	assert_int_equal(d.t.total.filled, 2);
	assert_true(d.t.lines[2].filled && d.t.lines[2].dd == 6);
	assert_true(isnan(d.t.lines[2].min) && d.t.lines[2].used_min == 12);
	/* Its own minimum stays, the maximum is filled. */
	assert_true(d.t.lines[4].filled && d.t.lines[4].used_min == 14 &&
		    d.t.lines[4].used_max == 20 && isnan(d.t.lines[4].max));
	assert_false(d.t.lines[3].filled);
	assert_true(d.t.total.sum == 5 + 5.5 + 6 + 6.5 + 7 + 7.5);
	teardown(&d);
}

static void a_gap_at_the_end_of_what_is_asked_is_filled_by_days_outside(void **state)
{
	struct desk d;

	(void)state;
	setup(&d);
	must(book_put_setting(d.book, "fill_days", "1", &d.e), &d.e);
	d.ask.from = FIRST + 2;
	d.ask.to = FIRST + 4;
	read_table(&d);
	assert_int_equal(d.t.total.missing, 0);
	assert_int_equal(d.t.total.filled, 2);
	d.ask.today = FIRST + 4; /* tomorrow has not come */
	read_table(&d);
	assert_int_equal(d.t.total.missing, 1);
	teardown(&d);
}

static void a_double_method_looks_at_the_day_after_the_last(void **state)
{
	struct desk d;

	(void)state;
	setup(&d);
	d.ask.rule.method = DD_DOUBLE_SINE;
	d.ask.to = FIRST;
	read_table(&d);
	assert_int_equal(d.t.total.single_days, 0);
	d.ask.today = FIRST;
	read_table(&d);
	assert_int_equal(d.t.total.single_days, 1);
	teardown(&d);
}

/* A sum in C times 1.8 is the sum in F. */
static void units_agree(void **state)
{
	struct desk d;

	(void)state;
	setup(&d);
	read_table(&d);
	double celsius = d.t.total.sum;
	d.ask.unit = 'F';
	d.ask.rule.base = 50;
	read_table(&d);
	assert_true(fabs(d.t.total.sum - celsius * 1.8) < 1e-9);
	assert_true(d.t.lines[0].min == 50 && d.t.lines[0].max == 68);
	assert_string_equal(d.t.rule_text, "base 50 F, method average, cutoff none");
	teardown(&d);
}

static void days_that_the_station_lacks_altogether_are_missing(void **state)
{
	struct desk d;

	(void)state;
	setup(&d);
	d.ask.from = FIRST - 2;
	d.ask.to = FIRST + 7;
	read_table(&d);
	assert_int_equal(d.t.n, 10);
	assert_int_equal(d.t.total.missing, 2 + 2 + 2);
	d.ask.to = FIRST - 1;
	assert_false(dd_table_read(&d.t, d.book, &d.ask, &d.e));
	assert_int_equal(d.e.kind, ERR_NOT_FOUND);
	teardown(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_missing_day_is_missing_until_filling_is_set),
		cmocka_unit_test(
			a_gap_at_the_end_of_what_is_asked_is_filled_by_days_outside),
		cmocka_unit_test(a_double_method_looks_at_the_day_after_the_last),
		cmocka_unit_test(units_agree),
		cmocka_unit_test(days_that_the_station_lacks_altogether_are_missing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
