/* query.c - prepared statements, kept for the life of the book. */
#include "query.h"

#include "base/text.h"

#include <assert.h>
#include <string.h>

void query_start(struct query *q, struct book *b, const char *sql)
{
	*q = (struct query){ .book = b, .code = SQLITE_OK, .at = 1 };
	for (size_t i = 0; i < b->n_kept; i++) {
		if (b->kept[i].sql == sql) {
			q->statement = b->kept[i].statement;
			return;
		}
	}
	assert(b->n_kept < STORE_STATEMENTS);
	q->code = sqlite3_prepare_v3(
		b->db, sql, -1, SQLITE_PREPARE_PERSISTENT, &q->statement, NULL);
	if (q->code != SQLITE_OK)
		return;
	b->kept[b->n_kept].sql = sql;
	b->kept[b->n_kept++].statement = q->statement;
}

void query_int(struct query *q, int64_t value)
{
	if (q->code == SQLITE_OK)
		q->code = sqlite3_bind_int64(q->statement, q->at++, value);
}

static void query_null(struct query *q)
{
	q->at++; /* what is not bound is NULL */
}

void query_id(struct query *q, int64_t id)
{
	if (id == 0)
		query_null(q);
	else
		query_int(q, id);
}

void query_count(struct query *q, int64_t count)
{
	if (count < 0)
		query_null(q);
	else
		query_int(q, count);
}

void query_text(struct query *q, const char *text)
{
	if (q->code == SQLITE_OK)
		q->code = sqlite3_bind_text(
			q->statement, q->at++, text, -1, SQLITE_STATIC);
}

void query_word(struct query *q, const char *word)
{
	if (*word == '\0')
		query_null(q);
	else
		query_text(q, word);
}

void query_day(struct query *q, int32_t day)
{
	char iso[DAY_ISO_SIZE];

	day_iso(day, iso);
	if (*iso == '\0')
		query_null(q);
	else if (q->code == SQLITE_OK)
		q->code = sqlite3_bind_text(
			q->statement, q->at++, iso, -1, SQLITE_TRANSIENT);
}

void query_limit(struct query *q, int32_t day)
{
	int32_t first = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	int32_t last = day_from_ymd(DAY_YEAR_MAX, 12, 31);

	query_day(q, day < first ? first : day > last ? last : day);
}

void query_real(struct query *q, bool given, double value)
{
	if (!given)
		query_null(q);
	else if (q->code == SQLITE_OK)
		q->code = sqlite3_bind_double(q->statement, q->at++, value);
}

void query_stamp(struct query *q)
{
	store_time(q->book, q->now);
	query_text(q, q->now);
	query_text(q, q->book->who);
}

void query_blob(struct query *q, const unsigned char uid[static STORE_UID_BYTES])
{
	if (q->code == SQLITE_OK)
		q->code = sqlite3_bind_blob(
			q->statement, q->at++, uid, STORE_UID_BYTES, SQLITE_STATIC);
}

void query_uid(struct query *q)
{
	sqlite3_randomness(sizeof q->uid, q->uid);
	query_blob(q, q->uid);
}

bool query_row(struct query *q)
{
	if (q->code != SQLITE_OK)
		return false;
	q->at = 0;
	q->code = sqlite3_step(q->statement);
	if (q->code != SQLITE_ROW)
		return false;
	q->code = SQLITE_OK;
	return true;
}

int64_t query_get(struct query *q)
{
	return sqlite3_column_int64(q->statement, q->at++);
}

int32_t query_get32(struct query *q)
{
	return sqlite3_column_int(q->statement, q->at++);
}

static bool next_is_null(struct query *q)
{
	if (sqlite3_column_type(q->statement, q->at) != SQLITE_NULL)
		return false;
	q->at++;
	return true;
}

int32_t query_get_count(struct query *q)
{
	return next_is_null(q) ? COUNT_NONE : query_get32(q);
}

int32_t query_get_day(struct query *q)
{
	int32_t day;

	return day_parse(query_get_text(q), &day) ? day : DAY_NONE;
}

double query_get_real(struct query *q, bool *given)
{
	*given = !next_is_null(q);
	return *given ? sqlite3_column_double(q->statement, q->at++) : 0;
}

const char *query_get_text(struct query *q)
{
	const char *text = (const char *)sqlite3_column_text(q->statement, q->at++);

	return text ? text : "";
}

void query_get_copy(struct query *q, char *out, size_t size)
{
	text_copy(out, size, query_get_text(q));
}

void query_get_uid(struct query *q, unsigned char out[static STORE_UID_BYTES])
{
	const void *uid = sqlite3_column_blob(q->statement, q->at);

	memset(out, 0, STORE_UID_BYTES);
	if (uid && sqlite3_column_bytes(q->statement, q->at) == STORE_UID_BYTES)
		memcpy(out, uid, STORE_UID_BYTES);
	q->at++;
}

bool query_taken(const struct query *q)
{
	return q->code == SQLITE_CONSTRAINT_UNIQUE ||
	       q->code == SQLITE_CONSTRAINT_PRIMARYKEY;
}

bool query_end(struct query *q, const char *what, struct err *e)
{
	bool ok = true;

	if (q->code == SQLITE_OK && !sqlite3_column_count(q->statement))
		query_row(q);
	if (q->code != SQLITE_OK && q->code != SQLITE_DONE)
		ok = store_fail(q->book, q->code, what, e);
	if (q->statement) {
		sqlite3_reset(q->statement);
		sqlite3_clear_bindings(q->statement);
	}
	return ok;
}
