/* gradient.c - what may be said when both legs have spoken. */
#include "gradient_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdlib.h>

const struct gradient_constants gradient_constants = {
	.traps = 8,
	.distances = 5,
	.far_near = 3,
	.moths = 30,
	.spearman = 0.05,
	.all_orders_to = 8,
	.spacing = 0.5,
	.reach = 3,
	.step = 2,
	.stop = 1e-10,
	.rounds = 60,
};

static const char *const words[GRADIENT_COUNT] = {
	[GRADIENT_FALLS] = N_("falls"),
	[GRADIENT_FALLS_SOMEHOW] = N_("falls somehow"),
	[GRADIENT_TRAPS] = N_("too few traps"),
	[GRADIENT_DISTANCES] = N_("too few distances"),
	[GRADIENT_MOTHS] = N_("too few moths"),
	[GRADIENT_NEAREST] = N_("all in nearest"),
	[GRADIENT_NO_CHANGE] = N_("no clear change"),
	[GRADIENT_DISAGREE] = N_("legs disagree"),
	[GRADIENT_ONE_TRAP] = N_("one trap"),
};

const char *gradient_word(enum gradient_say s)
{
	return words[s];
}

struct look {
	const struct hot_catch *traps;
	const double *metres;
	double *mm; /* whole millimetres: the same on every machine */
	size_t n;
	double spacing;
};

static void look_round(const struct look *l, struct gradient *g)
{
	g->nearest = g->farthest = (double)NAN; /* fmin and fmax pass it by */
	for (size_t i = 0; i < l->n; i++) {
		l->mm[i] = round(l->metres[i] * 1000);
		g->moths += l->traps[i].moths;
		g->nearest = fmin(g->nearest, l->metres[i]);
		g->farthest = fmax(g->farthest, l->metres[i]);
	}
}

static void stand_on_slope(const struct look *l, struct gradient *g)
{
	struct slope s = gradient_fit(l->traps, l->metres, l->n, l->n);
	double ln2 = log(2);

	g->is_fitted = s.is_fitted;
	g->a = s.a;
	g->b = s.b;
	g->phi = s.phi;
	g->se = s.se;
	g->b_lo = s.lo;
	g->b_hi = s.hi;
	g->halving = (struct range){ (double)NAN, (double)NAN, (double)NAN };
	if (s.b < 0)
		g->halving = (struct range){ ln2 / -s.b, ln2 / -s.lo,
			s.hi < 0 ? ln2 / -s.hi : (double)INFINITY };
}

static void stand_on_ranks(const struct look *l, uint64_t seed, struct gradient *g)
{
	int32_t *far = mem_new(l->n, sizeof *far), *rank = mem_new(l->n, sizeof *rank);
	double *rate = mem_new(l->n, sizeof *rate);

	for (size_t i = 0; i < l->n; i++)
		rate[i] = (double)l->traps[i].moths / (double)l->traps[i].nights;
	gradient_rank(l->mm, l->n, far);
	gradient_rank(rate, l->n, rank);
	gradient_shuffle(far, rank, l->n, seed, g);
	g->rho = gradient_spearman(l->mm, rate, l->n, &g->s);
	free(far);
	free(rank);
	free(rate);
}

static int distances(const struct look *l)
{
	int different = 0;

	for (size_t i = 0; i < l->n; i++) {
		size_t j = 0;
		while (l->mm[j] != l->mm[i])
			j++;
		different += j == i;
	}
	return different;
}

static bool all_in_nearest(const struct look *l, const struct gradient *g)
{
	for (size_t i = 0; i < l->n; i++)
		if (l->traps[i].moths > 0 && l->mm[i] > round(g->nearest * 1000))
			return false;
	return true;
}

/* Without whichever trap caught most, each of them if several did. */
static bool holds_without_most(const struct look *l)
{
	int64_t most = 0;

	for (size_t i = 0; i < l->n; i++)
		if (l->traps[i].moths > most)
			most = l->traps[i].moths;
	for (size_t i = 0; i < l->n; i++) {
		if (l->traps[i].moths < most)
			continue;
		struct slope s = gradient_fit(l->traps, l->metres, l->n, i);
		if (!(s.hi < 0)) /* then b < 0 too; NAN holds nothing */
			return false;
	}
	return true;
}

static enum gradient_say say_of(const struct look *l, const struct gradient *g)
{
	const struct gradient_constants *k = &gradient_constants;

	if (g->n < k->traps)
		return GRADIENT_TRAPS;
	if (distances(l) < k->distances || g->farthest < k->far_near * g->nearest)
		return GRADIENT_DISTANCES;
	if (g->moths < k->moths)
		return GRADIENT_MOTHS;
	if (all_in_nearest(l, g))
		return GRADIENT_NEAREST;
	bool slope = g->is_fitted && g->b_hi < 0, ranks = g->p <= k->spearman;
	if (!slope && !ranks)
		return GRADIENT_NO_CHANGE;
	if (!slope || !ranks)
		return GRADIENT_DISAGREE;
	if (!holds_without_most(l))
		return GRADIENT_ONE_TRAP;
	bool told = g->halving.at >= k->spacing * l->spacing &&
		    g->halving.at <= k->reach * (g->farthest - g->nearest);
	return told ? GRADIENT_FALLS : GRADIENT_FALLS_SOMEHOW;
}

struct gradient gradient_of(const struct hot_catch *traps, const double *metres,
	size_t n, double spacing, uint64_t seed)
{
	struct look l = { traps, metres, mem_new(n, sizeof *l.mm), n, spacing };
	struct gradient g = { .n = (int)n };

	look_round(&l, &g);
	stand_on_slope(&l, &g);
	stand_on_ranks(&l, seed, &g);
	g.say = say_of(&l, &g);
	free(l.mm);
	return g;
}
