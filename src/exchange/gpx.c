#include "gpx_parts.h"

#include "base/words.h"
#include "book/places.h"

#include <stdlib.h>

enum { NAMES_BYTES = 200 }; /* of a list of names in a sentence */

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

static bool put_all(struct meeting *m, struct book *b, struct err *e)
{
	if (!book_begin(b, e))
		return false;
	if (meeting_put(m, b, e))
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

static bool meet(
	struct meeting *m, struct book *b, const struct spots *points, struct err *e)
{
	if (!meeting_begin(m, b, e))
		return false;
	for (size_t i = 0; i < points->n; i++)
		meeting_add(m, &points->items[i]);
	if (!meeting_is_right(m, e))
		return false;
	if (m->n_met == 0)
		return none_fits(m, e);
	if (!put_all(m, b, e))
		return false;
	meeting_tell(m);
	return true;
}

bool gpx_import(struct book *b, const struct gpx_from *from, struct imported *out,
	struct err *e)
{
	const struct spots_from spots_from = { from->name, from->farm, false };
	struct meeting m = { .from = &spots_from, .out = out };
	struct spots points = { 0 };
	bool ok = gpx_read(from->file, &spots_from, &points, out, e) &&
		  meet(&m, b, &points, e);

	meeting_end(&m);
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
