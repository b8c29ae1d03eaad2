/* An answer in words: verdict, what is missing, doubts. */
#include "answers/say.h"

#include "base/text.h"
#include "base/words.h"
#include "say_parts.h"

#include <stdio.h>

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
		if (nights == 0)
			text_copy(out, size, _("hung today, not read yet"));
		else
			snprintf(out, size,
				ngettext("hung %d night ago, not read yet",
					"hung %d nights ago, not read yet",
					(unsigned)nights),
				(int)nights);
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
			u == UNREAD_SKIPPED
				? ngettext("skipped, not read for %d night",
					  "skipped, not read for %d nights",
					  (unsigned)nights)
				: ngettext("not read for %d night",
					  "not read for %d nights", (unsigned)nights),
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
		if (j->read == 0)
			snprintf(out, size, _("none of %d traps read"), (int)j->traps);
		else
			snprintf(out, size, _("only %d of %d traps read"), (int)j->read,
				(int)j->traps);
		break;
	case LACKING_BIOFIX:
		text_copy(out, size, _("biofix not set"));
		break;
	case LACKING_HEAT:
		text_copy(out, size,
			_("degree-days not known: temperatures are missing"));
		break;
	case LACKING_FLIGHT:
		text_copy(out, size, _("flight not known"));
		break;
	default:
		break;
	}
}

void say_doubts(const struct judgement *j, char *out, size_t size)
{
	char text[80];

	text_copy(out, size, "");
	if (j->doubts & DOUBT_LURE) {
		snprintf(text, sizeof text, _("lure was %d d overdue"),
			(int)j->lure_overdue_days);
		say_add(out, size, text);
	}
	if (j->doubts & DOUBT_CARD) {
		snprintf(text, sizeof text, _("card at %d moths"), (int)j->card_moths);
		say_add(out, size, text);
	}
	if (j->doubts & DOUBT_CARD_AGE)
		say_add(out, size, _("card overdue by age"));
	if (j->doubts & DOUBT_LONG) {
		snprintf(text, sizeof text, _("average over %d nights"),
			(int)j->long_nights);
		say_add(out, size, text);
	}
	if (j->doubts & DOUBT_UNREAD) {
		snprintf(text, sizeof text, _("%d of %d traps read"), (int)j->read,
			(int)j->traps);
		say_add(out, size, text);
	}
	if (j->doubts & DOUBT_TRAPS)
		say_add(out, size, _("not the same traps in all weeks"));
}

void say_amount(const struct judgement *j, char out[static SAY_SHORT])
{
	int32_t x10 = ratio_x10(j->value.lo);

	snprintf(out, SAY_SHORT, "%d.%d%s", (int)(x10 / 10), (int)(x10 % 10),
		j->value.open ? "+" : "");
}

void say_behind(const struct rule *r, const struct judgement *j, char *out, size_t size)
{
	char amount[SAY_SHORT], doubts[SAY_LINE];
	bool total =
		r->measure == MEASURE_TRAP_TOTAL || r->measure == MEASURE_BLOCK_TOTAL;
	bool night =
		r->measure == MEASURE_TRAP_NIGHT || r->measure == MEASURE_BLOCK_NIGHT;

	if (j->verdict == VERDICT_UNKNOWN) {
		say_lacking(j, out, size);
		return;
	}
	say_doubts(j, doubts, sizeof doubts);
	say_amount(j, amount);
	text_copy(out, size, "");
	if (total)
		snprintf(out, size, _("%s in all"), amount);
	if (night)
		snprintf(out, size, _("%s a night"), amount);
	if (*doubts)
		say_add(out, size, doubts);
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
