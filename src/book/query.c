/* query.c - prepared statements, kept for the life of the book. */
#include "query.h"

#include "base/text.h"
#include "base/words.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static int code_at_start(const struct book *b)
{
	return store_is_lost(b) ? SQLITE_ABORT : SQLITE_OK;
}

void query_start(struct query *q, struct book *b, const char *sql)
{
	*q = (struct query){ .book = b, .code = code_at_start(b), .at = 1 };
	if (q->code != SQLITE_OK)
		return;
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

void query_start_once(struct query *q, struct book *b, const char *sql)
{
	*q = (struct query){
		.book = b, .once = true, .code = code_at_start(b), .at = 1
	};
	if (q->code == SQLITE_OK)
		q->code = sqlite3_prepare_v2(b->db, sql, -1, &q->statement, NULL);
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
	assert(q->n_days < QUERY_DAYS);
	char *iso = q->days[q->n_days++];

	day_iso(day, iso);
	query_word(q, iso);
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

/* The column just read, harmless and cut between characters. */
static void copy_last(struct query *q, char *out, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(q->statement, q->at - 1);
	size_t n = (size_t)sqlite3_column_bytes(q->statement, q->at - 1), used = 0;

	for (size_t at = 0, step; text && at < n; at += step) {
		uint32_t cp;
		step = text_decode(text + at, n - at, &cp);
		bool bad = text_control(cp) || (cp == 0xFFFD && step == 1);
		size_t bytes = bad ? 1 : step;
		if (used + bytes >= size)
			break;
		memcpy(out + used, bad ? "?" : text + at, bytes);
		used += bytes;
	}
	out[used] = '\0';
}

void query_require(struct query *q, bool good)
{
	char value[64];

	if (good || q->code != SQLITE_OK)
		return;
	const char *column = sqlite3_column_name(q->statement, q->at - 1);
	copy_last(q, value, sizeof value);
	snprintf(q->damage, sizeof q->damage, _("in the table %s, %s is \"%s\""),
		q->table ? q->table : "?", column ? column : "?", value);
	q->code = SQLITE_CORRUPT;
}

int32_t query_get_within(struct query *q, int32_t lo, int32_t hi)
{
	int type = sqlite3_column_type(q->statement, q->at);
	int64_t value = query_get(q);
	bool good = (type == SQLITE_INTEGER || type == SQLITE_NULL) && value >= lo &&
		    value <= hi;

	query_require(q, good);
	return good ? (int32_t)value : lo;
}

int32_t query_get32(struct query *q)
{
	return query_get_within(q, INT32_MIN, INT32_MAX);
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
	return next_is_null(q) ? COUNT_NONE : query_get_within(q, 0, INT32_MAX);
}

int32_t query_get_day(struct query *q)
{
	int32_t day = DAY_NONE;

	if (!next_is_null(q))
		query_require(q, day_parse(query_get_text(q), &day));
	return day;
}

double query_get_real(struct query *q, bool *given)
{
	*given = !next_is_null(q);
	return *given ? sqlite3_column_double(q->statement, q->at++) : 0;
}

double query_get_degrees(struct query *q)
{
	bool given;
	double degrees = query_get_real(q, &given);

	query_require(q, degrees >= -150 && degrees <= 150);
	return given ? degrees : (double)NAN;
}

char query_get_unit(struct query *q)
{
	const char *text = query_get_text(q);

	query_require(q, !*text || !strcmp(text, "C") || !strcmp(text, "F"));
	return *text;
}

const char *query_get_text(struct query *q)
{
	const char *text = (const char *)sqlite3_column_text(q->statement, q->at++);

	return text ? text : "";
}

void query_get_copy(struct query *q, char *out, size_t size)
{
	q->at++;
	copy_last(q, out, size);
}

void query_get_uid(struct query *q, unsigned char out[static STORE_UID_BYTES])
{
	const void *uid = sqlite3_column_blob(q->statement, q->at);
	bool good = sqlite3_column_bytes(q->statement, q->at++) == STORE_UID_BYTES;

	memset(out, 0, STORE_UID_BYTES);
	if (good)
		memcpy(out, uid, STORE_UID_BYTES);
	query_require(q, good);
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
	if (*q->damage)
		ok = err_set(e, ERR_BOOK,
			_("%s: the book is damaged: %s; its backups are in the folder "
			  "backups beside it (%s)"),
			_(what), q->damage, q->book->path);
	else if (q->code != SQLITE_OK && q->code != SQLITE_DONE)
		ok = store_fail(q->book, q->code, what, e);
	if (q->once) {
		sqlite3_finalize(q->statement);
		q->statement = NULL;
	} else if (q->statement) {
		sqlite3_reset(q->statement);
		sqlite3_clear_bindings(q->statement);
	}
	return ok;
}
