/* session_hotspots.c - the Hot spots page: what it shows. */
#include "session_season.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>

static int64_t first_farm(const struct log *l)
{
	return l->farms.n ? l->farms.items[0].id : 0;
}

/* One farm at a time: without one in the wish the first; so with the pest. */
void session_ask_hotspots(struct session *s, const struct wish *w)
{
	const struct log *l = &s->log;
	int64_t farm = w->farm ? w->farm : first_farm(l), pest = w->pest;

	if (pest == 0 && l->pests.n > 0)
		pest = session_turn_pest(s, farm, l->pests.items[l->pests.n - 1].id, 1);
	s->hot.ask = (struct hot_ask){ .farm = farm, .pest = pest };
	s->hot.block = w->block;
	hotspots_page_free(&s->hot.page);
}

/* Picks the row of a block; true if it is hot. */
static bool pick_block(struct session *s, int64_t block)
{
	const struct hot_view *v = &s->hot.answer;

	hotspots_page_show(&s->hot.page, v);
	for (size_t i = 0; i < v->n; i++)
		if (v->rows[i].what == HOT_OF_BLOCK && v->rows[i].block == block) {
			hotspots_page_pick(&s->hot.page, i);
			return v->rows[i].grade >= HOT_WATCH;
		}
	return false;
}

/* In the group of like traps in which the block is hot; if in none, in the first. */
static bool look_for_block(struct session *s, struct err *e)
{
	int n = (int)s->hot.answer.n_alikes;
	int64_t block = s->hot.block;
	bool ok = true;

	s->hot.block = 0;
	if (block == 0 || pick_block(s, block) || n < 2)
		return true;
	for (int k = 1; ok && k <= n; k++) {
		s->hot.ask.alike = k % n;
		ok = hotspots_read(&s->hot.answer, s->book, &s->log, &s->hot.ask, e);
		if (pick_block(s, block))
			break;
	}
	return ok;
}

bool session_read_hotspots(struct session *s, struct err *e)
{
	if (!session_read_log(s, e) ||
		!hotspots_read(&s->hot.answer, s->book, &s->log, &s->hot.ask, e) ||
		!look_for_block(s, e))
		return false;
	hotspots_page_show(&s->hot.page, &s->hot.answer);
	day_short(s->day, s->hot.right, sizeof s->hot.right);
	s->hot.page.right = s->hot.right;
	return true;
}

static void turn_farm(struct session *s, int by)
{
	const struct farms *f = &s->log.farms;
	size_t at = 0;

	while (at < f->n && f->items[at].id != s->hot.ask.farm)
		at++;
	if (f->n == 0)
		return;
	at = by > 0 ? (at + 1) % f->n : (at + f->n - 1) % f->n;
	s->hot.ask.farm = f->items[at].id;
	s->hot.ask.flight = s->hot.ask.alike = 0;
}

static void turn_pest(struct session *s, int by)
{
	s->hot.ask.pest = session_turn_pest(s, s->hot.ask.farm, s->hot.ask.pest, by);
	s->hot.ask.flight = s->hot.ask.alike = 0;
}

static void turn_season(struct session *s, int by)
{
	s->hot.ask.season = s->hot.answer.season + by;
	s->hot.ask.flight = s->hot.ask.alike = 0;
}

/* The whole season, then each flight. */
static void turn_flight(struct session *s, int by)
{
	int n = s->hot.answer.n_flights + 1;

	s->hot.ask.flight = (s->hot.answer.flight + by + n) % n;
	s->hot.ask.alike = 0;
	if (n == 1)
		message_set(&s->hot.page.message, false,
			_("No flight is told apart yet: this is the whole season."));
}

static void turn_alike(struct session *s, int by)
{
	int n = (int)s->hot.answer.n_alikes;

	if (n > 1)
		s->hot.ask.alike = ((int)s->hot.answer.alike + by + n) % n;
	else
		message_set(&s->hot.page.message, false,
			_("There is no other group of like traps."));
}

/* Says which of several groups or windows it is now. */
static void say_bar(struct session *s)
{
	const struct hot_view *v = &s->hot.answer;
	struct message *m = &s->hot.page.message;

	if (!m->text[0] && v->n_alikes > 1)
		message_set(m, false, _("group %zu of %zu: %s"), v->alike + 1,
			v->n_alikes, v->alikes[v->alike].text);
}

void session_turn_hotspots(struct session *s)
{
	struct hotspots_page *p = &s->hot.page;
	struct err e = { 0 };

	if (!p->turn_farm && !p->turn_pest && !p->turn_season && !p->turn_flight &&
		!p->turn_alike)
		return;
	if (p->turn_farm)
		turn_farm(s, p->turn_farm);
	if (p->turn_pest)
		turn_pest(s, p->turn_pest);
	if (p->turn_season)
		turn_season(s, p->turn_season);
	if (p->turn_flight)
		turn_flight(s, p->turn_flight);
	if (p->turn_alike)
		turn_alike(s, p->turn_alike);
	p->turn_farm = p->turn_pest = p->turn_season = 0;
	p->turn_flight = p->turn_alike = 0;
	p->picked = p->top = p->text_top = p->trap = 0;
	if (!session_read_hotspots(s, &e))
		message_set(&p->message, true, "%s", e.text);
	else
		say_bar(s);
}
