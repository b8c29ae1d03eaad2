/* Records put away and taken out, what changed in them, what fields are chosen from. */
#include "answers/fixture.h"

#include "answers/entry_changes.h"
#include "answers/entry_traps.h"
#include "answers/forms.h"
#include "book/weather.h"

static void what_hangs_keeps_its_farm_and_block(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct entry_ask ask = { .kind = ENTRY_BLOCKS };

	(void)state;
	fixture_open(&f);
	int64_t one = fixture_trap(&f, "1", "2026-05-04");
	int64_t two = fixture_trap(&f, "2", "2026-05-04");
	fixture_read(&f, "2026-06-23");
	assert_false(entry_retire(f.book, ENTRY_FARMS, f.farm.id, true, &f.log, &e));
	assert_string_equal(e.text,
		"Quillback is not put away: 2 traps hang there; pull them first");
	must(entry_pull(f.book, one, f.log.today, &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	assert_false(entry_retire(f.book, ENTRY_BLOCKS, f.block.id, true, &f.log, &e));
	assert_string_equal(e.text,
		"Upper Russet is not put away: 1 trap hangs there; pull it first");
	must(entry_pull(f.book, two, f.log.today, &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	must(entry_retire(f.book, ENTRY_BLOCKS, f.block.id, true, &f.log, &e), &e);
	must(entry_retire(f.book, ENTRY_FARMS, f.farm.id, true, &f.log, &e), &e);
	struct entry_list list = list_of(f.book, &f.log, &ask);
	assert_int_equal(list.n, 0);
	assert_int_equal(list.n_hidden, 1);
	ask.retired = true;
	must(entry_list_read(&list, f.book, &ask, &f.log, &e), &e);
	assert_int_equal(list.n, 1);
	assert_true(list.rows[0].is_retired);
	assert_int_equal(list.rows[0].tone, TONE_QUIET);
	assert_string_equal(list.rows[0].note, "put away");
	struct entry *r = form_read(f.book, &f.log, &ask, f.block.id);
	assert_true(r->is_retired);
	form_type(r, "crop", "pear");
	form_put(r, f.book, &f.log);
	free(r);
	must(entry_retire(f.book, ENTRY_BLOCKS, f.block.id, false, &f.log, &e), &e);
	ask.retired = false;
	must(entry_list_read(&list, f.book, &ask, &f.log, &e), &e);
	assert_int_equal(list.n, 1);
	entry_list_free(&list);
	fixture_close(&f);
}

static void kinds_are_put_away_and_brought_back(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	const struct {
		enum entry_kind kind;
		int64_t id;
	} row[] = { { ENTRY_PESTS, f.ofm.id }, { ENTRY_LURES, f.lure.id },
		{ ENTRY_CARDS, f.card.id } };
	for (size_t i = 0; i < 3; i++) {
		struct entry_ask ask = { .kind = row[i].kind };
		struct entry_list list = list_of(f.book, &f.log, &ask);
		size_t n = list.n;
		must(entry_retire(f.book, row[i].kind, row[i].id, true, &f.log, &e),
			&e);
		must(entry_list_read(&list, f.book, &ask, &f.log, &e), &e);
		assert_int_equal(list.n, n - 1);
		assert_int_equal(list.n_hidden, 1);
		must(entry_retire(f.book, row[i].kind, row[i].id, false, &f.log, &e),
			&e);
		must(entry_list_read(&list, f.book, &ask, &f.log, &e), &e);
		assert_int_equal(list.n, n);
		entry_list_free(&list);
	}
	assert_false(entry_retire(f.book, ENTRY_TRAPS, 1, true, &f.log, &e));
	assert_string_equal(e.text, "a trap is not put away: pull it instead");
	assert_false(entry_retire(f.book, ENTRY_SETTINGS, 1, true, &f.log, &e));
	assert_false(entry_retire(f.book, ENTRY_PESTS, 99999, true, &f.log, &e));
	assert_int_equal(e.kind, ERR_NOT_FOUND);
	fixture_close(&f);
}

static void only_what_nothing_refers_to_is_taken_out(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct buf users = { 0 };
	struct block empty = { .name = "Far Bank", .area_x100 = -1 };

	(void)state;
	fixture_open(&f);
	int64_t trap = fixture_trap(&f, "1", "2026-05-04");
	const struct {
		enum entry_kind kind;
		int64_t id;
		const char *says;
	} row[] = { { ENTRY_FARMS, f.farm.id, "in use, by" },
		{ ENTRY_BLOCKS, f.block.id, "in use, by" },
		{ ENTRY_TRAPS, trap, "in use, by 1 visit" },
		{ ENTRY_PESTS, f.cm.id, "in use, by" },
		{ ENTRY_LURES, f.lure.id, "in use, by" },
		{ ENTRY_CARDS, f.card.id, "in use, by" },
		{ ENTRY_SETTINGS, 1, "a setting stays" } };
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		bool ok = entry_remove(f.book, row[i].kind, row[i].id, &e);
		if (ok || e.kind != ERR_INPUT || !strstr(e.text, row[i].says))
			fail_msg("%s: %s", entry_families[row[i].kind].name, e.text);
	}
	empty.farm = f.farm.id;
	must(book_put_block(f.book, &empty, &e), &e);
	must(entry_users(f.book, ENTRY_BLOCKS, empty.id, &users, &e), &e);
	assert_int_equal(users.n, 0);
	must(entry_users(f.book, ENTRY_TRAPS, trap, &users, &e), &e);
	assert_string_equal(users.text, "1 visit");
	buf_free(&users);
	must(entry_remove(f.book, ENTRY_BLOCKS, empty.id, &e), &e);
	struct entry_list list =
		list_of(f.book, &f.log, &(struct entry_ask){ .kind = ENTRY_BLOCKS });
	assert_int_equal(list.n, 1);
	entry_list_free(&list);
	fixture_close(&f);
}

/* Without the time before it: "JR: lasts, days was 21, is 28". */
static const char *said(const struct entry_changes *c, size_t i)
{
	assert_true(i < c->n);
	const char *by = strstr(c->lines[i], " JR: ");
	return by ? by + 1 : c->lines[i];
}

static void what_changed_is_told_in_the_words_of_the_form(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct entry_changes c = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	book_set_who(f.book, "JR");
	struct entry *r = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
	form_type(r, "area_ha", "4.25");
	form_put(r, f.book, &f.log);
	form_type(r, "condition", "disrupted");
	form_type(r, "variety", "Amberlock");
	form_put(r, f.book, &f.log);
	free(r);
	must(entry_changes_read(&c, f.book, ENTRY_BLOCKS, f.block.id, &e), &e);
	assert_int_equal(c.n, 4);
	assert_string_equal(said(&c, 0), "JR: variety was empty, is Amberlock");
	assert_string_equal(
		said(&c, 1), "JR: condition was conventional, is disrupted");
	assert_string_equal(said(&c, 2), "JR: area was empty, is 4.25 ha");
	assert_non_null(strstr(c.lines[3], " put in"));
	r = form_of(f.book, &f.log, ENTRY_FARMS, f.farm.id);
	form_type(r, "season_start", "07-01");
	form_type(r, "run_weekday", "Tue");
	form_put(r, f.book, &f.log);
	free(r);
	must(entry_changes_read(&c, f.book, ENTRY_FARMS, f.farm.id, &e), &e);
	assert_string_equal(said(&c, 0), "JR: season begins was 01-01, is 07-01");
	assert_string_equal(said(&c, 1), "JR: run on was empty, is Tue");
	must(entry_changes_read(&c, f.book, ENTRY_SETTINGS, 1, &e), &e);
	assert_int_equal(c.n, 0);
	must(book_put_setting(f.book, "join_nights", "4", &e), &e);
	must(book_put_setting(f.book, "join_nights", "6", &e), &e);
	must(entry_changes_read(&c, f.book, ENTRY_SETTINGS, 1, &e), &e);
	assert_string_equal(said(&c, 0), "JR: value was 4, is 6");
	entry_changes_free(&c);
	fixture_close(&f);
}

static void a_field_is_chosen_from_what_fits_the_others(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct farm farm = { .name = "Hather Bend", .season_start = 101 };
	struct block other = { .name = "Weir Bank", .crop = "pear", .area_x100 = -1 };
	struct station weir = { .name = "Weir" };

	(void)state;
	fixture_open(&f);
	must(book_put_farm(f.book, &farm, &e), &e);
	other.farm = farm.id;
	must(book_put_block(f.book, &other, &e), &e);
	must(book_put_station(f.book, &weir, &e), &e);
	fixture_read(&f, "2026-06-23");
	struct entry *r = form_new(f.book, &f.log, ENTRY_TRAPS);
	form_choices_are(&f.log, r, "farm", "Hather Bend|Quillback", true);
	form_choices_are(&f.log, r, "block", "", true);
	form_type(r, "farm", "Hather Bend");
	form_choices_are(&f.log, r, "block", "Weir Bank", true);
	form_type(r, "farm", "Quillback");
	form_choices_are(&f.log, r, "block", "Upper Russet", true);
	form_choices_are(&f.log, r, "place", "border|interior|outside", true);
	form_choices_are(&f.log, r, "hung", "", false);
	form_type(r, "pest", "OFM");
	struct entry_choices c = { 0 };
	entry_choices_of(r, form_column(ENTRY_TRAPS, "lure"), &f.log, &c);
	for (size_t i = 0; i < c.n; i++)
		assert_null(strstr(c.items[i].help, "for CM"));
	form_type(r, "pest", "CM");
	entry_choices_of(r, form_column(ENTRY_TRAPS, "lure"), &f.log, &c);
	bool found = false;
	for (size_t i = 0; i < c.n; i++)
		found = found ||
			(strcmp(c.items[i].text, "three weeks") == 0 &&
				strcmp(c.items[i].help, "21 days, for CM") == 0);
	assert_true(found);
	size_t n = c.n;
	must(entry_retire(f.book, ENTRY_LURES, f.lure.id, true, &f.log, &e), &e);
	fixture_read(&f, "2026-06-23");
	entry_choices_of(r, form_column(ENTRY_TRAPS, "lure"), &f.log, &c);
	assert_int_equal(c.n, n - 1);
	entry_choices_free(&c);
	free(r);
	r = form_new(f.book, &f.log, ENTRY_BLOCKS);
	/* The block's and trap's own first, then those of the published thresholds. */
	form_choices_are(&f.log, r, "crop",
		"apple|pear|peach|blueberry|grape|cranberry|plum", false);
	free(r);
	r = form_new(f.book, &f.log, ENTRY_FARMS);
	form_choices_are(&f.log, r, "station", "Weir", true);
	form_choices_are(&f.log, r, "run_weekday", "Mon|Tue|Wed|Thu|Fri|Sat|Sun", true);
	free(r);
	fixture_close(&f);
}

/* The pests of the traps that there are, then the others. */
static void pests_that_hang_are_offered_first(void **state)
{
	struct entry_choices c = { 0 };
	struct err e = { 0 };
	struct pest first = { .code = "AAA", .name = "First of all" };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	must(book_put_pest(f.book, &first, &e), &e);
	fixture_trap(&f, "1", "2026-05-04");
	fixture_read(&f, "2026-06-23");
	struct entry *r = form_new(f.book, &f.log, ENTRY_TRAPS);
	entry_choices_of(r, form_column(ENTRY_TRAPS, "pest"), &f.log, &c);
	assert_string_equal(c.items[0].text, "CM");
	assert_string_equal(c.items[1].text, "AAA");
	entry_choices_free(&c);
	free(r);
	fixture_close(&f);
}

/* What is said on the page is what the book holds to. */
int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_hangs_keeps_its_farm_and_block),
		cmocka_unit_test(kinds_are_put_away_and_brought_back),
		cmocka_unit_test(only_what_nothing_refers_to_is_taken_out),
		cmocka_unit_test(what_changed_is_told_in_the_words_of_the_form),
		cmocka_unit_test(a_field_is_chosen_from_what_fits_the_others),
		cmocka_unit_test(pests_that_hang_are_offered_first),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
