/* Traps on the Book page: numbered on, moved, hung, pulled, replaced. */
#include "answers/fixture.h"

#include "answers/entry_traps.h"
#include "answers/forms.h"
#include "base/buf.h"

static const struct entry_ask traps = { .kind = ENTRY_TRAPS };

static void the_label_after_the_last_one_is_offered(void **state)
{
	static const struct {
		const char *why, *last, *want;
	} row[] = {
		{ "a number", "6", "7" },
		{ "a letter before it", "B7", "B8" },
		{ "as wide", "B07", "B08" },
		{ "one digit more", "B99", "B100" },
		{ "no number", "north", "north 2" },
		{ "a number within", "7b", "7b 2" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		fixture_open(&f);
		fixture_trap(&f, row[i].last, NULL);
		fixture_read(&f, "2026-06-23");
		struct entry *r = form_read(f.book, &f.log, &traps, 0);
		if (strcmp(form_text(r, "trap"), row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, form_text(r, "trap"));
		free(r);
		fixture_close(&f);
	}
}

static void a_new_trap_is_like_the_last_one(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	struct entry *r = form_read(f.book, &f.log, &traps, 0);
	assert_string_equal(r->name, "new trap");
	assert_string_equal(form_text(r, "farm"), "Quillback");
	assert_string_equal(form_text(r, "block"), "Upper Russet");
	assert_string_equal(form_text(r, "trap"), "1");
	form_type(r, "pest", "CM");
	form_type(r, "lure", "three weeks");
	form_type(r, "card", "test card");
	form_type(r, "place", "border");
	form_put(r, f.book, &f.log);
	free(r);
	fixture_trap(&f, "2", NULL);
	r = form_read(f.book, &f.log, &traps, 0);
	assert_string_equal(form_text(r, "trap"), "3");
	assert_string_equal(form_text(r, "place"), "");
	assert_string_equal(form_text(r, "lat"), "");
	assert_string_equal(form_text(r, "order"), "");
	free(r);
	struct lure_kind ofm = { .name = "OFM test",
		.pest = f.ofm.id,
		.life_days = 30,
		.stock = { -1, DAY_NONE, -1 } };
	must(book_put_lure(f.book, &ofm, &e), &e);
	struct trap other = { .farm = f.farm.id,
		.block = f.block.id,
		.pest = f.ofm.id,
		.lure = ofm.id,
		.label = "20" };
	must(book_put_trap(f.book, &other, &e), &e);
	fixture_trap(&f, "21", NULL);
	struct entry_ask ask = { .kind = ENTRY_TRAPS, .pest = f.ofm.id };
	r = form_read(f.book, &f.log, &ask, 0);
	assert_string_equal(form_text(r, "pest"), "OFM");
	assert_string_equal(form_text(r, "lure"), "OFM test");
	assert_string_equal(form_text(r, "trap"), "22");
	free(r);
	fixture_close(&f);
}

static void the_list_tells_how_each_trap_hangs(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t one = fixture_trap(&f, "1", "2026-05-04");
	fixture_count(&f, one, "2026-05-11", 3);
	fixture_trap(&f, "2", NULL);
	int64_t old = fixture_trap(&f, "3", "2024-05-04");
	struct visit gone = fixture_counted(old, "2024-09-03", 0);
	gone.outcome = OUTCOME_PULLED;
	gone.count = COUNT_NONE;
	fixture_save(&f, gone);
	int64_t lost = fixture_trap(&f, "4", "2026-05-04");
	gone.trap = lost;
	gone.day = day_of("2026-06-02");
	gone.outcome = OUTCOME_MISSING;
	fixture_save(&f, gone);
	fixture_read(&f, "2026-06-23");
	struct entry_list list = list_of(f.book, &f.log, &traps);
	assert_string_equal(list.title, "Traps");
	assert_int_equal(list.n, 3);
	assert_int_equal(list.n_hidden, 1);
	assert_string_equal(list.rows[0].note, "hangs since 4 May");
	assert_string_equal(list.rows[1].note, "not hung yet");
	assert_string_equal(list.rows[2].note, "missing since 2 Jun");
	struct entry_ask all = {
		.kind = ENTRY_TRAPS, .farm = f.farm.id, .pest = f.cm.id, .retired = true
	};
	must(entry_list_read(&list, f.book, &all, &f.log, &e), &e);
	assert_string_equal(list.title, "Traps of Quillback, CM");
	assert_int_equal(list.n, 4);
	assert_string_equal(list.rows[2].note, "pulled 3 Sep");
	assert_true(list.rows[2].is_retired);
	all.pest = f.ofm.id;
	must(entry_list_read(&list, f.book, &all, &f.log, &e), &e);
	assert_int_equal(list.n, 0);
	entry_list_free(&list);
	fixture_close(&f);
}

/* Trap 1 hung on 1 June, was counted on the 8th and full on the 15th; trap 2 was pulled
 * on the 10th. */
static void what_would_join_series_or_hang_in_the_air_is_refused(void **state)
{
	static const struct {
		const char *why;
		int trap;
		bool hang;
		const char *day, *want;
	} row[] = {
		{ "hung while it hangs", 0, true, "2026-06-20",
			"trap 1 of Quillback hangs already since 2026-06-01; pull it "
			"first, or it is not known what it caught" },
		{ "hung before its visits", 0, true, "2026-05-20",
			"trap 1 of Quillback has a visit after 2026-05-20, on "
			"2026-06-01; put its diary right first" },
		{ "pulled before its visits", 0, false, "2026-06-10",
			"trap 1 of Quillback has a visit after 2026-06-10, on "
			"2026-06-15; put its diary right first" },
		{ "pulled over a full card", 0, false, "2026-06-15",
			"trap 1 of Quillback has a visit on 2026-06-15 already "
			"(floor), and a trap has one a day; put that one right in its "
			"diary" },
		{ "pulled tomorrow", 0, false, "2026-06-24",
			"2026-06-24 lies after today, 2026-06-23" },
		{ "pulled twice", 1, false, "2026-06-20",
			"trap 2 of Quillback does not hang on 2026-06-20" },
		{ "hung on the day it was pulled", 1, true, "2026-06-10",
			"trap 2 of Quillback has a visit on 2026-06-10 already "
			"(pulled), and a trap has one a day; put that one right in its "
			"diary" },
	};
	struct fixture f;
	struct err e = { 0 };
	int64_t trap[2];

	(void)state;
	fixture_open(&f);
	trap[0] = fixture_trap(&f, "1", "2026-06-01");
	trap[1] = fixture_trap(&f, "2", "2026-06-01");
	fixture_count(&f, trap[0], "2026-06-08", 7);
	struct visit full = fixture_counted(trap[0], "2026-06-15", 60);
	full.outcome = OUTCOME_FLOOR;
	fixture_save(&f, full);
	fixture_read(&f, "2026-06-23");
	must(entry_pull(f.book, trap[1], day_of("2026-06-10"), &f.log, &e), &e);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		bool ok = (row[i].hang ? entry_hang : entry_pull)(
			f.book, trap[row[i].trap], day_of(row[i].day), &f.log, &e);
		if (ok || strcmp(e.text, row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, ok ? "taken" : e.text);
	}
	fixture_close(&f);
}

/* The row of the list with that label. */
static const struct entry_row *labelled(
	const struct entry_list *list, const char *label)
{
	for (size_t i = 0; i < list->n; i++)
		if (strcmp(list->rows[i].cells[2], label) == 0)
			return &list->rows[i];
	fail_msg("no trap %s", label);
	return NULL;
}

static void a_trap_for_another_pest_takes_the_place_of_the_old_one(void **state)
{
	struct entry_ask all = { .kind = ENTRY_TRAPS, .retired = true };
	struct fixture f;
	struct err e = { 0 };
	struct undone_step undone;

	(void)state;
	fixture_open(&f);
	int64_t old = fixture_trap(&f, "7", "2026-05-04");
	fixture_trap(&f, "8", "2026-05-04");
	fixture_count(&f, old, "2026-06-23", 4);
	fixture_read(&f, "2026-06-23");
	int32_t today = f.log.today;
	assert_false(entry_replace(f.book, old, f.cm.id, today, &f.log, &e));
	assert_string_equal(
		e.text, "trap 7 is one for CM already; give it a new lure instead");
	must(entry_replace(f.book, old, f.ofm.id, today, &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	struct entry_list list = list_of(f.book, &f.log, &all);
	assert_int_equal(list.n, 3);
	assert_string_equal(labelled(&list, "7")->note, "pulled 23 Jun");
	const struct entry_row *r = labelled(&list, "7b");
	assert_string_equal(r->note, "hangs since 23 Jun");
	assert_true(r < labelled(&list, "8"));
	struct entry *new = form_read(f.book, &f.log, &all, r->id);
	assert_string_equal(form_text(new, "pest"), "OFM");
	assert_string_equal(form_text(new, "block"), "Upper Russet");
	assert_string_equal(form_text(new, "order"), "1");
	assert_int_equal(fixture_visit(&f, old, "2026-06-23").count, 4);
	assert_false(entry_replace(f.book, r->id, f.cm.id, today, &f.log, &e));
	assert_non_null(strstr(e.text, "was hung on 2026-06-23"));
	must(book_undo_step(f.book, NULL, 0, &undone, &e), &e);
	fixture_read(&f, "2026-06-23");
	must(entry_list_read(&list, f.book, &all, &f.log, &e), &e);
	assert_int_equal(list.n, 2);
	assert_string_equal(labelled(&list, "7")->note, "hangs since 4 May");
	free(new);
	entry_list_free(&list);
	fixture_close(&f);
}

static void a_pulled_trap_is_replaced_without_a_second_pulling(void **state)
{
	struct entry_ask all = { .kind = ENTRY_TRAPS, .retired = true };
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t old = fixture_trap(&f, "7b", "2026-05-04");
	fixture_trap(&f, "7c", NULL);
	fixture_read(&f, "2026-06-23");
	must(entry_pull(f.book, old, day_of("2026-06-01"), &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	must(entry_replace(f.book, old, f.ofm.id, f.log.today, &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	struct entry_list list = list_of(f.book, &f.log, &all);
	assert_string_equal(labelled(&list, "7b")->note, "pulled 1 Jun");
	assert_string_equal(labelled(&list, "7d")->note, "hangs since 23 Jun");
	entry_list_free(&list);
	fixture_close(&f);
}

static void order_is(struct fixture *f, const char *want)
{
	struct entry_ask all = { .kind = ENTRY_TRAPS, .retired = true };
	struct buf got = { 0 };

	fixture_read(f, "2026-06-23");
	struct entry_list list = list_of(f->book, &f->log, &all);
	for (size_t i = 0; i < list.n; i++)
		buf_addf(&got, "%s%s", i ? " " : "", list.rows[i].cells[2]);
	assert_string_equal(got.text, want);
	buf_free(&got);
	entry_list_free(&list);
}

static void a_trap_moves_past_those_that_hang(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t a = fixture_trap(&f, "A", "2026-05-04");
	int64_t pulled = fixture_trap(&f, "B", "2026-05-04");
	int64_t c = fixture_trap(&f, "C", "2026-05-04");
	fixture_read(&f, "2026-06-23");
	must(entry_pull(f.book, pulled, day_of("2026-06-01"), &f.log, &e), &e);
	order_is(&f, "A B C");
	must(entry_move(f.book, a, 1, &f.log, &e), &e);
	order_is(&f, "C B A");
	must(entry_move(f.book, a, 1, &f.log, &e), &e);
	must(entry_move(f.book, c, -1, &f.log, &e), &e);
	order_is(&f, "C B A");
	must(entry_move(f.book, a, -1, &f.log, &e), &e);
	order_is(&f, "A B C");
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_label_after_the_last_one_is_offered),
		cmocka_unit_test(a_new_trap_is_like_the_last_one),
		cmocka_unit_test(the_list_tells_how_each_trap_hangs),
		cmocka_unit_test(what_would_join_series_or_hang_in_the_air_is_refused),
		cmocka_unit_test(
			a_trap_for_another_pest_takes_the_place_of_the_old_one),
		cmocka_unit_test(a_pulled_trap_is_replaced_without_a_second_pulling),
		cmocka_unit_test(a_trap_moves_past_those_that_hang),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
