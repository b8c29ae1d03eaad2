#include "base/acts.h"

#include "base/day.h"
#include "base/words.h"

#include <string.h>

const struct treatment treatment_blank = {
	.day = DAY_NONE,
	.from = { .minute = INSTANT_NONE },
	.until = { .minute = INSTANT_NONE },
	.area_x100 = -1,
	.rei_hours = -1,
	.phi_days = -1,
};

const struct pick pick_blank = { .day = DAY_NONE };

const struct fruit_check fruit_check_blank = {
	.day = DAY_NONE,
	.looked_at = -1,
	.stung = -1,
	.entered = -1,
};

const struct disruption disruption_blank = {
	.up = DAY_NONE,
	.down = DAY_NONE,
	.per_ha_x100 = -1,
};

const struct answer answer_blank = { .day = DAY_NONE, .on = DAY_NONE };

static const char *const fruit_parts[PART_COUNT] = {
	[PART_FRUIT] = N_("fruit"),
	[PART_SHOOTS] = N_("shoots"),
};

static const char *const tree_parts[TREE_COUNT] = {
	[TREE_ANY] = "",
	[TREE_TOP] = N_("top"),
	[TREE_MIDDLE] = N_("middle"),
	[TREE_LOW] = N_("low"),
	[TREE_GROUND] = N_("ground"),
};

static const char *const decisions[DECISION_COUNT] = {
	[DECISION_LOOKED] = N_("looked"),
	[DECISION_TREATED] = N_("treated"),
	[DECISION_LEFT] = N_("left"),
};

const char *fruit_part_word(enum fruit_part p)
{
	return fruit_parts[p];
}

const char *tree_part_word(enum tree_part p)
{
	return tree_parts[p];
}

const char *decision_word(enum decision d)
{
	return decisions[d];
}

/* The place of the word in a table of n, or -1. */
static int find(const char *const words[], int n, const char *word)
{
	for (int i = 0; i < n; i++)
		if (strcmp(words[i], word) == 0)
			return i;
	return -1;
}

bool fruit_part_read(const char *word, enum fruit_part *out)
{
	int i = find(fruit_parts, PART_COUNT, word);

	if (i >= 0)
		*out = (enum fruit_part)i;
	return i >= 0;
}

bool tree_part_read(const char *word, enum tree_part *out)
{
	int i = find(tree_parts, TREE_COUNT, word);

	if (i >= 0)
		*out = (enum tree_part)i;
	return i >= 0;
}

bool decision_read(const char *word, enum decision *out)
{
	int i = find(decisions, DECISION_COUNT, word);

	if (i >= 0)
		*out = (enum decision)i;
	return i >= 0;
}
