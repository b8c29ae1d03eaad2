#include "screen/form_samples.h"

static void form_page_shows_a_record(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "form-80x24", 24, 80, "~~" },
		{ "form-80x24-turn", 24, 80, "~~~>" },
		{ "form-80x24-list", 24, 80, "~~~o~" },
		{ "form-80x24-asked", 24, 80, "~~8\x1b" },
		{ "form-40x16", 16, 40, "~~~>" },
		{ "form-40x16-list", 16, 40, "~~~~o" },
		{ "form-30x10", 10, 30, "~~~~~~~" },
		{ "form-24x8", 8, 24, "~~~m" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		open_form(sample_entry());
		type(row[i].keys);
		if (i == 0)
			SET(form.live[0], "OVER in 4 of 132 trap-weeks this season");
		canvas_size(&c, row[i].rows, row[i].cols);
		form_page_draw(&form, &c);
		expect_golden(row[i].name, &c, i == 0);
	}
	canvas_free(&c);
}

static void form_page_says_what_is_true_of_a_form(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	open_form(sample_entry());
	type("^^");
	while (form_page_field(&form) != SAMPLE_LABEL)
		type("~");
	type("^");
	canvas_size(&c, 24, 80);
	form_page_draw(&form, &c);
	expect_shows("the form's own words", &c, " Block of the trap.");
	canvas_free(&c);
}

static void form_page_types_into_its_fields(void **state)
{
	static const struct {
		const char *why, *keys;
		int field;
		const char *want;
	} row[] = {
		{ "a short value is replaced", "~~8", SAMPLE_LABEL, "8" },
		{ "a number too", "~~~~~28", SAMPLE_LIFE, "28" },
		{ "unless it is edited first", "~~<1", SAMPLE_LABEL, "17" },
		{ "or from its end", "~~}1", SAMPLE_LABEL, "71" },
		{ "a second character is added", "~~12", SAMPLE_LABEL, "12" },
		{ "a note is added to", "^!", SAMPLE_NOTE, "behind the big gate!" },
		{ "Home, then typed", "^{so ", SAMPLE_NOTE, "so behind the big gate" },
		{ "? is typed behind something", "^a?", SAMPLE_NOTE,
			"behind the big gatea?" },
		{ "/ goes back from an untouched one", "\n\n/7b", SAMPLE_BLOCK, "7b" },
		{ "from a choice too", "~~~/7b", SAMPLE_LABEL, "7b" },
		{ "and is typed behind something", "^a/", SAMPLE_NOTE,
			"behind the big gatea/" },
		{ "the next choice", "~~~>", SAMPLE_PEST, "OBLR" },
		{ "the one before, round the start", "~~~<", SAMPLE_PEST, "PTB" },
		{ "by the signs of the number pad", "~~~++-", SAMPLE_PEST, "OBLR" },
		{ "typed and taken", "~~~of\n", SAMPLE_PEST, "OFM" },
		{ "in either case", "~~~OF\n", SAMPLE_PEST, "OFM" },
		{ "those that begin with it come first", "~~~p\n", SAMPLE_PEST, "PTB" },
		{ "the second that matches", "~~~o~\n", SAMPLE_PEST, "OFM" },
		{ "by Right in the list", "~~~o>\n", SAMPLE_PEST, "OFM" },
		{ "Tab takes it as well", "~~~of\t", SAMPLE_PEST, "OFM" },
		{ "a list that is left", "~~~of\x1b", SAMPLE_PEST, "CM" },
		{ "erased and typed again", "~~~ob\b\bp\n", SAMPLE_PEST, "PTB" },
		{ "no choice of a needed one is not offered", "~~~\b", SAMPLE_PEST,
			"CM" },
		{ "what may be typed is taken as it is", "~~~~Own\n", SAMPLE_LURE,
			"Own" },
		{ "even where a choice begins with it", "~~~~o\n", SAMPLE_LURE, "o" },
		{ "unless one is picked", "~~~~o~~\n", SAMPLE_LURE, "OFM" },
		{ "an empty one is turned", "~~~~x\b>", SAMPLE_LURE, "CM" },
		{ "and turned on", "~~~~x\b>>", SAMPLE_LURE, "OBLR" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		open_form(sample_entry());
		type(row[i].keys);
		if (strcmp(form.entry.text[row[i].field], row[i].want) != 0)
			fail_msg("%s: \"%s\", %s", row[i].why,
				form.entry.text[row[i].field], form.message.text);
	}
}

/* Whatever the column has room for: a setting's 10 is typed anew, not to 105. */
static void form_page_replaces_a_short_value(void **state)
{
	static struct entry e;

	(void)state;
	e = *sample_entry();
	SET(e.text[SAMPLE_NOTE], "10");
	open_form(&e);
	type("^5");
	assert_string_equal(form.entry.text[SAMPLE_NOTE], "5");
	SET(e.text[SAMPLE_NOTE], "10");
	open_form(&e);
	type("^\b5");
	assert_string_equal(form.entry.text[SAMPLE_NOTE], "15");
}

static void form_page_keys_want_what_they_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		int by;
	} row[] = {
		{ "Enter goes on", "\n", WANT_FORM_FIELD, 0 },
		{ "Down too", "~", WANT_FORM_FIELD, 0 },
		{ "nothing changed: Enter on the last field goes back", "^\n",
			WANT_BACK, 0 },
		{ "changed: it saves", "^a\n", WANT_PUT, 0 },
		{ "a field above that was changed", "~~8^^^\n", WANT_PUT, 0 },
		{ "Esc with nothing changed", "\x1b", WANT_BACK, 0 },
		{ "typed and typed back", "~~87\b\b7\x1b", WANT_BACK, 0 },
		{ "Esc asks first", "~~8\x1b", WANT_NOTHING, 0 },
		{ "Esc again drops it", "~~8\x1b\x1b", WANT_BACK, 0 },
		{ "Enter then saves from anywhere", "~~8\x1b\n", WANT_PUT, 0 },
		{ "another key goes on",
			"~~8\x1b"
			"9\x1b",
			WANT_NOTHING, 0 },
		{ "a list that is open is left first", "~~~o\x1b", WANT_NOTHING, 0 },
		{ "then the form", "~~~o\x1b\x1b", WANT_BACK, 0 },
		{ "?", "?", WANT_HELP, 0 },
		{ "? in a list", "~~~?", WANT_HELP, 0 },
		{ "nothing matches: it stays", "~~~zz\n", WANT_NOTHING, 0 },
		{ "nor by Tab", "~~~zz\t", WANT_NOTHING, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct wish w;

		open_form(sample_entry());
		w = type(row[i].keys);
		if (w.want != row[i].want || w.by != row[i].by)
			fail_msg("%s: want %d by %d, \"%s\"", row[i].why, (int)w.want,
				w.by, form.message.text);
		if (w.want == WANT_PUT)
			assert_int_equal(w.id, 7);
	}
}

static void form_page_asks_before_it_drops_a_new_one(void **state)
{
	struct entry e = *sample_entry();

	(void)state;
	e.id = 0;
	open_form(&e);
	assert_int_equal(type("\x1b").want, WANT_NOTHING);
	assert_non_null(strstr(form.message.text, "Esc again drops it"));
	assert_int_equal(type("\x1b").want, WANT_BACK);
}

static void form_page_begins_where_something_is_lacking(void **state)
{
	(void)state;
	open_form(sample_entry());
	assert_int_equal(form_page_field(&form), 0);
	assert_int_equal(form_page_left(&form), -1);
	open_form(sample_new_entry());
	assert_int_equal(form_page_field(&form), SAMPLE_PEST);
	assert_false(form_page_changed(&form));
	type("~~^");
	assert_int_equal(form_page_field(&form), SAMPLE_LURE);
	assert_int_equal(form_page_left(&form), SAMPLE_LIFE);
}

static void form_page_saves_a_new_one_from_the_number_pad(void **state)
{
	(void)state;
	open_form(sample_new_entry());
	assert_int_equal(type("+\n\n\n28\n").want, WANT_FORM_FIELD);
	assert_int_equal(form_page_field(&form), SAMPLE_NOTE);
	assert_int_equal(type("\n").want, WANT_PUT);
	assert_string_equal(form.entry.text[SAMPLE_PEST], "CM");
	assert_string_equal(form.entry.text[SAMPLE_LIFE], "84");
	assert_string_equal(form.entry.text[SAMPLE_HUNG], "28");
}

/* A thumb that bounces, or a key that is held down, hangs no trap. */
/* Somebody typed the 8 that was guessed: it was meant, and is not dropped unasked. */
/* What must be typed first is not offered. */
static void form_page_goes_to_what_is_wrong(void **state)
{
	static const struct entry_fault fault = { .field = SAMPLE_LIFE,
		.text = "\"0\" is not right; life is a whole number from 1 to 366" };

	(void)state;
	open_form(sample_entry());
	type("~~~~~0\n");
	assert_int_equal(form_page_field(&form), SAMPLE_HUNG);
	form_page_refuse(&form, &fault);
	assert_int_equal(form_page_field(&form), SAMPLE_LIFE);
	assert_string_equal(form.message.text, fault.text);
	assert_true(form.message.is_fault);
	type("~"); /* by Down it is said, and the hand goes on */
	form_page_refuse(&form, &fault);
	assert_int_equal(form_page_field(&form), SAMPLE_HUNG);
	assert_non_null(strstr(form.message.text, fault.text));
	assert_memory_equal(form.message.text, "life in days: ", 14);
	type("^^^^^^");
	form_page_not_saved(&form, &fault);
	assert_int_equal(form_page_field(&form), SAMPLE_LIFE);
	assert_string_equal(form.entry.text[SAMPLE_LIFE], "0");
}

static void form_page_says_who_changed_it_elsewhere(void **state)
{
	static const struct entry_fault fault = { .field = -1,
		.is_elsewhere = true,
		.text = "JR changed it on 12 June at 07:42" };
	static const struct {
		const char *why, *keys;
		enum want want;
		int by;
	} row[] = {
		{ "Enter puts this over it", "\n", WANT_PUT, 1 },
		{ "Esc shows theirs", "\x1b", WANT_THEIRS, 0 },
		{ "another key edits on, then it is asked again", "^9~\n", WANT_PUT,
			0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct wish w;

		open_form(sample_entry());
		assert_int_equal(type("~~8^^^\n").want, WANT_PUT);
		form_page_not_saved(&form, &fault);
		assert_string_equal(form.message.text,
			"JR changed it on 12 June at 07:42. Enter again puts yours in, "
			"Esc shows theirs.");
		w = type(row[i].keys);
		if (w.want != row[i].want || w.by != row[i].by)
			fail_msg("%s: want %d by %d", row[i].why, (int)w.want, w.by);
		assert_string_equal(form.entry.text[SAMPLE_LABEL], "8");
	}
}

static void form_page_key_line_says_what_enter_does_now(void **state)
{
	static const struct entry_fault elsewhere = { .field = -1,
		.is_elsewhere = true,
		.text = "JR changed it" },
					doubt = { .field = -1,
						.is_doubt = true,
						.text = "It is far off" };
	struct canvas c = { 0 };

	(void)state;
	open_form(sample_entry());
	canvas_size(&c, 16, 40);
	form_page_draw(&form, &c);
	expect_shows("on a field", &c, " Enter next  Esc back  ? keys\n");
	type("O");
	form_page_draw(&form, &c);
	expect_shows("behind a letter ? is one", &c, "Esc back\n");
	type("\b~~~zz");
	form_page_draw(&form, &c);
	expect_shows("a list with none left", &c, "\n Esc drop\n");
	type("\x1b");
	form_page_draw(&form, &c);
	expect_shows("and closed", &c, " + - pick  ");
	open_form(sample_entry());
	type("^");
	form_page_draw(&form, &c);
	expect_shows("on the last one", &c, " Enter save  ");
	form_page_not_saved(&form, &elsewhere);
	form_page_draw(&form, &c);
	expect_shows("changed", &c, " Enter put yours in  Esc show theirs\n");
	form_page_not_saved(&form, &doubt);
	form_page_draw(&form, &c);
	expect_shows("in doubt", &c, " Enter save it  Esc back  ? keys\n");
	canvas_free(&c);
}

static void form_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(form_page_keys());
}

static void form_page_draws_at_every_size(void **state)
{
	static const char *const keys[] = { "", "~~~o", "^", "~~~~o~" };
	static struct entry long_one;
	struct canvas c = { 0 };

	(void)state;
	long_one = *sample_entry();
	for (int i = 0; i < SAMPLE_COLUMNS; i++)
		sample_long(long_one.text[i],
			i == SAMPLE_NOTE ? NOTE_BYTES : NAME_BYTES, i);
	for (size_t i = 0; i < 4; i++)
		for (int rows = 1; rows <= 30; rows++)
			for (int cols = 1; cols <= 90; cols++) {
				open_form(i % 2 ? &long_one : sample_entry());
				type(keys[i]);
				sample_long(form.live[0], SAY_LINE, (int)i);
				SET(form.live[1], "no block grows pear");
				canvas_size(&c, rows, cols);
				form_page_draw(&form, &c);
			}
	form = (struct form_page){ 0 };
	form_page_draw(&form, &c);
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(form_page_shows_a_record),
		cmocka_unit_test(form_page_says_what_is_true_of_a_form),
		cmocka_unit_test(form_page_types_into_its_fields),
		cmocka_unit_test(form_page_replaces_a_short_value),
		cmocka_unit_test(form_page_keys_want_what_they_say),
		cmocka_unit_test(form_page_asks_before_it_drops_a_new_one),
		cmocka_unit_test(form_page_begins_where_something_is_lacking),
		cmocka_unit_test(form_page_saves_a_new_one_from_the_number_pad),
		cmocka_unit_test(form_page_goes_to_what_is_wrong),
		cmocka_unit_test(form_page_says_who_changed_it_elsewhere),
		cmocka_unit_test(form_page_key_line_says_what_enter_does_now),
		cmocka_unit_test(form_page_keys_are_each_named_once),
		cmocka_unit_test(form_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
