/* What a merge left open is settled by a person: what they chose holds in both books,
 * and what cannot be had is refused with the reason. */
#include "parted.h"

static struct book *open_book(const char *path, const char *who)
{
	struct book *b;

	must(b = book_open(path, BOOK_EXISTING, who, e));
	return b;
}

/* The matter of that kind, settled in the first book; then both are merged. */
static void settle(struct two *t, enum matter_kind what, const char *table, bool keep)
{
	struct book *b = open_book(t->a, "Office");
	struct matters m = { 0 };

	must(book_open_matters(b, &m, e));
	must(book_settle_row(b, find_matter(&m, what, table), keep, e));
	book_matters_free(&m);
	book_close(b);
	both_ways(t);
	open_matters(t->b, &m);
	if (m.n > 0)
		fail_msg("still open: %s", m.items[0].name);
	book_matters_free(&m);
}

/* The count of a week later is corrected in the one book and removed in the other. */
static void part_over_a_count(struct two *t, bool removed_last)
{
	struct visit v;

	part(t);
	v = counted(t->desk.trap, DAY0 + 7, 5);
	for (int i = 0; i < 2; i++) {
		if ((i == 1) == removed_last) {
			struct book *b = open_book(t->a, "JR");
			must(book_remove_visit(b, v.trap, v.day, e));
			book_close(b);
		} else {
			count(t->b, "MB", v);
		}
	}
	both_ways(t);
}

static const struct settled {
	const char *why;
	bool counted;
	int visits;
} removed[] = {
	{ "it was counted after all", true, 2 },
	{ "it was never counted", false, 1 },
};

enum { REMOVED = sizeof removed / sizeof *removed };

/* In the book that did not settle it, when both have met again. */
static void assert_settled(struct two *t, const struct settled *row)
{
	int64_t n = number(t->b, "SELECT count(*) FROM visit");

	if (n != row->visits)
		fail_msg("%s: %d visits", row->why, (int)n);
	rejoin(t);
}

static void removed_count_that_is_shown_is_kept_or_removed(void **state)
{
	(void)state;
	for (size_t i = 0; i < REMOVED; i++) {
		struct two t;
		part_over_a_count(&t, false);
		settle(&t, MATTER_KEPT, "visit", removed[i].counted);
		assert_settled(&t, &removed[i]);
	}
}

static void removed_count_that_is_not_shown_comes_back_or_stays_away(void **state)
{
	struct visit_words w = { "MB", "found on the back of the card" };

	(void)state;
	for (size_t i = 0; i < REMOVED; i++) {
		struct two t;
		part_over_a_count(&t, true);
		struct visit v = counted(t.desk.trap, DAY0 + 7, 5);
		struct book *b = open_book(t.a, "Office");
		must(book_settle_visit(
			b, v.trap, v.day, removed[i].counted ? &v : NULL, &w, e));
		book_close(b);
		both_ways(&t);
		assert_settled(&t, &removed[i]);
	}
}

/* The one that is shown, with a word why. */
static void count_that_holds_is_confirmed_with_a_note(void **state)
{
	struct visit_words w = { "JR", "counted again in the office" };
	struct visit v;
	struct two t;

	(void)state;
	part(&t);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 6));
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	both_ways(&t);
	struct book *b = open_book(t.a, "Office");
	must(book_visit(b, t.desk.trap, DAY0 + 14, &v, NULL, e));
	must(book_settle_visit(b, v.trap, v.day, &v, &w, e));
	book_close(b);
	both_ways(&t);
	assert_int_equal(number(t.b, "SELECT count(*) FROM visit WHERE note = "
				     "'counted again in the office'"),
		1);
	assert_int_equal(number(t.b, "SELECT count(*) FROM rival"), 0);
	rejoin(&t);
}

static int64_t save_trap(const char *path, const char *who, struct trap trap)
{
	struct book *b = open_book(path, who);

	must(book_put_trap(b, &trap, e));
	book_close(b);
	return trap.id;
}

static void take_out(const char *path, const char *kind, int64_t id)
{
	struct book *b = open_book(path, "JR");

	must(book_remove(b, kind, id, e));
	book_close(b);
}

/* Trap 7 in a block of its own, given another label in the one book and removed in the
 * other later: it is set aside. */
static struct trap part_over_a_trap(struct two *t, bool block_too)
{
	struct block k;

	part(t);
	struct book *b = open_book(t->a, "JR");
	k = (struct block){ .farm = t->desk.farm, .name = "South", .area_x100 = -1 };
	must(book_put_block(b, &k, e));
	book_close(b);
	struct trap trap = { .farm = k.farm,
		.block = k.id,
		.pest = t->desk.pest,
		.label = "7",
		.order = 2 };
	trap.id = save_trap(t->a, "JR", trap);
	merge(t->b, t->a);
	strcpy(trap.label, "7 b");
	save_trap(t->b, "MB", trap);
	take_out(t->a, "trap", trap.id);
	if (block_too)
		take_out(t->a, "block", trap.block);
	merge(t->a, t->b);
	return trap;
}

static void trap_set_aside_comes_back_to_its_block_and_farm(void **state)
{
	struct two t;

	(void)state;
	part_over_a_trap(&t, false);
	settle(&t, MATTER_ASIDE, "trap", true);
	assert_int_equal(
		number(t.b, "SELECT count(*) FROM trap t JOIN block k ON k.id = "
			    "t.block WHERE t.label = '7 b' AND k.name = 'South' AND "
			    "t.farm = k.farm"),
		1);
	rejoin(&t);
}

static void trap_left_out_stays_out_of_both_books(void **state)
{
	struct two t;

	(void)state;
	part_over_a_trap(&t, false);
	settle(&t, MATTER_ASIDE, "trap", false);
	assert_int_equal(number(t.b, "SELECT count(*) FROM trap"), 1);
	rejoin(&t);
}

static void trap_set_aside_waits_while_it_cannot_come_back(void **state)
{
	static const struct {
		bool block_too;
		const char *says;
	} row[] = {
		{ false, "there is another trap of that name in its place" },
		{ true, "something that it belongs to is not in the book" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct matters m = { 0 };
		struct two t;
		struct trap other = part_over_a_trap(&t, row[i].block_too);
		other.id = 0;
		if (!row[i].block_too)
			save_trap(t.a, "JR", other);
		struct book *b = open_book(t.a, "JR");
		must(book_open_matters(b, &m, e));
		struct matter *aside = find_matter(&m, MATTER_ASIDE, "trap");
		refused(book_settle_row(b, aside, true, e), ERR_INPUT, row[i].says);
		must(book_open_matters(b, &m, e));
		find_matter(&m, MATTER_ASIDE, "trap"); /* it waits */
		book_matters_free(&m);
		book_close(b);
		rejoin(&t);
	}
}

static void nothing_is_settled_in_a_table_that_no_book_has(void **state)
{
	struct matter m = { .what = MATTER_KEPT, .table = "attic" };
	struct desk d;

	(void)state;
	desk_memory(&d);
	refused(book_settle_row(d.book, &m, true, e), ERR_INPUT, "no table attic");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(removed_count_that_is_shown_is_kept_or_removed),
		cmocka_unit_test(
			removed_count_that_is_not_shown_comes_back_or_stays_away),
		cmocka_unit_test(count_that_holds_is_confirmed_with_a_note),
		cmocka_unit_test(trap_set_aside_comes_back_to_its_block_and_farm),
		cmocka_unit_test(trap_left_out_stays_out_of_both_books),
		cmocka_unit_test(trap_set_aside_waits_while_it_cannot_come_back),
		cmocka_unit_test(nothing_is_settled_in_a_table_that_no_book_has),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
