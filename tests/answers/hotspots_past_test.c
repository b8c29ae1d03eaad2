#include "hot.h"

static int64_t ids[ORCHARD_TRAPS];

/* The twelve traps in a season, their counts turned round the blocks by `turn`
 * traps. */
static void season(struct fixture *f, int year, int turn)
{
	char hung[DAY_ISO_SIZE], read[DAY_ISO_SIZE], pulled[DAY_ISO_SIZE];

	for (int i = 0; i < ORCHARD_TRAPS; i++) {
		const struct hot_spec *s = &orchard[(i + turn) % ORCHARD_TRAPS];
		int32_t day = day_from_ymd(year, 4, 20);
		day_iso(day, hung);
		day_iso(day + 84, read);
		day_iso(day + 85, pulled);
		if (!ids[i])
			ids[i] = hot_trap(f, &orchard[i], NULL);
		hot_hang(f, ids[i], hung);
		fixture_count(f, ids[i], read, s->count);
		struct visit v = fixture_counted(ids[i], pulled, COUNT_NONE);
		v.outcome = OUTCOME_PULLED;
		fixture_save(f, v);
	}
}

static void open_seasons(struct fixture *f)
{
	fixture_open(f);
	memset(ids, 0, sizeof ids);
}

static void shut(struct fixture *f, struct hot_view *v)
{
	hotspots_free(v);
	fixture_close(f);
}

static void a_block_says_in_how_many_seasons_it_was_hot(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	season(&f, 2022, 1); /* Ash higher, not shown */
	season(&f, 2023, 0);
	season(&f, 2024, 9); /* the highest three in Birch */
	season(&f, 2025, 0);
	season(&f, 2026, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	has_text(hot_row_named(&v, "Ash")->earlier,
		"hot in 3 of 5 seasons: 2023, 2025, 2026");
	has_text(hot_row_named(&v, "Birch")->earlier, "hot in 1 of 5 seasons: 2024");
	has_text(hot_row_named(&v, "Dale")->earlier, "hot in none of 5 seasons");
	shut(&f, &v);
}

static void one_season_alone_has_no_past(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	season(&f, 2026, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	assert_null(strstr(hot_row_named(&v, "Ash")->earlier, "seasons"));
	shut(&f, &v);
}

static void seasons_further_back_than_eight_are_not_read(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	season(&f, 2017, 0);
	season(&f, 2018, 0);
	season(&f, 2026, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	has_text(
		hot_row_named(&v, "Ash")->earlier, "hot in 2 of 2 seasons: 2018, 2026");
	shut(&f, &v);
}

static void an_earlier_season_can_be_looked_at(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	season(&f, 2024, 9);
	season(&f, 2026, 0);
	hot_see(&f, &v, (struct hot_ask){ .season = 2024 });
	assert_string_equal(v.title, "Quillback · CM · season 2024");
	assert_string_equal(v.rows[0].name, "Birch");
	assert_int_equal(v.rows[0].grade, HOT_CLEAR);
	hot_see(&f, &v, (struct hot_ask){ .season = 2025 });
	assert_int_equal(v.n, 0);
	has_text(v.says, "No trap of this pest was read");
	shut(&f, &v);
}

/* Two flights, week by week: the first in Ash, the second in block `second`. The last
 * trap is looked at a day later as well, every week. */
static void two_flights(struct fixture *f, int second)
{
	enum { WEEKS = 16 };
	static const int course[WEEKS] = { 0, 2, 9, 20, 31, 22, 10, 4, 1, 0, 3, 12, 26,
		30, 17, 6 };
	char iso[DAY_ISO_SIZE];

	for (int i = 0; i < ORCHARD_TRAPS; i++) {
		ids[i] = hot_trap(f, &orchard[i], NULL);
		hot_hang(f, ids[i], "2026-04-06");
		for (int w = 0; w < WEEKS; w++) {
			int block = i / 3, hot = w < 9 ? 0 : second;
			day_iso(day_of("2026-04-06") + 7 * (w + 1), iso);
			fixture_count(f, ids[i], iso,
				block == hot ? course[w] : (course[w] + i % 3) / 8);
			day_iso(day_of(iso) + 1, iso);
			if (i == ORCHARD_TRAPS - 1 && w < WEEKS - 1)
				fixture_count(f, ids[i], iso, 1);
		}
	}
}

static void one_flight_can_be_looked_at(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	two_flights(&f, 1);
	hot_see(&f, &v, (struct hot_ask){ .flight = 1 });
	assert_int_equal(v.n_flights, 2);
	assert_string_equal(v.title, "Quillback · CM · season 2026, flight 1");
	assert_string_equal(v.rows[0].name, "Ash");
	has_text(hot_row_named(&v, "Ash")->earlier,
		"in 1 of 2 flights of this season (flight 1)");
	hot_see(&f, &v, (struct hot_ask){ .flight = 2 });
	assert_string_equal(v.rows[0].name, "Birch");
	has_text(hot_row_named(&v, "Birch")->earlier,
		"in 1 of 2 flights of this season (flight 2)");
	int64_t moths = 0;
	for (size_t i = 0; i < v.n_traps; i++)
		moths += v.traps[i].catch.moths;
	hot_see(&f, &v, (struct hot_ask){ .flight = 1 });
	for (size_t i = 0; i < v.n_traps; i++)
		moths += v.traps[i].catch.moths;
	hot_see(&f, &v, (struct hot_ask){ .flight = 3 });
	assert_int_equal(v.flight, 0);
	for (size_t i = 0; i < v.n_traps; i++)
		moths -= v.traps[i].catch.moths;
	assert_int_equal(moths, 0);
	shut(&f, &v);
}

static void a_block_that_is_hot_again_is_confirmed_alone(void **state)
{
	struct fixture f;
	struct hot_view v = { 0 };

	(void)state;
	open_seasons(&f);
	two_flights(&f, 0);
	hot_see(&f, &v, (struct hot_ask){ 0 });
	/* three of twelve: one of 220 ways */
	has_text(hot_row_named(&v, "Ash")->earlier,
		"in 2 of 2 flights of this season (flights 1, 2); confirmed in flight 2 (alone p "
		"0.0045)");
	assert_null(strstr(hot_row_named(&v, "Birch")->earlier, "confirmed"));
	shut(&f, &v);
}

static void the_weekly_sheet_gets_a_line_for_a_hot_block(void **state)
{
	struct fixture f;
	struct hot_lines lines = { 0 };
	struct err e = { 0 };

	(void)state;
	open_seasons(&f);
	season(&f, 2026, 0);
	fixture_read(&f, "2026-08-12");
	must(hot_lines_read(&lines, f.book, &f.log, f.farm.id, &e), &e);
	assert_int_equal(lines.n, 1);
	/* all traps were read for 84 nights here: 92/252 against 61/756 */
	assert_string_equal(
		lines.items[0].text, "Ash, CM: clear hot spot, 4.5 times the rest");
	assert_int_equal(lines.items[0].grade, HOT_CLEAR);
	assert_int_equal(lines.items[0].pest, f.cm.id);
	must(hot_lines_read(&lines, f.book, &f.log, f.farm.id, &e), &e);
	assert_int_equal(lines.n, 1);
	hot_lines_free(&lines);
	fixture_close(&f);
}

static void a_farm_without_a_hot_block_has_no_line(void **state)
{
	struct fixture f;
	struct hot_lines lines = { 0 };
	struct err e = { 0 };

	(void)state;
	open_seasons(&f);
	for (int i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.count = 10 + i * 5 % 7;
		hot_trap(&f, &spec, "2026-04-20");
	}
	fixture_read(&f, "2026-08-12");
	must(hot_lines_read(&lines, f.book, &f.log, f.farm.id, &e), &e);
	assert_int_equal(lines.n, 0);
	hot_lines_free(&lines);
	fixture_close(&f);
}

static void farm_by_lot(struct fixture *f, struct dice *d)
{
	int worst = (int)dice_below(d, ORCHARD_TRAPS), more = (int)dice_below(d, 30);

	open_seasons(f);
	for (int i = 0; i < ORCHARD_TRAPS; i++) {
		struct hot_spec spec = orchard[i];
		spec.count = (int)dice_below(d, 12);
		spec.count += strcmp(spec.block, orchard[worst].block) == 0 ? more : 0;
		hot_trap(f, &spec, "2026-04-20");
	}
	fixture_read(f, "2026-08-12");
}

/* Lines are made without the shuffles of a farm in which no block can be hot. */
static void the_lines_are_the_blocks_that_the_page_has_hot(void **state)
{
	struct dice d = { 20260721 };
	bool met[2] = { false };

	(void)state;
	for (int round = 0; round < 12; round++) {
		struct fixture f;
		struct hot_view v = { 0 };
		struct hot_lines lines = { 0 };
		struct err e = { 0 };
		size_t n = 0;

		farm_by_lot(&f, &d);
		hot_see(&f, &v, (struct hot_ask){ 0 });
		must(hot_lines_read(&lines, f.book, &f.log, f.farm.id, &e), &e);
		for (size_t i = 0; i < v.n; i++) {
			const struct hot_row *row = &v.rows[i];
			if (row->what != HOT_OF_BLOCK || row->grade < HOT_WATCH)
				continue;
			assert_true(n < lines.n);
			assert_int_equal(lines.items[n++].block, row->block);
		}
		assert_int_equal(lines.n, n);
		met[n > 0] = true;
		hot_lines_free(&lines);
		shut(&f, &v);
	}
	assert_true(met[false] && met[true]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_block_says_in_how_many_seasons_it_was_hot),
		cmocka_unit_test(one_season_alone_has_no_past),
		cmocka_unit_test(seasons_further_back_than_eight_are_not_read),
		cmocka_unit_test(an_earlier_season_can_be_looked_at),
		cmocka_unit_test(one_flight_can_be_looked_at),
		cmocka_unit_test(a_block_that_is_hot_again_is_confirmed_alone),
		cmocka_unit_test(the_weekly_sheet_gets_a_line_for_a_hot_block),
		cmocka_unit_test(a_farm_without_a_hot_block_has_no_line),
		cmocka_unit_test(the_lines_are_the_blocks_that_the_page_has_hot),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
