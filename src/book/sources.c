/* sources.c - what moths may come from; the table is called place. */
#include "book/sources.h"

#include "row.h"

#include "base/mem.h"
#include "base/words.h"

static void read_source(struct query *q, struct source *s)
{
	bool given;

	s->id = query_get(q);
	s->farm = query_get(q);
	query_get_copy(q, s->name, sizeof s->name);
	query_require(q, source_kind_read(query_get_text(q), &s->kind));
	s->lat = query_get_real(q, &s->has_position);
	query_require(q, corner_good((struct corner){ s->lat, 0 }));
	s->lon = query_get_real(q, &given);
	query_require(q,
		given == s->has_position && corner_good((struct corner){ 0, s->lon }));
	query_require(q, outline_read(query_get_text(q), s));
}

bool book_sources(struct book *b, int64_t farm, struct sources *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT p.id, p.farm, p.name, p.kind, p.lat, p.lon, p.outline FROM "
		"place p JOIN farm f ON f.id = p.farm WHERE ?1 IS NULL OR p.farm = ?1 "
		"ORDER BY f.name COLLATE NOCASE, f.name, p.name COLLATE NOCASE, "
		"p.name");
	query_id(&q, farm);
	q.table = "place";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_source(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the sources cannot be read"), e);
}

static bool outline_good(const struct source *s, const char *what, struct err *e)
{
	if (s->n_outline > 0 &&
		(s->n_outline < OUTLINE_MIN || s->n_outline > OUTLINE_MAX))
		return err_set(e, ERR_INPUT,
			_("%s: its outline has %zu corners; it needs %d to %d"),
			_(what), s->n_outline, OUTLINE_MIN, OUTLINE_MAX);
	for (size_t i = 0; i < s->n_outline; i++)
		if (!corner_good(s->outline[i]))
			return err_set(e, ERR_INPUT,
				_("%s: corner %zu of its outline is out of range: "
				  "latitude goes from -90 to 90, longitude from -180 "
				  "to 180"),
				_(what), i + 1);
	return true;
}

static bool source_good(const struct source *s, const char *what, struct err *e)
{
	if (!store_name_good(s->name, N_("the source's name"), e))
		return false;
	if (s->has_position && !corner_good((struct corner){ s->lat, s->lon }))
		return err_set(e, ERR_INPUT,
			_("%s: latitude goes from -90 to 90, longitude from -180 to "
			  "180"),
			_(what));
	return outline_good(s, what, e);
}

bool book_put_source(struct book *b, struct source *s, struct err *e)
{
	const char *what = N_("the source is not saved");
	char outline[OUTLINE_BYTES];
	struct query q;

	if (!source_good(s, what, e) || !store_begin(b, what, e))
		return false;
	outline_write(s, outline);
	query_start(&q, b,
		s->id ? "UPDATE place SET farm = ?1, name = ?2, kind = ?3, lat = ?4, "
			"lon = ?5, outline = ?6, changed_at = ?7, changed_by = ?8 "
			"WHERE id = ?9"
		      : "INSERT INTO place (farm, name, kind, lat, lon, outline, "
			"changed_at, changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, "
			"?7, ?8, ?9)");
	query_int(&q, s->farm);
	query_text(&q, s->name);
	query_text(&q, source_kind_word(s->kind));
	query_real(&q, s->has_position, s->lat);
	query_real(&q, s->has_position, s->lon);
	query_text(&q, outline);
	return store_put(&q, &s->id, s->name, what, e);
}

bool book_remove_source(struct book *b, int64_t id, struct err *e)
{
	const char *what = N_("the source is not removed");

	return store_begin(b, what, e) &&
	       store_end(b, row_bury(b, row_kind("place"), id, what, e), what, e);
}
