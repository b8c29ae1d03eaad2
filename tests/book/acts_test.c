#include "fixture.h"

#include "book/steps.h"

enum { DAY = 20685 }; /* 2026-08-20 */

static int64_t minute(const char *iso)
{
	struct instant t;

	assert_true(instant_read(iso, &t));
	return t.minute;
}

static struct treatment simple(const struct desk *d)
{
	struct treatment t = treatment_blank;

	t.block = d->block;
	t.day = DAY;
	return t;
}

/* Clocks went back between its begin and its end. */
static struct treatment full(const struct desk *d)
{
	struct treatment t = simple(d);

	t.pest = d->pest;
	t.border = true;
	assert_true(instant_read("2026-08-19T23:30+02:00", &t.from));
	assert_true(instant_read("2026-08-20T01:30+01:00", &t.until));
	strcpy(t.job, "night of the 19th");
	strcpy(t.product, "as \"typed\"; it's so");
	strcpy(t.registration, "123-45");
	strcpy(t.amount, "12.5");
	strcpy(t.amount_unit, "l");
	t.area_x100 = 0;
	strcpy(t.applicator, "Ida");
	strcpy(t.certificate, "C 7");
	t.rei_hours = 0;
	t.phi_days = 14;
	strcpy(t.note, "calm");
	return t;
}

static void same_treatment(const struct treatment *a, const struct treatment *b)
{
	assert_int_equal(a->id, b->id);
	assert_int_equal(a->block, b->block);
	assert_int_equal(a->pest, b->pest);
	assert_int_equal(a->day, b->day);
	assert_int_equal(a->border, b->border);
	assert_int_equal(a->from.minute, b->from.minute);
	assert_int_equal(a->from.east, b->from.east);
	assert_int_equal(a->until.minute, b->until.minute);
	assert_int_equal(a->until.east, b->until.east);
	assert_string_equal(a->job, b->job);
	assert_string_equal(a->product, b->product);
	assert_string_equal(a->registration, b->registration);
	assert_string_equal(a->amount, b->amount);
	assert_string_equal(a->amount_unit, b->amount_unit);
	assert_int_equal(a->area_x100, b->area_x100);
	assert_string_equal(a->applicator, b->applicator);
	assert_string_equal(a->certificate, b->certificate);
	assert_int_equal(a->rei_hours, b->rei_hours);
	assert_int_equal(a->phi_days, b->phi_days);
	assert_string_equal(a->note, b->note);
}

static void book_keeps_a_treatment_as_given(void **state)
{
	struct treatments got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment all = full(&d), bare = simple(&d);
	must(book_put_treatment(d.book, &all, e));
	must(book_put_treatment(d.book, &bare, e));
	must(book_treatments(d.book, d.farm, DAY, DAY, &got, e));
	assert_int_equal(got.n, 2);
	same_treatment(&got.items[0], &all);
	same_treatment(&got.items[1], &bare);
	assert_int_equal(got.items[1].rei_hours, -1);
	assert_int_equal(got.items[1].phi_days, -1);
	assert_int_equal(got.items[1].area_x100, -1);
	assert_true(got.items[1].until.minute == INSTANT_NONE);
	free(got.items);
	desk_clear(&d);
}

static void book_reads_acts_of_the_farm_and_days_asked_for(void **state)
{
	struct treatments got = { 0 };
	struct picks picks = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment late = simple(&d), early = simple(&d);
	struct pick p = pick_blank;
	late.day = 120;
	early.day = 110;
	p.block = d.block;
	p.day = 110;
	must(book_put_treatment(d.book, &late, e));
	must(book_put_treatment(d.book, &early, e));
	must(book_put_pick(d.book, &p, e));
	must(book_treatments(d.book, d.farm, 110, 120, &got, e));
	assert_int_equal(got.n, 2);
	assert_int_equal(got.items[0].day, 110);
	must(book_treatments(d.book, 0, 111, 119, &got, e));
	assert_int_equal(got.n, 0);
	must(book_treatments(d.book, 0, -9999999, 9999999, &got, e));
	assert_int_equal(got.n, 2);
	must(book_treatments(d.book, d.farm + 1, 110, 120, &got, e));
	assert_int_equal(got.n, 0);
	must(book_picks(d.book, d.farm, 110, 110, &picks, e));
	assert_int_equal(picks.n, 1);
	must(book_picks(d.book, d.farm, 111, 120, &picks, e));
	assert_int_equal(picks.n, 0);
	free(got.items);
	free(picks.items);
	desk_clear(&d);
}

struct bound {
	const char *why;
	size_t at; /* of an int32_t */
	int32_t value;
	const char *words; /* of the refusal; NULL: it is good */
};

#define FIELD(type, field) offsetof(struct type, field)

static void book_treatments_stay_in_their_ranges(void **state)
{
	static const struct bound row[] = {
		{ "the longest REI", FIELD(treatment, rei_hours), 8784, NULL },
		{ "one hour more", FIELD(treatment, rei_hours), 8785, "-1 to 8784" },
		{ "REI below none", FIELD(treatment, rei_hours), -2, "-1 to 8784" },
		{ "the longest PHI", FIELD(treatment, phi_days), 366, NULL },
		{ "one day more", FIELD(treatment, phi_days), 367, "-1 to 366" },
		{ "PHI below none", FIELD(treatment, phi_days), -2, "-1 to 366" },
		{ "the largest area", FIELD(treatment, area_x100), 100000000, NULL },
		{ "above it", FIELD(treatment, area_x100), 100000001, "the area" },
		{ "no day", FIELD(treatment, day), DAY_NONE, "no date" },
		{ "the first day", FIELD(treatment, day), -25567, NULL },
		{ "the day before it", FIELD(treatment, day), -25568, "1900-01-01" },
		{ "the last day", FIELD(treatment, day), 84005, NULL },
		{ "the day after it", FIELD(treatment, day), 84006, "2199-12-31" },
	};
	struct err err;
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct treatment t = simple(&d);
		memcpy((char *)&t + row[i].at, &row[i].value, sizeof row[i].value);
		bool good = book_put_treatment(d.book, &t, &err);
		if (good != !row[i].words || (!good && !strstr(err.text, row[i].words)))
			fail_msg("%s: %s", row[i].why, good ? "taken" : err.text);
	}
	desk_clear(&d);
}

static void book_treatment_ends_on_its_date_and_after_its_begin(void **state)
{
	static const struct {
		const char *why, *from, *until, *words;
	} row[] = {
		{ "over midnight", "2026-08-19T23:00-07:00", "2026-08-20T00:00-07:00",
			NULL },
		{ "a minute before midnight", "2026-08-19T23:00-07:00",
			"2026-08-19T23:59-07:00", "it ended on 2026-08-19" },
		{ "the last minute of the day", "2026-08-20T22:00-07:00",
			"2026-08-20T23:59-07:00", NULL },
		{ "the first of the next", "2026-08-20T22:00-07:00",
			"2026-08-21T00:00-07:00", "it ended on 2026-08-21" },
		{ "at once", "2026-08-20T10:00+00:00", "2026-08-20T10:00+00:00", NULL },
		{ "an end before its start", "2026-08-20T10:01+00:00",
			"2026-08-20T10:00+00:00", "ends before it begins" },
		{ "an end that local clocks alone show later", "2026-08-20T10:00+00:00",
			"2026-08-20T10:30+01:00", "ends before it begins" },
		{ "a begin alone", "2026-08-20T23:59+00:00", "", NULL },
		{ "a begin on the day after", "2026-08-21T00:00+00:00", "",
			"ends before it begins" },
		{ "an end alone", "", "2026-08-20T00:00+00:00", NULL },
	};
	struct err err;
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct treatment t = simple(&d);
		if (*row[i].from)
			assert_true(instant_read(row[i].from, &t.from));
		if (*row[i].until)
			assert_true(instant_read(row[i].until, &t.until));
		bool good = book_put_treatment(d.book, &t, &err);
		if (good != !row[i].words || (!good && !strstr(err.text, row[i].words)))
			fail_msg("%s: %s", row[i].why, good ? "taken" : err.text);
	}
	desk_clear(&d);
}

static void book_treatment_has_hours_that_lie_on_a_day(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment t = simple(&d), u = t;
	t.from.minute = INT64_C(1) << 40;
	refused(book_put_treatment(d.book, &t, e), ERR_INPUT, "lie on no day");
	u.until.minute = INT64_C(1) << 40;
	refused(book_put_treatment(d.book, &u, e), ERR_INPUT, "lie on no day");
	desk_clear(&d);
}

static void book_writes_moments_in_utc_with_their_offset(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment t = full(&d);
	must(book_put_treatment(d.book, &t, e));
	assert_int_equal(
		store_number(d.book,
			"SELECT count(*) FROM treatment WHERE started_at = "
			"'2026-08-19T21:30Z' AND started_east = 120 AND ended_at = "
			"'2026-08-20T00:30Z' AND ended_east = 60",
			0),
		1);
	desk_clear(&d);
}

static void book_refuses_acts_of_a_block_that_is_not_there(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment t = simple(&d);
	t.block = 99;
	refused(book_put_treatment(d.book, &t, e), ERR_NOT_FOUND, "not in the book");
	assert_int_equal(t.id, 0);
	t = simple(&d);
	t.id = 77;
	refused(book_put_treatment(d.book, &t, e), ERR_NOT_FOUND, "any more");
	struct pick p = pick_blank;
	p.block = 99;
	p.day = DAY;
	refused(book_put_pick(d.book, &p, e), ERR_NOT_FOUND, "not in the book");
	desk_clear(&d);
}

static void book_keeps_planned_and_done_picks_apart(void **state)
{
	struct picks got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct pick done = { 0, d.block, DAY + 1, true, "the red ones" };
	struct pick planned = { 0, d.block, DAY, false, "" };
	must(book_put_pick(d.book, &done, e));
	must(book_put_pick(d.book, &planned, e));
	must(book_picks(d.book, 0, DAY, DAY + 1, &got, e));
	assert_int_equal(got.n, 2);
	assert_false(got.items[0].is_done);
	assert_int_equal(got.items[0].id, planned.id);
	assert_true(got.items[1].is_done);
	assert_string_equal(got.items[1].note, "the red ones");
	planned.is_done = true;
	must(book_put_pick(d.book, &planned, e));
	must(book_picks(d.book, 0, DAY, DAY, &got, e));
	assert_int_equal(got.n, 1);
	assert_true(got.items[0].is_done);
	done.day = DAY_NONE;
	refused(book_put_pick(d.book, &done, e), ERR_INPUT, "no date");
	free(got.items);
	desk_clear(&d);
}

static void book_shows_what_a_corrected_treatment_was(void **state)
{
	struct row_changes got = { 0 };
	struct treatments now = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct treatment t = full(&d);
	must(book_put_treatment(d.book, &t, e));
	t.phi_days = 21;
	t.until.minute += 30;
	must(book_put_treatment(d.book, &t, e));
	must(book_row_changes(d.book, "treatment", t.id, &got, e));
	assert_int_equal(got.n, 3);
	assert_string_equal(got.items[0].field, "ended_at");
	assert_string_equal(got.items[0].before, "2026-08-20T00:30Z");
	assert_string_equal(got.items[0].after, "2026-08-20T01:00Z");
	assert_string_equal(got.items[1].field, "phi_days");
	assert_string_equal(got.items[1].before, "14");
	assert_string_equal(got.items[1].after, "21");
	assert_string_equal(got.items[2].field, "");
	must(book_treatments(d.book, 0, DAY, DAY, &now, e));
	assert_int_equal(now.n, 1);
	assert_true(now.items[0].until.minute == minute("2026-08-20T02:00+01:00"));
	free(got.items);
	free(now.items);
	desk_clear(&d);
}

static void book_takes_acts_back_step_by_step(void **state)
{
	struct treatments now = { 0 };
	struct undone_step undone;
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t before;
	must(book_latest_step(d.book, &before, e));
	struct treatment t = full(&d), was = t;
	must(book_put_treatment(d.book, &t, e));
	was.id = t.id;
	t.rei_hours = 12;
	must(book_put_treatment(d.book, &t, e));
	must(book_remove(d.book, "treatment", t.id, e));
	must(book_treatments(d.book, 0, DAY, DAY, &now, e));
	assert_int_equal(now.n, 0);
	must(book_undo_step(d.book, "JR", before, &undone, e));
	must(book_treatments(d.book, 0, DAY, DAY, &now, e));
	same_treatment(&now.items[0], &t);
	must(book_undo_step(d.book, "JR", before, &undone, e));
	must(book_treatments(d.book, 0, DAY, DAY, &now, e));
	same_treatment(&now.items[0], &was);
	must(book_undo_step(d.book, "JR", before, &undone, e));
	assert_true(undone.was_new);
	must(book_treatments(d.book, 0, DAY, DAY, &now, e));
	assert_int_equal(now.n, 0);
	free(now.items);
	desk_clear(&d);
}

/* One of each of the rest, removed and brought back. */
static void book_removes_every_act_and_brings_it_back(void **state)
{
	static const char *const kinds[] = { "pick", "fruit_check", "dispensers",
		"answer" };
	struct undone_step undone;
	struct desk d;
	char sql[64];

	(void)state;
	desk_memory(&d);
	struct pick p = { 0, d.block, DAY, true, "" };
	struct fruit_check c = { 0, d.block, 0, DAY, PART_FRUIT, TREE_TOP, 300, -1, 0,
		"" };
	struct disruption m = { 0, d.block, 0, DAY, DAY_NONE, -1, "", "" };
	struct answer a = { 0, d.block, d.pest, d.trap, DAY, DAY, DECISION_LEFT, "" };
	must(book_put_pick(d.book, &p, e));
	must(book_put_fruit_check(d.book, &c, e));
	must(book_put_disruption(d.book, &m, e));
	must(book_put_answer(d.book, &a, e));
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
		int64_t id = i == 0 ? p.id : i == 1 ? c.id : i == 2 ? m.id : a.id;
		snprintf(sql, sizeof sql, "SELECT count(*) FROM %s", kinds[i]);
		must(book_remove(d.book, kinds[i], id, e));
		assert_int_equal(store_number(d.book, sql, -1), 0);
		must(book_undo_step(d.book, NULL, 0, &undone, e));
		assert_string_equal(undone.kind, kinds[i]);
		assert_int_equal(store_number(d.book, sql, -1), 1);
	}
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_keeps_a_treatment_as_given),
		cmocka_unit_test(book_reads_acts_of_the_farm_and_days_asked_for),
		cmocka_unit_test(book_treatments_stay_in_their_ranges),
		cmocka_unit_test(book_treatment_ends_on_its_date_and_after_its_begin),
		cmocka_unit_test(book_treatment_has_hours_that_lie_on_a_day),
		cmocka_unit_test(book_writes_moments_in_utc_with_their_offset),
		cmocka_unit_test(book_refuses_acts_of_a_block_that_is_not_there),
		cmocka_unit_test(book_keeps_planned_and_done_picks_apart),
		cmocka_unit_test(book_shows_what_a_corrected_treatment_was),
		cmocka_unit_test(book_takes_acts_back_step_by_step),
		cmocka_unit_test(book_removes_every_act_and_brings_it_back),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
