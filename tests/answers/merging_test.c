/* Another scout's book in words, before and after it is merged. */
#include "answers/fixture.h"

#include "answers/merging.h"
#include "book/backups.h"

#include <unistd.h>

/* The book with one trap of which the other book, a copy, has another count. */
static int64_t open_two(
	struct fixture *f, const char *folder, const char *scout, char path[static 64])
{
	struct visit v;
	struct visit_words words = { 0 };
	struct err e = { 0 };

	fixture_open(f);
	book_set_who(f->book, scout);
	int64_t trap = fixture_trap(f, "1", "2026-05-04");
	snprintf(path, 64, "%s/book.db", folder);
	must(book_backup(f->book, path, &e), &e);
	struct book *other = book_open(path, BOOK_EXISTING, *scout ? "MB" : "", &e);
	must(other != NULL, &e);
	v = fixture_counted(trap, "2026-05-11", 7);
	text_copy(words.scout, sizeof words.scout, *scout ? "MB" : "");
	must(book_save_visit(other, &v, &words, &e), &e);
	book_close(other);
	v.count = 9;
	text_copy(words.scout, sizeof words.scout, scout);
	must(book_save_visit(f->book, &v, &words, &e), &e);
	return trap;
}

static void expect_line(const struct merging *m, const char *text)
{
	for (size_t i = 0; i < m->n; i++)
		if (strcmp(m->lines[i].text, text) == 0)
			return;
	for (size_t i = 0; i < m->n; i++)
		print_error("%s\n", m->lines[i].text);
	fail_msg("no line \"%s\"", text);
}

static void look_tells_which_count_is_in_which_book(void **state)
{
	static const struct {
		const char *scout, *here, *there;
	} row[] = {
		{ "JR", "here 9 by JR", "there 7 by MB" },
		{ "", "here 9", "there 7" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char folder[] = "/tmp/merging-test-XXXXXX", path[64];
		struct merging m = { 0 };
		struct fixture f;
		struct err e = { 0 };

		assert_non_null(mkdtemp(folder));
		open_two(&f, folder, row[i].scout, path);
		must(merging_look(f.book, path, &m, &e), &e);
		expect_line(&m, row[i].here);
		expect_line(&m, row[i].there);
		must(merging_do(f.book, path, &m, &e), &e);
		must(merging_look(f.book, path, &m, &e), &e);
		assert_true(m.nothing_new);
		merging_free(&m);
		fixture_close(&f);
		unlink(path);
		rmdir(folder);
	}
}

/* A count of the other book that came in earlier is in this one as well. */
static void look_knows_what_came_before(void **state)
{
	char folder[] = "/tmp/merging-test-XXXXXX", path[64];
	struct merging m = { 0 };
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	assert_non_null(mkdtemp(folder));
	int64_t trap = open_two(&f, folder, "JR", path);
	must(merging_do(f.book, path, &m, &e), &e);
	struct book *other = book_open(path, BOOK_EXISTING, "MB", &e);
	must(other != NULL, &e);
	struct visit v = fixture_counted(trap, "2026-05-18", 4);
	must(book_save_visit(other, &v, NULL, &e), &e);
	book_close(other);
	must(merging_look(f.book, path, &m, &e), &e);
	expect_line(&m, "here 7 by MB");
	expect_line(&m, "here 9 by JR");
	merging_free(&m);
	fixture_close(&f);
	unlink(path);
	rmdir(folder);
}

/* Hung with a lure here, without one being noted there: both would read "hung". */
static void choices_that_read_alike_tell_what_differs(void **state)
{
	char folder[] = "/tmp/merging-test-XXXXXX", path[64];
	struct open_matters open = { 0 };
	struct merging m = { 0 };
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	assert_non_null(mkdtemp(folder));
	fixture_open(&f);
	struct visit v =
		fixture_counted(fixture_trap(&f, "1", NULL), "2026-05-04", COUNT_NONE);
	v.outcome = OUTCOME_HUNG;
	snprintf(path, sizeof path, "%s/book.db", folder);
	must(book_backup(f.book, path, &e), &e);
	struct book *other = book_open(path, BOOK_EXISTING, "MB", &e);
	must(other != NULL, &e);
	must(book_save_visit(other, &v, NULL, &e), &e);
	book_close(other);
	v.new_lure = f.lure.id;
	must(book_save_visit(f.book, &v, NULL, &e), &e);
	must(merging_look(f.book, path, &m, &e), &e);
	expect_line(&m, "here hung, lure three weeks by T");
	expect_line(&m, "there hung, no new lure by MB");
	must(merging_do(f.book, path, &m, &e), &e);
	must(merging_open(f.book, &open, &e), &e);
	assert_int_equal(open.n, 1);
	assert_non_null(strstr(open.items[0].choices[0], "hung, "));
	assert_non_null(strstr(open.items[0].choices[1], "hung, "));
	merging_open_free(&open);
	merging_free(&m);
	fixture_close(&f);
	unlink(path);
	rmdir(folder);
}

/* Of three that read alike each tells all that differs between any two of them. */
static void three_that_read_alike_tell_the_same_facts(void **state)
{
	static const char *const want[] = { "hung, lure CM 1 mg, no new card by A",
		"hung, no new lure, no new card by B",
		"hung, lure CM 1 mg, card delta by C" };
	struct matter_choice choice[] = {
		{ .visit = { .new_lure = 1 }, .lure = "CM 1 mg", .changed_by = "A" },
		{ .rival = 1, .changed_by = "B" },
		{ .rival = 2,
			.visit = { .new_lure = 1, .new_card = 2 },
			.lure = "CM 1 mg",
			.card = "delta",
			.changed_by = "C" },
	};
	struct matter m = { .what = MATTER_COUNTS, .choices = choice, .n_choices = 3 };
	struct open_matter asked = { 0 };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		choice[i].visit.outcome = OUTCOME_HUNG;
		choice[i].visit.count = COUNT_NONE;
		choice[i].visit.females = choice[i].visit.others = COUNT_NONE;
	}
	merging_ask(&m, &asked);
	for (size_t i = 0; i < 3; i++)
		if (strncmp(asked.choices[i], want[i], strlen(want[i])) != 0)
			fail_msg("%s, not %s", asked.choices[i], want[i]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(look_tells_which_count_is_in_which_book),
		cmocka_unit_test(look_knows_what_came_before),
		cmocka_unit_test(choices_that_read_alike_tell_what_differs),
		cmocka_unit_test(three_that_read_alike_tell_the_same_facts),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
