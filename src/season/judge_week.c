/* judge_week.c - the weekly catches of a trap, as a rule of weeks takes them. */
#include "judge_parts.h"

#include "diary_parts.h"

/* The weeks of one trap as they are laid down from the latest back. */
struct weeks {
	struct part *out;
	int32_t n, span;
};

bool part_read(const struct part *p)
{
	return p->lacking != LACKING_READING && p->lacking != LACKING_WEEKS;
}

static void lay(struct weeks *s, int32_t times, struct part p)
{
	for (; times > 0 && s->n < s->span; times--)
		s->out[s->n++] = p;
}

static struct part unread_part(enum lacking lacking, enum unread unread, int32_t nights)
{
	return (struct part){
		.value = bounds_from(0, 1),
		.lacking = lacking,
		.unread = unread,
		.unread_nights = nights,
		.from = DAY_NONE,
		.to = DAY_NONE,
	};
}

static int32_t weeks_begun(int32_t nights)
{
	return nights <= 7 ? 1 : (nights + 6) / 7;
}

static int32_t weeks_whole(int32_t nights)
{
	return nights < 14 ? 1 : nights / 7;
}

/* Seven nights bring at least what fewer brought; more than seven are an average. */
static struct bounds at_least(int32_t moths, int32_t nights)
{
	return nights <= 7 ? bounds_from(moths, 1)
			   : bounds_from((int64_t)moths * 7, nights);
}

/* A week that closed without a good reading. */
static void lay_unread_week(struct weeks *s, const struct weekly *w)
{
	struct part p = unread_part(LACKING_READING, w->unread, w->nights);
	int32_t nights = w->to - w->from, weeks = weeks_whole(nights);

	if (weeks == 1 || s->span == 1)
		p.value = at_least(w->is_disputed ? w->least : w->moths, nights);
	if (w->unread == UNREAD_SHORT) {
		p.from = w->from;
		p.to = w->to;
		p.moths = w->moths;
	}
	lay(s, weeks, p);
}

static struct part read_part(const struct weekly *w, int32_t weeks, int32_t span)
{
	bool open = w->at_least || w->most < 0;
	struct part p = {
		.lacking = w->at_least ? LACKING_FLOOR : LACKING_NOTHING,
		.is_disputed = w->is_disputed,
		.nights = w->nights,
		.moths = w->moths,
		.from = w->from,
		.to = w->to,
		.long_nights = w->is_long ? w->nights : 0,
	};
	int64_t lo = weeks > 1 && span > 1 ? 0 : (int64_t)w->least * 7;
	int64_t hi = (int64_t)w->most * (weeks > 1 ? w->nights : 7);

	p.value = open ? bounds_from(lo, w->nights) : bounds_between(lo, hi, w->nights);
	if (w->is_disputed)
		p.lacking = LACKING_AGREEMENT;
	else if (!open && lo != hi)
		p.lacking = LACKING_SPLIT;
	return p;
}

static void lay_week(struct weeks *s, const struct weekly *w)
{
	if (w->unread != UNREAD_NO) {
		lay_unread_week(s, w);
		return;
	}
	int32_t weeks = weeks_whole(w->nights);
	lay(s, weeks, read_part(w, weeks, s->span));
}

/* The weeks from the last closing to the asked day, when they are not read. */
static void lay_tail(struct weeks *s, const struct diary *d, int32_t asked,
	const struct limits *l, size_t closed)
{
	struct weekly now = weekly_catch(d, asked, l);
	int32_t end = closed > 0 ? d->items[closed - 1].to : asked;
	bool last_says_it = closed > 0 && now.to == end &&
			    (now.unread == UNREAD_NO || now.unread == UNREAD_SHORT ||
				    now.unread == UNREAD_SPOILED);

	if (last_says_it)
		return;
	enum lacking lacking =
		now.unread == UNREAD_NOT_HUNG ? LACKING_WEEKS : LACKING_READING;
	lay(s, weeks_begun(asked - end), unread_part(lacking, now.unread, now.nights));
}

void part_weeks(const struct diary *d, int32_t span, int32_t asked,
	const struct limits *l, struct part out[static SPAN_WEEKS_MAX])
{
	struct weeks s = { .out = out, .span = span };
	size_t closed = diary_closed(d, asked);
	int32_t later = asked;

	lay_tail(&s, d, asked, l, closed);
	while (closed > 0 && s.n < s.span) {
		const struct interval *it = &d->items[closed - 1];
		if (later < asked && it->to < later)
			lay(&s, weeks_begun(later - it->to),
				unread_part(LACKING_WEEKS, UNREAD_NOT_HUNG,
					later - it->to));
		struct weekly w = weekly_closing(d, closed - 1, later, l);
		lay_week(&s, &w);
		later = w.from;
		closed = w.first;
	}
	lay(&s, s.span, unread_part(LACKING_WEEKS, UNREAD_NOT_HUNG, 0));
}
