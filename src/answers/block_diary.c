/* block_diary.c - a block's season by date. */
#include "block_diary_parts.h"

#include "answers/alerts.h"
#include "answers/answered.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "entry_bar_parts.h"

#include <stdlib.h>

void block_page_add(struct block_page *p, int32_t day, enum tone tone, struct buf *text)
{
	struct block_diary *out = p->out;
	char short_day[DAY_TEXT_SIZE];

	if (day >= p->from && day <= p->to) {
		out->lines =
			mem_grow(out->lines, &out->cap, out->n + 1, sizeof *out->lines);
		struct block_line *line = &out->lines[out->n++];
		*line = (struct block_line){ .day = day, .tone = tone };
		day_short(day, short_day, sizeof short_day);
		text_copy(line->day_text, sizeof line->day_text, short_day);
		text_copy(line->text, sizeof line->text, text->text ? text->text : "");
	}
	buf_clear(text);
}

static void add_treatment(struct block_page *p, const struct treatment *t)
{
	struct buf text = { 0 };

	buf_addf(&text, t->border ? _("border treated: %s") : _("treated: %s"),
		*t->product ? t->product : _("product not entered"));
	if (*t->amount)
		buf_addf(&text, _(", %s %s in all"), t->amount, t->amount_unit);
	buf_add(&text, "; ");
	record_say_entry(t, &p->log->zone, &text);
	buf_add(&text, "; ");
	record_say_pick(t, &p->log->zone, &text);
	if (*t->note)
		buf_addf(&text, "; %s", t->note);
	block_page_add(p, t->day, TONE_PLAIN, &text);
	buf_free(&text);
}

static void add_pick(
	struct block_page *p, const struct treatments *t, const struct pick *pick)
{
	struct pick_wait w = waiting_pick(t->items, t->n, &p->log->zone, pick->day);
	enum tone tone = w.state == WAITING_FREE     ? TONE_PLAIN
			 : w.state == WAITING_BARRED ? TONE_OVER
						     : TONE_UNSURE;
	struct buf text = { 0 };

	buf_add(&text, pick->is_done ? _("picked: ") : _("pick planned: "));
	bar_say_pick(t->items, &w, pick->is_done, &text);
	if (*pick->note)
		buf_addf(&text, "; %s", pick->note);
	block_page_add(p, pick->day, tone, &text);
	buf_free(&text);
}

static void add_answers(struct block_page *p)
{
	struct alerts a = { 0 };
	struct buf text = { 0 };

	alerts_answered(p->log, p->block->farm, &a);
	for (size_t i = 0; i < a.n; i++) {
		const struct alert *x = &a.items[i];
		char day[SAY_SHORT];
		if (x->block != p->block->id || !x->is_answered)
			continue;
		say_day(x->day, day);
		buf_addf(&text, _("%s, over on %s: %s"), x->name, day, x->decided);
		if (*x->after)
			buf_addf(&text, "; %s", x->after);
		block_page_add(p, x->answer.on, TONE_PLAIN, &text);
	}
	buf_free(&text);
	alerts_free(&a);
}

/* The block's own, which picks are judged by. */
static struct treatments own_treatments(
	const struct block_page *p, const struct treatments *t)
{
	struct treatments own = { 0 };

	for (size_t i = 0; i < t->n; i++) {
		if (t->items[i].block != p->block->id)
			continue;
		own.items = mem_grow(own.items, &own.cap, own.n + 1, sizeof *own.items);
		own.items[own.n++] = t->items[i];
	}
	return own;
}

static void add_acts(
	struct block_page *p, const struct treatments *all, const struct picks *picks)
{
	struct treatments own = own_treatments(p, all);

	add_answers(p);
	for (size_t i = 0; i < own.n; i++)
		if (own.items[i].id != TREATMENT_ANSWERED) /* the answer says it */
			add_treatment(p, &own.items[i]);
	for (size_t i = 0; i < picks->n; i++)
		if (picks->items[i].block == p->block->id)
			add_pick(p, &own, &picks->items[i]);
	free(own.items);
}

/* What the book holds of the block beside the log. */
struct acts {
	struct treatments treatments; /* those of the days before as well */
	struct picks picks;
	struct fruit_checks checks;
	struct disruptions dispensers;
};

static bool read_acts(
	struct acts *a, struct book *b, const struct block_page *p, struct err *e)
{
	int64_t farm = p->block->farm;

	return treatments_that_bar(
		       b, farm, p->from - LOG_ACT_DAYS, p->to, &a->treatments, e) &&
	       book_picks(b, farm, p->from, p->to, &a->picks, e) &&
	       book_fruit_checks(b, farm, p->from, p->to, &a->checks, e) &&
	       book_disruptions(b, farm, p->from, p->to, &a->dispensers, e);
}

static void free_acts(struct acts *a)
{
	free(a->treatments.items);
	free(a->picks.items);
	free(a->checks.items);
	free(a->dispensers.items);
}

/* Lines of one day stay in the order in which they came: the insertion is stable, the
 * lines are few. */
static void sort_lines(struct block_diary *d)
{
	for (size_t i = 1; i < d->n; i++) {
		struct block_line one = d->lines[i];
		size_t k = i;
		for (; k > 0 && d->lines[k - 1].day > one.day; k--)
			d->lines[k] = d->lines[k - 1];
		d->lines[k] = one;
	}
}

static void set_title(const struct block_page *p)
{
	const struct farm *f = log_farm(p->log, p->block->farm);
	struct buf text = { 0 }, span = { 0 };

	record_say_span(p->from, p->to, &span);
	text_copy(p->out->span, sizeof p->out->span, span.text);
	buf_addf(&text, "%s \302\267 %s \302\267 %s", f ? f->name : "", p->block->name,
		span.text);
	text_copy(p->out->title, sizeof p->out->title, text.text);
	buf_free(&span);
	buf_free(&text);
}

bool block_diary_read(struct block_diary *out, struct book *b, const struct log *l,
	const struct record_ask *ask, struct err *e)
{
	struct block_page p = { l, log_block(l, ask->block), ask->from, ask->to, out };
	struct acts acts = { 0 };

	out->n = 0;
	out->says =
		_("Catches over are told by counts and thresholds as they stand now. "
		  "Where a threshold looks at biofix, flight or degree-days, a catch "
		  "is told only where it is known how far they had come that day.");
	set_title(&p);
	bool ok = read_acts(&acts, b, &p, e);
	if (ok) {
		block_page_catches(&p);
		add_acts(&p, &acts.treatments, &acts.picks);
		for (size_t i = 0; i < acts.checks.n; i++)
			if (acts.checks.items[i].block == ask->block)
				block_page_check(&p, &acts.checks.items[i]);
		for (size_t i = 0; i < acts.dispensers.n; i++)
			if (acts.dispensers.items[i].block == ask->block)
				block_page_dispensers(&p, &acts.dispensers.items[i]);
		sort_lines(out);
	}
	free_acts(&acts);
	return ok;
}

void block_diary_free(struct block_diary *d)
{
	free(d->lines);
	*d = (struct block_diary){ 0 };
}
