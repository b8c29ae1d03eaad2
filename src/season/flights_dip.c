/* flights_dip.c - the exact test whether a dip parts two peaks. */
#include "season/flights.h"

/* Terms beyond this part of the sum so far no longer change it. */
static const double NOTHING_LEFT = 1e-20;

/* P(X >= k) for X of n moths, each in the peak's nights with odds to 1. The terms are
 * taken relative to the most likely one, so that nothing overflows and no factorial is
 * needed: both sums hold the same unknown factor. */
static double upper_tail(int64_t n, int64_t k, double odds)
{
	int64_t mode = (int64_t)((double)(n + 1) * (odds / (1 + odds)));
	if (mode > n)
		mode = n;
	double term = 1, all = 1, tail = mode >= k ? 1 : 0;

	for (int64_t i = mode + 1; i <= n; i++) {
		term *= (double)(n - i + 1) / (double)i * odds;
		all += term;
		if (i >= k)
			tail += term;
		if (term <= NOTHING_LEFT * (i >= k ? tail : 0))
			break;
	}
	term = 1;
	for (int64_t i = mode - 1; i >= 0 && term > NOTHING_LEFT * all; i--) {
		term *= (double)(i + 1) / ((double)(n - i) * odds);
		all += term;
		if (i >= k)
			tail += term;
	}
	return tail / all;
}

double flight_dip_p(int32_t peak_moths, double peak_nights, int32_t valley_moths,
	double valley_nights)
{
	if (!(peak_nights > 0) || !(valley_nights > 0) || peak_moths <= 0 ||
		valley_moths < 0)
		return 1;
	return upper_tail((int64_t)peak_moths + valley_moths, peak_moths,
		peak_nights / valley_nights);
}
