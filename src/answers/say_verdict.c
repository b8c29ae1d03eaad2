/* say_verdict.c - an answer in words: verdict, what is missing, doubts. */
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

void say_doubted(const struct verdict_sums *s, char *out, size_t size)
{
	text_copy(out, size, "");
	if (s->near_doubted > 0 && s->under_doubted > 0)
		snprintf(out, size, _(", %d near?, %d under?"), s->near_doubted,
			s->under_doubted);
	else if (s->near_doubted > 0)
		snprintf(out, size, _(", %d near?"), s->near_doubted);
	else if (s->under_doubted > 0)
		snprintf(out, size, _(", %d under?"), s->under_doubted);
}

enum tone say_verdict_tone(const struct judgement *j)
{
	if (j->verdict == VERDICT_OVER)
		return TONE_OVER;
	if (j->verdict == VERDICT_UNKNOWN || j->questionable)
		return TONE_UNSURE;
	return j->verdict == VERDICT_NONE ? TONE_QUIET : TONE_PLAIN;
}

static void say_not_yet(int32_t nights, char *out, size_t size)
{
	if (nights == 0)
		text_copy(out, size, _("hung today, not read yet"));
	else
		snprintf(out, size,
			ngettext("hung %d night ago, not read yet",
				"hung %d nights ago, not read yet", (unsigned)nights),
			(int)nights);
}

static void say_not_since(int32_t nights, char *out, size_t size)
{
	if (nights == 0)
		text_copy(out, size, _("the total began today, not read since"));
	else
		snprintf(out, size,
			ngettext("the total began %d night ago, not read since",
				"the total began %d nights ago, not read since",
				(unsigned)nights),
			(int)nights);
}

static void say_not_read(bool was_skipped, int32_t nights, char *out, size_t size)
{
	snprintf(out, size,
		was_skipped
			? ngettext("skipped, not read for %d night",
				  "skipped, not read for %d nights", (unsigned)nights)
			: ngettext("not read for %d night", "not read for %d nights",
				  (unsigned)nights),
		(int)nights);
}

static void say_unread(enum unread u, int32_t nights, char *out, size_t size)
{
	static const char *const words[UNREAD_COUNT] = {
		[UNREAD_NOT_HUNG] = N_("not hung"),
		[UNREAD_SHORT] = N_("too few nights read"),
		[UNREAD_SPOILED] = N_("trap or card was spoiled"),
		[UNREAD_MISSING] = N_("trap missing"),
		[UNREAD_PULLED] = N_("trap pulled"),
	};

	if (words[u])
		text_copy(out, size, _(words[u]));
	else if (u == UNREAD_NOT_YET)
		say_not_yet(nights, out, size);
	else if (u == UNREAD_SINCE)
		say_not_since(nights, out, size);
	else
		say_not_read(u == UNREAD_SKIPPED, nights, out, size);
}

static void say_lacking_reading(const struct judgement *j, char *out, size_t size)
{
	if (j->traps > 1 || j->unread == UNREAD_NO)
		snprintf(out, size, _("%d of %d traps read"), (int)j->read,
			(int)j->traps);
	else
		say_unread(j->unread, j->unread_nights, out, size);
}

static void say_lacking_traps(const struct judgement *j, char *out, size_t size)
{
	if (j->read == 0)
		snprintf(out, size, _("none of %d traps read"), (int)j->traps);
	else
		snprintf(out, size, _("only %d of %d traps read"), (int)j->read,
			(int)j->traps);
}

void say_lacking(const struct judgement *j, char *out, size_t size)
{
	static const char *const words[LACKING_COUNT] = {
		[LACKING_WEEKS] = N_("has not hung as long as the rule looks back"),
		[LACKING_FLOOR] = N_("card was full: at least this many"),
		[LACKING_AGREEMENT] = N_("counted twice, not settled"),
		[LACKING_BIOFIX] = N_("biofix not set"),
		[LACKING_HEAT] = N_("degree-days not known: temperatures are missing"),
		[LACKING_FLIGHT] = N_("flight not known"),
	};
	enum lacking lacking =
		j->verdict == VERDICT_UNKNOWN ? j->lacking : LACKING_NOTHING;

	if (lacking == LACKING_READING)
		say_lacking_reading(j, out, size);
	else if (lacking == LACKING_TRAPS)
		say_lacking_traps(j, out, size);
	else if (lacking == LACKING_SPLIT)
		snprintf(out, size, _("%d moths in %d nights cannot be divided"),
			(int)j->moths, (int)j->nights);
	else
		text_copy(out, size, words[lacking] ? _(words[lacking]) : "");
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
	if (j->doubts & DOUBT_COUNTS)
		say_add(out, size, _("counted twice, not settled"));
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

	words_print(
		out, SAY_SHORT, "%.1f%s", (double)x10 / 10, j->value.open ? "+" : "");
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
	if (j->verdict != VERDICT_OVER && j->weeks_over > 0) {
		char weeks[SAY_SHORT * 2];
		snprintf(weeks, sizeof weeks, _("%d of %d weeks so far"),
			(int)j->weeks_over, (int)j->weeks);
		say_add(out, size, weeks);
	}
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
