/* flight_samples.h - a Flight page filled by hand; counts and dates are invented. */
#ifndef TESTS_SCREEN_FLIGHT_SAMPLES_H
#define TESTS_SCREEN_FLIGHT_SAMPLES_H

#include "answers/flight.h"
#include "screen/samples.h"

enum { SAMPLE_WEEKS = 15 };

static inline void sample_line(
	struct flight_line *l, int season, const double *rate, size_t n, double dd_week)
{
	*l = (struct flight_line){
		.season = season, .first_day = day_from_ymd(season, 4, 13), .n = n
	};
	for (size_t i = 0; i < n; i++) {
		l->rate[i] = rate[i];
		l->dd[i] = i < 3 ? -1 : dd_week * (double)(i - 2);
	}
}

static inline void sample_seasons(struct flight_view *v)
{
	static const double now[SAMPLE_WEEKS] = { -1, 0, 0, 1.5, 4, 9.5, 14, 11, -1, 3,
		1, 0, 0.5, 2, 5 };
	static const double last[24] = { -1, -1, 0, 0, 2, 6, 8, 12, 5, 2, 1, 0, 0, 1, 3,
		-1, 7, 9, 4, 2, 1, 0, 0, -1 };
	static const double before[20] = { -1, 0, 0, 1, 3, 4, 2, 1, 0, 0, 0, 1, 2, 2, 1,
		0, 0, 0, 0, 0 };

	sample_line(&v->now, 2026, now, SAMPLE_WEEKS, 80);
	sample_line(&v->earlier[0], 2025, last, 24, 90);
	sample_line(&v->earlier[1], 2024, before, 20, 100);
	v->now.at_least[6] = true;
	v->n_earlier = 2;
}

static inline void sample_flight_rows(struct flight_view *v)
{
	v->n_rows = 2;
	SET(v->rows[0].name, "flight 1");
	SET(v->rows[0].first, "4 May");
	SET(v->rows[0].peak, "25 May");
	SET(v->rows[0].peak_rate, "14.0+");
	SET(v->rows[0].d10, "13 May");
	SET(v->rows[0].d50, "28 May");
	SET(v->rows[0].d90, "15 Jun");
	SET(v->rows[0].moths, "132");
	SET(v->rows[0].dd50, "312 F");
	SET(v->rows[0].flags, "gap at peak, at least");
	SET(v->rows[1].name, "flight 2");
	SET(v->rows[1].first, "6 Jul");
	SET(v->rows[1].peak, "20 Jul");
	SET(v->rows[1].peak_rate, "5.0");
	SET(v->rows[1].moths, "23");
	SET(v->rows[1].flags, "still rising");
}

static inline void sample_biofix(struct flight_view *v)
{
	static const struct biofix_rule rule = { "sustained-two",
		"first check with 2 moths or more, when the next has as many",
		"codling moth; a valley", "a grower's guide, 2021", 0 };
	struct flight_biofix *f = &v->biofix;

	f->is_set = true;
	f->day = day_from_ymd(2026, 5, 9);
	f->rule = &rule;
	f->suggestion = (struct biofix){ .state = BIOFIX_DATED,
		.after = day_from_ymd(2026, 5, 2),
		.by = day_from_ymd(2026, 5, 9),
		.read_nights = 7,
		.n_seen = 2 };
	SET(f->set, "biofix Sat 9 May 2026, by hand");
	SET(f->suggested, "first sustained catch: after 2 May, by 9 May");
	SET(f->earlier, "2025: 6 May, 2024: 12 May");
}

static inline struct event sample_event(
	const char *text, const char *at, const char *when, bool passed)
{
	struct event e = { .passed = passed };

	SET(e.text, text);
	SET(e.at, at);
	SET(e.when, when);
	SET(e.source, "a fruit guide, timeline");
	return e;
}

/* 2026 up to Tue 21 July with two seasons before it. The events are static. */
static inline void sample_flight(struct flight_view *v)
{
	static struct event events[3];

	*v = (struct flight_view){ .ask = { SAMPLE_FARM, 0, 1, NO_TRAP, 2026, false },
		.threshold = 5,
		.marks = { { FLIGHT_BIOFIX, 3 }, { FLIGHT_PEAK, 6 }, { FLIGHT_LURE, 6 },
			{ FLIGHT_TREATMENT, 7 }, { FLIGHT_LURE, 12 } },
		.n_marks = 5,
		.heat = { .state = HEAT_AT_LEAST, .unit = 'F' },
		.events = { .items = events, .n = 3 } };
	SET(v->title, "Flight  CM  Quillet");
	SET(v->right, "season 2026");
	sample_seasons(v);
	sample_flight_rows(v);
	sample_biofix(v);
	SET(v->heat_text, "at least 960 F degree-days since 9 May (3 days missing)");
	events[0] = sample_event("egg hatch begins (generation 1)", "220-250 F",
		"passed Thu 28 May", true);
	events[1] = sample_event("egg laying begins (generation 2)", "1000-1050 F",
		"about 23 to 27 Jul (2 earlier years)", false);
	events[2] = sample_event("egg hatch begins (generation 2)", "1100 F",
		"about 30 Jul (at the last week's pace)", false);
}

#endif
