/* degree_days_rule.c - degree-day rules: their words, and what is wrong with one. */
#include "base/words.h"
#include "season/degree_days.h"

#include <math.h>
#include <string.h>

static const double number_min = -60, number_max = 150;

static const struct {
	const char *word;
	bool average, capped, twofold;
} methods[DD_METHOD_COUNT] = {
	[DD_AVERAGE] = { N_("average"), .average = true },
	[DD_AVERAGE_RAISED] = { N_("average-raised"), .average = true },
	[DD_AVERAGE_CLAMPED] = { N_("average-clamped"), .average = true,
		.capped = true },
	[DD_AVERAGE_CAPPED] = { N_("average-capped"), .average = true, .capped = true },
	[DD_TRIANGLE] = { .word = N_("triangle") },
	[DD_DOUBLE_TRIANGLE] = { N_("double-triangle"), .twofold = true },
	[DD_SINE] = { .word = N_("sine") },
	[DD_DOUBLE_SINE] = { N_("double-sine"), .twofold = true },
};

static const char *const cutoffs[DD_CUTOFF_COUNT] = {
	[DD_NO_CUTOFF] = "none",
	[DD_HORIZONTAL] = N_("horizontal"),
	[DD_INTERMEDIATE] = N_("intermediate"),
	[DD_VERTICAL] = N_("vertical"),
};

const char *dd_method_word(enum dd_method m)
{
	return methods[m].word;
}

const char *dd_cutoff_word(enum dd_cutoff c)
{
	return cutoffs[c];
}

bool dd_method_read(const char *word, enum dd_method *out)
{
	for (int i = 0; i < DD_METHOD_COUNT; i++)
		if (strcmp(methods[i].word, word) == 0)
			return *out = (enum dd_method)i, true;
	return false;
}

bool dd_cutoff_read(const char *word, enum dd_cutoff *out)
{
	for (int i = 0; i < DD_CUTOFF_COUNT; i++)
		if (strcmp(cutoffs[i], word) == 0)
			return *out = (enum dd_cutoff)i, true;
	return false;
}

bool dd_is_double(enum dd_method m)
{
	return methods[m].twofold;
}

bool dd_uses_cap(const struct dd_rule *r)
{
	return methods[r->method].capped || r->cutoff != DD_NO_CUTOFF;
}

/* A comparison with NAN is false. */
static bool within(double number)
{
	return number >= number_min && number <= number_max;
}

const char *dd_rule_fault(const struct dd_rule *r)
{
	if (methods[r->method].average && r->cutoff != DD_NO_CUTOFF)
		return _(
			"a cutoff goes with sines and triangles; an average has cutoff "
			"none");
	if (!within(r->base))
		return _("the base is a number of degrees from -60 to 150");
	if (!dd_uses_cap(r))
		return NULL;
	if (!within(r->cap))
		return _("the cap is a number of degrees from -60 to 150");
	if (r->base >= r->cap)
		return _("the base must be lower than the cap");
	return NULL;
}
