/* judge_parts.h - what one trap brings to a judgement, for one week or one span. */
#ifndef SEASON_JUDGE_PARTS_H
#define SEASON_JUDGE_PARTS_H

#include "season/judge.h"

enum { SPAN_WEEKS_MAX = JUDGE_WEEKS_MAX };

struct part {
	struct bounds value;  /* weekly catch, or moths in the span */
	enum lacking lacking; /* why the bounds are not exact */
	enum unread unread;
	int32_t unread_nights;
	bool is_disputed;      /* scouts do not agree on a visit in it */
	int32_t nights, moths; /* read */
	int32_t from, to;      /* DAY_NONE when nothing was read */
	int32_t long_nights; /* of an interval longer than limits.long_nights; else 0 */
};

/* False for a part whose catch is not known, be it only in part. */
bool part_read(const struct part *p);

/* The rule's span as a number, 1..most whatever was put in. */
int32_t part_span(const struct rule *r, int32_t most);

/* The last `span` weeks of a trap (1..SPAN_WEEKS_MAX), the latest first. */
void part_weeks(const struct diary *d, int32_t span, int32_t asked,
	const struct limits *l, struct part out[static SPAN_WEEKS_MAX]);

/* The moths of one trap within a span of nights or since a day. */
struct part part_nights(const struct rule *r, const struct diary *d,
	const struct moment *m, const struct limits *l);

/* What the span of a rule waits for: LACKING_BIOFIX, LACKING_FLIGHT or nothing. */
enum lacking part_waits(const struct rule *r, const struct moment *m);

#endif
