/* verdicts_rules.c - which of the log's rules may hold for a trap at all: a book may
 * have one for each of its blocks, and nearly all of them are of others. */
#include "verdicts_parts.h"

#include "base/mem.h"

#include <stdlib.h>

static int by_block_and_turn(const void *a, const void *b)
{
	const struct rule_place *x = a, *y = b;

	if (x->block != y->block)
		return x->block < y->block ? -1 : 1;
	return (x->at > y->at) - (x->at < y->at);
}

struct rule_place *rules_by_block(const struct log *l)
{
	struct rule_place *all = mem_new(l->rules.n, sizeof *all);

	for (size_t i = 0; i < l->rules.n; i++)
		all[i] = (struct rule_place){ l->rules.items[i].block, i };
	if (l->rules.n > 1)
		qsort(all, l->rules.n, sizeof *all, by_block_and_turn);
	return all;
}

static size_t first_of_block(const struct rule_place *all, size_t n, int64_t block)
{
	size_t lo = 0, hi = n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		if (all[mid].block < block)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}

/* 0: of any. */
static bool is_of_pest(const struct rule *r, int64_t pest)
{
	return r->pest == 0 || r->pest == pest;
}

static void add_few(struct few *few, const struct log *l, size_t at)
{
	few->rules = mem_grow(few->rules, &few->cap, few->n + 1, sizeof *few->rules);
	few->at = mem_grow(few->at, &few->cap_at, few->n + 1, sizeof *few->at);
	few->rules[few->n] = l->rules.items[at];
	few->at[few->n++] = at;
}

void rules_find_few(const struct log *l, const struct rule_place *all,
	const struct trap *t, struct few *few)
{
	size_t n = l->rules.n, i = first_of_block(all, n, 0);
	size_t k = first_of_block(all, n, t->block);

	few->n = 0;
	while (true) {
		bool wide = i < n && all[i].block == 0;
		bool own = k < n && all[k].block == t->block;
		if (!wide && !own)
			return;
		bool takes_wide = wide && (!own || all[i].at < all[k].at);
		size_t at = takes_wide ? all[i++].at : all[k++].at;
		if (is_of_pest(&l->rules.items[at], t->pest))
			add_few(few, l, at);
	}
}

void rules_free_few(struct few *few)
{
	free(few->rules);
	free(few->at);
	*few = (struct few){ 0 };
}
