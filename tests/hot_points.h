/* hot_points.h - for views filled by hand: what has to have room on their maps. The
 * tests that fill them link no answers; one of answers holds this to hotspots_map.c. */
#ifndef TESTS_HOT_POINTS_H
#define TESTS_HOT_POINTS_H

#include "answers/hotspots.h"

enum { HOT_POINTS_MAX = 2 * OUTLINE_MAX + 64 };

static inline void hot_point(struct hot_points *p, struct point at)
{
	p->x[p->n] = at.x;
	p->y[p->n++] = at.y;
}

/* Again after each change of a position. All sources that have one are on the map. */
static inline void hot_points_fill(struct hot_view *v)
{
	static double x[HOT_POINTS_MAX], y[HOT_POINTS_MAX];

	v->points = (struct hot_points){ .x = x, .y = y };
	for (size_t i = 0; i < v->n_traps; i++)
		if (v->traps[i].has_position)
			hot_point(&v->points, v->traps[i].at);
	v->points.n_traps = v->points.n;
	for (size_t i = 0; i < v->n_sources; i++) {
		struct hot_source *s = &v->sources[i];

		s->is_on_map = s->has_point && v->points.n_traps > 0;
		if (s->is_on_map)
			hot_point(&v->points, s->at);
		for (size_t k = 0; s->is_on_map && k < s->n_outline; k++)
			hot_point(&v->points, s->outline[k]);
	}
}

#endif
