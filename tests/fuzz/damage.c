#include "damage.h"

#include "fuzz.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The arguments: three numbers and what is left. */
struct blow {
	uint8_t kind, a, b, c;
	size_t at; /* of the file */
	uint16_t much;
};

static struct blow read_blow(const uint8_t d[static DAMAGE_BYTES])
{
	return (struct blow){ d[0], d[1], d[2], d[3],
		(size_t)d[4] << 16 | (size_t)d[5] << 8 | d[6],
		(uint16_t)(d[3] << 8 | d[7]) };
}

static void each(const uint8_t *data, size_t n,
	void (*strike)(void *what, const struct blow *blow), void *what)
{
	for (size_t i = 0; i < DAMAGE_MOST && n >= DAMAGE_BYTES; i++) {
		const struct blow blow = read_blow(data);

		strike(what, &blow);
		data += DAMAGE_BYTES;
		n -= DAMAGE_BYTES;
	}
}

struct bytes {
	uint8_t *items;
	size_t n;
};

static void splice(struct bytes *file, const struct blow *blow, size_t at)
{
	size_t from = ((size_t)blow->a << 8 | blow->b) * 16 % file->n;
	size_t most = file->n - (from > at ? from : at);

	memmove(file->items + at, file->items + from,
		blow->much < most ? blow->much : most);
}

static void strike_file(void *what, const struct blow *blow)
{
	struct bytes *file = what;
	size_t at = file->n > 0 ? blow->at % file->n : 0;

	if (file->n == 0)
		return;
	switch (blow->kind % 8) {
	case 0:
	case 1:
	case 2:
		file->items[at] ^= (uint8_t)(1u << blow->a % 8);
		break;
	case 3:
	case 4:
	case 5:
		file->items[at] = blow->a;
		break;
	case 6:
		splice(file, blow, at);
		break;
	default:
		file->n = blow->a < 8 ? at : file->n;
	}
}

void damage_file(const char *path, const uint8_t *data, size_t n)
{
	struct stat st;
	int fd = open(path, O_RDWR | O_CLOEXEC);

	must(fd >= 0 && fstat(fd, &st) == 0);
	struct bytes file = { malloc((size_t)st.st_size), (size_t)st.st_size };
	must(file.items && pread(fd, file.items, file.n, 0) == st.st_size);
	each(data, n, strike_file, &file);
	must(pwrite(fd, file.items, file.n, 0) == (ssize_t)file.n &&
		ftruncate(fd, (off_t)file.n) == 0);
	close(fd);
	free(file.items);
}

/* The i-th text that a query gives, going round; "" when it gives none. */
static void pick(sqlite3 *db, const char *sql, unsigned i, char out[static 64])
{
	sqlite3_stmt *s = NULL;
	unsigned n = 0;

	*out = '\0';
	must(sqlite3_prepare_v2(db, sql, -1, &s, NULL) == SQLITE_OK);
	while (sqlite3_step(s) == SQLITE_ROW)
		n++;
	sqlite3_reset(s);
	for (i = n > 0 ? i % n + 1 : 0; i > 0; i--)
		sqlite3_step(s);
	if (n > 0)
		snprintf(out, 64, "%s", (const char *)sqlite3_column_text(s, 0));
	sqlite3_finalize(s);
}

static const char *const values[] = { "NULL", "0", "1", "2", "-1", "9999", "10000",
	"2147483648", "-9223372036854775808", "1e308", "1e999", "''", "'x'",
	"'counted'", "'hung'", "'2026-07-14'", "'2026-02-30'", "'2199-12-31'",
	"'2030-01-01T00:00:00.000Z'", "'9999-99-99T99:99:99.999Z'", "x'00'",
	"zeroblob(16)", "randomblob(16)", "char(27) || '[2J'", "CAST(x'F09F' AS TEXT)",
	"printf('%.300c', 'x')", "'{}'", "'{\"count\":5}'", "'['", "changed_at", "uid",
	"id + 1" };

static void strike_rows(void *what, const struct blow *blow)
{
	sqlite3 *db = what;
	char table[64], column[64], sql[512];

	pick(db,
		"SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE "
		"'sqlite%' ORDER BY name",
		blow->a, table);
	sqlite3_snprintf(
		sizeof sql, sql, "SELECT name FROM pragma_table_info('%q')", table);
	pick(db, sql, blow->b, column);
	if (blow->kind % 8 == 7)
		sqlite3_snprintf(sizeof sql, sql,
			"DELETE FROM \"%w\" WHERE rowid = (SELECT rowid FROM \"%w\" "
			"LIMIT 1 OFFSET %d)",
			table, table, blow->c % 32);
	else
		sqlite3_snprintf(sizeof sql, sql,
			"UPDATE OR REPLACE \"%w\" SET \"%w\" = %s WHERE rowid = "
			"(SELECT rowid FROM \"%w\" LIMIT 1 OFFSET %d)",
			table, column,
			blow->kind % 8 == 6
				? "(SELECT name FROM pest LIMIT 1)"
				: values[blow->at % (sizeof values / sizeof *values)],
			table, blow->c % 32);
	sqlite3_exec(db, sql, NULL, NULL, NULL);
}

void damage_rows(const char *path, const uint8_t *data, size_t n)
{
	sqlite3 *db = NULL;

	must(sqlite3_open(path, &db) == SQLITE_OK);
	sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
	sqlite3_exec(db,
		"PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; "
		"PRAGMA synchronous = OFF; BEGIN",
		NULL, NULL, NULL);
	each(data, n, strike_rows, db);
	sqlite3_exec(db, "COMMIT", NULL, NULL, NULL);
	sqlite3_close(db);
}
