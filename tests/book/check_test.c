#include "fixture.h"

struct told {
	char text[4096];
};

static void tell(void *arg, const char *text)
{
	struct told *t = arg;
	size_t n = strlen(t->text);

	snprintf(t->text + n, sizeof t->text - n, "%s\n", text);
}

static void expect(struct desk *d, int want, const char *words)
{
	struct told told = { "" };
	int found;

	must(book_check(d->book, 20010, tell, &told, &found, e));
	if (found != want || !strstr(told.text, words))
		fail_msg("%d findings, not %d with \"%s\":\n%s", found, want, words,
			told.text);
}

static void hang_and_count(struct desk *d)
{
	struct visit hung = without_count(d->trap, 20000, OUTCOME_HUNG);
	struct visit v = counted(d->trap, 20010, 3);

	must(book_save_visit(d->book, &hung, NULL, e));
	must(book_save_visit(d->book, &v, NULL, e));
}

static void book_check_finds_nothing_in_a_sound_book(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	expect(&d, 0, "");
	desk_clear(&d);
}

static void book_check_finds_what_does_not_hang_together(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	struct visit before = counted(d.trap, 19999, 3),
		     later = counted(d.trap, 20011, 3);
	must(book_save_visit(d.book, &before, NULL, e));
	expect(&d, 1,
		"trap 1 of Hollow Reach has a visit on 2024-10-03, before it was ever "
		"hung");
	must(book_remove_visit(d.book, d.trap, 19999, e));
	must(book_save_visit(d.book, &later, NULL, e));
	expect(&d, 1,
		"trap 1 of Hollow Reach has a visit on 2024-10-15, a day still to "
		"come");
	must(book_remove_visit(d.book, d.trap, 20011, e));
	struct farm f = { .name = "Other slope", .season_start = 101 };
	must(book_put_farm(d.book, &f, e));
	struct block b = { .id = d.block, .farm = f.id, .name = "x", .area_x100 = -1 };
	must(book_put_block(d.book, &b, e));
	expect(&d, 1, "trap 1 of Hollow Reach is in x, a block of another farm");
	b.farm = d.farm;
	must(book_put_block(d.book, &b, e));
	assert_int_equal(
		raw(d.book, "UPDATE trap SET lure = (SELECT id FROM lure WHERE "
			    "name = 'T2 test')"),
		SQLITE_OK);
	expect(&d, 1, "usually gets T2 test, a lure of another pest");
	desk_clear(&d);
}

static void book_check_finds_rows_without_their_parent(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(
		raw(d.book, "PRAGMA foreign_keys = OFF; DELETE FROM block"), SQLITE_OK);
	expect(&d, 1, "1 rows of trap name a block that is not in the book");
	desk_clear(&d);
}

static void book_check_finds_a_value_out_of_range(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	hang_and_count(&d);
	assert_int_equal(raw(d.book, "PRAGMA ignore_check_constraints = ON;"
				     "UPDATE visit SET count = -3 WHERE count = 3;"
				     "PRAGMA ignore_check_constraints = OFF"),
		SQLITE_OK);
	expect(&d, 1, "the file is damaged: CHECK constraint failed in visit");
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_check_finds_nothing_in_a_sound_book),
		cmocka_unit_test(book_check_finds_what_does_not_hang_together),
		cmocka_unit_test(book_check_finds_rows_without_their_parent),
		cmocka_unit_test(book_check_finds_a_value_out_of_range),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
