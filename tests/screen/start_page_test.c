#include "screen/start_page.h"

#include "screen/entry_samples.h"

static struct wish type(struct start_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = start_page_key(p, entry_key_of(*keys));
	return w;
}

static void start_page_shows_three_ways(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "start-80x24", 24, 80, "" },
		{ "start-80x24-file", 24, 80, "2traps.csv" },
		{ "start-40x16", 16, 40, "~~" },
		{ "start-20x6", 6, 20, "~" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct start_page p = { .book = "/home/jr/book.db" };

		type(&p, row[i].keys);
		canvas_size(&c, row[i].rows, row[i].cols);
		start_page_draw(&p, &c);
		expect_golden(row[i].name, &c, i == 0);
	}
	canvas_free(&c);
}

static void start_page_keys_want_what_they_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		const char *path;
	} row[] = {
		{ "1 by its digit", "1", WANT_START_TYPING, "" },
		{ "Enter is the first", "\n", WANT_START_TYPING, "" },
		{ "2 asks for a path", "2", WANT_NOTHING, "" },
		{ "which Enter takes", "2a.csv\n", WANT_START_FILE, "a.csv" },
		{ "with digits and q in it", "2q1.csv\n", WANT_START_FILE, "q1.csv" },
		{ "edited", "2a.cs{b}v\n", WANT_START_FILE, "ba.csv" },
		{ "by Enter, then", "~\na.csv\n", WANT_START_FILE, "a.csv" },
		{ "without one nothing is wished", "2\n", WANT_NOTHING, "" },
		{ "Esc leaves it", "2a\x1b", WANT_NOTHING, "" },
		{ "and keeps the way", "2a\x1b\x1b", WANT_BACK, "" },
		{ "3 by its digit", "3", WANT_START_DEMO, "" },
		{ "or picked", "~~~\n", WANT_START_DEMO, "" },
		{ "up again", "~~^^^\n", WANT_START_TYPING, "" },
		{ "q", "q", WANT_QUIT, "" },
		{ "?", "?", WANT_HELP, "" },
		{ "another", "4", WANT_NOTHING, "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct start_page p = { 0 };
		struct wish w = type(&p, row[i].keys);

		if (w.want != row[i].want || strcmp(w.words.note, row[i].path) != 0)
			fail_msg("%s: want %d, \"%s\"", row[i].why, (int)w.want,
				w.words.note);
	}
}

static void start_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(start_page_keys());
}

static void start_page_draws_at_every_size(void **state)
{
	struct canvas c = { 0 };
	char book[600];

	(void)state;
	sample_long(book, sizeof book, 0);
	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols++) {
			struct start_page p = { .book = cols % 2 ? book : "book.db",
				.picked = (size_t)cols % 3,
				.asking = cols % 3 == 1 };

			sample_long(p.path, sizeof p.path, 1);
			p.cursor = strlen(p.path);
			canvas_size(&c, rows, cols);
			start_page_draw(&p, &c);
		}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(start_page_shows_three_ways),
		cmocka_unit_test(start_page_keys_want_what_they_say),
		cmocka_unit_test(start_page_keys_are_each_named_once),
		cmocka_unit_test(start_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
