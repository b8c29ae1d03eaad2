#include "command/clock.h"

#include "base/day.h"
#include "base/text.h"

#include <string.h>
#include <time.h>

enum {
	DAYS_EACH_WAY = 15 * 365,
	/* Nowhere did clocks change and change back within so short a time. */
	STRIDE = 7 * MINUTES_A_DAY,
};

int32_t clock_day(void)
{
	time_t now = time(NULL);
	struct tm local;

	if (!localtime_r(&now, &local))
		return DAY_NONE;
	return day_from_ymd(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

void clock_text(char *out, size_t size)
{
	time_t now = time(NULL);
	struct tm local;

	if (!localtime_r(&now, &local) || strftime(out, size, "%H:%M:%S", &local) == 0)
		text_copy(out, size, "");
}

int64_t clock_ms(void)
{
	struct timespec now = { 0 };

	clock_gettime(CLOCK_MONOTONIC, &now);
	return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

static int32_t east_at(int64_t minute)
{
	time_t at = (time_t)(minute * 60);
	struct tm local;

	return localtime_r(&at, &local) ? (int32_t)(local.tm_gmtoff / 60) : 0;
}

struct instant clock_now(void)
{
	int64_t minute = (int64_t)time(NULL) / 60;

	if (clock_day() == DAY_NONE)
		return (struct instant){ .minute = INSTANT_NONE };
	return (struct instant){ .minute = minute, .east = east_at(minute) };
}

/* The first minute of (lo, hi] that goes otherwise than lo; hi does. */
static int64_t first_other(int64_t lo, int64_t hi)
{
	int32_t before = east_at(lo);

	while (hi - lo > 1) {
		int64_t mid = lo + (hi - lo) / 2;
		if (east_at(mid) == before)
			lo = mid;
		else
			hi = mid;
	}
	return hi;
}

static void add_step(struct zone *z, int64_t from)
{
	if (z->n == ZONE_STEPS_MAX)
		memmove(z->steps, z->steps + 1, --z->n * sizeof *z->steps);
	z->steps[z->n++] = (struct zone_step){ .from = from, .east = east_at(from) };
}

void clock_zone(struct zone *z, int32_t around)
{
	z->n = 0;
	if (around == DAY_NONE)
		return;
	int64_t at = ((int64_t)around - DAYS_EACH_WAY) * MINUTES_A_DAY;
	int64_t end = ((int64_t)around + DAYS_EACH_WAY) * MINUTES_A_DAY;
	add_step(z, at);
	while (at < end) {
		int64_t next = at + STRIDE;
		if (east_at(next) != z->steps[z->n - 1].east) {
			next = first_other(at, next);
			add_step(z, next);
		}
		at = next;
	}
}

void clock_stand(int32_t day, int32_t minute, struct instant *now, struct zone *z)
{
	*now = clock_now();
	clock_zone(z, day);
	if (now->minute == INSTANT_NONE || (minute == 0 && day == instant_day(*now)))
		return;
	*now = zone_local(z, day, minute > 0 ? minute : instant_minute_of_day(*now));
}
