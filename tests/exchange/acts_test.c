/* Files of what was done in blocks. */
#include "desk.h"

#include "book/acts.h"
#include "book/steps.h"

#define TREATMENTS "farm,block,date,ended_at,product,rei_hours,phi_days\n"

/* Summer time until 25 October 2026, 01:00 UTC. */
static const struct zone clocks = {
	.steps = { { INT64_MIN / 2, 120 }, { 29881980, 60 } }, .n = 2
};

static bool take_by(struct book *b, const char *kind, const char *text,
	const struct zone *z, struct imported *out, struct err *e)
{
	struct import_from from = {
		.name = "file.csv", .today = day_of(TODAY), .zone = z
	};
	char *copy = mem_text(text);

	from.file = fmemopen(copy, strlen(copy), "r");
	assert_non_null(from.file);
	bool ok = exchange_import(b, kind_find(kind, NULL), &from, out, e);
	fclose(from.file);
	free(copy);
	return ok;
}

static void acts_go_out_as_they_stand(void **state)
{
	static const struct {
		const char *kind, *text;
	} row[] = {
		{ "treatments",
			"farm,block,pest,date,started_at,ended_at,border,product,"
			"registration,amount,amount_unit,area_ha,applicator,"
			"certificate,rei_hours,phi_days,job,note\r\n"
			"Nethermoss,Slip,,2025-02-28,,,no,,,,,,,,,,,\r\n"
			"Quarle Top,Bank,OFM,2026-07-20,2026-07-19T23:30-07:00,"
			"2026-07-20T01:15-07:00,yes,as typed,12-3,2.5,l,0.5000,Ida,C "
			"7,0,0,night,calm\r\n"
			"Quarle Top,Bank,OFM,2026-07-20,2026-07-19T23:30-07:00,"
			"2026-07-20T01:15-07:00,yes,as typed,12-3,2.5,l,0.5000,Ida,C "
			"7,0,0,night,calm\r\n" },
		{ "picks", "farm,block,date,done,note\r\n"
			   "Quarle Top,Bank,2026-07-21,yes,\r\n"
			   "Quarle Top,Bank,2026-09-03,no,the red ones\r\n" },
		{ "fruit-checks",
			"farm,block,pest,date,part,tree,looked_at,stung,entered,note"
			"\r\nQuarle Top,Slip,CM,2026-07-21,fruit,top,300,0,0,\r\n"
			"Quarle Top,Slip,,2026-07-21,shoots,,50,,3,n\r\n" },
		{ "dispensers", "farm,block,pest,up,down,per_ha,type,note\r\n"
				"Quarle Top,Slip,CM,2025-04-20,2025-09-30,1000,"
				"hand-tied,\r\n"
				"Quarle Top,Slip,CM,2026-04-20,2026-10-01,2.5000,"
				"aerosol,n\r\n"
				"Quarle Top,Slip,,2026-05-01,,,,\r\n" },
		{ "answers",
			"farm,block,pest,trap,date,decided,decision,note\r\n"
			"Quarle Top,Slip,CM,,2026-07-20,2026-07-20,looked,\r\n"
			"Quarle Top,Slip,CM,1,2026-07-20,2026-07-21,treated,n\r\n" },
		/* trap 1 stands in Slip now */
		{ "answers",
			"farm,block,pest,trap,date,decided,decision,note\r\n"
			"Quarle Top,Bank,CM,1,2026-07-20,2026-07-21,left,moved\r\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		must_take(b, row[i].kind, row[i].text);
		char *got = give(b, row[i].kind);
		expect_text(row[i].kind, got, row[i].text);
		assert_true(take(b, row[i].kind, got, &out, &e));
		if (out.n_new || out.n_changed)
			fail_msg("%s: %d new, %d changed", row[i].kind, (int)out.n_new,
				(int)out.n_changed);
		imported_free(&out);
		free(got);
		book_close(b);
	}
}

static void times_are_read_by_local_clocks(void **state)
{
	static const struct {
		const char *why, *date, *started, *ended, *want;
	} row[] = {
		{ "with an offset", "2026-07-20", "", "2026-07-20T10:30-07:00",
			",,2026-07-20T10:30-07:00," },
		{ "UTC by its letter", "2026-07-20", "", "2026-07-20T10:30Z",
			",,2026-07-20T10:30+00:00," },
		{ "local", "2026-07-20", "", "2026-07-20T10:30",
			",,2026-07-20T10:30+02:00," },
		{ "an hour alone", "2026-07-20", "9:05", "10:30",
			",2026-07-20T09:05+02:00,2026-07-20T10:30+02:00," },
		{ "over midnight", "2026-07-20", "23:30", "01:15",
			",2026-07-19T23:30+02:00,2026-07-20T01:15+02:00," },
		{ "an hour that clocks showed twice", "2025-10-26", "", "02:30",
			",,2025-10-26T02:30+02:00," },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		char text[256];
		snprintf(text, sizeof text,
			"farm,block,date,started_at,ended_at\nQuarle Top,Bank,%s,%s,"
			"%s\n",
			row[i].date, row[i].started, row[i].ended);
		if (!take_by(b, "treatments", text, &clocks, &out, &e))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		char *got = give(b, "treatments");
		if (!strstr(got, row[i].want))
			fail_msg("%s: %s", row[i].why, got);
		free(got);
		imported_free(&out);
		book_close(b);
	}
}

static void without_a_zone_a_time_is_utc(void **state)
{
	struct book *b = farm_book();

	(void)state;
	must_take(b, "treatments",
		TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,x,12,14\n");
	char *got = give(b, "treatments");
	assert_non_null(strstr(got, ",2026-07-20T10:30+00:00,"));
	free(got);
	book_close(b);
}

static void a_wrong_value_is_named_with_its_cure(void **state)
{
#define AT_LINE "file.csv, line 2, column "
#define HOUR                                                                           \
	"it takes an hour such as 0730 or 07:30, with the date where it is another: "  \
	"2026-08-20T23:30, or 2026-08-20T23:30-07:00 with what the clocks were "       \
	"ahead of UTC"
	static const struct {
		const char *kind, *text, *want;
	} row[] = {
		{ "treatments", "farm,block,date\nMoor,Bank,2026-07-20\n",
			AT_LINE
			"farm: \"Moor\" is not in the book; it has: Nethermoss, "
			"Quarle Top" },
		{ "treatments", "farm,block,date\nQuarle Top,Pond,2026-07-20\n",
			AT_LINE "block: \"Pond\" is no block of Quarle Top, which has: "
				"Bank, Slip" },
		{ "treatments", TREATMENTS "Quarle Top,Bank,2026-07-20,24:00,x,12,14\n",
			AT_LINE "ended_at: \"24:00\" is not right; " HOUR },
		{ "treatments", TREATMENTS "Quarle Top,Bank,2026-07-20,103,x,12,14\n",
			AT_LINE "ended_at: \"103\" is not right; " HOUR },
		{ "treatments",
			TREATMENTS
			"Quarle Top,Bank,2026-07-20,2026-07-21T00:00Z,x,12,14\n",
			AT_LINE
			"date: \"2026-07-20\" is not the day on which it ended, "
			"2026-07-21; the date is that day" },
		{ "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,x,8785,14\n",
			AT_LINE "rei_hours: \"8785\" is not right; it takes a whole "
				"number from 0 to 8784" },
		{ "treatments",
			TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,x,12,367\n",
			AT_LINE "phi_days: \"367\" is not right; it takes a whole "
				"number from 0 to 366" },
		{ "treatments",
			"farm,block,date,started_at\n"
			"Quarle Top,Bank,2026-07-20,2026-07-21T00:00Z\n",
			AT_LINE
			"started_at: \"2026-07-21T00:00Z\" lies after its end" },
		{ "picks", "farm,block,date,done\nQuarle Top,Bank,2026-07-22,yes\n",
			AT_LINE "date: \"2026-07-22\" lies after today, 2026-07-21" },
		{ "fruit-checks",
			"farm,block,date,looked_at,stung,entered\n"
			"Quarle Top,Bank,2026-07-20,10,8,3\n",
			AT_LINE
			"entered: \"3\" makes 11 stung or entered, but only 10 were "
			"looked at; one that is both counts as entered" },
		{ "fruit-checks",
			"farm,block,date,looked_at,entered\n"
			"Quarle Top,Bank,2026-07-22,10,3\n",
			AT_LINE "date: \"2026-07-22\" lies after today, 2026-07-21" },
		{ "dispensers",
			"farm,block,up,down\n"
			"Quarle Top,Bank,2026-07-20,2026-07-19\n",
			AT_LINE "down: \"2026-07-19\" lies before they were put up, "
				"2026-07-20" },
		{ "answers",
			"farm,block,pest,trap,date,decision\n"
			"Quarle Top,Bank,CM,3,2026-07-20,left\n",
			AT_LINE "trap: \"3\" is no CM trap of Quarle Top" },
		{ "answers",
			"farm,block,pest,date,decided,decision\n"
			"Quarle Top,Bank,CM,2026-07-20,2026-07-19,left\n",
			AT_LINE "decided: \"2026-07-19\" lies before the alert, "
				"2026-07-20" },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, row[i].kind, row[i].want, row[i].text, row[i].want);
	book_close(b);
}

static void a_row_corrects_the_treatment_that_it_is_about(void **state)
{
	struct row_changes changes = { 0 };
	struct treatments got = { 0 };
	struct imported out = { 0 };
	struct book *b = farm_book();
	struct err e = { 0 };

	(void)state;
	must_take(b, "treatments",
		TREATMENTS "Quarle Top,Bank,2026-07-20,10:30,x,12,14\n"
			   "Quarle Top,Bank,2026-07-20,10:30,y,12,7\n");
	assert_true(take(b, "treatments",
		"farm,block,date,product,phi_days\n"
		"Quarle Top,Bank,2026-07-20,y,21\n"
		"Quarle Top,Bank,2026-07-20,z,1\n",
		&out, &e));
	assert_int_equal(out.n_changed, 1);
	assert_int_equal(out.n_new, 1);
	assert_true(book_treatments(b, 0, 0, day_of(TODAY), &got, &e));
	assert_int_equal(got.n, 3);
	assert_int_equal(got.items[1].phi_days, 21);
	assert_int_equal(got.items[1].rei_hours, 12); /* no column, no change */
	assert_true(book_row_changes(b, "treatment", got.items[1].id, &changes, &e));
	assert_string_equal(changes.items[0].field, "phi_days");
	assert_string_equal(changes.items[0].before, "7");
	free(changes.items);
	free(got.items);
	imported_free(&out);
	book_close(b);
}

/* Two loads of one product on one day are two treatments. */
static void each_row_is_about_a_treatment_of_its_own(void **state)
{
#define LOAD "Quarle Top,Bank,2026-07-20,10:30,x,12,14\n"
	struct imported out = { 0 };
	struct book *b = farm_book();
	struct err e = { 0 };

	(void)state;
	must_take(b, "treatments", TREATMENTS LOAD LOAD);
	assert_true(take(b, "treatments", TREATMENTS LOAD LOAD LOAD, &out, &e));
	assert_int_equal(out.n_same, 2);
	assert_int_equal(out.n_new, 1);
	imported_free(&out);
	book_close(b);
}

static void add_load(struct buf *out, int i, int phi_days)
{
	buf_addf(out, "Quarle Top,%s,2026-07-20,10:30,oil %d,12,%d\n",
		i % 2 ? "Bank" : "Slip", i % 3, phi_days);
}

/* Loads of three products in two blocks lie mixed; the file has them backwards, those
 * that it corrects last. */
static void a_row_finds_its_own_among_many(void **state)
{
	enum { ROWS = 60 };
	struct buf first = { 0 }, then = { 0 }, fewer = { 0 };
	struct imported out = { 0 };
	struct book *b = farm_book();
	struct err e = { 0 };

	(void)state;
	buf_add(&first, TREATMENTS);
	buf_add(&then, TREATMENTS);
	buf_add(&fewer, "farm,block,date,phi_days\n");
	for (int i = 0; i < ROWS; i++)
		add_load(&first, i, i);
	for (int i = ROWS - 1; i >= 0; i--)
		if (i % 10 != 0)
			add_load(&then, i, i);
	for (int i = ROWS - 10; i >= 0; i -= 10)
		add_load(&then, i, i + 100);
	for (int i = ROWS - 1; i >= 0; i--)
		buf_addf(&fewer, "Quarle Top,%s,2026-07-20,%d\n",
			i % 2 ? "Bank" : "Slip", i % 10 ? i : i + 100);
	must_take(b, "treatments", first.text);
	assert_true(take(b, "treatments", then.text, &out, &e));
	assert_int_equal(out.n_new, 0);
	assert_int_equal(out.n_changed, ROWS / 10);
	assert_int_equal(out.n_same, ROWS - ROWS / 10);
	imported_free(&out);
	out = (struct imported){ 0 };
	assert_true(take(b, "treatments", fewer.text, &out, &e));
	assert_int_equal(out.n_same, ROWS);
	imported_free(&out);
	buf_free(&first);
	buf_free(&then);
	buf_free(&fewer);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(acts_go_out_as_they_stand),
		cmocka_unit_test(times_are_read_by_local_clocks),
		cmocka_unit_test(without_a_zone_a_time_is_utc),
		cmocka_unit_test(a_wrong_value_is_named_with_its_cure),
		cmocka_unit_test(a_row_corrects_the_treatment_that_it_is_about),
		cmocka_unit_test(each_row_is_about_a_treatment_of_its_own),
		cmocka_unit_test(a_row_finds_its_own_among_many),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
