/* hotspots_map.c - where the traps and the sources are, in metres, and whether the
 * catch falls away from a source. */
#include "hotspots_words.h"

#include "base/mem.h"
#include "base/plot.h"
#include "base/text.h"
#include "base/words.h"
#include "book/sources.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { CLASSES = 10 };

/* Upper ends of the classes below the last, moths per trap and week; the first is
 * none. */
static const double class_ends[CLASSES - 1] = { 0, 0.5, 1, 2, 3, 5, 8, 12, 20 };
static const char class_words[] =
	N_("0 none  1 under 0.5 a week  2 under 1  3 under 2  "
	   "4 under 3  5 under 5  6 under 8  7 under 12  "
	   "8 under 20  9 20 and more");

static int class_of(const struct hot_catch *c)
{
	double rate = 7.0 * (double)c->moths / (double)c->nights;
	int k = 1;

	if (c->moths == 0)
		return 0;
	while (k < CLASSES - 1 && rate >= class_ends[k])
		k++;
	return k;
}

static bool is_located(const struct log *l, const struct hot_take *t)
{
	return l->traps.items[t->trap].has_position;
}

static struct position position_of(const struct log *l, int trap)
{
	return (struct position){ l->traps.items[trap].lat, l->traps.items[trap].lon };
}

/* The plane of all located traps; false: there are none. */
static bool find_plane(
	const struct log *l, const struct hot_field *f, struct plane *plane)
{
	struct position *at = mem_new(f->n, sizeof *at);
	size_t n = 0;

	for (size_t i = 0; i < f->n; i++)
		if (is_located(l, &f->takes[i]))
			at[n++] = position_of(l, f->takes[i].trap);
	if (n > 0)
		*plane = ground_plane(at, n);
	free(at);
	return n > 0;
}

static void fill_trap(struct hot_trap *t, const struct log *l,
	const struct hot_take *take, size_t group)
{
	const struct trap *trap = &l->traps.items[take->trap];

	*t = (struct hot_trap){ .trap = take->trap,
		.block = trap->block,
		.has_position = trap->has_position,
		.is_alike = take->group == (int)group,
		.digit = -1,
		.catch = take->catch,
		.is_border = trap->place == PLACE_BORDER,
		.is_outside = trap->place == PLACE_OUTSIDE };
	text_copy(t->label, sizeof t->label, trap->label);
	const struct block *block = log_block(l, trap->block);
	snprintf(t->name, sizeof t->name, _("trap %s, %s"), trap->label,
		block ? block->name : "");
	text_copy(t->text, sizeof t->text, "-");
	if (take->catch.nights == 0)
		return;
	t->digit = class_of(&take->catch);
	words_print(t->text, sizeof t->text, "%.1f%s",
		7.0 * (double)take->catch.moths / (double)take->catch.nights,
		take->at_least ? "+" : "");
}

static void mark_near(struct hot_view *v, const struct log *l, size_t i)
{
	struct hot_trap *t = &v->traps[i];

	t->near = mem_new(v->n_traps, sizeof *t->near);
	for (size_t k = 0; k < v->n_traps; k++) {
		const struct hot_trap *o = &v->traps[k];
		if (t->is_alike && o->is_alike && t->has_position && o->has_position)
			t->near[k] = v->band > 0 &&
				     ground_distance(position_of(l, t->trap),
					     position_of(l, o->trap)) <= v->band;
	}
}

static void fill_traps(struct hot_view *v, const struct log *l,
	const struct hot_field *f, const struct plane *plane)
{
	v->traps = mem_new(f->n, sizeof *v->traps);
	v->n_traps = f->n;
	for (size_t i = 0; i < f->n; i++) {
		fill_trap(&v->traps[i], l, &f->takes[i], v->alike);
		if (plane && v->traps[i].has_position)
			v->traps[i].at =
				ground_point(plane, position_of(l, f->takes[i].trap));
	}
	for (size_t i = 0; i < f->n; i++)
		mark_near(v, l, i);
}

static const char *const notes[SOURCE_KIND_COUNT] = {
	[SOURCE_ABANDONED] = N_(
		"On untended trees nearly all fruit may be wormy, yet where it was "
		"studied abandoned orchards did not always matter. Border traps that "
		"catch out of step with the degree-days are one more clue."),
	[SOURCE_WILD] = N_("Wild and garden trees within about half a mile (800 m) are "
			   "worth finding. Ask before anything is cut."),
	[SOURCE_WOODLOT] =
		N_("Edges along woods often catch more, whatever grows there; "
		   "look for host trees in it first."),
	[SOURCE_BINS] =
		N_("Moths leave a pile of bins over many weeks, as it warms unevenly, "
		   "wooden bins far more than plastic. Traps near one often disagree "
		   "with the degree-days."),
	[SOURCE_OTHER] = "",
};

/* A pattern; whether any moth came from there it cannot show. */
static void say_note(struct hot_source *s)
{
	text_copy(s->note, sizeof s->note,
		_("A pattern is no proof that the moths come from there."));
	if (*notes[s->kind])
		hot_add(s->note, sizeof s->note, _(notes[s->kind]));
}

static void place_source(
	struct hot_source *s, const struct source *from, const struct plane *plane)
{
	s->has_point = from->has_position || from->n_outline > 0;
	s->n_outline = from->n_outline;
	for (size_t i = 0; i < from->n_outline; i++)
		s->outline[i] =
			ground_point(plane, (struct position){ from->outline[i].lat,
						    from->outline[i].lon });
	if (from->has_position) {
		s->at = ground_point(plane, (struct position){ from->lat, from->lon });
		return;
	}
	for (size_t i = 0; i < from->n_outline; i++) {
		s->at.x += s->outline[i].x / (double)from->n_outline;
		s->at.y += s->outline[i].y / (double)from->n_outline;
	}
}

static double metres_to(
	const struct source *s, const struct plane *plane, struct position at)
{
	struct position outline[OUTLINE_MAX];

	if (s->n_outline == 0)
		return ground_distance(at, (struct position){ s->lat, s->lon });
	for (size_t i = 0; i < s->n_outline; i++)
		outline[i] = (struct position){ s->outline[i].lat, s->outline[i].lon };
	return ground_to_outline(plane, at, outline, s->n_outline);
}

static void fill_gradient(struct hot_source *to, const struct source *s,
	const struct plane *plane, const struct hot_set *located)
{
	double *metres = mem_new(located->n, sizeof *metres);
	struct position *at = hot_positions(located);

	for (size_t i = 0; i < located->n; i++)
		metres[i] = metres_to(s, plane, at[i]);
	to->gradient = gradient_of(located->catches, metres, located->n,
		ground_spacing(at, located->n), HOT_SEED);
	free(metres);
	free(at);
}

/* plane NULL: no trap is located. v: with its traps. */
static void fill_source(struct hot_source *to, const struct source *s,
	const struct hot_view *v, const struct plane *plane,
	const struct hot_set *located)
{
	bool is_placed = s->has_position || s->n_outline > 0;

	*to = (struct hot_source){
		.id = s->id, .kind = s->kind, .gradient.say = GRADIENT_DISTANCES
	};
	text_copy(to->name, sizeof to->name, s->name);
	say_note(to);
	if (!is_placed)
		snprintf(to->says, sizeof to->says,
			_("%s has no position: nothing can be said of distance."),
			to->name);
	else if (v->n_alikes == 0)
		text_copy(to->says, sizeof to->says,
			_("No trap was read in this time: nothing can be said of "
			  "distance."));
	else if (!plane || located->n == 0)
		text_copy(to->says, sizeof to->says,
			_("None of the traps compared has a position: nothing can be "
			  "said of distance."));
	else {
		place_source(to, s, plane);
		fill_gradient(to, s, plane, located);
		hot_say_gradient(to, v);
	}
}

/* Letters in the order of the list: names sort them. */
static void fill_sources(struct hot_view *v, const struct sources *sources,
	const struct plane *plane, const struct hot_set *located)
{
	char letter = 'A';

	v->sources = mem_new(sources->n, sizeof *v->sources);
	v->n_sources = sources->n;
	for (size_t i = 0; i < sources->n; i++) {
		fill_source(&v->sources[i], &sources->items[i], v, plane, located);
		if (v->sources[i].has_point && letter <= 'Z')
			v->sources[i].letter = letter++;
	}
}

static void add_point(struct hot_points *p, struct point at)
{
	p->x[p->n] = at.x;
	p->y[p->n++] = at.y;
}

/* Sources go onto a map of the traps. */
static void add_source(struct hot_points *p, struct hot_source *s)
{
	s->is_on_map = s->letter && p->n_traps > 0 &&
		       plot_is_near(p->x, p->y, p->n_traps, s->at.x, s->at.y);
	if (!s->is_on_map)
		return;
	add_point(p, s->at);
	for (size_t i = 0; i < s->n_outline; i++)
		add_point(p, s->outline[i]);
}

static void fill_points(struct hot_view *v)
{
	struct hot_points *p = &v->points;
	size_t most = v->n_traps + v->n_sources * (OUTLINE_MAX + 1);

	p->x = mem_new(most, sizeof *p->x);
	p->y = mem_new(most, sizeof *p->y);
	for (size_t i = 0; i < v->n_traps; i++)
		if (v->traps[i].has_position)
			add_point(p, v->traps[i].at);
	p->n_traps = p->n;
	for (size_t i = 0; i < v->n_sources; i++)
		add_source(p, &v->sources[i]);
}

static void say_letters(struct hot_view *v)
{
	struct buf out = { 0 };

	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].letter)
			buf_addf(&out, "%s%c %s (%s%s)", out.n ? "  " : "",
				v->sources[i].letter, v->sources[i].name,
				_(source_kind_word(v->sources[i].kind)),
				v->sources[i].is_on_map ? "" : _(", off the map"));
	v->letters = out.text;
}

bool hot_fill_map(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_field *f, const struct hot_ask *ask, struct err *e)
{
	struct sources sources = { 0 };
	struct hot_set located;
	struct plane plane;

	if (!book_sources(b, ask->farm, &sources, e))
		return false;
	hot_set_of(&located, l, f, v->alike, HOT_LOCATED);
	bool has_plane = find_plane(l, f, &plane);
	v->band = hot_band(&located);
	v->classes = _(class_words);
	fill_traps(v, l, f, has_plane ? &plane : NULL);
	fill_sources(v, &sources, has_plane ? &plane : NULL, &located);
	fill_points(v);
	say_letters(v);
	hot_say_missing(v, &located);
	hot_set_free(&located);
	free(sources.items);
	return true;
}
