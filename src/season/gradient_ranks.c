/* gradient_ranks.c - the leg that knows ranks alone. */
#include "gradient_parts.h"

#include "base/mem.h"

#include <math.h>
#include <stdlib.h>

void gradient_rank(const double *x, size_t n, int32_t *out)
{
	for (size_t i = 0; i < n; i++) {
		out[i] = 1;
		for (size_t j = 0; j < n; j++)
			out[i] += x[j] < x[i] ? 2 : x[j] == x[i];
	}
}

static int32_t *ranks_of(const double *x, size_t n)
{
	int32_t *ranks = mem_new(n, sizeof *ranks);

	gradient_rank(x, n, ranks);
	return ranks;
}

double gradient_spearman(const double *x, const double *y, size_t n, double *s)
{
	int32_t *rx = ranks_of(x, n), *ry = ranks_of(y, n);
	int64_t xx = 0, yy = 0, xy = 0, apart = 0, middle = (int64_t)n + 1;

	for (size_t i = 0; i < n; i++) {
		int64_t dx = rx[i] - middle, dy = ry[i] - middle;
		xx += dx * dx;
		yy += dy * dy;
		xy += dx * dy;
		apart += (dx - dy) * (dx - dy);
	}
	free(rx);
	free(ry);
	if (s)
		*s = (double)apart / 4;
	return xx && yy ? (double)xy / sqrt((double)xx * (double)yy) : (double)NAN;
}

/* Grows with rho, and is exact: ties are ties. */
static int64_t product(
	const int32_t *far, const int32_t *rate, const size_t *order, size_t n)
{
	int64_t sum = 0;

	for (size_t i = 0; i < n; i++)
		sum += (int64_t)far[order[i]] * rate[i];
	return sum;
}

static void swap(size_t *a, size_t *b)
{
	size_t kept = *a;

	*a = *b;
	*b = kept;
}

static void first_order(size_t *order, size_t n)
{
	for (size_t i = 0; i < n; i++)
		order[i] = i;
}

/* The next of all orders as in a dictionary; false after the last. */
static bool next_order(size_t *order, size_t n)
{
	size_t at = n, with = n;

	while (at > 1 && order[at - 2] > order[at - 1])
		at--;
	if (at <= 1)
		return false;
	while (order[with - 1] < order[at - 2])
		with--;
	swap(&order[at - 2], &order[with - 1]);
	for (size_t from = at - 1, to = n - 1; from < to; from++, to--)
		swap(&order[from], &order[to]);
	return true;
}

/* As hot_shuffle draws its subsets, all n places drawn. */
static void draw_order(struct dice *d, size_t *order, size_t n)
{
	first_order(order, n);
	for (size_t i = 0; i < n; i++)
		swap(&order[i], &order[i + dice_below(d, n - i)]);
}

void gradient_shuffle(const int32_t *far, const int32_t *rate, size_t n, uint64_t seed,
	struct gradient *g)
{
	size_t *order = mem_new(n, sizeof *order);
	struct dice dice = { seed };

	first_order(order, n);
	int64_t seen = product(far, rate, order, n);
	g->as_low = g->of = 0;
	g->is_all = n <= (size_t)gradient_constants.all_orders_to;
	for (bool more = true; more; g->of++) {
		if (!g->is_all)
			draw_order(&dice, order, n);
		g->as_low += product(far, rate, order, n) <= seen;
		more = g->is_all ? next_order(order, n) : g->of + 1 < HOT_SHUFFLES;
	}
	free(order);
	int64_t more = g->is_all ? 0 : 1; /* the order seen is one of them */
	g->p = (double)(g->as_low + more) / (double)(g->of + more);
}
