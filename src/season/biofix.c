#include "season/biofix.h"

#include "base/mem.h"
#include "base/words.h"
#include "biofix_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

static const struct biofix_rule rules[] = {
	{ N_("sustained"),
		N_("first check with a moth, when the next within 14 days has one too"),
		"", "", 0 },
	{ N_("sustained-two"),
		N_("first check with 2 moths or more, when the next within 14 days has "
		   "as many"),
		N_("Oriental fruit moth; Georgia"),
		"University of Georgia advice in a Clemson Extension news article, "
		"2021",
		0 },
	{ N_("sustained-after-zeros"),
		N_("first sustained catch after two weeks without a moth"),
		N_("tree fruit; Australia"),
		"treefruit.com.au, Calculating degree days for moth pests", 0 },
	{ N_("first-moth"), N_("first moth"),
		N_("obliquebanded leafroller; Utah, Colorado, Idaho, Oregon"),
		"Intermountain fruit guide, leafrollers; Omeg, M.S. thesis, Oregon "
		"State Univ. 2001 (abstract)",
		0 },
	{ N_("first-male"), N_("first male"), N_("peach twig borer; California"),
		"Zalom, Barnett, Rice & Weakley 1992, J. Econ. Entomol. 85:1904-1909",
		0 },
	{ N_("three-moths"), N_("the third moth of the season, all traps together"),
		N_("codling moth; Indiana"),
		"Purdue, Facts for Fancy Fruit, codling moth (3 to 5 moths in all)",
		0 },
	{ N_("two-counts"), N_("two successive counts with moths, 2 to 3 days apart"),
		N_("peach twig borer; California"),
		"Strand 1999, IPM for Stone Fruits, UC ANR Publ. 3389", 3 },
	{ N_("three-evenings"),
		N_("two traps or more catch on three evenings running; the first of "
		   "them"),
		N_("Oriental fruit moth, codling moth, tufted apple bud moth; "
		   "Virginia"),
		"Virginia Tech, tree-fruit note on biofix dates, 2018", 1 },
	{ N_("two-nights"), N_("a mean above 1 moth per trap on two nights running"),
		N_("codling moth; Wisconsin"),
		"UW-Madison Fruit Program, codling moth management, 15 June 2018", 1 },
	{ N_("five-in-a-trap"), N_("first week with 5 moths or more in a trap"),
		N_("summer fruit tortrix; England"),
		"NIAB apple guide, niab.com/node/2213", 0 },
	{ N_("mean-three"), N_("first check with a mean of 3 moths or more per trap"),
		N_("apple; Ohio"), "Ohio State University, Wayne County, 9 May 2014",
		0 },
	{ N_("march-1"), N_("1 March, no traps needed"),
		N_("apple maggot; California, northern seasons"),
		"ipm.ucanr.edu/PHENOLOGY/ma-apple_maggot.html", 0 },
	{ N_("january-1"), N_("1 January, no traps needed"),
		N_("codling moth; Washington, northern seasons"),
		"Jones, Doerr & Brunner 2008, J. Econ. Entomol. 101:1651-1657 "
		"(abstract)",
		0 },
};

enum { RULE_COUNT = sizeof rules / sizeof *rules };

/* How each rule above is evaluated, in the same order. */
static const struct {
	biofix_way *by;
	struct biofix_numbers k;
} ways[RULE_COUNT] = {
	{ biofix_by_sustained, { .moths = 1 } },
	{ biofix_by_sustained, { .moths = 2 } },
	{ biofix_by_sustained, { .moths = 1, .zeros = 14 } },
	{ biofix_by_total, { .moths = 1 } },
	{ biofix_by_total, { .moths = 1, .males = true } },
	{ biofix_by_total, { .moths = 3 } },
	{ biofix_by_counts, { .moths = 1, .nights = 3 } },
	{ biofix_by_nights, { .traps = 2, .run = 3, .nights = 1 } },
	{ biofix_by_nights, { .moths = 1, .run = 2, .nights = 1 } },
	{ biofix_by_trap_week, { .moths = 5 } },
	{ biofix_by_mean, { .moths = 3 } },
	{ biofix_by_date, { .md = 301 } },
	{ biofix_by_date, { .md = 101 } },
};

const struct biofix_rule *biofix_rules(size_t *n)
{
	*n = RULE_COUNT;
	return rules;
}

const struct biofix_rule *biofix_rule_find(const char *word)
{
	for (size_t i = 0; i < RULE_COUNT; i++)
		if (strcmp(rules[i].word, word) == 0)
			return &rules[i];
	return NULL;
}

const char *biofix_state_word(enum biofix_state s)
{
	static const char *const words[BIOFIX_STATE_COUNT] = { N_("none yet"),
		N_("waits"), N_("dated"), N_("read too seldom") };

	assert(s < BIOFIX_STATE_COUNT);
	return words[s];
}

void biofix_found(struct biofix *out, enum biofix_state state, struct nights_between w)
{
	out->state = state;
	out->after = w.after;
	out->by = w.by;
	out->or_earlier = w.or_earlier;
}

void biofix_see(
	struct biofix *out, const struct biofix_log *log, const struct reading *x)
{
	if (out->n_seen == BIOFIX_SEEN_MAX) {
		out->n_unlisted++;
		return;
	}
	out->seen[out->n_seen++] = (struct biofix_seen){
		.diary = x->diary,
		.visit = log->diaries[x->diary]->items[x->interval].visit,
	};
}

void biofix_see_rounds(struct biofix *out, const struct biofix_log *log,
	const struct rounds *r, size_t i, size_t last)
{
	for (; i <= last; i++) {
		const struct round *x = &r->items[i];
		for (size_t k = x->first; k < x->first + x->n; k++)
			if (r->readings[k].moths > 0)
				biofix_see(out, log, &r->readings[k]);
	}
}

static int by_size(const void *a, const void *b)
{
	const int32_t *x = a, *y = b;

	return (*x > *y) - (*x < *y);
}

/* Median nights of the readings. */
static int32_t usual_nights(const struct rounds *r)
{
	int32_t *nights = mem_new(r->n_readings, sizeof *nights);
	size_t n = 0;

	for (size_t i = 0; i < r->n_readings; i++)
		if (r->readings[i].read)
			nights[n++] = r->readings[i].to - r->readings[i].from;
	qsort(nights, n, sizeof *nights, by_size);
	int32_t usual = n == 0 ? 0 : nights[n / 2];
	free(nights);
	return usual;
}

/* A catch over more nights than the rule takes: it may have been met inside them. */
static bool caught_over(const struct rounds *r, int32_t nights)
{
	for (size_t i = 0; i < r->n_readings; i++) {
		const struct reading *x = &r->readings[i];
		if (x->moths > 0 && x->to - x->from > nights)
			return true;
	}
	return false;
}

/* The least that no scout denies was taken: a visit up to the day may have caught what
 * the rule asks for. */
static bool may_be_earlier(const struct rounds *r, const struct biofix *b)
{
	for (size_t i = 0; i < r->n_readings; i++)
		if (r->readings[i].more &&
			(b->state != BIOFIX_DATED || r->readings[i].to <= b->by))
			return true;
	return false;
}

struct biofix biofix_suggest(const struct biofix_rule *r,
	const struct diary *const *diaries, size_t n, int32_t first, int32_t last)
{
	struct biofix out = { .after = DAY_NONE, .by = DAY_NONE };
	struct biofix_log log = { diaries, n, first, last };
	struct rounds all = { 0 };
	size_t i = (size_t)(r - rules);

	assert(i < RULE_COUNT);
	ways[i].by(&ways[i].k, &log, &out);
	rounds_read(&all, diaries, n, first, last, 0);
	out.read_nights = usual_nights(&all);
	if (out.state == BIOFIX_NONE_YET && r->nights_max > 0 &&
		(out.read_nights > r->nights_max || caught_over(&all, r->nights_max)))
		out.state = BIOFIX_READ_TOO_SELDOM;
	out.is_disputed = ways[i].by != biofix_by_date && may_be_earlier(&all, &out);
	out.or_earlier = out.or_earlier || (out.is_disputed && out.by != DAY_NONE);
	rounds_free(&all);
	return out;
}
