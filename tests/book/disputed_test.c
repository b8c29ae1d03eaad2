/* A visit that another scout's book tells otherwise reads as all that is said of it:
 * the least and the most, and no most where one of them is no count. */
#include "fixture.h"

#include "book/matters.h"
#include "book/merge.h"

enum { DAY = 20000 };

struct said {
	enum outcome outcome;
	enum reason reason;
	int32_t count;
};

static const struct {
	const char *why;
	struct said ours, theirs;
	int32_t least, most; /* COUNT_NONE: no most */
	bool is_disputed;
} row[] = {
	{ "the same", { OUTCOME_COUNTED, REASON_NONE, 3 },
		{ OUTCOME_COUNTED, REASON_NONE, 3 }, 0, 0, false },
	{ "two counts", { OUTCOME_COUNTED, REASON_NONE, 3 },
		{ OUTCOME_COUNTED, REASON_NONE, 7 }, 3, 7, true },
	{ "the other way round", { OUTCOME_COUNTED, REASON_NONE, 7 },
		{ OUTCOME_COUNTED, REASON_NONE, 3 }, 3, 7, true },
	{ "taken down with a count", { OUTCOME_COUNTED, REASON_NONE, 3 },
		{ OUTCOME_PULLED, REASON_NONE, 5 }, 3, 5, true },
	{ "taken down without one", { OUTCOME_COUNTED, REASON_NONE, 3 },
		{ OUTCOME_PULLED, REASON_NONE, COUNT_NONE }, 0, COUNT_NONE, true },
	{ "a full card", { OUTCOME_FLOOR, REASON_NONE, 30 },
		{ OUTCOME_COUNTED, REASON_NONE, 40 }, 30, COUNT_NONE, true },
	{ "skipped", { OUTCOME_SKIPPED, REASON_NONE, COUNT_NONE },
		{ OUTCOME_COUNTED, REASON_NONE, 9 }, 0, COUNT_NONE, true },
	{ "neither counted", { OUTCOME_SKIPPED, REASON_NONE, COUNT_NONE },
		{ OUTCOME_MISSING, REASON_NONE, COUNT_NONE }, 0, COUNT_NONE, true },
	{ "a zero is a count", { OUTCOME_COUNTED, REASON_NONE, 0 },
		{ OUTCOME_COUNTED, REASON_NONE, 1 }, 0, 1, true },
};
enum { ROWS = sizeof row / sizeof *row };

static void say(struct book *b, int64_t trap, const struct said *s)
{
	struct visit v = counted(trap, DAY + 7, s->count);

	v.outcome = s->outcome;
	v.reason = s->reason;
	must(book_save_visit(b, &v, NULL, e));
}

static void merge(struct book *b, const char *path)
{
	struct merge_report r = { 0 };

	must(book_merge(b, path, &r, e));
	book_merge_free(&r);
}

/* All traps of both books, hung in the one that the other began as. */
static void two_books(struct desk *d, int64_t traps[ROWS])
{
	struct book *other;
	char path[128];

	desk_disk(d);
	for (int i = 0; i < ROWS; i++) {
		char label[16];
		snprintf(label, sizeof label, "r%d", i);
		traps[i] = desk_add_trap(d, label);
		struct visit hung = without_count(traps[i], DAY, OUTCOME_HUNG);
		must(book_save_visit(d->book, &hung, NULL, e));
	}
	snprintf(path, sizeof path, "%s/other.db", d->folder);
	must(book_backup(d->book, path, e));
	must(other = book_open(path, BOOK_EXISTING, "Ida", e));
	for (int i = 0; i < ROWS; i++) {
		say(d->book, traps[i], &row[i].ours);
		say(other, traps[i], &row[i].theirs);
	}
	book_close(other);
	merge(d->book, path);
}

static void visit_of_two_books_is_all_that_they_say(void **state)
{
	struct visits all = { 0 };
	int64_t traps[ROWS];
	struct desk d;

	(void)state;
	two_books(&d, traps);
	for (int i = 0; i < ROWS; i++) {
		must(book_trap_visits(d.book, traps[i], &all, e));
		assert_int_equal(all.n, 2);
		const struct visit *v = &all.items[1];
		assert_false(all.items[0].is_disputed);
		if (v->is_disputed != row[i].is_disputed ||
			(v->is_disputed &&
				(v->least != row[i].least || v->most != row[i].most)))
			fail_msg("%s: %d, %d to %d", row[i].why, v->is_disputed,
				(int)v->least, (int)v->most);
	}
	must(book_visits(d.book, 0, DAY + 7, DAY + 7, &all, e));
	for (size_t i = 0; i < all.n; i++)
		if (all.items[i].is_disputed != (all.items[i].trap != traps[0]))
			fail_msg("trap %zu among all", i);
	must(book_visits(d.book, d.farm, DAY, DAY, &all, e));
	for (size_t i = 0; i < all.n; i++)
		assert_false(all.items[i].is_disputed);
	free(all.items);
	desk_clear(&d);
}

/* One visit and what other scouts' books say of it, of which the last is said twice. */
static void visit_of_four_books_is_all_that_they_say(void **state)
{
	static const struct {
		int32_t count, females;
	} said[] = { { 7, COUNT_NONE }, { 2, COUNT_NONE }, { 4, 1 },
		{ 7, COUNT_NONE } };
	struct visits all = { 0 };
	struct matters open = { 0 };
	struct book *other;
	char path[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	for (size_t i = 0; i < sizeof said / sizeof *said; i++) {
		snprintf(path, sizeof path, "%s/%zu.db", d.folder, i);
		must(book_backup(d.book, path, e));
	}
	say(d.book, d.trap, &(struct said){ OUTCOME_COUNTED, REASON_NONE, 4 });
	for (size_t i = 0; i < sizeof said / sizeof *said; i++) {
		struct visit v = counted(d.trap, DAY + 7, said[i].count);
		v.females = said[i].females;
		snprintf(path, sizeof path, "%s/%zu.db", d.folder, i);
		must(other = book_open(path, BOOK_EXISTING, "Ida", e));
		must(book_save_visit(other, &v, NULL, e));
		book_close(other);
		merge(d.book, path);
	}
	must(book_trap_visits(d.book, d.trap, &all, e));
	assert_int_equal(all.n, 1);
	assert_true(all.items[0].is_disputed);
	assert_int_equal(all.items[0].least, 2);
	assert_int_equal(all.items[0].most, 7);
	must(book_open_matters(d.book, &open, e));
	assert_int_equal(open.n, 1);
	assert_int_equal(open.items[0].n_choices, 4); /* 7 is one of them */
	must(book_visits(d.book, d.farm, DAY, DAY + 6, &all, e));
	assert_int_equal(all.n, 0);
	book_matters_free(&open);
	free(all.items);
	desk_clear(&d);
}

/* Sexes that were told apart in one book alone leave the count as it is. */
static void visit_with_females_in_one_book_is_not_disputed(void **state)
{
	struct visits all = { 0 };
	struct book *other;
	char path[128];
	struct desk d;

	(void)state;
	desk_disk(&d);
	snprintf(path, sizeof path, "%s/other.db", d.folder);
	must(book_backup(d.book, path, e));
	struct visit v = counted(d.trap, DAY + 7, 4);
	must(book_save_visit(d.book, &v, NULL, e));
	v.females = 1;
	must(other = book_open(path, BOOK_EXISTING, "Ida", e));
	must(book_save_visit(other, &v, NULL, e));
	book_close(other);
	merge(d.book, path);
	must(book_trap_visits(d.book, d.trap, &all, e));
	assert_int_equal(all.n, 1);
	assert_false(all.items[0].is_disputed);
	free(all.items);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(visit_of_two_books_is_all_that_they_say),
		cmocka_unit_test(visit_of_four_books_is_all_that_they_say),
		cmocka_unit_test(visit_with_females_in_one_book_is_not_disputed),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
