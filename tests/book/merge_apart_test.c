/* What does not go together: it comes in all the same, both are kept, and a person is
 * asked. */
#include "parted.h"

#include "book/weather.h"

#define TO_PEST(code)                                                                  \
	"UPDATE trap SET pest = (SELECT id FROM pest WHERE code = '" code              \
	"'), changed_at = strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), changed_by = 'MB' "   \
	"WHERE label = '1'"

static const char to_t1[] = TO_PEST("T1"), to_t2[] = TO_PEST("T2");

static int64_t counted_for(const char *book, const char *pest, int32_t count)
{
	char sql[256];

	snprintf(sql, sizeof sql,
		"SELECT count(*) FROM visit v JOIN trap t ON t.id = v.trap JOIN pest p "
		"ON p.id = t.pest WHERE p.code = '%s' AND v.count = %d",
		pest, (int)count);
	return number(book, sql);
}

/* One of them corrected the pest of a trap that nobody had counted yet, the other went
 * on counting. */
static void counts_of_two_pests_stay_on_two_traps(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR", "DELETE FROM visit");
	shelf_copy(&t.shelf, t.a, t.b);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	run_sql(t.b, "MB", to_t2);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	both_ways(&t);
	assert_int_equal(counted_for(t.a, "T1", 14), 1);
	assert_int_equal(counted_for(t.a, "T2", 9), 1);
	assert_int_equal(number(t.a, "SELECT count(*) FROM rival"), 0);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap WHERE label IN "
				     "('1', '1 (2)')"),
		2);
	open_matters(t.a, &m);
	assert_true(find_matter(&m, MATTER_KEPT, "trap")->other_pest);
	find_matter(&m, MATTER_NAMES, "trap");
	assert_int_equal(m.n, 2);
	book_matters_free(&m);
	rejoin(&t);
}

static void other_pest_of_a_trap_without_counts_just_holds(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR", "DELETE FROM visit");
	shelf_copy(&t.shelf, t.a, t.b);
	run_sql(t.b, "MB", to_t2);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 14, 9));
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 1);
	assert_int_equal(counted_for(t.a, "T2", 9), 1);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 0);
	book_matters_free(&m);
	rejoin(&t);
}

/* Mistyped and put right again, while the other went on counting. */
static void pest_there_and_back_is_the_same_trap(void **state)
{
	struct undone out;
	struct matters m;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR", "DELETE FROM visit");
	shelf_copy(&t.shelf, t.a, t.b);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_remove_visit(b, t.desk.trap, DAY0 + 14, e));
	book_close(b);
	run_sql(t.b, "MB", to_t2);
	run_sql(t.b, "MB", to_t1);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 21, 9));
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 1);
	assert_int_equal(counted_for(t.a, "T1", 9), 1);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 0);
	book_matters_free(&m);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_undo_visit(b,
		&(struct undo_reach){ 0, t.desk.trap, DAY0 + 10, DAY0 + 15, NULL },
		&out, e));
	book_close(b);
	assert_int_equal(counted_for(t.a, "T1", 14), 1);
	rejoin(&t);
}

static void pest_put_right_after_a_merge_is_the_same_trap(void **state)
{
	struct matters m;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR", "DELETE FROM visit");
	shelf_copy(&t.shelf, t.a, t.b);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	run_sql(t.b, "MB", to_t2);
	merge(t.a, t.b);
	run_sql(t.b, "MB", to_t1);
	count(t.b, "MB", counted(t.desk.trap, DAY0 + 21, 9));
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 1);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap WHERE label = '1'"), 1);
	assert_int_equal(counted_for(t.a, "T1", 14), 1);
	assert_int_equal(counted_for(t.a, "T1", 9), 1);
	open_matters(t.a, &m);
	assert_int_equal(m.n, 0);
	book_matters_free(&m);
	rejoin(&t);
}

/* What is told after a pest that was put right is the change since. */
static void pest_that_is_changed_after_it_was_put_right_is_one_change(void **state)
{
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR", "DELETE FROM visit");
	shelf_copy(&t.shelf, t.a, t.b);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	run_sql(t.b, "MB", to_t2);
	run_sql(t.b, "MB", to_t1);
	run_sql(t.b, "MB", to_t2);
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM trap"), 2);
	assert_int_equal(
		number(t.a, "SELECT count(*) FROM history WHERE undoes = -2"), 1);
	assert_int_equal(counted_for(t.a, "T1", 14), 1);
	rejoin(&t);
}

static void two_traps_are_kept_once_that_is_said(void **state)
{
	struct matters m;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	count(t.a, "JR", counted(t.desk.trap, DAY0 + 14, 14));
	run_sql(t.b, "MB", "DELETE FROM visit");
	run_sql(t.b, "MB", to_t2);
	merge(t.a, t.b);
	open_matters(t.a, &m);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_settle_row(b, find_matter(&m, MATTER_KEPT, "trap"), true, e));
	must(book_settle_row(b, find_matter(&m, MATTER_NAMES, "trap"), true, e));
	book_close(b);
	merge(t.b, t.a);
	merge(t.a, t.b);
	assert_alike(t.a, t.b);
	book_matters_free(&m);
	open_matters(t.b, &m);
	assert_int_equal(m.n, 0);
	assert_int_equal(number(t.b, "SELECT count(*) FROM trap"), 2);
	book_matters_free(&m);
	rejoin(&t);
}

/* What was counted and removed before the pest was changed does not come back to the
 * other pest. */
static void removed_count_does_not_come_back_to_another_pest(void **state)
{
	struct undone out;
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_remove_visit(b, t.desk.trap, DAY0 + 7, e));
	must(book_remove_visit(b, t.desk.trap, DAY0, e));
	book_close(b);
	run_sql(t.a, "JR", to_t2);
	merge(t.a, t.b);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	refused(book_undo_visit(b,
			&(struct undo_reach){ 0, t.desk.trap, DAY0, DAY0 + 9, NULL },
			&out, e),
		ERR_INPUT, "none of another");
	book_close(b);
	rejoin(&t);
}

static void station(const char *book, int64_t id, double lat)
{
	struct station s = { .id = id, .name = "Shed", .has_position = true };
	struct book *b;

	s.lat = s.lon = lat;
	must(b = book_open(book, BOOK_EXISTING, "JR", e));
	must(book_put_station(b, &s, e));
	book_close(b);
}

/* Whoever put it in again knew the one that had been changed, and removed it. */
static void row_that_was_put_in_again_holds(void **state)
{
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	station(t.a, 0, 1);
	station(t.a, number(t.a, "SELECT id FROM station"), 2);
	shelf_copy(&t.shelf, t.a, t.b);
	must(b = book_open(t.a, BOOK_EXISTING, "JR", e));
	must(book_remove(
		b, "station", store_number(b, "SELECT id FROM station", 0), e));
	book_close(b);
	station(t.a, 0, 3);
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM station"), 1);
	assert_int_equal(number(t.a, "SELECT CAST(lat AS INTEGER) FROM station"), 3);
	merge(t.a, t.b);
	assert_alike(t.a, t.b);
	rejoin(&t);
}

static void weather(const char *book, const char *who, double low)
{
	struct weather_day w = { .day = DAY0, .min = low, .max = 25, .unit = 'C' };
	struct book *b;

	must(b = book_open(book, BOOK_EXISTING, who, e));
	w.station = store_number(b, "SELECT id FROM station", 0);
	must(book_save_weather(b, &w, e));
	book_close(b);
}

/* How often the history holds what was typed for the day. */
static int64_t told(const char *book, int low)
{
	char sql[128];

	snprintf(sql, sizeof sql,
		"SELECT count(*) FROM history WHERE kind = 'weather' AND "
		"json_extract(old, '$.low') = %d",
		low);
	return number(book, sql);
}

static void day_of_weather_that_gave_way_is_in_the_history(void **state)
{
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR",
		"INSERT INTO station (name, uid, changed_at, changed_by) VALUES "
		"('Shed', randomblob(16), '2024-10-01T00:00:00.000Z', 'JR')");
	shelf_copy(&t.shelf, t.a, t.b);
	weather(t.a, "JR", 7);
	weather(t.b, "MB", 9);
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT low FROM weather"), 9);
	assert_int_equal(told(t.a, 7), 1);
	assert_int_equal(told(t.b, 7), 1);
	merge(t.a, t.b); /* and is not told again */
	assert_int_equal(told(t.a, 7), 1);
	assert_int_equal(told(t.a, 9), 0);
	rejoin(&t);
}

static void day_of_weather_that_was_removed_unseen_is_in_the_history(void **state)
{
	struct book *b;
	struct two t;

	(void)state;
	part(&t);
	run_sql(t.a, "JR",
		"INSERT INTO station (name, uid, changed_at, changed_by) VALUES "
		"('Shed', randomblob(16), '2024-10-01T00:00:00.000Z', 'JR')");
	weather(t.a, "JR", 5);
	shelf_copy(&t.shelf, t.a, t.b);
	weather(t.a, "JR", 7);
	must(b = book_open(t.b, BOOK_EXISTING, "MB", e));
	must(book_remove_weather(
		b, store_number(b, "SELECT id FROM station", 0), DAY0, e));
	book_close(b);
	both_ways(&t);
	assert_int_equal(number(t.a, "SELECT count(*) FROM weather"), 0);
	assert_int_equal(told(t.a, 7), 1);
	assert_int_equal(told(t.b, 7), 1);
	rejoin(&t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(counts_of_two_pests_stay_on_two_traps),
		cmocka_unit_test(other_pest_of_a_trap_without_counts_just_holds),
		cmocka_unit_test(pest_there_and_back_is_the_same_trap),
		cmocka_unit_test(pest_put_right_after_a_merge_is_the_same_trap),
		cmocka_unit_test(
			pest_that_is_changed_after_it_was_put_right_is_one_change),
		cmocka_unit_test(two_traps_are_kept_once_that_is_said),
		cmocka_unit_test(removed_count_does_not_come_back_to_another_pest),
		cmocka_unit_test(row_that_was_put_in_again_holds),
		cmocka_unit_test(day_of_weather_that_gave_way_is_in_the_history),
		cmocka_unit_test(
			day_of_weather_that_was_removed_unseen_is_in_the_history),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
