#include "screen/diary_samples.h"

static void diary_page_narrows_to_what_is_typed(void **state)
{
	static const struct {
		const char *why, *keys, *shows, *hides;
		size_t n;
	} row[] = {
		{ "a note", "/loose", "card hung loose", "skipped, weather", 1 },
		{ "a reason, in either case", "/WEATHER", "skipped, weather", "30+ c",
			1 },
		{ "a month", "/jul", "Tue 7 Jul", "Tue 30 Jun", 3 },
		{ "a kind that was put in", "/cm 1 mg", "4 cl", "30+ c", 1 },
		{ "what was corrected", "/corrected", "41", "30+ c", 1 },
		{ "nothing", "/zz", "Nothing contains it: Esc shows all.", "Tue 7 Jul",
			0 },
		{ "Esc shows all again", "/loose\x1b", "Tue 7 Jul", "only with", 7 },
	};
	struct canvas c = { 0 };
	struct diary_page p = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trap_diary d = sample_diary();

		diary_show(&p, &d);
		diary_press(&p, row[i].keys);
		canvas_size(&c, 30, 120);
		diary_page_draw(&p, &c);
		expect_shows(row[i].why, &c, row[i].shows);
		expect_hides(row[i].why, &c, row[i].hides);
		if (p.sift.n != row[i].n)
			fail_msg("%s: %zu rows", row[i].why, p.sift.n);
	}
	diary_page_free(&p);
	canvas_free(&c);
}

/* Beside an open visit all are read; then the list is as narrow as before. */
static void diary_page_opens_what_was_found_among_all(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 30, 120);
	diary_show(&p, &d);
	assert_int_equal(diary_press(&p, "/loose\n").want, WANT_NOTHING);
	assert_int_equal(p.mode, DIARY_VISIT);
	assert_int_equal(p.trap.visit.count, 41);
	diary_page_draw(&p, &c);
	expect_shows("the others too", &c, "Tue 7 Jul");
	struct wish w = diary_press(&p, "14\n");
	assert_int_equal(w.want, WANT_SAVE_PAST);
	assert_int_equal(w.visit.day, d.rows[4].visit.day);
	diary_page_saved(&p, &d, "07:42:11");
	diary_page_draw(&p, &c);
	expect_hides("narrow again", &c, "Tue 7 Jul");
	assert_int_equal(p.picked, 4);
	diary_page_free(&p);
	canvas_free(&c);
}

static void diary_page_leaves_step_by_step(void **state)
{
	struct trap_diary d = sample_diary();
	struct diary_page p = { 0 };

	(void)state;
	diary_show(&p, &d);
	diary_press(&p, "/zz");
	assert_int_equal(diary_press(&p, "\n").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "No visit is picked.");
	assert_int_equal(diary_press(&p, "#").want, WANT_NOTHING);
	assert_int_equal(diary_press(&p, "\x1b").want, WANT_NOTHING);
	assert_int_equal(p.sift.n, 7);
	assert_int_equal(diary_press(&p, "\x1b").want, WANT_BACK);
	diary_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(diary_page_narrows_to_what_is_typed),
		cmocka_unit_test(diary_page_opens_what_was_found_among_all),
		cmocka_unit_test(diary_page_leaves_step_by_step),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
