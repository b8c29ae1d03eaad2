/* What cannot be taken back: what others have built on since. */
#include "fixture.h"

#include "book/steps.h"

static int64_t latest(struct book *b)
{
	int64_t step;

	must(book_latest_step(b, &step, e));
	return step;
}

/* JR's undo is refused with the words, and leaves every row and the history. */
static void cannot(struct desk *d, int64_t after, const char *words)
{
	struct undone_step u;
	int64_t rows = store_number(d->book, "SELECT max(id) FROM history", 0);
	int64_t gone = store_number(d->book, "SELECT count(*) FROM tombstone", 0);

	refused(book_undo_step(d->book, "JR", after, &u, e), ERR_INPUT, words);
	refused(book_undo_step(d->book, "JR", after, &u, e), ERR_INPUT,
		"nothing is taken back: ");
	assert_int_equal(store_number(d->book, "SELECT max(id) FROM history", 0), rows);
	assert_int_equal(
		store_number(d->book, "SELECT count(*) FROM tombstone", 0), gone);
}

/* A block is given a name, and another one by `who`; the step before both. */
static int64_t name_twice(struct desk *d, const char *who)
{
	desk_memory(d);
	struct block b = {
		.id = d->block, .farm = d->farm, .name = "Old rows", .area_x100 = -1
	};
	int64_t start = latest(d->book);
	must(book_put_block(d->book, &b, e));
	book_set_who(d->book, who);
	strcpy(b.name, "Our rows");
	must(book_put_block(d->book, &b, e));
	return start;
}

static void book_undo_stops_at_a_row_that_somebody_changed_since(void **state)
{
	struct undone_step u;
	struct desk d;

	(void)state;
	int64_t start = name_twice(&d, "Ida");
	cannot(&d, start,
		"block Our rows of Hollow Reach was changed since by Ida on 2");
	must(book_undo_step(d.book, "Ida", start, &u, e));
	must(book_undo_step(d.book, "JR", start, &u, e)); /* hers is taken back */
	assert_string_equal(u.name, "block Long rows of Hollow Reach");
	desk_clear(&d);
}

/* Who never said his name. */
static void book_undo_stops_at_a_row_that_nobody_knows_who_changed(void **state)
{
	struct desk d;

	(void)state;
	int64_t start = name_twice(&d, "");
	cannot(&d, start, "was changed since by somebody on 2");
	desk_clear(&d);
}

static void book_undo_keeps_what_somebody_hung_something_on(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	int64_t trap = desk_add_trap(&d, "7");
	book_set_who(d.book, "Ida");
	struct visit v = counted(trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	v.day++;
	must(book_save_visit(d.book, &v, NULL, e));
	cannot(&d, start, "trap 7 of Hollow Reach is in use since, by 2 visits");
	desk_clear(&d);
}

static void book_undo_takes_no_name_from_another_row(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t trap = desk_add_trap(&d, "7");
	int64_t start = latest(d.book);
	must(book_remove(d.book, "trap", trap, e));
	book_set_who(d.book, "Ida");
	desk_add_trap(&d, "7");
	cannot(&d, start, "there is another trap in its place since");
	desk_clear(&d);
}

static void book_undo_brings_nothing_back_without_what_it_belongs_to(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct farm f = { .name = "Other slope", .season_start = 101 };
	struct block b = { .name = "Gone rows", .area_x100 = -1 };
	must(book_put_farm(d.book, &f, e));
	b.farm = f.id;
	must(book_put_block(d.book, &b, e));
	int64_t start = latest(d.book);
	must(book_remove(d.book, "block", b.id, e));
	book_set_who(d.book, "Ida");
	must(book_remove(d.book, "farm", f.id, e));
	cannot(&d, start, "something that the block belongs to is gone since");
	desk_clear(&d);
}

static void book_undo_leaves_a_trap_with_visits_its_pest(void **state)
{
	struct desk d;
	struct trap t;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	t = (struct trap){ .id = d.trap,
		.farm = d.farm,
		.block = d.block,
		.pest = d.other_pest,
		.label = "1",
		.order = 1 };
	must(book_put_trap(d.book, &t, e));
	book_set_who(d.book, "Ida");
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	cannot(&d, start, "the trap has visits since, so its pest stays");
	desk_clear(&d);
}

static void book_undo_brings_no_count_to_a_trap_of_another_pest(void **state)
{
	struct undone u;
	struct desk d;
	struct trap t;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	int64_t start = latest(d.book);
	must(book_remove_visit(d.book, d.trap, 20000, e));
	book_set_who(d.book, "Ida");
	t = (struct trap){ .id = d.trap,
		.farm = d.farm,
		.block = d.block,
		.pest = d.other_pest,
		.label = "1",
		.order = 1 };
	must(book_put_trap(d.book, &t, e));
	cannot(&d, start, "the pest of its trap was changed since");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e),
		ERR_INPUT, "the pest of its trap was changed since");
	t.pest = d.pest;
	must(book_put_trap(d.book, &t, e));
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e));
	desk_clear(&d);
}

static void book_undo_leaves_settings_that_fit_each_other(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_put_setting(d.book, "read_den", "9", e));
	int64_t start = latest(d.book);
	must(book_put_setting(d.book, "read_den", "10", e));
	book_set_who(d.book, "Ida");
	must(book_put_setting(d.book, "read_num", "10", e));
	cannot(&d, start, "the settings ask for 10 of 9 traps");
	desk_clear(&d);
}

/* What does not hang together from before is no reason to refuse. */
static void book_undo_minds_nothing_that_it_did_not_tear(void **state)
{
	struct undone_step u;
	struct desk d;

	(void)state;
	desk_memory(&d);
	assert_int_equal(
		raw(d.book, "INSERT INTO setting (name, value, uid, changed_at, "
			    "changed_by) VALUES ('read_num', '10', randomblob(16), "
			    "'2026-07-21T07:42:11.123Z', ''), ('read_den', '9', "
			    "randomblob(16), '2026-07-21T07:42:11.123Z', '');"
			    "INSERT INTO farm (id, name, uid, changed_at, changed_by) "
			    "VALUES (9, 'Drumsorrel', randomblob(16), "
			    "'2026-07-21T07:42:11.123Z', ''); UPDATE block SET farm = "
			    "9"),
		SQLITE_OK);
	int64_t start = latest(d.book);
	struct pest p = { .id = d.pest, .code = "T1", .name = "renamed moth" };
	must(book_put_pest(d.book, &p, e));
	must(book_undo_step(d.book, "JR", start, &u, e));
	assert_string_equal(u.name, "pest T1");
	desk_clear(&d);
}

static void book_undo_of_a_group_is_all_or_nothing(void **state)
{
	struct lure_kinds lures = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	int64_t start = latest(d.book);
	must(book_begin(d.book, e));
	int64_t trap = desk_add_trap(&d, "7");
	struct lure_kind l = { .id = d.lure, .name = "changed", .life_days = 9 };
	must(book_put_lure(d.book, &l, e));
	must(book_commit(d.book, e));
	book_set_who(d.book, "Ida");
	struct visit v = counted(trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	cannot(&d, start, "in use since, by 1 visit");
	must(book_lures(d.book, &lures, e));
	bool there = false;
	for (size_t i = 0; i < lures.n; i++)
		there |= strcmp(lures.items[i].name, "changed") == 0;
	assert_true(there);
	free(lures.items);
	desk_clear(&d);
}

static void book_undo_says_when_the_history_is_damaged(void **state)
{
	static const char *const harm[] = {
		"UPDATE history SET old = 'no row' WHERE op = 'update'",
		"UPDATE history SET old = json_object('name', '') WHERE op = 'update'",
		"UPDATE history SET kind = 'sqlite_schema' WHERE op = 'update'",
	};

	(void)state;
	for (size_t i = 0; i < sizeof harm / sizeof *harm; i++) {
		struct undone_step u;
		struct desk d;
		desk_memory(&d);
		struct block b = {
			.id = d.block, .farm = d.farm, .name = "x", .area_x100 = -1
		};
		must(book_put_block(d.book, &b, e));
		assert_int_equal(raw(d.book, harm[i]), SQLITE_OK);
		refused(book_undo_step(d.book, NULL, 0, &u, e), ERR_BOOK,
			"nothing is taken back: ");
		assert_int_equal(
			store_number(d.book,
				"SELECT count(*) FROM block WHERE name = 'x'", 0),
			1);
		desk_clear(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_undo_stops_at_a_row_that_somebody_changed_since),
		cmocka_unit_test(
			book_undo_stops_at_a_row_that_nobody_knows_who_changed),
		cmocka_unit_test(book_undo_keeps_what_somebody_hung_something_on),
		cmocka_unit_test(book_undo_takes_no_name_from_another_row),
		cmocka_unit_test(
			book_undo_brings_nothing_back_without_what_it_belongs_to),
		cmocka_unit_test(book_undo_leaves_a_trap_with_visits_its_pest),
		cmocka_unit_test(book_undo_brings_no_count_to_a_trap_of_another_pest),
		cmocka_unit_test(book_undo_leaves_settings_that_fit_each_other),
		cmocka_unit_test(book_undo_minds_nothing_that_it_did_not_tear),
		cmocka_unit_test(book_undo_of_a_group_is_all_or_nothing),
		cmocka_unit_test(book_undo_says_when_the_history_is_damaged),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
