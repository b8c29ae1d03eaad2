/* today_next.c - what comes next, a line for each farm and pest with a biofix. */
#include "answers/next.h"
#include "answers/today.h"

#include "answers/flight.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>

static bool has_traps(const struct log *l, int64_t farm, int64_t pest)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm && l->traps.items[i].pest == pest &&
			log_in_season(l, i))
			return true;
	return false;
}

/* The next event that has not passed; NULL: none is left. */
static const struct event *first_ahead(const struct events *ev)
{
	for (size_t i = 0; i < ev->n; i++)
		if (!ev->items[i].passed)
			return &ev->items[i];
	return NULL;
}

/* "about 6 Jun", "4 Jun to 9 Jun or earlier", "until about 9 Jun"; how it is reckoned
 * stands on the Flight page. */
static void say_days(
	const struct log *l, const struct event *ev, char out[static SAY_LINE])
{
	char first[SAY_SHORT], last[SAY_SHORT];
	const char *hedge = ev->at_least ? _(" or earlier") : "";

	say_day(ev->first, first);
	say_day(ev->last, last);
	if (ev->first == DAY_NONE)
		text_copy(out, SAY_LINE, _("day not known"));
	else if (ev->last < l->today)
		snprintf(out, SAY_LINE, _("by %s, look"), last);
	else if (ev->under_way)
		snprintf(out, SAY_LINE, _("now, until about %s%s"), last, hedge);
	else if (ev->first == ev->last)
		snprintf(out, SAY_LINE, _("about %s%s"), first, hedge);
	else
		snprintf(out, SAY_LINE, _("%s to %s%s"), first, last, hedge);
}

static void add_next(const struct log *l, const struct biofix_date *d,
	const struct event *ev, struct today *out)
{
	const struct farm *f = log_farm(l, d->farm);
	const struct pest *p = log_pest(l, d->pest);
	char days[SAY_LINE];

	out->nexts = mem_grow(
		out->nexts, &out->cap_nexts, out->n_nexts + 1, sizeof *out->nexts);
	struct today_next *next = &out->nexts[out->n_nexts++];
	*next = (struct today_next){ .farm = d->farm, .pest = d->pest };
	text_copy(next->name, sizeof next->name, f ? f->name : "");
	text_copy(next->pest_code, sizeof next->pest_code, p ? p->code : "");
	say_days(l, ev, days);
	snprintf(next->says, sizeof next->says, _("%.40s: %.80s (%.20s)"), days,
		ev->text, ev->at);
}

bool today_read_next(
	const struct log *l, struct book *b, struct today *out, struct err *e)
{
	struct events ev = { 0 };
	bool ok = true;

	out->n_nexts = 0;
	for (size_t i = 0; ok && i < l->biofixes.n; i++) {
		const struct biofix_date *d = &l->biofixes.items[i];
		if (d->season != log_season(l, d->farm, l->today) ||
			!has_traps(l, d->farm, d->pest))
			continue;
		const struct heat_ask of = {
			.farm = d->farm, .pest = d->pest, .day = l->today
		};
		ok = next_events(&ev, b, l, &of, e);
		const struct event *ahead = ok ? first_ahead(&ev) : NULL;
		if (ahead)
			add_next(l, d, ahead, out);
	}
	events_free(&ev);
	return ok;
}
