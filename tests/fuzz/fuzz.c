#define _XOPEN_SOURCE 700 /* nftw */

#include "fuzz.h"

#include "base/day.h"
#include "base/shipped.h"
#include "base/text.h"

#include <fcntl.h>
#include <ftw.h>
#include <sqlite3.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static char folder[FUZZ_PATH / 2];
static int was_in = -1;

static int remove_one(const char *path, const struct stat *st, int what, struct FTW *at)
{
	(void)st, (void)what, (void)at;
	return remove(path);
}

static void drop_folder(void)
{
	nftw(folder, remove_one, 16, FTW_DEPTH | FTW_PHYS);
}

static void make_folder(void)
{
	const char *under = getenv("TMPDIR");

	snprintf(folder, sizeof folder, "%.80s/fuzz-XXXXXX",
		under && *under ? under : "/tmp");
	must(mkdtemp(folder) != NULL);
	atexit(drop_folder);
	setenv("HOME", folder, 1);
	setenv("TMPDIR", folder, 1);
	setenv("PATH", folder, 1);
	setenv("TZ", "UTC", 1);
}

/* SQLite asks for memory all the time. It is not what is tried here, and the sanitizer
 * would make it three times as slow: its memory comes from below the sanitizer. */
void *__libc_malloc(size_t n);
void *__libc_realloc(void *p, size_t n);
void __libc_free(void *p);

enum { AHEAD = 16 }; /* holds the size */

static void *mark(char *p, int n)
{
	if (!p)
		return NULL;
	memcpy(p, &n, sizeof n);
	return p + AHEAD;
}

static void *get(int n)
{
	return mark(__libc_malloc((size_t)n + AHEAD), n);
}

static void *resize(void *p, int n)
{
	return mark(__libc_realloc((char *)p - AHEAD, (size_t)n + AHEAD), n);
}

static void give_back(void *p)
{
	__libc_free((char *)p - AHEAD);
}

static int size_of(void *p)
{
	int n;

	memcpy(&n, (char *)p - AHEAD, sizeof n);
	return n;
}

static int round_up(int n)
{
	return (n + 7) & ~7;
}

static int begin(void *arg)
{
	(void)arg;
	return SQLITE_OK;
}

static void end(void *arg)
{
	(void)arg;
}

static void spare_sqlite(void)
{
	static const sqlite3_mem_methods below = { get, give_back, resize, size_of,
		round_up, begin, end, NULL };

	must(sqlite3_config(SQLITE_CONFIG_MALLOC, &below) == SQLITE_OK &&
		sqlite3_config(SQLITE_CONFIG_SINGLETHREAD) == SQLITE_OK &&
		sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0) == SQLITE_OK);
}

int LLVMFuzzerInitialize(int *argc, char ***argv)
{
	(void)argc, (void)argv;
	make_folder();
	spare_sqlite();
	return 0;
}

void fuzz_path(char out[static FUZZ_PATH], const char *name)
{
	snprintf(out, FUZZ_PATH, "%s/%s", folder, name);
}

void fuzz_enter(void)
{
	char path[FUZZ_PATH];

	fuzz_path(path, "");
	was_in = open(".", O_RDONLY | O_CLOEXEC);
	must(was_in >= 0 && chdir(path) == 0);
}

void fuzz_leave(void)
{
	must(fchdir(was_in) == 0);
	close(was_in);
}

int32_t fuzz_today(void)
{
	int32_t day = DAY_NONE;

	must(day_parse(FUZZ_TODAY, &day));
	return day;
}

FILE *fuzz_file(const uint8_t *data, size_t n, char **copy)
{
	*copy = malloc(n + 1);
	must(*copy != NULL);
	memcpy(*copy, data, n);
	FILE *file = n > 0 ? fmemopen(*copy, n, "r") : fopen("/dev/null", "r");
	must(file != NULL);
	return file;
}

/* At most so many rows, the head among them. */
static size_t length(const struct shipped *s, int rows)
{
	size_t n = 0;

	while (n < s->n && rows > 0)
		rows -= s->text[n++] == '\n';
	return n;
}

static void take_shipped(struct book *b, const char *kind, int rows)
{
	char name[64];
	bool changed;

	snprintf(name, sizeof name, "demo/%s.csv", kind);
	const struct shipped *s = shipped_find(name);
	must(s && fuzz_import(b, kind_find(kind, NULL), (const uint8_t *)s->text,
			  length(s, rows), &changed));
}

const char *fuzz_season(int rows)
{
	static const char *const parts[] = { "traps", "places", "visits", "thresholds",
		"weather", "biofix", "dispensers", "treatments", "picks",
		"fruit-checks", "answers" };
	static char path[FUZZ_PATH];
	struct err e = { 0 };

	if (*path)
		return path;
	fuzz_path(path, "season.db");
	struct book *b = book_open(path, BOOK_CREATE, "QX", &e);
	must(b != NULL);
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
		take_shipped(b, parts[i], rows);
	book_close(b);
	return path;
}

static char *whole_file(const char *path, size_t *n)
{
	FILE *file = fopen(path, "rb");
	struct stat st;

	if (!file) {
		fprintf(stderr, "%s is not there: start it from the top folder\n",
			path);
		exit(1);
	}
	must(fstat(fileno(file), &st) == 0);
	*n = (size_t)st.st_size;
	char *text = malloc(*n + 1);
	must(text && fread(text, 1, *n, file) == *n);
	text[*n] = '\0';
	fclose(file);
	return text;
}

const char *fuzz_dump(int version)
{
	static char paths[2][FUZZ_PATH];
	char *path = paths[version - 1], name[32];
	sqlite3 *db = NULL;
	size_t n;

	if (*path)
		return path;
	snprintf(name, sizeof name, "tests/book/v%d.sql", version);
	char *sql = whole_file(name, &n);
	snprintf(name, sizeof name, "v%d.db", version);
	fuzz_path(path, name);
	must(sqlite3_open(path, &db) == SQLITE_OK &&
		sqlite3_exec(db, sql, NULL, NULL, NULL) == SQLITE_OK);
	sqlite3_close(db);
	free(sql);
	return path;
}

bool fuzz_same(const char *path, const char *other)
{
	size_t n, m;
	char *a = whole_file(path, &n), *b = whole_file(other, &m);
	bool same = n == m && memcmp(a, b, n) == 0;

	free(a);
	free(b);
	return same;
}

void fuzz_copy(const char *from, const char *to)
{
	size_t n;
	char *bytes = whole_file(from, &n);
	FILE *file = fopen(to, "wb");

	must(file && fwrite(bytes, 1, n, file) == n && fclose(file) == 0);
	free(bytes);
}

static void check_text(const char *text)
{
	size_t n = strlen(text);

	must(n > 0 && text_valid(text, n, NULL));
	for (size_t at = 0; at < n;) {
		uint32_t cp;

		at += text_decode(text + at, n - at, &cp);
		must(!text_control(cp));
	}
}

void fuzz_said(bool ok, const struct err *e)
{
	must(ok == (e->kind == ERR_NONE));
	if (!ok)
		check_text(e->text);
}

static void check_all(const struct sentences *s, int64_t all)
{
	must((int64_t)s->n <= all);
	for (size_t i = 0; i < s->n; i++)
		check_text(s->items[i]);
}

void fuzz_listed(const struct imported *i, bool ok, const struct err *e)
{
	fuzz_said(ok, e);
	must(e->kind != ERR_BOOK);
	check_all(&i->problems, i->n_problems);
	check_all(&i->warnings, i->n_warnings);
	check_all(&i->notes, (int64_t)i->notes.n);
	must(!ok || i->n_problems == 0);
}

bool fuzz_import(struct book *b, const struct kind *k, const uint8_t *data, size_t n,
	bool *changed)
{
	struct import_from from = { .name = "fuzz.csv", .today = fuzz_today() };
	struct imported out = { 0 };
	struct err e = { 0 };
	char *copy;

	from.file = fuzz_file(data, n, &copy);
	bool ok = exchange_import(b, k, &from, &out, &e);
	fclose(from.file);
	free(copy);
	fuzz_listed(&out, ok, &e);
	*changed = ok && out.n_new + out.n_changed + out.n_removed > 0;
	imported_free(&out);
	return ok;
}

static bool to_buf(void *arg, struct buf *text, struct err *e)
{
	(void)e;
	buf_add_n(arg, text->text, text->n);
	buf_clear(text);
	return true;
}

char *fuzz_export(struct book *b, const struct kind *k)
{
	struct buf all = { 0 };
	struct err e = { 0 };

	must(exchange_export(b, k, to_buf, &all, &e));
	return all.text;
}

static void tell(void *arg, const char *text)
{
	(void)arg;
	fprintf(stderr, "%s\n", text);
}

void fuzz_sound(struct book *b)
{
	struct err e = { 0 };
	int found = 0;

	must(book_check(b, fuzz_today(), tell, NULL, &found, &e) && found == 0);
}
