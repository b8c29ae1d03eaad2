#include "answers/say.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

void say_weekly(const struct weekly *w, char out[static SAY_SHORT])
{
	int32_t x10 = weekly_x10(w);

	if (x10 < 0)
		snprintf(out, SAY_SHORT, "-");
	else
		snprintf(out, SAY_SHORT, "%d.%d%s", (int)(x10 / 10), (int)(x10 % 10),
			w->at_least ? "+" : "");
}

static const char *visit_head(const struct visit *v)
{
	switch (v->outcome) {
	case OUTCOME_HUNG:
		return _("hung");
	case OUTCOME_SKIPPED:
		return "-";
	case OUTCOME_SPOILED:
		return _("sp");
	case OUTCOME_MISSING:
		return _("gone");
	case OUTCOME_PULLED:
		return _("pull");
	default:
		return "";
	}
}

void say_visit(const struct visit *v, char out[static SAY_SHORT])
{
	char count[16] = "";
	bool hung = v->outcome == OUTCOME_HUNG;
	bool card = v->new_card != 0 && !hung, lure = v->new_lure != 0 && !hung;

	if (v->count != COUNT_NONE)
		snprintf(count, sizeof count, "%s%d%s", *visit_head(v) ? " " : "",
			(int)v->count, v->outcome == OUTCOME_FLOOR ? "+" : "");
	snprintf(out, SAY_SHORT, "%s%s%s%s%s%s", visit_head(v), count,
		card || lure || v->stirred ? " " : "", card ? "c" : "", lure ? "l" : "",
		v->stirred ? "s" : "");
}

void say_x100(int32_t x100, char out[static SAY_SHORT])
{
	if (x100 % 100 == 0)
		snprintf(out, SAY_SHORT, "%d", (int)(x100 / 100));
	else if (x100 % 10 == 0)
		snprintf(out, SAY_SHORT, "%d.%d", (int)(x100 / 100),
			(int)(x100 % 100 / 10));
	else
		snprintf(out, SAY_SHORT, "%d.%02d", (int)(x100 / 100),
			(int)(x100 % 100));
}

static void say_value(const struct rule *r, char out[static SAY_SHORT])
{
	say_x100(r->value_x100, out);
}

void say_rule_short(const struct rule *r, char out[static SAY_SHORT])
{
	char value[SAY_SHORT];
	const char *per = "";
	char span[16] = "";

	if (r->measure == MEASURE_NONE) {
		snprintf(out, SAY_SHORT, "%s", _("timing"));
		return;
	}
	say_value(r, value);
	if (r->measure == MEASURE_TRAP_NIGHT || r->measure == MEASURE_BLOCK_NIGHT)
		per = _("/night");
	else if (r->measure == MEASURE_TRAP_TOTAL || r->measure == MEASURE_BLOCK_TOTAL)
		per = _(" total");
	else if (r->span > 1)
		snprintf(span, sizeof span, " %dw", (int)r->span);
	snprintf(out, SAY_SHORT, "%s%.10s%.8s%.6s", comparator_word(r->comparator),
		value, per, span);
}

static void say_total_span(const struct rule *r, char *out, size_t size)
{
	switch (r->span_kind) {
	case SPAN_HUNG:
		snprintf(out, size, "%s", _("since hanging"));
		break;
	case SPAN_BIOFIX:
		snprintf(out, size, "%s", _("since biofix"));
		break;
	case SPAN_FLIGHT:
		snprintf(out, size, "%s", _("in this flight"));
		break;
	case SPAN_TREATMENT:
		snprintf(out, size, "%s", _("since the last treatment"));
		break;
	default:
		snprintf(out, size, _("in %d nights"), (int)r->span);
	}
}

/* "at least 5" or "more than 5". */
static void say_passes(const struct rule *r, char *out, size_t size)
{
	char value[SAY_SHORT];

	say_value(r, value);
	snprintf(out, size,
		r->comparator == AT_LEAST ? _("at least %s") : _("more than %s"),
		value);
}

void say_rule(const struct rule *r, char *out, size_t size)
{
	char passes[64], span[64];
	const char *of = measure_of_block(r->measure) ? _("mean of the block's traps")
						      : _("any single trap");

	say_passes(r, passes, sizeof passes);
	switch (r->measure) {
	case MEASURE_NONE:
		text_copy(out, size,
			_("for timing only: this pest's traps decide nothing"));
		break;
	case MEASURE_TRAP_WEEK:
	case MEASURE_BLOCK_WEEK:
		if (r->span > 1)
			snprintf(out, size,
				_("%s a week in each of %d weeks running, %s"), passes,
				(int)r->span, of);
		else
			snprintf(out, size, _("%s a week, %s"), passes, of);
		break;
	case MEASURE_TRAP_NIGHT:
	case MEASURE_BLOCK_NIGHT:
		snprintf(out, size, _("%s a night over %d nights, %s"), passes,
			(int)r->span, of);
		break;
	default:
		say_total_span(r, span, sizeof span);
		snprintf(out, size, _("%s in all %s, %s"), passes, span, of);
	}
}

const char *say_verdict(const struct judgement *j)
{
	switch (j->verdict) {
	case VERDICT_OVER:
		return _("OVER");
	case VERDICT_UNKNOWN:
		return _("unknown");
	case VERDICT_NEAR:
		return j->questionable ? _("near?") : _("near");
	case VERDICT_UNDER:
		return j->questionable ? _("under?") : _("under");
	default:
		return "-";
	}
}

enum tone say_verdict_tone(const struct judgement *j)
{
	if (j->verdict == VERDICT_OVER)
		return TONE_OVER;
	if (j->verdict == VERDICT_UNKNOWN || j->questionable)
		return TONE_UNSURE;
	return j->verdict == VERDICT_NONE ? TONE_QUIET : TONE_PLAIN;
}

static void say_unread(enum unread u, int32_t nights, char *out, size_t size)
{
	switch (u) {
	case UNREAD_NOT_HUNG:
		text_copy(out, size, _("not hung"));
		break;
	case UNREAD_NOT_YET:
		snprintf(out, size, _("hung %d nights ago, not read yet"), (int)nights);
		break;
	case UNREAD_SHORT:
		text_copy(out, size, _("too few nights read"));
		break;
	case UNREAD_SPOILED:
		text_copy(out, size, _("trap or card was spoiled"));
		break;
	case UNREAD_MISSING:
		text_copy(out, size, _("trap missing"));
		break;
	case UNREAD_PULLED:
		text_copy(out, size, _("trap pulled"));
		break;
	default:
		snprintf(out, size,
			u == UNREAD_SKIPPED ? _("skipped, not read for %d nights")
					    : _("not read for %d nights"),
			(int)nights);
	}
}

void say_lacking(const struct judgement *j, char *out, size_t size)
{
	text_copy(out, size, "");
	switch (j->verdict == VERDICT_UNKNOWN ? j->lacking : LACKING_NOTHING) {
	case LACKING_READING:
		if (j->traps > 1 || j->unread == UNREAD_NO)
			snprintf(out, size, _("%d of %d traps read"), (int)j->read,
				(int)j->traps);
		else
			say_unread(j->unread, j->unread_nights, out, size);
		break;
	case LACKING_WEEKS:
		text_copy(out, size, _("has not hung as long as the rule looks back"));
		break;
	case LACKING_SPLIT:
		snprintf(out, size, _("%d moths in %d nights cannot be divided"),
			(int)j->moths, (int)j->nights);
		break;
	case LACKING_FLOOR:
		text_copy(out, size, _("card was full: at least this many"));
		break;
	case LACKING_TRAPS:
		snprintf(out, size, _("only %d of %d traps read"), (int)j->read,
			(int)j->traps);
		break;
	case LACKING_BIOFIX:
		text_copy(out, size, _("biofix not set"));
		break;
	case LACKING_FLIGHT:
		text_copy(out, size, _("flight not known"));
		break;
	default:
		break;
	}
}

static void add_doubt(char *out, size_t size, const char *text)
{
	size_t n = strlen(out);

	snprintf(out + n, size - n, "%s%s", n ? ", " : "", text);
}

void say_doubts(const struct judgement *j, char *out, size_t size)
{
	char text[80];

	text_copy(out, size, "");
	if (j->doubts & DOUBT_LURE) {
		snprintf(text, sizeof text, _("lure was %d d overdue"),
			(int)j->lure_overdue_days);
		add_doubt(out, size, text);
	}
	if (j->doubts & DOUBT_CARD) {
		snprintf(text, sizeof text, _("card at %d moths"), (int)j->card_moths);
		add_doubt(out, size, text);
	}
	if (j->doubts & DOUBT_CARD_AGE)
		add_doubt(out, size, _("card overdue by age"));
	if (j->doubts & DOUBT_LONG) {
		snprintf(text, sizeof text, _("average over %d nights"),
			(int)j->long_nights);
		add_doubt(out, size, text);
	}
	if (j->doubts & DOUBT_UNREAD) {
		snprintf(text, sizeof text, _("%d of %d traps read"), (int)j->read,
			(int)j->traps);
		add_doubt(out, size, text);
	}
	if (j->doubts & DOUBT_TRAPS)
		add_doubt(out, size, _("not the same traps in all weeks"));
}

static void say_amount(const struct judgement *j, char out[static SAY_SHORT])
{
	int32_t x10 = ratio_x10(j->value.lo);

	snprintf(out, SAY_SHORT, "%d.%d%s", (int)(x10 / 10), (int)(x10 % 10),
		j->value.open ? "+" : "");
}

static void say_compared(
	const struct rule *r, const char *amount, char *out, size_t size)
{
	char rule[SAY_SHORT];

	say_rule_short(r, rule);
	switch (r->measure) {
	case MEASURE_TRAP_NIGHT:
	case MEASURE_BLOCK_NIGHT:
		snprintf(out, size, _("%s a night, threshold %s"), amount, rule);
		break;
	case MEASURE_TRAP_TOTAL:
	case MEASURE_BLOCK_TOTAL:
		snprintf(out, size, _("%s in all, threshold %s"), amount, rule);
		break;
	default:
		snprintf(out, size, _("%s a week, threshold %s"), amount, rule);
	}
}

void say_verdict_line(
	const struct log *l, const struct verdict_row *row, char *out, size_t size)
{
	char amount[SAY_SHORT];
	const struct judgement *j = &row->judgement;

	if (row->rule == NO_RULE) {
		text_copy(out, size, _("no threshold set"));
		return;
	}
	if (j->verdict == VERDICT_UNKNOWN) {
		say_lacking(j, out, size);
		return;
	}
	const struct rule *r = &l->rules.items[row->rule];
	if (r->measure == MEASURE_NONE) {
		text_copy(out, size, _("for timing only"));
		return;
	}
	say_amount(j, amount);
	say_compared(r, amount, out, size);
}

void say_service(const struct lure_state *lure, const struct card_state *card,
	char *out, size_t size)
{
	char text[48];

	text_copy(out, size, "");
	if (lure->state == SERVICE_OVERDUE) {
		snprintf(text, sizeof text, _("lure %d d over"),
			(int)lure->overdue_days);
		add_doubt(out, size, text);
	} else if (lure->state == SERVICE_DUE || lure->state == SERVICE_NEXT_RUN) {
		add_doubt(out, size, _("lure due"));
	}
	if (card->mark == CARD_FLOOR)
		add_doubt(out, size, _("card full"));
	else if (card->state == SERVICE_OVERDUE && card->mark < CARD_CHANGE &&
		 card->overdue_days > 0) {
		snprintf(text, sizeof text, _("card %d d over"),
			(int)card->overdue_days);
		add_doubt(out, size, text);
	} else if (card->state >= SERVICE_NEXT_RUN)
		add_doubt(out, size, _("card due"));
	else if (card->mark == CARD_STIR && !card->stirred_since_mark)
		add_doubt(out, size, _("stir glue"));
}

void say_bring(const struct brings *b, char *out, size_t size)
{
	int lures = 0, cards = 0;
	char text[48];

	for (size_t i = 0; i < b->n; i++)
		*(b->items[i].is_lure ? &lures : &cards) += (int)b->items[i].n;
	text_copy(out, size, "");
	if (lures > 0) {
		snprintf(text, sizeof text,
			ngettext("%d lure", "%d lures", (unsigned)lures), lures);
		add_doubt(out, size, text);
	}
	if (cards > 0) {
		snprintf(text, sizeof text,
			ngettext("%d card", "%d cards", (unsigned)cards), cards);
		add_doubt(out, size, text);
	}
	if (lures + cards == 0)
		text_copy(out, size, _("nothing"));
}

void say_day_title(int32_t day, char *out, size_t size)
{
	char text[DAY_TEXT_SIZE];

	day_long(day, text, sizeof text);
	snprintf(out, size, _("%s \302\267 week %d"), text, day_week(day, NULL));
}
