/* row.c - what rows are called, and what refers to them. Names of tables come from
 * the list below, names of columns from the book's own shape, which was compared with
 * the shipped one when it was opened. */
#include "row.h"

#include "visit.h"

#include "base/words.h"

#include <stdio.h>
#include <string.h>

static const char put_away[] = N_("put it away instead");

static const struct row_kind kinds[] = {
	{ "farm", NG_("farm", "farms"), "SELECT name, '' FROM farm WHERE id = ?1",
		put_away, NULL, false },
	{ "block", NG_("block", "blocks"),
		"SELECT k.name, f.name FROM block k JOIN farm f ON f.id = k.farm "
		"WHERE k.id = ?1",
		put_away, NULL, false },
	{ "trap", NG_("trap", "traps"),
		"SELECT t.label, f.name FROM trap t JOIN farm f ON f.id = t.farm "
		"WHERE t.id = ?1",
		N_("enter it as pulled instead"), NULL, false },
	{ "pest", NG_("pest", "pests"), "SELECT code, '' FROM pest WHERE id = ?1",
		put_away, NULL, false },
	{ "lure", NG_("lure", "lures"), "SELECT name, '' FROM lure WHERE id = ?1",
		put_away, NULL, false },
	{ "card", NG_("card", "cards"), "SELECT name, '' FROM card WHERE id = ?1",
		put_away, NULL, false },
	{ "threshold", NG_("threshold", "thresholds"),
		"SELECT p.code || ' ' || t.measure, coalesce(k.name, f.name, '') "
		"FROM threshold t JOIN pest p ON p.id = t.pest "
		"LEFT JOIN block k ON k.id = t.block "
		"LEFT JOIN farm f ON f.id = t.farm WHERE t.id = ?1",
		NULL, NULL, false },
	{ "station", NG_("station", "stations"),
		"SELECT name, '' FROM station WHERE id = ?1", NULL, NULL, false },
	{ "biofix", NG_("biofix date", "biofix dates"),
		"SELECT p.code || ' ' || x.season, f.name FROM biofix x "
		"JOIN farm f ON f.id = x.farm JOIN pest p ON p.id = x.pest "
		"WHERE x.id = ?1",
		NULL, NULL, false },
	{ "place", NG_("source", "sources"),
		"SELECT x.name, f.name FROM place x JOIN farm f ON f.id = x.farm "
		"WHERE x.id = ?1",
		NULL, NULL, false },
	{ "setting", NG_("setting", "settings"),
		"SELECT name, '' FROM setting WHERE id = ?1", NULL, NULL, false },
	{ "treatment", NG_("treatment", "treatments"),
		"SELECT x.day, k.name FROM treatment x JOIN block k ON k.id = x.block "
		"WHERE x.id = ?1",
		NULL, NULL, false },
	{ "dispensers", NG_("row of dispensers", "rows of dispensers"),
		"SELECT x.day, k.name FROM dispensers x JOIN block k ON k.id = "
		"x.block WHERE x.id = ?1",
		NULL, NULL, false },
	{ "answer", NG_("answer", "answers"),
		"SELECT x.day, k.name FROM answer x JOIN block k ON k.id = x.block "
		"WHERE x.id = ?1",
		NULL, NULL, false },
	{ "pick", NG_("pick", "picks"),
		"SELECT x.day, k.name FROM pick x JOIN block k ON k.id = x.block "
		"WHERE x.id = ?1",
		NULL, NULL, false },
	{ "fruit_check", NG_("fruit check", "fruit checks"),
		"SELECT x.day, k.name FROM fruit_check x JOIN block k ON k.id = "
		"x.block WHERE x.id = ?1",
		NULL, NULL, false },
	{ "visit", NG_("visit", "visits"),
		"SELECT v.day, t.label || ', ' || f.name FROM visit v "
		"JOIN trap t ON t.id = v.trap JOIN farm f ON f.id = t.farm "
		"WHERE v.id = ?1",
		NULL,
		"id = (SELECT CAST(julianday(day) - 2415020.5 AS INTEGER) * 1000000 + "
		"trap FROM history WHERE id = ?1)",
		true },
	{ "weather", N_("day of weather"), N_("days of weather"),
		"SELECT h.day, s.name FROM history h JOIN station s ON s.id = "
		"h.station WHERE h.id = ?1",
		NULL,
		"(station, day) = (SELECT station, day FROM history WHERE id = ?1)",
		true },
	{ "rival", NG_("second count", "second counts"),
		"SELECT v.day, t.label FROM rival v JOIN trap t ON t.id = v.trap "
		"WHERE v.id = ?1",
		NULL, NULL, false },
};

const struct row_kind *row_kind(const char *table)
{
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(kinds[i].table, table) == 0)
			return &kinds[i];
	return NULL;
}

/* False: there is no such row. */
static bool read_name(struct book *b, const struct row_kind *k, int64_t id,
	char name[static NAME_BYTES], char of[static 2 * NAME_BYTES])
{
	struct query q;
	bool found;

	query_start(&q, b, k->name);
	query_int(&q, id);
	found = query_row(&q);
	if (found) {
		query_get_copy(&q, name, NAME_BYTES);
		query_get_copy(&q, of, 2 * (size_t)NAME_BYTES);
	}
	query_end(&q, "", NULL);
	return found;
}

void row_name(
	struct book *b, const struct row_kind *k, int64_t id, char *out, size_t size)
{
	char name[NAME_BYTES], of[2 * NAME_BYTES];

	if (read_name(b, k, id, name, of))
		snprintf(out, size, "%s", name);
	else
		snprintf(out, size, _("number %lld"), (long long)id);
}

void row_say(
	struct book *b, const struct row_kind *k, int64_t id, char *out, size_t size)
{
	char name[NAME_BYTES], of[2 * NAME_BYTES];

	if (!read_name(b, k, id, name, of))
		snprintf(out, size, _("%s number %lld"), _(k->word), (long long)id);
	else if (strcmp(k->table, "visit") == 0)
		snprintf(out, size, _("visit of %s at trap %s"), name, of);
	else if (*of)
		snprintf(out, size, _("%s %s of %s"), _(k->word), name, of);
	else
		snprintf(out, size, _("%s %s"), _(k->word), name);
}

bool row_seek(struct query *q, struct book *b, const struct row_kind *k,
	const char *columns, int64_t id)
{
	char sql[128];

	sqlite3_snprintf(sizeof sql, sql, "SELECT %s FROM \"%w\" WHERE id = ?1",
		columns, k->table);
	query_start_once(q, b, sql);
	query_int(q, id);
	return query_row(q);
}

bool row_read(struct query *q, const struct row_kind *k, bool found, struct err *e)
{
	if (!query_end(q, N_("the book cannot be read"), e))
		return false;
	return found || err_set(e, ERR_NOT_FOUND,
				_("the %s is not in the book any more"), _(k->word));
}

int64_t row_of_change(struct book *b, const struct row_kind *k, int64_t change)
{
	struct query q;
	int64_t id = 0;
	char sql[512];

	if (strcmp(k->table, "weather") == 0)
		return 0;
	sqlite3_snprintf(sizeof sql, sql,
		"SELECT id FROM \"%w\" WHERE uid = (SELECT uid FROM history "
		"WHERE id = ?1)%s%s",
		k->table, k->at ? " AND " : "", k->at ? k->at : "");
	query_start_once(&q, b, sql);
	query_int(&q, change);
	if (query_row(&q))
		id = query_get(&q);
	query_end(&q, "", NULL);
	return id;
}

void row_say_change(struct book *b, const struct row_kind *k, int64_t change, char *out,
	size_t size)
{
	bool by_change = strcmp(k->table, "weather") == 0;

	row_say(b, k, by_change ? change : row_of_change(b, k, change), out, size);
}

const struct row_kind *row_parent(
	struct book *b, const struct row_kind *k, const char *column)
{
	const struct row_kind *parent = NULL;
	struct query q;

	query_start(&q, b,
		"SELECT \"table\" FROM pragma_foreign_key_list(?1) WHERE \"from\" = "
		"?2");
	query_text(&q, k->table);
	query_text(&q, column);
	if (query_row(&q))
		parent = row_kind(query_get_text(&q));
	query_end(&q, "", NULL);
	return parent;
}

/* Adds "12 visits" when there are any. */
static bool add_users(struct query *refs, int64_t id, struct buf *out, const char *what,
	struct err *e)
{
	const char *table = query_get_text(refs), *column = query_get_text(refs);
	const struct row_kind *k = row_kind(table);
	bool of_trap = strcmp(table, "visit") == 0 && strcmp(column, "trap") == 0;
	struct query q;
	char sql[512];
	int64_t n = 0;

	sqlite3_snprintf(sizeof sql, sql,
		"SELECT count(*) FROM \"%w\" WHERE \"%w\" = ?1%s", table, column,
		of_trap ? " AND id IN " VISIT_IDS("?1") : "");
	query_start_once(&q, refs->book, sql);
	query_int(&q, id);
	if (query_row(&q))
		n = query_get(&q);
	if (!query_end(&q, what, e))
		return false;
	if (n > 0 && k)
		buf_addf(out, "%s%lld %s", out->n ? ", " : "", (long long)n,
			ngettext(k->word, k->words, (unsigned long)n));
	return true;
}

bool row_users(struct book *b, const struct row_kind *k, int64_t id, struct buf *out,
	const char *what, struct err *e)
{
	struct query q;
	bool ok = true;

	query_start(&q, b,
		"SELECT m.name, f.\"from\" FROM sqlite_schema m JOIN "
		"pragma_foreign_key_list(m.name) f WHERE m.type = 'table' AND "
		"f.\"table\" = ?1 ORDER BY m.rowid");
	query_text(&q, k->table);
	while (ok && query_row(&q))
		ok = add_users(&q, id, out, what, e);
	return query_end(&q, what, ok ? e : NULL) && ok;
}

bool row_columns(struct book *b, const struct row_kind *k, const char *before,
	const char *after, struct buf *out)
{
	struct query q;
	bool more = false;

	query_start(&q, b,
		"SELECT name FROM pragma_table_info(?1) WHERE name NOT IN ('uid', "
		"'changed_at', 'changed_by') ORDER BY cid");
	query_text(&q, k->table);
	while (query_row(&q)) {
		const char *name = query_get_text(&q);
		buf_addf(out, "%s%s%s%s", more ? ", " : "", before, name, after);
		more = true;
	}
	return query_end(&q, "", NULL) && more;
}
