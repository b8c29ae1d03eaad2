/* Hundreds of random entries over all tables: taken back, they leave what there was;
 * and what another person entered in between stays. */
#include "entries.h"

#include "base/buf.h"

enum { EDITS = 500 };

/* All rows of all tables that `where` holds for, with ids and uids. */
static char *content(struct book *b, const char *where)
{
	struct query tables, rows;
	struct buf out = { 0 }, sql = { 0 };

	query_start(&tables, b,
		"SELECT m.name, group_concat('quote(' || c.name || ')', ' || '','' || "
		"') FROM sqlite_schema m JOIN pragma_table_info(m.name) c WHERE "
		"m.type = 'table' AND m.name NOT LIKE 'sqlite%' AND m.name NOT IN "
		"('history', 'tombstone', 'origin', 'renamed', 'merged') AND "
		"c.name NOT LIKE 'changed_%' "
		"GROUP BY m.name ORDER BY m.name");
	while (query_row(&tables)) {
		const char *table = query_get_text(&tables);
		buf_clear(&sql);
		buf_addf(&sql, "SELECT %s FROM %s WHERE %s ORDER BY 1",
			query_get_text(&tables), table, where);
		query_start_once(&rows, b, sql.text);
		while (query_row(&rows))
			buf_addf(&out, "%s: %s\n", table, query_get_text(&rows));
		must(query_end(&rows, "", e));
	}
	must(query_end(&tables, "", e));
	buf_add(&out, "");
	buf_free(&sql);
	return out.text;
}

static void assert_same(const char *got, const char *want, unsigned seed)
{
	size_t at = 0;

	while (got[at] && got[at] == want[at])
		at++;
	if (got[at] != want[at]) {
		while (at > 0 && got[at - 1] != '\n')
			at--;
		fail_msg("seed %u:\n%.300s\nnot\n%.300s", seed, got + at, want + at);
	}
}

static void fill(struct dice *d, struct desk *desk, unsigned seed)
{
	bool same;

	*d = (struct dice){ desk, seed, 0 };
	desk_memory(desk);
	for (int i = 0; i < 60; i++)
		edit(d);
	struct station s = { .name = "Low gauge" };
	struct visit v = counted(desk->trap, DAY0 + 1, 3);
	struct weather_day w = { 0, DAY0 + 1, 4.7, 15.1, 'C' };
	must(book_put_station(desk->book, &s, e));
	w.station = s.id;
	book_add_visit(desk->book, &v, NULL, &same, NULL); /* if there is the trap */
	must(book_add_weather(desk->book, &w, &same, e));
	assert_int_equal(raw(desk->book, "DELETE FROM history"), SQLITE_OK);
}

static void all_entries_taken_back_give_the_start(void **state)
{
	(void)state;
	for (unsigned seed = 1; seed <= 12; seed++) {
		struct undone_step u;
		struct undone v;
		struct err err;
		struct desk desk;
		struct dice d;
		int64_t start;
		fill(&d, &desk, seed);
		must(book_latest_step(desk.book, &start, e));
		char *before = content(desk.book, "1");
		while (d.done < EDITS) {
			if (roll(&d, 12) == 0)
				edit_group(&d);
			else
				edit(&d);
			if (roll(&d, 6) == 0)
				book_undo_step(desk.book, NULL, start, &u, NULL);
			if (roll(&d, 20) == 0)
				book_undo_visit(desk.book,
					&(struct undo_reach){
						0, 0, DAY0, DAY0 + DAYS, NULL },
					&v, NULL);
		}
		char *between = content(desk.book, "1");
		assert_string_not_equal(between, before);
		while (book_undo_step(desk.book, NULL, start, &u, &err))
			continue;
		if (err.kind != ERR_NOT_FOUND)
			fail_msg("seed %u: %s", seed, err.text);
		char *after = content(desk.book, "1");
		assert_same(after, before, seed);
		free(before);
		free(between);
		free(after);
		desk_clear(&desk);
	}
}

static const char hers[] = "changed_by = 'Ida'";

static int64_t her_removals(struct book *b)
{
	return store_number(
		b, "SELECT count(*) FROM tombstone WHERE changed_by = 'Ida'", -1);
}

static void entries_of_another_person_stay_as_they_are(void **state)
{
	int undone = 0, refusals = 0;

	(void)state;
	for (unsigned seed = 101; seed <= 112; seed++) {
		struct undone_step u;
		struct err err;
		struct desk desk;
		struct dice d;
		int64_t start;
		bool more = true;
		fill(&d, &desk, seed);
		must(book_latest_step(desk.book, &start, e));
		while (d.done < EDITS / 4) {
			book_set_who(desk.book, roll(&d, 8) ? "JR" : "Ida");
			edit(&d);
		}
		book_set_who(desk.book, "JR");
		char *before = content(desk.book, hers);
		int64_t removed = her_removals(desk.book);
		while (more) {
			more = book_undo_step(desk.book, "JR", start, &u, &err);
			undone += more;
			char *after = content(desk.book, hers);
			assert_same(after, before, seed);
			assert_int_equal(her_removals(desk.book), removed);
			free(after);
		}
		assert_true(err.kind == ERR_NOT_FOUND || err.kind == ERR_INPUT);
		refusals += err.kind == ERR_INPUT;
		free(before);
		desk_clear(&desk);
	}
	assert_true(undone > 50 && refusals > 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(all_entries_taken_back_give_the_start),
		cmocka_unit_test(entries_of_another_person_stay_as_they_are),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
