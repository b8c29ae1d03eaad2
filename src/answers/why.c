#include "answers/why.h"

#include "answers/alerts.h"
#include "answers/entry_bar.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "why_parts.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT_BYTES = 512, VISITS_SHOWN = 10 };

static void add_line(struct why *w, enum tone tone, int indent, const char *fmt, ...)
	__attribute__((format(printf, 4, 5)));

static void add_line(struct why *w, enum tone tone, int indent, const char *fmt, ...)
{
	char text[TEXT_BYTES];
	va_list args;

	va_start(args, fmt);
	words_vprint(text, sizeof text, fmt, args);
	va_end(args);
	w->lines = mem_grow(w->lines, &w->cap, w->n + 1, sizeof *w->lines);
	w->lines[w->n++] = (struct why_line){ tone, indent, mem_text(text) };
}

static void add_traps_read(struct why *w, const struct judgement *j)
{
	if (j->traps <= 1)
		return;
	if (j->read > 0)
		add_line(w, TONE_PLAIN, 4,
			ngettext("%d of %d traps read, %d moth in them",
				"%d of %d traps read, %d moths in them",
				(unsigned)j->moths),
			(int)j->read, (int)j->traps, (int)j->moths);
	else
		add_line(w, TONE_PLAIN, 4,
			_("none of %d traps read in full; what is known of them is "
			  "at least this"),
			(int)j->traps);
}

/* One week of the rule, or its one span. */
static void add_week(struct why *w, const struct seen *s)
{
	char from[DAY_TEXT_SIZE], to[DAY_TEXT_SIZE], moths[48];

	if (s->nights <= 0 || s->from == DAY_NONE || s->to == DAY_NONE)
		return;
	day_short(s->from, from, sizeof from);
	day_short(s->to, to, sizeof to);
	snprintf(moths, sizeof moths,
		ngettext("%d moth", "%d moths", (unsigned)s->moths), (int)s->moths);
	add_line(w, TONE_PLAIN, 4,
		ngettext("%s in %d night, %s to %s", "%s in %d nights, %s to %s",
			(unsigned)s->nights),
		moths, (int)s->nights, from, to);
}

static void add_numbers(struct why *w, const struct judgement *j)
{
	add_traps_read(w, j);
	for (int32_t i = 0; i < j->weeks; i++)
		add_week(w, &j->week[i]);
}

static void add_since(struct why *w, const struct log *l, const struct verdict_row *row)
{
	char since[2][SAY_LINE];

	total_since_says(l, row, since);
	for (int i = 0; i < 2; i++)
		if (since[i][0])
			add_line(w, TONE_PLAIN, 4, "%s", since[i]);
}

static void add_rule(struct why *w, const struct log *l, const struct verdict_row *row)
{
	const struct rule *r = &l->rules.items[row->rule];
	char text[TEXT_BYTES], says[SAY_LINE];

	say_verdict_line(l, row, says, sizeof says);
	add_line(w, say_verdict_tone(&row->judgement), 2, "%s: %s",
		say_verdict(&row->judgement), says);
	add_numbers(w, &row->judgement);
	say_rule(r, text, sizeof text);
	add_line(w, TONE_PLAIN, 4, _("your threshold: %s"), text);
	if (r->span_kind == SPAN_TREATMENT)
		add_since(w, l, row);
	say_doubts(&row->judgement, says, sizeof says);
	if (*says)
		add_line(w, TONE_UNSURE, 4, _("doubt: %s"), says);
	if (*r->note)
		add_line(w, TONE_QUIET, 4, _("note: %s"), r->note);
	add_line(w, TONE_QUIET, 4, _("source: %s"),
		*r->source ? r->source : _("your own number"));
	if (row->judgement.verdict == VERDICT_OVER)
		add_line(w, TONE_QUIET, 4, "%s", say_caution_short());
}

static void say_interval(const struct diary *d, size_t visit, char *out, size_t size)
{
	text_copy(out, size, "");
	for (size_t i = 0; i < d->n; i++) {
		const struct interval *in = &d->items[i];
		if (in->visit != visit || d->visits[visit].outcome == OUTCOME_HUNG)
			continue;
		int32_t nights = in->to - in->from;
		if (in->state == CATCH_UNKNOWN)
			snprintf(out, size,
				ngettext("%d night, catch not known",
					"%d nights, catch not known", (unsigned)nights),
				(int)nights);
		else
			words_print(out, size, _("%d nights: %.1f a week"), (int)nights,
				(double)((in->moths * 140 / nights + 1) / 2) / 10);
	}
}

/* The kinds that a visit put in: "new lure CM 1 mg, new card delta". */
static void say_new(const struct log *l, const struct visit *v, char *out, size_t size)
{
	const struct lure_kind *lure = log_lure(l, v->new_lure);
	const struct card_kind *card = log_card(l, v->new_card);

	snprintf(out, size, "%s%s%s%s", lure ? _(", new lure ") : "",
		lure ? lure->name : "", card ? _(", new card ") : "",
		card ? card->name : "");
}

static void add_visit(
	struct why *w, const struct log *l, const struct diary *d, size_t i)
{
	const struct visit *v = &d->visits[i];
	char day[DAY_TEXT_SIZE], nights[64], fresh[SAY_LINE], count[16] = "";
	char said[SAY_LINE];

	day_short(v->day, day, sizeof day);
	say_interval(d, i, nights, sizeof nights);
	say_new(l, v, fresh, sizeof fresh);
	if (v->count != COUNT_NONE)
		snprintf(count, sizeof count, " %d", (int)v->count);
	add_line(w, TONE_PLAIN, 4, "%s  %s%s%s%s%s%s%s%s", day,
		_(outcome_word(v->outcome)), count, v->reason ? ": " : "",
		v->reason ? _(reason_word(v->reason)) : "", *nights ? "; " : "", nights,
		fresh, v->stirred ? _(", glue stirred") : "");
	log_say_dispute(l, v, said, sizeof said);
	if (*said)
		add_line(w, TONE_UNSURE, 6, "%s", said);
}

static void add_visits(struct why *w, const struct log *l, size_t trap)
{
	const struct diary *d = &l->diaries[trap];
	size_t shown = 0;

	add_line(w, TONE_TITLE, 2, "%s", _("Visits, latest first"));
	if (d->n_visits == 0)
		add_line(w, TONE_PLAIN, 4, "%s", _("none yet"));
	for (size_t i = d->n_visits; i > 0 && shown < VISITS_SHOWN; i--, shown++)
		add_visit(w, l, d, i - 1);
	if (d->n_visits > shown)
		add_line(w, TONE_QUIET, 4, _("and %zu earlier ones this season"),
			d->n_visits - shown);
}

static void add_service(struct why *w, const struct log *l, size_t trap)
{
	const struct lure_state *lure = &l->lure_states[trap];
	const struct card_state *card = &l->card_states[trap];
	const struct lure_kind *lk = log_lure(l, lure->kind);
	const struct card_kind *ck = log_card(l, card->kind);
	char since[DAY_TEXT_SIZE], due[DAY_TEXT_SIZE];

	add_line(w, TONE_TITLE, 2, "%s", _("In the trap now"));
	if (lk && lure->due != DAY_NONE) {
		day_short(lure->since, since, sizeof since);
		day_short(lure->due, due, sizeof due);
		add_line(w, lure->overdue_days > 0 ? TONE_UNSURE : TONE_PLAIN, 4,
			_("lure %s since %s, due %s"), lk->name, since, due);
	}
	if (ck && card->due != DAY_NONE) {
		day_short(card->since, since, sizeof since);
		day_short(card->due, due, sizeof due);
		add_line(w, card->mark >= CARD_CHANGE ? TONE_UNSURE : TONE_PLAIN, 4,
			_("card %s since %s, due %s or at %d moths (full at %d), %d on "
			  "it so far"),
			ck->name, since, due, (int)ck->change_at, (int)ck->floor_at,
			(int)card->moths);
	}
	if (!lk && !ck)
		add_line(w, TONE_PLAIN, 4, "%s", _("nothing that is known"));
}

/* Marks the rules that fit a trap, and those of them that were chosen. */
static void mark_rules(const struct log *l, size_t trap, bool *fits, bool *chosen)
{
	const struct trap *t = &l->traps.items[trap];
	struct spot spot = verdicts_spot(l, trap, l->today);
	struct moment m = log_moment(l, t->block, t->pest, l->today);
	size_t *list = mem_new(l->rules.n, sizeof *list);
	size_t n = rule_choose(l->rules.items, l->rules.n, &spot, &m, list);

	for (size_t r = 0; r < l->rules.n; r++)
		fits[r] |= rule_fits(&l->rules.items[r], &spot, &m) == FIT_YES;
	for (size_t i = 0; i < n; i++)
		chosen[list[i]] = true;
	free(list);
}

/* Rules that fit, but gave way to a narrower one at this trap, or at every trap of the
 * block that they fit. */
static void add_replaced(
	struct why *w, const struct log *l, int trap, int64_t block, int64_t pest)
{
	bool *fits = mem_new(l->rules.n, sizeof *fits);
	bool *chosen = mem_new(l->rules.n, sizeof *chosen);
	char text[TEXT_BYTES];

	for (size_t i = 0; i < l->traps.n; i++)
		if (trap == (int)i ||
			(trap == NO_TRAP && l->traps.items[i].block == block &&
				l->traps.items[i].pest == pest))
			mark_rules(l, i, fits, chosen);
	for (size_t r = 0; r < l->rules.n; r++) {
		if (!fits[r] || chosen[r])
			continue;
		say_rule(&l->rules.items[r], text, sizeof text);
		add_line(w, TONE_QUIET, 2,
			_("off here, one that says more of where or when is judged instead: "
			  "%s"),
			text);
	}
	free(fits);
	free(chosen);
}

static void set_title(
	struct why *w, const struct log *l, int trap, int64_t block, int64_t pest)
{
	const struct block *b = log_block(l, block);
	const struct pest *p = log_pest(l, pest);

	if (trap == NO_TRAP)
		snprintf(w->title, sizeof w->title, "%s \302\267 %s", b ? b->name : "",
			p ? p->code : "");
	else
		snprintf(w->title, sizeof w->title,
			_("%s \302\267 trap %s \302\267 %s"), b ? b->name : "",
			l->traps.items[trap].label, p ? p->code : "");
}

static void add_block_traps(struct why *w, const struct log *l, int64_t block,
	int64_t pest, const struct verdict_rows *v)
{
	add_line(w, TONE_TITLE, 2, "%s", _("Its traps"));
	for (size_t i = 0; i < v->n; i++) {
		const struct verdict_row *row = &v->items[i];
		char says[SAY_LINE], week[SAY_SHORT];
		if (row->trap == NO_TRAP || row->block != block || row->pest != pest ||
			verdicts_worst_of_trap(v, row->trap) != row)
			continue;
		say_weekly(&row->weekly, week);
		say_verdict_line(l, row, says, sizeof says);
		add_line(w, say_verdict_tone(&row->judgement), 4,
			_("trap %s: %s a week; %s: %s"),
			l->traps.items[row->trap].label, week,
			say_verdict(&row->judgement), says);
	}
}

static void add_answers(struct why *w, const struct log *l, int trap, int64_t block,
	int64_t pest, const struct verdict_rows *v)
{
	size_t before = w->n;
	char none[SAY_LINE * 2];

	add_line(w, TONE_TITLE, 2, "%s", _("Answers"));
	for (size_t i = 0; i < v->n; i++) {
		const struct verdict_row *row = &v->items[i];
		if (row->rule != NO_RULE && row->block == block && row->pest == pest &&
			(row->trap == trap || row->trap == NO_TRAP))
			add_rule(w, l, row);
	}
	if (w->n > before + 1)
		return;
	text_copy(none, sizeof none,
		_("no threshold for the block's mean or total; see its traps"));
	if (trap != NO_TRAP)
		no_rule_says(l, trap, none, sizeof none);
	add_line(w, TONE_PLAIN, 4, "%s", none);
}

static void add_clock(struct why *w, const struct log *l, const struct block *b)
{
	struct block_clocks c = { 0 };
	bool told = false;

	block_clocks_of(l, b->farm, &c);
	for (size_t i = 0; i < c.n; i++) {
		if (c.items[i].block != b->id)
			continue;
		if (!told)
			add_line(w, TONE_TITLE, 2, "%s", _("Entry and picks"));
		add_line(w, c.items[i].tone, 4, "%s", c.items[i].text);
		told = true;
	}
	block_clocks_free(&c);
}

/* What was decided of this trap or block. */
static void add_decisions(struct why *w, const struct log *l, int trap,
	const struct block *b, int64_t pest)
{
	int64_t id = trap == NO_TRAP ? 0 : l->traps.items[trap].id;
	struct alerts a = { 0 };
	bool told = false;

	alerts_answered(l, b->farm, &a);
	for (size_t i = 0; i < a.n; i++) {
		const struct alert *one = &a.items[i];
		if (!one->is_answered || one->block != b->id || one->pest != pest ||
			(one->trap != id && one->trap != 0))
			continue;
		if (!told)
			add_line(w, TONE_TITLE, 2, "%s", _("What was decided"));
		add_line(w, TONE_PLAIN, 4, "%s", one->decided);
		add_line(w, TONE_QUIET, 6, "%s", one->says);
		add_line(w, TONE_QUIET, 6, "%s", one->after);
		told = true;
	}
	alerts_free(&a);
}

/* What a trap does not tell where males cannot follow a scent to it. */
static void add_disruption(
	struct why *w, const struct log *l, const struct block *b, int64_t pest)
{
	if (log_condition(l, b->id, pest, l->today) != CONDITION_DISRUPTED)
		return;
	add_line(w, TONE_TITLE, 2, "%s", _("A disrupted block"));
	add_line(w, TONE_PLAIN, 4, "%s",
		_("Where mating is disrupted few males find a trap: no catch, or a "
		  "small one, does not mean that there are no moths. Traps at its "
		  "edge and checks of fruit and shoots tell more."));
}

static void add_cautions(struct why *w)
{
	add_line(w, TONE_TITLE, 2, "%s", _("Before you act"));
	for (size_t i = 0; say_caution(i); i++)
		add_line(w, TONE_QUIET, 4, "%s", say_caution(i));
}

static void empty(struct why *w)
{
	for (size_t i = 0; i < w->n; i++)
		free(w->lines[i].text);
	w->n = 0;
}

void why_of(const struct log *l, int trap, int64_t block, int64_t pest, struct why *out)
{
	struct verdict_rows v = { 0 };

	empty(out);
	if (trap != NO_TRAP) {
		block = l->traps.items[trap].block;
		pest = l->traps.items[trap].pest;
	}
	const struct block *b = log_block(l, block);
	verdicts_of(l, b ? b->farm : 0, pest, l->today, &v);
	set_title(out, l, trap, block, pest);
	add_answers(out, l, trap, block, pest, &v);
	if (b) {
		add_disruption(out, l, b, pest);
		add_clock(out, l, b);
		add_decisions(out, l, trap, b, pest);
	}
	add_replaced(out, l, trap, block, pest);
	if (trap == NO_TRAP) {
		add_block_traps(out, l, block, pest, &v);
	} else {
		add_visits(out, l, (size_t)trap);
		add_service(out, l, (size_t)trap);
	}
	add_cautions(out);
	free(v.items);
}

void why_free(struct why *w)
{
	empty(w);
	free(w->lines);
	*w = (struct why){ 0 };
}
