/* hotspot_many.c - many sets looked at together. */
#include "season/hotspot.h"

#include "base/mem.h"

#include <math.h>
#include <stdlib.h>

struct ranked {
	double p;
	size_t at;
};

static int by_p(const void *a, const void *b)
{
	const struct ranked *x = a, *y = b;

	return x->p != y->p ? (x->p > y->p) - (x->p < y->p)
			    : (x->at > y->at) - (x->at < y->at);
}

/* Smallest first; the caller frees it. */
static struct ranked *rank(const double *p, size_t n)
{
	struct ranked *r = mem_new(n, sizeof *r);

	for (size_t i = 0; i < n; i++)
		r[i] = (struct ranked){ p[i], i };
	qsort(r, n, sizeof *r, by_p);
	return r;
}

void hot_holm(const double *p, size_t n, double *out)
{
	struct ranked *r = rank(p, n);
	double high = 0;

	for (size_t i = 0; i < n; i++) {
		high = fmax(high, fmin(1, (double)(n - i) * r[i].p));
		out[r[i].at] = high;
	}
	free(r);
}

void hot_bh(const double *p, size_t n, double *out)
{
	struct ranked *r = rank(p, n);
	double low = 1;

	for (size_t i = n; i-- > 0;) {
		low = fmin(low, (double)n * r[i].p / (double)(i + 1));
		out[r[i].at] = low;
	}
	free(r);
}
