/* judge_span.c - the catch of a trap over nights or since a day, as a rule takes it. */
#include "judge_parts.h"

#include "diary_parts.h"

/* The nights that a rule looks at, and what is summed up over them. */
struct span {
	int32_t from, end;
	int64_t lo, hi;
	bool open;
	struct part part;
};

int32_t part_span(const struct rule *r, int32_t most)
{
	if (r->span < 1)
		return 1;
	return r->span > most ? most : r->span;
}

enum lacking part_waits(const struct rule *r, const struct moment *m)
{
	if (r->span_kind == SPAN_BIOFIX &&
		(m->biofix == DAY_NONE || m->biofix > m->day))
		return LACKING_BIOFIX;
	if (r->span_kind == SPAN_FLIGHT &&
		(m->flight_start == DAY_NONE || m->flight_start > m->day))
		return m->biofix == DAY_NONE ? LACKING_BIOFIX : LACKING_FLIGHT;
	return LACKING_NOTHING;
}

/* The gravest reason is the one that is named. */
static int gravity(enum lacking x)
{
	static const int of[LACKING_COUNT] = {
		[LACKING_SPLIT] = 1,
		[LACKING_FLOOR] = 2,
		[LACKING_AGREEMENT] = 3,
		[LACKING_WEEKS] = 4,
		[LACKING_READING] = 5,
	};
	return of[x];
}

static void lacks(struct span *s, enum lacking why, enum unread unread, int32_t nights)
{
	s->open = s->open || (why != LACKING_SPLIT && why != LACKING_AGREEMENT);
	if (gravity(why) <= gravity(s->part.lacking))
		return;
	s->part.lacking = why;
	s->part.unread = unread;
	s->part.unread_nights = nights;
}

static int32_t span_start(const struct rule *r, const struct moment *m,
	const struct stand *st, int32_t end)
{
	switch (r->span_kind) {
	case SPAN_BIOFIX:
		return m->biofix;
	case SPAN_FLIGHT:
		return m->flight_start;
	case SPAN_HUNG:
		return st->series_start;
	case SPAN_TREATMENT:
		return m->treated > st->series_start && m->treated <= m->day
			       ? m->treated
			       : st->series_start;
	default:
		return end - part_span(r, NIGHTS_MAX);
	}
}

/* Adds one interval that ends within the span. */
static void span_take(struct span *s, const struct diary *d, size_t i)
{
	const struct interval *it = &d->items[i];
	int32_t nights = it->to - it->from;
	bool whole = it->from >= s->from;

	s->lo += whole ? it->least : 0;
	s->hi += it->most < 0 ? 0 : it->most;
	s->open = s->open || it->most < 0;
	s->part.is_disputed = s->part.is_disputed || it->is_disputed;
	if (it->state == CATCH_UNKNOWN) {
		lacks(s, LACKING_READING, unread_why(d, i), nights);
		return;
	}
	if (it->is_disputed)
		lacks(s, LACKING_AGREEMENT, UNREAD_NO, 0);
	if (it->state == CATCH_FLOOR)
		lacks(s, LACKING_FLOOR, UNREAD_NO, 0);
	else if (!whole && it->moths > 0)
		lacks(s, LACKING_SPLIT, UNREAD_NO, 0);
	s->part.moths += it->moths;
	s->part.nights += whole ? nights : it->to - s->from;
	s->part.from = it->from;
	if (s->part.to == DAY_NONE)
		s->part.to = it->to;
}

static void span_sum(struct span *s, const struct diary *d, size_t closed, int32_t last)
{
	int32_t later = last;

	for (size_t i = closed; i > 0 && d->items[i - 1].to > s->from; i--) {
		const struct interval *it = &d->items[i - 1];
		if (it->to < later)
			lacks(s, LACKING_WEEKS, UNREAD_NOT_HUNG, later - it->to);
		span_take(s, d, i - 1);
		later = it->from;
	}
	if (later > s->from)
		lacks(s, LACKING_WEEKS, UNREAD_NOT_HUNG, later - s->from);
}

/* Nights after the last clearing that are too many, or were to be read and were not. */
static enum unread tail_of(
	const struct stand *st, int32_t last, int32_t asked, const struct limits *l)
{
	bool stale = asked - last > l->stale_nights;

	if (st->standing == STANDING_MISSING)
		return UNREAD_MISSING;
	if (st->standing == STANDING_PULLED)
		return stale ? UNREAD_PULLED : UNREAD_NO;
	if (st->skipped != DAY_NONE)
		return UNREAD_SKIPPED;
	if (!stale)
		return UNREAD_NO;
	return st->cleared == st->series_start ? UNREAD_NOT_YET : UNREAD_STALE;
}

struct part part_nights(const struct rule *r, const struct diary *d,
	const struct moment *m, const struct limits *l)
{
	struct stand st = diary_stand(d, m->day);
	size_t closed = diary_closed(d, m->day);
	struct span s = { .part = { .from = DAY_NONE, .to = DAY_NONE } };

	if (st.standing == STANDING_NOT_HUNG || st.series_start == DAY_NONE) {
		lacks(&s, LACKING_READING, UNREAD_NOT_HUNG, 0);
		s.part.value = bounds_from(0, 1);
		return s.part;
	}
	int32_t last = st.cleared != DAY_NONE ? st.cleared : st.since;
	enum unread tail = tail_of(&st, last, m->day, l);
	s.end = tail == UNREAD_NO ? last : m->day;
	s.from = span_start(r, m, &st, s.end);
	if (tail != UNREAD_NO)
		lacks(&s, LACKING_READING, tail, m->day - last);
	span_sum(&s, d, closed, last);
	if (s.part.nights == 0) {
		bool hung_before = st.series_start < s.from;
		int32_t since = hung_before ? s.from : st.series_start;
		lacks(&s, LACKING_READING, hung_before ? UNREAD_SINCE : UNREAD_NOT_YET,
			m->day - since);
	}
	s.part.value = s.open ? bounds_from(s.lo, 1) : bounds_between(s.lo, s.hi, 1);
	return s.part;
}
