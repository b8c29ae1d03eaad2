/* biofix.c - the grower's biofix dates. */
#include "book/weather.h"

#include "row.h"
#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

static void read_biofix(struct query *q, struct biofix_date *d)
{
	d->id = query_get(q);
	d->farm = query_get(q);
	d->pest = query_get(q);
	d->season = query_get_within(q, DAY_YEAR_MIN, DAY_YEAR_MAX);
	d->day = query_get_day(q);
	query_require(q, d->day != DAY_NONE);
	query_get_copy(q, d->rule, sizeof d->rule);
}

bool book_biofixes(struct book *b, struct biofix_dates *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, x.farm, x.pest, x.season, x.day, x.rule FROM biofix x "
		"JOIN farm f ON f.id = x.farm JOIN pest p ON p.id = x.pest ORDER BY "
		"f.name COLLATE NOCASE, f.name, p.code COLLATE NOCASE, p.code, "
		"x.season");
	q.table = "biofix";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_biofix(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the biofix dates cannot be read"), e);
}

static bool biofix_good(const struct biofix_date *d, const char *what, struct err *e)
{
	if (d->day < VISIT_DAY_FIRST || d->day > VISIT_DAY_LAST)
		return err_set(e, ERR_INPUT,
			_("%s: it has no date from 1900-01-01 to 2199-12-31"), _(what));
	return store_range_good(d->season, DAY_YEAR_MIN, DAY_YEAR_MAX,
		       N_("the year of the season"), e) &&
	       store_text_good(d->rule, N_("the biofix rule"), e);
}

/* The one that is there for the farm, pest and season; 0: none. */
static bool find_biofix(struct book *b, const struct biofix_date *d, int64_t *id,
	const char *what, struct err *e)
{
	struct query q;

	*id = 0;
	query_start(&q, b,
		"SELECT id FROM biofix WHERE farm = ?1 AND pest = ?2 AND season = ?3");
	query_int(&q, d->farm);
	query_int(&q, d->pest);
	query_int(&q, d->season);
	if (query_row(&q))
		*id = query_get(&q);
	return query_end(&q, what, e);
}

bool book_put_biofix(struct book *b, struct biofix_date *d, struct err *e)
{
	const char *what = N_("the biofix is not saved");
	struct query q;
	int64_t id = d->id;

	if (!biofix_good(d, what, e) || !store_begin(b, what, e))
		return false;
	if (id == 0 && !find_biofix(b, d, &id, what, e))
		return store_end(b, false, what, e);
	query_start(&q, b,
		id ? "UPDATE biofix SET farm = ?1, pest = ?2, season = ?3, day = ?4, "
		     "rule = ?5, changed_at = ?6, changed_by = ?7 WHERE id = ?8"
		   : "INSERT INTO biofix (farm, pest, season, day, rule, changed_at, "
		     "changed_by, uid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
	query_int(&q, d->farm);
	query_int(&q, d->pest);
	query_int(&q, d->season);
	query_day(&q, d->day);
	query_text(&q, d->rule);
	if (!store_put(&q, &id, _("biofix of that farm, pest and season"), what, e))
		return false;
	d->id = id;
	return true;
}

bool book_remove_biofix(struct book *b, int64_t id, struct err *e)
{
	const char *what = N_("the biofix is not removed");

	return store_begin(b, what, e) &&
	       store_end(b, row_bury(b, row_kind("biofix"), id, what, e), what, e);
}
