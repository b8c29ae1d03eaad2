/* map_points.h - inside src/paper: what both maps of a farm's traps and sources show. */
#ifndef PAPER_MAP_POINTS_H
#define PAPER_MAP_POINTS_H

#include "answers/hotspots.h"
#include "base/buf.h"

struct map_points {
	double *x, *y;     /* metres; owned */
	size_t n, n_traps; /* all; the first of them are of traps */
};

/* Traps with a position, then the sources near them with their outlines. */
void map_points_of(struct map_points *m, const struct hot_view *v);
/* A source far away is left off: the traps are what the map is for. */
bool map_shows(const struct map_points *m, const struct hot_source *s);
/* "A Bin yard (bins)  B Withy Garth (abandoned, off the map)"; "" without any. */
void map_say_sources(
	const struct map_points *m, const struct hot_view *v, struct buf *out);
void map_points_free(struct map_points *m);

#endif
