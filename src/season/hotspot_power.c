/* hotspot_power.c - how often a hot spot would be shown that is there. */
#include "hotspot_parts.h"

#include "base/mem.h"

#include <math.h>
#include <stdlib.h>

/* Enough to say "1 time in 3", within the blink of an eye. */
enum { POWER_FARMS = 400, POWER_ALL_TO = 1000, POWER_SHUFFLES = 199 };

/* A count of this mean and the spread k = 1, which makes it a geometric one. */
static int64_t uneven_count(struct dice *dice, double mean, int64_t most)
{
	double u = ((double)(dice_next(dice) >> 11) + 0.5) / 9007199254740992.0;
	double count = floor(log(u) / -log1p(1 / mean));

	return count < (double)most ? (int64_t)count : most;
}

static bool is_shown(
	const struct hot_catch *traps, size_t n, const bool *in, struct dice *dice)
{
	const struct hot_constants *c = &hot_constants;
	struct hot_split s = hot_split_of(traps, n, in);

	if (!hot_is_enough(&s) || hot_luck(&s) > c->luck ||
		!(hot_ratio_exact(&s).at >= c->ratio_named))
		return false;
	return hot_shuffle_by(traps, n, in, NULL,
		       (struct hot_effort){ POWER_ALL_TO, POWER_SHUFFLES }, dice)
		       .p <= c->clear;
}

double hot_power(int n, int n_in, double mean, double times)
{
	struct dice dice = { HOT_SEED };
	int shown = 0;

	if (n_in < 1 || n_in >= n || n > HOT_TRAPS_MAX || !(mean > 0) || !(times > 0))
		return 0;
	struct hot_catch *traps = mem_new((size_t)n, sizeof *traps);
	bool *in = mem_new((size_t)n, sizeof *in);
	for (int k = 0; k < POWER_FARMS; k++) {
		for (int i = 0; i < n; i++) {
			in[i] = i < n_in;
			traps[i].moths = uneven_count(
				&dice, in[i] ? mean * times : mean, INT32_MAX / n);
			traps[i].nights = 1;
		}
		shown += is_shown(traps, (size_t)n, in, &dice);
	}
	free(traps);
	free(in);
	return (double)shown / POWER_FARMS;
}
