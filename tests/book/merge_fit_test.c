/* Rows that do not go together though each was let into its book: the later one holds,
 * the other waits for a person. */
#include "parted.h"

#include "book/rules.h"

static void set(const char *book, const char *who, const char *name, const char *value)
{
	struct book *b;

	must(b = book_open(book, BOOK_EXISTING, who, e));
	must(book_put_setting(b, name, value, e));
	book_close(b);
}

static void settings_that_do_not_fit_are_set_aside(void **state)
{
	struct limits limits;
	struct matters m = { 0 };
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	set(t.a, "JR", "long_nights", "25");
	set(t.a, "JR", "join_nights", "20");
	set(t.b, "MB", "long_nights", "12");
	both_ways(&t);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_limits(b, &limits, e));
	assert_int_equal(limits.long_nights, 12); /* the later one */
	assert_int_equal(limits.join_nights, limits_usual.join_nights);
	must(book_open_matters(b, &m, e));
	struct matter *aside = find_matter(&m, MATTER_ASIDE, "setting");
	assert_string_equal(aside->name, "setting join_nights 20");
	assert_string_equal(aside->removed_at, "");
	refused(book_settle_row(b, aside, true, e), ERR_INPUT, "must not be");
	must(book_settle_row(b, aside, false, e));
	must(book_open_matters(b, &m, e));
	assert_int_equal(m.n, 0);
	book_close(b);
	book_matters_free(&m);
	rejoin(&t);
}

/* join_nights of A does not go with long_nights of B. */
static void set_aside(struct two *t)
{
	part(t);
	set(t->a, "JR", "long_nights", "25");
	set(t->a, "JR", "join_nights", "20");
	set(t->b, "MB", "long_nights", "12");
	merge(t->a, t->b);
	assert_int_equal(number(t->a, "SELECT count(*) FROM aside"), 1);
}

static const char join_nights[] =
	"SELECT coalesce(max(CAST(value AS INTEGER)), 0) FROM setting WHERE name = "
	"'join_nights'";

static void setting_that_was_set_aside_can_be_set_anew(void **state)
{
	struct two t;

	(void)state;
	set_aside(&t);
	set(t.a, "JR", "join_nights", "6");
	both_ways(&t);
	assert_int_equal(number(t.a, join_nights), 6);
	rejoin(&t);
}

static void leave_out(const char *book)
{
	struct matters m;
	struct book *b;

	open_matters(book, &m);
	must(b = book_open(book, BOOK_EXISTING, "JR", e));
	must(book_settle_row(b, find_matter(&m, MATTER_ASIDE, "setting"), false, e));
	book_close(b);
	book_matters_free(&m);
}

static void setting_that_was_left_out_stays_out(void **state)
{
	struct two t;

	(void)state;
	set_aside(&t);
	leave_out(t.a);
	set(t.a, "JR", "long_nights", "25"); /* it would go with that one */
	both_ways(&t);
	assert_int_equal(number(t.a, join_nights), 0);
	rejoin(&t);
}

/* It was changed before, and what is put in again was not. */
static void setting_that_was_left_out_can_be_set_anew(void **state)
{
	struct two t;

	(void)state;
	part(&t);
	set(t.a, "JR", "long_nights", "25");
	set(t.a, "JR", "join_nights", "18");
	set(t.a, "JR", "join_nights", "20");
	set(t.b, "MB", "long_nights", "12");
	merge(t.a, t.b);
	leave_out(t.a);
	set(t.a, "JR", "join_nights", "6");
	both_ways(&t);
	assert_int_equal(number(t.a, join_nights), 6);
	rejoin(&t);
}

static void biofix(struct two *t, const char *book, const char *who, int32_t day)
{
	struct biofix_date x = {
		.farm = t->desk.farm, .pest = t->desk.pest, .season = 2024, .day = day
	};
	struct book *b;

	must(b = book_open(book, BOOK_EXISTING, who, e));
	x.id = store_number(b, "SELECT id FROM biofix", 0);
	must(book_put_biofix(b, &x, e));
	book_close(b);
}

static void biofix_that_was_put_in_later_holds(void **state)
{
	struct two t;

	(void)state;
	part(&t);
	biofix(&t, t.a, "JR", DAY0 + 1);
	biofix(&t, t.a, "JR", DAY0 + 2);
	biofix(&t, t.b, "MB", DAY0 + 9);
	both_ways(&t);
	assert_int_equal(
		number(t.a, "SELECT CAST(julianday(day) - 2440587.5 AS INTEGER) "
			    "FROM biofix"),
		DAY0 + 9);
	rejoin(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(settings_that_do_not_fit_are_set_aside),
		cmocka_unit_test(setting_that_was_set_aside_can_be_set_anew),
		cmocka_unit_test(setting_that_was_left_out_stays_out),
		cmocka_unit_test(setting_that_was_left_out_can_be_set_anew),
		cmocka_unit_test(biofix_that_was_put_in_later_holds),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
