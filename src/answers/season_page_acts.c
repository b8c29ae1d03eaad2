/* season_page_acts.c - what was done in the blocks: as marks beside the catch, and by
 * date. */
#include "season_page_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "block_diary_parts.h"
#include "book/acts.h"
#include "entry_bar_parts.h"
#include "season/fruit.h"

#include <stdlib.h>

static void add_mark(struct season_chart *c, enum season_mark_kind kind, int32_t day)
{
	size_t i = 0;

	while (i < c->n_marks && (c->marks[i].kind != kind || c->marks[i].day != day))
		i++;
	if (i == c->n_marks) {
		c->marks = mem_grow(
			c->marks, &c->cap_marks, c->n_marks + 1, sizeof *c->marks);
		c->marks[c->n_marks++] = (struct season_mark){ kind, day, 0 };
	}
	c->marks[i].n++;
}

static void mark_lures(const struct season_work *w, struct season_chart *c)
{
	for (size_t i = 0; i < w->log->traps.n; i++) {
		const struct diary *d = &w->log->diaries[i];
		if (!season_is_of(w, c, i))
			continue;
		for (size_t k = 0; k < d->n_visits; k++) {
			const struct visit *v = &d->visits[k];
			if (v->new_lure && v->outcome != OUTCOME_HUNG &&
				v->day >= w->page->start && v->day <= w->last)
				add_mark(c, SEASON_LURE, v->day);
		}
	}
}

/* On the charts of a block, of one pest or (0) all. */
static void mark_block(struct season_page *p, int64_t block, int64_t pest,
	enum season_mark_kind kind, int32_t day)
{
	for (size_t i = 0; i < p->n_charts; i++)
		if (p->charts[i].block == block &&
			(pest == 0 || p->charts[i].pest == pest))
			add_mark(&p->charts[i], kind, day);
}

static void add_act(struct season_work *w, int64_t block, int32_t day, enum tone tone,
	const char *text)
{
	struct season_page *p = w->page;
	const struct block *b = log_block(w->log, block);
	char short_day[DAY_TEXT_SIZE];

	p->acts = mem_grow(p->acts, &p->cap_acts, p->n_acts + 1, sizeof *p->acts);
	struct season_act *a = &p->acts[p->n_acts++];
	*a = (struct season_act){ .day = day, .tone = tone };
	day_short(day, short_day, sizeof short_day);
	text_copy(a->day_text, sizeof a->day_text, short_day);
	text_copy(a->block_name, sizeof a->block_name, b ? b->name : "");
	text_copy(a->text, sizeof a->text, text);
}

/* Fruit of one check, on the charts of its block and pest; where the check does not
 * tell the pests apart, on those of all. */
static void count_damage(struct season_page *p, const struct fruit_check *f)
{
	int32_t hurt = fruit_hurt(f);

	if (f->part != PART_FRUIT || hurt < 0)
		return;
	for (size_t i = 0; i < p->n_charts; i++) {
		struct season_chart *c = &p->charts[i];
		if (c->block != f->block || (f->pest != 0 && f->pest != c->pest))
			continue;
		c->looked_at += f->looked_at;
		c->hurt += hurt;
	}
}

static void add_treatment(struct season_work *w, const struct record_row *r)
{
	const struct treatment *t = r->treatment;
	struct buf text = { 0 };

	if (*r->answered) {
		add_act(w, t->block, t->day, TONE_PLAIN, r->answered);
		return;
	}
	buf_add(&text, t->border ? _("border treated") : _("treated"));
	if (*r->pest)
		buf_addf(&text, ", %s", r->pest);
	buf_addf(&text, ": %s", *t->product ? t->product : _("product not entered"));
	if (*r->area)
		buf_addf(&text, ", %s", r->area);
	buf_addf(&text, "; %s; %s", r->entry, r->pick);
	if (*t->note)
		buf_addf(&text, "; %s", t->note);
	add_act(w, t->block, t->day, TONE_PLAIN, text.text);
	mark_block(w->page, t->block, t->pest,
		t->border ? SEASON_BORDER : SEASON_TREATED, t->day);
	buf_free(&text);
}

static bool add_treatments(struct season_work *w, struct err *e)
{
	const struct record_ask ask = {
		.farm = w->farm, .from = w->page->start, .to = w->last
	};
	struct record record = { 0 };
	bool ok = record_read(&record, w->book, w->log, &ask, e);

	for (size_t i = 0; ok && i < record.n; i++)
		add_treatment(w, &record.rows[i]);
	record_free(&record);
	return ok;
}

static void add_pick(struct season_work *w, const struct pick *pick)
{
	struct block_part of = bar_treatments(w->log, pick->block);
	struct pick_wait wait = waiting_pick(of.items, of.n, &w->log->zone, pick->day);
	enum tone tone = wait.state == WAITING_FREE     ? TONE_PLAIN
			 : wait.state == WAITING_BARRED ? TONE_OVER
							: TONE_UNSURE;
	struct buf text = { 0 };

	buf_add(&text, pick->is_done ? _("picked: ") : _("pick planned: "));
	bar_say_pick(of.items, &wait, pick->is_done, &text);
	if (*pick->note)
		buf_addf(&text, "; %s", pick->note);
	add_act(w, pick->block, pick->day, tone, text.text);
	if (pick->is_done)
		mark_block(w->page, pick->block, 0, SEASON_PICKED, pick->day);
	buf_free(&text);
}

/* What the book holds of the farm beside the log. */
struct acts {
	struct picks picks;
	struct fruit_checks checks;
	struct disruptions dispensers;
};

static bool read_acts(struct acts *a, struct season_work *w, struct err *e)
{
	int32_t from = w->page->start;

	return book_picks(w->book, w->farm, from, w->page->end, &a->picks, e) &&
	       book_fruit_checks(w->book, w->farm, from, w->last, &a->checks, e) &&
	       book_disruptions(w->book, w->farm, from, w->last, &a->dispensers, e);
}

/* Fruit checks and dispensers in the words of the block's own page. */
static void add_of_block(
	struct season_work *w, const struct acts *a, const struct block *block)
{
	struct block_diary lines = { 0 };
	struct block_page page = { w->log, block, w->page->start, w->last, &lines };

	for (size_t i = 0; i < a->checks.n; i++)
		if (a->checks.items[i].block == block->id)
			block_page_check(&page, &a->checks.items[i]);
	for (size_t i = 0; i < a->dispensers.n; i++)
		if (a->dispensers.items[i].block == block->id)
			block_page_dispensers(&page, &a->dispensers.items[i]);
	for (size_t i = 0; i < lines.n; i++)
		add_act(w, block->id, lines.lines[i].day, lines.lines[i].tone,
			lines.lines[i].text);
	block_diary_free(&lines);
}

static void sort_acts(struct season_page *p)
{
	for (size_t i = 1; i < p->n_acts; i++) {
		struct season_act one = p->acts[i];
		size_t k = i;
		for (; k > 0 && p->acts[k - 1].day > one.day; k--)
			p->acts[k] = p->acts[k - 1];
		p->acts[k] = one;
	}
}

static int by_day(const void *a, const void *b)
{
	const struct season_mark *x = a, *y = b;

	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	return (x->kind > y->kind) - (x->kind < y->kind);
}

bool season_fill_acts(struct season_work *w, struct err *e)
{
	struct season_page *p = w->page;
	const struct blocks *blocks = &w->log->blocks;
	struct acts acts = { 0 };
	bool ok = read_acts(&acts, w, e) && add_treatments(w, e);

	for (size_t i = 0; ok && i < acts.picks.n; i++)
		add_pick(w, &acts.picks.items[i]);
	for (size_t i = 0; ok && i < acts.checks.n; i++)
		count_damage(p, &acts.checks.items[i]);
	for (size_t i = 0; ok && i < blocks->n; i++)
		if (blocks->items[i].farm == w->farm)
			add_of_block(w, &acts, &blocks->items[i]);
	for (size_t i = 0; i < p->n_charts; i++) {
		struct season_chart *c = &p->charts[i];
		mark_lures(w, c);
		if (c->n_marks > 1)
			qsort(c->marks, c->n_marks, sizeof *c->marks, by_day);
	}
	sort_acts(p);
	free(acts.picks.items);
	free(acts.checks.items);
	free(acts.dispensers.items);
	return ok;
}
