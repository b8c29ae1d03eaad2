#include "spots_parts.h"

#include "answers/far.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/places.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAMES_BYTES = 200 }; /* of a list of names in a sentence */

void spots_warn_whole(struct imported *out, const char *sentence)
{
	struct err e;

	err_set(&e, ERR_INPUT, "%s", sentence); /* no control characters */
	if (out->n_warnings++ < PROBLEMS_MAX)
		sentences_add(&out->warnings, e.text);
}

static void say(
	const struct spots_from *from, int64_t at, const char *what, struct buf *out)
{
	buf_addf(out,
		from->by_feature ? _("%s, feature %lld: %s") : _("%s, line %lld: %s"),
		from->name, (long long)at, what);
}

void spots_problem(const struct spots_from *from, int64_t at, struct imported *out,
	const char *what)
{
	struct buf says = { 0 };
	struct err e;

	say(from, at, what, &says);
	err_set(&e, ERR_INPUT, "%s", says.text);
	if (out->n_problems++ < PROBLEMS_MAX)
		sentences_add(&out->problems, e.text);
	buf_free(&says);
}

void spots_warn(const struct spots_from *from, int64_t at, struct imported *out,
	const char *what)
{
	struct buf says = { 0 };

	say(from, at, what, &says);
	spots_warn_whole(out, says.text);
	buf_free(&says);
}

static void pass_over(const struct meeting *m, const struct spot *p)
{
	bool by_feature = m->from->by_feature;
	struct buf what = { 0 };

	if (p->name[0])
		buf_addf(&what,
			by_feature ? _("the point \"%s\" is no trap and no source of "
				       "%s; it was passed over")
				   : _("the waypoint \"%s\" is no trap of %s; it was "
				       "passed over"),
			p->name, m->farm);
	else
		buf_add(&what,
			by_feature ? _("a point has no name that a trap could have; "
				       "it was passed over")
				   : _("a waypoint has no name that a trap could "
				       "have; it was passed over"));
	spots_warn(m->from, p->at, m->out, what.text);
	buf_free(&what);
}

static void complain_of_twice(const struct meeting *m, const struct spot *p, int64_t i)
{
	struct buf what = { 0 };

	buf_addf(&what,
		m->from->by_feature
			? _("the point \"%s\" is in the file twice, as feature %lld "
			    "too; a trap hangs in one place")
			: _("the waypoint \"%s\" is in the file twice, in line %lld "
			    "too; a trap hangs in one place"),
		p->name, (long long)m->of[i]->at);
	spots_problem(m->from, p->at, m->out, what.text);
	buf_free(&what);
}

void meeting_add(struct meeting *m, const struct spot *p)
{
	int64_t i = names_find(&m->labels, 0, p->name);

	if (i < 0)
		pass_over(m, p);
	else if (m->of[i])
		complain_of_twice(m, p, i);
	else {
		m->of[i] = p;
		m->n_met++;
	}
}

bool meeting_is_right(const struct meeting *m, struct err *e)
{
	if (m->out->n_problems == 0)
		return true;
	return err_set(e, ERR_INPUT,
		m->out->n_problems == 1
			? _("%s: one thing is wrong, so nothing was taken in; the book "
			    "is as it was")
			: _("%s: several things are wrong, so nothing was taken in; "
			    "the book is as it was"),
		m->from->name);
}

/* As far as a file of traps can tell, which has six decimals. */
static bool hangs_there(const struct trap *t, const struct spot *p)
{
	return t->has_position && fabs(t->lat - p->lat) <= 0.00000051 &&
	       fabs(t->lon - p->lon) <= 0.00000051;
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

bool meeting_put(struct meeting *m, struct book *b, struct err *e)
{
	bool ok = true;

	for (size_t i = 0; ok && i < m->traps.n; i++)
		if (m->of[i])
			ok = put(m, b, i, e);
	return ok;
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
			spots_warn_whole(m->out, says.text);
		buf_free(&says);
	}
	far_free(&farm);
}

static void note_lacking(const struct meeting *m)
{
	struct names lacking = { 0 };
	struct buf labels = { 0 }, note = { 0 };

	for (size_t i = 0; i < m->traps.n; i++)
		if (!m->of[i])
			names_add(&lacking, 0, m->traps.items[i].label, (int64_t)i);
	names_list(&lacking, 0, NAMES_BYTES, &labels);
	if (labels.n) {
		buf_addf(&note,
			m->from->by_feature
				? _("traps of %s without a point in the file: %s")
				: _("traps of %s without a waypoint in the file: %s"),
			m->farm, labels.text);
		sentences_add(&m->out->notes, note.text);
	}
	buf_free(&labels);
	buf_free(&note);
	names_free(&lacking);
}

void meeting_tell(const struct meeting *m)
{
	if (m->n_met == 0)
		return;
	ask_if_far(m);
	note_lacking(m);
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

bool meeting_begin(struct meeting *m, struct book *b, struct err *e)
{
	if (!farm_name(b, m->from->farm, m->farm, e) ||
		!book_traps(b, m->from->farm, &m->traps, e))
		return false;
	m->of = mem_new(m->traps.n, sizeof *m->of);
	for (size_t i = 0; i < m->traps.n; i++)
		names_add(&m->labels, 0, m->traps.items[i].label, (int64_t)i);
	return true;
}

void meeting_end(struct meeting *m)
{
	names_free(&m->labels);
	free(m->traps.items);
	free(m->of);
}
