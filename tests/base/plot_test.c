#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/plot.h"

#include <math.h>
#include <string.h>

enum { ROWS = 9, COLS = 21 };

/* What was drawn, and how often a mark fell outside. */
struct drawn {
	char cell[ROWS][COLS + 1];
	int outside;
};

static void clear_it(struct drawn *d)
{
	memset(d, 0, sizeof *d);
	for (int r = 0; r < ROWS; r++)
		memset(d->cell[r], '.', COLS);
}

static void mark(void *arg, int row, int col)
{
	struct drawn *d = arg;

	if (row < 0 || row >= ROWS || col < 0 || col >= COLS)
		d->outside++;
	else
		d->cell[row][col] = '#';
}

static void expect(const struct drawn *d, const char *const want[ROWS])
{
	for (int r = 0; r < ROWS; r++)
		assert_string_equal(d->cell[r], want[r]);
	assert_int_equal(d->outside, 0);
}

/* 10 m a column, middle of the map at 0, 0: x -100..100, y -80..80. */
static struct plot tens(void)
{
	const double x[] = { -90, 90 }, y[] = { -60, 60 };

	return plot_fit(x, y, 2, ROWS, COLS);
}

static void the_scale_is_the_finest_with_a_whole_bar(void **state)
{
	static const struct {
		const char *why;
		double wide, high, metres;
	} row[] = {
		{ "one point: ten metres a column", 0, 0, 10 },
		{ "a hair apart is drawn at a metre", 0.25, 0.25, 1 },
		{ "nineteen columns are left within the margin", 18.99, 0, 1 },
		{ "a little more needs the next: 5 m in 4 columns", 19.01, 0, 1.25 },
		{ "20 m in 7 are too few by a hair: 10 m in 3", 60, 0, 10.0 / 3 },
		{ "9.5 m: ten will do", 180, 0, 10 },
		{ "ten to the hair", 189.99, 0, 10 },
		{ "and over: 50 m in 4", 190.01, 0, 12.5 },
		{ "a row is twice as high: seven rows are 14 m", 0, 13.99, 1 },
		{ "more needs the next", 0, 14.01, 1.25 },
		{ "the tighter of the two decides", 19.01, 30, 2.5 },
		{ "half round the earth", 2e7, 0, 1.25e6 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const double x[] = { 5, 5 + row[i].wide }, y[] = { 7, 7 + row[i].high };
		struct plot p = plot_fit(x, y, 2, ROWS, COLS);
		if (p.metres != row[i].metres)
			fail_msg("%s: %g, not %g", row[i].why, p.metres, row[i].metres);
	}
}

static void a_wide_map_is_filled_to_nine_tenths(void **state)
{
	(void)state;
	for (double w = 80; w < 3e6; w *= 1.03) {
		const double x[] = { 0, w }, y[] = { 0, 0 };
		struct plot p = plot_fit(x, y, 2, 12, 78);
		if (w / p.metres < 0.9 * 76)
			fail_msg("%g m in %g columns", w, w / p.metres);
	}
}

static void every_point_lies_within_the_margin(void **state)
{
	(void)state;
	for (int rows = 3; rows < 12; rows++)
		for (int cols = 3; cols < 40; cols += 3)
			for (double w = 0.5; w < 3e6; w *= 1.7) {
				const double x[] = { -w, 2 * w, w },
					     y[] = { w, 0, 3 * w };
				struct plot p = plot_fit(x, y, 3, rows, cols);
				for (int i = 0; i < 3; i++) {
					int r = -1, c = -1;
					assert_true(plot_cell(&p, x[i], y[i], &r, &c));
					assert_in_range(r, 1, rows - 2);
					assert_in_range(c, 1, cols - 2);
				}
				assert_in_range(p.bar_cols, 1, cols / 3);
				assert_true(
					fabs(p.bar_cols * p.metres - p.bar_metres) <=
					1e-9 * p.bar_metres);
			}
}

static void north_is_up_and_east_is_right(void **state)
{
	struct plot p = tens();
	int row, col;

	(void)state;
	assert_true(plot_cell(&p, 0, 0, &row, &col));
	assert_int_equal(row, 4);
	assert_int_equal(col, 10);
	assert_true(plot_cell(&p, 10, 0, &row, &col));
	assert_int_equal(col, 11);
	assert_true(plot_cell(&p, 0, 20, &row, &col));
	assert_int_equal(row, 3);
}

static void a_point_off_the_map_has_no_cell(void **state)
{
	static const struct {
		const char *why;
		double x, y;
		bool inside;
	} row[] = {
		{ "the last column reaches half a column on", 104.9, 0, true },
		{ "and no further", 105.1, 0, false },
		{ "the first too", -104.9, 0, true },
		{ "and no further", -105.1, 0, false },
		{ "the top row", 0, 89.9, true },
		{ "and no further", 0, 90.1, false },
		{ "the bottom row", 0, -89.9, true },
		{ "and no further", 0, -90.1, false },
		{ "far away", 1e300, 0, false },
		{ "no number", NAN, 0, false },
	};
	struct plot p = tens();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		int r, c;
		if (plot_cell(&p, row[i].x, row[i].y, &r, &c) != row[i].inside)
			fail_msg("%s", row[i].why);
	}
}

/* Twice the longer extent, 500 m at least; last near, first far. */
static void a_point_far_off_is_told_from_a_near_one(void **state)
{
	static const double x[] = { 0, 300 }, y[] = { -10, 10 };
	static const struct {
		const char *why;
		size_t n;
		double x, y;
		bool want;
	} row[] = {
		{ "among them", 2, 100, 0, true },
		{ "twice their width to the west", 2, -600, 0, true },
		{ "farther", 2, -600.1, 0, false },
		{ "to the east", 2, 900, 0, true },
		{ "farther there", 2, 900.1, 0, false },
		{ "to the north, by the longer extent", 2, 0, 610, true },
		{ "farther north", 2, 0, 610.1, false },
		{ "of one point", 1, 500, 490, true },
		{ "farther from it", 1, 500.1, 0, false },
		{ "nowhere", 1, (double)NAN, 0, false },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (plot_is_near(x, y, row[i].n, row[i].x, row[i].y) != row[i].want)
			fail_msg("%s", row[i].why);
}

static void the_bar_is_round_and_whole_columns(void **state)
{
	static const struct {
		const char *why;
		double wide, metres;
		int cols;
	} row[] = {
		{ "1 m a column: 5 of them", 18, 5, 5 },
		{ "10 m in 6, of which seven is the most", 30, 10, 6 },
		{ "20 m in 4", 80, 20, 4 },
		{ "10 m a column: 50 m, not 10 or 20", 189, 50, 5 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const double x[] = { 0, row[i].wide }, y[] = { 0, 0 };
		struct plot p = plot_fit(x, y, 2, ROWS, COLS);
		if (p.bar_metres != row[i].metres || p.bar_cols != row[i].cols)
			fail_msg(
				"%s: %g m in %d", row[i].why, p.bar_metres, p.bar_cols);
	}
	const double alone[] = { 0 };
	struct plot narrow = plot_fit(alone, alone, 1, 3, 3);
	assert_int_equal(narrow.bar_cols, 1);
	assert_true(narrow.bar_metres == 10);
}

static void a_line_marks_its_ends_and_no_gap_between(void **state)
{
	static const char *const want[ROWS] = {
		".....................",
		".##..................",
		"...###...............",
		"......###............",
		".........###.........",
		"............###......",
		"...............###...",
		"..................##.",
		".....................",
	};
	const double from[] = { -90, 60 }, to[] = { 90, -60 };
	struct plot p = tens();
	struct drawn d;

	(void)state;
	clear_it(&d);
	plot_line(&p, from, to, mark, &d);
	expect(&d, want);
}

static void a_line_to_itself_is_one_cell(void **state)
{
	const double at[] = { 50, 0 };
	struct plot p = tens();
	struct drawn d;
	int marks = 0;

	(void)state;
	clear_it(&d);
	plot_line(&p, at, at, mark, &d);
	for (int r = 0; r < ROWS; r++)
		for (int c = 0; c < COLS; c++)
			marks += d.cell[r][c] == '#';
	assert_int_equal(marks, 1);
	assert_int_equal(d.cell[4][15], '#');
}

static void a_line_is_cut_at_the_edge_of_the_map(void **state)
{
	static const char *const want[ROWS] = {
		".....................",
		".....................",
		".....................",
		".....................",
		"..........###########",
		".....................",
		".....................",
		".....................",
		".....................",
	};
	static const char *const nothing[ROWS] = {
		".....................",
		".....................",
		".....................",
		".....................",
		".....................",
		".....................",
		".....................",
		".....................",
		".....................",
	};
	const double middle[] = { 0, 0 }, far[] = { 1e12, 0 };
	const double above[] = { -1e9, 500 }, beyond[] = { 1e9, 500 };
	struct plot p = tens();
	struct drawn d;

	(void)state;
	clear_it(&d);
	plot_line(&p, middle, far, mark, &d);
	expect(&d, want);
	clear_it(&d);
	plot_line(&p, above, beyond, mark, &d);
	expect(&d, nothing);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_scale_is_the_finest_with_a_whole_bar),
		cmocka_unit_test(a_wide_map_is_filled_to_nine_tenths),
		cmocka_unit_test(every_point_lies_within_the_margin),
		cmocka_unit_test(north_is_up_and_east_is_right),
		cmocka_unit_test(a_point_off_the_map_has_no_cell),
		cmocka_unit_test(a_point_far_off_is_told_from_a_near_one),
		cmocka_unit_test(the_bar_is_round_and_whole_columns),
		cmocka_unit_test(a_line_marks_its_ends_and_no_gap_between),
		cmocka_unit_test(a_line_to_itself_is_one_cell),
		cmocka_unit_test(a_line_is_cut_at_the_edge_of_the_map),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
