#include "answers/run.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A weekly catch in three columns: "12", "30+", "9?", "<1" (never 0 for a catch, and no
 * point that wet eyes miss). */
static void say_narrow(const struct weekly *w, char out[static 8])
{
	int32_t x10 = weekly_x10(w);
	const char *end = w->is_disputed ? "?" : w->at_least ? "+" : "";
	char text[SAY_SHORT];

	if (x10 < 0)
		snprintf(text, sizeof text, "-");
	else if (x10 > 0 && x10 < 10)
		snprintf(text, sizeof text, "%s%s", w->at_least ? ">0" : "<1",
			w->is_disputed ? "?" : "");
	else
		snprintf(text, sizeof text, "%d%s", (int)((x10 + 5) / 10), end);
	text_copy(out, 8, text);
}

/* Index after the last visit before `day`. */
static size_t visits_before(const struct diary *d, int32_t day)
{
	size_t n = d->n_visits;

	while (n > 0 && d->visits[n - 1].day >= day)
		n--;
	return n;
}

static bool is_reading(const struct visit *v)
{
	return v->outcome != OUTCOME_HUNG && v->outcome != OUTCOME_PULLED &&
	       !visit_is_service(v);
}

void run_last_catches(const struct diary *d, int32_t before, const struct limits *l,
	char last[static RUN_LAST][8])
{
	int k = RUN_LAST;

	for (int i = 0; i < RUN_LAST; i++)
		last[i][0] = '\0';
	for (size_t n = visits_before(d, before); n > 0 && k > 0; n--) {
		if (!is_reading(&d->visits[n - 1]))
			continue;
		struct weekly w = weekly_catch(d, d->visits[n - 1].day, l);
		say_narrow(&w, last[--k]);
	}
}

static void fill_last_counts(const struct diary *d, int32_t before, struct run_trap *t)
{
	t->n_last_count = 0;
	for (size_t n = visits_before(d, before); n > 0 && t->n_last_count < RUN_LAST;
		n--)
		if (d->visits[n - 1].outcome == OUTCOME_COUNTED ||
			d->visits[n - 1].outcome == OUTCOME_FLOOR)
			t->last_count[t->n_last_count++] = d->visits[n - 1].count;
}

static void fill_names(const struct log *l, size_t trap, struct run_trap *t)
{
	const struct trap *from = &l->traps.items[trap];
	const struct block *b = log_block(l, from->block);
	const struct pest *p = log_pest(l, from->pest);
	int64_t lure =
		l->lure_states[trap].kind ? l->lure_states[trap].kind : from->lure;
	int64_t card =
		l->card_states[trap].kind ? l->card_states[trap].kind : from->card;
	const struct lure_kind *lk = log_lure(l, lure);
	const struct card_kind *ck = log_card(l, card);

	t->trap = from->id;
	t->block_id = from->block;
	t->lure_kind = lure;
	t->card_kind = card;
	text_copy(t->label, sizeof t->label, from->label);
	text_copy(t->block, sizeof t->block, b ? b->name : "");
	text_copy(t->pest, sizeof t->pest, p ? p->code : "");
	text_copy(t->lure, sizeof t->lure, lk ? words_shipped(lk->name) : "");
	text_copy(t->card, sizeof t->card, ck ? words_shipped(ck->name) : "");
	t->card_full_at = ck ? ck->floor_at : 0;
	t->is_border = from->place == PLACE_BORDER;
	t->is_disrupted = log_condition(l, from->block, from->pest, l->today) ==
			  CONDITION_DISRUPTED;
	t->hangs = log_hangs(l, trap);
}

static void fill_service(
	const struct log *l, size_t trap, int32_t day, struct run_trap *t)
{
	const struct farm *f = log_farm(l, l->traps.items[trap].farm);
	int32_t next = log_run_after(f, day);
	struct lure_state lure =
		service_lure(&l->diaries[trap], &l->lures, day, next - 1);
	struct card_state card =
		service_card(&l->diaries[trap], &l->cards, day, next - 1);

	t->lure_due = lure.state >= SERVICE_NEXT_RUN;
	t->card_due = card.state >= SERVICE_NEXT_RUN;
	if (t->hangs)
		say_service(&lure, &card, t->service, sizeof t->service);
	else if (diary_stand(&l->diaries[trap], day).standing == STANDING_MISSING)
		text_copy(t->service, sizeof t->service, _("missing"));
	else
		text_copy(t->service, sizeof t->service, _("not hung"));
}

/* "7.0", or with its nights where they aren't a week: "8.4 10n". */
static void say_week(const struct weekly *w, char out[static SAY_SHORT])
{
	char rate[SAY_SHORT];

	say_weekly(w, rate);
	if (w->unread == UNREAD_NO && w->nights != 7)
		snprintf(out, SAY_SHORT, "%.14s %dn", rate, (int)w->nights);
	else
		memcpy(out, rate, SAY_SHORT);
}

static void say_week_out(const struct weekly *w, char out[static SAY_SHORT * 2])
{
	char rate[SAY_SHORT];

	say_weekly(w, rate);
	if (w->unread == UNREAD_NO && w->nights != 7)
		snprintf(out, SAY_SHORT * 2,
			ngettext("%.14s a week over %d night",
				"%.14s a week over %d nights", (unsigned)w->nights),
			rate, (int)w->nights);
	else
		snprintf(out, SAY_SHORT * 2, _("%.14s a week"), rate);
}

static void fill_answer(const struct log *l, size_t trap, struct run_trap *t,
	const struct verdict_rows *v)
{
	const struct verdict_row *row = verdicts_worst_of_trap(v, (int)trap);
	const struct trap *from = &l->traps.items[trap];

	if (row) {
		say_week(&row->weekly, t->week_text);
		say_week_out(&row->weekly, t->week_says);
	}
	if (row && row->rule == NO_RULE) {
		const struct verdict_row *block =
			verdicts_of_block_itself(v, from->block, from->pest);
		row = block ? block : row;
	}
	if (!row || row->rule == NO_RULE) {
		text_copy(t->rule_text, sizeof t->rule_text, "-");
		text_copy(t->verdict_text, sizeof t->verdict_text, _("no threshold"));
		t->verdict_tone = TONE_QUIET;
		return;
	}
	say_rule_short(&l->rules.items[row->rule], t->rule_text);
	text_copy(
		t->verdict_text, sizeof t->verdict_text, say_verdict(&row->judgement));
	say_lacking(&row->judgement, t->lacks, sizeof t->lacks);
	t->verdict_tone = say_verdict_tone(&row->judgement);
	t->is_over = row->judgement.verdict == VERDICT_OVER;
}

/* What holds for every trap of the run. */
struct around {
	int32_t day;
	struct verdict_rows verdicts;
	struct bars bars;
};

static void fill_entry(const struct bars *bars, struct run_trap *t)
{
	const struct bar *bar = bars_find(bars, t->block_id);

	t->entry = bar ? bar->waiting.state : WAITING_FREE;
	text_copy(t->barred, sizeof t->barred, bar ? bar->brief : "");
}

static void fill_serviced(const struct diary *d, int32_t day, struct run_trap *t)
{
	const struct visit *last = d->n_visits ? &d->visits[d->n_visits - 1] : NULL;

	t->is_serviced = last && last->day == day && visit_is_service(last);
	if (t->is_serviced)
		t->serviced = *last;
}

static void add_trap(
	const struct log *l, size_t trap, const struct around *a, struct run *out)
{
	const struct diary *d = &l->diaries[trap];
	int32_t from = a->day - l->limits.open_days;

	out->traps = mem_grow(out->traps, &out->cap, out->n + 1, sizeof *out->traps);
	struct run_trap *t = &out->traps[out->n++];
	*t = (struct run_trap){ .open = true };
	fill_names(l, trap, t);
	run_last_catches(d, from, &l->limits, t->last);
	fill_last_counts(d, from, t);
	fill_service(l, trap, a->day, t);
	fill_entry(&a->bars, t);
	fill_serviced(d, a->day, t);
	const struct visit *visit = log_run_visit(l, trap);
	if (visit) {
		t->open = false;
		t->visit = *visit;
		say_visit(&t->visit, t->visit_text);
		fill_answer(l, trap, t, &a->verdicts);
	}
	out->done += !t->open;
	out->over += !t->open && t->is_over;
	/* A visit that left them as they were has changed nothing about that. */
	out->lures_left += t->lure_due && (t->open || t->hangs);
	out->cards_left += t->card_due && (t->open || t->hangs);
	out->barred += t->entry != WAITING_FREE;
}

/* A pulled trap isn't driven to, unless it was pulled on this very run or in an earlier
 * season: then it waits to be hung. */
static bool is_on_run(const struct log *l, size_t trap, int32_t day)
{
	const struct diary *d = &l->diaries[trap];
	const struct farm *f = log_farm(l, l->traps.items[trap].farm);
	struct stand s = diary_stand(d, day);

	return s.standing != STANDING_PULLED || s.since >= day - l->limits.open_days ||
	       s.since < day_season_start(day, f ? f->season_start : 101);
}

static void say_last_run(const struct log *l, int64_t farm, struct run *out)
{
	char text[DAY_TEXT_SIZE];
	int32_t last = log_last_run(l, farm, out->day - l->limits.open_days - 1);

	if (last == DAY_NONE) {
		text_copy(out->last_text, sizeof out->last_text, _("first run"));
		return;
	}
	int32_t nights = out->day - last;
	day_short(last, text, sizeof text);
	snprintf(out->last_text, sizeof out->last_text,
		ngettext("last run %s, %d night", "last run %s, %d nights",
			(unsigned)nights),
		text, (int)nights);
}

void run_of(const struct log *l, int64_t farm, int32_t day, struct run *out)
{
	struct around a = { .day = day };
	const struct farm *f = log_farm(l, farm);

	out->n = 0;
	out->done = out->over = out->lures_left = out->cards_left = out->barred = 0;
	out->farm = farm;
	out->day = day;
	out->today = l->today;
	text_copy(out->farm_name, sizeof out->farm_name, f ? f->name : "");
	say_day_title(day, out->title_day, sizeof out->title_day);
	day_short(day, out->title_short, sizeof out->title_short);
	say_last_run(l, farm, out);
	verdicts_of(l, farm, 0, day, &a.verdicts);
	bars_of(l, farm, &a.bars);
	bars_say(&a.bars, farm, out->barred_text, sizeof out->barred_text);
	out->barred_blocks = bars_say_brief(
		&a.bars, farm, out->barred_brief, sizeof out->barred_brief);
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm && is_on_run(l, i, day))
			add_trap(l, i, &a, out);
	free(a.verdicts.items);
	bars_free(&a.bars);
}

bool run_read_words(struct run *r, struct book *b, struct err *e)
{
	for (size_t i = 0; i < r->n; i++) {
		struct run_trap *t = &r->traps[i];
		if (!t->open &&
			!book_visit(b, t->trap, t->visit.day, &t->visit, &t->words, e))
			return false;
		if (t->is_serviced && !book_visit(b, t->trap, t->serviced.day,
					      &t->serviced, &t->serviced_words, e))
			return false;
	}
	return true;
}

void run_free(struct run *r)
{
	free(r->traps);
	*r = (struct run){ 0 };
}

bool run_is_odd(const struct run_trap *t, int32_t count, const struct limits *l)
{
	return judge_odd_count(count, t->last_count, t->n_last_count, l);
}
