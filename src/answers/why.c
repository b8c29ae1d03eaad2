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

enum { TEXT_BYTES = 512 };

void why_add_line(struct why *w, enum tone tone, int indent, const char *fmt, ...)
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
		why_add_line(w, TONE_PLAIN, 4,
			ngettext("%d of %d traps read, %d moth in them",
				"%d of %d traps read, %d moths in them",
				(unsigned)j->moths),
			(int)j->read, (int)j->traps, (int)j->moths);
	else
		why_add_line(w, TONE_PLAIN, 4,
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
	why_add_line(w, TONE_PLAIN, 4,
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
			why_add_line(w, TONE_PLAIN, 4, "%s", since[i]);
}

static void add_rule(struct why *w, const struct log *l, const struct verdict_row *row)
{
	const struct rule *r = &l->rules.items[row->rule];
	char text[TEXT_BYTES], says[SAY_LINE];

	say_verdict_line(l, row, says, sizeof says);
	why_add_line(w, say_verdict_tone(&row->judgement), 2, "%s: %s",
		say_verdict(&row->judgement), says);
	add_numbers(w, &row->judgement);
	say_rule(r, text, sizeof text);
	why_add_line(w, TONE_PLAIN, 4, _("your threshold: %s"), text);
	if (r->span_kind == SPAN_TREATMENT)
		add_since(w, l, row);
	say_doubts(&row->judgement, says, sizeof says);
	if (*says)
		why_add_line(w, TONE_UNSURE, 4, _("doubt: %s"), says);
	if (*r->note)
		why_add_line(w, TONE_QUIET, 4, _("note: %s"), words_shipped(r->note));
	why_add_line(w, TONE_QUIET, 4, _("source: %s"),
		*r->source ? words_shipped(r->source) : _("your own number"));
	if (row->judgement.verdict == VERDICT_OVER)
		why_add_line(w, TONE_QUIET, 4, "%s", say_caution_short());
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
		why_add_line(w, TONE_QUIET, 2,
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
	why_add_line(w, TONE_TITLE, 2, "%s", _("Its traps"));
	for (size_t i = 0; i < v->n; i++) {
		const struct verdict_row *row = &v->items[i];
		char says[SAY_LINE], week[SAY_SHORT];
		if (row->trap == NO_TRAP || row->block != block || row->pest != pest ||
			verdicts_worst_of_trap(v, row->trap) != row)
			continue;
		say_weekly(&row->weekly, week);
		say_verdict_line(l, row, says, sizeof says);
		why_add_line(w, say_verdict_tone(&row->judgement), 4,
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

	why_add_line(w, TONE_TITLE, 2, "%s", _("Answers"));
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
	why_add_line(w, TONE_PLAIN, 4, "%s", none);
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
			why_add_line(w, TONE_TITLE, 2, "%s", _("Entry and picks"));
		why_add_line(w, c.items[i].tone, 4, "%s", c.items[i].text);
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
			why_add_line(w, TONE_TITLE, 2, "%s", _("What was decided"));
		why_add_line(w, TONE_PLAIN, 4, "%s", one->decided);
		why_add_line(w, TONE_QUIET, 6, "%s", one->says);
		why_add_line(w, TONE_QUIET, 6, "%s", one->after);
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
	why_add_line(w, TONE_TITLE, 2, "%s", _("A disrupted block"));
	why_add_line(w, TONE_PLAIN, 4, "%s",
		_("Where mating is disrupted few males find a trap: no catch, or a "
		  "small one, does not mean that there are no moths. Traps at its "
		  "edge and checks of fruit and shoots tell more."));
}

static void add_cautions(struct why *w)
{
	why_add_line(w, TONE_TITLE, 2, "%s", _("Before you act"));
	for (size_t i = 0; say_caution(i); i++)
		why_add_line(w, TONE_QUIET, 4, "%s", say_caution(i));
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
		why_add_visits(out, l, (size_t)trap);
		why_add_service(out, l, (size_t)trap);
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
