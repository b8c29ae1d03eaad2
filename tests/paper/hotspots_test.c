#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../hot_points.h"
#include "lines.h"
#include "paper/ascii.h"
#include "paper/hotspots.h"

#include <math.h>
#include <stdio.h>

#define SET(field, text) snprintf(field, sizeof(field), "%s", text)

static const char caution[] = "Counts, no advice.";

static void fill_row(
	struct hot_row *r, enum hot_what what, enum hot_grade grade, const char *name)
{
	*r = (struct hot_row){
		.what = what, .grade = grade, .trap = NO_TRAP, .gi_star = (double)NAN
	};
	SET(r->name, name);
	SET(r->grade_text, grade == HOT_CLEAR ? "clear hot spot" : "could be luck");
	SET(r->rate_text, "9.3+");
	SET(r->ratio_text, "4.5 (2.3 to 9.0)");
	snprintf(r->says, sizeof r->says, "What is said of %s.", name);
	SET(r->numbers, "92 moths against 61.");
}

/* Five traps on a line 400 m long, a source at its west end. */
static void fill_map(struct hot_view *v)
{
	static struct hot_trap traps[5];
	static struct hot_source sources[1];
	static char letters[] = "A Mill Lane (abandoned)";

	for (int i = 0; i < 5; i++)
		traps[i] = (struct hot_trap){ .trap = i,
			.has_position = true,
			.is_alike = i != 4,
			.digit = i == 3 ? -1 : 9 - 2 * i,
			.at = { 100.0 * i, 0 } };
	sources[0] = (struct hot_source){ .letter = 'A',
		.kind = SOURCE_ABANDONED,
		.has_point = true,
		.at = { -120, 0 },
		.outline = { { -200, -60 }, { -60, -60 }, { -60, 60 }, { -200, 60 } },
		.n_outline = 4 };
	SET(sources[0].name, "Mill Lane");
	SET(sources[0].says, "Catch halves about every 150 m going away from Mill "
			     "Lane.");
	SET(sources[0].note, "A pattern is no proof.");
	v->traps = traps;
	v->n_traps = 5;
	v->sources = sources;
	v->n_sources = 1;
	v->letters = letters;
	hot_points_fill(v);
	v->classes = "0 none  9 20 and more";
}

static void fill(struct hot_view *v)
{
	static struct hot_row rows[7];
	static struct hot_alike alikes[1];

	fill_row(&rows[0], HOT_OF_BLOCK, HOT_CLEAR, "Hollow East");
	rows[0].gi_star = 2.71982966;
	SET(rows[0].next, "Sample fruit here.");
	SET(rows[0].power, "With 3 traps here it would be shown 1 time in 3.");
	SET(rows[0].earlier, "hot in 2 of 2 seasons");
	fill_row(&rows[1], HOT_OF_BLOCK, HOT_TOO_LITTLE, "Ridge");
	fill_row(&rows[2], HOT_OF_BORDER, HOT_LUCK, "border");
	fill_row(&rows[3], HOT_OF_BORDER, HOT_LUCK, "border of Ridge");
	rows[3].block = 2;
	fill_row(&rows[4], HOT_OF_BORDER, HOT_HIGHER, "border of Hollow East");
	rows[4].block = 1;
	fill_row(&rows[5], HOT_OF_TRAP, HOT_HIGHER, "trap 1");
	fill_row(&rows[6], HOT_OF_TRAP, HOT_LUCK, "trap 2");
	*v = (struct hot_view){ .rows = rows, .n = 7, .alikes = alikes, .n_alikes = 1 };
	SET(alikes[0].text, "4 traps, CM 1 mg, conventional");
	SET(v->title, "Quillet \u00b7 CM \u00b7 season 2026");
	SET(v->window, "5 May to 20 Jul, 560 trap-nights, 153 moths");
	SET(v->left_out, "1 trap left out: another lure.");
	SET(v->says, "One block is a clear hot spot.");
	SET(v->clumping, "Clumped.");
	fill_map(v);
}

static char *print(const struct hot_view *v, int cols)
{
	struct buf out = { 0 };

	paper_hotspots(v, caution, cols, &out);
	return out.text;
}

/* In this order, from the top. */
static void expect_order(const char *text, const char *const *want, size_t n)
{
	const char *at = text;

	for (size_t i = 0; i < n; i++) {
		const char *found = strstr(at, want[i]);

		if (!found)
			fail_msg("no \"%s\" after that in\n%s", want[i], text);
		at = found + strlen(want[i]);
	}
}

static void hotspots_say_it_from_the_answer_to_the_caution(void **state)
{
	static const char *const want[] = {
		"Hot spots  Quillet \u00b7 CM \u00b7 season 2026\n",
		"5 May to 20 Jul, 560 trap-nights, 153 moths\n",
		"4 traps, CM 1 mg, conventional\n",
		"1 trap left out: another lure.\n",
		"\nOne block is a clear hot spot.\nClumped.\n",
		"where ",
		"Hollow East           clear hot spot   9.3+ 4.5 (2.3 to 9.0)\n",
		"border of Ridge       could be luck ",
		"\nHollow East: What is said of Hollow East.\n  hot in 2 of 2 seasons\n  "
		"92 moths against 61.\n  Gi* of Getis and Ord: 2.72.\n  With 3 traps here it would be shown 1 time in "
		"3.\n  Sample fruit here.\n",
		"\nRidge: ",
		"\nborder: ",
		"\nborder of Hollow East: ",
		"\ntrap 1: ",
		"\n1 trap or neighbourhood more is not above what luck explains",
		"north  |-",
		"A Mill Lane (abandoned)\n",
		"0 none  9 20 and more",
		"\nCatch halves about every 150 m going away from Mill Lane.\n",
		"  A pattern is no proof.\n",
		"Not shown does not mean not\nthere.",
		"Counts, no advice.\n",
	};
	static struct hot_view v;
	char *text = NULL;

	(void)state;
	fill(&v);
	text = print(&v, 80);
	expect_order(text, want, sizeof want / sizeof *want);
	assert_int_equal(lines_count(text, "trap 2"), 0);
	assert_int_equal(lines_count(text, "border of Ridge"), 1);
	free(text);
}

/* 600 m within 76 columns: 8 m a column, 16 m a row; the outline is 18 columns wide and
 * 8 rows high round its letter, traps stand 12 or 13 columns apart. */
static void hotspots_map_is_to_scale(void **state)
{
	static struct hot_view v;
	char *text = NULL;

	(void)state;
	fill(&v);
	text = print(&v, 80);
	if (!strstr(text, "9            7           5            ?           o\n"))
		fail_msg("no traps 100 m apart in\n%s", text);
	assert_non_null(strstr(text, ".         A       .      9"));
	assert_int_equal(lines_count(text, "..............."), 2);
	assert_non_null(strstr(text, "|------------------------| 200 m\n"));
	free(text);
}

static void hotspots_say_what_they_have_no_map_for(void **state)
{
	static struct hot_view v;
	char *text = NULL;

	(void)state;
	fill(&v);
	for (size_t i = 0; i < v.n_traps; i++)
		v.traps[i].has_position = false;
	hot_points_fill(&v);
	SET(v.no_map, "No map: no trap has a position.");
	SET(v.missing, "Distances need positions.");
	text = print(&v, 80);
	assert_non_null(strstr(text, "\nNo map: no trap has a position.\n"));
	assert_non_null(strstr(text, "\nDistances need positions.\n"));
	assert_null(strstr(text, "north"));
	free(text);
}

static void hotspots_of_nothing_are_said_in_a_few_lines(void **state)
{
	static struct hot_view v;
	char *text = NULL;

	(void)state;
	v = (struct hot_view){ 0 };
	SET(v.title, "Quillet \u00b7 CM \u00b7 season 2026");
	SET(v.says, "No trap for it was read this season.");
	text = print(&v, 40);
	assert_non_null(strstr(text, "No trap for it was read this season."));
	assert_non_null(strstr(text, caution));
	free(text);
}

static void hotspots_fit_every_width(void **state)
{
	static struct hot_view v;
	struct buf ascii = { 0 };

	(void)state;
	fill(&v);
	for (int cols = 40; cols <= 120; cols++) {
		char *text = print(&v, cols);
		int widest = lines_widest(text);

		if (widest > cols || widest > 78)
			fail_msg("%d columns: one of %d in\n%s", cols, widest, text);
		buf_clear(&ascii);
		assert_int_equal(lines_count(paper_ascii(text, &ascii), "?"),
			lines_count(text, "?"));
		free(text);
	}
	buf_free(&ascii);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(hotspots_say_it_from_the_answer_to_the_caution),
		cmocka_unit_test(hotspots_map_is_to_scale),
		cmocka_unit_test(hotspots_say_what_they_have_no_map_for),
		cmocka_unit_test(hotspots_of_nothing_are_said_in_a_few_lines),
		cmocka_unit_test(hotspots_fit_every_width),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
