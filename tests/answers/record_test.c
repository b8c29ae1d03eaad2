/* The fields are those of the US federal record of restricted-use products, 7 CFR
 * 110.3: product and registration number; total amount; location, size of the area,
 * crop; date; certified applicator's name and certification number. */
#include "acts.h"

#include "answers/record.h"

static struct record_ask ask_from(
	const struct fixture *f, const char *from, const char *to)
{
	return (struct record_ask){
		.farm = f->farm.id, .from = day_of(from), .to = day_of(to)
	};
}

static void fill_in(struct treatment *t)
{
	text_copy(t->registration, sizeof t->registration, "00-000");
	text_copy(t->amount, sizeof t->amount, "12.5");
	text_copy(t->amount_unit, sizeof t->amount_unit, "l");
	t->area_x100 = 420;
	text_copy(t->applicator, sizeof t->applicator, "J. Quill");
	text_copy(t->certificate, sizeof t->certificate, "Q-17");
}

static void each_field_that_lacks_is_named(void **state)
{
	enum { TEXT = offsetof(struct treatment, product) };
	static const struct {
		const char *why;
		size_t at; /* of the text that is taken away; 0: none */
		bool no_area;
		const char *missing;
	} row[] = {
		{ "all are there", 0, false, "" },
		{ "product", TEXT, false, "product" },
		{ "registration", offsetof(struct treatment, registration), false,
			"registration number" },
		{ "amount", offsetof(struct treatment, amount), false, "total amount" },
		{ "unit", offsetof(struct treatment, amount_unit), false,
			"unit of the amount" },
		{ "area", 0, true, "size of the area" },
		{ "applicator", offsetof(struct treatment, applicator), false,
			"applicator" },
		{ "certificate", offsetof(struct treatment, certificate), false,
			"certificate number" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct record r = { 0 };
		struct err e = { 0 };
		fixture_open(&f);
		struct treatment t = acts_treatment(&f, "2026-08-20 10:30", 12, 14);
		fill_in(&t);
		if (row[i].at)
			((char *)&t)[row[i].at] = '\0';
		if (row[i].no_area)
			t.area_x100 = -1;
		acts_put(&f, t);
		acts_read(&f, "2026-08-20 12:00");
		struct record_ask ask = ask_from(&f, "2026-01-01", "2026-12-31");
		must(record_read(&r, f.book, &f.log, &ask, &e), &e);
		if (r.n != 1 || strcmp(r.rows[0].missing, row[i].missing) != 0)
			fail_msg("%s: \"%s\"", row[i].why,
				r.n ? r.rows[0].missing : "no row");
		record_free(&r);
		fixture_close(&f);
	}
}

static void a_row_tells_when_where_and_what_it_bars(void **state)
{
	struct fixture f;
	struct record r = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	struct treatment t = acts_treatment(&f, "2026-08-20 10:30", 12, 14);
	fill_in(&t);
	t.border = true;
	t.pest = f.cm.id;
	acts_put(&f, t);
	acts_read(&f, "2026-08-20 12:00");
	struct record_ask ask = ask_from(&f, "2026-01-01", "2026-12-31");
	must(record_read(&r, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(r.n, 1);
	const struct record_row *row = &r.rows[0];
	assert_string_equal(r.title, "1 Jan 2026 to 31 Dec 2026");
	assert_string_equal(row->when, "Thu 20 August 2026, 09:30 to 10:30");
	assert_string_equal(row->farm, "Quillback");
	assert_string_equal(row->block, "Upper Russet");
	assert_string_equal(row->crop, "apple");
	assert_string_equal(row->pest, "CM");
	assert_string_equal(row->area, "4.2 ha, border only");
	assert_string_equal(row->entry, "no entry until Thu 20 Aug 22:30");
	assert_string_equal(
		row->pick, "earliest pick Thu 3 Sep (14 days after 20 Aug)");
	assert_int_equal(row->pick_from, day_of("2026-09-03"));
	assert_int_equal(row->entry_from.minute, t.until.minute + 12 * 60);
	record_free(&r);
	fixture_close(&f);
}

static void hours_are_told_as_far_as_they_are_known(void **state)
{
	static const struct {
		const char *why, *from, *until; /* "": not entered */
		const char *when;
	} row[] = {
		{ "both", "2026-08-20 09:30", "2026-08-20 10:30",
			"Thu 20 August 2026, 09:30 to 10:30" },
		{ "over midnight", "2026-08-19 22:10", "2026-08-20 02:30",
			"Thu 20 August 2026, from Wed 19 Aug 22:10 to 02:30" },
		{ "its end alone", "", "2026-08-20 10:30",
			"Thu 20 August 2026, until 10:30" },
		{ "its begin alone", "2026-08-20 09:30", "",
			"Thu 20 August 2026, from 09:30, end not entered" },
		{ "none", "", "", "Thu 20 August 2026, hours not entered" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct record r = { 0 };
		struct err e = { 0 };
		fixture_open(&f);
		struct treatment t = acts_treatment(&f, "2026-08-20 10:30", 12, 14);
		const struct instant none = { .minute = INSTANT_NONE };
		t.from = *row[i].from ? acts_at(&f, row[i].from) : none;
		t.until = *row[i].until ? acts_at(&f, row[i].until) : none;
		acts_put(&f, t);
		acts_read(&f, "2026-08-20 12:00");
		struct record_ask ask = ask_from(&f, "2026-01-01", "2026-12-31");
		must(record_read(&r, f.book, &f.log, &ask, &e), &e);
		assert_int_equal(r.n, 1);
		if (strcmp(r.rows[0].when, row[i].when) != 0)
			fail_msg("%s: %s", row[i].why, r.rows[0].when);
		record_free(&r);
		fixture_close(&f);
	}
}

static void the_span_takes_in_both_its_ends(void **state)
{
	static const struct {
		const char *why, *from, *to;
		size_t n;
	} row[] = {
		{ "from its day on", "2026-08-20", "2026-12-31", 1 },
		{ "from the day after", "2026-08-21", "2026-12-31", 0 },
		{ "up to its day", "2026-01-01", "2026-08-20", 1 },
		{ "up to the day before", "2026-01-01", "2026-08-19", 0 },
	};
	struct fixture f;
	struct record r = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	acts_treat(&f, "2026-08-20 10:30", 12, 14);
	acts_read(&f, "2026-08-20 12:00");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct record_ask ask = ask_from(&f, row[i].from, row[i].to);
		must(record_read(&r, f.book, &f.log, &ask, &e), &e);
		if (r.n != row[i].n)
			fail_msg("%s: %zu", row[i].why, r.n);
	}
	record_free(&r);
	fixture_close(&f);
}

static void a_correction_stays_beside_its_treatment(void **state)
{
	struct fixture f;
	struct record r = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	struct treatment t = acts_treatment(&f, "2026-08-20 10:30", 12, 14);
	must(book_put_treatment(f.book, &t, &e), &e);
	acts_read(&f, "2026-08-20 12:00");
	struct record_ask ask = ask_from(&f, "2026-01-01", "2026-12-31");
	must(record_read(&r, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(r.rows[0].corrected.n, 0);
	t.phi_days = 21;
	must(book_put_treatment(f.book, &t, &e), &e);
	must(record_read(&r, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(r.rows[0].corrected.n, 1);
	assert_non_null(
		strstr(r.rows[0].corrected.lines[0], "preharvest, days was 14, is 21"));
	record_free(&r);
	fixture_close(&f);
}

static void put_check(struct fixture *f, const char *iso, int32_t n, int32_t entered)
{
	struct fruit_check c = fruit_check_blank;
	struct err e = { 0 };

	c.block = f->block.id;
	c.pest = f->cm.id;
	c.day = day_of(iso);
	c.part = PART_FRUIT;
	c.where = TREE_TOP;
	c.looked_at = n;
	c.stung = 0;
	c.entered = entered;
	must(book_put_fruit_check(f->book, &c, &e), &e);
}

static void put_dispensers(
	struct fixture *f, const char *up, const char *down, const char *type)
{
	struct disruption d = disruption_blank;
	struct err e = { 0 };

	d.block = f->block.id;
	d.up = day_of(up);
	d.down = day_of(down);
	d.per_ha_x100 = 50000;
	text_copy(d.type, sizeof d.type, type);
	must(book_put_disruption(f->book, &d, &e), &e);
}

static void put_answer(struct fixture *f, int64_t trap)
{
	struct answer a = answer_blank;
	struct err e = { 0 };

	a.block = f->block.id;
	a.pest = f->cm.id;
	a.trap = trap;
	a.day = day_of("2026-07-15");
	a.on = day_of("2026-07-16");
	a.decision = DECISION_LOOKED;
	must(book_put_answer(f->book, &a, &e), &e);
}

/* 300 clean fruit: 1 - 0.05^(1/300) = 0.994 %, about the 1 % of the rule of three. */
static void a_blocks_season_stands_by_day(void **state)
{
	static const char *const want[] = {
		"2026-01-01 dispensers up since Sun 20 Apr 2025, aerosol, 500 per ha",
		"2026-03-01 dispensers down, aerosol",
		"2026-04-20 dispensers up, hand-tied, 500 per ha",
		"2026-06-29 CM, a mark for each week, the highest 9.0: "
		"\u00b7_\u2588",
		"2026-07-15 OVER CM, trap 1: 9.0 a week, threshold >=5",
		"2026-07-16 Upper Russet, CM, trap 1, over on 15 Jul: looked Thu 16 "
		"Jul; before 4.5 a week, after not read (14 nights and -; the two "
		"weeks after are not over)",
		"2026-07-16 fruit check, CM: 300 looked at, 0 stung, 0 entered, top of "
		"the trees: none of 300 still means up to 1.0 %",
		"2026-07-17 treated: Brackwater oil; no entry until Fri 17 Jul 22:00; "
		"earliest pick Fri 31 Jul (14 days after 17 Jul)",
		"2026-07-30 pick planned: too early: earliest pick Fri 31 Jul (14 days "
		"after 17 Jul)",
		"2026-07-31 pick planned: not barred from Fri 31 Jul on (14 days after "
		"17 Jul)",
		"2026-09-30 dispensers down, hand-tied",
	};
	struct fixture f;
	struct block_diary d = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(&f, "1", "2026-07-01");
	fixture_count(&f, t, "2026-07-08", 0);
	fixture_count(&f, t, "2026-07-15", 9);
	put_check(&f, "2026-07-16", 300, 0);
	put_answer(&f, t);
	put_dispensers(&f, "2025-04-20", "2026-03-01", "aerosol");
	put_dispensers(&f, "2026-04-20", "2026-09-30", "hand-tied");
	acts_treat(&f, "2026-07-17 10:00", 12, 14);
	acts_pick(&f, "2026-07-31", false);
	acts_pick(&f, "2026-07-30", false);
	acts_read(&f, "2026-07-18 12:00");
	struct record_ask ask = ask_from(&f, "2026-01-01", "2026-12-31");
	ask.block = f.block.id;
	must(block_diary_read(&d, f.book, &f.log, &ask, &e), &e);
	assert_string_equal(d.title,
		"Quillback \u00b7 Upper Russet \u00b7 1 Jan 2026 to 31 Dec 2026");
	for (size_t i = 0; i < d.n; i++) {
		char day[DAY_ISO_SIZE], line[SAY_LINE * 5];
		day_iso(d.lines[i].day, day);
		snprintf(line, sizeof line, "%s %s", day, d.lines[i].text);
		if (i >= sizeof want / sizeof *want || strcmp(line, want[i]) != 0)
			fail_msg("line %zu: \"%s\"", i, line);
	}
	assert_int_equal(d.n, sizeof want / sizeof *want);
	block_diary_free(&d);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_field_that_lacks_is_named),
		cmocka_unit_test(a_row_tells_when_where_and_what_it_bars),
		cmocka_unit_test(hours_are_told_as_far_as_they_are_known),
		cmocka_unit_test(the_span_takes_in_both_its_ends),
		cmocka_unit_test(a_correction_stays_beside_its_treatment),
		cmocka_unit_test(a_blocks_season_stands_by_day),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
