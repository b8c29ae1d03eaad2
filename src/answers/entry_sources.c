/* entry_sources.c - sources as rows, and on the Book page. */
#include "answers/entry_sources.h"
#include "base/text.h"
#include "base/words.h"
#include "book/sources.h"
#include "entry_family.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *kind_word(int i)
{
	return source_kind_word((enum source_kind)i);
}

static bool outline_value_read(const struct column *c, const char *text, void *field)
{
	struct source s = { 0 };

	(void)c;
	if (!outline_read(text, &s))
		return false;
	outline_write(&s, field);
	return true;
}

static void outline_value_clear(const struct column *c, void *field)
{
	value_text.clear(c, field);
}

static const char *outline_value_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	return value_text.write(c, field, out);
}

static void outline_value_right(const struct column *c, char out[static RIGHT_BYTES])
{
	(void)c;
	snprintf(out, RIGHT_BYTES,
		_("%d to %d corners, each latitude, blank, longitude, with ; between, "
		  "such as 46.1 14.49; 46.1 14.5; 46.2 14.5"),
		(int)OUTLINE_MIN, (int)OUTLINE_MAX);
}

static const struct value value_outline = { outline_value_read, outline_value_clear,
	outline_value_write, outline_value_right };

#define AT(field) .at = offsetof(struct source_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES

const struct column source_columns[SOURCE_COLUMNS] = {
	{ .name = "farm",
		AT(farm),
		NAME,
		.needed = true,
		.help = N_("Farm whose moths may come from there; the book must have "
			   "it."),
		.form_help = N_("Farm whose moths may come from there."),
		.label = N_("farm"),
		.pick = PICK_FARM,
		.list_cols = 16 },
	{ .name = "name",
		AT(name),
		NAME,
		.needed = true,
		.help = N_("Its name, once on a farm."),
		.label = N_("name"),
		.list_cols = 24 },
	{ .name = "kind",
		AT(kind),
		.type = &value_word,
		.hi = SOURCE_KIND_COUNT - 1,
		.none = -1,
		.needed = true,
		.word = kind_word,
		.help = N_("What it is."),
		.label = N_("kind"),
		.pick = PICK_WORD,
		.list_cols = 10 },
	{ .name = "lat",
		AT(lat),
		.type = &value_degree,
		.lo = -90,
		.hi = 90,
		.help = N_(
			"Latitude of a point in it, degrees north, WGS 84; empty: not "
			"known."),
		.label = N_("latitude"),
		.list_cols = 11 },
	{ .name = "lon",
		AT(lon),
		.type = &value_degree,
		.lo = -180,
		.hi = 180,
		.help = N_("Longitude, degrees east; empty: not known."),
		.label = N_("longitude"),
		.list_cols = 11 },
	{ .name = "outline",
		AT(outline),
		.type = &value_outline,
		.hi = OUTLINE_BYTES,
		.help = N_("Its edge, corner after corner; empty: not drawn."),
		.label = N_("outline") },
};

struct source_row source_row_of(const struct known *k, const struct source *s)
{
	struct source_row r = { .kind = (int)s->kind,
		.lat = s->has_position ? s->lat : (double)NAN,
		.lon = s->has_position ? s->lon : (double)NAN };

	text_copy(r.farm, sizeof r.farm, known_farm(k, s->farm));
	text_copy(r.name, sizeof r.name, s->name);
	outline_write(s, r.outline);
	return r;
}

bool source_over(struct hearing *h, const struct source_row *r, struct source *out)
{
	if (isnan(r->lat) != isnan(r->lon))
		return row_bad(h, isnan(r->lat) ? "lat" : "lon",
			_("is missing; lat and lon go together"));
	memcpy(out->name, r->name, sizeof out->name);
	out->kind = (enum source_kind)r->kind;
	if (row_has(h, "lat")) {
		out->has_position = !isnan(r->lat);
		out->lat = out->has_position ? r->lat : 0;
		out->lon = out->has_position ? r->lon : 0;
	}
	return !row_has(h, "outline") || outline_read(r->outline, out) ||
	       row_bad(h, "outline", _("is no outline"));
}

static size_t sources_count(const struct shelves *s)
{
	return s->sources.n;
}

static int64_t sources_id(const struct shelves *s, size_t i)
{
	return s->sources.items[i].id;
}

static bool sources_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	return !ask->farm || s->sources.items[i].farm == ask->farm;
}

static void sources_row(const struct shelves *s, size_t i, void *row)
{
	*(struct source_row *)row = source_row_of(&s->known, &s->sources.items[i]);
}

static void sources_name(const void *row, char *out, size_t size)
{
	const struct source_row *r = row;

	snprintf(out, size, _("source %s of %s"), r->name, r->farm);
}

static void sources_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct source *one = &s->sources.items[i];

	if (one->n_outline)
		snprintf(
			out, SAY_LINE, _("drawn with %d corners"), (int)one->n_outline);
	else if (!one->has_position)
		text_copy(out, SAY_LINE, _("no position"));
}

static void sources_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	const struct farm *f = shelves_farm(s, ask);
	struct source_row *r = row;

	text_copy(r->farm, sizeof r->farm, f ? f->name : "");
}

static bool place_good(struct putting *p, const struct source *s)
{
	struct position at = { s->lat, s->lon };

	if (!s->has_position && s->n_outline > 0)
		at = (struct position){ s->outline[0].lat, s->outline[0].lon };
	else if (!s->has_position)
		return true;
	if (!putting_touched(p, "lat") && !putting_touched(p, "lon") &&
		!putting_touched(p, "outline"))
		return true;
	return putting_far(p, s->farm, at, s->name);
}

static bool sources_put(struct putting *p, const void *row)
{
	const struct source_row *r = row;
	const struct shelves *s = p->shelves;
	struct source one = p->id ? s->sources.items[p->at] : (struct source){ 0 };

	if (!row_find_farm(&p->hear, &s->known, r->farm, &one.farm) ||
		!source_over(&p->hear, r, &one) || !place_good(p, &one) ||
		!book_put_source(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

const struct family_ops sources_ops = { "place", sizeof(struct source_row),
	sources_count, sources_id, sources_wanted, NULL, sources_row, sources_name,
	sources_note, sources_guess, sources_put, NULL };
