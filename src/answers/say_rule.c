/* say_rule.c - a threshold in words, short and whole. */
#include "answers/say.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>

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
		snprintf(span, sizeof span, _(" %dw"), (int)r->span);
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
