/* weather.h - a station's days, for typing them in and looking them over. */
#ifndef ANSWERS_WEATHER_H
#define ANSWERS_WEATHER_H

#include "answers/heat.h"
#include "answers/say.h"

struct weather_row {
	int32_t day;
	char day_text[SAY_SHORT]; /* "Tue 21 Jul" */
	bool is_read;             /* both temperatures are there */
	double min, max;          /* in the list's unit; NAN */
	char text[SAY_SHORT * 2]; /* "12.5  27.0", "missing", "filled", "12.5  -" */
	char dd[SAY_SHORT], sum[SAY_SHORT]; /* of the pest; "" */
};

struct weather_list {
	struct station station; /* id 0: none yet */
	char unit;              /* that days are typed in: 'C' or 'F' */
	char title[SAY_LINE];   /* "Weather  Low Gauge" */
	char farms[SAY_LINE];   /* farms that go by it */
	char heat[SAY_LINE]; /* whose degree-days stand beside: "CM, base 50 F ..." */
	/* latest first, from today back to the season's start, each day, read or not */
	struct weather_row *rows;
	size_t n, cap;
	int missing; /* days of the season before today without both temperatures */
};

struct weather_ask {
	int64_t farm;
	int64_t station; /* 0: the farm's */
	int64_t pest;    /* whose degree-days stand beside; 0: none */
};
bool weather_list_read(struct weather_list *w, struct book *b, const struct log *l,
	const struct weather_ask *ask, struct err *e);
void weather_list_free(struct weather_list *w);

#endif
