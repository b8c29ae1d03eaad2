/* Today, narrowed to what is typed. */
#include "screen/today_page.h"

#include "screen/today_samples.h"

static void today_page_narrows_to_what_is_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t n, at;
		enum want enter;
		const char *shows, *hides;
	} row[] = {
		{ "all", "", 8, 0, WANT_RUN, "others:", "of 8" },
		{ "a farm's runs, verdicts and hot blocks", "/quillet", 5, 0, WANT_RUN,
			"5 of 8", "Sandholm" },
		{ "a trap", "/trap 9", 1, 4, WANT_WHY, "1 of 8", "To run" },
		{ "what comes next", "/ofm", 1, 7, WANT_FLIGHT, "Next", "Unknown" },
		{ "nothing", "/zz", 0, SIZE_MAX, WANT_NOTHING, "Nothing contains it",
			"nothing is due today" },
		{ "all again", "/zz\x1b", 8, 0, WANT_RUN, "others:", "of 8" },
	};
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 24, 80);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today_next();
		struct today_page p = { .today = &t };
		struct buf text = { 0 };

		for (const char *key = row[i].keys; *key; key++)
			today_page_key(&p, sample_key(*key));
		today_page_draw(&p, &c);
		canvas_dump(&c, false, &text);
		if (p.sift.n != row[i].n || p.picked != row[i].at)
			fail_msg("%s: %zu rows, %zu picked", row[i].why, p.sift.n,
				p.picked);
		if (!strstr(text.text, row[i].shows) || strstr(text.text, row[i].hides))
			fail_msg("%s:\n%s", row[i].why, text.text);
		if (today_page_key(&p, sample_key('\n')).want != row[i].enter)
			fail_msg("%s: not so on Enter", row[i].why);
		if (row[i].n == 0)
			assert_string_equal(p.message.text,
				"Nothing is picked: Esc shows all again.");
		buf_free(&text);
		today_page_free(&p);
	}
	canvas_free(&c);
}

/* A pick's row has no farm in it, and a run that is hidden takes its bar along. */
static void today_page_hides_no_bar_and_no_pick(void **state)
{
	static const struct {
		const char *why, *keys, *hidden;
	} row[] = {
		{ "a trap", "/trap 9", "hidden: 2 over, 0 unknown" },
		{ "a farm", "/fennick", "hidden: 2 over, 1 unknown" },
		{ "nothing", "/zz", "hidden: 2 over, 1 unknown" },
	};
	static struct pick_row early;
	struct canvas c = { 0 };

	(void)state;
	early = (struct pick_row){ .id = 3, .tone = TONE_OVER };
	SET(early.place, "Sand Pit");
	SET(early.day_text, "Wed 22 Jul");
	SET(early.says, "too early");
	canvas_size(&c, 30, 80);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct today t = sample_today_next();
		struct today_page p = { .today = &t };

		SET(t.runs[0].barred, "no entry: Low Pears until Wed 20:00");
		t.picks = (struct pick_rows){ .items = &early, .n = 1 };
		for (const char *key = row[i].keys; *key; key++)
			today_page_key(&p, sample_key(*key));
		today_page_draw(&p, &c);
		expect_shows(row[i].why, &c, "no entry: Low Pears until Wed 20:00");
		expect_shows(row[i].why, &c, "Sand Pit, pick planned for Wed 22 Jul");
		expect_shows(row[i].why, &c, row[i].hidden);
		today_page_free(&p);
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(today_page_narrows_to_what_is_typed),
		cmocka_unit_test(today_page_hides_no_bar_and_no_pick),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
