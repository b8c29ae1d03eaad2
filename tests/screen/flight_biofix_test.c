/* The biofix that is typed. */
#include "screen/flight_page.h"

#include "screen/flight_samples.h"

static struct wish type(struct flight_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = flight_page_key(p, sample_key(*keys));
	return w;
}

static void flight_page_wants_the_biofix_that_is_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		int year, month, day; /* 0: it is taken out */
	} row[] = {
		{ "Enter takes what is suggested", "b\n", 2026, 5, 9 },
		{ "month and day", "b05-12\n", 2026, 5, 12 },
		{ "without zeros", "b5-2\n", 2026, 5, 2 },
		{ "in full", "b2026-05-12\n", 2026, 5, 12 },
		{ "taken back", "b5-23\b\n", 2026, 5, 2 },
		{ "early in the year", "b1-2\n", 2026, 1, 2 },
		{ "late in the year", "b12-30\n", 2026, 12, 30 },
		{ "- takes it out", "b-\n", 0, 0, 0 },
	};
	static struct flight_view v;

	(void)state;
	sample_flight(&v);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		struct wish w = type(&p, row[i].keys);
		int32_t day = row[i].year ? day_from_ymd(row[i].year, row[i].month,
						    row[i].day)
					  : DAY_NONE;

		if (w.want != WANT_BIOFIX || w.day != day || w.farm != SAMPLE_FARM ||
			w.pest != 1 || p.typing)
			fail_msg("%s: want %d, day %d, \"%s\"", row[i].why, (int)w.want,
				(int)w.day, p.message.text);
	}
}

/* A season that began on 1 July 2026 runs into 2027. */
static void flight_page_takes_the_year_that_the_season_is_in(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };

	(void)state;
	sample_flight(&v);
	v.now.first_day = day_from_ymd(2026, 7, 1);
	v.now.n = 52;
	assert_int_equal(type(&p, "b9-20\n").day, day_from_ymd(2026, 9, 20));
	assert_int_equal(type(&p, "b2-20\n").day, day_from_ymd(2027, 2, 20));
}

static void flight_page_refuses_in_words(void **state)
{
	static const struct {
		const char *why, *keys, *says;
		bool is_set, is_dated;
	} row[] = {
		{ "nothing to take out", "b-\n", "There is no biofix to take out.",
			false, true },
		{ "nothing suggested", "b\n",
			"Nothing is suggested yet: type the date.", true, false },
		{ "a day alone", "b9\n", "9 is no date: write 2026-05-09, or 05-09.",
			true, true },
		{ "no such month", "b13-01\n",
			"13-01 is no date: write 2026-05-09, or 05-09.", true, true },
		{ "no such day", "b2-30\n",
			"2-30 is no date: write 2026-05-09, or 05-09.", true, true },
		{ "the year before", "b2025-05-09\n",
			"2025-05-09 is not in the season of 2026.", true, true },
		{ "two years on", "b2028-01-01\n",
			"2028-01-01 is not in the season of 2026.", true, true },
		{ "a letter", "bx",
			"Only digits and - here: Enter ends it, Esc drops it.", true,
			true },
		{ "too long", "b2026-05-091", "No more fits here.", true, true },
	};
	static struct flight_view v;

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		struct wish w = page_wish(WANT_NOTHING);

		sample_flight(&v);
		v.biofix.is_set = row[i].is_set;
		if (!row[i].is_dated)
			v.biofix.suggestion.state = BIOFIX_WAITS;
		w = type(&p, row[i].keys);
		if (w.want != WANT_NOTHING || !p.typing || !p.message.is_fault ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: want %d, \"%s\"", row[i].why, (int)w.want,
				p.message.text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flight_page_wants_the_biofix_that_is_typed),
		cmocka_unit_test(flight_page_takes_the_year_that_the_season_is_in),
		cmocka_unit_test(flight_page_refuses_in_words),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
