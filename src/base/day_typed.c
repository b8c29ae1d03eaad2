/* day_typed.c - days as a wet thumb types them. */
#include "base/day.h"
#include "base/text.h"

#include <stdio.h>
#include <string.h>

/* The day of the month, or of the month before it when that lies ahead. */
static int32_t of_month(int32_t day, struct ymd now, int32_t today)
{
	int32_t got = day_from_ymd(now.year, now.month, day);

	if (got != DAY_NONE && got <= today)
		return got;
	return now.month > 1 ? day_from_ymd(now.year, now.month - 1, day)
			     : day_from_ymd(now.year - 1, 12, day);
}

static int32_t of_year(int32_t month, int32_t day, struct ymd now, int32_t today)
{
	int32_t got = day_from_ymd(now.year, month, day);

	return got != DAY_NONE && got <= today ? got
					       : day_from_ymd(now.year - 1, month, day);
}

/* "7-14", "0714": its two numbers; "14": the month is 0. */
static bool read_parts(const char *text, int32_t *month, int32_t *day)
{
	const char *dash = strchr(text, '-');
	size_t n = dash ? (size_t)(dash - text) : strlen(text) == 4 ? 2 : 0;
	char head[4] = "";

	if (n > 2)
		return false;
	memcpy(head, text, n);
	*month = 0;
	return (n == 0 || text_int(head, 1, 12, month)) && (!dash || n > 0) &&
	       text_int(dash ? dash + 1 : text + n, 1, 31, day);
}

int32_t day_typed(const char *text, int32_t today)
{
	struct ymd now = day_to_ymd(today);
	int32_t month, day;

	if (!read_parts(text, &month, &day))
		return DAY_NONE;
	return month ? of_year(month, day, now, today) : of_month(day, now, today);
}

int32_t day_typed_ahead(const char *text, int32_t today)
{
	enum { SAME_YEAR = 183, SAME_MONTH = 15 };
	int32_t month, day;

	if (!read_parts(text, &month, &day))
		return DAY_NONE;
	return day_typed(text, today + (month ? SAME_YEAR : SAME_MONTH));
}
