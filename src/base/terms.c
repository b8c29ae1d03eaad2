#include "base/terms.h"

#include "base/words.h"

#include <stddef.h>
#include <string.h>

const struct outcome_facts outcome_facts[OUTCOME_COUNT] = {
	[OUTCOME_HUNG] = { N_("hung"), COUNT_NEVER, .closes = true, .opens = true },
	[OUTCOME_COUNTED] = { N_("counted"), COUNT_MUST, .closes = true,
		.opens = true },
	[OUTCOME_FLOOR] = { N_("floor"), COUNT_MUST, .closes = true, .opens = true },
	[OUTCOME_SKIPPED] = { N_("skipped"), COUNT_NEVER, .takes_reason = true },
	[OUTCOME_SPOILED] = { N_("spoiled"), COUNT_MAY, .takes_reason = true,
		.closes = true, .opens = true },
	[OUTCOME_MISSING] = { N_("missing"), COUNT_NEVER, .closes = true },
	[OUTCOME_PULLED] = { N_("pulled"), COUNT_MAY, .closes = true },
};

static const struct {
	const char *word;
	enum outcome of;
} reasons[REASON_COUNT] = {
	[REASON_NONE] = { "", OUTCOME_COUNT },
	[REASON_REENTRY] = { N_("re-entry"), OUTCOME_SKIPPED },
	[REASON_WEATHER] = { N_("weather"), OUTCOME_SKIPPED },
	[REASON_TIME] = { N_("time"), OUTCOME_SKIPPED },
	[REASON_OTHER] = { N_("other"), OUTCOME_SKIPPED },
	[REASON_DOWN] = { N_("down"), OUTCOME_SPOILED },
	[REASON_CARD_LOST] = { N_("card lost"), OUTCOME_SPOILED },
	[REASON_LURE_MISSING] = { N_("lure missing"), OUTCOME_SPOILED },
	[REASON_BLOCKED] = { N_("blocked"), OUTCOME_SPOILED },
};

static const char *const places[PLACE_COUNT] = {
	[PLACE_NONE] = "",
	[PLACE_BORDER] = N_("border"),
	[PLACE_INTERIOR] = N_("interior"),
	[PLACE_OUTSIDE] = N_("outside"),
};

static const char *const conditions[CONDITION_COUNT] = {
	[CONDITION_NONE] = "",
	[CONDITION_CONVENTIONAL] = N_("conventional"),
	[CONDITION_DISRUPTED] = N_("disrupted"),
};

static const char *const measures[MEASURE_COUNT] = {
	[MEASURE_TRAP_WEEK] = N_("trap-week"),
	[MEASURE_BLOCK_WEEK] = N_("block-week"),
	[MEASURE_TRAP_NIGHT] = N_("trap-night"),
	[MEASURE_BLOCK_NIGHT] = N_("block-night"),
	[MEASURE_TRAP_TOTAL] = N_("trap-total"),
	[MEASURE_BLOCK_TOTAL] = N_("block-total"),
	[MEASURE_NONE] = N_("none"),
};

static const char *const spans[SPAN_COUNT] = {
	[SPAN_NUMBER] = "",
	[SPAN_HUNG] = N_("hung"),
	[SPAN_BIOFIX] = N_("biofix"),
	[SPAN_FLIGHT] = N_("flight"),
	[SPAN_TREATMENT] = N_("treatment"),
};

static const char *const comparators[COMPARATOR_COUNT] = {
	[AT_LEAST] = ">=",
	[MORE_THAN] = ">",
};

static const char *const verdicts[VERDICT_COUNT] = {
	[VERDICT_NONE] = N_("none"),
	[VERDICT_UNDER] = N_("under"),
	[VERDICT_NEAR] = N_("near"),
	[VERDICT_UNKNOWN] = N_("unknown"),
	[VERDICT_OVER] = N_("over"),
};

const char *outcome_word(enum outcome o)
{
	return outcome_facts[o].word;
}

const char *reason_word(enum reason r)
{
	return reasons[r].word;
}

const char *place_word(enum place p)
{
	return places[p];
}

const char *condition_word(enum condition c)
{
	return conditions[c];
}

const char *measure_word(enum measure m)
{
	return measures[m];
}

const char *span_word(enum span_kind s)
{
	return spans[s];
}

const char *comparator_word(enum comparator c)
{
	return comparators[c];
}

const char *verdict_word(enum verdict v)
{
	return verdicts[v];
}

bool outcome_read(const char *word, enum outcome *out)
{
	for (int i = 0; i < OUTCOME_COUNT; i++)
		if (strcmp(outcome_facts[i].word, word) == 0)
			return *out = (enum outcome)i, true;
	return false;
}

bool reason_read(const char *word, enum reason *out)
{
	for (int i = 0; i < REASON_COUNT; i++)
		if (strcmp(reasons[i].word, word) == 0)
			return *out = (enum reason)i, true;
	return false;
}

/* The place of the word in a table of n, or -1. */
static int find(const char *const words[], int n, const char *word)
{
	for (int i = 0; i < n; i++)
		if (strcmp(words[i], word) == 0)
			return i;
	return -1;
}

bool place_read(const char *word, enum place *out)
{
	int i = find(places, PLACE_COUNT, word);

	if (i >= 0)
		*out = (enum place)i;
	return i >= 0;
}

bool condition_read(const char *word, enum condition *out)
{
	int i = find(conditions, CONDITION_COUNT, word);

	if (i >= 0)
		*out = (enum condition)i;
	return i >= 0;
}

bool measure_read(const char *word, enum measure *out)
{
	int i = find(measures, MEASURE_COUNT, word);

	if (i >= 0)
		*out = (enum measure)i;
	return i >= 0;
}

bool span_read(const char *word, enum span_kind *out)
{
	int i = find(spans, SPAN_COUNT, word);

	if (i >= 0)
		*out = (enum span_kind)i;
	return i >= 0;
}

bool comparator_read(const char *word, enum comparator *out)
{
	int i = find(comparators, COMPARATOR_COUNT, word);

	if (i >= 0)
		*out = (enum comparator)i;
	return i >= 0;
}

bool reason_fits(enum reason r, enum outcome o)
{
	return r == REASON_NONE || reasons[r].of == o;
}

bool measure_of_block(enum measure m)
{
	return m == MEASURE_BLOCK_WEEK || m == MEASURE_BLOCK_NIGHT ||
	       m == MEASURE_BLOCK_TOTAL;
}
