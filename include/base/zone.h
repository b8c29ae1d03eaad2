/* zone.h - clock times. A moment is kept in UTC with what local clocks showed then, and
 * shown as they did, also when clocks go forward or back between two of them. Which
 * offset holds when is asked of the system once, in command, and passed down. */
#ifndef BASE_ZONE_H
#define BASE_ZONE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
	ZONE_STEPS_MAX = 64,
	INSTANT_SIZE = 32, /* "2026-08-20T10:30-07:00" and its NUL */
	MINUTES_A_DAY = 1440,
};

#define INSTANT_NONE INT64_MIN

/* Minutes since 1970-01-01T00:00Z, and the minutes that local clocks were ahead of UTC
 * then (-840..840). */
struct instant {
	int64_t minute; /* INSTANT_NONE: not known */
	int32_t east;
};

/* Offsets of a place, by time: steps[0] holds until steps[1].from, whatever its own
 * `from`, the last one for ever. n = 0: UTC. */
struct zone {
	struct zone_step {
		int64_t from;
		int32_t east;
	} steps[ZONE_STEPS_MAX];
	size_t n;
};

int32_t zone_east(const struct zone *z, int64_t minute);
struct instant zone_at(const struct zone *z, int64_t minute);
/* The instant at which local clocks show that minute (0..1440) of the day; of the two
 * when clocks went back the later, of none when they went forward as long after the
 * step as it is after the begin of the gap: what is barred until then stays barred the
 * longer time. Not known: DAY_NONE, or a minute that no day has. */
struct instant zone_local(const struct zone *z, int32_t day, int32_t minute_of_day);

/* On the local calendar and clock. DAY_NONE, -1 when not known. */
int32_t instant_day(struct instant t);
int32_t instant_minute_of_day(struct instant t);

/* ISO 8601 with offset, to the minute: "2026-08-20T10:30-07:00". "" : not known. */
void instant_write(struct instant t, char out[static INSTANT_SIZE]);
/* Exactly what instant_write writes, and not "". False: not such a text. */
bool instant_read(const char *text, struct instant *out);
/* "10:30", "7:05" or "1030" as minutes of the day 0..1439. "103" is refused: a digit
 * may be lacking. */
bool clock_read(const char *text, int32_t *minute_of_day);
/* "Wed 22 Jul 06:00"; "": not known. Words through gettext. size: DAY_TEXT_SIZE. */
void instant_short(struct instant t, char *out, size_t size);

#endif
