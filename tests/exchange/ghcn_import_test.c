/* Days of GHCN-Daily files taken into the book. */
#include "desk.h"
#include "ghcn.h"

#include "book/weather.h"

static const char year_file[] = "XX000000001,20120501,TMAX,211,,,S,\n"
				"XX000000001,20120501,TMIN,111,,,S,\n"
				"XX000000002,20120501,TMIN,-5,,,S,\n"
				"XX000000001,20120502,TMAX,122,,X,S,\n"
				"XX000000001,20120502,TMIN,106,,,S,\n"
				"XX000000001,20120502,PRCP,30,,,S,\n";

static bool take_in(struct book *b, const char *text, const char *station,
	struct imported *out, struct err *e)
{
	struct ghcn_from from = {
		.name = "w", .station = station, .today = day_of(TODAY)
	};

	from.file = fmemopen((void *)(uintptr_t)text, strlen(text), "r");
	assert_non_null(from.file);
	bool ok = ghcn_import(b, ghcn_read_year, &from, out, e);
	fclose(from.file);
	return ok;
}

static void days_go_in_once_under_their_stations(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = new_book();

	(void)state;
	assert_true(take_in(b, year_file, NULL, &out, &e));
	assert_int_equal(out.n_new, 3);
	assert_int_equal(out.notes.n, 2);
	assert_non_null(strstr(out.notes.items[0], "X 1"));
	assert_non_null(strstr(out.notes.items[1], "only one of"));
	imported_free(&out);
	char *got = give(b, "weather");
	expect_text("given out", got,
		"station,date,min,max,unit\r\n"
		"XX000000001,2012-05-01,11.1000,21.1000,C\r\n"
		"XX000000001,2012-05-02,10.6000,,C\r\n"
		"XX000000002,2012-05-01,-0.5000,,C\r\n");
	must_take(b, "weather", got);
	free(got);
	out = (struct imported){ 0 };
	assert_true(take_in(b, year_file, NULL, &out, &e));
	assert_int_equal(out.n_new, 0);
	assert_int_equal(out.n_same, 3);
	imported_free(&out);
	book_close(b);
}

static void one_station_may_be_chosen(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = new_book();

	(void)state;
	assert_true(take_in(b, year_file, "XX000000002", &out, &e));
	char *got = give(b, "stations");
	expect_text("stations", got, "station,lat,lon,farm\r\nXX000000002,,,\r\n");
	free(got);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_false(take_in(b, year_file, "XX000000003", &out, &e));
	assert_int_equal(e.kind, ERR_INPUT);
	imported_free(&out);
	book_close(b);
}

static void a_day_that_differs_or_a_bad_line_leaves_the_book_as_it_was(void **state)
{
	static const char *const bad = "XX000000003,20120501,TMAX,211,,,S,\n"
				       "XX000000003,20120532,TMAX,211,,,S,\n";
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = new_book();

	(void)state;
	must_take(b, "weather",
		"station,date,min,max,unit\nXX000000001,2012-05-01,11,21.1,C\n");
	char *before = give_all(b);
	assert_false(take_in(b, year_file, NULL, &out, &e));
	assert_int_equal(e.kind, ERR_INPUT);
	assert_int_equal(out.n_problems, 1);
	assert_non_null(strstr(out.problems.items[0],
		"XX000000001 has the weather of 2012-05-01 already: \"11 to 21.1 C\", "
		"not \"11.1 to 21.1 C\""));
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_false(take_in(b, bad, NULL, &out, &e));
	assert_int_equal(out.n_problems, 1);
	assert_non_null(strstr(out.problems.items[0], "line 2"));
	imported_free(&out);
	char *after = give_all(b);
	expect_text("book", after, before);
	free(before);
	free(after);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(days_go_in_once_under_their_stations),
		cmocka_unit_test(one_station_may_be_chosen),
		cmocka_unit_test(
			a_day_that_differs_or_a_bad_line_leaves_the_book_as_it_was),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
