/* The season page says what the pages it is put together of say. */
#include "acts.h"

#include "answers/alerts.h"
#include "answers/season_page.h"

static void season_see(struct fixture *f, struct season_page *p, const char *today)
{
	struct err e = { 0 };

	fixture_read(f, today);
	must(season_page_read(p, f->book, &f->log, f->farm.id, &e), &e);
}

/* Weekly counts of one trap from `first` on; -1: skipped. */
static void count_weeks(
	struct fixture *f, int64_t trap, const char *first, const int *counts, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		char iso[DAY_ISO_SIZE];
		day_iso(day_of(first) + 7 * (int32_t)i, iso);
		if (counts[i] < 0)
			fixture_skip(f, trap, iso);
		else
			fixture_count(f, trap, iso, counts[i]);
	}
}

static const int weeks_now[] = { 0, 2, 9, 14, 6, 1, 0, -1, -1, 3, 8 };
static const int weeks_before[] = { 0, 1, 5, 7, 3, 0, 0, 0, 2, 4, 1 };
enum { WEEKS = sizeof weeks_now / sizeof *weeks_now };

/* Two traps, this season and two before it. */
static void fill_orchard(struct fixture *f)
{
	fixture_open(f);
	for (int year = 2024; year <= 2026; year++) {
		char label[8], hung[24], first[24];
		snprintf(label, sizeof label, "%d", year % 100);
		snprintf(hung, sizeof hung, "%d-05-01", year);
		snprintf(first, sizeof first, "%d-05-08", year);
		int64_t trap = fixture_trap(f, label, hung);
		count_weeks(
			f, trap, first, year == 2026 ? weeks_now : weeks_before, WEEKS);
	}
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 1, 500));
}

static void a_chart_has_the_numbers_of_the_flight_page(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };
	struct flight_view v = { 0 };
	struct err e = { 0 };

	(void)state;
	fill_orchard(&f);
	season_see(&f, &p, "2026-07-20");
	const struct flight_ask ask = { .farm = f.farm.id,
		.block = f.block.id,
		.pest = f.cm.id,
		.trap = NO_TRAP,
		.season = 2026 };
	must(flight_read(&v, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(p.n_charts, 1);
	const struct flight_view *chart = &p.charts[0].flight;
	assert_true(v.n_rows > 0);
	assert_int_equal(chart->n_rows, v.n_rows);
	for (size_t i = 0; i < v.n_rows; i++) {
		assert_string_equal(chart->rows[i].first, v.rows[i].first);
		assert_string_equal(chart->rows[i].peak, v.rows[i].peak);
		assert_string_equal(chart->rows[i].d50, v.rows[i].d50);
		assert_string_equal(chart->rows[i].moths, v.rows[i].moths);
	}
	assert_int_equal(chart->now.n, v.now.n);
	assert_memory_equal(chart->now.rate, v.now.rate, sizeof v.now.rate);
	flight_free(&v);
	season_page_free(&p);
	fixture_close(&f);
}

static void last_season_alone_stands_behind_it(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };
	struct flight_view v = { 0 };
	struct err e = { 0 };

	(void)state;
	fill_orchard(&f);
	season_see(&f, &p, "2026-07-20");
	struct flight_ask ask = p.charts[0].flight.ask;
	ask.is_brief = false;
	must(flight_read(&v, f.book, &f.log, &ask, &e), &e);
	assert_int_equal(v.n_earlier, 2); /* the book has them */
	assert_int_equal(p.charts[0].flight.n_earlier, 1);
	assert_int_equal(p.charts[0].flight.earlier[0].season, 2025);
	assert_int_equal(p.charts[0].flight.events.n, 0);
	assert_memory_equal(p.charts[0].flight.earlier[0].rate, v.earlier[0].rate,
		sizeof v.earlier[0].rate);
	flight_free(&v);
	season_page_free(&p);
	fixture_close(&f);
}

static void weeks_that_nobody_looked_at_have_no_dot_and_no_rate(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fill_orchard(&f);
	season_see(&f, &p, "2026-07-20");
	const struct season_chart *c = &p.charts[0];
	assert_int_equal(c->n_dots, WEEKS - 2);
	/* three weeks in one: 3 moths in 21 nights */
	const struct season_dot *d = &c->dots[7];
	assert_int_equal(d->day - d->from, 21);
	assert_string_equal(d->text, "1.0");
	assert_int_equal(c->dots[6].day, day_of("2026-06-19"));
	season_page_free(&p);
	fixture_close(&f);
}

static void a_full_card_is_at_least_everywhere(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-05-01");
	struct visit v = fixture_counted(trap, "2026-05-08", 40);
	v.outcome = OUTCOME_FLOOR;
	fixture_save(&f, v);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	season_see(&f, &p, "2026-05-08");
	const struct season_chart *c = &p.charts[0];
	assert_true(c->dots[0].at_least);
	assert_string_equal(c->dots[0].text, "40.0+");
	assert_string_equal(c->moths, "40+");
	assert_string_equal(c->highest, "40.0+, trap 1");
	assert_true(strncmp(c->mean, "40.0+,", 6) == 0);
	assert_int_equal(c->n_alerts, 1);
	assert_string_equal(c->alerts[0].text, "trap 1: 40.0+ (>=5)");
	season_page_free(&p);
	fixture_close(&f);
}

static void each_catch_over_is_told_with_its_threshold_and_day(void **state)
{
	static const struct {
		const char *day, *text;
	} over[] = {
		{ "2026-05-22", "trap 26: 9.0 (>=5)" },
		{ "2026-05-29", "trap 26: 14.0 (>=5)" },
		{ "2026-06-05", "trap 26: 6.0 (>=5)" },
		{ "2026-07-17", "trap 26: 8.0 (>=5)" },
	};
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fill_orchard(&f);
	season_see(&f, &p, "2026-07-20");
	const struct season_chart *c = &p.charts[0];
	assert_int_equal(c->n_alerts, sizeof over / sizeof *over);
	for (size_t i = 0; i < c->n_alerts; i++) {
		assert_int_equal(c->alerts[i].day, day_of(over[i].day));
		assert_string_equal(c->alerts[i].text, over[i].text);
		assert_false(c->alerts[i].is_answered);
	}
	assert_string_equal(c->over, "4");
	assert_string_equal(c->answered, "0");
	season_page_free(&p);
	fixture_close(&f);
}

static void put_answer(
	struct fixture *f, int64_t trap, const char *day, enum decision decision)
{
	struct answer a = answer_blank;
	struct err e = { 0 };

	a.block = f->block.id;
	a.pest = f->cm.id;
	a.trap = trap;
	a.day = a.on = day_of(day);
	a.decision = decision;
	text_copy(a.note, sizeof a.note, "fruit clean");
	must(book_put_answer(f->book, &a, &e), &e);
}

static void an_answer_stands_with_what_the_catch_did_after(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };
	struct alerts alerts = { 0 };

	(void)state;
	fill_orchard(&f);
	fixture_read(&f, "2026-07-20");
	int64_t trap = f.log.traps.items[2].id;
	put_answer(&f, trap, "2026-05-29", DECISION_LOOKED);
	put_answer(&f, trap, "2026-06-12",
		DECISION_LOOKED); /* 1 moth: not over as things stand now */
	season_see(&f, &p, "2026-07-20");
	const struct season_chart *c = &p.charts[0];
	assert_int_equal(c->n_alerts, 5);
	assert_true(c->alerts[1].is_answered);
	assert_non_null(strstr(c->alerts[1].decided, "fruit clean"));
	alerts_of(&f.log, f.farm.id, &alerts);
	for (size_t i = 0; i < alerts.n; i++)
		if (alerts.items[i].is_answered &&
			alerts.items[i].day == c->alerts[1].day)
			assert_string_equal(c->alerts[1].after, alerts.items[i].after);
	alerts_free(&alerts);
	assert_int_equal(c->alerts[3].day, day_of("2026-06-12"));
	assert_non_null(strstr(c->alerts[3].text, "stand now"));
	assert_int_equal(c->alerts[0].trap, c->alerts[1].trap);
	assert_true(c->alerts[0].is_answered); /* over at the check before as well */
	assert_string_equal(c->answered, "3");
	season_page_free(&p);
	fixture_close(&f);
}

static void an_answer_is_not_counted_as_a_treatment(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };
	size_t told = 0;

	(void)state;
	fill_orchard(&f);
	fixture_read(&f, "2026-07-20");
	put_answer(&f, f.log.traps.items[2].id, "2026-05-29", DECISION_TREATED);
	season_see(&f, &p, "2026-07-20");
	for (size_t i = 0; i < p.n_acts; i++)
		told += strstr(p.acts[i].text, "no treatment entered") != NULL;
	assert_int_equal(told, 1);
	assert_string_equal(p.charts[0].treated, "-");
	season_page_free(&p);
	fixture_close(&f);
}

static void a_threshold_is_drawn_over_the_nights_that_it_judged(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fill_orchard(&f);
	struct rule late = fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 350);
	late.from = 601;
	late.to = 630;
	fixture_put_rule(&f, late);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_TOTAL, 30, 9900));
	season_see(&f, &p, "2026-07-20");
	const struct season_chart *c = &p.charts[0];
	bool seen[3] = { false };
	for (size_t i = 0; i < c->n_limits; i++) {
		const struct season_limit *m = &c->limits[i];
		const struct rule *r = &f.log.rules.items[m->rule];
		assert_int_equal(p.sources[m->source - 1].rule, m->rule);
		seen[r->measure == MEASURE_BLOCK_WEEK     ? 1
			: r->measure == MEASURE_TRAP_WEEK ? 0
							  : 2] = true;
		if (r->measure == MEASURE_BLOCK_WEEK) {
			assert_true(m->is_block);
			assert_string_equal(m->text, ">=3.5");
			assert_int_equal(m->from, day_of("2026-05-29"));
			assert_int_equal(m->to, day_of("2026-06-19"));
		}
		if (r->measure == MEASURE_TRAP_TOTAL)
			assert_true(m->rate < 0);
	}
	assert_true(seen[0] && seen[1] && seen[2]);
	season_page_free(&p);
	fixture_close(&f);
}

static const struct season_act *act_with(const struct season_page *p, const char *part)
{
	for (size_t i = 0; i < p->n_acts; i++)
		if (strstr(p->acts[i].text, part))
			return &p->acts[i];
	fail_msg("nothing was done with \"%s\"", part);
	return NULL;
}

static int marks_of(const struct season_chart *c, enum season_mark_kind kind)
{
	int n = 0;

	for (size_t i = 0; i < c->n_marks; i++)
		n += c->marks[i].kind == kind;
	return n;
}

static void a_border_treatment_says_that_it_was_the_border_alone(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fill_orchard(&f);
	struct treatment t = acts_treatment(&f, "2026-06-02 10:30", 12, 14);
	t.border = true;
	acts_put(&f, t);
	acts_treat(&f, "2026-06-20 10:30", 12, 14);
	acts_pick(&f, "2026-07-18", true);
	season_see(&f, &p, "2026-07-20");
	assert_non_null(strstr(act_with(&p, "border treated")->text, "Brackwater oil"));
	assert_non_null(strstr(act_with(&p, "border only")->text, "earliest pick"));
	act_with(&p, "picked: ");
	assert_int_equal(marks_of(&p.charts[0], SEASON_BORDER), 1);
	assert_int_equal(marks_of(&p.charts[0], SEASON_TREATED), 1);
	assert_int_equal(marks_of(&p.charts[0], SEASON_PICKED), 1);
	for (size_t i = 1; i < p.n_acts; i++)
		assert_true(p.acts[i - 1].day <= p.acts[i].day);
	season_page_free(&p);
	fixture_close(&f);
}

static void what_a_page_has_nothing_of_it_says(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };

	(void)state;
	fixture_open(&f);
	season_see(&f, &p, "2026-07-20");
	assert_int_equal(p.n_charts, 0);
	assert_non_null(strstr(p.says, "No trap of this farm was read"));
	assert_non_null(strstr(p.bare, "Upper Russet"));
	fixture_trap(&f, "1", "2026-07-18");
	season_see(&f, &p, "2026-07-20");
	assert_int_equal(p.n_charts, 1);
	assert_int_equal(p.from, DAY_NONE);
	assert_non_null(strstr(p.says, "none was read"));
	assert_null(p.bare);
	assert_string_equal(p.charts[0].moths, "-");
	assert_string_equal(p.charts[0].over, "-");
	season_page_free(&p);
	fixture_close(&f);
}

static void a_past_season_is_told_as_of_its_last_day(void **state)
{
	struct fixture f;
	struct season_page p = { 0 };
	char iso[DAY_ISO_SIZE];

	(void)state;
	fill_orchard(&f);
	fixture_read(&f, "2026-07-20");
	day_iso(season_page_last_day(&f.log, f.farm.id, 2025), iso);
	assert_string_equal(iso, "2025-12-31");
	season_see(&f, &p, iso);
	assert_int_equal(p.season, 2025);
	assert_string_equal(p.charts[0].moths, "23");
	assert_int_equal(p.charts[0].n_alerts, 2);
	assert_int_equal(p.charts[0].flight.earlier[0].season, 2024);
	season_page_free(&p);
	fixture_close(&f);
}

static void a_season_that_begins_in_july_ends_in_june(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	f.farm.season_start = 701;
	must(book_put_farm(f.book, &f.farm, &e), &e);
	fixture_read(&f, "2026-07-20");
	assert_int_equal(
		season_page_last_day(&f.log, f.farm.id, 2025), day_of("2026-06-30"));
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_chart_has_the_numbers_of_the_flight_page),
		cmocka_unit_test(last_season_alone_stands_behind_it),
		cmocka_unit_test(weeks_that_nobody_looked_at_have_no_dot_and_no_rate),
		cmocka_unit_test(a_full_card_is_at_least_everywhere),
		cmocka_unit_test(each_catch_over_is_told_with_its_threshold_and_day),
		cmocka_unit_test(an_answer_stands_with_what_the_catch_did_after),
		cmocka_unit_test(an_answer_is_not_counted_as_a_treatment),
		cmocka_unit_test(a_threshold_is_drawn_over_the_nights_that_it_judged),
		cmocka_unit_test(a_border_treatment_says_that_it_was_the_border_alone),
		cmocka_unit_test(what_a_page_has_nothing_of_it_says),
		cmocka_unit_test(a_past_season_is_told_as_of_its_last_day),
		cmocka_unit_test(a_season_that_begins_in_july_ends_in_june),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
