#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "paper/week.h"

#include <stdio.h>

enum { WEEKS = 8, PEST = 1 };

/* One block of three traps: over, unknown, none counted. */
static struct mark mean_line[WEEKS] = { { MARK_NOTHING, 0 }, { MARK_ZERO, 0 },
	{ MARK_CATCH, 20 }, { MARK_CATCH, 40 }, { MARK_NOT_READ, 0 },
	{ MARK_CATCH, 80 }, { MARK_CATCH, 10 }, { MARK_CATCH, 85 } };
static struct mark hot_line[WEEKS] = { { MARK_NOTHING, 0 }, { MARK_CATCH, 10 },
	{ MARK_CATCH, 40 }, { MARK_CATCH, 80 }, { MARK_NOT_READ, 0 },
	{ MARK_CATCH, 160 }, { MARK_FLOOR, 300 }, { MARK_CATCH, 160 } };
static struct mark calm_line[WEEKS] = { { MARK_NOTHING, 0 }, { MARK_ZERO, 0 },
	{ MARK_ZERO, 0 }, { MARK_ZERO, 0 }, { MARK_NOT_READ, 0 }, { MARK_ZERO, 0 },
	{ MARK_CATCH, 10 }, { MARK_ZERO, 0 } };

static struct week_row rows[] = {
	{ .level = WEEK_FARM, .name = "Quillet Farm", .verdict_text = "OVER" },
	{ .level = WEEK_BLOCK,
		.pest = PEST,
		.name = "Quarry Rows",
		.pest_code = "CM",
		.is_disrupted = true,
		.catch_text = "8.5",
		.highest_text = "16.0",
		.nights_text = "2 of 3",
		.verdict_text = "OVER",
		.says = "trap 4: >=5",
		.line = mean_line },
	{ .level = WEEK_TRAP,
		.pest = PEST,
		.name = "4",
		.pest_code = "CM",
		.is_border = true,
		.catch_text = "16.0",
		.nights_text = "7 n",
		.rule_text = ">=5",
		.verdict_text = "OVER",
		.line = hot_line },
	{ .level = WEEK_TRAP,
		.pest = PEST,
		.name = "5",
		.pest_code = "CM",
		.catch_text = "-",
		.rule_text = ">=5",
		.verdict_text = "unknown",
		.says = "not read for 15 nights",
		.line = calm_line },
	{ .level = WEEK_TRAP,
		.pest = PEST,
		.name = "6",
		.pest_code = "CM",
		.catch_text = "0.0",
		.nights_text = "7 n",
		.rule_text = ">=5",
		.verdict_text = "under?",
		.says = "lure was 14 d overdue",
		.line = calm_line },
};

static struct week sample(void)
{
	return (struct week){ .title_day = "Tue 21 July 2026 \u00b7 week 30",
		.rows = rows,
		.n = sizeof rows / sizeof *rows,
		.n_weeks = WEEKS,
		.n_over = 2,
		.n_unknown = 1,
		.n_under = 1 };
}

static char *print(const struct week *w, int cols, bool utf8)
{
	struct buf out = { 0 };

	paper_week(w, cols, utf8, &out);
	return out.text;
}

static const char whole_page[] =
	"Week  Tue 21 July 2026 \u00b7 week 30\n"
	"2 OVER, 1 unknown, 0 near, 1 under\n"
	"\n"
	"trap          pest    a week highest read   threshold verdict flight\n"
	"Quillet Farm                                          OVER\n"
	"  Quarry Rows CM    d    8.5    16.0 2 of 3           OVER     "
	"_\u2581\u2582\u00b7"
	"\u2584\u2581\u2585\n"
	"    trap 4: >=5\n"
	"    4         CM   b    16.0         7 n    >=5       OVER     "
	"\u2581\u2582\u2584"
	"\u00b7\u2588+\u2588\n"
	"    5         CM           -                >=5       unknown  "
	"___\u00b7_\u2581_\n"
	"      not read for 15 nights\n"
	"    6         CM         0.0         7 n    >=5       under?   "
	"___\u00b7_\u2581_\n"
	"      lure was 14 d overdue\n";

static void week_is_a_tree_with_answers_in_words(void **state)
{
	struct week w = sample();
	char *text = print(&w, 80, true);

	(void)state;
	text[strlen(whole_page)] = '\0';
	assert_string_equal(text, whole_page);
	free(text);
}

static void week_explains_its_marks(void **state)
{
	struct week w = sample();
	char *text = print(&w, 400, true);

	(void)state;
	assert_non_null(strstr(text, "_ counted none, \u00b7 not read, + at least"));
	free(text);
}

static void week_keeps_to_any_width(void **state)
{
	struct week w = sample();

	(void)state;
	for (int cols = 40; cols <= 160; cols++) {
		char *text = print(&w, cols, true);

		if (lines_widest(text) > cols)
			fail_msg("%d columns: a line of %d", cols, lines_widest(text));
		if (lines_count(text, "unknown") != 2 || !strstr(text, "16.0"))
			fail_msg("%d columns: an answer is lost", cols);
		free(text);
	}
}

static void week_drops_columns_in_order_where_it_is_narrow(void **state)
{
	static const struct {
		const char *why;
		int cols;
		bool line, highest, marks;
	} row[] = {
		{ "all at 72", 72, true, true, true },
		{ "no flight line below", 71, false, true, true },
		{ "highest trap at 60", 60, false, true, true },
		{ "not below", 59, false, false, true },
		{ "marks at 52", 52, false, false, true },
		{ "not below", 51, false, false, false },
	};
	struct week w = sample();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char *text = print(&w, row[i].cols, true);

		if (!!strstr(text, "\u2588") != row[i].line ||
			!!strstr(text, " highest ") != row[i].highest ||
			!!strstr(text, " CM   b ") != row[i].marks)
			fail_msg("%s (%d):\n%s", row[i].why, row[i].cols, text);
		free(text);
	}
}

static void week_is_ascii_when_asked(void **state)
{
	struct week w = sample();
	char *text = print(&w, 80, false);

	(void)state;
	for (const char *p = text; *p; p++)
		assert_true((unsigned char)*p < 0x80);
	assert_non_null(strstr(text, "124.8+8"));
	assert_non_null(strstr(text, "21 July 2026 . week 30"));
	free(text);
}

static void week_counts_traps_without_a_threshold(void **state)
{
	struct week w = sample();

	(void)state;
	w.n_none = 1;
	char *one = print(&w, 80, true);
	assert_non_null(strstr(one, "1 under; 1 trap without a threshold\n"));
	w.n_none = 2;
	char *two = print(&w, 80, true);
	assert_non_null(strstr(two, "1 under; 2 traps without a threshold\n"));
	free(one);
	free(two);
}

static void week_without_traps_is_a_sentence(void **state)
{
	struct week w = sample();

	(void)state;
	w.n = 0;
	char *text = print(&w, 80, true);
	assert_string_equal(text, "Week  Tue 21 July 2026 \u00b7 week 30\nNo such trap "
				  "hung this season.\n");
	free(text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(week_is_a_tree_with_answers_in_words),
		cmocka_unit_test(week_explains_its_marks),
		cmocka_unit_test(week_keeps_to_any_width),
		cmocka_unit_test(week_drops_columns_in_order_where_it_is_narrow),
		cmocka_unit_test(week_is_ascii_when_asked),
		cmocka_unit_test(week_counts_traps_without_a_threshold),
		cmocka_unit_test(week_without_traps_is_a_sentence),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
