/* The shelf, and the bring list of all farms. */
#include "answers/fixture.h"
#include "answers/shelf.h"

static void read_shelf(struct fixture *f, struct due *d, struct shelf *s)
{
	struct err e = { 0 };

	due_of(&f->log, 0, d);
	must(shelf_read(s, f->book, &f->log, d, &e), &e);
}

static void keep(struct fixture *f, int32_t n, const char *day, int32_t reorder)
{
	struct err e = { 0 };

	f->lure.stock = (struct stock){ n, day_of(day), reorder };
	must(book_put_lure(f->book, &f->lure, &e), &e);
	/* Another kind, counted earlier: what it used is none of the lure's. */
	f->card.stock = (struct stock){ 9, day_of("2026-05-01"), -1 };
	must(book_put_card(f->book, &f->card, &e), &e);
	fixture_read(f, "2026-06-23");
}

static const struct shelf_row *lure_row(const struct fixture *f, const struct shelf *s)
{
	for (size_t i = 0; i < s->n; i++)
		if (s->items[i].is_lure && s->items[i].kind == f->lure.id)
			return &s->items[i];
	return NULL;
}

static void shelf_is_the_count_less_what_was_put_in_since(void **state)
{
	static const struct {
		const char *why;
		int32_t n;
		const char *day;
		int32_t reorder;
		const char *says;
		enum tone tone;
	} row[] = {
		{ "counted before both were hung", 5, "2026-06-01", -1,
			"3 left, 2 to bring", TONE_PLAIN },
		{ "counted on the day of the first", 5, "2026-06-02", -1,
			"4 left, 2 to bring", TONE_PLAIN },
		{ "after both", 5, "2026-06-03", 2, "5 left, 2 to bring, reorder at 2",
			TONE_PLAIN },
		{ "one above the line", 5, "2026-06-03", 4,
			"5 left, 2 to bring, reorder at 4", TONE_PLAIN },
		{ "on the line", 5, "2026-06-03", 5,
			"5 left, 2 to bring: reorder (at 5)", TONE_UNSURE },
		{ "just enough", 2, "2026-06-03", -1, "2 left, 2 to bring",
			TONE_PLAIN },
		{ "one too few", 1, "2026-06-03", 5, "1 left, 2 to bring: 1 too few",
			TONE_UNSURE },
		{ "never below none", 1, "2026-06-01", -1,
			"0 left, 2 to bring: 2 too few", TONE_UNSURE },
	};
	struct due d = { 0 };
	struct shelf s = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-06-02");
	fixture_trap(&f, "2", "2026-06-03");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		keep(&f, row[i].n, row[i].day, row[i].reorder);
		read_shelf(&f, &d, &s);
		assert_true(s.is_kept);
		const struct shelf_row *r = lure_row(&f, &s);
		if (!r || strcmp(r->text, row[i].says) != 0 || r->tone != row[i].tone)
			fail_msg("%s: %s", row[i].why, r ? r->text : "no row");
	}
	due_free(&d);
	shelf_free(&s);
	fixture_close(&f);
}

static void shelf_that_is_not_kept_is_never_empty(void **state)
{
	struct due d = { 0 };
	struct shelf s = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-06-02");
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < f.log.lures.n; i++)
		f.log.lures.items[i].stock.n = -1;
	for (size_t i = 0; i < f.log.cards.n; i++)
		f.log.cards.items[i].stock.n = -1;
	read_shelf(&f, &d, &s);
	assert_int_equal(lure_row(&f, &s)->left, -1);
	assert_string_equal(lure_row(&f, &s)->text, "stock not kept, 1 to bring");
	assert_false(s.is_kept);
	due_free(&d);
	shelf_free(&s);
	fixture_close(&f);
}

static void bring_list_of_all_farms_adds_up_kind_by_kind(void **state)
{
	struct due d = { 0 };
	struct err e = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-06-02");
	f.farm = (struct farm){ .name = "Hather Bend", .season_start = 101 };
	must(book_put_farm(f.book, &f.farm, &e), &e);
	f.block = (struct block){
		.farm = f.farm.id, .name = "Low Pear", .crop = "pear", .area_x100 = -1
	};
	must(book_put_block(f.book, &f.block, &e), &e);
	fixture_trap(&f, "1", "2026-06-02");
	fixture_trap(&f, "2", "2026-06-02");
	fixture_read(&f, "2026-08-01");
	due_of(&f.log, f.farm.id, &d); /* whichever farm is asked for */
	assert_int_equal(d.n_totals, 2);
	assert_true(d.totals[0].is_lure);
	assert_int_equal(d.totals[0].n, 3);
	assert_string_equal(d.totals[0].kind_name, "three weeks");
	assert_false(d.totals[1].is_lure);
	assert_int_equal(d.totals[1].n, 3);
	assert_int_equal(d.n_brings, 2);
	assert_int_equal(d.brings[0].n, 2);
	due_free(&d);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(shelf_is_the_count_less_what_was_put_in_since),
		cmocka_unit_test(shelf_that_is_not_kept_is_never_empty),
		cmocka_unit_test(bring_list_of_all_farms_adds_up_kind_by_kind),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
