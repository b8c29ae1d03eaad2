/* gpx_parts.h - inside src/exchange: waypoints as they stand in a GPX file. */
#ifndef EXCHANGE_GPX_PARTS_H
#define EXCHANGE_GPX_PARTS_H

#include "exchange/gpx.h"

struct waypoint {
	char name[NAME_BYTES]; /* trimmed; "" none, or one too long for any trap */
	double lat, lon;
	int64_t line;
};

struct waypoints {
	struct waypoint *items;
	size_t n, cap;
};

/* Owns what it read; false with out->problems or *e as in gpx.h. */
bool gpx_read(const struct gpx_from *from, struct waypoints *points,
	struct imported *out, struct err *e);

/* Notes "file, line n: ..." among the problems. */
void gpx_problem(const struct gpx_from *from, int64_t line, struct imported *out,
	const char *what);

#endif
