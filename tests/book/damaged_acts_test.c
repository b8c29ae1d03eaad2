/* What was done in blocks, in rows that another program or a failing disk bent. Left
 * out they would take a bar or a preharvest interval along, unsaid: they are refused by
 * name, whatever span and farm is asked for. */
#include "crafted.h"

#define DAY "2024-10-04" /* of all rows of the book */

enum { ASKED_FIRST = CRAFTED_DAY - 400, ASKED_LAST = 100000 };

static void fill(struct desk *d)
{
	struct disruption up = disruption_blank;
	struct fruit_check c = fruit_check_blank;
	struct answer a = answer_blank;
	struct pick p = pick_blank;

	craft(d, "UPDATE treatment SET started_at = '" DAY "T06:00Z', started_east = "
		 "0, ended_at = '" DAY "T10:30Z', ended_east = 0, rei_hours = 24, "
		 "phi_days = 14");
	up.block = c.block = a.block = p.block = d->block;
	up.up = c.day = a.day = a.on = p.day = CRAFTED_DAY;
	a.pest = d->pest;
	c.looked_at = 100;
	c.stung = c.entered = 2;
	must(book_put_pick(d->book, &p, e));
	must(book_put_fruit_check(d->book, &c, e));
	must(book_put_disruption(d->book, &up, e));
	must(book_put_answer(d->book, &a, e));
}

#define READER(name, list, call)                                                       \
	static bool name(struct book *b, int64_t farm, struct err *e)                  \
	{                                                                              \
		struct list all = { 0 };                                               \
		bool ok = call(b, farm, ASKED_FIRST, ASKED_LAST, &all, e);             \
                                                                                       \
		free(all.items);                                                       \
		return ok;                                                             \
	}

READER(treatments, treatments, book_treatments)
READER(picks, picks, book_picks)
READER(checks, fruit_checks, book_fruit_checks)
READER(dispensers, disruptions, book_disruptions)
READER(answers, answers, book_answers)

static bool blocks(struct book *b, int64_t farm, struct err *e)
{
	struct blocks all = { 0 };
	bool ok = book_blocks(b, farm, &all, e);

	free(all.items);
	return ok;
}

static bool traps(struct book *b, int64_t farm, struct err *e)
{
	struct traps all = { 0 };
	bool ok = book_traps(b, farm, &all, e);

	free(all.items);
	return ok;
}

static const struct table {
	bool (*read)(struct book *b, int64_t farm, struct err *e);
	const char *name;
} tables[] = {
	{ treatments, "treatment" },
	{ picks, "pick" },
	{ checks, "fruit_check" },
	{ dispensers, "dispensers" },
	{ answers, "answer" },
};

/* The book after `sql`: refused with the table and what it says, for one farm and
 * all. */
static void refused_after(const struct table *t, const char *sql, const char *says)
{
	char table[64];
	struct desk d;

	snprintf(table, sizeof table, "in the table %s, ", t->name);
	fill(&d);
	for (int all = 0; all < 2; all++) {
		struct err err = { 0 };
		if (!t->read(d.book, all ? 0 : d.farm, &err))
			fail_msg("before %s: %s", sql, err.text);
	}
	if (raw(d.book, sql) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(d.book->db));
	for (int all = 0; all < 2; all++) {
		struct err err = { 0 };
		bool read = t->read(d.book, all ? 0 : d.farm, &err);
		assert_damaged(sql, read, &err, table);
		assert_damaged(sql, read, &err, says);
	}
	desk_clear(&d);
}

/* A letter for a digit, a day of no month, years that a book does not have: as texts
 * they stand before, within or after every span. */
static void no_act_without_a_day_is_left_out(void **state)
{
	static const char *const days[] = { "20x4-10-04", "2O24-10-04", "2024-02-30",
		"2024-10-04 ", " 2024-10-04", "0000-00-00", "1899-12-31", "2200-01-01",
		"soon", "" };

	(void)state;
	for (size_t t = 0; t < sizeof tables / sizeof *tables; t++)
		for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
			char sql[128], says[64];
			snprintf(sql, sizeof sql, "UPDATE %s SET day = '%s'",
				tables[t].name, days[i]);
			snprintf(says, sizeof says, "day is \"%s\"", days[i]);
			refused_after(&tables[t], sql, says);
		}
	refused_after(&tables[3], "UPDATE dispensers SET until = '0000-00-00'",
		"until is \"0000-00-00\"");
	refused_after(&tables[3], "UPDATE dispensers SET until = '" DAY "x'",
		"until is \"" DAY "x\"");
}

static void no_dispensers_are_what_they_cannot_be(void **state)
{
	(void)state;
	refused_after(&tables[3], "UPDATE dispensers SET until = date(day, '-1 day')",
		"until is \"");
	refused_after(&tables[3], "UPDATE dispensers SET per_ha_x100 = 0",
		"per_ha_x100 is \"0\"");
	refused_after(&tables[3], "UPDATE dispensers SET per_ha_x100 = 10000000",
		"per_ha_x100 is \"10000000\"");
}

static void no_act_of_a_block_that_is_gone_is_left_out(void **state)
{
	(void)state;
	for (size_t t = 0; t < sizeof tables / sizeof *tables; t++) {
		char sql[128];
		snprintf(sql, sizeof sql, "UPDATE %s SET block = 77", tables[t].name);
		refused_after(&tables[t], sql, "block is \"77\"");
	}
}

static void no_pick_goes_for_none(void **state)
{
	(void)state;
	refused_after(&tables[1], "UPDATE pick SET id = 0", "id is \"0\"");
}

/* A run or a bar is told by farm, block and trap: none of them may hang in the air. */
static void nothing_that_a_bar_is_told_by_hangs_in_the_air(void **state)
{
	static const struct table block = { blocks, "block" }, trap = { traps, "trap" };

	(void)state;
	refused_after(&block, "UPDATE block SET farm = 77", "farm is \"77\"");
	refused_after(&trap, "UPDATE trap SET farm = 77", "farm is \"77\"");
	refused_after(&trap, "UPDATE trap SET block = 77", "block is \"77\"");
	refused_after(&trap,
		"INSERT INTO farm (id, name, uid, changed_at, changed_by) VALUES (9, "
		"'Drumsorrel', randomblob(16), '2026-07-21T07:42:11.123Z', '');"
		"UPDATE block SET farm = 9",
		"block is \"1\"");
}

static void no_treatment_ends_on_another_day_than_its_own(void **state)
{
	static const struct {
		const char *set, *says;
	} row[] = {
		{ "ended_at = '1900-01-01T00:00Z'",
			"ended_at is \"1900-01-01T00:00Z\"" },
		{ "ended_at = '2024-10-03T23:59Z'",
			"ended_at is \"2024-10-03T23:59Z\"" },
		{ "ended_at = '2024-10-05T00:00Z'",
			"ended_at is \"2024-10-05T00:00Z\"" },
		{ "ended_at = '" DAY "T25:30Z'", "ended_at is \"" DAY "T25:30Z\"" },
		{ "ended_at = '" DAY "T10:30'", "ended_at is \"" DAY "T10:30\"" },
		{ "ended_at = '" DAY "T10:30X'", "ended_at is \"" DAY "T10:30X\"" },
		{ "ended_at = 'noon'", "ended_at is \"noon\"" },
		{ "ended_east = 840", "ended_at is" }, /* the next day there */
		{ "ended_east = 5940", "ended_east is \"5940\"" }, /* 99 hours */
		{ "ended_east = -841", "ended_east is \"-841\"" },
		{ "started_at = '" DAY "T10:31Z'", "started_at is" },
		{ "started_east = 841", "started_east is \"841\"" },
		{ "ended_at = NULL, started_at = '2024-10-05T00:00Z'",
			"started_at is" },
		/* Its day says it lies long before what is asked for. */
		{ "day = '1926-10-04'", "ended_at is \"" DAY "T10:30Z\"" },
		{ "rei_hours = 8785", "rei_hours is \"8785\"" },
		{ "rei_hours = -1", "rei_hours is \"-1\"" },
		{ "phi_days = 367", "phi_days is \"367\"" },
		{ "phi_days = -1", "phi_days is \"-1\"" },
		{ "border = 2", "border is \"2\"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char sql[160];
		snprintf(sql, sizeof sql, "UPDATE treatment SET %s", row[i].set);
		refused_after(&tables[0], sql, row[i].says);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_act_without_a_day_is_left_out),
		cmocka_unit_test(no_dispensers_are_what_they_cannot_be),
		cmocka_unit_test(no_act_of_a_block_that_is_gone_is_left_out),
		cmocka_unit_test(no_pick_goes_for_none),
		cmocka_unit_test(nothing_that_a_bar_is_told_by_hangs_in_the_air),
		cmocka_unit_test(no_treatment_ends_on_another_day_than_its_own),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
