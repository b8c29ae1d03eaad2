/* hotspot_shuffle.c - the permutation engine.
 * What a set caught above its share of the nights is y_S - e_S T/E. It is kept times E,
 * so that it is a whole number, the sum over the set of y_i E - e_i T. */
#include "hotspot_parts.h"

#include "base/mem.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* Traps that may stand for each other: n from `first` on, m of them in the set. */
struct pile {
	size_t first, n, m;
};

struct deck {
	int64_t *above; /* one a trap, pile by pile */
	struct pile *piles;
	size_t n, n_piles;
	int64_t observed; /* sum over the set */
};

static void deck_free(struct deck *d)
{
	free(d->above);
	free(d->piles);
}

/* The traps of one stratum in their order; what is in the set counts towards m. */
static struct pile gather(
	size_t *order, size_t at, size_t n, const bool *in, const int *stratum)
{
	struct pile p = { .first = at };
	size_t start = order[at];

	for (size_t i = start; i < n; i++)
		if (!stratum || stratum[i] == stratum[start]) {
			order[at + p.n++] = i;
			p.m += in[i];
		}
	return p;
}

static bool was_met(const int *stratum, size_t i)
{
	for (size_t j = 0; j < i; j++)
		if (!stratum || stratum[j] == stratum[i])
			return true;
	return false;
}

/* Piles in the order in which their strata are met. Those that cannot be shuffled, all
 * in the set or none, are left out. */
static void make_piles(
	struct deck *d, size_t *order, size_t n, const bool *in, const int *stratum)
{
	for (size_t i = 0; i < n; i++) {
		if (was_met(stratum, i))
			continue;
		order[d->n] = i;
		struct pile p = gather(order, d->n, n, in, stratum);
		if (p.m == 0 || p.m == p.n)
			continue;
		d->piles[d->n_piles++] = p;
		d->n += p.n;
	}
}

static void value_traps(struct deck *d, const size_t *order,
	const struct hot_catch *traps, const bool *in)
{
	int64_t moths = 0, nights = 0;

	for (size_t i = 0; i < d->n; i++) {
		moths += traps[order[i]].moths;
		nights += traps[order[i]].nights;
	}
	assert(moths <= INT32_MAX && nights <= INT32_MAX);
	for (size_t i = 0; i < d->n; i++) {
		const struct hot_catch *t = &traps[order[i]];
		d->above[i] = t->moths * nights - t->nights * moths;
		d->observed += in[order[i]] ? d->above[i] : 0;
	}
}

static struct deck deck_of(
	const struct hot_catch *traps, size_t n, const bool *in, const int *stratum)
{
	struct deck d = { .above = mem_new(n, sizeof *d.above),
		.piles = mem_new(n, sizeof *d.piles) };
	size_t *order = mem_new(n, sizeof *order);

	make_piles(&d, order, n, in, stratum);
	value_traps(&d, order, traps, in);
	free(order);
	return d;
}

static int64_t deck_subsets(const struct deck *d, int64_t most)
{
	int64_t ways = 1;

	for (size_t i = 0; i < d->n_piles && ways < most; i++) {
		const struct pile *p = &d->piles[i];
		/* both factors are at most `most`, which is small */
		ways *= hot_subsets((int)p->n, (int)p->m, most);
	}
	return ways < most ? ways : most;
}

/* How many ways to take `left` more from place i of pile p on, and the piles behind it,
 * bring the sum to the observed one or above. */
static int64_t count_high(
	const struct deck *d, size_t p, size_t i, size_t left, int64_t sum)
{
	int64_t count = 0;

	if (left == 0 && p + 1 == d->n_piles)
		return sum >= d->observed;
	if (left == 0) {
		const struct pile *next = &d->piles[p + 1];
		return count_high(d, p + 1, next->first, next->m, sum);
	}
	for (size_t end = d->piles[p].first + d->piles[p].n; i + left <= end; i++)
		count += count_high(d, p, i + 1, left - 1, sum + d->above[i]);
	return count;
}

/* Sum over m of n, drawn without putting back; they end up in front. */
static int64_t draw(int64_t *above, size_t n, size_t m, struct dice *dice)
{
	int64_t sum = 0;

	for (size_t i = 0; i < m; i++) {
		size_t j = i + (size_t)dice_below(dice, n - i);
		int64_t drawn = above[j];
		above[j] = above[i];
		above[i] = drawn;
		sum += drawn;
	}
	return sum;
}

/* Each shuffle starts from the traps in their order. */
static int64_t sample_high(const struct deck *d, int64_t shuffles, struct dice *dice)
{
	int64_t *above = mem_new(d->n, sizeof *above), count = 0;

	for (int64_t k = 0; k < shuffles; k++) {
		int64_t sum = 0;
		memcpy(above, d->above, d->n * sizeof *above);
		for (size_t i = 0; i < d->n_piles; i++) {
			const struct pile *p = &d->piles[i];
			sum += draw(above + p->first, p->n, p->m, dice);
		}
		count += sum >= d->observed;
	}
	free(above);
	return count;
}

static struct hot_shuffle all_of(const struct deck *d, int64_t ways)
{
	const struct pile *p = d->piles;
	struct hot_shuffle s = { .is_all = true, .as_high = 1, .of = ways };

	if (d->n_piles > 0)
		s.as_high = count_high(d, 0, p->first, p->m, 0);
	s.p = (double)s.as_high / (double)s.of;
	return s;
}

static struct hot_shuffle some_of(
	const struct deck *d, int64_t shuffles, struct dice *dice)
{
	struct hot_shuffle s = { .as_high = sample_high(d, shuffles, dice),
		.of = shuffles };

	s.p = (double)(s.as_high + 1) / (double)(s.of + 1);
	return s;
}

struct hot_shuffle hot_shuffle_by(const struct hot_catch *traps, size_t n,
	const bool *in, const int *stratum, struct hot_effort effort, struct dice *dice)
{
	assert(n <= HOT_TRAPS_MAX);
	struct deck d = deck_of(traps, n, in, stratum);
	int64_t ways = deck_subsets(&d, effort.all_to + 1);
	struct hot_shuffle s = ways <= effort.all_to ? all_of(&d, ways)
						     : some_of(&d, effort.sample, dice);
	deck_free(&d);
	return s;
}

struct hot_shuffle hot_shuffle(const struct hot_catch *traps, size_t n, const bool *in,
	const int *stratum, uint64_t seed)
{
	struct dice dice = { seed };

	return hot_shuffle_by(traps, n, in, stratum,
		(struct hot_effort){ HOT_ENUMERATE_MAX, HOT_SHUFFLES }, &dice);
}
