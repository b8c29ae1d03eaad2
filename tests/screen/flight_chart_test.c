/* The chart of weeks. */
#include "screen/flight_page.h"

#include "screen/flight_samples.h"

static void draw(struct flight_page *p, struct canvas *c, int rows, int cols)
{
	canvas_size(c, rows, cols);
	flight_page_draw(p, c);
}

static void expect_row(
	const char *why, const struct canvas *c, int row, const char *want)
{
	struct buf got = { 0 };
	char *line = NULL;

	canvas_dump(c, false, &got);
	line = got.text;
	while (row-- > 0)
		line = strchr(line, '\n') + 1;
	*strchr(line, '\n') = '\0';
	if (strcmp(line, want) != 0)
		fail_msg("%s: \"%s\", not \"%s\"", why, line, want);
	buf_free(&got);
}

/* Four weeks without degree-days. */
static void sample_weeks(struct flight_view *v, const double rates[static 4])
{
	*v = (struct flight_view){ .threshold = -1 };
	sample_line(&v->now, 2026, rates, 4, -1);
}

/* Two rows of bars, 8 a row, two columns and a free one a week; the first week sets
 * the scale. */
static void flight_chart_tells_kinds_of_weeks_apart(void **state)
{
	static const struct {
		const char *why;
		double rate;
		bool at_least;
		const char *upper, *lower;
	} row[] = {
		{ "counted, none", 0, false, "", "__" },
		{ "so little", 0.01, false, "", "\u2581\u2581" },
		{ "an eighth", 1, false, "", "\u2581\u2581" },
		{ "a bit more", 1.01, false, "", "\u2582\u2582" },
		{ "seven eighths", 7, false, "", "\u2587\u2587" },
		{ "a row", 8, false, "", "\u2588\u2588" },
		{ "a row and a bit", 8.5, false, "\u2581\u2581", "\u2588\u2588" },
		{ "the top", 16, false, "\u2588\u2588", "\u2588\u2588" },
		{ "at least a row", 8, true, "++", "\u2588\u2588" },
		{ "at least the top", 16, true, "++", "\u2588\u2588" },
		{ "at least none", 0, true, "", "++" },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };
		char want[64];

		sample_weeks(&v, (double[]){ 16, row[i].rate, -1, 0 });
		v.now.at_least[1] = row[i].at_least;
		draw(&p, &c, 11, 20);
		snprintf(want, sizeof want, "   16\u2502\u2588\u2588%s%s",
			row[i].upper[0] ? " " : "", row[i].upper);
		expect_row(row[i].why, &c, 2, want);
		snprintf(want, sizeof want,
			"    8\u2502\u2588\u2588 %s \u00b7\u00b7 __", row[i].lower);
		expect_row(row[i].why, &c, 3, want);
	}
	canvas_free(&c);
}

/* In the row that holds its height: four rows, 4 a row. */
static void flight_chart_puts_the_threshold_where_it_is(void **state)
{
	static const struct {
		const char *why;
		double threshold;
		const char *row[4]; /* from the top */
	} row[] = {
		{ "none", -1,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				"    8\u2502\u2588\u2588",
				"     \u2502\u2588\u2588 __ __ __" } },
		{ "the edge of a row", 4,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				"    8\u2502\u2588\u2588",
				"    4\u2502\u2588\u2588-__-__-__--" } },
		{ "just above it", 4.25,
			{ "   16\u2502\u2588\u2588", "     \u2502\u2588\u2588",
				" 4.25\u2502\u2588\u2588-----------",
				"     \u2502\u2588\u2588 __ __ __" } },
		{ "the top", 16,
			{ "   16\u2502\u2588\u2588-----------",
				"     \u2502\u2588\u2588", "    8\u2502\u2588\u2588",
				"     \u2502\u2588\u2588 __ __ __" } },
	};
	static struct flight_view v;
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_page p = { .view = &v };

		sample_weeks(&v, (double[]){ 16, 0, 0, 0 });
		v.threshold = row[i].threshold;
		draw(&p, &c, 14, 20);
		for (int k = 0; k < 4; k++)
			expect_row(row[i].why, &c, 2 + k, row[i].row[k]);
	}
	canvas_free(&c);
}

/* All that is caught lies below it: the chart still reaches up to it. */
static void flight_chart_always_shows_the_threshold(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 0.5, 0, 0, 0 });
	v.threshold = 15;
	draw(&p, &c, 14, 20);
	expect_row("its row", &c, 2, "   15\u2502-------------");
	canvas_free(&c);
}

static void flight_chart_stays_readable_in_ascii(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v, .several = true };
	struct canvas c = { 0 };
	size_t plus = 0;

	(void)state;
	sample_flight(&v);
	draw(&p, &c, 24, 80);
	for (size_t i = 0; i < 24 * 80; i++) {
		uint32_t ch = canvas_ascii(c.cells[i].ch[0]);

		plus += ch == '+';
		if (ch == '?' && c.cells[i].ch[0] != '?')
			fail_msg("U+%04X has no likeness", c.cells[i].ch[0]);
	}
	assert_int_equal(plus, 2); /* the one week with a full card, no line */
	canvas_free(&c);
}

static void flight_chart_shows_the_latest_weeks_that_fit(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 1, 0, 1, 0 });
	for (int i = 4; i < 50; i++)
		v.now.rate[i] = i % 2;
	v.now.n = 50;
	draw(&p, &c, 11, 40);
	expect_row("33 of 50", &c, 3,
		"  0.5\u2502\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_"
		"\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588_\u2588");
	canvas_free(&c);
}

/* Along degree-days a week is as wide as they are. */
static void flight_chart_goes_along_degree_days(void **state)
{
	static struct flight_view v;
	struct flight_page p = { .view = &v, .ruler = RULER_HEAT, .several = true };
	struct canvas c = { 0 };

	(void)state;
	sample_weeks(&v, (double[]){ 16, 2, 8, 4 });
	memcpy(v.now.dd, (double[]){ -1, 2, 6, 7 }, sizeof(double) * 4);
	v.heat.unit = 'F';
	v.earlier[0] = v.earlier[1] = v.now;
	v.earlier[0].season = 2025;
	v.earlier[1].dd[1] = v.earlier[1].dd[2] = v.earlier[1].dd[3] = -1;
	v.n_earlier = 2;      /* of the second none are known: it is left out */
	draw(&p, &c, 16, 20); /* 13 columns of 0.8 */
	expect_row("two weeks in a column", &c, 4,
		"    8\u2502  \u2588\u2588\u2588\u2588\u2588");
	expect_row("to the end", &c, 5,
		"     \u2502\u2584\u2584\u2588\u2588\u2588\u2588\u2588\u2588");
	expect_row("the ruler", &c, 6, " dd F 0         8");
	expect_row("the same season again", &c, 7,
		" 2025 \u2581\u2581\u2584\u2584\u2584\u2584\u2584\u2582");
	expect_row("and no other", &c, 8, " Biofix and");
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(flight_chart_tells_kinds_of_weeks_apart),
		cmocka_unit_test(flight_chart_puts_the_threshold_where_it_is),
		cmocka_unit_test(flight_chart_always_shows_the_threshold),
		cmocka_unit_test(flight_chart_stays_readable_in_ascii),
		cmocka_unit_test(flight_chart_shows_the_latest_weeks_that_fit),
		cmocka_unit_test(flight_chart_goes_along_degree_days),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
