/* geojson_parts.h - inside src/exchange: the features of a GeoJSON file. */
#ifndef EXCHANGE_GEOJSON_PARTS_H
#define EXCHANGE_GEOJSON_PARTS_H

#include "base/source.h"
#include "exchange/geojson.h"
#include "spots_parts.h"

enum shape { SHAPE_POINT, SHAPE_OUTLINE };

struct feature {
	struct spot
		spot; /* name and where it stands in the file; of a point its place */
	char farm[NAME_BYTES]; /* "": the file does not say */
	bool is_source;        /* it says so: by `what`, or by a kind of ours */
	bool is_trap;          /* it says so */
	bool has_kind;
	enum source_kind kind;
	enum shape shape;
	size_t n_outline;
	struct corner outline[OUTLINE_MAX];
};

struct features {
	struct feature *items;
	size_t n, cap;
};

/* Owns what it read; false with out->problems or *e as in geojson.h. */
bool geojson_read(FILE *file, const struct spots_from *from, struct features *features,
	struct imported *out, struct err *e);

#endif
