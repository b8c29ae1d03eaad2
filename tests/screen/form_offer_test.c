/* A new record in the form, and the next one after it. */
#include "screen/form_samples.h"

static void form_page_offers_the_next_one(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
	} row[] = {
		{ "Enter saves it as it is", "\n", WANT_PUT },
		{ "* begins a block", "*", WANT_PUT_BLOCK },
		{ "a letter is one of the label", "b", WANT_NOTHING },
		{ "Esc ends it", "\x1b", WANT_BACK },
		{ "an arrow key moves", "~", WANT_FORM_FIELD },
		{ "and the offer stands", "~*", WANT_PUT_BLOCK },
		{ "its help ends nothing", "?*", WANT_PUT_BLOCK },
		{ "a character edits it", "9*", WANT_NOTHING },
		{ "and then Enter goes on", "9\n", WANT_FORM_FIELD },
	};
	static struct entry next;

	(void)state;
	next = *sample_new_entry();
	SET(next.text[SAMPLE_PEST], "CM");
	open_form(sample_new_entry());
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		form.now_ms = 1000;
		form_page_offer(&form, &next, "trap 7", true);
		form.now_ms += FORM_BOUNCE_MS;
		assert_int_equal(form_page_field(&form), SAMPLE_LABEL);
		assert_string_equal(form.message.text,
			"Saved: trap 7. Enter saves 8 too, * begins another block, "
			"Esc ends.");
		if (type(row[i].keys).want != row[i].want)
			fail_msg("%s: \"%s\"", row[i].why, form.message.text);
	}
	form_page_offer(&form, &next, "trap 7", false);
	assert_int_equal(type("*").want, WANT_NOTHING);
}

static void form_page_takes_no_enter_that_came_with_the_one_before(void **state)
{
	static struct entry next;

	(void)state;
	next = *sample_new_entry();
	SET(next.text[SAMPLE_PEST], "CM");
	open_form(sample_new_entry());
	form.now_ms = 5000;
	form_page_offer(&form, &next, "trap 7", true);
	form.now_ms += FORM_BOUNCE_MS - 1;
	assert_int_equal(type("\n").want, WANT_NOTHING);
	assert_string_equal(form.message.text,
		"8 is not saved: that Enter came with the one before. Enter saves it, "
		"Esc ends.");
	for (int i = 0; i < 10; i++) { /* held down */
		form.now_ms += FORM_BOUNCE_MS - 1;
		assert_int_equal(type("\n").want, WANT_NOTHING);
	}
	form.now_ms += FORM_BOUNCE_MS;
	assert_int_equal(type("\n").want, WANT_PUT);
	form_page_offer(&form, &next, "trap 7", true);
	assert_int_equal(type("*").want, WANT_PUT_BLOCK); /* no other key waits */
	form_page_offer(&form, &next, "trap 7", true);
	assert_int_equal(type("\x1b").want, WANT_BACK);
}

static void form_page_asks_about_a_new_one_in_which_was_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
	} row[] = {
		{ "the guess itself", "^8\x1b", WANT_NOTHING },
		{ "typed and erased", "~~2\b\x1b", WANT_NOTHING },
		{ "nothing", "~~\x1b", WANT_BACK },
		{ "an arrow in a text", "~~<>\x1b", WANT_BACK },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		open_form(sample_new_entry());
		if (type(row[i].keys).want != row[i].want)
			fail_msg("%s: \"%s\"", row[i].why, form.message.text);
		assert_int_equal(form_page_changed(&form), row[i].want == WANT_NOTHING);
		if (row[i].want == WANT_NOTHING)
			assert_string_equal(form.message.text,
				"Not saved: Esc again drops it, Enter saves it.");
	}
	open_form(sample_entry()); /* of one that is in the book nothing is lost */
	assert_int_equal(type("~~7\x1b").want, WANT_BACK);
}

static void form_page_offers_nothing_that_lacks_something(void **state)
{
	(void)state;
	open_form(sample_new_entry());
	form_page_offer(&form, sample_new_entry(), "block Old Kiln", true);
	assert_int_equal(form_page_field(&form), SAMPLE_PEST);
	assert_int_not_equal(type("\n").want, WANT_PUT);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(form_page_offers_the_next_one),
		cmocka_unit_test(
			form_page_takes_no_enter_that_came_with_the_one_before),
		cmocka_unit_test(form_page_asks_about_a_new_one_in_which_was_typed),
		cmocka_unit_test(form_page_offers_nothing_that_lacks_something),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
