/* ground.h - distances on the earth between traps and sources, and who is near whom.
 * Positions in degrees, WGS 84; distances in metres on a sphere of 6 371 008.8 m. */
#ifndef SEASON_GROUND_H
#define SEASON_GROUND_H

#include "season/hotspot.h"

struct position {
	double lat, lon; /* -90..90, -180..180 */
};

double ground_distance(struct position a, struct position b); /* haversine */

/* A local plane in metres, x east, y north, round the mean of n >= 1 positions (found
 * across the date line too: longitudes are taken relative to the first). Within a
 * degree of a pole it is laid on the pole, so that neighbours across it stay
 * neighbours. */
struct plane {
	struct position middle;
};
struct plane ground_plane(const struct position *at, size_t n);
struct point {
	double x, y;
};
struct point ground_point(const struct plane *p, struct position at);

/* Metres from a position to the nearest edge of an outline of n >= 3 corners, whichever
 * way round it was drawn, closed or not; 0 inside. */
double ground_to_outline(const struct plane *p, struct position at,
	const struct position *outline, size_t n);

/* Smallest distance at which each of n >= 2 positions has another; INFINITY when all
 * are at one point. */
double ground_band(const struct position *at, size_t n);
/* Smallest distance between two of n positions; those at one point count once. 0 when
 * there are no two. */
double ground_spacing(const struct position *at, size_t n);

/* Getis-Ord Gi* (Ord and Getis 1995) of item i: z of the sum of x over i and its
 * neighbours within band, the band itself included. NAN when all x are equal or all are
 * neighbours. */
double ground_gi_star(
	const double *x, const struct position *at, size_t n, double band, size_t i);
/* The same without i itself (Gi); NAN too when it has no neighbour. */
double ground_gi(
	const double *x, const struct position *at, size_t n, double band, size_t i);

#endif
