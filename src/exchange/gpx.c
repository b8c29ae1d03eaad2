#include "answers/far.h"
#include "base/names.h"
#include "gpx_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/places.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAMES_BYTES = 200 }; /* of a list of names in a sentence */

/* Waypoints meet the traps of one farm. */
struct meeting {
	const struct gpx_from *from;
	const char *farm;
	struct traps traps;         /* of the farm */
	const struct waypoint **of; /* by trap; NULL: the file lacks it */
	struct names labels;        /* index in traps */
	struct imported *out;
};

static void warn(struct imported *out, const char *text)
{
	struct err e;

	err_set(&e, ERR_INPUT, "%s", text); /* no control characters */
	if (out->n_warnings++ < PROBLEMS_MAX)
		sentences_add(&out->warnings, e.text);
}

static void warn_of(const struct meeting *m, const struct waypoint *w)
{
	struct buf says = { 0 };

	if (w->name[0])
		buf_addf(&says,
			_("%s, line %lld: the waypoint \"%s\" is no trap of %s; it was "
			  "passed over"),
			m->from->name, (long long)w->line, w->name, m->farm);
	else
		buf_addf(&says,
			_("%s, line %lld: a waypoint has no name that a trap could "
			  "have; it was passed over"),
			m->from->name, (long long)w->line);
	warn(m->out, says.text);
	buf_free(&says);
}

static void meet_one(struct meeting *m, const struct waypoint *w)
{
	int64_t i = names_find(&m->labels, 0, w->name);
	struct buf what = { 0 };

	if (i < 0) {
		warn_of(m, w);
		return;
	}
	if (!m->of[i]) {
		m->of[i] = w;
		return;
	}
	buf_addf(&what,
		_("the waypoint \"%s\" is in the file twice, in line %lld too; a trap "
		  "hangs in one place"),
		w->name, (long long)m->of[i]->line);
	gpx_problem(m->from, w->line, m->out, what.text);
	buf_free(&what);
}

static bool none_fits(const struct meeting *m, struct err *e)
{
	struct buf there = { 0 };

	names_list(&m->labels, 0, NAMES_BYTES, &there);
	err_set(e, ERR_INPUT,
		_("%s: no waypoint is called as a trap of %s, which has: %s"),
		m->from->name, m->farm, there.n ? there.text : _("none"));
	buf_free(&there);
	return false;
}

static bool all_right(const struct meeting *m, struct err *e)
{
	if (m->out->n_problems)
		return err_set(e, ERR_INPUT,
			m->out->n_problems == 1
				? _("%s: one thing is wrong, so nothing was taken in; "
				    "the book is as it was")
				: _("%s: several things are wrong, so nothing was "
				    "taken in; the book is as it was"),
			m->from->name);
	for (size_t i = 0; i < m->traps.n; i++)
		if (m->of[i])
			return true;
	return none_fits(m, e);
}

/* As far as a file of traps can tell, which has six decimals. */
static bool hangs_there(const struct trap *t, const struct waypoint *w)
{
	return t->has_position && fabs(t->lat - w->lat) <= 0.00000051 &&
	       fabs(t->lon - w->lon) <= 0.00000051;
}

static bool put(struct meeting *m, struct book *b, size_t i, struct err *e)
{
	struct trap *t = &m->traps.items[i];

	if (hangs_there(t, m->of[i])) {
		m->out->n_same++;
		return true;
	}
	t->has_position = true;
	t->lat = m->of[i]->lat;
	t->lon = m->of[i]->lon;
	m->out->n_changed++;
	return book_put_trap(b, t, e);
}

static bool put_all(struct meeting *m, struct book *b, struct err *e)
{
	bool ok = book_begin(b, e);

	if (!ok)
		return false;
	for (size_t i = 0; ok && i < m->traps.n; i++)
		if (m->of[i])
			ok = put(m, b, i, e);
	if (ok)
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

/* With the new positions of the traps. */
static void ask_if_far(const struct meeting *m)
{
	struct far_farm farm = { 0 };

	for (size_t i = 0; i < m->traps.n; i++)
		if (m->traps.items[i].has_position)
			far_add(&farm, m->traps.items[i].lat, m->traps.items[i].lon);
	for (size_t i = 0; i < m->traps.n; i++) {
		const struct trap *t = &m->traps.items[i];
		char what[NAME_BYTES + 16];
		struct buf says = { 0 };

		snprintf(what, sizeof what, _("trap %s"), t->label);
		if (m->of[i] && far_says(&farm, (struct position){ t->lat, t->lon },
					what, m->farm, &says))
			warn(m->out, says.text);
		buf_free(&says);
	}
	far_free(&farm);
}

static void note_lacking(const struct meeting *m)
{
	struct names lacking = { 0 };
	struct buf note = { 0 };

	for (size_t i = 0; i < m->traps.n; i++)
		if (!m->of[i])
			names_add(&lacking, 0, m->traps.items[i].label, (int64_t)i);
	names_list(&lacking, 0, NAMES_BYTES, &note);
	if (note.n) {
		struct buf says = { 0 };

		buf_addf(&says, _("traps of %s without a waypoint in the file: %s"),
			m->farm, note.text);
		sentences_add(&m->out->notes, says.text);
		buf_free(&says);
	}
	buf_free(&note);
	names_free(&lacking);
}

static bool farm_name(struct book *b, int64_t farm, char *out, struct err *e)
{
	struct farms all = { 0 };
	bool ok = book_farms(b, &all, e);

	*out = '\0';
	for (size_t i = 0; ok && i < all.n; i++)
		if (all.items[i].id == farm)
			text_copy(out, NAME_BYTES, all.items[i].name);
	free(all.items);
	return ok;
}

static bool meet(struct meeting *m, struct book *b, const struct waypoints *points,
	struct err *e)
{
	if (!book_traps(b, m->from->farm, &m->traps, e))
		return false;
	m->of = mem_new(m->traps.n, sizeof *m->of);
	for (size_t i = 0; i < m->traps.n; i++)
		names_add(&m->labels, 0, m->traps.items[i].label, (int64_t)i);
	for (size_t i = 0; i < points->n; i++)
		meet_one(m, &points->items[i]);
	if (!all_right(m, e) || !put_all(m, b, e))
		return false;
	ask_if_far(m);
	note_lacking(m);
	return true;
}

bool gpx_import(struct book *b, const struct gpx_from *from, struct imported *out,
	struct err *e)
{
	char farm[NAME_BYTES];
	struct meeting m = { .from = from, .farm = farm, .out = out };
	struct waypoints points = { 0 };
	bool ok = farm_name(b, from->farm, farm, e) &&
		  gpx_read(from, &points, out, e) && meet(&m, b, &points, e);

	names_free(&m.labels);
	free(m.traps.items);
	free(m.of);
	free(points.items);
	return ok;
}

static void add_escaped(struct buf *out, const char *text)
{
	for (; *text; text++) {
		if (*text == '&')
			buf_add(out, "&amp;");
		else if (*text == '<')
			buf_add(out, "&lt;");
		else if (*text == '>')
			buf_add(out, "&gt;");
		else
			buf_add_n(out, text, 1);
	}
}

bool gpx_export(struct book *b, int64_t farm, struct buf *out, struct err *e)
{
	struct traps traps = { 0 };
	bool ok = book_traps(b, farm, &traps, e);

	buf_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
		     "<gpx version=\"1.1\" creator=\"mothtally\" "
		     "xmlns=\"http://www.topografix.com/GPX/1/1\">\n");
	for (size_t i = 0; ok && i < traps.n; i++) {
		const struct trap *t = &traps.items[i];

		if (!t->has_position)
			continue;
		buf_addf(out, "<wpt lat=\"%.7f\" lon=\"%.7f\"><name>", t->lat, t->lon);
		add_escaped(out, t->label);
		buf_add(out, "</name></wpt>\n");
	}
	buf_add(out, "</gpx>\n");
	free(traps.items);
	return ok;
}
