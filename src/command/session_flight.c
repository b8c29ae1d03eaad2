/* session_flight.c - the Flight page: what it shows, and the biofix set there. */
#include "session_season.h"

#include "base/mem.h"
#include "base/words.h"
#include "book/weather.h"

#include <stdio.h>
#include <stdlib.h>

static bool pest_is_trapped(const struct log *l, int64_t farm, int64_t pest)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].pest == pest &&
			(farm == 0 || l->traps.items[i].farm == farm))
			return true;
	return false;
}

int64_t session_turn_pest(const struct session *s, int64_t farm, int64_t pest, int by)
{
	const struct log *l = &s->log;
	size_t n = l->pests.n, at = 0;

	while (at < n && l->pests.items[at].id != pest)
		at++;
	for (size_t k = 1; k <= n; k++) {
		size_t i = by > 0 ? (at + k) % n : (at + n - k % n) % n;
		if (pest_is_trapped(l, farm, l->pests.items[i].id))
			return l->pests.items[i].id;
	}
	return pest;
}

/* From *why* it is about what is behind that page. */
struct wish session_why_flight(const struct session *s, struct wish w)
{
	const struct log *l = s->why.of_run ? &s->run.log : &s->log;
	size_t at = log_trap(l, s->why.trap);
	const struct block *b;

	w.block = s->why.block;
	w.pest = s->why.pest;
	if (at < l->traps.n) {
		const struct trap *t = &l->traps.items[at];
		w.block = t->block;
		w.pest = t->pest;
		w.trap = (int)log_trap(&s->log, t->id);
	}
	b = log_block(l, w.block);
	w.farm = b ? b->farm : 0;
	return w;
}

static void ask_trap(struct session *s, int at)
{
	s->flight.ask.trap = at;
	s->flight.trap = at == NO_TRAP ? 0 : s->log.traps.items[at].id;
}

/* Without a pest of its own, a wish is about the first that is trapped. */
void session_ask_flight(struct session *s, const struct wish *w)
{
	int64_t pest = w->pest;

	if (pest == 0 && s->log.pests.n > 0)
		pest = session_turn_pest(
			s, w->farm, s->log.pests.items[s->log.pests.n - 1].id, 1);
	s->flight.ask = (struct flight_ask){ .farm = w->farm,
		.block = w->block,
		.pest = pest,
		.season = log_season(&s->log, w->farm, s->day) };
	ask_trap(s, w->trap);
	s->flight.page.top = 0;
}

bool session_read_flight(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	ask_trap(s, (int)log_trap(&s->log, s->flight.trap)); /* it may be elsewhere */
	if (!flight_read(&s->flight.answer, s->book, &s->log, &s->flight.ask, e))
		return false;
	s->flight.page.view = &s->flight.answer;
	return true;
}

/* The next of a list that is 0 (all), then its n members; back when by < 0. `at` is 0
 * for all, else 1 + index. */
static size_t turn(size_t at, size_t n, int by)
{
	return by > 0 ? (at + 1) % (n + 1) : (at + n) % (n + 1);
}

/* All farms, then each in turn; a block or a trap belongs to one farm. */
static void turn_farm(struct session *s, int by)
{
	const struct farms *f = &s->log.farms;
	size_t at = 0;

	for (size_t i = 0; i < f->n; i++)
		if (f->items[i].id == s->flight.ask.farm)
			at = i + 1;
	at = turn(at, f->n, by);
	s->flight.ask.farm = at ? f->items[at - 1].id : 0;
	s->flight.ask.block = 0;
	ask_trap(s, NO_TRAP);
}

static bool is_among(const struct session *s, const struct trap *t, int64_t block)
{
	return t->pest == s->flight.ask.pest &&
	       (s->flight.ask.farm == 0 || t->farm == s->flight.ask.farm) &&
	       (block == 0 || t->block == block);
}

/* All blocks, then each with traps for the pest, in driving order. */
static void turn_block(struct session *s, int by)
{
	const struct traps *t = &s->log.traps;
	int64_t *blocks = mem_new(t->n, sizeof *blocks);
	size_t n = 0, at = 0, k;

	for (size_t i = 0; i < t->n; i++) {
		if (!is_among(s, &t->items[i], 0))
			continue;
		for (k = 0; k < n && blocks[k] != t->items[i].block; k++)
			;
		if (k == n)
			blocks[n++] = t->items[i].block;
	}
	for (k = 0; k < n; k++)
		if (blocks[k] == s->flight.ask.block)
			at = k + 1;
	at = turn(at, n, by);
	s->flight.ask.block = at ? blocks[at - 1] : 0;
	ask_trap(s, NO_TRAP);
	free(blocks);
}

/* All traps of what is shown, then each. */
static void turn_trap(struct session *s, int by)
{
	const struct traps *t = &s->log.traps;
	int *traps = mem_new(t->n, sizeof *traps);
	size_t n = 0, at = 0;

	for (size_t i = 0; i < t->n; i++) {
		if (!is_among(s, &t->items[i], s->flight.ask.block))
			continue;
		traps[n++] = (int)i;
		if ((int)i == s->flight.ask.trap)
			at = n;
	}
	at = turn(at, n, by);
	ask_trap(s, at ? traps[at - 1] : NO_TRAP);
	free(traps);
}

void session_turn_flight(struct session *s)
{
	struct flight_page *p = &s->flight.page;
	struct err e = { 0 };

	if (!p->turn_farm && !p->turn_block && !p->turn_trap && !p->turn_pest &&
		!p->turn_season)
		return;
	if (p->turn_farm)
		turn_farm(s, p->turn_farm);
	if (p->turn_block)
		turn_block(s, p->turn_block);
	if (p->turn_trap)
		turn_trap(s, p->turn_trap);
	if (p->turn_pest) {
		s->flight.ask.pest = session_turn_pest(
			s, s->flight.ask.farm, s->flight.ask.pest, p->turn_pest);
		s->flight.ask.block = 0;
		ask_trap(s, NO_TRAP);
	}
	s->flight.ask.season += p->turn_season;
	p->turn_farm = p->turn_block = p->turn_trap = p->turn_pest = p->turn_season = 0;
	p->top = 0;
	if (!session_read_flight(s, &e))
		message_set(&p->message, true, "%s", e.text);
}

static bool take_out(struct session *s, int season, const struct wish *w, struct err *e)
{
	const struct biofix_date *d = heat_biofix(&s->log, w->farm, w->pest, season);

	return d ? book_remove_biofix(s->book, d->id, e)
		 : err_set(e, ERR_NOT_FOUND, _("no biofix is set for this season"));
}

static bool put(struct session *s, int season, const struct wish *w, struct err *e)
{
	const struct biofix_date *was = heat_biofix(&s->log, w->farm, w->pest, season);
	struct biofix_date d = { .id = was ? was->id : 0,
		.farm = w->farm,
		.pest = w->pest,
		.season = season,
		.day = w->day };

	if (log_season(&s->log, w->farm, w->day) != season)
		return err_set(
			e, ERR_INPUT, _("that day is not in the season that is shown"));
	if (w->day > s->day)
		return err_set(e, ERR_INPUT, _("that day has not come yet"));
	if (s->flight.answer.biofix.suggestion.state == BIOFIX_DATED &&
		s->flight.answer.biofix.suggestion.by == w->day)
		snprintf(d.rule, sizeof d.rule, "%s",
			s->flight.answer.biofix.rule->word);
	return book_put_biofix(s->book, &d, e);
}

void session_biofix(struct session *s, const struct wish *w)
{
	struct err e = { 0 };
	int season = s->flight.ask.season;
	char day[DAY_TEXT_SIZE];
	bool out = w->day == DAY_NONE;

	session_before_change(s);
	if (w->farm == 0)
		err_set(&e, ERR_INPUT, _("biofix is set for one farm: f chooses it"));
	else if ((out ? take_out(s, season, w, &e) : put(s, season, w, &e)) &&
		 session_read_flight(s, &e)) {
		if (out) {
			message_set(&s->flight.page.message, false,
				_("The biofix is taken out."));
			return;
		}
		day_long(w->day, day, sizeof day);
		message_set(&s->flight.page.message, false,
			_("Biofix set to %s; saved."), day);
		return;
	}
	message_set(&s->flight.page.message, true, "%s", e.text);
}
