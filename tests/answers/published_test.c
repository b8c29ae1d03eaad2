/* The published thresholds beside the grower's own. */
#include "answers/fixture.h"
#include "answers/trial.h"

#include "base/day.h"

static const struct published_row *find(const struct published_rows *p, const char *id)
{
	for (size_t i = 0; i < p->n; i++)
		if (strncmp(p->items[i].rule.source, id, strlen(id)) == 0)
			return &p->items[i];
	fail_msg("no %s", id);
	return NULL;
}

static void published_rows_are_those_of_the_file(void **state)
{
	struct fixture f;
	struct published_rows all = { 0 }, cm = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-09");
	must(published_read(&all, &f.log, 0, &e), &e);
	must(published_read(&cm, &f.log, f.cm.id, &e), &e);
	assert_true(cm.n > 3 && cm.n < all.n);
	for (size_t i = 0; i < all.n; i++) {
		assert_null(rule_fault(&all.items[i].rule));
		assert_true(all.items[i].rule.source[0] && all.items[i].brief[0]);
		assert_false(all.items[i].is_taken);
	}
	const struct published_row *row = find(&cm, "CM1:"); /* two weeks of 2 */
	assert_string_equal(row->pest, "CM");
	assert_string_equal(row->brief, ">=2 2w");
	assert_string_equal(row->where, "apple");
	row = find(&cm, "CM2:"); /* 5, May to July */
	assert_string_equal(row->rule_text, "at least 5 a week, any single trap");
	assert_string_equal(row->where, "apple, 1 May to 31 Jul");
	day_set_style((struct day_style){ .month_first = true });
	must(published_read(&cm, &f.log, f.cm.id, &e), &e);
	assert_string_equal(find(&cm, "CM2:")->where, "apple, May 1 to Jul 31");
	day_set_style((struct day_style){ 0 });
	published_free(&all);
	published_free(&cm);
	fixture_close(&f);
}

static void published_row_that_was_taken_says_so_until_it_is_changed(void **state)
{
	struct fixture f;
	struct threshold_list t = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-05-26");
	fixture_read(&f, "2026-06-09");
	must(threshold_list_read(&t, &f.log, 0, &e), &e);
	assert_int_equal(t.n_own, 0);
	struct rule r = find(&t.published, "CM2:")->rule;
	must(book_put_rule(f.book, &r, &e), &e);
	fixture_read(&f, "2026-06-09");
	must(threshold_list_read(&t, &f.log, 0, &e), &e);
	assert_int_equal(t.n_own, 1);
	assert_true(find(&t.published, "CM2:")->is_taken);
	assert_int_equal(find(&t.published, "CM2:")->own, r.id);
	assert_false(find(&t.published, "CM3:")->is_taken);
	assert_string_equal(t.own[0].changed, "");
	assert_string_equal(t.own[0].never, "");

	static const struct {
		const char *why, *says;
		int32_t value;
		int from, to;
		const char *note;
	} row[] = {
		{ "its number", "changed from CM2: was >=5", 300, 501, 731, "" },
		{ "its window", "changed from CM2: was 1 May to 31 Jul", 500, 515, 731,
			"" },
		{ "both", "changed from CM2: was >=5, 1 May to 31 Jul", 300, 0, 0, "" },
		{ "a note changes no rule", "", 500, 501, 731, "mine" },
	};
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		r.value_x100 = row[i].value;
		r.from = row[i].from;
		r.to = row[i].to;
		text_copy(r.note, sizeof r.note, row[i].note);
		must(book_put_rule(f.book, &r, &e), &e);
		fixture_read(&f, "2026-06-09");
		must(threshold_list_read(&t, &f.log, f.cm.id, &e), &e);
		if (strcmp(t.own[0].changed, row[i].says) != 0)
			fail_msg("%s: %s", row[i].why, t.own[0].changed);
		const struct published_row *p = find(&t.published, "CM2:");
		assert_int_equal(p->is_taken, !row[i].says[0]);
		assert_int_equal(p->changed, row[i].says[0] ? r.id : 0);
	}
	threshold_list_free(&t);
	fixture_close(&f);
}

static void own_rule_of_no_published_source_is_changed_from_nothing(void **state)
{
	struct fixture f;
	struct threshold_list t = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_put_rule(&f, fixture_rule(&f, MEASURE_TRAP_WEEK, 1, 500));
	struct rule r = fixture_rule(&f, MEASURE_BLOCK_WEEK, 1, 300);
	text_copy(r.source, sizeof r.source, "our own notes");
	r.farm = f.farm.id;
	r.lure = f.lure.id;
	r.until_dd = 900;
	fixture_put_rule(&f, r);
	fixture_read(&f, "2026-06-09");
	must(threshold_list_read(&t, &f.log, 0, &e), &e);
	assert_int_equal(t.n_own, 2);
	assert_string_equal(t.own[0].changed, "");
	assert_string_equal(t.own[0].where, "everywhere");
	assert_string_equal(t.own[0].never, "no trap in the book is for CM");
	assert_string_equal(t.own[1].changed, "");
	assert_string_equal(
		t.own[1].where, "Quillback, lure three weeks, until 900 degree-days");
	must(threshold_list_read(&t, &f.log, f.ofm.id, &e), &e);
	assert_int_equal(t.n_own, 0);
	assert_string_equal(t.filter, "OFM");
	threshold_list_free(&t);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(published_rows_are_those_of_the_file),
		cmocka_unit_test(
			published_row_that_was_taken_says_so_until_it_is_changed),
		cmocka_unit_test(
			own_rule_of_no_published_source_is_changed_from_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
