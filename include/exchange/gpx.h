/* gpx.h - positions of traps from and to the waypoints of a GPX file, the open exchange
 * format of satellite receivers (GPX 1.1, topografix.com/GPX/1/1): <wpt lat lon> in
 * degrees, WGS 84, with its <name>. */
#ifndef EXCHANGE_GPX_H
#define EXCHANGE_GPX_H

#include "exchange/exchange.h"

enum {
	GPX_BYTES_MAX = 64 * 1024 * 1024, /* of a file; tracks are long */
	GPX_WAYPOINTS_MAX = 20000,
};

struct gpx_from {
	FILE *file;       /* borrowed */
	const char *name; /* for messages */
	int64_t farm;     /* whose traps are meant */
};

/* Gives each trap of the farm whose label is the name of a waypoint, blanks around it
 * left out, that position, and changes nothing else: all or none, in one transaction.
 * Routes and tracks are passed over. out: n_changed, n_same; a note of the traps that
 * the file lacks; a warning for waypoints that are no trap and for positions far from
 * the rest. False with ERR_INPUT (out->problems may hold lines): not GPX or not well
 * formed, too long, a name twice, degrees out of range, no waypoint that is a trap. A
 * file with a document type, which GPX does not have, is refused: so no entity is ever
 * expanded and nothing else is read. Zero-initialise out; free it in any case. */
bool gpx_import(struct book *b, const struct gpx_from *from, struct imported *out,
	struct err *e);

/* The located traps of the farm as waypoints, in driving order. */
bool gpx_export(struct book *b, int64_t farm, struct buf *out, struct err *e);

#endif
