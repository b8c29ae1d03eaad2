/* Walks from every page, at random but always the same: each step is a key that the
 * page names, or any letter, on a book that is hardly begun and amid a season. The page
 * says so in a line, and the book stays sound. */
#include "begun.h"
#include "demo_book.h"

#include "../../src/command/deeds.h"
#include "../../src/command/session_book.h"
#include "answers/settings.h"
#include "base/mem.h"
#include "base/text.h"

enum { STEPS = 60, ROWS = 24, COLS = 80 };

/* Where a walk begins, from Today. */
static const enum want begins[] = { WANT_NOTHING, WANT_WEEK, WANT_FLIGHT, WANT_HOTSPOTS,
	WANT_WEATHER, WANT_START, WANT_BOOK, WANT_BACKUPS, WANT_MERGE_PAGE,
	WANT_ENTRIES, WANT_SERVICE, WANT_THRESHOLDS, WANT_ALERTS, WANT_PICKS, WANT_RUN,
	WANT_HELP, WANT_RECORD };
enum { BEGINS = sizeof begins / sizeof *begins };

struct walk {
	const char *book;
	enum want from;
	unsigned dice;
	struct context ctx;
	struct session *s;
	struct canvas canvas;
};

static unsigned roll(struct walk *w, unsigned n)
{
	w->dice = w->dice * 1103515245u + 12345u;
	return (w->dice >> 16) % n;
}

/* Mostly a key that the page names; else what a thumb types. */
static struct input next_key(struct walk *w)
{
	static const char typed[] = "0123456789 .-/*+abcxyzuWETnq";
	const struct page_row *page = &session_pages[session_shown(w->s)];
	struct key_rows keys = page->keys_now ? page->keys_now(w->s) : page->keys();

	if (keys.n > 0 && roll(w, 10) < 7)
		return keys.rows[roll(w, (unsigned)keys.n)].in;
	return (struct input){ INPUT_CHAR, (uint32_t)typed[roll(w, sizeof typed - 1)] };
}

/* These end the pages, or open a terminal. */
static bool leads_away(enum want want)
{
	return want == WANT_QUIT || want == WANT_START_DEMO;
}

static void draw(struct walk *w)
{
	struct session *s = w->s;

	session_pages[session_shown(s)].draw(s, &w->canvas);
	const char *said = session_message(s)->text;
	if (strchr(said, '\n') || strstr(said, "(null)") || strstr(said, "nan"))
		fail_msg("%s, from %d: %s", w->book, (int)w->from, said);
}

static void step(struct walk *w)
{
	struct session *s = w->s;
	struct wish wish = session_pages[session_shown(s)].key(s, next_key(w));

	if (leads_away(wish.want))
		return;
	if (session_deeds[wish.want])
		session_deeds[wish.want](s, &wish);
	if (session_pages[session_shown(s)].turn)
		session_pages[session_shown(s)].turn(s);
	session_look_at_printer(s);
	draw(w);
}

static void take_steps(struct walk *w)
{
	int n = getenv("SANITIZED") ? STEPS / 4 : STEPS;

	for (int i = 0; i < n; i++)
		step(w);
}

static void tell(void *arg, const char *text)
{
	(void)arg;
	print_error("%s\n", text);
}

static void close_walk(struct walk *w)
{
	struct err e = { 0 };
	int found = 0;

	if (!book_check(w->s->book, w->ctx.today, tell, NULL, &found, &e) || found)
		fail_msg("%s, from %d: %d found: %s", w->book, (int)w->from, found,
			e.text);
	session_free(w->s);
	free(w->s);
	canvas_free(&w->canvas);
}

/* On a copy of the book, at its first farm if it has one. */
static void open_walk(struct walk *w)
{
	struct wish wish = page_wish(w->from);
	struct err e = { 0 };

	program_copy(w->book, "walk.db");
	w->ctx = (struct context){ .book_path = "walk.db", .who = "T", .utf8 = true };
	w->ctx.today_given = day_parse(BEGUN_TODAY, &w->ctx.today);
	w->s = mem_new(1, sizeof *w->s);
	w->s->ctx = &w->ctx;
	w->s->notice = "";
	w->s->day = w->s->run.day = w->ctx.today;
	if (!session_open_book(w->s, &e) || !settings_apply(w->s->book, NULL, &e) ||
		!session_read(w->s, &e))
		fail_msg("%s: %s", w->book, e.text);
	canvas_size(&w->canvas, ROWS, COLS);
	wish.farm = w->s->log.farms.n ? w->s->log.farms.items[0].id : 0;
	wish.kind = (int)roll(w, ENTRY_KINDS);
	if (session_deeds[w->from])
		session_deeds[w->from](w->s, &wish);
	draw(w);
}

static void every_page_takes_any_key_on_a_book_that_is_hardly_begun(void **state)
{
	(void)state;
	for (int k = 0; k < BEGUN_COUNT; k++)
		for (int at = 0; at < BEGINS; at++) {
			struct walk w = { .book = begun_names[k],
				.from = begins[at],
				.dice = (unsigned)(k * BEGINS + at) };
			open_walk(&w);
			take_steps(&w);
			close_walk(&w);
		}
}

/* The book of the demo: all pages have something to show. */
static void every_page_takes_any_key_amid_a_season(void **state)
{
	(void)state;
	for (int at = 0; at < BEGINS; at++) {
		struct walk w = {
			.book = "d.db", .from = begins[at], .dice = (unsigned)at
		};
		open_walk(&w);
		take_steps(&w);
		close_walk(&w);
	}
}

static int fill_books(void **state)
{
	static const char *const files[][2] = { { "traps", "traps" },
		{ "places", "places" }, { "visits", "visits" },
		{ "thresholds", "thresholds" }, { "weather", "weather" },
		{ "biofix", "biofix" }, { "treatments", "treatments" },
		{ "picks", "picks" } };
	int failed = program_fill(state, files, sizeof files / sizeof *files);

	return failed ? failed : make_books_here();
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			every_page_takes_any_key_on_a_book_that_is_hardly_begun),
		cmocka_unit_test(every_page_takes_any_key_amid_a_season),
	};

	return cmocka_run_group_tests(tests, fill_books, program_teardown);
}
