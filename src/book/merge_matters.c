/* merge_matters.c - what merges left for a person to settle, read out of the book: it
 * stays there, and comes along to other books, until somebody does. */
#include "merge_parts.h"

#include "row.h"
#include "visit.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/matters.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const what = N_("what is to be settled cannot be read");

#define RIVAL_COLUMNS                                                                  \
	"CAST(julianday(day) - 2415020.5 AS INTEGER) * 1000000 + trap, trap, day, "    \
	"outcome, reason, count, females, others, new_card, new_lure, stirred, "       \
	"scout, note"

#define KIND_NAMES                                                                     \
	"coalesce((SELECT name FROM lure WHERE lure.id = new_lure), ''), "             \
	"coalesce((SELECT name FROM card WHERE card.id = new_card), '')"

void book_matters_free(struct matters *m)
{
	for (size_t i = 0; i < m->n; i++)
		free(m->items[i].choices);
	free(m->items);
	*m = (struct matters){ 0 };
}

static struct matter *add(struct matters *out, enum matter_kind kind, const char *table)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct matter *m = &out->items[out->n++];

	*m = (struct matter){ .what = kind, .day = DAY_NONE };
	text_copy(m->table, sizeof m->table, table);
	return m;
}

static void read_choice(struct query *q, struct matter *m, bool rival)
{
	m->choices = mem_grow(
		m->choices, &m->cap_choices, m->n_choices + 1, sizeof *m->choices);
	struct matter_choice *c = &m->choices[m->n_choices++];

	*c = (struct matter_choice){ 0 };
	visit_read(q, &c->visit, &c->words);
	query_get_copy(q, c->changed_at, sizeof c->changed_at);
	query_get_copy(q, c->changed_by, sizeof c->changed_by);
	query_get_copy(q, c->lure, sizeof c->lure);
	query_get_copy(q, c->card, sizeof c->card);
	if (rival)
		c->rival = query_get(q);
}

/* The one in the diary first, if there is one. */
static bool read_choices(struct book *b, struct matter *m, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT " VISIT_COLUMNS ", changed_at, changed_by, " KIND_NAMES
		" FROM visit WHERE id = ?1");
	q.table = "visit";
	query_int(&q, visit_id(m->id, m->day));
	if (query_row(&q))
		read_choice(&q, m, false);
	if (!query_end(&q, what, e))
		return false;
	query_start(&q, b,
		"SELECT " RIVAL_COLUMNS ", changed_at, changed_by, " KIND_NAMES
		", id FROM rival "
		"WHERE trap = ?1 AND day = ?2 ORDER BY changed_at, changed_by, uid");
	q.table = "rival";
	query_int(&q, m->id);
	query_day(&q, m->day);
	while (query_row(&q))
		read_choice(&q, m, true);
	return query_end(&q, what, e);
}

/* Glue stirred is no other count. */
static bool says_same(const struct visit *a, const struct visit *b)
{
	struct visit c = *a;

	c.stirred = b->stirred;
	return visit_same(&c, b);
}

/* What says the same as another choice is no choice. */
static void drop_same(struct matter *m)
{
	size_t n = 0;

	for (size_t i = 0; i < m->n_choices; i++) {
		bool said = false;
		for (size_t j = 0; j < n && !said; j++)
			said = says_same(&m->choices[i].visit, &m->choices[j].visit);
		if (!said)
			m->choices[n++] = m->choices[i];
	}
	m->n_choices = n;
}

static bool add_visits(struct book *b, struct matters *out, struct err *e)
{
	struct query q;
	bool ok = true;

	query_start(&q, b,
		"SELECT r.trap, r.day, t.label, f.name FROM (SELECT DISTINCT trap, day "
		"FROM rival) r JOIN trap t ON t.id = r.trap JOIN farm f ON f.id = "
		"t.farm ORDER BY r.day, f.name, t.driving_order, r.trap");
	q.table = "rival";
	while (ok && query_row(&q)) {
		char label[NAME_BYTES], farm[NAME_BYTES];
		struct matter *m = add(out, MATTER_COUNTS, "visit");
		m->id = query_get(&q);
		m->day = query_get_day(&q);
		query_get_copy(&q, label, sizeof label);
		query_get_copy(&q, farm, sizeof farm);
		snprintf(m->name, sizeof m->name, _("trap %s of %s"), label, farm);
		ok = read_choices(b, m, e);
		drop_same(m);
		bool shown = m->n_choices > 0 && m->choices[0].rival == 0;
		m->what = shown ? MATTER_COUNTS : MATTER_REMOVED;
		if (shown && m->n_choices == 1)
			free(out->items[--out->n].choices);
	}
	return query_end(&q, what, ok ? e : NULL) && ok;
}

/* removed_at .. changed_by and the uid, and the name of the row. */
static void read_row(struct query *q, struct book *b, struct matter *m)
{
	const struct row_kind *kind = row_kind(m->table);

	query_get_uid(q, m->uid);
	query_get_copy(q, m->removed_at, sizeof m->removed_at);
	query_get_copy(q, m->removed_by, sizeof m->removed_by);
	query_get_copy(q, m->changed_at, sizeof m->changed_at);
	query_get_copy(q, m->changed_by, sizeof m->changed_by);
	if (m->id && kind)
		row_say(b, kind, m->id, m->name, sizeof m->name);
}

/* Rows that stand there though they were removed, by somebody who did not know that
 * somebody else needs them. */
static bool add_kept(
	struct book *b, const char *table, struct matters *out, struct err *e)
{
	struct query q;
	char sql[1024];

	sqlite3_snprintf(sizeof sql, sql,
		"SELECT t.id, t.uid, d.changed_at, d.changed_by, t.changed_at, "
		"t.changed_by, EXISTS (SELECT 1 FROM history h WHERE h.uid = d.uid "
		"AND h.trap IS NULL AND h.undoes = -2 AND h.at = d.changed_at) FROM "
		"tombstone d JOIN \"%w\" t ON t.uid = d.uid WHERE "
		"d.kind = '%w' AND NOT EXISTS (SELECT 1 FROM history h WHERE h.uid = "
		"d.uid AND h.trap IS NULL AND h.op = 'insert' AND h.at > "
		"d.changed_at) ORDER BY t.id",
		table, table);
	query_start_once(&q, b, sql);
	while (query_row(&q)) {
		struct matter *m = add(out, MATTER_KEPT, table);
		m->id = query_get(&q);
		read_row(&q, b, m);
		m->other_pest = query_get(&q) != 0;
	}
	return query_end(&q, what, e);
}

static bool add_kept_visits(struct book *b, struct matters *out, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT DISTINCT v.trap, v.day, v.uid, d.changed_at, d.changed_by, "
		"v.changed_at, v.changed_by FROM history h JOIN tombstone d ON d.uid = "
		"h.uid JOIN visit v ON v.id = CAST(julianday(h.day) - 2415020.5 AS "
		"INTEGER) * 1000000 + h.trap AND v.uid = h.uid WHERE h.kind = 'visit' "
		"AND h.op = 'delete' AND h.trap IS NOT NULL AND NOT EXISTS (SELECT 1 "
		"FROM history x WHERE x.trap = h.trap AND x.day = h.day AND x.uid = "
		"h.uid AND x.op = 'insert' AND x.at > d.changed_at) ORDER BY v.day, "
		"v.trap");
	q.table = "visit";
	while (query_row(&q)) {
		struct matter *m = add(out, MATTER_KEPT, "visit");
		char name[MATTER_TEXT];
		int64_t trap = query_get(&q);
		m->day = query_get_day(&q);
		read_row(&q, b, m);
		m->id = trap;
		visit_name_trap(b, trap, name, sizeof name);
		text_copy(m->name, sizeof m->name, name);
	}
	return query_end(&q, what, e);
}

static bool add_aside(struct book *b, struct matters *out, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT a.kind, coalesce(json_extract(old, '$.name') || ' ' || "
		"json_extract(old, '$.value'), json_extract(old, '$.name'), "
		"json_extract(old, '$.label'), json_extract(old, '$.code'), "
		"json_extract(old, '$.day'), json_extract(old, '$.measure'), "
		"json_extract(old, '$.season'), '') || coalesce(', ' || (SELECT k.name "
		"FROM block k WHERE hex(k.uid) = json_extract(old, '$.block')), '') || "
		"coalesce(', ' || (SELECT f.name FROM farm f WHERE hex(f.uid) = "
		"json_extract(old, '$.farm')), ''), a.uid, coalesce(d.changed_at, "
		"''), coalesce(d.changed_by, ''), a.changed_at, a.changed_by FROM "
		"aside a LEFT JOIN tombstone d ON d.uid = a.uid WHERE NOT EXISTS "
		"(SELECT 1 FROM history h WHERE h.uid = a.uid AND h.trap IS NULL AND "
		"h.old IS NOT NULL AND json_extract(h.old, '$.changed_at') = "
		"a.changed_at AND json_extract(h.old, '$.changed_by') = a.changed_by) "
		"ORDER BY a.kind, 2, a.uid");
	while (query_row(&q)) {
		char table[24], name[MATTER_TEXT - 24];
		query_get_copy(&q, table, sizeof table);
		query_get_copy(&q, name, sizeof name);
		struct matter *m = add(out, MATTER_ASIDE, table);
		read_row(&q, b, m);
		const struct row_kind *kind = row_kind(table);
		snprintf(m->name, sizeof m->name, "%s %s", kind ? _(kind->word) : table,
			name);
	}
	return query_end(&q, what, e);
}

static bool add_names(
	struct book *b, const struct merge_kind *k, struct matters *out, struct err *e)
{
	struct query q;
	char sql[512];

	sqlite3_snprintf(sizeof sql, sql,
		"SELECT t.id, r.base, t.uid, '', '', t.changed_at, t.changed_by FROM "
		"renamed r JOIN \"%w\" t ON t.uid = r.uid WHERE r.field = '%w' AND "
		"r.shown = t.\"%w\" ORDER BY t.id",
		k->table, k->name, k->name);
	query_start_once(&q, b, sql);
	while (query_row(&q)) {
		struct matter *m = add(out, MATTER_NAMES, k->table);
		m->id = query_get(&q);
		query_get_copy(&q, m->typed, sizeof m->typed);
		read_row(&q, b, m);
	}
	return query_end(&q, what, e);
}

bool book_open_matters(struct book *b, struct matters *out, struct err *e)
{
	book_matters_free(out);
	bool ok = add_visits(b, out, e) && add_kept_visits(b, out, e);

	for (size_t i = 0; ok && i < merge_n_kinds; i++)
		ok = add_kept(b, merge_kinds[i].table, out, e) &&
		     (!merge_kinds[i].name || add_names(b, &merge_kinds[i], out, e));
	return ok && add_aside(b, out, e);
}

static struct visit *find_visit(struct visits *all, int64_t trap, int32_t day)
{
	size_t lo = 0, hi = all->n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		const struct visit *v = &all->items[mid];
		if (v->trap < trap || (v->trap == trap && v->day < day))
			lo = mid + 1;
		else
			hi = mid;
	}
	if (lo == all->n || all->items[lo].trap != trap || all->items[lo].day != day)
		return NULL;
	return &all->items[lo];
}

static bool is_plain_count(const struct visit *v)
{
	return v->outcome == OUTCOME_COUNTED ||
	       (v->outcome == OUTCOME_PULLED && v->count != COUNT_NONE);
}

static void widen(struct visit *v, const struct visit *said)
{
	int32_t count = said->count == COUNT_NONE ? 0 : said->count;

	v->least = count < v->least ? count : v->least;
	if (!is_plain_count(said))
		v->most = COUNT_NONE;
	else if (v->most != COUNT_NONE && count > v->most)
		v->most = count;
}

bool visits_mark_disputed(
	struct book *b, int64_t farm, struct visits *all, struct err *e)
{
	struct rival_counts rivals = { 0 };
	bool ok = all->n == 0 ||
		  book_rivals(b, farm, VISIT_DAY_FIRST, VISIT_DAY_LAST, &rivals, e);

	for (size_t i = 0; i < rivals.n; i++) {
		const struct rival_count *r = &rivals.items[i];
		struct visit *v = find_visit(all, r->trap, r->day);
		if (!v ||
			(v->outcome == r->visit.outcome && v->count == r->visit.count))
			continue;
		if (!v->is_disputed) {
			v->least = v->most = v->count == COUNT_NONE ? 0 : v->count;
			widen(v, v);
		}
		v->is_disputed = true;
		widen(v, &r->visit);
	}
	free(rivals.items);
	return ok;
}

bool book_rivals(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct rival_counts *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT CAST(julianday(r.day) - 2415020.5 AS INTEGER) * 1000000 + "
		"r.trap, r.trap, r.day, r.outcome, r.reason, r.count, r.females, "
		"r.others, r.new_card, r.new_lure, r.stirred, CASE r.scout WHEN '' "
		"THEN r.changed_by ELSE r.scout END, CASE v.scout WHEN '' THEN "
		"v.changed_by ELSE v.scout END FROM rival r JOIN visit v ON v.id = "
		"CAST(julianday(r.day) - 2415020.5 AS INTEGER) * 1000000 + r.trap JOIN "
		"trap t ON t.id = r.trap WHERE (?1 IS NULL OR t.farm = ?1) AND r.day "
		"BETWEEN ?2 AND ?3 AND (r.outcome, r.count, r.females, r.others) IS "
		"NOT (v.outcome, v.count, v.females, v.others) ORDER BY r.trap, r.day, "
		"r.changed_at, r.uid");
	q.table = "rival";
	query_id(&q, farm);
	query_limit(&q, from);
	query_limit(&q, to);
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		struct rival_count *r = &out->items[out->n++];
		*r = (struct rival_count){ 0 };
		visit_read(&q, &r->visit, NULL);
		r->trap = r->visit.trap;
		r->day = r->visit.day;
		query_get_copy(&q, r->by, sizeof r->by);
		query_get_copy(&q, r->shown_by, sizeof r->shown_by);
	}
	return query_end(&q, what, e);
}
