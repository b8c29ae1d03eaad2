/* A visit that two scouts put in with different counts, counted anew by one of them and
 * taken back: what the new count settled was written with it, if a moment later. */
#include "parted.h"

#include "book/steps.h"

static struct book *counted_anew(struct two *t)
{
	struct visit v;
	struct book *b;

	part(t);
	count(t->a, "JR", counted(t->desk.trap, DAY0 + 14, 14));
	count(t->b, "MB", counted(t->desk.trap, DAY0 + 14, 9));
	merge(t->a, t->b);
	v = counted(t->desk.trap, DAY0 + 14, 12);
	must(b = book_open(t->a, BOOK_EXISTING, "JR", e));
	must(book_save_visit(b, &v, NULL, e));
	assert_int_equal(
		raw(b, "UPDATE history SET at = '2199-01-01T00:00:00.000Z' WHERE "
		       "undoes = 0 AND step = (SELECT max(step) FROM history)"),
		SQLITE_OK);
	assert_int_equal(sqlite3_changes(b->db), 1);
	return b;
}

static int32_t count_now(struct book *b, const struct two *t)
{
	struct visit v;

	must(book_visit(b, t->desk.trap, DAY0 + 14, &v, NULL, e));
	return v.count;
}

/* The other count stands against it again, here and when the books meet once more. */
static void assert_disputed(struct book *b, const char *why)
{
	struct matters m = { 0 };

	must(book_open_matters(b, &m, e));
	if (m.n != 1)
		fail_msg("%s: %zu to be settled", why, m.n);
	book_matters_free(&m);
}

static void assert_disputed_for_good(struct two *t, struct book *b)
{
	assert_disputed(b, "taken back");
	book_close(b);
	merge(t->b, t->a);
	merge(t->a, t->b);
	must(b = book_open(t->a, BOOK_READ, "", e));
	assert_disputed(b, "merged both ways");
	book_close(b);
}

static void a_step_that_settled_a_count_is_taken_back(void **state)
{
	struct undone_step undone;
	struct two t;

	(void)state;
	struct book *b = counted_anew(&t);
	must(book_undo_own(b, &undone, e));
	assert_int_equal(count_now(b, &t), 9);
	assert_disputed_for_good(&t, b);
	rejoin(&t);
}

static void a_visit_that_settled_a_count_is_taken_back(void **state)
{
	struct undone undone;
	struct two t;

	(void)state;
	struct book *b = counted_anew(&t);
	const struct undo_reach reach = {
		.farm = t.desk.farm, .first = DAY0 + 14, .last = DAY0 + 14, .by = "JR"
	};
	must(book_undo_visit(b, &reach, &undone, e));
	assert_int_equal(undone.was.count, 12);
	assert_int_equal(count_now(b, &t), 9);
	assert_disputed_for_good(&t, b);
	rejoin(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_step_that_settled_a_count_is_taken_back),
		cmocka_unit_test(a_visit_that_settled_a_count_is_taken_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
