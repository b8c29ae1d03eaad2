/* trial_never.c - why a rule can never apply to anything in the book. */
#include "base/text.h"
#include "base/words.h"
#include "trial_parts.h"

#include <stdio.h>
#include <strings.h>

/* A trap of the book with its block and farm. */
struct candidate {
	const struct log *log;
	size_t trap;
	const struct trap *t;
	const struct block *b;
};

static bool of_pest(const struct candidate *c, const struct rule *r)
{
	return r->pest == 0 || c->t->pest == r->pest;
}

/* What was put away is kept for past seasons only. */
static bool in_use(const struct candidate *c, const struct rule *r)
{
	const struct farm *f = log_farm(c->log, c->t->farm);

	(void)r;
	return c->b && f && !c->b->retired && !f->retired;
}

static bool of_farm(const struct candidate *c, const struct rule *r)
{
	return r->farm == 0 || c->t->farm == r->farm;
}

static bool of_block(const struct candidate *c, const struct rule *r)
{
	return r->block == 0 || c->t->block == r->block;
}

static bool of_crop(const struct candidate *c, const struct rule *r)
{
	return !*r->crop || strcasecmp(c->b->crop, r->crop) == 0;
}

/* Dispensers go up and come down: with any in the book it may be either. */
static bool has_dispensers(const struct candidate *c)
{
	const struct disruptions *all = &c->log->disruptions;

	for (size_t i = 0; i < all->n; i++)
		if (all->items[i].block == c->t->block &&
			(all->items[i].pest == 0 || all->items[i].pest == c->t->pest))
			return true;
	return false;
}

static bool of_condition(const struct candidate *c, const struct rule *r)
{
	return r->condition == CONDITION_NONE || c->b->condition == r->condition ||
	       has_dispensers(c);
}

static bool of_place(const struct candidate *c, const struct rule *r)
{
	return r->place == PLACE_NONE || c->t->place == r->place;
}

static bool of_lure(const struct candidate *c, const struct rule *r)
{
	const struct diary *d = &c->log->diaries[c->trap];

	if (r->lure == 0 || c->t->lure == r->lure)
		return true;
	for (size_t i = 0; i < d->n_visits; i++)
		if (d->visits[i].new_lure == r->lure)
			return true;
	return false;
}

/* The names that the sentences are about, in the order of the filters. */
struct names {
	const char *pest, *farm, *block, *lure;
	const struct rule *rule;
};

typedef void sentence(const struct names *n, char *out, size_t size);

static void say_no_pest(const struct names *n, char *out, size_t size)
{
	snprintf(out, size, _("no trap in the book is for %s"), n->pest);
}

static void say_not_in_use(const struct names *n, char *out, size_t size)
{
	snprintf(
		out, size, _("all %s traps are in farms and blocks put away"), n->pest);
}

static void say_no_farm(const struct names *n, char *out, size_t size)
{
	if (*n->farm)
		snprintf(out, size, _("no trap of %s is for %s"), n->farm, n->pest);
	else
		text_copy(out, size, _("its farm is not in the book"));
}

static void say_no_block(const struct names *n, char *out, size_t size)
{
	if (*n->block)
		snprintf(out, size, _("no trap in %s is for %s"), n->block, n->pest);
	else
		text_copy(out, size, _("its block is not in the book"));
}

static void say_no_crop(const struct names *n, char *out, size_t size)
{
	if (*n->block)
		snprintf(out, size, _("%s does not grow %s"), n->block,
			words_shipped(n->rule->crop));
	else
		snprintf(out, size, _("no block with %s traps grows %s"), n->pest,
			words_shipped(n->rule->crop));
}

static void say_no_condition(const struct names *n, char *out, size_t size)
{
	snprintf(out, size, _("no block with such %s traps is %s"), n->pest,
		_(condition_word(n->rule->condition)));
}

static void say_no_place(const struct names *n, char *out, size_t size)
{
	snprintf(out, size, _("no such %s trap has the place %s"), n->pest,
		_(place_word(n->rule->place)));
}

static void say_no_lure(const struct names *n, char *out, size_t size)
{
	if (*n->lure)
		snprintf(out, size, _("no such %s trap has the lure %s"), n->pest,
			n->lure);
	else
		text_copy(out, size, _("its lure is not in the book"));
}

enum {
	BY_PEST,
	BY_USE,
	BY_FARM,
	BY_BLOCK,
	BY_CROP,
	BY_CONDITION,
	BY_PLACE,
	BY_LURE,
	FILTERS
};

static const struct {
	bool (*holds)(const struct candidate *c, const struct rule *r);
	sentence *says;
} filters[] = {
	[BY_PEST] = { of_pest, say_no_pest },
	[BY_USE] = { in_use, say_not_in_use },
	[BY_FARM] = { of_farm, say_no_farm },
	[BY_BLOCK] = { of_block, say_no_block },
	[BY_CROP] = { of_crop, say_no_crop },
	[BY_CONDITION] = { of_condition, say_no_condition },
	[BY_PLACE] = { of_place, say_no_place },
	[BY_LURE] = { of_lure, say_no_lure },
};

/* How many of the filters, one after the other, the trap passes. */
static size_t passed(const struct candidate *c, const struct rule *r)
{
	size_t n = 0;

	while (n < FILTERS && filters[n].holds(c, r))
		n++;
	return n;
}

/* The most that a trap passes, of those that are of the rule's pest, farm and block, or
 * of the others; as soon as it is `enough`. Blocks are looked up for few: a book may
 * have thousands. */
static size_t most_passed(
	const struct log *l, const struct rule *r, bool inside, size_t enough)
{
	size_t most = 0;

	for (size_t i = 0; i < l->traps.n && most < enough; i++) {
		const struct trap *t = &l->traps.items[i];
		struct candidate c = { l, i, t, NULL };
		if ((of_pest(&c, r) && of_farm(&c, r) && of_block(&c, r)) != inside)
			continue;
		if (of_pest(&c, r))
			c.b = log_block(l, t->block);
		size_t n = passed(&c, r);
		most = n > most ? n : most;
	}
	return most;
}

/* A trap outside passes no more than what comes before its farm or block. */
static size_t enough_outside(const struct rule *r)
{
	return r->block ? BY_BLOCK : r->farm ? BY_FARM : BY_PEST;
}

static bool window_is_empty(const struct log *l, const struct rule *r)
{
	enum { A_YEAR = 366 };

	for (int32_t day = l->today - A_YEAR; day <= l->today + A_YEAR; day++)
		if (day_md_within(day_md(day), r->from, r->to))
			return false;
	return true;
}

static struct names names_of(const struct log *l, const struct rule *r)
{
	const struct pest *p = log_pest(l, r->pest);
	const struct farm *f = log_farm(l, r->farm);
	const struct block *b = log_block(l, r->block);
	const struct lure_kind *k = log_lure(l, r->lure);

	return (struct names){ p ? p->code : "", f ? f->name : "", b ? b->name : "",
		k ? words_shipped(k->name) : "", r };
}

void trial_never(const struct log *l, const struct rule *r, char *out, size_t size)
{
	const char *fault = rule_fault(r);
	const struct block *b = log_block(l, r->block);
	struct names names = names_of(l, r);
	size_t most = 0, outside = 0;

	text_copy(out, size, fault ? fault : "");
	if (fault)
		return;
	if (window_is_empty(l, r)) {
		text_copy(out, size, _("no day within a year lies in its window"));
		return;
	}
	if (b && r->farm && b->farm != r->farm) {
		snprintf(out, size, _("%s is no block of %s"), names.block, names.farm);
		return;
	}
	most = most_passed(l, r, true, FILTERS);
	if (most == FILTERS)
		return;
	outside = most_passed(l, r, false, enough_outside(r));
	filters[most > outside ? most : outside].says(&names, out, size);
}
