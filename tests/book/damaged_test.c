/* Visits, settings and texts that no mothtally wrote: by somebody else, or by a disk
 * that fails. They are refused by name; nothing is read out of them. */
#include "crafted.h"

static void tell_nobody(void *arg, const char *text)
{
	(void)arg;
	print_error("%s\n", text);
}

static bool tell_later_ones(
	void *arg, const struct visit *v, const struct visit_words *w)
{
	(void)w;
	if (v->day != CRAFTED_DAY)
		*(bool *)arg = true;
	return true;
}

static const struct damage bad_visits[] = {
	{ "UPDATE visit SET outcome = 'eaten'", "outcome is \"eaten\"" },
	{ "UPDATE visit SET outcome = ''", "outcome is \"\"" },
	{ "UPDATE visit SET outcome = char(27) || '[2J'", "outcome is \"?[2J\"" },
	{ "UPDATE visit SET reason = 'eaten'", "reason is \"eaten\"" },
	{ "UPDATE visit SET reason = 'down'", "reason is \"down\"" },
	{ "UPDATE visit SET count = 4294967299", "count is \"4294967299\"" },
	{ "UPDATE visit SET count = 10000", "count is \"10000\"" },
	{ "UPDATE visit SET count = -2", "count is \"-2\"" },
	{ "UPDATE visit SET count = NULL", "count is \"\"" },
	{ "UPDATE visit SET females = 4294967296", "females is" },
	{ "UPDATE visit SET others = 10000", "others is \"10000\"" },
	{ "UPDATE visit SET outcome = 'skipped'", "count is \"3\"" },
	{ "UPDATE visit SET stirred = 2", "stirred is \"2\"" },
	{ "UPDATE visit SET day = 'yesterday'", "day is \"yesterday\"" },
	{ "UPDATE visit SET day = '2024-10-12'", "day is \"2024-10-12\"" },
	{ "UPDATE visit SET trap = 2", "day is \"2024-10-11\"" },
	{ "UPDATE visit SET trap = 0", "trap is \"0\"" },
	{ "UPDATE visit SET trap = 4294967297", "trap is \"4294967297\"" },
};

static void visit_that_cannot_be_is_refused(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof bad_visits / sizeof *bad_visits; i++) {
		const struct damage *bad = &bad_visits[i];
		char sql[256];
		struct visits all = { 0 };
		struct visit_words w;
		struct err e = { 0 };
		struct visit v;
		struct desk d;
		bool told = false;
		snprintf(sql, sizeof sql, "%s WHERE count = 3", bad->sql);
		craft(&d, sql);
		bool read = book_visit(d.book, d.trap, CRAFTED_DAY + 7, &v, &w, &e);
		assert_damaged(sql, read, &e, bad->says);
		read = book_visits(d.book, 0, 0, 30000, &all, &e);
		assert_damaged(sql, read, &e, bad->says);
		if (!strstr(sql, "trap =")) { /* the walk goes from trap to trap */
			read = book_each_visit(
				d.book, 0, 0, 30000, tell_later_ones, &told, &e);
			assert_damaged(sql, read, &e, bad->says);
			assert_false(told);
		}
		free(all.items);
		desk_clear(&d);
	}
}

static void visit_under_an_id_of_no_day_is_refused(void **state)
{
	static const struct damage row[] = {
		{ "UPDATE visit SET id = -9000000000000000000",
			"id is \"-9000000000000000000\"" },
		{ "UPDATE visit SET id = 0", "id is \"0\"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };
		int32_t days[4];
		struct desk d;
		char sql[128];
		size_t got;
		snprintf(sql, sizeof sql, "%s WHERE count = 3", row[i].sql);
		craft(&d, sql);
		bool read =
			book_visit_days(d.book, 0, CRAFTED_DAY + 30, days, 4, &got, &e);
		assert_damaged(sql, read, &e, row[i].says);
		desk_clear(&d);
	}
}

static void settings_out_of_range_are_refused(void **state)
{
	static const struct damage row[] = {
		{ "('open_days', '7')", "the setting open_days is \"7\"" },
		{ "('read_num', '3'), ('read_den', '2')", "3 of 2 traps" },
		{ "('join_nights', '000000000000000000000000000000009x')",
			"join_nights" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };
		struct limits limits;
		struct desk d;
		char sql[512];
		snprintf(sql, sizeof sql,
			"WITH s (name, value) AS (VALUES %s) INSERT INTO setting "
			"(name, value, uid, changed_at, changed_by) SELECT name, "
			"value, randomblob(16), '2026-07-21T07:42:11.123Z', '' FROM s",
			row[i].sql);
		craft(&d, sql);
		bool read = book_limits(d.book, &limits, &e);
		assert_damaged(sql, read, &e, row[i].says);
		assert_damaged(sql, read, &e, "in the table setting");
		desk_clear(&d);
	}
}

static void history_out_of_range_is_not_taken_back(void **state)
{
	static const struct damage row[] = {
		{ "old = json_replace(old, '$.count', 4294967299)",
			"in the table history, count is \"4294967299\"" },
		{ "old = json_replace(old, '$.outcome', 'eaten')",
			"outcome is \"eaten\"" },
		{ "old = json_replace(old, '$.count', 'four')", "count is \"four\"" },
		{ "day = '2024-10-04'", "in the table history" },
		{ "uid = x'00'", "in the table history, uid is \"?\"" },
		{ "old = json_replace(old, '$.trap', 2)", "in the table history" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		struct undone u;
		struct visit v;
		struct desk d;
		char sql[256];
		craft(&d, "");
		v = counted(d.trap, CRAFTED_DAY + 7, 4);
		must(book_save_visit(d.book, &v, NULL, e));
		snprintf(sql, sizeof sql,
			"UPDATE history SET %s WHERE kind = 'visit' AND old NOTNULL",
			row[i].sql);
		assert_int_equal(raw(d.book, sql), SQLITE_OK);
		bool done = book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, &err);
		assert_damaged(sql, done, &err, row[i].says);
		must(book_visit(d.book, d.trap, CRAFTED_DAY + 7, &v, NULL, e));
		assert_int_equal(v.count, 4);
		desk_clear(&d);
	}
}

static void texts_of_the_book_are_made_harmless(void **state)
{
	struct farms farms = { 0 };
	struct visit_words w;
	struct visit v;
	struct desk d;

	(void)state;
	craft(&d, "UPDATE farm SET name = CAST('a' || char(27) || '[2J' || char(8238) "
		  "|| CAST(x'F09F' AS TEXT) || char(0) || char(233) AS TEXT);"
		  "UPDATE visit SET scout = printf('%.30c', 'x'), "
		  "note = printf('%.238c', 'x') || char(233, 233)");
	must(book_farms(d.book, &farms, e));
	assert_string_equal(farms.items[0].name, "a?[2J????\xC3\xA9");
	must(book_visit(d.book, d.trap, CRAFTED_DAY, &v, &w, e));
	assert_int_equal(strlen(w.scout), SCOUT_BYTES - 1);
	assert_int_equal(strlen(w.note), 238); /* never half a character */
	free(farms.items);
	desk_clear(&d);
}

/* What somebody's program put into a note goes through the history unharmed. */
static void control_in_a_note_does_not_break_the_history(void **state)
{
	struct undone u;
	struct desk d;

	(void)state;
	craft(&d, "UPDATE visit SET note = char(7) || 'wet' WHERE count = 3");
	struct visit v = counted(d.trap, CRAFTED_DAY + 7, 4);
	struct visit_words w = { "JR", "dry" };
	must(book_save_visit(d.book, &v, &w, e));
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM history WHERE old NOTNULL AND "
				 "NOT json_valid(old)",
				 -1),
		0);
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e));
	must(book_visit(d.book, v.trap, v.day, &v, &w, e));
	assert_string_equal(w.note, "?wet");
	desk_clear(&d);
}

/* U+FFFD itself, as it comes along when a name is copied out of a torn file: a letter
 * like any other, neither refused nor taken for damage. */
static void the_sign_for_a_lost_letter_is_a_letter(void **state)
{
	static const char typed[] = "caf\xEF\xBF\xBD";
	struct visit_words w = { "JR", "" }, got;
	struct err err = { 0 };
	struct desk d;
	struct visit v;
	int found = 1;

	(void)state;
	craft(&d, "");
	v = counted(d.trap, CRAFTED_DAY + 7, 3);
	strcpy(w.note, typed);
	must(book_save_visit(d.book, &v, &w, e));
	must(book_visit(d.book, v.trap, v.day, &v, &got, e));
	assert_string_equal(got.note, typed);
	assert_true(book_check(d.book, 30000, tell_nobody, NULL, &found, &err));
	assert_int_equal(found, 0);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(visit_that_cannot_be_is_refused),
		cmocka_unit_test(visit_under_an_id_of_no_day_is_refused),
		cmocka_unit_test(settings_out_of_range_are_refused),
		cmocka_unit_test(history_out_of_range_is_not_taken_back),
		cmocka_unit_test(texts_of_the_book_are_made_harmless),
		cmocka_unit_test(control_in_a_note_does_not_break_the_history),
		cmocka_unit_test(the_sign_for_a_lost_letter_is_a_letter),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
