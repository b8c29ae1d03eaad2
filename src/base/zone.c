#include "base/zone.h"

#include "base/day.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { EAST_MAX = 840, ISO_LENGTH = 22, OFFSET_AT = 16 };

static const struct instant never = { .minute = INSTANT_NONE };

int32_t zone_east(const struct zone *z, int64_t minute)
{
	size_t i = z->n;

	if (i == 0)
		return 0;
	while (i > 1 && z->steps[i - 1].from > minute)
		i--;
	return z->steps[i - 1].east;
}

struct instant zone_at(const struct zone *z, int64_t minute)
{
	if (minute == INSTANT_NONE)
		return never;
	return (struct instant){ .minute = minute, .east = zone_east(z, minute) };
}

/* The latest offset is tried first. Where clocks went back both offsets around the step
 * hold, and the first that does is the later instant; where they went forward neither
 * does, and the earlier offset then gives an instant after the step. */
struct instant zone_local(const struct zone *z, int32_t day, int32_t minute_of_day)
{
	int64_t shown = (int64_t)day * MINUTES_A_DAY + minute_of_day;
	size_t i = z->n;

	if (day == DAY_NONE || minute_of_day < 0 || minute_of_day > MINUTES_A_DAY)
		return never;
	if (i == 0)
		return zone_at(z, shown);
	while (i > 1 && shown - z->steps[i - 1].east < z->steps[i - 1].from)
		i--;
	return zone_at(z, shown - z->steps[i - 1].east);
}

static int64_t day_of(int64_t minute)
{
	int64_t rest = minute % MINUTES_A_DAY;

	return (minute - (rest < 0 ? rest + MINUTES_A_DAY : rest)) / MINUTES_A_DAY;
}

/* Far from any day that can be written an instant is as good as not known. */
static bool is_known(struct instant t)
{
	return t.minute / MINUTES_A_DAY > INT32_MIN / 2 &&
	       t.minute / MINUTES_A_DAY < INT32_MAX / 2;
}

int32_t instant_day(struct instant t)
{
	return is_known(t) ? (int32_t)day_of(t.minute + t.east) : DAY_NONE;
}

int32_t instant_minute_of_day(struct instant t)
{
	if (!is_known(t))
		return -1;
	int64_t shown = t.minute + t.east;
	return (int32_t)(shown - day_of(shown) * MINUTES_A_DAY);
}

void instant_write(struct instant t, char out[static INSTANT_SIZE])
{
	char day[DAY_ISO_SIZE];
	int32_t minute = instant_minute_of_day(t), off = abs(t.east);

	day_iso(instant_day(t), day);
	out[0] = '\0';
	if (day[0] != '\0')
		snprintf(out, INSTANT_SIZE, "%sT%02d:%02d%c%02d:%02d", day,
			(int)minute / 60, (int)minute % 60, t.east < 0 ? '-' : '+',
			(int)off / 60 % 100, (int)off % 60);
}

/* Two digits up to `max`, -1 if they are not. */
static int two_digits(const char *s, int max)
{
	if (s[0] < '0' || s[0] > '9' || s[1] < '0' || s[1] > '9')
		return -1;
	int value = (s[0] - '0') * 10 + (s[1] - '0');
	return value <= max ? value : -1;
}

/* "10:30" and nothing less; what follows is not looked at. Hours up to max_hour. */
static int minutes_of(const char *s, int max_hour)
{
	int hour = two_digits(s, max_hour);

	if (hour < 0 || s[2] != ':')
		return -1;
	int minute = two_digits(s + 3, 59);
	return minute < 0 ? -1 : hour * 60 + minute;
}

bool instant_read(const char *text, struct instant *out)
{
	char date[DAY_ISO_SIZE];
	int32_t day;

	if (strlen(text) != ISO_LENGTH || text[DAY_ISO_SIZE - 1] != 'T')
		return false;
	memcpy(date, text, DAY_ISO_SIZE - 1);
	date[DAY_ISO_SIZE - 1] = '\0';
	int minute = minutes_of(text + DAY_ISO_SIZE, 23);
	int east = minutes_of(text + OFFSET_AT + 1, EAST_MAX / 60);
	if (!day_parse(date, &day) || minute < 0 || east < 0 || east > EAST_MAX)
		return false;
	if (text[OFFSET_AT] == '-' && east > 0)
		east = -east;
	else if (text[OFFSET_AT] != '+')
		return false;
	out->minute = (int64_t)day * MINUTES_A_DAY + minute - east;
	out->east = east;
	return true;
}

bool clock_read(const char *text, int32_t *minute_of_day)
{
	char full[sizeof "00:00"] = "0";
	size_t n = strlen(text);
	const char *colon = strchr(text, ':');

	if (n == 5 && colon == text + 2)
		memcpy(full, text, n);
	else if (n == 4 && colon == text + 1)
		memcpy(full + 1, text, n);
	else if (n == 4)
		snprintf(full, sizeof full, "%.2s:%s", text, text + 2);
	int minute = minutes_of(full, 23);
	if (minute >= 0)
		*minute_of_day = minute;
	return minute >= 0;
}

void instant_short(struct instant t, char *out, size_t size)
{
	char day[DAY_TEXT_SIZE];
	int32_t minute = instant_minute_of_day(t);

	day_short(instant_day(t), day, sizeof day);
	out[0] = '\0';
	if (day[0] != '\0')
		snprintf(out, size, _("%s %02d:%02d"), day, (int)minute / 60,
			(int)minute % 60);
}
