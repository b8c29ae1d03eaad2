#include "map_points.h"

#include "base/mem.h"
#include "base/plot.h"
#include "base/words.h"

#include <stdlib.h>

static void add_point(struct map_points *m, struct point at)
{
	m->x[m->n] = at.x;
	m->y[m->n++] = at.y;
}

bool map_shows(const struct map_points *m, const struct hot_source *s)
{
	return s->letter && s->has_point &&
	       plot_is_near(m->x, m->y, m->n_traps, s->at.x, s->at.y);
}

void map_points_of(struct map_points *m, const struct hot_view *v)
{
	size_t most = v->n_traps + v->n_sources * (OUTLINE_MAX + 1);

	*m = (struct map_points){ .x = mem_new(most, sizeof *m->x),
		.y = mem_new(most, sizeof *m->y) };
	for (size_t i = 0; i < v->n_traps; i++)
		if (v->traps[i].has_position)
			add_point(m, v->traps[i].at);
	m->n_traps = m->n;
	for (size_t i = 0; m->n_traps > 0 && i < v->n_sources; i++) {
		const struct hot_source *s = &v->sources[i];
		if (!map_shows(m, s))
			continue;
		add_point(m, s->at);
		for (size_t k = 0; k < s->n_outline; k++)
			add_point(m, s->outline[k]);
	}
}

void map_say_sources(
	const struct map_points *m, const struct hot_view *v, struct buf *out)
{
	buf_add(out, "");
	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].letter && v->sources[i].has_point)
			buf_addf(out, "%s%c %s (%s%s)", out->n ? "  " : "",
				v->sources[i].letter, v->sources[i].name,
				_(source_kind_word(v->sources[i].kind)),
				map_shows(m, &v->sources[i]) ? "" : _(", off the map"));
}

void map_points_free(struct map_points *m)
{
	free(m->x);
	free(m->y);
	*m = (struct map_points){ 0 };
}
