/* Entries of every table, taken back step by step. */
#include "fixture.h"

#include "book/steps.h"
#include "book/weather.h"

static int64_t latest(struct book *b)
{
	int64_t step;

	must(book_latest_step(b, &step, e));
	return step;
}

static void book_new_one_has_no_steps(void **state)
{
	struct undone_step u;
	struct book *b;

	(void)state;
	must(b = book_open(":memory:", BOOK_CREATE, "", e));
	assert_int_equal(latest(b), 0);
	refused(book_undo_step(b, NULL, 0, &u, e), ERR_NOT_FOUND, "nothing left");
	book_close(b);
}

static void book_undo_takes_out_what_was_put_in(void **state)
{
	struct undone_step u;
	struct traps traps = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	desk_add_trap(&d, "7");
	must(book_undo_step(d.book, "JR", start, &u, e));
	assert_string_equal(u.kind, "trap");
	assert_string_equal(u.name, "trap 7 of Hollow Reach");
	assert_int_equal(u.rows, 1);
	assert_true(u.was_new);
	must(book_traps(d.book, 0, &traps, e));
	assert_int_equal(traps.n, 1);
	refused(book_undo_step(d.book, "JR", start, &u, e), ERR_NOT_FOUND, "left");
	must(book_undo_step(d.book, "JR", 0, &u, e)); /* what was before it */
	assert_string_equal(u.name, "trap 1 of Hollow Reach");
	free(traps.items);
	desk_clear(&d);
}

static void book_undo_brings_back_a_removed_row_with_its_id_and_uid(void **state)
{
	static const char row[] =
		"SELECT count(*) FROM block WHERE id = 1 AND "
		"name = 'Long rows' AND area_x100 IS NULL AND hex(uid) "
		"= (SELECT value FROM setting WHERE name = 'uid')";
	struct undone_step u;
	struct desk d;

	(void)state;
	desk_memory(&d);
	assert_int_equal(raw(d.book, "INSERT INTO setting (name, value, uid, "
				     "changed_at, changed_by) SELECT 'uid', hex(uid), "
				     "randomblob(16), changed_at, '' FROM block"),
		SQLITE_OK);
	must(book_remove(d.book, "trap", d.trap, e));
	must(book_remove(d.book, "block", d.block, e));
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM tombstone", 9), 2);
	must(book_undo_step(d.book, "JR", 0, &u, e));
	assert_string_equal(u.name, "block Long rows of Hollow Reach");
	assert_false(u.was_new);
	assert_int_equal(store_number(d.book, row, 0), 1);
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM tombstone", 9), 1);
	desk_clear(&d);
}

static void book_undo_gives_a_changed_row_its_older_values(void **state)
{
	struct undone_step u;
	struct lure_kinds lures = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct lure_kind l = { .id = d.lure,
		.name = "it's \"new\"",
		.life_days = 30,
		.stock = { 12, 20000, 3 },
		.retired = true };
	must(book_put_lure(d.book, &l, e));
	must(book_undo_step(d.book, "JR", 0, &u, e));
	assert_string_equal(u.name, "lure T1 test");
	must(book_lures(d.book, &lures, e));
	for (size_t i = 0; i < lures.n; i++) {
		struct lure_kind *k = &lures.items[i];
		if (k->id != d.lure)
			continue;
		assert_string_equal(k->name, "T1 test");
		assert_int_equal(k->pest, d.pest);
		assert_int_equal(k->life_days, 21);
		assert_int_equal(k->stock.n, -1);
		assert_int_equal(k->stock.day, DAY_NONE);
		assert_false(k->retired);
	}
	free(lures.items);
	desk_clear(&d);
}

static void book_undo_takes_a_group_back_as_one(void **state)
{
	struct undone_step u;
	struct traps traps = { 0 };
	struct visit got;
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	must(book_begin(d.book, e));
	struct visit pulled = without_count(d.trap, 20000, OUTCOME_PULLED);
	must(book_save_visit(d.book, &pulled, NULL, e));
	int64_t other = desk_add_trap(&d, "1b");
	struct visit hung = without_count(other, 20000, OUTCOME_HUNG);
	must(book_save_visit(d.book, &hung, NULL, e));
	must(book_commit(d.book, e));
	struct visit v = counted(other, 20007, 3);
	must(book_save_visit(d.book, &v, NULL, e));

	must(book_undo_step(d.book, "JR", start, &u, e));
	assert_string_equal(u.name, "visit of 2024-10-11 at trap 1b, Hollow Reach");
	must(book_undo_step(d.book, "JR", start, &u, e));
	assert_int_equal(u.rows, 3);
	assert_string_equal(u.kind, "trap"); /* and not the visit that came first */
	assert_string_equal(u.name, "trap 1b of Hollow Reach");
	assert_true(u.was_new);
	must(book_traps(d.book, 0, &traps, e));
	assert_int_equal(traps.n, 1);
	refused(book_visit(d.book, d.trap, 20000, &got, NULL, e), ERR_NOT_FOUND, "no");
	refused(book_undo_step(d.book, "JR", start, &u, e), ERR_NOT_FOUND, "left");
	free(traps.items);
	desk_clear(&d);
}

static void book_undo_of_steps_and_of_visits_go_side_by_side(void **state)
{
	struct undone_step u;
	struct undone v;
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	struct visit one = counted(d.trap, 20000, 4), two = counted(d.trap, 20001, 5);
	must(book_save_visit(d.book, &one, NULL, e));
	must(book_save_visit(d.book, &two, NULL, e));
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 20001, 20001, "JR" }, &v, e));
	must(book_undo_step(d.book, "JR", start, &u, e));
	assert_string_equal(u.name, "visit of 2024-10-04 at trap 1, Hollow Reach");
	refused(book_undo_step(d.book, "JR", start, &u, e), ERR_NOT_FOUND, "left");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &v, e),
		ERR_NOT_FOUND, "left");
	desk_clear(&d);
}

static void book_undo_leaves_what_files_brought_of_visits_and_weather(void **state)
{
	struct undone_step u;
	struct weather_days days = { 0 };
	struct desk d;
	bool same;

	(void)state;
	desk_memory(&d);
	struct station s = { .name = "Low gauge" };
	must(book_put_station(d.book, &s, e));
	int64_t start = latest(d.book);
	struct visit v = counted(d.trap, 20000, 4);
	struct weather_day w = { s.id, 20000, 5, 15, 'C' },
			   x = { s.id, 20001, 6, 16, 'C' };
	must(book_add_visit(d.book, &v, NULL, &same, e));
	must(book_add_weather(d.book, &w, &same, e));
	refused(book_undo_step(d.book, NULL, start, &u, e), ERR_NOT_FOUND, "left");
	must(book_save_weather(d.book, &x, e));
	x.max = 17;
	must(book_save_weather(d.book, &x, e));
	must(book_remove_weather(d.book, s.id, 20001, e));
	must(book_undo_step(d.book, NULL, start, &u, e));
	assert_string_equal(u.name, "day of weather 2024-10-05 of Low gauge");
	must(book_weather(d.book, s.id, 20001, 20001, &days, e));
	assert_true(days.n == 1 && days.items[0].max == 17);
	must(book_undo_step(d.book, NULL, start, &u, e));
	must(book_weather(d.book, s.id, 20001, 20001, &days, e));
	assert_true(days.n == 1 && days.items[0].max == 16);
	must(book_undo_step(d.book, NULL, start, &u, e));
	assert_true(u.was_new);
	must(book_weather(d.book, s.id, 0, 30000, &days, e));
	assert_int_equal(days.n, 1);
	free(days.items);
	desk_clear(&d);
}

/* Two programs, and the same person at both. */
static void book_undo_own_leaves_what_another_program_did(void **state)
{
	struct farm f = { .season_start = 101, .name = "Low Ground" };
	struct undone_step u;
	struct book *other;
	struct desk d;

	(void)state;
	desk_disk(&d);
	must(other = book_open(d.path, BOOK_EXISTING, "JR", e));
	refused(book_undo_own(other, &u, e), ERR_NOT_FOUND, "nothing left");
	desk_add_trap(&d, "7");
	refused(book_undo_own(other, &u, e), ERR_NOT_FOUND, "nothing left");
	must(book_put_farm(other, &f, e));
	desk_add_trap(&d, "8");
	must(book_undo_own(other, &u, e));
	assert_string_equal(u.kind, "farm");
	refused(book_undo_own(other, &u, e), ERR_NOT_FOUND, "nothing left");
	must(book_undo_own(d.book, &u, e));
	assert_string_equal(u.name, "trap 8 of Hollow Reach");
	must(book_undo_own(d.book, &u, e));
	assert_string_equal(u.name, "trap 7 of Hollow Reach");
	book_close(other);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_new_one_has_no_steps),
		cmocka_unit_test(book_undo_takes_out_what_was_put_in),
		cmocka_unit_test(
			book_undo_brings_back_a_removed_row_with_its_id_and_uid),
		cmocka_unit_test(book_undo_gives_a_changed_row_its_older_values),
		cmocka_unit_test(book_undo_takes_a_group_back_as_one),
		cmocka_unit_test(book_undo_of_steps_and_of_visits_go_side_by_side),
		cmocka_unit_test(
			book_undo_leaves_what_files_brought_of_visits_and_weather),
		cmocka_unit_test(book_undo_own_leaves_what_another_program_did),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
