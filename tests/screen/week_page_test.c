#include "screen/week_page.h"

#include "screen/week_rows.h"
#include "screen/week_samples.h"

static void week_page_shows_the_tree(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "week-80x24", 24, 80, "~" },
		{ "week-120x30", 30, 120, "~~~" },
		{ "week-40x16", 16, 40, "~~~" },
		{ "week-80x24-attention", 24, 80, "v" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct week w = sample_week();
		struct week_page p = { .week = &w, .filter = "all farms, all pests" };

		for (const char *key = row[i].keys; *key; key++)
			week_page_key(&p, sample_key(*key));
		canvas_size(&c, row[i].rows, row[i].cols);
		week_page_draw(&p, &c);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		week_page_free(&p);
	}
	canvas_free(&c);
}

static void week_mark_tells_the_kinds_apart_in_ascii_too(void **state)
{
	static const struct {
		const char *why;
		struct mark mark;
		int32_t highest;
		const char *want;
		char ascii;
	} row[] = {
		{ "not hung", { MARK_NOTHING, 0 }, 80, " ", ' ' },
		{ "not read", { MARK_NOT_READ, 0 }, 80, "\u00b7", '.' },
		{ "counted, none", { MARK_ZERO, 0 }, 80, "_", '_' },
		{ "at least", { MARK_FLOOR, 80 }, 80, "+", '+' },
		{ "the least catch is not none", { MARK_CATCH, 1 }, 80, "\u2581", '1' },
		{ "an eighth", { MARK_CATCH, 10 }, 80, "\u2581", '1' },
		{ "just over an eighth", { MARK_CATCH, 11 }, 80, "\u2582", '2' },
		{ "just under the highest", { MARK_CATCH, 70 }, 80, "\u2587", '7' },
		{ "the next", { MARK_CATCH, 71 }, 80, "\u2588", '8' },
		{ "the highest", { MARK_CATCH, 80 }, 80, "\u2588", '8' },
		{ "a catch that rounds to none", { MARK_CATCH, 0 }, 0, "\u2581", '1' },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const char *got = week_mark(&row[i].mark, row[i].highest);
		uint32_t cp = 0;

		text_decode(got, strlen(got), &cp);
		if (strcmp(got, row[i].want) != 0 ||
			canvas_ascii(cp) != (uint32_t)row[i].ascii)
			fail_msg("%s: %s, %c", row[i].why, got, (int)canvas_ascii(cp));
	}
}

/* The block stands for the highest counted week, as on paper: a full card of 8 or more
 * does not press the 4 of the counted weeks down to half. */
static void week_page_scales_flights_to_counted_weeks(void **state)
{
	static const struct {
		const char *why, *marks, *want;
	} row[] = {
		{ "counted weeks only", "            24", "\u2584\u2588" },
		{ "a full card beside them", "           +24", "+\u2584\u2588" },
		{ "of another trap of that pest", "            12", "\u2582\u2584" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct week w = sample_week();
		struct week_page p = { .week = &w };

		w.n = 4;
		sample_marks("              ", w.rows[1].line);
		sample_marks(
			i < 2 ? "              " : "+4            ", w.rows[2].line);
		sample_marks(row[i].marks, w.rows[3].line);
		canvas_size(&c, 24, 80);
		week_page_draw(&p, &c);
		expect_shows(row[i].why, &c, row[i].want);
		week_page_free(&p);
	}
	canvas_free(&c);
}

static void week_page_marks_what_does_not_fit(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 11, 80);
	week_page_draw(&p, &c);
	expect_shows("more below", &c, "more \u2500\u2500\n 1 OVER");
	for (int i = 0; i < 3; i++)
		week_page_key(&p, sample_key('2'));
	week_page_draw(&p, &c);
	assert_int_equal(p.picked, 3);
	expect_shows("more above", &c, "more \u2500\u2500\n   block, trap");
	expect_shows("the row above", &c, "\n       1 ");
	expect_shows("the row below", &c, "\n       3 ");
	week_page_key(&p, sample_key('1'));
	week_page_draw(&p, &c);
	expect_shows("no more below", &c, "\u2500\u2500\u2500\u2500\n 1 OVER");
	canvas_free(&c);
	week_page_free(&p);
}

static void week_page_keys_want_what_they_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
		int64_t block;
		int trap;
	} row[] = {
		{ "a farm has no single verdict", "\n", WANT_NOTHING, 0, -1 },
		{ "why of a block", "2\n", WANT_WHY, 7, -1 },
		{ "why of a trap", "~~\n", WANT_WHY, 7, 11 },
		{ "its diary", "~~d", WANT_DIARY, 7, 11 },
		{ "the last one", "1\n", WANT_WHY, 8, 14 },
		{ "with v the last open one", "v1\n", WANT_WHY, 7, 13 },
		{ "v keeps the row above the one that goes", "~~~~~v\n", WANT_WHY, 7,
			13 },
		{ "v keeps what is under? or near?", "~~~v\n", WANT_WHY, 7, 12 },
		{ "v twice shows all", "vv1\n", WANT_WHY, 8, 14 },
		{ "r runs the farm", "r", WANT_RUN, 7, -1 },
		{ "l shows a block's flight", "2l", WANT_FLIGHT, 7, -1 },
		{ "h shows its hot spots", "2h", WANT_HOTSPOTS, 7, -1 },
		{ "l shows a trap's flight", "~~l", WANT_FLIGHT, 7, 11 },
		{ "Esc goes back", "\x1b", WANT_BACK, 0, -1 },
		{ "? helps", "?", WANT_HELP, 0, -1 },
		{ "f waits for the loop", "f", WANT_NOTHING, 0, -1 },
		{ "another key does nothing", "z", WANT_NOTHING, 0, -1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct week w = sample_week();
		struct week_page p = { .week = &w };
		struct wish wish = page_wish(WANT_NOTHING);

		for (const char *key = row[i].keys; *key; key++)
			wish = week_page_key(&p, sample_key(*key));
		if (wish.want != row[i].want || wish.trap != row[i].trap ||
			((wish.want == WANT_WHY || wish.want == WANT_FLIGHT) &&
				wish.block != row[i].block))
			fail_msg("%s: want %d block %d trap %d", row[i].why,
				(int)wish.want, (int)wish.block, wish.trap);
		week_page_free(&p);
	}
}

static void week_page_filters_are_left_to_the_loop(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w };

	(void)state;
	week_page_key(&p, sample_key('f'));
	assert_true(p.next_farm);
	assert_false(p.next_pest);
	week_page_key(&p, sample_key('p'));
	assert_true(p.next_pest);
	week_page_key(&p, sample_key('~'));
	week_page_key(&p, sample_key('\n'));
	assert_int_equal(p.one_farm, 0); /* a block has a why */
	week_page_key(&p, sample_key('^'));
	week_page_key(&p, sample_key('\n'));
	assert_int_equal(p.one_farm, w.rows[0].farm);
	week_page_free(&p);
}

static void week_page_attention_keeps_whole_branches(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w, .only_open = true };
	const size_t want[] = { 0, 1, 2, 3, 4 };

	(void)state;
	w.rows[0].verdict = w.rows[1].verdict = VERDICT_UNDER;
	week_find(&p);
	assert_int_equal(p.sift.n, 5);
	for (size_t i = 0; i < p.sift.n; i++)
		assert_int_equal(p.sift.rows[i], want[i]);
	week_page_free(&p);
}

static void week_page_narrows_to_what_is_typed(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t shown;
		enum want want; /* of a last Esc */
	} row[] = {
		{ "all", "", 7, WANT_BACK },
		{ "a block with its farm and traps", "/ridge", 3, WANT_NOTHING },
		{ "a trap with what is above it", "/2\n", 3, WANT_NOTHING },
		{ "a pest", "/ofm", 3, WANT_NOTHING },
		{ "nothing", "/zz", 0, WANT_NOTHING },
		{ "left again", "/zz\x1b", 7, WANT_BACK },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct week w = sample_week();
		struct week_page p = { .week = &w, .filter = "", .rows = 10 };

		for (const char *key = row[i].keys; *key; key++)
			week_page_key(&p, sample_key(*key));
		week_find(&p);
		if (p.sift.n != row[i].shown)
			fail_msg("%s: %zu rows", row[i].why, p.sift.n);
		if (week_page_key(&p, sample_key('\x1b')).want != row[i].want)
			fail_msg("%s: not so on Esc", row[i].why);
		week_find(&p);
		assert_int_equal(p.sift.n, 7);
		week_page_free(&p);
	}
}

static void week_page_counts_what_is_hidden_too(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w, .filter = "" };
	struct canvas c = { 0 };

	(void)state;
	for (const char *key = "/zz"; *key; key++)
		week_page_key(&p, sample_key(*key));
	canvas_size(&c, 24, 80);
	week_page_draw(&p, &c);
	expect_shows("narrowed", &c, "of all: ");
	expect_shows("what is left to do", &c, "\n Esc show all\n");
	w.n_over = w.n_unknown = 100;
	canvas_size(&c, 16, 40);
	week_page_draw(&p, &c);
	expect_shows("in few columns", &c, " of all: 100 OVER 100 unknown\n");
	canvas_size(&c, 24, 80);
	week_page_key(&p, sample_key('\x1b'));
	week_page_draw(&p, &c);
	expect_hides("whole", &c, "of all: ");
	canvas_free(&c);
	week_page_free(&p);
}

/* A block without a rule of its own has no threshold to be told. */
static void week_page_tells_a_threshold_where_there_is_one(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w, .filter = "", .picked = 1 };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 16, 40);
	SET(w.rows[1].rule_text, ">=5");
	week_page_draw(&p, &c);
	expect_shows("one", &c, "threshold >=5");
	SET(w.rows[1].rule_text, "");
	week_page_draw(&p, &c);
	expect_hides("none", &c, "threshold");
	canvas_free(&c);
	week_page_free(&p);
}

static void week_page_says_when_nothing_is_there(void **state)
{
	struct week w = sample_week();
	struct week_page p = { .week = &w };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 24, 80);
	w.n = 0;
	week_page_draw(&p, &c);
	expect_shows("no rows", &c, "No trap hangs here.");
	assert_int_equal(week_page_key(&p, sample_key('\n')).want, WANT_NOTHING);
	p.only_open = true;
	week_page_draw(&p, &c);
	expect_shows("none open", &c, "Nothing is over, unknown, near or in doubt.");
	assert_int_equal(week_page_key(&p, sample_key('\n')).want, WANT_NOTHING);
	assert_string_equal(
		p.message.text, "Nothing is over, unknown, near or in doubt.");
	canvas_free(&c);
	week_page_free(&p);
}

static void week_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(week_page_keys());
}

static void week_page_draws_at_every_size(void **state)
{
	struct week sample[2] = { sample_week(), { .day = 0 } };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		if (i == 2)
			sample[0] = sample_long_week();
		for (int rows = 1; rows <= 40; rows++)
			for (int cols = 1; cols <= 120; cols++) {
				struct week_page p = { .week = &sample[i % 2],
					.picked = (size_t)cols % 9,
					.only_open = rows % 2 };

				canvas_size(&c, rows, cols);
				week_page_draw(&p, &c);
				week_page_free(&p);
			}
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(week_page_shows_the_tree),
		cmocka_unit_test(week_mark_tells_the_kinds_apart_in_ascii_too),
		cmocka_unit_test(week_page_scales_flights_to_counted_weeks),
		cmocka_unit_test(week_page_marks_what_does_not_fit),
		cmocka_unit_test(week_page_keys_want_what_they_say),
		cmocka_unit_test(week_page_filters_are_left_to_the_loop),
		cmocka_unit_test(week_page_attention_keeps_whole_branches),
		cmocka_unit_test(week_page_narrows_to_what_is_typed),
		cmocka_unit_test(week_page_counts_what_is_hidden_too),
		cmocka_unit_test(week_page_tells_a_threshold_where_there_is_one),
		cmocka_unit_test(week_page_says_when_nothing_is_there),
		cmocka_unit_test(week_page_keys_are_each_named_once),
		cmocka_unit_test(week_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
