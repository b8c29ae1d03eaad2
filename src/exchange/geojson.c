#include "geojson_parts.h"

#include "answers/far.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/places.h"
#include "book/sources.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

/* The features of a file meet the traps and sources of one farm. */
struct mapping {
	struct meeting traps;
	struct sources sources;    /* of the farm, as they are to be */
	const struct feature **of; /* by source; NULL: the file lacks it */
	size_t of_cap, n_met;
	struct names names;  /* index in sources */
	int64_t n_elsewhere; /* features of other farms */
};

static bool begin(struct mapping *m, struct book *b, struct err *e)
{
	if (!meeting_begin(&m->traps, b, e) ||
		!book_sources(b, m->traps.from->farm, &m->sources, e))
		return false;
	m->of = mem_grow(m->of, &m->of_cap, m->sources.n + 1, sizeof *m->of);
	for (size_t i = 0; i < m->sources.n; i++) {
		m->of[i] = NULL;
		names_add(&m->names, 0, m->sources.items[i].name, (int64_t)i);
	}
	return true;
}

static void end(struct mapping *m)
{
	meeting_end(&m->traps);
	names_free(&m->names);
	free(m->sources.items);
	free(m->of);
}

static size_t add_source(struct mapping *m, const struct feature *f)
{
	struct sources *all = &m->sources;
	struct source *s;

	all->items = mem_grow(all->items, &all->cap, all->n + 1, sizeof *all->items);
	m->of = mem_grow(m->of, &m->of_cap, all->n + 1, sizeof *m->of);
	s = &all->items[all->n];
	*s = (struct source){ .farm = m->traps.from->farm, .kind = SOURCE_OTHER };
	text_copy(s->name, sizeof s->name, f->spot.name);
	names_add(&m->names, 0, s->name, (int64_t)all->n);
	m->of[all->n] = NULL;
	return all->n++;
}

static void complain_of_twice(struct mapping *m, const struct feature *f, int64_t there)
{
	struct buf what = { 0 };

	buf_addf(&what,
		_("the source \"%s\" is in the file twice, as feature %lld too; a farm "
		  "has it once"),
		f->spot.name, (long long)m->of[there]->spot.at);
	spots_problem(m->traps.from, f->spot.at, m->traps.out, what.text);
	buf_free(&what);
}

static void add_to_sources(struct mapping *m, const struct feature *f)
{
	int64_t i = names_find(&m->names, 0, f->spot.name);

	if (!*f->spot.name) {
		spots_warn(m->traps.from, f->spot.at, m->traps.out,
			_("a source needs a name of at most 47 bytes; it was passed over"));
		return;
	}
	if (i >= 0 && m->of[i]) {
		complain_of_twice(m, f, i);
		return;
	}
	if (i < 0)
		i = (int64_t)add_source(m, f);
	m->of[i] = f;
	m->n_met++;
}

static bool is_source(const struct mapping *m, const struct feature *f)
{
	if (f->is_source || f->is_trap)
		return f->is_source;
	return f->shape == SHAPE_OUTLINE ||
	       (names_find(&m->traps.labels, 0, f->spot.name) < 0 &&
		       names_find(&m->names, 0, f->spot.name) >= 0);
}

static void add(struct mapping *m, const struct feature *f)
{
	if (*f->farm && strcmp(f->farm, m->traps.farm) != 0)
		m->n_elsewhere++;
	else if (is_source(m, f))
		add_to_sources(m, f);
	else if (f->shape == SHAPE_POINT)
		meeting_add(&m->traps, &f->spot);
	else
		spots_warn(m->traps.from, f->spot.at, m->traps.out,
			_("a trap hangs at a point and has no outline; it was passed "
			  "over"));
}

static bool nothing_fits(const struct mapping *m, struct err *e)
{
	return err_set(e, ERR_INPUT,
		_("%s: no point is called as a trap or a source of %s, and no outline "
		  "has a name"),
		m->traps.from->name, m->traps.farm);
}

static void draw_over(const struct feature *f, struct source *s)
{
	if (f->has_kind)
		s->kind = f->kind;
	if (f->shape == SHAPE_POINT) {
		s->has_position = true;
		s->lat = f->spot.lat;
		s->lon = f->spot.lon;
		return;
	}
	s->n_outline = f->n_outline;
	memcpy(s->outline, f->outline, sizeof s->outline);
}

/* RFC 7946 gives a ring its direction, the book keeps that of who entered it: one that
 * comes the other way round is the same ground. */
static void keep_direction(const struct source *before, struct source *s)
{
	struct source turned = *s;

	for (size_t i = 1; i < s->n_outline; i++)
		turned.outline[i] = s->outline[s->n_outline - i];
	if (places_same(before, &turned))
		*s = turned;
}

static bool put_source(struct mapping *m, struct book *b, size_t i, struct err *e)
{
	struct source *s = &m->sources.items[i], before = *s;

	draw_over(m->of[i], s);
	keep_direction(&before, s);
	if (s->id != 0 && places_same(&before, s)) {
		m->traps.out->n_same++;
		return true;
	}
	if (s->id != 0)
		m->traps.out->n_changed++;
	else
		m->traps.out->n_new++;
	return book_put_source(b, s, e);
}

static bool put_all(struct mapping *m, struct book *b, struct err *e)
{
	bool ok = book_begin(b, e);

	if (!ok)
		return false;
	ok = meeting_put(&m->traps, b, e);
	for (size_t i = 0; ok && i < m->sources.n; i++)
		if (m->of[i])
			ok = put_source(m, b, i, e);
	if (ok)
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

static void ask_if_far(const struct mapping *m)
{
	const struct traps *traps = &m->traps.traps;
	struct far_farm farm = { 0 };

	for (size_t i = 0; i < traps->n; i++)
		if (traps->items[i].has_position)
			far_add(&farm, traps->items[i].lat, traps->items[i].lon);
	for (size_t i = 0; i < m->sources.n; i++) {
		struct buf says = { 0 };
		if (m->of[i] && far_source_says(&farm, &m->sources.items[i],
					m->traps.farm, &says))
			spots_warn_whole(m->traps.out, says.text);
		buf_free(&says);
	}
	far_free(&farm);
}

static void tell(const struct mapping *m)
{
	struct buf note = { 0 };

	meeting_tell(&m->traps);
	ask_if_far(m);
	if (m->n_elsewhere == 0)
		return;
	buf_addf(&note,
		ngettext("%lld feature of other farms was passed over",
			"%lld features of other farms were passed over",
			(unsigned long)m->n_elsewhere),
		(long long)m->n_elsewhere);
	sentences_add(&m->traps.out->notes, note.text);
	buf_free(&note);
}

static bool meet(struct mapping *m, struct book *b, const struct features *features,
	struct err *e)
{
	if (!begin(m, b, e))
		return false;
	for (size_t i = 0; i < features->n; i++)
		add(m, &features->items[i]);
	if (!meeting_is_right(&m->traps, e))
		return false;
	if (m->traps.n_met + m->n_met == 0)
		return nothing_fits(m, e);
	if (!put_all(m, b, e))
		return false;
	tell(m);
	return true;
}

bool geojson_import(struct book *b, const struct geojson_from *from,
	struct imported *out, struct err *e)
{
	const struct spots_from spots_from = { from->name, from->farm, true };
	struct mapping m = { .traps = { .from = &spots_from, .out = out } };
	struct features features = { 0 };
	bool ok = geojson_read(from->file, &spots_from, &features, out, e) &&
		  meet(&m, b, &features, e);

	end(&m);
	free(features.items);
	return ok;
}
