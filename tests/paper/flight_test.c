#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "lines.h"
#include "paper/ascii.h"
#include "paper/flight.h"

#include <stdio.h>

#define SET(field, text) snprintf(field, sizeof(field), "%s", text)

static void fill_line(struct flight_line *l, int season, const double *rate, size_t n)
{
	*l = (struct flight_line){
		.season = season, .first_day = day_from_ymd(season, 4, 20), .n = n
	};
	for (size_t i = 0; i < n; i++) {
		l->rate[i] = rate[i];
		l->dd[i] = i < 3 ? -1 : 80.0 * (double)(i - 2);
	}
}

static void fill_rows(struct flight_view *v)
{
	v->n_rows = 2;
	v->rows[0] = (struct flight_row){ .name = "flight 1",
		.first = "20 Apr",
		.peak = "25 May",
		.peak_rate = "16.0",
		.d10 = "12 May",
		.d50 = "24 May",
		.d90 = "9 Jun",
		.moths = "132+",
		.dd50 = "312 F",
		.flags = "at least this many: a full card, or counts not settled" };
	v->rows[1] = (struct flight_row){ .name = "flight 2",
		.first = "22 Jun",
		.peak = "29 Jun",
		.peak_rate = "5.0",
		.d10 = "24 Jun",
		.d50 = "1 Jul",
		.d90 = "4 Jul",
		.moths = "23" };
}

static void fill_biofix(struct flight_view *v)
{
	static const struct biofix_rule rule = { "own-word", "first check with a moth",
		"a valley", "a grower's guide, 2021", 0 };

	v->biofix = (struct flight_biofix){ .is_set = true, .rule = &rule };
	SET(v->biofix.set, "biofix Sat 9 May 2026, by hand");
	SET(v->biofix.suggested, "first check with a moth: after Sat 2 May, by Sat 9 "
				 "May");
	SET(v->biofix.earlier, "2025: 6 May");
	SET(v->heat_text, "at least 800 F degree-days, 1 day missing");
	v->heat = (struct heat_sum){ .state = HEAT_AT_LEAST, .unit = 'F' };
}

static void fill_events(struct flight_view *v)
{
	static struct event events[2];

	events[0] = (struct event){ .passed = true };
	SET(events[0].text, "egg hatch begins");
	SET(events[0].at, "250 F");
	SET(events[0].when, "passed Thu 28 May");
	SET(events[0].source, "a fruit guide, timeline");
	events[1] = (struct event){ .passed = false };
	SET(events[1].text, "egg hatch ends");
	SET(events[1].at, "920 F");
	SET(events[1].when, "Thu 9 Jul to Sun 12 Jul (as in 2 earlier years)");
	SET(events[1].source, "another guide, table 2");
	v->events = (struct events){ .items = events, .n = 2 };
}

/* Two flights with a week that nobody looked and a full card; a season before. */
static void sample(struct flight_view *v)
{
	static const double now[] = { 0, 0, 1, 4, 9.5, 16, 11, -1, 3, 0, 2, 5 };
	static const double last[] = { -1, 0, 0, 2, 8, 12, 5, 1, 0, -1, 4, 7, 3 };

	*v = (struct flight_view){
		.ask = { .farm = 1, .pest = 1, .trap = NO_TRAP, .season = 2026 },
		.threshold = 5,
		.marks = { { FLIGHT_BIOFIX, 3 }, { FLIGHT_PEAK, 5 }, { FLIGHT_LURE, 6 },
			{ FLIGHT_TREATMENT, 6 } },
		.n_marks = 4,
		.n_earlier = 1
	};
	SET(v->title, "Flight  CM  Quillet");
	SET(v->right, "season 2026");
	fill_line(&v->now, 2026, now, sizeof now / sizeof *now);
	v->now.at_least[5] = true;
	fill_line(&v->earlier[0], 2025, last, sizeof last / sizeof *last);
	fill_rows(v);
	fill_biofix(v);
	fill_events(v);
}

static char *print(const struct flight_view *v, int cols)
{
	struct buf out = { 0 };

	paper_flight(v, cols, &out);
	return out.text;
}

static const char whole_page[] =
	"Flight  CM  Quillet                                                season "
	"2026\n"
	"\n"
	"   16|               ++\n"
	"     |               \u2588\u2588\n"
	"     |               \u2588\u2588 \u2584\u2584\n"
	"     |            \u2586\u2586 \u2588\u2588 \u2588\u2588\n"
	"    8|            \u2588\u2588 \u2588\u2588 \u2588\u2588\n"
	"    5|------------\u2588\u2588-\u2588\u2588-\u2588\u2588-------------"
	"\u2584\u2584----\n"
	"     |         \u2588\u2588 \u2588\u2588 \u2588\u2588 \u2588\u2588    "
	"\u2584\u2584       \u2588\u2588\n"
	"     |__ __ \u2584\u2584 \u2588\u2588 \u2588\u2588 \u2588\u2588 \u2588\u2588 "
	"\u00b7\u00b7 \u2588\u2588 __ \u2588\u2588 \u2588\u2588\n"
	"               B     P  LT\n"
	"         May            Jun         Jul\n"
	" dd F                   240         560\n"
	" 2025 \u00b7\u00b7 __ __ \u2581\u2581 \u2584\u2584 \u2586\u2586 "
	"\u2583\u2583 \u2581\u2581 __ \u00b7\u00b7 \u2582\u2582 \u2584\u2584 "
	"\u2582\u2582\n";

static void season_is_a_chart_with_marks_and_last_year(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	char *text = print(&v, 80);
	if (strncmp(text, whole_page, strlen(whole_page)) != 0)
		fail_msg("%s", text);
	free(text);
}

static const char under_the_chart[] =
	"\n"
	"flight    first   peak a week   10 %   50 %  90 % moths dd 50 %\n"
	"flight 1 20 Apr 25 May   16.0 12 May 24 May 9 Jun  132+   312 F\n"
	"    at least this many: a full card, or counts not settled\n"
	"flight 2 22 Jun 29 Jun    5.0 24 Jun  1 Jul 4 Jul    23\n"
	"first, peak: first day of the week; 10, 50, 90 %: the day by which that share\n"
	"of the flight was caught\n"
	"\n"
	"biofix Sat 9 May 2026, by hand\n"
	"  suggested: first check with a moth: after Sat 2 May, by Sat 9 May\n"
	"  that rule's source: a grower's guide, 2021\n"
	"  earlier seasons: 2025: 6 May\n"
	"  since biofix: at least 800 F degree-days, 1 day missing\n"
	"\n"
	"Next\n"
	"  egg hatch ends, 920 F: Thu 9 Jul to Sun 12 Jul (as in 2 earlier years)\n"
	"    another guide, table 2\n"
	"\n"
	"Passed\n"
	"  egg hatch begins, 250 F: passed Thu 28 May\n"
	"    a fruit guide, timeline\n"
	"These sums were published for their own places. Timing is local: ask the\n"
	"extension service; the product label is the law.\n";

static void table_biofix_and_outlook_stand_under_it(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	char *text = print(&v, 80);
	const char *at = strstr(text, "\nflight  ");
	if (!at || strcmp(at, under_the_chart) != 0)
		fail_msg("%s", text);
	free(text);
}

static void season_keeps_to_any_width(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	for (int cols = 40; cols <= 160; cols++) {
		char *text = print(&v, cols);
		int most = cols < 78 ? cols : 78;

		if (lines_widest(text) > most)
			fail_msg("%d columns: a line of %d", cols, lines_widest(text));
		if (!strstr(text, "24 May") || !strstr(text, "132+"))
			fail_msg("%d columns: a flight is lost:\n%s", cols, text);
		free(text);
	}
}

static void a_long_season_keeps_its_latest_weeks(void **state)
{
	struct flight_view v;
	double rate[FLIGHT_WEEKS_MAX];

	(void)state;
	sample(&v);
	for (int i = 0; i < FLIGHT_WEEKS_MAX; i++)
		rate[i] = i == FLIGHT_WEEKS_MAX - 1 ? 8 : 0;
	fill_line(&v.now, 2026, rate, FLIGHT_WEEKS_MAX);
	char *text = print(&v, 40);
	assert_true(lines_widest(text) <= 40);
	assert_non_null(strstr(text, "_\u2588\n"));
	free(text);
}

static void season_is_ascii_when_asked(void **state)
{
	struct flight_view v;
	struct buf ascii = { 0 };

	(void)state;
	sample(&v);
	char *text = print(&v, 80);
	paper_ascii(text, &ascii);
	assert_non_null(strstr(ascii.text, "|__ __ 44 88 88 88 88 .. 88 __ 88 88\n"));
	assert_null(strchr(ascii.text, '?'));
	free(text);
	buf_free(&ascii);
}

static void a_floor_stands_on_its_bar(void **state)
{
	static const struct {
		const char *why;
		double rate;
		const char *row;
	} row[] = {
		{ "above a bar", 6,
			"    8|            \u2588\u2588 ++ \u2588\u2588\n" },
		{ "within the top row where there is none above", 16,
			"   16|               ++ \u2588\u2588\n" },
		{ "at the foot with none counted", 0,
			"     |__ __ \u2584\u2584 \u2588\u2588 \u2588\u2588 ++ " },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct flight_view v;

		sample(&v);
		v.threshold = -1;
		v.now.at_least[5] = true;
		v.now.rate[5] = row[i].rate;
		v.now.rate[6] = 16;
		char *text = print(&v, 80);
		if (!strstr(text, row[i].row))
			fail_msg("%s:\n%s", row[i].why, text);
		free(text);
	}
}

static void the_latest_weeks_show_though_nobody_looked(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	v.n_earlier = 0;
	v.now.n = 14;
	v.now.rate[12] = v.now.rate[13] = -1;
	char *text = print(&v, 80);
	assert_non_null(strstr(
		text, "__ \u2588\u2588 \u2588\u2588 \u00b7\u00b7 \u00b7\u00b7\n"));
	free(text);
}

static void nothing_read_is_said_and_not_drawn(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	v.now.n = v.n_earlier = v.n_rows = 0;
	SET(v.says, "nothing has been read yet");
	char *text = print(&v, 80);
	assert_non_null(strstr(text, "\nnothing has been read yet\n"));
	assert_null(strchr(text, '|'));
	assert_null(strstr(text, "a week"));
	free(text);
}

static void what_is_not_known_says_why(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	v.events.n = 0;
	v.heat.state = HEAT_NO_BIOFIX;
	SET(v.biofix.set, "biofix not set");
	SET(v.events.none, "biofix not set");
	char *text = print(&v, 80);
	assert_non_null(
		strstr(text, "\nWhat comes next is not known: biofix not set\n"));
	assert_null(strstr(text, "since biofix"));
	assert_null(strstr(text, " dd F"));
	assert_null(strstr(text, "These sums"));
	free(text);
}

/* A biofix is a farm's, so is what comes after it. */
static void all_farms_together_have_no_biofix(void **state)
{
	struct flight_view v;

	(void)state;
	sample(&v);
	v.ask.farm = 0;
	char *text = print(&v, 80);
	assert_non_null(strstr(text, "flight 2"));
	assert_null(strstr(text, "suggested"));
	assert_null(strstr(text, "Next"));
	free(text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(season_is_a_chart_with_marks_and_last_year),
		cmocka_unit_test(table_biofix_and_outlook_stand_under_it),
		cmocka_unit_test(season_keeps_to_any_width),
		cmocka_unit_test(a_long_season_keeps_its_latest_weeks),
		cmocka_unit_test(season_is_ascii_when_asked),
		cmocka_unit_test(a_floor_stands_on_its_bar),
		cmocka_unit_test(the_latest_weeks_show_though_nobody_looked),
		cmocka_unit_test(nothing_read_is_said_and_not_drawn),
		cmocka_unit_test(what_is_not_known_says_why),
		cmocka_unit_test(all_farms_together_have_no_biofix),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
