#include "answers/hotspots.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "hotspots_words.h"

#include <stdio.h>
#include <stdlib.h>

static void say_title(
	struct hot_view *v, const struct log *l, const struct hot_ask *ask)
{
	const struct farm *f = log_farm(l, ask->farm);
	const struct pest *p = log_pest(l, ask->pest);
	char flight[SAY_SHORT] = "";

	if (v->flight)
		snprintf(flight, sizeof flight, _(", flight %d"), v->flight);
	snprintf(v->title, sizeof v->title, _("%s · %s · season %d%s"),
		f ? f->name : "", p ? p->code : "", v->season, flight);
}

static void add_rows(struct hot_view *v, const struct log *l, const struct hot_field *f,
	struct hot_rows *rows)
{
	struct hot_set blocks, all, located;

	hot_set_of(&blocks, l, f, v->alike, HOT_IN_BLOCKS);
	hot_set_of(&all, l, f, v->alike, HOT_ALL);
	hot_set_of(&located, l, f, v->alike, HOT_LOCATED);
	hot_add_blocks(rows, &blocks, HOT_TOO_LITTLE);
	hot_say_power(rows, &blocks);
	hot_add_borders(rows, l, f, v->alike);
	hot_add_near(rows, &located, hot_band(&located));
	hot_add_traps(rows, &all);
	hot_say_clumping(v, &all);
	hot_set_free(&blocks);
	hot_set_free(&all);
	hot_set_free(&located);
}

static void take_rows(struct hot_view *v, struct hot_rows *rows)
{
	v->rows = rows->items;
	v->n = rows->n;
	v->cap = rows->cap;
}

static void say_whole(
	struct hot_view *v, const struct log *l, const struct hot_field *f)
{
	struct hot_set all;

	hot_set_of(&all, l, f, v->alike, HOT_ALL);
	hot_say_all(v, &all);
	hot_set_free(&all);
}

/* What hangs on a group of like traps; without one there is only the map. */
static void fill_group(struct hot_view *v, const struct log *l, struct hot_field *f)
{
	struct hot_rows rows = { 0 };

	v->alikes = f->alikes;
	v->n_alikes = f->n_alikes;
	f->alikes = NULL;
	if (v->n_alikes == 0)
		return;
	add_rows(v, l, f, &rows);
	take_rows(v, &rows);
	hot_say_others(v, l, f);
}

static bool fill_view(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_ask *ask, const struct hot_season *s, struct err *e)
{
	struct hot_field field;
	int alike = ask->alike;

	v->farm = ask->farm;
	v->season = s->year;
	v->n_flights = (int)s->found.n;
	v->flight = ask->flight >= 1 && ask->flight <= v->n_flights ? ask->flight : 0;
	say_title(v, l, ask);
	hot_field_take(&field, l, s, ask, hot_window_of(s, v->flight));
	v->alike = alike > 0 && (size_t)alike < field.n_alikes ? (size_t)alike : 0;
	hot_say_window(v, &field, v->alike);
	hot_say_left_out(v, l, &field, v->alike);
	fill_group(v, l, &field);
	bool ok = hot_fill_map(v, b, l, &field, ask, e);
	if (ok)
		hot_say_edges(v, l, s, hot_window_of(s, v->flight));
	ok = ok && (v->n_alikes == 0 || hot_fill_earlier(v, b, l, ask, s, e));
	if (ok)
		say_whole(v, l, &field);
	hot_field_free(&field);
	return ok;
}

bool hotspots_read(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e)
{
	struct hot_season season;

	hotspots_free(v);
	bool ok = hot_season_read(&season, b, l, ask, e) &&
		  fill_view(v, b, l, ask, &season, e);
	hot_season_free(&season);
	return ok;
}

void hotspots_free(struct hot_view *v)
{
	for (size_t i = 0; i < v->n_traps; i++)
		free(v->traps[i].near);
	free(v->traps);
	free(v->alikes);
	free(v->rows);
	free(v->sources);
	free(v->points.x);
	free(v->points.y);
	free(v->letters);
	*v = (struct hot_view){ 0 };
}
