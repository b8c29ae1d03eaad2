/* weather_samples.h - a Weather page filled by hand; temperatures are invented. */
#ifndef TESTS_SCREEN_WEATHER_SAMPLES_H
#define TESTS_SCREEN_WEATHER_SAMPLES_H

#include "answers/weather.h"
#include "screen/samples.h"

#include <math.h>

enum { SAMPLE_STATION = 3, SAMPLE_DAYS = 30 };

static inline struct weather_row sample_weather_row(int32_t day, double min, double max)
{
	struct weather_row r = { .day = day,
		.is_read = !isnan(min) && !isnan(max),
		.min = min,
		.max = max };
	char text[DAY_TEXT_SIZE];

	day_short(day, text, sizeof text);
	SET(r.day_text, text);
	SET(r.text, "missing");
	if (!isnan(min))
		snprintf(r.text, sizeof r.text, isnan(max) ? "%.1f  -" : "%.1f  %.1f",
			min, max);
	if (r.is_read) {
		snprintf(r.dd, sizeof r.dd, "%.1f", (min + max) / 2 - 10);
		snprintf(r.sum, sizeof r.sum, "%d", (int)(day - sample_day() + 512));
	}
	return r;
}

/* Tue 21 July 2026 back to Mon 22 June: today and the 17th are missing, the 18th has
 * only its minimum. The rows are static. */
static inline struct weather_list sample_weather(void)
{
	static struct weather_row rows[SAMPLE_DAYS];
	struct weather_list l = { .station = { .id = SAMPLE_STATION },
		.unit = 'C',
		.rows = rows,
		.n = SAMPLE_DAYS,
		.missing = 3 };

	for (int i = 0; i < SAMPLE_DAYS; i++)
		rows[i] = sample_weather_row(
			sample_day() - i, 11.5 + i % 4, 24 + i % 5 * 1.5);
	rows[0] = sample_weather_row(sample_day(), NAN, NAN);
	rows[3] = sample_weather_row(sample_day() - 3, 12, NAN);
	rows[4] = sample_weather_row(sample_day() - 4, NAN, NAN);
	SET(l.station.name, "Low Gauge");
	SET(l.title, "Weather  Low Gauge");
	SET(l.farms, "Quillet and Sandholm go by it");
	SET(l.heat, "CM: base 10 C, cap 31.1 C, sine, horizontal cutoff");
	return l;
}

#endif
