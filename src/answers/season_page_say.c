/* season_page_say.c - the season page in words: names, numbers at a glance, sources. */
#include "season_page_parts.h"

#include "answers/trial.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "record_parts.h"
#include "say_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int traps_in_season(const struct season_work *w, const struct season_chart *c)
{
	int n = 0;

	for (size_t i = 0; i < w->log->traps.n; i++)
		n += season_is_of(w, c, i) && log_in_season(w->log, i);
	return n;
}

static void say_about(const struct season_work *w, struct season_chart *c)
{
	const struct block *b = log_block(w->log, c->block);
	enum condition condition =
		log_condition(w->log, c->block, c->pest, w->log->today);
	int n = traps_in_season(w, c);
	char text[SAY_LINE], ha[SAY_SHORT];

	if (b && *b->crop)
		say_add(c->about, sizeof c->about, words_shipped(b->crop));
	if (b && *b->variety)
		say_add(c->about, sizeof c->about, b->variety);
	if (b && b->area_x100 >= 0) {
		say_x100(b->area_x100, ha);
		snprintf(text, sizeof text, _("%s ha"), ha);
		say_add(c->about, sizeof c->about, text);
	}
	if (condition != CONDITION_NONE)
		say_add(c->about, sizeof c->about, _(condition_word(condition)));
	snprintf(text, sizeof text, ngettext("%d trap", "%d traps", (unsigned)n), n);
	say_add(c->about, sizeof c->about, text);
}

/* Moths counted this season; at least, with full or spoiled cards, or counts not
 * settled, among them. */
static void say_moths(const struct season_work *w, struct season_chart *c)
{
	bool is_read = false, is_open = false;
	int64_t moths = 0;

	for (size_t i = 0; i < w->log->traps.n; i++) {
		const struct diary *d = &w->log->diaries[i];
		for (size_t k = 0; season_is_of(w, c, i) && k < d->n; k++) {
			const struct interval *in = &d->items[k];
			if (in->to < w->page->start || in->to > w->last)
				continue;
			is_read = is_read || in->state != CATCH_UNKNOWN;
			is_open = is_open || in->state != CATCH_COUNTED ||
				  in->is_disputed;
			moths += in->least;
		}
	}
	if (is_read || moths > 0)
		snprintf(c->moths, sizeof c->moths, "%lld%s", (long long)moths,
			is_open ? "+" : "");
	else
		text_copy(c->moths, sizeof c->moths, "-");
}

/* The highest weekly mean, and the first day of its week. */
static void say_mean(struct season_chart *c)
{
	const struct flight_line *line = &c->flight.now;
	size_t top = 0;
	char day[SAY_SHORT];

	text_copy(c->mean, sizeof c->mean, "-");
	for (size_t k = 1; k < line->n; k++)
		if (line->rate[k] > line->rate[top])
			top = k;
	if (line->n == 0 || line->rate[top] < 0)
		return;
	say_day(line->first_day + 7 * (int32_t)top, day);
	words_print(c->mean, sizeof c->mean, "%.1f%s, %.12s", line->rate[top],
		line->at_least[top] ? "+" : "", day);
}

static void say_highest(const struct season_work *w, struct season_chart *c)
{
	const struct season_dot *top = NULL;

	text_copy(c->highest, sizeof c->highest, "-");
	for (size_t i = 0; i < c->n_dots; i++)
		if (!top || c->dots[i].rate > top->rate)
			top = &c->dots[i];
	if (top)
		snprintf(c->highest, sizeof c->highest, _("%s, trap %s"), top->text,
			w->log->traps.items[top->trap].label);
}

static void say_alerts(struct season_chart *c)
{
	int answered = 0;

	for (size_t i = 0; i < c->n_alerts; i++)
		answered += c->alerts[i].is_answered;
	snprintf(c->over, sizeof c->over, "%d", (int)c->n_alerts);
	snprintf(c->answered, sizeof c->answered, "%d", answered);
	snprintf(c->open, sizeof c->open, "%d", (int)c->n_alerts - answered);
	if (c->n_limits > 0 || c->n_alerts > 0)
		return;
	text_copy(c->over, sizeof c->over, "-");
	text_copy(c->answered, sizeof c->answered, "-");
	text_copy(c->open, sizeof c->open, "-");
}

static void say_done(struct season_chart *c)
{
	int n = 0;

	for (size_t i = 0; i < c->n_marks; i++)
		if (c->marks[i].kind == SEASON_TREATED ||
			c->marks[i].kind == SEASON_BORDER)
			n += c->marks[i].n;
	text_copy(c->treated, sizeof c->treated, "-");
	if (n > 0)
		snprintf(c->treated, sizeof c->treated, "%d", n);
	text_copy(c->damage, sizeof c->damage, "-");
	if (c->looked_at > 0)
		snprintf(c->damage, sizeof c->damage, _("%d of %d"), (int)c->hurt,
			(int)c->looked_at);
}

static void say_lures(struct season_chart *c)
{
	char day[SAY_SHORT], text[SAY_LINE];

	for (size_t i = 0; i < c->n_marks; i++) {
		if (c->marks[i].kind != SEASON_LURE)
			continue;
		say_day(c->marks[i].day, day);
		snprintf(text, sizeof text,
			ngettext("%s (%d trap)", "%s (%d traps)",
				(unsigned)c->marks[i].n),
			day, c->marks[i].n);
		say_add(c->lures, sizeof c->lures, text);
	}
}

void season_say_chart(const struct season_work *w, struct season_chart *c)
{
	const struct block *b = log_block(w->log, c->block);
	const struct pest *p = log_pest(w->log, c->pest);

	text_copy(c->block_name, sizeof c->block_name, b ? b->name : "");
	text_copy(c->pest_code, sizeof c->pest_code, p ? p->code : "");
	say_about(w, c);
	say_moths(w, c);
	say_mean(c);
	say_highest(w, c);
	say_alerts(c);
	say_done(c);
	say_lures(c);
}

static bool has_chart(const struct season_page *p, int64_t block)
{
	for (size_t i = 0; i < p->n_charts; i++)
		if (p->charts[i].block == block)
			return true;
	return false;
}

static void say_bare(struct season_work *w)
{
	struct season_page *p = w->page;
	struct buf names = { 0 };
	struct buf text = { 0 };

	for (size_t i = 0; i < w->log->blocks.n; i++) {
		const struct block *b = &w->log->blocks.items[i];
		if (b->farm == w->farm && !b->retired && !has_chart(p, b->id))
			buf_addf(&names, "%s%s", names.n ? ", " : "", b->name);
	}
	if (names.n) {
		buf_addf(&text, _("Without a trap in this season and the last: %s."),
			names.text);
		p->bare = mem_text(text.text);
	}
	buf_free(&names);
	buf_free(&text);
}

void season_say_page(struct season_work *w)
{
	struct season_page *p = w->page;
	const struct farm *f = log_farm(w->log, w->farm);
	struct buf text = { 0 };

	text_copy(p->farm, sizeof p->farm, f ? f->name : "");
	record_say_span(p->start, p->day < p->end ? p->day : p->end, &text);
	text_copy(p->span, sizeof p->span, text.text);
	buf_free(&text);
	if (p->n_charts == 0)
		text_copy(p->says, sizeof p->says,
			_("No trap of this farm was read in this season or the last."));
	else if (p->from == DAY_NONE)
		text_copy(p->says, sizeof p->says,
			_("Traps hang, but none was read in this season or the last."));
	say_bare(w);
}

static struct season_source *add_source(struct season_page *p, int rule)
{
	p->sources = mem_grow(
		p->sources, &p->cap_sources, p->n_sources + 1, sizeof *p->sources);
	struct season_source *s = &p->sources[p->n_sources++];
	*s = (struct season_source){ .rule = rule };
	return s;
}

static void say_rule_source(const struct season_work *w, struct season_source *s)
{
	const struct rule *r = &w->log->rules.items[s->rule];
	const struct pest *pest = log_pest(w->log, r->pest);
	char rule[SAY_LINE], where[SAY_LINE * 2];
	struct buf text = { 0 };

	say_rule(r, rule, sizeof rule);
	say_where(w->log, r, where, sizeof where);
	buf_addf(&text, "%s, %s: %s", pest ? pest->code : "", where, rule);
	buf_addf(&text, _(". Source: %s"),
		*r->source ? words_shipped(r->source) : _("your own number"));
	if (*r->note)
		buf_addf(&text, _(". Note: %s"), words_shipped(r->note));
	text_copy(s->text, sizeof s->text, text.text);
	buf_free(&text);
}

int season_source_of(struct season_work *w, int rule)
{
	struct season_page *p = w->page;

	for (size_t i = 0; i < p->n_sources; i++)
		if (p->sources[i].rule == rule)
			return (int)i + 1;
	say_rule_source(w, add_source(p, rule));
	return (int)p->n_sources;
}

static void say_pest_sources(struct season_work *w, const struct season_pest *s)
{
	const struct pest *pest = log_pest(w->log, s->pest);
	const struct biofix_rule *rule = s->all.biofix.rule;
	struct buf text = { 0 };

	if (rule && *rule->source) {
		buf_addf(&text, _("%s, biofix suggested by \"%s\". Source: %s"),
			pest ? pest->code : "", _(rule->said), rule->source);
		text_copy(add_source(w->page, NO_RULE)->text,
			sizeof w->page->sources->text, text.text);
	}
	buf_clear(&text);
	if (pest && *pest->heat.source) {
		buf_addf(&text, _("%s, degree-days. Source: %s"), pest->code,
			words_shipped(pest->heat.source));
		text_copy(add_source(w->page, NO_RULE)->text,
			sizeof w->page->sources->text, text.text);
	}
	buf_free(&text);
}

void season_say_sources(struct season_work *w)
{
	for (size_t i = 0; i < w->page->n_pests; i++)
		say_pest_sources(w, &w->page->pests[i]);
}
