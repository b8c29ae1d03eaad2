#include "screen/book_page.h"

#include "screen/entry_samples.h"
#include "screen/text_page.h"

static struct book_page sample_book(void)
{
	static const struct {
		enum want want;
		const char *name, *count, *help;
	} line[] = {
		{ WANT_ENTRIES, "farms", "3", "Farms and when their season begins." },
		{ WANT_ENTRIES, "blocks", "12", "Blocks and what grows in them." },
		{ WANT_ENTRIES, "traps", "42, 3 put away", "Traps in driving order." },
		{ WANT_THRESHOLDS, "thresholds", "6",
			"What catches are held against." },
		{ WANT_WEATHER, "weather", "1 station", "Temperatures, day by day." },
		{ WANT_BACKUPS, "backups", "9", "Copies of the book." },
	};
	struct book_page p = { .rows = 10, .right = "/home/jr/book.db" };

	for (size_t i = 0; i < sizeof line / sizeof *line; i++) {
		p.lines[p.n] = (struct book_line){ .want = line[i].want,
			.kind = (int)i,
			.name = line[i].name,
			.help = line[i].help };
		SET(p.lines[p.n++].count, line[i].count);
	}
	return p;
}

static void book_page_shows_what_the_book_holds(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
	} row[] = {
		{ "book-80x24", 24, 80 },
		{ "book-40x16", 16, 40 },
		{ "book-24x8", 8, 24 },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book_page p = sample_book();

		book_page_key(&p, sample_key('~'));
		canvas_size(&c, row[i].rows, row[i].cols);
		book_page_draw(&p, &c);
		expect_golden(row[i].name, &c, i == 0);
	}
	canvas_free(&c);
}

static void book_page_opens_the_picked_list(void **state)
{
	static const struct {
		const char *keys;
		enum want want;
		int kind;
	} row[] = {
		{ "\n", WANT_ENTRIES, 0 },
		{ "22\n", WANT_ENTRIES, 2 },
		{ "228\n", WANT_ENTRIES, 1 },
		{ "~~~\n", WANT_THRESHOLDS, 3 },
		{ "1\n", WANT_BACKUPS, 5 },
		{ "u", WANT_UNDO_STEP, 0 },
		{ "\x1b", WANT_BACK, 0 },
		{ "?", WANT_HELP, 0 },
		{ "z", WANT_NOTHING, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book_page p = sample_book();
		struct wish w = page_wish(WANT_NOTHING);

		for (const char *key = row[i].keys; *key; key++)
			w = book_page_key(&p, sample_key(*key));
		if (w.want != row[i].want || w.kind != row[i].kind)
			fail_msg("%s: want %d, kind %d", row[i].keys, (int)w.want,
				w.kind);
	}
}

enum { SAMPLE_BACKUPS = 9 };

static struct backups_page sample_backups(void)
{
	static struct backup_line lines[SAMPLE_BACKUPS];

	for (int i = 0; i < SAMPLE_BACKUPS; i++) {
		char day[DAY_TEXT_SIZE];

		day_short(sample_day() - i, day, sizeof day);
		SET(lines[i].day, day);
		snprintf(lines[i].holds, sizeof lines[i].holds,
			"3 farms, 42 traps, %d visits", 1204 - 40 * i);
		SET(lines[i].changed, "last changed 2026-07-20 07:42 UTC by JR");
	}
	return (struct backups_page){ .lines = lines, .n = SAMPLE_BACKUPS, .rows = 10 };
}

static struct wish type(struct backups_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = backups_page_key(p, sample_key(*keys));
	return w;
}

static void backups_page_asks_before_it_goes_back(void **state)
{
	struct backups_page p = sample_backups();
	struct canvas c = { 0 };
	struct wish w = type(&p, "~~\n");

	(void)state;
	assert_int_equal(w.want, WANT_RESTORE);
	assert_int_equal(w.id, 2);
	assert_int_equal(w.by, 0);
	p.shown = true; /* as the loop does */
	SET(p.about[0], "The backup holds 3 farms, 42 traps, 1 124 visits.");
	SET(p.about[1], "The present book holds 3 farms, 42 traps, 1 204 visits.");
	SET(p.about[2], "The present book is kept beside it.");
	canvas_size(&c, 16, 60);
	backups_page_draw(&p, &c);
	expect_golden("backups-60x16-sure", &c, false);
	assert_int_equal(type(&p, "\n\n").want, WANT_NOTHING); /* a thumb's Enter */
	assert_true(p.shown);
	assert_int_equal(type(&p, "r").want, WANT_NOTHING);
	backups_page_draw(&p, &c);
	expect_shows("asked", &c, "r once more puts it in place of the book");
	assert_int_equal(type(&p, "\n").want, WANT_NOTHING); /* asked anew */
	assert_false(p.sure);
	assert_int_equal(type(&p, "r\x1b").want, WANT_NOTHING);
	assert_false(p.shown);
	assert_false(p.sure);
	backups_page_draw(&p, &c);
	expect_golden("backups-60x16", &c, false);
	p.shown = true;
	w = type(&p, "rr");
	assert_int_equal(w.want, WANT_RESTORE);
	assert_int_equal(w.id, 2);
	assert_int_equal(w.by, 1);
	p.shown = p.sure = true;
	assert_int_equal(type(&p, "~r").by, 0); /* another one is asked about first */
	assert_int_equal(type(&p, "\x1b").want, WANT_BACK);
	canvas_free(&c);
}

static void backups_page_without_any_says_when_there_will_be(void **state)
{
	struct backups_page p = { 0 };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 16, 40);
	backups_page_draw(&p, &c);
	expect_shows("none", &c, "No backup yet");
	expect_shows("no key that does nothing", &c, "\n Esc back  ? keys\n");
	assert_int_equal(type(&p, "\n").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "No backup yet"));
	canvas_free(&c);
}

static void text_page_scrolls_through_its_paragraphs(void **state)
{
	struct text_page p = { .text = "first\n\nthird\nfourth\nfifth\nsixth\nlast" };
	struct canvas c = { 0 };

	(void)state;
	SET(p.title, "Changes  trap 7 of Addermoor");
	canvas_size(&c, 7, 40);
	text_page_draw(&p, &c);
	expect_shows("the start", &c, "first");
	text_page_key(&p, (struct input){ INPUT_END, 0 });
	text_page_draw(&p, &c);
	expect_shows("the end", &c, "last");
	assert_int_equal(text_page_key(&p, sample_key('\n')).want, WANT_BACK);
	assert_int_equal(text_page_key(&p, sample_key('\x1b')).want, WANT_BACK);
	assert_int_equal(text_page_key(&p, sample_key('?')).want, WANT_HELP);
	canvas_free(&c);
}

static void book_pages_draw_at_every_size(void **state)
{
	struct canvas c = { 0 };
	char text[600];

	(void)state;
	sample_long(text, sizeof text, 0);
	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols++) {
			struct book_page book = sample_book();
			struct backups_page backups = sample_backups();
			struct text_page read = { .text = text };

			book.picked = backups.picked = (size_t)cols % 6;
			backups.shown = backups.sure = cols % 2;
			sample_long(backups.about[0], SAY_LINE, 1);
			canvas_size(&c, rows, cols);
			book_page_draw(&book, &c);
			backups_page_draw(&backups, &c);
			text_page_draw(&read, &c);
		}
	canvas_free(&c);
}

static void book_pages_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(book_page_keys());
	expect_keys(backups_page_keys());
	expect_keys(text_page_keys());
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_page_shows_what_the_book_holds),
		cmocka_unit_test(book_page_opens_the_picked_list),
		cmocka_unit_test(backups_page_asks_before_it_goes_back),
		cmocka_unit_test(backups_page_without_any_says_when_there_will_be),
		cmocka_unit_test(text_page_scrolls_through_its_paragraphs),
		cmocka_unit_test(book_pages_draw_at_every_size),
		cmocka_unit_test(book_pages_keys_are_each_named_once),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
