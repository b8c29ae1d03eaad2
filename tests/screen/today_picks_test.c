/* Picks that Today tells of. */
#include "screen/today_page.h"

#include "screen/today_samples.h"

/* A narrow page has few rows. */
static void today_page_tells_picks_behind_what_is_over_on_a_narrow_page(void **state)
{
	static const struct {
		int cols;
		bool behind;
	} row[] = { { 60, false }, { 59, true }, { 40, true } };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct pick_row pick = {
			.id = 4, .farm = 1, .block = 2, .tone = TONE_OVER
		};
		struct today t = sample_today();
		struct buf text = { 0 };

		SET(pick.place, "Quillet, Top Field");
		t.picks = (struct pick_rows){ .items = &pick, .n = 1 };
		struct today_page p = { .today = &t };
		canvas_size(&c, 30, row[i].cols);
		today_page_draw(&p, &c);
		canvas_dump(&c, false, &text);
		const char *picks = strstr(text.text, "Picks");
		const char *over = strstr(text.text, "Over threshold");
		const char *caution = strstr(text.text, "the label is the law");
		if (!picks || !over || (picks > over) != row[i].behind)
			fail_msg("%d columns:\n%s", row[i].cols, text.text);
		if (!caution || caution < picks)
			fail_msg("no caution below the picks:\n%s", text.text);
		buf_free(&text);
		today_page_free(&p);
	}
	canvas_free(&c);
}

/* A pick that is fine is told as well, for a week ahead; never in place of another. */
static void today_page_tells_a_pick_that_nothing_bars(void **state)
{
	static const struct {
		const char *why;
		int32_t in_days;
		bool is_done;
		size_t barred; /* others, that are too early */
		const char *keys;
		bool told;
	} row[] = {
		{ "today", 0, false, 0, "", true },
		{ "the last of the days to come", 7, false, 0, "", true },
		{ "the first one after them", 8, false, 0, "", false },
		{ "yesterday", -1, false, 0, "", false },
		{ "one that was done", 0, true, 0, "", false },
		{ "beside five that are too early", 0, false, 5, "", true },
		{ "six of those come first", 0, false, 6, "", false },
		{ "not while something is looked for", 0, false, 0, "/q", false },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct pick_row picks[7] = { { .id = 1,
			.day = sample_day() + row[i].in_days,
			.is_done = row[i].is_done,
			.tone = row[i].is_done ? TONE_QUIET : TONE_PLAIN } };
		struct today t = sample_today();

		SET(picks[0].place, "Top Field");
		SET(picks[0].says, "not barred");
		for (size_t k = 1; k <= row[i].barred; k++)
			picks[k] = (struct pick_row){ .id = (int64_t)k + 1,
				.tone = TONE_OVER };
		t.picks = (struct pick_rows){ .items = picks, .n = row[i].barred + 1 };
		struct today_page p = { .today = &t };
		for (const char *k = row[i].keys; *k; k++)
			today_page_key(&p, sample_key(*k));
		canvas_size(&c, 60, 80);
		today_page_draw(&p, &c);
		(row[i].told ? expect_shows : expect_hides)(
			row[i].why, &c, "Top Field, pick planned for ");
		(row[i].told || row[i].barred ? expect_shows : expect_hides)(
			row[i].why, &c, "the label is the law");
		if (row[i].barred == 6)
			expect_shows(row[i].why, &c, "and 1 more: k");
		today_page_free(&p);
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			today_page_tells_picks_behind_what_is_over_on_a_narrow_page),
		cmocka_unit_test(today_page_tells_a_pick_that_nothing_bars),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
