/* merge_settle.c - a person settles what a merge left open: an ordinary change under
 * their name, which other books take over by the same rules. What it settles goes into
 * the history as a version that was known and given up. */
#include "merge_parts.h"

#include "row.h"
#include "visit.h"

#include "base/words.h"
#include "book/diary.h"
#include "book/matters.h"
#include "book/steps.h"

#include <string.h>

static const char *const what = N_("nothing is settled");

#define RIVAL_SAYS                                                                     \
	"outcome = ?4 AND reason IS ?5 AND count IS ?6 AND females IS ?7 AND others "  \
	"IS ?8 AND new_card IS ?9 AND new_lure IS ?10"

static void bind_rivals(struct query *q, int64_t trap, int32_t day)
{
	query_int(q, trap);
	query_day(q, day);
}

static void bind_said(struct query *q, const struct visit *old)
{
	query_int(q, old == NULL);
	if (!old)
		return;
	query_text(q, outcome_word(old->outcome));
	query_word(q, reason_word(old->reason));
	query_count(q, old->count);
	query_count(q, old->females);
	query_count(q, old->others);
	query_id(q, old->new_card);
	query_id(q, old->new_lure);
}

static bool log_rivals(struct book *b, int64_t trap, int32_t day,
	const struct visit *old, const char *why, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT INTO history (kind, uid, op, trap, day, undoes, old, at, by) "
		"SELECT 'visit', uid, 'update', trap, day, 0, json_object('id', "
		"CAST(julianday(day) - 2415020.5 AS INTEGER) * 1000000 + trap, "
		"'trap', trap, 'day', day, 'outcome', outcome, 'reason', reason, "
		"'count', count, 'females', females, 'others', others, 'new_card', "
		"new_card, 'new_lure', new_lure, 'stirred', stirred, 'scout', scout, "
		"'note', note, 'uid', hex(uid), 'changed_at', changed_at, "
		"'changed_by', changed_by), ?11, ?12 FROM rival WHERE trap = ?1 AND "
		"day = ?2 AND (?3 OR " RIVAL_SAYS ")");
	bind_rivals(&q, trap, day);
	bind_said(&q, old);
	q.at = 11;
	query_stamp(&q);
	return query_end(&q, why, e);
}

bool visit_settle_rivals(struct book *b, int64_t trap, int32_t day,
	const struct visit *old, const char *why, struct err *e)
{
	struct query q;

	if (!log_rivals(b, trap, day, old, why, e))
		return false;
	query_start(&q, b,
		"DELETE FROM rival WHERE trap = ?1 AND day = ?2 AND (?3 OR " RIVAL_SAYS
		")");
	bind_rivals(&q, trap, day);
	bind_said(&q, old);
	return query_end(&q, why, e);
}

static bool any_rival(struct book *b, int64_t trap, int32_t day, struct err *e)
{
	struct query q;

	query_start(&q, b, "SELECT 1 FROM rival WHERE trap = ?1 AND day = ?2");
	bind_rivals(&q, trap, day);
	bool found = query_row(&q);
	if (!query_end(&q, what, e))
		return false;
	return found || err_set(e, ERR_NOT_FOUND,
				_("this visit is settled already; look again"));
}

/* The visit as it stands is confirmed: the same again, by the one who settles. */
static bool confirm(struct book *b, const struct visit *v, const struct visit_words *w,
	struct err *e)
{
	struct visit_words old_words = { 0 };
	unsigned char uid[STORE_UID_BYTES];
	struct visit old = *v;
	struct query q;
	bool found;

	if (!visit_find(b, &old, &old_words, uid, &found, e))
		return false;
	if (!found || !visit_same(v, &old))
		return book_save_visit(b, v, w, e);
	visit_update(&q, b, v, w ? w : &old_words);
	return query_end(&q, what, e);
}

static bool take_out(struct book *b, int64_t trap, int32_t day, struct err *e)
{
	bool found;

	return visit_bury(b, trap, day, &found, what, e);
}

bool book_settle_visit(struct book *b, int64_t trap, int32_t day, const struct visit *v,
	const struct visit_words *w, struct err *e)
{
	if (!any_rival(b, trap, day, e) || !book_begin(b, e))
		return false;
	bool ok = (v ? confirm(b, v, w, e) : take_out(b, trap, day, e)) &&
		  visit_settle_rivals(b, trap, day, NULL, what, e);
	if (ok)
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

static bool run_one(struct book *b, const char *sql, const struct matter *m,
	bool stamped, struct err *e)
{
	struct query q;

	query_start_once(&q, b, sql);
	query_blob(&q, m->uid);
	if (stamped)
		query_stamp(&q);
	query_row(&q);
	bool missing = (q.code & 0xff) == SQLITE_CONSTRAINT;
	bool taken = query_taken(&q);
	bool ok = query_end(&q, what, missing ? NULL : e);
	if (taken)
		return err_set(e, ERR_INPUT,
			_("%s: there is another %s of that name in its place"), _(what),
			m->table);
	return ok || (missing && err_set(e, ERR_INPUT,
					 _("%s: something that it belongs to is not in "
					   "the book"),
					 _(what)));
}

/* It was seen that it had been removed: no other book's removal is news any more. */
static bool put_in_again(struct book *b, const struct matter *m, struct err *e)
{
	char sql[512];

	if (strcmp(m->table, "visit") == 0)
		sqlite3_snprintf(sizeof sql, sql,
			"INSERT INTO history (kind, uid, op, trap, day, undoes, at, "
			"by) SELECT 'visit', uid, 'insert', trap, day, 0, ?2, ?3 FROM "
			"visit WHERE id = %lld AND uid = ?1",
			(long long)visit_id(m->id, m->day));
	else
		sqlite3_snprintf(sizeof sql, sql,
			"INSERT INTO history (kind, uid, op, undoes, at, by) VALUES "
			"('%w', ?1, 'insert', 0, ?2, ?3)",
			m->table);
	return run_one(b, sql, m, true, e) &&
	       run_one(b, "DELETE FROM tombstone WHERE uid = ?1", m, false, e);
}

static bool keep_shown(struct book *b, const struct matter *m, struct err *e)
{
	char sql[512];

	if (strcmp(m->table, "visit") == 0)
		sqlite3_snprintf(sizeof sql, sql,
			"UPDATE visit SET changed_at = ?2, changed_by = ?3 WHERE id = "
			"%lld AND uid = ?1",
			(long long)visit_id(m->id, m->day));
	else
		sqlite3_snprintf(sizeof sql, sql,
			"UPDATE \"%w\" SET changed_at = ?2, changed_by = ?3 WHERE uid "
			"= ?1",
			m->table);
	return run_one(b, sql, m, true, e) && put_in_again(b, m, e);
}

/* SQL that puts the row from aside into its table. */
static bool write_back(
	struct book *b, const struct matter *m, struct buf *sql, struct err *e)
{
	struct merge ask = { .b = b, .what = what, .e = e, .ok = true };
	struct merge_column columns[MERGE_COLUMNS];
	size_t n = merge_columns(&ask, m->table, columns);

	buf_addf(sql, "INSERT INTO %s (", m->table);
	for (size_t i = 0; i < n; i++)
		buf_addf(sql, "%s, ", columns[i].name);
	buf_add(sql, "uid, changed_at, changed_by) SELECT ");
	for (size_t i = 0; i < n; i++)
		if (strcmp(m->table, "trap") == 0 &&
			strcmp(columns[i].name, "farm") == 0)
			buf_add(sql, "(SELECT k.farm FROM block k WHERE hex(k.uid) = "
				     "json_extract(old, '$.block')), ");
		else if (*columns[i].parent)
			buf_addf(sql,
				"(SELECT p.id FROM %s p WHERE hex(p.uid) = "
				"json_extract(old, '$.%s')), ",
				columns[i].parent, columns[i].name);
		else
			buf_addf(sql, "json_extract(old, '$.%s'), ", columns[i].name);
	buf_add(sql, "uid, ?2, ?3 FROM aside WHERE uid = ?1");
	return ask.ok;
}

static bool settings_fit(struct book *b, const struct matter *m, struct err *e)
{
	struct limits limits;
	struct err why;

	return strcmp(m->table, "setting") != 0 || store_limits(b, &limits, &why) ||
	       err_set(e, why.kind, "%s: %s", _(what), why.text);
}

static bool bring_back(struct book *b, const struct matter *m, struct err *e)
{
	struct buf sql = { 0 };
	bool ok = write_back(b, m, &sql, e) && run_one(b, sql.text, m, true, e) &&
		  settings_fit(b, m, e) && put_in_again(b, m, e) &&
		  run_one(b, "DELETE FROM aside WHERE uid = ?1", m, false, e);

	buf_free(&sql);
	return ok;
}

/* What only did not go with another row is removed by that, or it would come back as
 * soon as it does. */
static bool leave_out(struct book *b, const struct matter *m, struct err *e)
{
	return run_one(b,
		       "INSERT INTO history (kind, uid, op, undoes, old, at, by) "
		       "SELECT kind, uid, 'update', 0, json_set(old, '$.changed_at', "
		       "changed_at, '$.changed_by', changed_by), ?2, ?3 FROM aside "
		       "WHERE uid = ?1",
		       m, true, e) &&
	       (*m->removed_at ||
		       run_one(b,
			       "INSERT OR REPLACE INTO tombstone (uid, kind, "
			       "changed_at, changed_by) SELECT uid, kind, ?2, ?3 FROM "
			       "aside WHERE uid = ?1",
			       m, true, e));
}

/* The name that a merge gave is the row's own from now on. */
static bool keep_name(struct book *b, const struct matter *m, struct err *e)
{
	char sql[256];

	sqlite3_snprintf(sizeof sql, sql,
		"UPDATE \"%w\" SET changed_at = ?2, changed_by = ?3 WHERE uid = ?1",
		m->table);
	return run_one(b, sql, m, true, e) &&
	       run_one(b,
		       "DELETE FROM renamed WHERE uid = ?1 AND field <> "
		       "'driving_order'",
		       m, false, e);
}

static bool settle(struct book *b, const struct matter *m, bool keep, struct err *e)
{
	bool visit = strcmp(m->table, "visit") == 0;

	if (m->what == MATTER_NAMES)
		return keep_name(b, m, e);
	if (m->what == MATTER_ASIDE)
		return keep ? bring_back(b, m, e) : leave_out(b, m, e);
	if (keep)
		return keep_shown(b, m, e);
	return visit ? book_remove_visit(b, m->id, m->day, e)
		     : book_remove(b, m->table, m->id, e);
}

bool book_settle_row(struct book *b, const struct matter *m, bool keep, struct err *e)
{
	if (!row_kind(m->table))
		return err_set(e, ERR_INPUT, _("there is no table %s"), m->table);
	if (!book_begin(b, e))
		return false;
	if (settle(b, m, keep, e))
		return book_commit(b, e);
	book_rollback(b);
	return false;
}
