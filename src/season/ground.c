#include "season/ground.h"

#include <math.h>

static const double EARTH = 6371008.8; /* mean radius of WGS 84 in metres */
static const double PI = 3.14159265358979323846;
static const double POLAR = 89; /* from here on the meridians run together too fast */

static double radians(double degrees)
{
	return degrees * (PI / 180);
}

/* The shorter way round. */
static double east_of(double from, double lon)
{
	return remainder(lon - from, 360);
}

double ground_distance(struct position a, struct position b)
{
	double north = sin(radians(b.lat - a.lat) / 2);
	double east = sin(radians(b.lon - a.lon) / 2);
	double h = north * north +
		   cos(radians(a.lat)) * cos(radians(b.lat)) * (east * east);

	return 2 * EARTH * asin(fmin(1, sqrt(h)));
}

struct plane ground_plane(const struct position *at, size_t n)
{
	double lat = 0, east = 0;

	for (size_t i = 0; i < n; i++) {
		lat += at[i].lat;
		east += east_of(at[0].lon, at[i].lon);
	}
	return (struct plane){ { .lat = lat / (double)n,
		.lon = east_of(0, at[0].lon + east / (double)n) } };
}

/* Distance and direction from the pole, seen from the middle. */
static struct point polar_point(const struct plane *p, struct position at, double east)
{
	double pole = p->middle.lat > 0 ? 1 : -1;
	double own = EARTH * radians(90 - pole * p->middle.lat);
	double far = EARTH * radians(90 - pole * at.lat);

	return (struct point){ far * sin(east), pole * (own - far * cos(east)) };
}

struct point ground_point(const struct plane *p, struct position at)
{
	double east = radians(east_of(p->middle.lon, at.lon));

	if (fabs(p->middle.lat) > POLAR)
		return polar_point(p, at, east);
	return (struct point){ EARTH * cos(radians(p->middle.lat)) * east,
		EARTH * radians(at.lat - p->middle.lat) };
}

/* Metres from `at` to the edge between two corners, which may be the same. */
static double to_edge(struct point at, struct point from, struct point to)
{
	double x = to.x - from.x, y = to.y - from.y, along = 0;
	double length = x * x + y * y;

	if (length > 0)
		along = ((at.x - from.x) * x + (at.y - from.y) * y) / length;
	along = fmin(1, fmax(0, along));
	return hypot(at.x - from.x - along * x, at.y - from.y - along * y);
}

/* Does a ray from `at` to the east cross the edge? */
static bool crosses(struct point at, struct point from, struct point to)
{
	if ((from.y > at.y) == (to.y > at.y))
		return false;
	return at.x < from.x + (at.y - from.y) / (to.y - from.y) * (to.x - from.x);
}

double ground_to_outline(const struct plane *p, struct position at,
	const struct position *outline, size_t n)
{
	struct point self = ground_point(p, at), from = ground_point(p, outline[n - 1]);
	double least = (double)INFINITY;
	bool inside = false;

	for (size_t i = 0; i < n; i++) {
		struct point to = ground_point(p, outline[i]);

		least = fmin(least, to_edge(self, from, to));
		if (crosses(self, from, to))
			inside = !inside;
		from = to;
	}
	return inside ? 0 : least;
}
