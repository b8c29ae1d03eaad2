/* Weather for the tests of the answers: every day stands still at one temperature, so
 * that a day above a base of 50 F is worth what it is above it. */
#ifndef TESTS_ANSWERS_WARM_H
#define TESTS_ANSWERS_WARM_H

#include "fixture.h"

#include "book/weather.h"

#include <math.h>

static inline int64_t warm_station(struct fixture *f, const char *name)
{
	struct station s = { 0 };
	struct err e = { 0 };

	text_copy(s.name, sizeof s.name, name);
	must(book_put_station(f->book, &s, &e), &e);
	return s.id;
}

/* Days first..last at `degrees`. */
static inline void warm_days(struct fixture *f, int64_t station, const char *first,
	const char *last, double degrees)
{
	struct err e = { 0 };

	for (int32_t day = day_of(first); day <= day_of(last); day++) {
		const struct weather_day w = { station, day, degrees, degrees, 'F' };
		must(book_save_weather(f->book, &w, &e), &e);
	}
}

static inline void warm_biofix(struct fixture *f, const char *day)
{
	struct err e = { 0 };
	struct biofix_date d = { .farm = f->farm.id,
		.pest = f->cm.id,
		.season = day_to_ymd(day_of(day)).year,
		.day = day_of(day) };

	must(book_put_biofix(f->book, &d, &e), &e);
}

/* CM by single sine, 50 F, no cap: the plainest rule. */
static inline void warm_rule(struct fixture *f)
{
	struct err e = { 0 };

	f->cm.heat = (struct heat){
		.unit = 'F', .base = 50, .cap = NAN, .method = "sine", .cutoff = "none"
	};
	must(book_put_pest(f->book, &f->cm, &e), &e);
}

#endif
