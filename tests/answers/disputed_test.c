/* A visit that two scouts put in with different counts, on the pages that add up
 * catches: none of them takes one of the two for the truth. */
#include "hot.h"

#include "answers/flight.h"
#include "book/backups.h"
#include "book/merge.h"

#include <stdlib.h>
#include <unistd.h>

/* Another scout counted the trap that day as well, in a book of their own. */
static void count_again(struct fixture *f, int64_t trap, const char *iso, int32_t count)
{
	char folder[] = "/tmp/disputed-test-XXXXXX", path[64];
	struct visit v = fixture_counted(trap, iso, count);
	struct merge_report report = { 0 };
	struct err e = { 0 };

	assert_non_null(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/book.db", folder);
	must(book_remove_visit(f->book, trap, day_of(iso), &e), &e);
	must(book_backup(f->book, path, &e), &e);
	struct book *other = book_open(path, BOOK_EXISTING, "MB", &e);
	must(other != NULL, &e);
	must(book_save_visit(other, &v, NULL, &e), &e);
	book_close(other);
	fixture_count(f, trap, iso, 31);
	must(book_merge(f->book, path, &report, &e), &e);
	assert_int_equal(report.matters.n, 1);
	book_merge_free(&report);
	unlink(path);
	rmdir(folder);
}

static void flight_takes_the_least_and_says_so(void **state)
{
	static const int counts[] = { 0, 2, 9, 20, 31, 22, 10, 4, 1, 0 };
	struct flight_view v = { 0 };
	struct err e = { 0 };
	char iso[DAY_ISO_SIZE];
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-04-06");
	for (int i = 0; i < 10; i++) {
		day_iso(day_of("2026-04-13") + 7 * i, iso);
		fixture_count(&f, trap, iso, counts[i]);
	}
	count_again(&f, trap, "2026-05-11", 25);
	fixture_read(&f, "2026-08-12");
	const struct flight_ask a = {
		.farm = f.farm.id, .pest = f.cm.id, .trap = NO_TRAP, .season = 2026
	};
	must(flight_read(&v, f.book, &f.log, &a, &e), &e);
	assert_int_equal(v.n_rows, 1);
	assert_string_equal(v.rows[0].moths, "93+"); /* 99 with the 31 */
	assert_non_null(strstr(v.rows[0].flags, "counts not settled"));
	assert_true(v.now.at_least[4]);
	assert_null(strstr(v.biofix.suggested, "not settled"));
	flight_free(&v);
	fixture_close(&f);
}

static void biofix_says_that_it_may_be_earlier(void **state)
{
	static const int counts[] = { 0, 31, 9, 20 };
	struct flight_view v = { 0 };
	struct err e = { 0 };
	char iso[DAY_ISO_SIZE];
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-04-06");
	for (int i = 0; i < 4; i++) {
		day_iso(day_of("2026-04-13") + 7 * i, iso);
		fixture_count(&f, trap, iso, counts[i]);
	}
	count_again(&f, trap, "2026-04-20", 0);
	fixture_read(&f, "2026-08-12");
	const struct flight_ask a = {
		.farm = f.farm.id, .pest = f.cm.id, .trap = NO_TRAP, .season = 2026
	};
	must(flight_read(&v, f.book, &f.log, &a, &e), &e);
	assert_int_equal(v.biofix.suggestion.by, day_of("2026-04-27"));
	assert_int_equal(v.biofix.suggestion.after, day_of("2026-04-13"));
	assert_non_null(strstr(v.biofix.suggested, "may make it earlier"));
	flight_free(&v);
	fixture_close(&f);
}

static void hot_spots_leave_the_visit_out_and_say_so(void **state)
{
	struct hot_view v = { 0 };
	struct err e = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	hot_traps(&f, orchard, ORCHARD_TRAPS, "2026-04-20");
	int64_t trap = hot_trap(&f,
		&(struct hot_spec){ "13", "Ash", NAN, NAN, PLACE_INTERIOR, 9, 50 },
		"2026-04-20");
	fixture_count(&f, trap, "2026-07-06", 31);
	count_again(&f, trap, "2026-07-06", 3);
	fixture_read(&f, "2026-07-14");
	const struct hot_ask a = { .farm = f.farm.id, .pest = f.cm.id };
	must(hotspots_read(&v, f.book, &f.log, &a, &e), &e);
	assert_non_null(strstr(v.window, "162 moths"));
	assert_null(strstr(v.window, "at least"));
	assert_non_null(strstr(v.left_out,
		"1 visit that was put in twice is not counted until it is settled."));
	hot_is_sound(&v);
	hotspots_free(&v);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flight_takes_the_least_and_says_so),
		cmocka_unit_test(biofix_says_that_it_may_be_earlier),
		cmocka_unit_test(hot_spots_leave_the_visit_out_and_say_so),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
