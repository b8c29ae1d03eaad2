#include "season/fruit.h"

#include "season/chance.h"

#include <assert.h>
#include <math.h>

/* What the one limit of a clean sample leaves out. */
static const double LEFT_OUT = 0.05;

int32_t fruit_hurt(const struct fruit_check *c)
{
	if (c->entered < 0)
		return -1;
	return c->stung < 0 ? c->entered : c->stung + c->entered;
}

struct fruit_share fruit_share(int32_t x, int32_t n)
{
	struct range r = chance_share(x, n);

	return (struct fruit_share){
		.lo = 100 * r.lo, .at = 100 * r.at, .hi = 100 * r.hi
	};
}

double fruit_clean_hi(int32_t n)
{
	assert(n >= 1);
	return -100 * expm1(log(LEFT_OUT) / n);
}
