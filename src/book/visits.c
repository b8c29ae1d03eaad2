/* visits.c - reading the diary. Ids go by day, then by trap: a question of some days
 * seeks their part of it, one of a trap seeks its place in each day that has visits. */
#include "book/diary.h"

#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>

enum { VISIT_DAY = VISIT_TRAP_MAX + 1 }; /* rows that a day has room for */

int64_t visit_id(int64_t trap, int32_t day)
{
	int64_t days = (int64_t)day - VISIT_DAY_FIRST;

	return (days < 0 ? -1 : days) * VISIT_DAY + trap;
}

static int32_t read_count(struct query *q, bool never)
{
	int32_t count = query_get_count(q);

	query_require(q, count <= COUNT_MAX && (count == COUNT_NONE || !never));
	return count;
}

static void read_counts(struct query *q, struct visit *v)
{
	bool never = outcome_facts[v->outcome].count == COUNT_NEVER;

	v->count = read_count(q, never);
	query_require(q, v->count != COUNT_NONE ||
				 outcome_facts[v->outcome].count != COUNT_MUST);
	v->females = read_count(q, never);
	v->others = read_count(q, never);
}

void visit_read(struct query *q, struct visit *v, struct visit_words *w)
{
	*v = (struct visit){ 0 };
	int64_t id = query_get(q);
	v->trap = query_get_within(q, 1, VISIT_TRAP_MAX);
	v->day = query_get_day(q);
	query_require(q, v->day != DAY_NONE && visit_id(v->trap, v->day) == id);
	query_require(q, outcome_read(query_get_text(q), &v->outcome));
	query_require(q, reason_read(query_get_text(q), &v->reason) &&
				 reason_fits(v->reason, v->outcome));
	read_counts(q, v);
	v->new_card = query_get(q);
	v->new_lure = query_get(q);
	v->stirred = query_get_within(q, 0, 1) != 0;
	if (!w)
		return;
	query_get_copy(q, w->scout, sizeof w->scout);
	query_get_copy(q, w->note, sizeof w->note);
}

static int by_trap_and_day(const void *a, const void *b)
{
	const struct visit *v = a, *w = b;

	if (v->trap != w->trap)
		return v->trap < w->trap ? -1 : 1;
	return (v->day > w->day) - (v->day < w->day);
}

bool book_visits(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct visits *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		farm ? "SELECT " VISIT_COLUMNS " FROM visit WHERE id BETWEEN ?1 AND ?2 "
		       "AND trap IN (SELECT id FROM trap WHERE farm = ?3)"
		     : "SELECT " VISIT_COLUMNS
		       " FROM visit WHERE id BETWEEN ?1 AND ?2");
	q.table = "visit";
	query_int(&q, visit_id(0, from));
	query_int(&q, visit_id(VISIT_TRAP_MAX, to));
	if (farm)
		query_int(&q, farm);
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		visit_read(&q, &out->items[out->n++], NULL);
	}
	if (out->n > 0)
		qsort(out->items, out->n, sizeof *out->items, by_trap_and_day);
	return query_end(&q, N_("the visits cannot be read"), e) &&
	       visits_mark_disputed(b, farm, out, e);
}

bool book_trap_visits(struct book *b, int64_t trap, struct visits *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT " VISIT_COLUMNS " FROM visit WHERE id IN " VISIT_IDS(
			"?1") " AND trap = ?1 ORDER BY id");
	q.table = "visit";
	query_int(&q, trap);
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		visit_read(&q, &out->items[out->n++], NULL);
	}
	return query_end(&q, N_("the visits cannot be read"), e) &&
	       visits_mark_disputed(b, 0, out, e);
}

/* Most traps have one on a late day, so the days are gone through from the last. */
bool book_last_visit(struct book *b, int64_t trap, int32_t *day, struct err *e)
{
	struct query q;

	*day = DAY_NONE;
	query_start(&q, b,
		"SELECT visit.day FROM (WITH RECURSIVE days (n) AS "
		"(SELECT max(id) / 1000000 FROM visit UNION ALL "
		"SELECT (SELECT max(id) / 1000000 FROM visit WHERE id < n * 1000000) "
		"FROM days WHERE n IS NOT NULL) SELECT n FROM days) CROSS JOIN visit "
		"ON visit.id = n * 1000000 + ?1 LIMIT 1");
	q.table = "visit";
	query_int(&q, trap);
	if (query_row(&q))
		*day = query_get_day(&q);
	return query_end(&q, N_("the visits cannot be read"), e);
}

bool visit_find(struct book *b, struct visit *v, struct visit_words *w,
	unsigned char uid[static STORE_UID_BYTES], bool *found, struct err *e)
{
	struct query q;

	*found = false;
	query_start(&q, b, "SELECT " VISIT_COLUMNS ", uid FROM visit WHERE id = ?1");
	q.table = "visit";
	query_int(&q, visit_id(v->trap, v->day));
	if (query_row(&q)) {
		*found = true;
		visit_read(&q, v, w);
		query_get_uid(&q, uid);
	}
	return query_end(&q, N_("the visit cannot be read"), e);
}

bool book_visit(struct book *b, int64_t trap, int32_t day, struct visit *v,
	struct visit_words *w, struct err *e)
{
	unsigned char uid[STORE_UID_BYTES];
	struct visit_words words = { 0 };
	char name[128], iso[DAY_ISO_SIZE];
	bool found;

	*v = (struct visit){ .trap = trap, .day = day };
	if (!visit_find(b, v, &words, uid, &found, e))
		return false;
	if (w)
		*w = words;
	if (found)
		return true;
	visit_name_trap(b, trap, name, sizeof name);
	day_iso(day, iso);
	return err_set(e, ERR_NOT_FOUND, _("%s has no visit on %s"), name, iso);
}

/* The newest day up to `upto` on which any trap of the farm was visited. */
static bool newest_day(
	struct book *b, int64_t farm, int32_t upto, int32_t *day, struct err *e)
{
	struct query q;

	*day = DAY_NONE;
	query_start(&q, b,
		farm ? "SELECT id FROM visit WHERE id <= ?1 AND trap IN "
		       "(SELECT id FROM trap WHERE farm = ?2) ORDER BY id DESC LIMIT 1"
		     : "SELECT id FROM visit WHERE id <= ?1 ORDER BY id DESC LIMIT 1");
	q.table = "visit";
	query_int(&q, visit_id(VISIT_TRAP_MAX, upto));
	if (farm)
		query_int(&q, farm);
	if (query_row(&q)) {
		int64_t id = query_get(&q);
		bool good = id > 0 && id < visit_id(0, VISIT_DAY_LAST + 1);
		query_require(&q, good);
		if (good)
			*day = VISIT_DAY_FIRST + (int32_t)(id / VISIT_DAY);
	}
	return query_end(&q, N_("the visits cannot be read"), e);
}

bool book_visit_days(struct book *b, int64_t farm, int32_t upto, int32_t *days,
	size_t n, size_t *got, struct err *e)
{
	for (*got = 0; *got < n; upto = days[(*got)++] - 1) {
		if (!newest_day(b, farm, upto, &days[*got], e))
			return false;
		if (days[*got] == DAY_NONE)
			break;
	}
	return true;
}

bool book_each_visit(struct book *b, int64_t farm, int32_t from, int32_t to,
	bool (*each)(void *arg, const struct visit *v, const struct visit_words *w),
	void *arg, struct err *e)
{
	struct visit_words w;
	struct visit v;
	struct query q;

	query_start(&q, b,
		"SELECT " VISIT_COLUMNS
		" FROM visit CROSS JOIN trap t ON t.id = visit.trap CROSS JOIN farm f "
		"ON f.id = t.farm WHERE visit.id BETWEEN ?1 AND ?2 "
		"AND (?3 IS NULL OR f.id = ?3) ORDER BY f.name COLLATE NOCASE, f.name, "
		"t.driving_order, t.id, visit.id");
	q.table = "visit";
	query_int(&q, visit_id(0, from));
	query_int(&q, visit_id(VISIT_TRAP_MAX, to));
	query_id(&q, farm);
	while (query_row(&q)) {
		visit_read(&q, &v, &w);
		if (*q.damage || !each(arg, &v, &w))
			break;
	}
	return query_end(&q, N_("the visits cannot be read"), e);
}
