/* What moths may come from, on the Book page. */
#include "answers/fixture.h"

#include "answers/forms.h"
#include "book/places.h"
#include "book/sources.h"

static struct entry *wood(struct fixture *f)
{
	struct entry *r = form_new(f->book, &f->log, ENTRY_SOURCES);

	assert_string_equal(form_text(r, "farm"), "Quillback");
	form_type(r, "name", "Old wood");
	form_type(r, "kind", "woodlot");
	return r;
}

static void a_wrong_source_is_refused(void **state)
{
	static const struct {
		const char *why, *column, *text, *at, *want;
	} row[] = {
		{ "no name", "name", "", "name",
			"a value is missing; it takes a text" },
		{ "no kind", "kind", "", "kind",
			"a value is missing; it takes one of: abandoned, wild, "
			"woodlot, bins, other" },
		{ "no such farm", "farm", "Q", "farm",
			"\"Q\" is not in the book; it has: Quillback" },
		{ "half a position", "lat", "1", "lon",
			"is missing; lat and lon go together" },
		{ "beyond the pole", "lat", "90.1", "lat", "degrees from -90 to 90" },
		{ "two corners", "outline", "1 1; 1 2", "outline",
			"3 to 100 corners, each latitude, blank, longitude" },
		{ "a corner beyond the pole", "outline", "1 1; 1 2; 91 2", "outline",
			"3 to 100 corners" },
	};
	struct fixture f;
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry *r = wood(&f);
		form_type(r, row[i].column, row[i].text);
		bool ok = entry_put(r, f.book, &f.log, false, &fault);
		if (ok || !strstr(fault.text, row[i].want) ||
			fault.field != form_column(ENTRY_SOURCES, row[i].at))
			fail_msg("%s: %s", row[i].why, ok ? "taken" : fault.text);
		free(r);
	}
	fixture_close(&f);
}

static void an_outline_keeps_its_corners_while_others_are_typed(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct sources all = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	struct entry *r = wood(&f);
	form_type(r, "outline", "0.1234567 1;0.5 1 ; 0.5 -1.25");
	form_put(r, f.book, &f.log);
	form_type(r, "name", "Older wood");
	form_put(r, f.book, &f.log);
	must(book_sources(f.book, 0, &all, &e), &e);
	assert_int_equal(all.n, 1);
	assert_int_equal(all.items[0].n_outline, 3);
	assert_true(all.items[0].outline[0].lat == 0.1234567);
	assert_false(all.items[0].has_position);
	assert_string_equal(all.items[0].name, "Older wood");
	struct entry_list list =
		list_of(f.book, &f.log, &(struct entry_ask){ .kind = ENTRY_SOURCES });
	assert_string_equal(list.rows[0].note, "drawn with 3 corners");
	form_type(r, "outline", "");
	form_put(r, f.book, &f.log);
	must(book_sources(f.book, 0, &all, &e), &e);
	assert_int_equal(all.items[0].n_outline, 0);
	must(entry_remove(f.book, ENTRY_SOURCES, r->id, &e), &e);
	free(all.items);
	entry_list_free(&list);
	free(r);
	fixture_close(&f);
}

/* 0.449 and 0.451 degrees of latitude are 49.9 and 50.1 km. */
static void a_source_absurdly_far_from_the_traps_is_asked_about(void **state)
{
	struct fixture f;
	struct entry_fault fault;
	struct traps traps = { 0 };
	struct entry *r;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_trap(&f, "1", "2026-05-05");
	must(book_traps(f.book, 0, &traps, &e), &e);
	traps.items[0].has_position = true;
	traps.items[0].lat = 10;
	traps.items[0].lon = -140;
	must(book_put_trap(f.book, &traps.items[0], &e), &e);
	fixture_read(&f, "2026-06-23");
	r = wood(&f);
	form_type(r, "lat", "10.451");
	form_type(r, "lon", "-140");
	assert_false(entry_put(r, f.book, &f.log, 0, &fault));
	assert_true(fault.is_doubt);
	assert_non_null(strstr(fault.text, "Old wood lies 50 km from the middle"));
	assert_true(entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
	free(r);
	r = wood(&f);
	form_type(r, "name", "Near wood");
	form_type(r, "lat", "10.449");
	form_type(r, "lon", "-140");
	assert_true(entry_put(r, f.book, &f.log, 0, &fault));
	free(r);
	free(traps.items);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_wrong_source_is_refused),
		cmocka_unit_test(a_source_absurdly_far_from_the_traps_is_asked_about),
		cmocka_unit_test(an_outline_keeps_its_corners_while_others_are_typed),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
