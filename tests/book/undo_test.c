#include "fixture.h"

static void book_undo_goes_back_step_by_step(void **state)
{
	struct desk d;
	struct undone u;
	struct visit got;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	struct visit_words w = { "Ida", "seen \"twice\"" }, got_w;
	must(book_save_visit(d.book, &v, &w, e)); /* 1: new */
	v.count = 40;
	must(book_save_visit(d.book, &v, NULL, e));        /* 2: corrected */
	must(book_remove_visit(d.book, v.trap, v.day, e)); /* 3: removed */

	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 20000, 20000, NULL }, &u, e));
	assert_false(u.removed);
	assert_int_equal(u.was.trap, 0); /* nothing stood there */
	must(book_visit(d.book, v.trap, v.day, &got, &got_w, e));
	assert_int_equal(got.count, 40);
	assert_string_equal(got_w.note, w.note);
	assert_int_equal(store_number(d.book, "SELECT count(*) FROM tombstone", 9), 0);

	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 20000, 20000, NULL }, &u, e));
	assert_int_equal(u.was.count, 40);
	must(book_visit(d.book, v.trap, v.day, &got, NULL, e));
	assert_int_equal(got.count, 4);

	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 20000, 20000, NULL }, &u, e));
	assert_true(u.removed);
	assert_int_equal(u.was.count, 4);
	refused(book_visit(d.book, v.trap, v.day, &got, NULL, e), ERR_NOT_FOUND,
		"no visit");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 20000, 20000, NULL }, &u, e),
		ERR_NOT_FOUND, "nothing left");
	desk_clear(&d);
}

static void book_undo_stays_on_its_farm_and_days(void **state)
{
	struct desk d;
	struct undone u;

	(void)state;
	desk_memory(&d);
	struct farm f = { .name = "Other slope", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ f.id, 0, 20000, 20000, NULL }, &u, e),
		ERR_NOT_FOUND, "left");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 20001, 20009, NULL }, &u, e),
		ERR_NOT_FOUND, "left");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 19990, 19999, NULL }, &u, e),
		ERR_NOT_FOUND, "left");
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 19999, 20001, NULL }, &u, e));
	assert_int_equal(u.trap, d.trap);
	assert_int_equal(u.day, 20000);
	desk_clear(&d);
}

static void book_undo_is_in_the_history(void **state)
{
	struct old_visits old = { 0 };
	struct desk d;
	struct undone u;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 20000, 20000, NULL }, &u, e));
	must(book_old_visits(d.book, d.trap, 20000, &old, e));
	assert_int_equal(old.n, 1);
	assert_true(old.items[0].removed);
	assert_int_equal(old.items[0].visit.count, 4);
	free(old.items);
	desk_clear(&d);
}

static void book_undo_leaves_the_entries_of_others(void **state)
{
	static const char long_name[] = "Ida with a name far too long for the book";
	struct desk d;
	struct undone u;

	(void)state;
	desk_memory(&d); /* by JR */
	int64_t two = desk_add_trap(&d, "2");
	struct visit v = counted(d.trap, 20000, 4), w = counted(two, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	book_set_who(d.book, long_name);
	must(book_save_visit(d.book, &w, NULL, e));
	refused(book_undo_visit(
			d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, "" }, &u, e),
		ERR_NOT_FOUND, "left");
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, "J" }, &u, e),
		ERR_NOT_FOUND, "left");
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e));
	assert_int_equal(u.trap, d.trap); /* not the latest, which is Ida's */
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e),
		ERR_NOT_FOUND, "left");
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, long_name }, &u, e));
	assert_int_equal(u.trap, two);
	desk_clear(&d);
}

static void book_undo_stops_under_the_entry_of_another(void **state)
{
	struct desk d;
	struct undone u;
	struct visit got;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	book_set_who(d.book, "Ida");
	v.count = 5;
	must(book_save_visit(d.book, &v, NULL, e));
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e),
		ERR_NOT_FOUND, "left");
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 5);
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, "Ida" }, &u, e));
	book_set_who(d.book, "JR");
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, "JR" }, &u, e));
	assert_true(u.removed);
	desk_clear(&d);
}

static void book_undo_leaves_what_files_brought(void **state)
{
	struct desk d;
	struct undone u;
	struct visit got;
	bool same;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	must(book_add_visit(d.book, &v, NULL, &same, e));
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e),
		ERR_NOT_FOUND, "left");
	v.count = 5;
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e));
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 4);
	desk_clear(&d);
}

static void book_undo_of_a_removal_keeps_what_stood_there(void **state)
{
	struct old_visits old = { 0 };
	struct desk d;
	struct undone u;
	struct visit got;
	bool same;

	(void)state;
	desk_memory(&d);
	struct visit v = counted(d.trap, 20000, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_remove_visit(d.book, d.trap, 20000, e));
	v.count = 9;
	must(book_add_visit(d.book, &v, NULL, &same, e)); /* from a file, no step */
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e));
	assert_int_equal(u.was.count, 9);
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 4);
	must(book_old_visits(d.book, d.trap, 20000, &old, e));
	assert_int_equal(old.items[0].visit.count, 9); /* kept */
	must(book_undo_visit(
		d.book, &(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e));
	assert_true(u.removed);
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 30000, NULL }, &u, e),
		ERR_NOT_FOUND, "left");
	free(old.items);
	desk_clear(&d);
}

enum { TRAPS = 4, DAYS = 5, STEPS = 300 };

static void random_step(struct desk *d, const int64_t *traps, unsigned *seed)
{
	struct visit v = counted(traps[rand_r(seed) % TRAPS], 100 + rand_r(seed) % DAYS,
		rand_r(seed) % 50);
	struct visit_words w = { "", "" };
	struct err err;

	if (rand_r(seed) % 4 == 0) {
		if (!book_remove_visit(d->book, v.trap, v.day, &err))
			assert_int_equal(err.kind, ERR_NOT_FOUND);
		return;
	}
	if (rand_r(seed) % 3 == 0) {
		v.outcome = OUTCOME_SPOILED;
		v.reason = REASON_DOWN;
		v.count = v.count % 2 ? COUNT_NONE : v.count;
	}
	snprintf(w.note, sizeof w.note, "n%d'\"", rand_r(seed) % 3);
	must(book_save_visit(d->book, &v, &w, e));
}

/* All visits with their words and uids, as one text. */
static char *whole_diary(struct desk *d)
{
	struct query q;
	char *text = NULL;

	query_start(&q, d->book,
		"SELECT coalesce(group_concat(id || outcome || coalesce(reason, '-') "
		"|| "
		"coalesce(count, '-') || note || hex(uid), ';'), '') FROM visit");
	assert_true(query_row(&q));
	text = strdup(query_get_text(&q));
	query_end(&q, "", NULL);
	return text;
}

static void book_undo_of_everything_gives_the_start(void **state)
{
	int64_t traps[TRAPS];
	unsigned seed = 20260721;
	struct desk d;
	struct undone u;
	struct err err;
	bool same;

	(void)state;
	desk_memory(&d);
	traps[0] = d.trap;
	for (int i = 1; i < TRAPS; i++)
		traps[i] = desk_add_trap(&d, (const char *[]){ "", "2", "3", "4" }[i]);
	for (int i = 0; i < TRAPS; i++) {
		struct visit v = counted(traps[i], 100 + i, i);
		must(book_add_visit(d.book, &v, NULL, &same, e));
	}
	char *start = whole_diary(&d);
	for (int i = 0; i < STEPS; i++)
		random_step(&d, traps, &seed);
	char *end = whole_diary(&d);
	assert_string_not_equal(end, start);
	int undone = 0;
	while (undone <= STEPS &&
		book_undo_visit(d.book,
			&(struct undo_reach){ d.farm, 0, 0, 1000, NULL }, &u, &err))
		undone++;
	assert_int_equal(err.kind, ERR_NOT_FOUND);
	char *back = whole_diary(&d);
	assert_string_equal(back, start);
	free(start);
	free(end);
	free(back);
	desk_clear(&d);
}

static void book_undo_of_one_trap_leaves_the_others(void **state)
{
	struct desk d;
	struct undone u;
	struct old_visits olds = { 0 };
	struct visits all = { 0 };
	struct visit got;

	(void)state;
	desk_memory(&d);
	int64_t other = desk_add_trap(&d, "2");
	struct visit v = counted(d.trap, 20000, 41), w = counted(other, 20000, 7);
	must(book_save_visit(d.book, &v, NULL, e));
	v.count = 14;
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_save_visit(d.book, &w, NULL, e)); /* the latest of the farm */
	v.day = 20007;
	must(book_save_visit(d.book, &v, NULL, e));
	must(book_remove_visit(d.book, d.trap, 20007, e));

	must(book_trap_visits(d.book, d.trap, &all, e));
	assert_int_equal(all.n, 1);
	assert_int_equal(all.items[0].count, 14);
	must(book_old_visits_of(d.book, d.trap, 20000, 20007, &olds, e));
	assert_int_equal(olds.n, 2); /* latest first */
	assert_true(olds.items[0].removed);
	assert_int_equal(olds.items[1].visit.count, 41);
	must(book_old_visits_of(d.book, d.trap, 20000, 20006, &olds, e));
	assert_int_equal(olds.n, 1);
	must(book_old_visits_of(d.book, other, 20000, 20007, &olds, e));
	assert_int_equal(olds.n, 0);

	must(book_undo_visit(
		d.book, &(struct undo_reach){ 0, d.trap, 20000, 20006, NULL }, &u, e));
	assert_int_equal(u.was.count, 14);
	must(book_visit(d.book, d.trap, 20000, &got, NULL, e));
	assert_int_equal(got.count, 41);
	must(book_visit(d.book, other, 20000, &got, NULL, e));
	refused(book_undo_visit(d.book,
			&(struct undo_reach){ 0, d.trap, 20000, 20006, "nobody" }, &u,
			e),
		ERR_NOT_FOUND, "left");
	free(olds.items);
	free(all.items);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_undo_goes_back_step_by_step),
		cmocka_unit_test(book_undo_stays_on_its_farm_and_days),
		cmocka_unit_test(book_undo_is_in_the_history),
		cmocka_unit_test(book_undo_leaves_the_entries_of_others),
		cmocka_unit_test(book_undo_stops_under_the_entry_of_another),
		cmocka_unit_test(book_undo_leaves_what_files_brought),
		cmocka_unit_test(book_undo_of_a_removal_keeps_what_stood_there),
		cmocka_unit_test(book_undo_of_everything_gives_the_start),
		cmocka_unit_test(book_undo_of_one_trap_leaves_the_others),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
