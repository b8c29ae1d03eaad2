/* A file that says otherwise than the book is refused with both, in words that tell
 * them apart; one that says the same changes nothing. */
#include "fixture.h"

#include "book/weather.h"

#include <math.h>

enum { DAY = 20000 };

static void book_tells_two_visits_of_a_day_apart(void **state)
{
	static const struct {
		const char *why;
		enum outcome outcome;
		enum reason reason;
		int32_t count, others;
		const char *scout, *note, *says; /* NULL: it is the same */
	} row[] = {
		{ "the same", OUTCOME_COUNTED, REASON_NONE, 12, 0, "JR", "", NULL },
		{ "another count", OUTCOME_COUNTED, REASON_NONE, 11, 0, "JR", "",
			"\"counted 12\", not \"counted 11\"" },
		{ "no count, and why", OUTCOME_SPOILED, REASON_CARD_LOST, COUNT_NONE,
			COUNT_NONE, "JR", "", "\"counted 12\", not \"spoiled (" },
		{ "no count", OUTCOME_SKIPPED, REASON_NONE, COUNT_NONE, COUNT_NONE,
			"JR", "", "\"counted 12\", not \"skipped\"" },
		{ "other moths beside it", OUTCOME_COUNTED, REASON_NONE, 12, 1, "JR",
			"", "(counted 12), with other details" },
		{ "another scout", OUTCOME_COUNTED, REASON_NONE, 12, 0, "Ida", "",
			"(counted 12), with other details" },
		{ "another note", OUTCOME_COUNTED, REASON_NONE, 12, 0, "JR", "wet",
			"(counted 12), with other details" },
	};
	struct visit_words words = { "JR", "" };
	struct visit v;
	struct desk d;

	(void)state;
	desk_memory(&d);
	v = counted(d.trap, DAY, 12);
	v.others = 0;
	must(book_save_visit(d.book, &v, &words, e));
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct visit_words w = { "", "" };
		struct err err = { 0 };
		bool same = false;
		v = counted(d.trap, DAY, row[i].count);
		v.outcome = row[i].outcome;
		v.reason = row[i].reason;
		v.others = row[i].others;
		strcpy(w.scout, row[i].scout);
		strcpy(w.note, row[i].note);
		bool ok = book_add_visit(d.book, &v, &w, &same, &err);
		if (ok != !row[i].says || same != ok ||
			(!ok && !strstr(err.text, row[i].says)))
			fail_msg("%s: %s", row[i].why, err.text);
	}
	desk_clear(&d);
}

static void book_refuses_counts_of_what_was_not_counted(void **state)
{
	static const struct {
		const char *why;
		int32_t count, females, others;
	} row[] = {
		{ "a count", 0, COUNT_NONE, COUNT_NONE },
		{ "females", COUNT_NONE, 0, COUNT_NONE },
		{ "other moths", COUNT_NONE, COUNT_NONE, 0 },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct visit v = without_count(d.trap, DAY, OUTCOME_SKIPPED);
		v.count = row[i].count;
		v.females = row[i].females;
		v.others = row[i].others;
		refused(book_save_visit(d.book, &v, NULL, e), ERR_INPUT,
			"has no count");
	}
	desk_clear(&d);
}

static void book_says_what_a_visit_names_that_is_not_there(void **state)
{
	static const struct {
		int64_t trap, card, lure;
		const char *says;
	} row[] = {
		{ 4711, 0, 0, "the trap is not in the book" },
		{ 4711, 4711, 0, "the trap is not in the book" },
		{ 0, 4711, 0, "the card is not in the book" },
		{ 0, 0, 4711, "the lure is not in the book" },
	};
	struct desk d;
	bool same;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct visit v = counted(d.trap, DAY, 1);
		v.trap = row[i].trap ? row[i].trap : v.trap;
		v.new_card = row[i].card;
		v.new_lure = row[i].lure;
		refused(book_save_visit(d.book, &v, NULL, e), ERR_NOT_FOUND,
			row[i].says);
		refused(book_add_visit(d.book, &v, NULL, &same, e), ERR_NOT_FOUND,
			row[i].says);
	}
	desk_clear(&d);
}

static int64_t put_weir(struct desk *d)
{
	struct station s = { .name = "Weir" };

	desk_memory(d);
	must(book_put_station(d->book, &s, e));
	return s.id;
}

static void book_looks_at_what_a_file_brings_before_it_compares(void **state)
{
	struct weather_day w = { 0, DAY, 5, -5, 'C' };
	struct desk d;
	bool same;

	(void)state;
	w.station = put_weir(&d);
	struct visit v = counted(d.trap, DAY, 10000);
	refused(book_add_visit(d.book, &v, NULL, &same, e), ERR_INPUT, "10000");
	v.reason = REASON_COUNT;
	refused(book_save_visit(d.book, &v, NULL, e), ERR_INPUT, "the reason");
	v = counted(d.trap, DAY, 1);
	v.new_lure = d.other_lure;
	refused(book_add_visit(d.book, &v, NULL, &same, e), ERR_INPUT,
		"keeps the scent");
	refused(book_add_weather(d.book, &w, &same, e), ERR_INPUT, "");
	desk_clear(&d);
}

/* SQLite gave up what an import had begun: no row of it is added after that. */
static void book_adds_nothing_to_what_was_lost(void **state)
{
	struct weather_day w = { 0, DAY, 5, 20, 'C' };
	struct desk d;
	bool same;

	(void)state;
	w.station = put_weir(&d);
	struct visit v = counted(d.trap, DAY, 1);
	must(book_begin(d.book, e));
	must(book_add_visit(d.book, &v, NULL, &same, e));
	assert_int_equal(raw(d.book, "ROLLBACK"), SQLITE_OK);
	refused(book_add_visit(d.book, &v, NULL, &same, e), ERR_BOOK, "were lost");
	refused(book_add_weather(d.book, &w, &same, e), ERR_BOOK, "were lost");
	refused(book_save_visit(d.book, &v, NULL, e), ERR_BOOK, "were lost");
	refused(book_commit(d.book, e), ERR_BOOK, "were lost");
	refused(book_visit(d.book, d.trap, DAY, &v, NULL, e), ERR_NOT_FOUND, "");
	desk_clear(&d);
}

static void book_tells_two_days_of_weather_apart(void **state)
{
	static const struct {
		const char *why;
		double min, max;
		char unit;
		const char *says;
	} row[] = {
		{ "the same", 5, 20, 'C', NULL },
		{ "within what a file can tell", 5.00005, 20, 'C', NULL },
		{ "beyond it", 5.0002, 20, 'C',
			"\"5 to 20 C\", not \"5.0002 to 20 C\"" },
		{ "another maximum", 5, 21, 'C', "not \"5 to 21 C\"" },
		{ "another unit", 5, 20, 'F', "not \"5 to 20 F\"" },
		{ "no minimum", (double)NAN, 20, 'C', "not \"maximum 20 C\"" },
		{ "no maximum", 5, (double)NAN, 'C', "not \"minimum 5 C\"" },
	};
	struct station s = { .name = "Weir" };
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_put_station(d.book, &s, e));
	struct weather_day w = { s.id, DAY, 5, 20, 'C' };
	must(book_save_weather(d.book, &w, e));
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct weather_day other = { s.id, DAY, row[i].min, row[i].max,
			row[i].unit };
		struct err err = { 0 };
		bool same = false;
		bool ok = book_add_weather(d.book, &other, &same, &err);
		if (ok != !row[i].says || same != ok ||
			(!ok && !strstr(err.text, row[i].says)))
			fail_msg("%s: %s", row[i].why, err.text);
	}
	w = (struct weather_day){ s.id, DAY + 1, (double)NAN, 20, 'C' };
	bool same;
	must(book_add_weather(d.book, &w, &same, e));
	assert_false(same);
	must(book_add_weather(d.book, &w, &same, e));
	assert_true(same);
	desk_clear(&d);
}

static void book_refuses_a_station_off_the_globe(void **state)
{
	static const struct {
		double lat, lon;
		bool good;
	} row[] = {
		{ 90, -180, true },
		{ 90.001, 0, false },
		{ 0, 180.001, false },
		{ (double)NAN, 0, false },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct station s = { .name = "Weir",
			.has_position = true,
			.lat = row[i].lat,
			.lon = row[i].lon };
		struct err err = { 0 };
		if (book_put_station(d.book, &s, &err) != row[i].good)
			fail_msg("%g %g: %s", row[i].lat, row[i].lon, err.text);
	}
	struct station empty = { .name = "" };
	refused(book_put_station(d.book, &empty, e), ERR_INPUT, "name is empty");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_tells_two_visits_of_a_day_apart),
		cmocka_unit_test(book_refuses_counts_of_what_was_not_counted),
		cmocka_unit_test(book_says_what_a_visit_names_that_is_not_there),
		cmocka_unit_test(book_looks_at_what_a_file_brings_before_it_compares),
		cmocka_unit_test(book_adds_nothing_to_what_was_lost),
		cmocka_unit_test(book_tells_two_days_of_weather_apart),
		cmocka_unit_test(book_refuses_a_station_off_the_globe),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
