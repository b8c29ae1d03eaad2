/* session_week.c - the Week page and its filter by farm and pest. */
#include "session_season.h"

#include "base/words.h"

#include <stdio.h>

void session_week(struct session *s)
{
	const struct farm *f = log_farm(&s->log, s->week.farm);
	const struct pest *p = log_pest(&s->log, s->week.pest);

	week_of(&s->log, s->week.farm, s->week.pest, &s->week.answer);
	session_mark(s,
		(struct title){ s->week.answer.title_day, s->week.answer.title_short });
	snprintf(s->week.filter, sizeof s->week.filter, "%s, %s",
		f ? f->name : _("all farms"), p ? p->code : _("all pests"));
	week_page_show(&s->week.page, &s->week.answer);
	s->week.page.filter = s->week.filter;
}

/* The next farm of the filter: all, then each in turn. */
static void turn_farm(struct session *s)
{
	size_t i = 0;

	while (i < s->log.farms.n && s->log.farms.items[i].id != s->week.farm)
		i++;
	i = s->week.farm == 0 ? 0 : i + 1;
	s->week.farm = i < s->log.farms.n ? s->log.farms.items[i].id : 0;
}

static bool has_traps(const struct log *l, int64_t pest)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].pest == pest && log_in_season(l, i))
			return true;
	return false;
}

/* The next pest that a trap of this season is for; all after the last. */
static void turn_pest(struct session *s)
{
	size_t i = 0;

	while (s->week.pest != 0 && i < s->log.pests.n &&
		s->log.pests.items[i].id != s->week.pest)
		i++;
	i += s->week.pest != 0;
	while (i < s->log.pests.n && !has_traps(&s->log, s->log.pests.items[i].id))
		i++;
	s->week.pest = i < s->log.pests.n ? s->log.pests.items[i].id : 0;
}

void session_filter_week(struct session *s)
{
	struct week_page *p = &s->week.page;

	if (!p->next_farm && !p->next_pest && !p->one_farm)
		return;
	if (p->next_farm)
		turn_farm(s);
	if (p->next_pest)
		turn_pest(s);
	if (p->one_farm)
		s->week.farm = s->week.farm == p->one_farm ? 0 : p->one_farm;
	p->next_farm = p->next_pest = false;
	p->one_farm = 0;
	p->picked = p->top = 0;
	session_week(s);
}
