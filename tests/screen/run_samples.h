/* run_samples.h - runs filled by hand, and typing into them. */
#ifndef TESTS_SCREEN_RUN_SAMPLES_H
#define TESTS_SCREEN_RUN_SAMPLES_H

#include "answers/run.h"
#include "screen/run_page.h"
#include "screen/samples.h"

enum { SAMPLE_CARD = 31, SAMPLE_LURE = 41 };

static inline struct run_trap sample_trap(int n, const char *block, const char *pest)
{
	struct run_trap t = { .trap = 100 + n,
		.open = true,
		.hangs = true,
		.card_kind = SAMPLE_CARD,
		.card_full_at = 70,
		.lure_kind = SAMPLE_LURE,
		.last_count = { 2, 4, 3, 6 },
		.n_last_count = RUN_LAST };

	snprintf(t.label, sizeof t.label, "%d", n);
	SET(t.block, block);
	SET(t.pest, pest);
	SET(t.lure, "1 mg septum");
	SET(t.card, "delta");
	SET(t.last[0], "2");
	SET(t.last[1], "4");
	SET(t.last[2], "3");
	SET(t.last[3], "6");
	return t;
}

/* As the answers would after a count: enough for the page. */
static inline void sample_visit(struct run_trap *t, struct visit v)
{
	t->open = false;
	t->visit = v;
	snprintf(t->visit_text, sizeof t->visit_text, "%d%s%s", (int)v.count,
		v.outcome == OUTCOME_FLOOR ? "+" : "", v.new_card ? " c" : "");
	if (v.outcome == OUTCOME_SKIPPED)
		SET(t->visit_text, "-");
	snprintf(t->week_text, sizeof t->week_text, "%d.0", (int)v.count);
	snprintf(t->week_says, sizeof t->week_says, "%d.0 a week", (int)v.count);
	SET(t->rule_text, ">=5");
	t->is_over = v.count >= 5;
	t->verdict_tone = t->is_over ? TONE_OVER : TONE_PLAIN;
	SET(t->verdict_text, t->is_over ? "OVER" : "under");
}

static inline struct visit sample_count(const struct run_trap *t, int32_t count)
{
	return (struct visit){ .trap = t->trap,
		.day = sample_day(),
		.outcome = OUTCOME_COUNTED,
		.count = count,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
}

static inline void sample_tally(struct run *r)
{
	r->done = r->over = 0;
	for (size_t i = 0; i < r->n; i++) {
		r->done += !r->traps[i].open;
		r->over += !r->traps[i].open && r->traps[i].is_over;
	}
}

/* n open traps of one farm. */
static inline struct run sample_open_run(size_t n)
{
	struct run r = { .farm = SAMPLE_FARM,
		.day = sample_day(),
		.today = sample_day(),
		.n = n,
		.cap = n,
		.traps = mem_new(n, sizeof(struct run_trap)) };

	SET(r.farm_name, "Quillet");
	SET(r.title_day, "Tue 21 July 2026 \u00b7 week 30");
	SET(r.title_short, "Tue 21 Jul");
	SET(r.last_text, "last run Tue 14 Jul, 7 nights");
	for (size_t i = 0; i < n; i++)
		r.traps[i] = sample_trap((int)i + 1, "Hollow East", "CM");
	return r;
}

static inline void sample_states(struct run *r)
{
	struct run_trap *t = r->traps;

	sample_visit(&t[0], sample_count(&t[0], 7));
	sample_visit(&t[1], sample_count(&t[1], 1));
	t[1].visit.new_card = SAMPLE_CARD;
	SET(t[1].visit_text, "1 c");
	t[2].is_border = true;
	t[2].lure_due = true;
	SET(t[2].service, "lure 3 d late");
	SET(t[3].block, "Ridge Pears");
	t[3].is_disrupted = true;
	SET(t[3].last[2], "-");
	SET(t[3].last[3], "30+");
	t[3].card_due = true;
	SET(t[3].service, "card due");
	t[4].is_disrupted = true;
	SET(t[4].block, "Ridge Pears");
	SET(t[4].pest, "OFM");
	SET(t[4].last[0], "");
	sample_visit(&t[5], sample_count(&t[5], 12));
	SET(t[5].visit_text, "12+ c");
	SET(t[5].week_text, "12.0+");
	SET(t[5].week_says, "12.0+ a week");
	SET(t[5].words.note, "wet card, many flies on it");
	sample_visit(&t[6], sample_count(&t[6], COUNT_NONE));
	t[6].visit.outcome = OUTCOME_SKIPPED;
	t[6].visit.reason = REASON_WEATHER;
	SET(t[6].visit_text, "-");
	SET(t[6].week_text, "-");
	SET(t[6].week_says, "- a week");
	SET(t[6].verdict_text, "unknown");
	t[6].verdict_tone = TONE_UNSURE;
	t[7].hangs = false;
	SET(t[7].service, "missing since 14 Jul");
}

/* Eight traps, one of each kind; the third is the first open one. */
static inline struct run sample_run(void)
{
	struct run r = sample_open_run(8);

	sample_states(&r);
	sample_tally(&r);
	r.lures_left = 2;
	r.cards_left = 1;
	return r;
}

static inline struct run sample_long_run(void)
{
	struct run r = sample_run();

	for (int i = 0; i < (int)r.n; i++) {
		struct run_trap *t = &r.traps[i];

		sample_long(t->label, sizeof t->label, i);
		sample_long(t->block, sizeof t->block, i + 1);
		sample_long(t->pest, sizeof t->pest, i);
		sample_long(t->lure, sizeof t->lure, i);
		sample_long(t->service, sizeof t->service, i);
		sample_long(t->verdict_text, sizeof t->verdict_text, i);
		SET(t->last[1], "9999+");
	}
	sample_long(r.farm_name, sizeof r.farm_name, 1);
	sample_long(r.last_text, sizeof r.last_text, 0);
	return r;
}

static inline struct run_page page_of(const struct run *r)
{
	struct run_page p = { .limits = &limits_usual };

	run_page_show(&p, r, true);
	return p;
}

/* Types the keys and does what the loop would: saves into the run. Returns the last
 * wish that was not for nothing. */
static inline struct wish type(struct run_page *p, struct run *r, const char *keys)
{
	struct wish last = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		struct wish w = run_page_key(p, sample_key(*keys));

		if (w.want == WANT_NOTHING)
			continue;
		last = w;
		if (w.want != WANT_SAVE)
			continue;
		sample_visit(&r->traps[p->picked], w.visit);
		r->traps[p->picked].words = w.words;
		sample_tally(r);
		run_page_saved(p, r, "07:42:11");
	}
	return last;
}

static inline void draw(struct run_page *p, struct canvas *c, int rows, int cols)
{
	canvas_size(c, rows, cols);
	run_page_draw(p, c);
}

#endif
