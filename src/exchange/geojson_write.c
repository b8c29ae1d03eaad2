#include "exchange/geojson.h"

#include "answers/entry_known.h"
#include "base/mem.h"
#include "base/terms.h"
#include "base/words.h"
#include "book/sources.h"

#include <jansson.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { DIGITS = 10 }; /* seven decimals of a longitude, 1 cm */

struct writing {
	struct buf *out;
	struct known known;
	size_t n;
};

/* Without memory jansson leaves out what it has no room for and says nothing. */
static void *take(size_t n)
{
	return mem_new(1, n);
}

static json_t *pair(double lat, double lon)
{
	return json_pack("[f, f]", lon, lat);
}

/* Twice its area in square degrees, also over the date line; above 0: counterclockwise,
 * as RFC 7946 asks. */
static double turn(const struct source *s)
{
	const struct corner *first = &s->outline[0];
	double sum = 0;

	for (size_t i = 0; i + 1 < s->n_outline; i++) {
		const struct corner *a = &s->outline[i], *b = a + 1;
		sum += remainder(a->lon - first->lon, 360) * (b->lat - first->lat) -
		       remainder(b->lon - first->lon, 360) * (a->lat - first->lat);
	}
	return sum;
}

/* Ends where it began. */
static json_t *ring(const struct source *s)
{
	json_t *all = json_array();
	bool backwards = turn(s) < 0;

	for (size_t i = 0; i <= s->n_outline; i++) {
		size_t at = i % s->n_outline;
		const struct corner *c =
			&s->outline[backwards && at ? s->n_outline - at : at];
		json_array_append_new(all, pair(c->lat, c->lon));
	}
	return all;
}

static json_t *place_of(const struct source *s)
{
	if (s->n_outline > 0)
		return json_pack(
			"{s:s, s:[o]}", "type", "Polygon", "coordinates", ring(s));
	return json_pack(
		"{s:s, s:o}", "type", "Point", "coordinates", pair(s->lat, s->lon));
}

static bool add(struct writing *w, json_t *feature, struct err *e)
{
	char *line = json_dumps(feature, JSON_COMPACT | JSON_REAL_PRECISION(DIGITS));

	json_decref(feature);
	if (!line)
		return err_set(e, ERR_BOOK, _("there is no memory left"));
	buf_add(w->out, w->n++ > 0 ? ",\n" : "\n");
	buf_add(w->out, line);
	free(line);
	return true;
}

static bool add_trap(struct writing *w, const struct trap *t, struct err *e)
{
	const struct block *b = known_block(&w->known, t->block);

	if (!t->has_position)
		return true;
	return add(w,
		json_pack("{s:s, s:{s:s, s:o}, s:{s:s, s:s, s:s, s:s, s:s, s:s}}",
			"type", "Feature", "geometry", "type", "Point", "coordinates",
			pair(t->lat, t->lon), "properties", "what", "trap", "farm",
			known_farm(&w->known, t->farm), "block", b ? b->name : "",
			"name", t->label, "pest", known_pest(&w->known, t->pest),
			"place", place_word(t->place)),
		e);
}

static bool add_source(struct writing *w, const struct source *s, struct err *e)
{
	if (s->n_outline == 0 && !s->has_position)
		return true;
	return add(w,
		json_pack("{s:s, s:o, s:{s:s, s:s, s:s, s:s}}", "type", "Feature",
			"geometry", place_of(s), "properties", "what", "source", "farm",
			known_farm(&w->known, s->farm), "name", s->name, "kind",
			source_kind_word(s->kind)),
		e);
}

bool geojson_export(struct book *b, int64_t farm, struct buf *out, struct err *e)
{
	struct writing w = { .out = out };
	struct sources sources = { 0 };
	bool ok = known_read(&w.known, b, e) && book_sources(b, farm, &sources, e);

	json_set_alloc_funcs(take, free);
	buf_add(out, "{\"type\":\"FeatureCollection\",\"features\":[");
	for (size_t i = 0; ok && i < w.known.traps.n; i++)
		if (farm == 0 || w.known.traps.items[i].farm == farm)
			ok = add_trap(&w, &w.known.traps.items[i], e);
	for (size_t i = 0; ok && i < sources.n; i++)
		ok = add_source(&w, &sources.items[i], e);
	buf_add(out, "\n]}\n");
	free(sources.items);
	known_free(&w.known);
	return ok;
}
