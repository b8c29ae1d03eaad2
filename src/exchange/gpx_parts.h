/* gpx_parts.h - inside src/exchange: the waypoints of a GPX file. */
#ifndef EXCHANGE_GPX_PARTS_H
#define EXCHANGE_GPX_PARTS_H

#include "exchange/gpx.h"
#include "spots_parts.h"

/* Owns what it read; false with out->problems or *e as in gpx.h. */
bool gpx_read(FILE *file, const struct spots_from *from, struct spots *points,
	struct imported *out, struct err *e);

#endif
