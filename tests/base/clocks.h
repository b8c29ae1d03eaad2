/* clocks.h - places with invented clocks, for tests: how clocks really went is asked of
 * the system in tests/command. */
#ifndef TESTS_BASE_CLOCKS_H
#define TESTS_BASE_CLOCKS_H

#include "base/day.h"
#include "base/zone.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* UTC. */
static inline int64_t clocks_minute(int year, int month, int day, int hour, int minute)
{
	return (int64_t)day_from_ymd(year, month, day) * MINUTES_A_DAY + hour * 60 +
	       minute;
}

enum clocks {
	CLOCKS_UTC,
	CLOCKS_HOUR,
	CLOCKS_HALF,
	CLOCKS_MIDNIGHT,
	CLOCKS_TWICE,
	CLOCKS_WEST
};

static inline void clocks_step(struct zone *z, int month, int day, int hour, int east)
{
	z->steps[z->n++] =
		(struct zone_step){ .from = clocks_minute(2026, month, day, hour, 0),
			.east = east };
}

static inline struct zone clocks_zone(enum clocks which)
{
	struct zone z = { .n = 0 };

	switch (which) {
	case CLOCKS_UTC:
		break;
	case CLOCKS_HOUR: /* 29 March 2:00 to 3:00, 25 October 3:00 to 2:00 */
		clocks_step(&z, 1, 1, 0, 60);
		clocks_step(&z, 3, 29, 1, 120);
		clocks_step(&z, 10, 25, 1, 60);
		break;
	case CLOCKS_HALF: /* 4 October 1:30 to 2:00, 5 April 2:00 to 1:30 */
		clocks_step(&z, 1, 1, 0, 660);
		clocks_step(&z, 4, 4, 15, 630);
		clocks_step(&z, 10, 3, 15, 660);
		break;
	case CLOCKS_MIDNIGHT: /* 5 April 0:00 to 23:00, 6 September 0:00 to 1:00 */
		clocks_step(&z, 1, 1, 0, -180);
		clocks_step(&z, 4, 5, 3, -240);
		clocks_step(&z, 9, 6, 4, -180);
		break;
	case CLOCKS_TWICE: /* 29 March 0:00 to 1:00, 25 October 1:00 to 0:00 */
		clocks_step(&z, 1, 1, 0, -60);
		clocks_step(&z, 3, 29, 1, 0);
		clocks_step(&z, 10, 25, 1, -60);
		break;
	case CLOCKS_WEST: /* seven hours behind all year */
		clocks_step(&z, 1, 1, 0, -420);
		break;
	}
	return z;
}

/* "2026-08-20 10:30" on the local clock; "": not known. */
static inline struct instant clocks_at(const struct zone *z, const char *text)
{
	char date[DAY_ISO_SIZE] = "";
	int32_t day = DAY_NONE, minute = 0;

	if (text[0] == '\0')
		return (struct instant){ .minute = INSTANT_NONE };
	for (int i = 0; i < DAY_ISO_SIZE - 1 && text[i]; i++)
		date[i] = text[i];
	if (!day_parse(date, &day) || !clock_read(text + DAY_ISO_SIZE, &minute))
		fail_msg("no local time: %s", text);
	return zone_local(z, day, minute);
}

#endif
