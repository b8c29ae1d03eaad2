/* flights_vectors.h - counts by week and what the rule makes of them.
 * Computed by an independent program with general-purpose libraries (SciPy 1.10.1:
 * find_peaks, peak_prominences, binomial tail; NumPy 1.24.2), not published. 28
 * trap-nights in every week; -1 is a week that nobody looked. */
#ifndef TESTS_REFERENCE_FLIGHTS_VECTORS_H
#define TESTS_REFERENCE_FLIGHTS_VECTORS_H

#include "season/flights.h"

enum { VECTOR_WEEKS = 20, VECTOR_FLIGHTS = 3 };

static const struct vector {
	const char *id, *why;
	int n;
	int moths[VECTOR_WEEKS];
	int n_flights;
	int peaks[VECTOR_FLIGHTS], valleys[VECTOR_FLIGHTS];
	double split_p[VECTOR_FLIGHTS];
	struct {
		int first, last, moths;
		double d10, d50, d90;
		unsigned flags;
	} flights[VECTOR_FLIGHTS];
	int n_candidates;
	struct flight_candidate candidates[VECTOR_FLIGHTS];
} vectors[] = {
	{ "F01", "two clean flights", 18,
		{ 0, 2, 9, 20, 31, 22, 10, 4, 1, 0, 3, 12, 26, 30, 17, 6, 2, 0 }, 2,
		{ 4, 13 }, { 9 }, { 9.459167647e-18 },
		{ { 0, 9, 99, 20.14444444, 32.17741935, 45.57, 0 },
			{ 10, 17, 96, 80.85, 92.63333333, 104.3411765, 0 } },
		2, { { 4, 6.5, 6.5 }, { 13, 6.4375, 6.1875 } } },
	{ "F02", "flat top of two weeks", 6, { 0, 3, 12, 12, 3, 0 }, 1, { 2 }, { 0 },
		{ 0 }, { { 0, 5, 30, 14, 21, 28, 0 } }, 1, { { 2, 2.4375, 2.4375 } } },
	{ "F03", "flat after smoothing", 5, { 0, 4, 0, 4, 0 }, 1, { 2 }, { 0 }, { 0 },
		{ { 0, 4, 8, 8.4, 14, 26.6, FLIGHT_TOO_FEW } }, 1,
		{ { 2, 0.5, 0.5 } } },
	{ "F04", "one missing week near the top", 10,
		{ 0, 2, 9, 20, -1, 22, 10, 4, 1, 0 }, 1, { 4 }, { 0 }, { 0 },
		{ { 0, 9, 68, 19.36666667, 32.5, 46.27, FLIGHT_GAP_AT_PEAK } }, 1,
		{ { 4, 5.25, 5.25 } } },
	{ "F05", "two unobserved weeks where the valley should be: one flight", 12,
		{ 0, 5, 20, 30, 15, -1, -1, 16, 28, 14, 3, 0 }, 1, { 3 }, { 0 }, { 0 },
		{ { 0, 11, 131, 17.92, 40.02173913, 63.4, 0 } }, 2,
		{ { 3, 5.9375, 5.9375 }, { 8, 5.375, 1.541666667 } } },
	{ "F06", "single-week spike", 7, { 1, 0, 1, 40, 1, 0, 1 }, 1, { 3 }, { 0 },
		{ 0 }, { { 0, 6, 44, 21.42, 24.5, 27.58, FLIGHT_SPIKE } }, 3,
		{ { 0, 0.1666666667, 0.04166666667 }, { 3, 5.125, 5.125 },
			{ 6, 0.1666666667, 0.04166666667 } } },
	{ "F07", "zero run, odd", 13, { 0, 8, 20, 8, 0, 0, 0, 0, 0, 6, 18, 7, 0 }, 2,
		{ 2, 10 }, { 6 }, { 4.656612873e-10 },
		{ { 0, 6, 36, 10.15, 17.5, 24.85, 0 },
			{ 7, 12, 31, 66.61666667, 73.69444444, 80.9, 0 } },
		2, { { 2, 3.5, 3.5 }, { 10, 3.0625, 3.0625 } } },
	{ "F08", "zero run, even", 12, { 0, 8, 20, 8, 0, 0, 0, 0, 6, 18, 7, 0 }, 2,
		{ 2, 9 }, { 5 }, { 4.656612873e-10 },
		{ { 0, 5, 36, 10.15, 17.5, 24.85, 0 },
			{ 6, 11, 31, 59.61666667, 66.69444444, 73.9, 0 } },
		2, { { 2, 3.5, 3.5 }, { 9, 3.0625, 3.0625 } } },
	{ "F09", "highest in the very first week", 6, { 30, 18, 7, 2, 0, 0 }, 1, { 0 },
		{ 0 }, { 0 }, { { 0, 5, 57, 1.33, 6.65, 17.3, FLIGHT_OPEN_START } }, 1,
		{ { 0, 6.5, 6.5 } } },
	{ "F10", "still rising at the end", 6, { 0, 0, 2, 6, 15, 29 }, 1, { 5 }, { 0 },
		{ 0 },
		{ { 0, 5, 52, 24.73333333, 35.72413793, 40.74482759,
			FLIGHT_STILL_RISING } },
		1, { { 5, 6.083333333, 6.083333333 } } },
	{ "F11", "7 moths", 10, { 0, 1, 2, 1, 0, 0, 1, 1, 1, 0 }, 1, { 2 }, { 0 },
		{ 0 }, { { 0, 9, 7, 11.9, 24.5, 58.1, FLIGHT_TOO_FEW } }, 2,
		{ { 2, 0.375, 0.375 }, { 7, 0.25, 0.1875 } } },
	{ "F12", "one cold week inside a flight", 9, { 0, 6, 20, 25, 6, 22, 18, 5, 0 },
		1, { 3 }, { 0 }, { 0 }, { { 0, 8, 102, 15.47, 28, 46.97777778, 0 } }, 2,
		{ { 3, 4.75, 4.75 }, { 5, 4.25, 0.5625 } } },
	{ "F13", "three flights, the third weak", 19,
		{ 0, 10, 30, 50, 30, 8, 2, 6, 20, 33, 20, 7, 1, 2, 8, 14, 8, 2, 0 }, 3,
		{ 3, 9, 15 }, { 6, 12 }, { 3.618681533e-10, 0.001110716887 },
		{ { 0, 6, 130, 14.7, 24.5, 34.3, 0 },
			{ 7, 12, 87, 56.945, 66.71212121, 76.755, 0 },
			{ 13, 18, 34, 99.225, 108.5, 117.775, 0 } },
		3, { { 3, 10, 10 }, { 9, 6.625, 5.5 }, { 15, 2.75, 2.0625 } } },
	{ "F14", "two equal peaks", 11, { 0, 5, 15, 5, 1, 0, 1, 5, 15, 5, 0 }, 2,
		{ 2, 8 }, { 5 }, { 2.823770046e-06 },
		{ { 0, 5, 26, 10.64, 17.73333333, 25.76, 0 },
			{ 6, 10, 26, 51.24, 59.26666667, 66.36, 0 } },
		2, { { 2, 2.5, 2.5 }, { 8, 2.5, 2.5 } } },
	{ "F15", "all zero", 4, { 0, 0, 0, 0 }, 0, { 0 }, { 0 }, { 0 }, { { 0 } }, 0,
		{ { 0 } } },
	{ "F16", "one week only", 1, { 7 }, 1, { 0 }, { 0 }, { 0 },
		{ { 0, 0, 7, 0.7, 3.5, 6.3,
			FLIGHT_OPEN_START | FLIGHT_STILL_RISING | FLIGHT_SPIKE |
				FLIGHT_TOO_FEW } },
		1, { { 0, 1.75, 1.75 } } },
	{ "F17", "two weeks only", 2, { 7, 3 }, 1, { 0 }, { 0 }, { 0 },
		{ { 0, 1, 10, 1, 5, 11.66666667,
			FLIGHT_OPEN_START | FLIGHT_NOT_FINISHED | FLIGHT_SPIKE } },
		1, { { 0, 1.416666667, 1.416666667 } } },
	{ "F18", "constant", 5, { 5, 5, 5, 5, 5 }, 1, { 2 }, { 0 }, { 0 },
		{ { 0, 4, 25, 3.5, 17.5, 31.5,
			FLIGHT_OPEN_START | FLIGHT_NOT_FINISHED } },
		1, { { 2, 1.25, 1.25 } } },
	{ "F19", "nobody looked", 2, { -1, -1 }, 0, { 0 }, { 0 }, { 0 }, { { 0 } }, 0,
		{ { 0 } } },
	{ "F20", "unobserved weeks at both ends are trimmed", 6, { -1, 2, 9, 4, 0, -1 },
		1, { 2 }, { 0 }, { 0 },
		{ { 1, 4, 15, 12.25, 18.27777778, 25.375, FLIGHT_OPEN_START } }, 1,
		{ { 2, 1.5, 1.5 } } },
	{ "F21",
		"prominence exactly half: kept (compare with 1e-12 slack); smoothed 2, "
		"0.5, 1, 0.5, 2 at weeks 2, 4, 5, 6, 8",
		11, { 0, 0, 16, 0, 0, 8, 0, 0, 16, 0, 0 }, 3, { 2, 5, 8 }, { 4, 6 },
		{ 0.00390625, 0.00390625 },
		{ { 0, 4, 16, 14.7, 17.5, 20.3, FLIGHT_SPIKE },
			{ 5, 6, 8, 35.7, 38.5, 41.3, FLIGHT_SPIKE | FLIGHT_TOO_FEW },
			{ 7, 10, 16, 56.7, 59.5, 62.3, FLIGHT_SPIKE } },
		3, { { 2, 2, 2 }, { 5, 1, 0.5 }, { 8, 2, 2 } } },
	{ "F22",
		"equal peaks, shallow dip, many moths: one flight (prominence alone "
		"would keep both)",
		10, { 0, 100, 300, 300, 200, 200, 300, 300, 100, 0 }, 1, { 3 }, { 0 },
		{ 0 }, { { 0, 9, 1800, 15.86666667, 35, 54.13333333, 0 } }, 2,
		{ { 3, 68.75, 68.75 }, { 6, 68.75, 68.75 } } },
};

#endif
