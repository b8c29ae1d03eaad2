/* Settings as a list and forms. */
#include "answers/fixture.h"

#include "answers/entry_rules.h"
#include "answers/forms.h"

static void each_setting_says_what_it_takes(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct manner m;
	struct entry_fault fault;
	struct entry_ask ask = { .kind = ENTRY_SETTINGS };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	struct entry_list list = list_of(f.book, &f.log, &ask);
	assert_int_equal(list.n, 18);
	assert_string_equal(list.rows[0].cells[0], "Scout who is out");
	assert_string_equal(list.rows[1].note, "ha or acre");
	assert_string_equal(
		list.rows[7].cells[0], "Nights under which intervals are joined");
	assert_string_equal(list.rows[7].cells[1], "5");
	assert_string_equal(list.rows[7].note, "1 to 31, usual: 5");
	struct entry *r = form_read(f.book, &f.log, &ask, 13);
	assert_string_equal(r->name, "Areas in");
	form_choices_are(&f.log, r, "value", "ha|acre", true);
	form_type(r, "value", "rods");
	int value = form_column(ENTRY_SETTINGS, "value");
	assert_false(entry_field_good(r, value, &fault));
	assert_string_equal(
		fault.text, "\"rods\" is not right; it takes one of: ha, acre");
	form_type(r, "value", "Acre");
	form_put(r, f.book, &f.log);
	must(manner_read(&m, f.book, &e), &e);
	assert_true(m.acres && !m.feet && !m.fahrenheit);
	free(r);
	r = form_read(f.book, &f.log, &ask, 1);
	form_choices_are(&f.log, r, "value", "", false);
	form_type(r, "value", "");
	form_put(r, f.book, &f.log);
	free(r);
	must(entry_list_read(&list, f.book, &ask, &f.log, &e), &e);
	assert_string_equal(list.rows[7].cells[1], "5");
	entry_list_free(&list);
	fixture_close(&f);
}

static void settings_are_typed_as_they_are_said(void **state)
{
	static const struct {
		const char *why, *name, *typed, *shown, *book;
	} row[] = {
		{ "a part in percent", "near_x100", "80 %", "80 %", "80" },
		{ "without a blank", "near_x100", "90%", "90 %", "90" },
		{ "as a bare number", "near_x100", "0", "0 %", "0" },
		{ "yes", "skip_biofix_day", "yes", "yes", "1" },
		{ "in either case", "skip_biofix_day", "NO", "no", "0" },
		{ "as in a file", "skip_biofix_day", "1", "yes", "1" },
	};
	const struct entry_ask ask = { .kind = ENTRY_SETTINGS };
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char held[NOTE_BYTES];
		int64_t id = 1;
		while (strcmp(setting_facts[id - 1].name, row[i].name) != 0)
			id++;
		struct entry *r = form_read(f.book, &f.log, &ask, id);
		form_type(r, "value", row[i].typed);
		form_put(r, f.book, &f.log);
		free(r);
		r = form_read(f.book, &f.log, &ask, id);
		must(book_setting(f.book, row[i].name, held, sizeof held, &e), &e);
		if (strcmp(form_text(r, "value"), row[i].shown) != 0 ||
			strcmp(held, row[i].book) != 0)
			fail_msg("%s: \"%s\", in the book \"%s\"", row[i].why,
				form_text(r, "value"), held);
		free(r);
	}
	struct entry *r = form_read(f.book, &f.log, &ask, 9);
	form_choices_are(&f.log, r, "value", "yes|no", true);
	free(r);
	fixture_close(&f);
}

static void the_range_of_a_setting_is_that_of_the_book(void **state)
{
	struct fixture f;
	struct entry_fault fault;
	struct entry_ask ask = { .kind = ENTRY_SETTINGS };

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	struct entry_list list = list_of(f.book, &f.log, &ask);
	for (size_t i = 0; i < list.n; i++) {
		int lo, hi;
		char text[16];
		if (sscanf(list.rows[i].note, "%d to %d", &lo, &hi) != 2)
			continue;
		for (int k = 0; k < 2; k++) {
			struct entry *r =
				form_read(f.book, &f.log, &ask, list.rows[i].id);
			snprintf(text, sizeof text, "%d", k ? hi + 1 : lo - 1);
			form_type(r, "value", text);
			assert_false(entry_put(r, f.book, &f.log, false, &fault));
			char want[80], book[80];
			const char *name = setting_facts[list.rows[i].id - 1].name;
			struct err e = { 0 };
			snprintf(want, sizeof want,
				"\"%s\" is not right; it takes a whole number from %d "
				"to %d",
				text, lo, hi);
			snprintf(book, sizeof book, "is \"%s\"; it goes from %d to %d",
				text, lo, hi);
			assert_false(book_put_setting(f.book, name, text, &e));
			if (strcmp(fault.text, want) != 0 || !strstr(e.text, book))
				fail_msg("%s: %s; %s", list.rows[i].cells[0],
					fault.text, e.text);
			free(r);
		}
	}
	entry_list_free(&list);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_setting_says_what_it_takes),
		cmocka_unit_test(settings_are_typed_as_they_are_said),
		cmocka_unit_test(the_range_of_a_setting_is_that_of_the_book),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
