/* What one merge does, case by case. Times are set by hand where the order of changes
 * matters. */
#include "parted.h"

static void visit_of_one_book_comes_into_the_other(void **state)
{
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	merge(t.a, t.b);
	assert_int_equal(number(t.a, "SELECT count(*) FROM visit"), 3);
	assert_int_equal(number(t.a, "SELECT count FROM visit ORDER BY id DESC"), 9);
	assert_int_equal(number(t.a, "SELECT count(*) FROM rival"), 0);
	rejoin(&t);
}

static void visit_counted_alike_in_both_is_one(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 9));
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	merge(t.a, t.b);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 0);
	assert_int_equal(number(t.a, "SELECT count(*) FROM visit"), 3);
	book_matters_free(&m);
	rejoin(&t);
}

static void correction_made_in_one_book_alone_just_holds(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 7, 5));
	merge(t.a, t.b);
	assert_int_equal(
		number(t.a, "SELECT count FROM visit WHERE count IS NOT NULL"), 5);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 0);
	book_matters_free(&m);
	rejoin(&t);
}

static void two_counts_of_a_day_are_both_kept_until_settled(void **state)
{
	struct matters m;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	merge(t.a, t.b);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 1);
	assert_int_equal(m.items[0].what, MATTER_COUNTS);
	assert_int_equal(m.items[0].n_choices, 2);
	assert_int_equal(m.items[0].choices[0].visit.count, 9); /* the later one */
	assert_int_equal(m.items[0].choices[1].visit.count, 14);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_settle_visit(
		b, t.desk.trap, DAY0 + 14, &m.items[0].choices[1].visit, NULL, e));
	refused(book_settle_visit(b, t.desk.trap, DAY0 + 14, NULL, NULL, e),
		ERR_NOT_FOUND, "settled already");
	book_close(b);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	assert_int_equal(number(t.b, "SELECT count FROM visit ORDER BY id DESC"), 14);
	assert_int_equal(number(t.b, "SELECT count(*) FROM rival"), 0);
	book_matters_free(&m);
	rejoin(&t);
}

static void visit_changed_in_both_books_is_to_be_settled(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 7, 5));
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 7, 6));
	merge(t.a, t.b);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 1);
	assert_int_equal(m.items[0].choices[0].visit.count, 6);
	assert_int_equal(m.items[0].choices[1].visit.count, 5);
	book_matters_free(&m);
	rejoin(&t);
}

static void visit_removed_in_one_book_goes_unless_it_was_changed_since(void **state)
{
	static const struct {
		const char *why, *changed_at;
		int changes, visits;
		enum matter_kind what;
	} row[] = {
		{ "nobody changed it: it goes", "", 0, 1, MATTER_COUNT },
		{ "changed before: not shown, listed", "2024-11-01T07:00:00.000Z", 1, 1,
			MATTER_REMOVED },
		{ "changed after: shown, listed", "2199-11-01T07:00:00.000Z", 1, 2,
			MATTER_KEPT },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct matters m;
		struct book *b;
		struct two t;
		char sql[160];
		part(&t);
		if (row[i].changes) {
			snprintf(sql, sizeof sql,
				"UPDATE visit SET count = 5, changed_at = '%s', "
				"changed_by = 'MB' WHERE count = 4",
				row[i].changed_at);
			run_sql(t.b, "MB", sql);
		}
		must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
		must(book_remove_visit(b, t.desk.trap, DAY0 + 7, e));
		book_close(b);
		merge(t.a, t.b);
		merge(t.b, t.a);
		assert_alike(t.a, t.b);
		open_matters(t.a, &m);
		int64_t n = number(t.a, "SELECT count(*) FROM visit");
		enum matter_kind what = m.n ? m.items[0].what : MATTER_COUNT;
		if (n != row[i].visits || m.n > 1 || what != row[i].what)
			fail_msg("%s: %d visits, %zu matters, kind %d", row[i].why,
				(int)n, m.n, (int)what);
		book_matters_free(&m);
		rejoin(&t);
	}
}

static void block_removed_here_and_needed_there_stays_and_is_listed(void **state)
{
	struct matters m;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR",
		"INSERT INTO block (farm, name, uid, changed_at, changed_by) VALUES "
		"(1, 'South', x'00112233445566778899aabbccddeeff', "
		"'2024-10-01T00:00:00.000Z', 'JR')");
	merge(t.b, t.a);
	run_sql(t.b, "MB",
		"INSERT INTO pick (block, day, uid, changed_at, changed_by) SELECT id, "
		"'2024-09-01', randomblob(16), '2024-10-02T00:00:00.000Z', 'MB' FROM "
		"block WHERE name = 'South'");
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_remove(b, "block",
		store_number(b, "SELECT id FROM block WHERE name = 'South'", 0), e));
	book_close(b);
	merge(t.a, t.b);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 1);
	assert_int_equal(m.items[0].what, MATTER_KEPT);
	assert_string_equal(m.items[0].table, "block");
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_settle_row(b, &m.items[0], true, e));
	book_close(b);
	merge(t.b, t.a);
	book_matters_free(&m);
	open_matters(t.b, &m);
	assert_int_equal(m.n, 0);
	book_matters_free(&m);
	rejoin(&t);
}

static void books_typed_alone_know_the_same_farm_and_trap_as_one(void **state)
{
	struct two t = { 0 };

	(void)state;
	shelf_make(&t.shelf);
	typed_alone(&t, "JR", t.a, "2", 0);
	typed_alone(&t, "MB", t.b, "2", 0);
	merge(t.a, t.b);
	assert_int_equal(number(t.a, "SELECT count(*) FROM farm"), 1);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 2);
	assert_int_equal(number(t.a, "SELECT count(*) FROM origin WHERE of <> uid AND "
				     "kind = 'trap'"),
		2);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	rejoin(&t);
}

static void traps_of_one_label_and_two_pests_are_two(void **state)
{
	struct matters m;
	struct two t = { 0 };

	(void)state;
	shelf_make(&t.shelf);
	typed_alone(&t, "JR", t.a, "2", 0);
	typed_alone(&t, "MB", t.b, "2", 1);
	merge(t.a, t.b);
	merge(t.b, t.a);
	assert_alike(t.a, t.b);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 3);
	assert_int_equal(
		number(t.a, "SELECT count(*) FROM trap WHERE label = '2 (2)'"), 1);
	assert_int_equal(
		number(t.a, "SELECT count(DISTINCT driving_order) FROM trap"), 3);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 1);
	assert_int_equal(m.items[0].what, MATTER_NAMES);
	assert_string_equal(m.items[0].typed, "2");
	book_matters_free(&m);
	rejoin(&t);
}

/* A visit brings the card and the lure that were put in, whatever their numbers are. */
static void visit_of_one_book_brings_its_card_and_lure(void **state)
{
	struct visit v;
	struct two t;

	(void)state;
	part(&t);
	v = counted(t.desk.trap, DAY0 + 14, 6);
	v.new_card = t.desk.card;
	v.new_lure = t.desk.lure;
	count(t.b, "MB", v);
	merge(t.a, t.b);
	assert_int_equal(
		number(t.a, "SELECT count(*) FROM visit v JOIN card c ON c.id = "
			    "v.new_card JOIN lure l ON l.id = v.new_lure WHERE c.name "
			    "= 'test card' AND l.name = 'T1 test'"),
		1);
	rejoin(&t);
}

static void shipped_kinds_of_a_new_book_undo_no_change(void **state)
{
	struct two t = { 0 };

	(void)state;
	shelf_make(&t.shelf);
	typed_alone(&t, "JR", t.a, "2", 0);
	run_sql(t.a, "JR",
		"UPDATE lure SET life_days = 99, changed_at = "
		"'2020-01-01T00:00:00.000Z' WHERE name = 'CM 1 mg'");
	typed_alone(&t, "MB", t.b, "2", 0);
	merge(t.b, t.a);
	assert_int_equal(
		number(t.b, "SELECT life_days FROM lure WHERE name = 'CM 1 mg'"), 99);
	rejoin(&t);
}

#define PICK(uid, at)                                                                  \
	"INSERT INTO pick (block, day, note, uid, changed_at, changed_by) SELECT "     \
	"min(id), '2024-09-01', '', x'000000000000000000000000000000" uid              \
	"', '2024-08-20T" at ".000Z', 'JR' FROM block;"
#define TAKE_OUT(uid, at)                                                              \
	"INSERT INTO tombstone VALUES (x'000000000000000000000000000000" uid           \
	"', 'pick', '2024-08-20T" at ".000Z', 'JR'); DELETE FROM pick WHERE uid = "    \
	"x'000000000000000000000000000000" uid "';"

/* Two picks of a block and day. */
static void rows_put_in_alike_are_told_apart_in_either_order(void **state)
{
	static const struct {
		const char *why, *in_both, *in_one;
		int left;
	} row[] = {
		{ "of one moment", PICK("22", "07:00:00"), PICK("33", "07:00:00"), 2 },
		{ "of one moment, the later with the smaller uid",
			PICK("22", "07:00:00"), PICK("11", "07:00:00"), 2 },
		{ "the later by a clock that is behind", PICK("22", "07:00:00"),
			PICK("33", "06:00:00"), 2 },
		{ "the first taken out", PICK("22", "07:00:00") PICK("33", "08:00:00"),
			TAKE_OUT("22", "09:00:00"), 1 },
		{ "the first taken out, then another put in",
			PICK("22", "07:00:00") PICK("33", "08:00:00"),
			TAKE_OUT("22", "09:00:00") PICK("11", "10:00:00"), 2 },
		{ "taken out and put in again", PICK("22", "07:00:00"),
			TAKE_OUT("22", "08:00:00") PICK("11", "09:00:00"), 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char one[96];
		struct two t;
		part(&t);
		run_sql(t.a, "JR", row[i].in_both);
		shelf_copy(&t.shelf, t.a, t.b);
		run_sql(t.a, "JR", row[i].in_one);
		shelf_copy(&t.shelf, t.a, one);
		merge(t.a, t.b);
		merge(t.b, one);
		int64_t left = number(t.a, "SELECT count(*) FROM pick");
		if (left != row[i].left)
			fail_msg("%s: %d are left", row[i].why, (int)left);
		assert_alike(t.a, t.b);
		rejoin(&t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(visit_of_one_book_comes_into_the_other),
		cmocka_unit_test(visit_counted_alike_in_both_is_one),
		cmocka_unit_test(correction_made_in_one_book_alone_just_holds),
		cmocka_unit_test(two_counts_of_a_day_are_both_kept_until_settled),
		cmocka_unit_test(visit_changed_in_both_books_is_to_be_settled),
		cmocka_unit_test(
			visit_removed_in_one_book_goes_unless_it_was_changed_since),
		cmocka_unit_test(
			block_removed_here_and_needed_there_stays_and_is_listed),
		cmocka_unit_test(books_typed_alone_know_the_same_farm_and_trap_as_one),
		cmocka_unit_test(traps_of_one_label_and_two_pests_are_two),
		cmocka_unit_test(visit_of_one_book_brings_its_card_and_lure),
		cmocka_unit_test(shipped_kinds_of_a_new_book_undo_no_change),
		cmocka_unit_test(rows_put_in_alike_are_told_apart_in_either_order),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
