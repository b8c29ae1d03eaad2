#include "screen/entry_page.h"

#include "screen/entry_samples.h"

/* The loop's part: nothing refers to the records. */
static struct wish type(struct entry_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		w = entry_page_key(p, entry_key_of(*keys));
		if (w.want == WANT_REMOVE && w.by == 0)
			entry_page_ask_removal(p);
	}
	return w;
}

static void show(struct entry_page *p, const struct entry_list *l)
{
	entry_page_show(p, sample_family(), l, true);
	p->rows = 10;
}

static void entry_page_shows_the_records(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "entries-80x24", 24, 80, "~~" },
		{ "entries-80x24-narrow", 24, 80, "/kiln" },
		{ "entries-80x24-narrowed", 24, 80, "/kiln\n" },
		{ "entries-80x24-none", 24, 80, "/zz" },
		{ "entries-80x24-sure", 24, 80, "~\x7f" },
		{ "entries-40x16", 16, 40, "~~" },
		{ "entries-30x8", 8, 30, "}" },
	};
	struct entry_list l = sample_entries(30);
	struct canvas c = { 0 };

	(void)state;
	l.n_hidden = 2;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_page p = { 0 };

		show(&p, &l);
		type(&p, row[i].keys);
		canvas_size(&c, row[i].rows, row[i].cols);
		entry_page_draw(&p, &c);
		expect_golden(row[i].name, &c, i == 0);
		entry_page_free(&p);
	}
	canvas_free(&c);
	free(l.rows);
}

static void entry_page_asks_for_the_pest_of_a_replacement(void **state)
{
	struct entry_list l = sample_entries(30);
	struct entry_choices pests = sample_choices(true);
	struct entry_page p = { 0 };
	struct canvas c = { 0 };
	struct wish w;

	(void)state;
	show(&p, &l);
	w = type(&p, "~r");
	assert_int_equal(w.want, WANT_REPLACE);
	assert_int_equal(w.id, 2);
	assert_string_equal(w.words.note, "");
	entry_page_ask(&p, &pests);
	type(&p, "o~");
	canvas_size(&c, 24, 80);
	entry_page_draw(&p, &c);
	expect_golden("entries-80x24-replace", &c, false);
	w = type(&p, "\n");
	assert_int_equal(w.want, WANT_REPLACE);
	assert_int_equal(w.id, 2);
	assert_string_equal(w.words.note, "OFM");
	entry_page_ask(&p, &pests);
	assert_int_equal(type(&p, "zz\n").want, WANT_NOTHING);
	assert_int_equal(type(&p, "\x1b").want, WANT_NOTHING);
	assert_false(p.replacing);
	assert_int_equal(type(&p, "\x1b").want, WANT_BACK);
	canvas_free(&c);
	entry_page_free(&p);
	free(l.rows);
}

static void entry_page_keys_want_what_they_say(void **state)
{
	static const struct {
		const char *keys;
		enum want want;
		int64_t id;
		int by;
	} row[] = {
		{ "\n", WANT_FORM, 1, 0 },
		{ "~\n", WANT_FORM, 2, 0 },
		{ "22\n", WANT_FORM, 3, 0 },
		{ "}\n", WANT_FORM, 30, 0 },
		{ "}{\n", WANT_FORM, 1, 0 },
		{ "n", WANT_FORM, 0, 0 },
		{ "0", WANT_FORM, 0, 0 },
		{ "x", WANT_RETIRE, 1, 1 },
		{ "~~x", WANT_RETIRE, 3, 0 },
		{ "+", WANT_MOVE, 1, 1 },
		{ "-", WANT_MOVE, 1, -1 },
		{ "h", WANT_NOTHING, 0, 0 },
		{ "h\n", WANT_HANG, 1, 0 },
		{ "hh", WANT_NOTHING, 0, 0 },
		{ "o", WANT_NOTHING, 0, 0 },
		{ "o\n", WANT_PULL, 1, 0 },
		{ "oo", WANT_NOTHING, 0, 0 },
		{ "o\x1b\n", WANT_FORM, 1, 0 },
		{ "r", WANT_REPLACE, 1, 0 },
		{ "d", WANT_DIARY, 1, 0 },
		{ "c", WANT_CHANGES, 1, 0 },
		{ "a", WANT_ENTRY_ALL, 0, 0 },
		{ "f", WANT_ENTRY_FARM, 0, 0 },
		{ "p", WANT_ENTRY_PEST, 0, 0 },
		{ "u", WANT_UNDO_STEP, 0, 0 },
		{ "\x1b", WANT_BACK, 0, 0 },
		{ "?", WANT_HELP, 0, 0 },
		{ "z", WANT_NOTHING, 0, 0 },
		{ "\x7f", WANT_REMOVE, 1, 0 },
		{ "\x7f\x7f", WANT_REMOVE, 1, 1 },
		{ "\x7f~\x7f", WANT_REMOVE, 2, 0 },
		{ "/30\n", WANT_FORM, 30, 0 },
		{ "/pulled\n", WANT_FORM, 3, 0 },
		{ "/kiln~\n", WANT_FORM, 4, 0 },
		{ "/zz\n", WANT_NOTHING, 0, 0 },
		{ "/kiln\x1b\x1b", WANT_BACK, 0, 0 },
		{ "/kiln\nx\x1b", WANT_NOTHING, 0, 0 },
	};
	struct entry_list l = sample_entries(30);

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_page p = { 0 };
		struct wish w;

		show(&p, &l);
		w = type(&p, row[i].keys);
		if (w.want != row[i].want || w.id != row[i].id || w.by != row[i].by)
			fail_msg("%s: want %d of %d by %d, \"%s\"", row[i].keys,
				(int)w.want, (int)w.id, w.by, p.message.text);
		if (w.id || w.want == WANT_FORM)
			assert_int_equal(w.kind, ENTRY_TRAPS);
		entry_page_free(&p);
	}
	free(l.rows);
}

static void entry_page_has_the_keys_of_its_family_alone(void **state)
{
	struct entry_list l = sample_entries(2);
	struct entry_page p = { 0 };

	(void)state;
	show(&p, &l);
	expect_keys(entry_page_keys(&p));
	assert_int_equal(entry_page_keys(&p).n, entry_page_all_keys().n);
	entry_page_show(&p, sample_settings(), &l, true);
	expect_keys(entry_page_keys(&p));
	for (const char *key = "n0xharopdf+-\x7f"; *key; key++)
		if (keys_find(entry_page_keys(&p), entry_key_of(*key)))
			fail_msg("settings have the key %c", *key);
	assert_int_equal(type(&p, "c").want, WANT_CHANGES);
	entry_page_free(&p);
	free(l.rows);
}

static void entry_page_says_why_nothing_is_picked(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t n;
		const char *says;
	} row[] = {
		{ "nothing is there", "\n", 0, "There is none: n makes one." },
		{ "nothing is found", "/zz\n", 3,
			"Nothing is picked: Esc shows all again." },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_list l = sample_entries(row[i].n);
		struct entry_page p = { 0 };

		show(&p, &l);
		if (type(&p, row[i].keys).want != WANT_NOTHING ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: %s", row[i].why, p.message.text);
		entry_page_free(&p);
		free(l.rows);
	}
}

static void entry_page_keeps_its_record_picked(void **state)
{
	struct entry_list l = sample_entries(30), less = sample_entries(30);
	struct entry_page p = { 0 };

	(void)state;
	show(&p, &l);
	type(&p, "~~~~");
	memmove(less.rows, less.rows + 2, 28 * sizeof *less.rows);
	less.n = 28;
	entry_page_show(&p, sample_family(), &less, false);
	assert_int_equal(type(&p, "\n").id, 5);
	less.n = 1;
	entry_page_show(&p, sample_family(), &less, false);
	assert_int_equal(type(&p, "\n").id, 3);
	less.n = 0;
	entry_page_show(&p, sample_family(), &less, false);
	assert_int_equal(type(&p, "\n").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "There is none: n makes one.");
	entry_page_show(&p, sample_family(), &l, false);
	assert_int_equal(type(&p, "\n").id, 5); /* it is back */
	type(&p, "~^");
	entry_page_pick(&p, 17);
	assert_int_equal(type(&p, "\n").id, 17);
	entry_page_free(&p);
	free(l.rows);
	free(less.rows);
}

static void entry_page_draws_at_every_size(void **state)
{
	struct entry_list l[] = { sample_entries(0), sample_entries(30),
		sample_entries(30) };
	struct entry_choices pests = sample_choices(true);
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < 30; i++)
		for (int k = 0; k < ENTRY_CELLS_MAX; k++)
			sample_long(l[2].rows[i].cells[k], ENTRY_CELL, k);
	for (size_t i = 0; i < 3; i++)
		for (int rows = 1; rows <= 30; rows++)
			for (int cols = 1; cols <= 90; cols++) {
				struct entry_page p = { 0 };

				show(&p, &l[i]);
				p.picked = (size_t)(cols % 30);
				if (cols % 3 == 0)
					type(&p, "/W");
				if (cols % 3 == 1)
					entry_page_ask(&p, &pests);
				canvas_size(&c, rows, cols);
				entry_page_draw(&p, &c);
				entry_page_free(&p);
			}
	canvas_size(&c, 5, 5);
	entry_page_draw(&(struct entry_page){ 0 }, &c);
	canvas_free(&c);
	for (size_t i = 0; i < 3; i++)
		free(l[i].rows);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(entry_page_shows_the_records),
		cmocka_unit_test(entry_page_asks_for_the_pest_of_a_replacement),
		cmocka_unit_test(entry_page_keys_want_what_they_say),
		cmocka_unit_test(entry_page_has_the_keys_of_its_family_alone),
		cmocka_unit_test(entry_page_says_why_nothing_is_picked),
		cmocka_unit_test(entry_page_keeps_its_record_picked),
		cmocka_unit_test(entry_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
