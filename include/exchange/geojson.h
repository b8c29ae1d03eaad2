/* geojson.h - the traps and sources of farms on the maps of other programs: a GeoJSON
 * FeatureCollection (RFC 7946), longitude before latitude, degrees, WGS 84. Traps are
 * points, a source is a point or, where its outline is known, a polygon. */
#ifndef EXCHANGE_GEOJSON_H
#define EXCHANGE_GEOJSON_H

#include "exchange/exchange.h"

enum {
	GEOJSON_BYTES_MAX = 16 * 1024 * 1024, /* of a file */
	GEOJSON_FEATURES_MAX = 20000,
};

struct geojson_from {
	FILE *file;       /* borrowed */
	const char *name; /* for messages */
	int64_t farm;     /* whose traps and sources are meant */
};

/* Takes features by the `name` (or `Name`, `label`) of their properties: all or none,
 * in one transaction. A point called as a trap of the farm becomes its position. A
 * point or polygon called as a source of the farm becomes that of the source; a polygon
 * of another name, or a feature whose property `kind` is a word of base/source.h, is a
 * new source. Nothing else of the book changes. out: n_new, n_changed, n_same; a note
 * of the traps that the file lacks; warnings of features that are passed over (other
 * shapes, other farms by their property `farm`, names that the farm lacks), of holes
 * that are left out and of positions far from the traps. False with ERR_INPUT
 * (out->problems may hold lines): no GeoJSON or not well formed, too long, coordinates
 * of another system, a name twice, degrees out of range, more corners than an outline
 * has, nothing of the farm in it. Zero-initialise out; free it in any case. */
bool geojson_import(struct book *b, const struct geojson_from *from,
	struct imported *out, struct err *e);

/* The located traps in driving order, then the located sources, of a farm (0: all), a
 * feature a line, with the properties what (trap, source), farm and name; of a trap
 * also block, pest and place, of a source kind. */
bool geojson_export(struct book *b, int64_t farm, struct buf *out, struct err *e);

#endif
