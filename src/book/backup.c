/* backup.c - copies of the book that are safe while it is in use. */
#include "backup.h"
#include "file.h"

#include "base/mem.h"
#include "base/words.h"

#include <dirent.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

enum { DAILY = 7, WEEKLY = 8 };

int backup_pages(struct book *b, sqlite3 *to, const char *schema)
{
	sqlite3_backup *copy = sqlite3_backup_init(to, schema, b->db, "main");
	if (!copy)
		return sqlite3_errcode(to);
	int code = sqlite3_backup_step(copy, -1);
	for (int tries = 0;
		(code == SQLITE_BUSY || code == SQLITE_LOCKED) && tries < 20; tries++) {
		sqlite3_sleep(100);
		code = sqlite3_backup_step(copy, -1);
	}
	int end = sqlite3_backup_finish(copy);
	return code == SQLITE_DONE ? end : code;
}

bool backup_copy(struct book *b, const char *part, const char *what, struct err *e)
{
	struct book to = { .path = (char *)(uintptr_t)part };
	int code = sqlite3_open_v2(part, &to.db, SQLITE_OPEN_READWRITE, NULL);

	if (code == SQLITE_OK) {
		/* It is synced as a whole afterwards and needs no journal. */
		sqlite3_exec(to.db, "PRAGMA synchronous = OFF", NULL, NULL, NULL);
		code = backup_pages(b, to.db, "main");
	}
	bool ok = code == SQLITE_OK || store_fail(&to, code, what, e);
	sqlite3_close(to.db);
	return ok;
}

/* *taken: something has the name, now or by the time that the copy was there. */
static bool back_up(struct book *b, const char *target, bool *taken, struct err *e)
{
	const char *what = N_("the backup is not made");
	char part[STORE_PATH_BYTES];
	struct stat st;

	*taken = false;
	if (b->grouped)
		return err_set(e, ERR_BOOK, _("%s: changes are under way"), _(what));
	*taken = lstat(target, &st) == 0;
	if (*taken)
		return err_set(e, ERR_BOOK,
			_("%s: there is something named %s already; choose another "
			  "name"),
			_(what), target);
	if (!file_part(target, part, sizeof part, what, e))
		return false;
	bool ok = backup_copy(b, part, what, e) &&
		  file_publish(part, target, taken, what, e);
	if (!ok)
		unlink(part);
	return ok;
}

bool book_backup(struct book *b, const char *target, struct err *e)
{
	bool taken;

	return back_up(b, target, &taken, e);
}

void store_backups_kept(const int32_t *days, size_t n, bool *keep)
{
	int32_t monday = DAY_NONE;
	int weeks = 0;

	for (size_t i = 0; i < n; i++) {
		keep[i] = i < DAILY;
		if (keep[i] || day_monday(days[i]) == monday)
			continue;
		monday = day_monday(days[i]);
		keep[i] = ++weeks <= WEEKLY;
	}
}

bool backup_start(const char *path, char *out, size_t size, size_t *name, struct err *e)
{
	const char *slash = strrchr(path, '/');
	const char *file = slash ? slash + 1 : path;
	const char *dot = strrchr(file, '.');
	int folder = (int)(file - path);
	int stem = dot && dot != file ? (int)(dot - file) : (int)strlen(file);
	int n = snprintf(out, size, "%.*sbackups/%.*s-", folder, path, stem, file);

	*name = (size_t)folder + strlen("backups/");
	if (n < (int)size)
		return true;
	return err_set(
		e, ERR_BOOK, _("today's backup is not made: its path is too long"));
}

/* The day of "book-2026-07-21.db"; DAY_NONE for any other name. */
static int32_t backup_day(const char *file, const char *stem)
{
	size_t n = strlen(stem), iso = DAY_ISO_SIZE - 1;
	char text[DAY_ISO_SIZE];
	int32_t day;

	if (strlen(file) != n + iso + 3 || strncmp(file, stem, n) != 0 ||
		strcmp(file + n + iso, ".db") != 0)
		return DAY_NONE;
	memcpy(text, file + n, iso);
	text[iso] = '\0';
	return day_parse(text, &day) ? day : DAY_NONE;
}

/* "-074211", and "-2" when that name was taken. */
static bool is_time(const char *text, size_t n)
{
	size_t digits = n > 0 ? strspn(text + 1, "0123456789") : 0;

	if (n < 7 || text[0] != '-' || digits != 6)
		return false;
	return n == 7 ||
	       (n > 8 && text[7] == '-' && strspn(text + 8, "0123456789") == n - 8);
}

int32_t backup_kept_day(const char *file, const char *stem)
{
	static const char word[] = "replaced-";
	size_t before = strlen(stem) + strlen(word), n = strlen(file);
	size_t iso = DAY_ISO_SIZE - 1;
	char text[DAY_ISO_SIZE];
	int32_t day;

	if (n < before + iso + strlen(".db") ||
		strncmp(file, stem, strlen(stem)) != 0 ||
		strncmp(file + strlen(stem), word, strlen(word)) != 0 ||
		strcmp(file + n - 3, ".db") != 0 ||
		!is_time(file + before + iso, n - before - iso - 3))
		return DAY_NONE;
	memcpy(text, file + before, iso);
	text[iso] = '\0';
	return day_parse(text, &day) ? day : DAY_NONE;
}

bool backup_name_replaced(
	const struct book *b, char *out, size_t size, const char *what, struct err *e)
{
	const char *slash = strrchr(b->path, '/'), *dot = strrchr(b->path, '.');
	size_t folder = slash ? (size_t)(slash + 1 - b->path) : 0;
	size_t stem = dot && dot > b->path + folder ? (size_t)(dot - b->path)
						    : strlen(b->path);
	char now[STORE_TIME_SIZE];
	struct stat st;

	store_time(b, now);
	for (int i = 1; i < 1000; i++) {
		char more[8] = "";
		if (i > 1)
			snprintf(more, sizeof more, "-%d", i);
		int n = snprintf(out, size, "%.*s-replaced-%.10s-%.2s%.2s%.2s%s.db",
			(int)stem, b->path, now, now + 11, now + 14, now + 17, more);
		if (n < (int)size && lstat(out, &st) != 0 && errno == ENOENT)
			return true;
	}
	return err_set(
		e, ERR_BOOK, _("%s: no name is free beside %s"), _(what), b->path);
}

void backup_folder(const char *start, size_t name, char out[static STORE_PATH_BYTES])
{
	snprintf(
		out, STORE_PATH_BYTES, "%.*s", (int)(name - strlen("backups/")), start);
}

void backup_path(const char *start, int32_t day, char *out, size_t size)
{
	char iso[DAY_ISO_SIZE];

	day_iso(day, iso);
	snprintf(out, size, "%s%s.db", start, iso);
}

static int newest_first(const void *a, const void *b)
{
	int32_t x = *(const int32_t *)a, y = *(const int32_t *)b;

	return (x < y) - (x > y);
}

/* A clock that was wrong leaves backups of days to come. */
void backup_list(const char *start, size_t name, int32_t upto, struct backup_days *out)
{
	char folder[STORE_PATH_BYTES];
	struct dirent *entry;

	snprintf(folder, sizeof folder, "%.*s", (int)name, start);
	DIR *dir = opendir(folder);
	if (!dir)
		return;
	while ((entry = readdir(dir))) {
		int32_t day = backup_day(entry->d_name, start + name);
		if (day == DAY_NONE || day > upto)
			continue;
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		out->items[out->n++] = day;
	}
	closedir(dir);
	if (out->n > 0)
		qsort(out->items, out->n, sizeof *out->items, newest_first);
}

/* "book-2026-07-21.db.part-Ab3xYz", "book.db.part-Ab3xYz", or a journal of one: what a
 * program that was killed amid its backup, or amid going back to one, left behind. */
static bool is_part(const char *file, const char *stem, const char *book)
{
	static const char mark[] = ".part-";
	char whole[NAME_MAX + 1];
	const char *part = strstr(file, mark);

	if (!part)
		return false;
	snprintf(whole, sizeof whole, "%.*s", (int)(part - file), file);
	const char *rest = part + strlen(mark);
	bool ours = backup_day(whole, stem) != DAY_NONE ||
		    backup_kept_day(whole, stem) != DAY_NONE ||
		    strcmp(whole, book) == 0;
	if (!ours || strcspn(rest, "-") != 6)
		return false;
	return rest[6] == '\0' || strcmp(rest + 6, "-journal") == 0 ||
	       strcmp(rest + 6, "-wal") == 0 || strcmp(rest + 6, "-shm") == 0;
}

static void drop_parts_in(
	const char *folder, const char *stem, const char *book, time_t old)
{
	char path[STORE_PATH_BYTES];
	struct dirent *entry;
	struct stat st;
	DIR *dir = opendir(folder[0] ? folder : ".");

	if (!dir)
		return;
	while ((entry = readdir(dir))) {
		int n = snprintf(path, sizeof path, "%s%s", folder, entry->d_name);
		if (n < (int)sizeof path && is_part(entry->d_name, stem, book) &&
			lstat(path, &st) == 0 && S_ISREG(st.st_mode) &&
			st.st_mtime < old)
			unlink(path);
	}
	closedir(dir);
}

/* Parts older than a day by the clock of the disk: `fresh` was written just now. A
 * younger one may be another program's at work. */
static void drop_parts(
	const struct book *b, const char *start, size_t name, const char *fresh)
{
	const char *slash = strrchr(b->path, '/');
	const char *book = slash ? slash + 1 : b->path;
	char folder[STORE_PATH_BYTES];
	struct stat st;

	if (stat(fresh, &st) != 0)
		return;
	time_t old = st.st_mtime - 24 * 60 * 60;
	backup_folder(start, name, folder);
	drop_parts_in(folder, start + name, book, old);
	snprintf(folder, sizeof folder, "%.*s", (int)name, start);
	drop_parts_in(folder, start + name, book, old);
}

static void drop_old(const char *start, size_t name, int32_t today)
{
	struct backup_days days = { 0 };
	char path[STORE_PATH_BYTES + 16];

	backup_list(start, name, today, &days);
	bool *keep = mem_new(days.n, sizeof *keep);
	store_backups_kept(days.items, days.n, keep);
	for (size_t i = 0; i < days.n; i++) {
		if (keep[i])
			continue;
		backup_path(start, days.items[i], path, sizeof path);
		unlink(path);
	}
	free(keep);
	free(days.items);
}

bool book_daily_backup(struct book *b, int32_t today, struct err *e)
{
	char start[STORE_PATH_BYTES], path[STORE_PATH_BYTES + 16];
	struct stat st;
	size_t name;
	bool taken;

	if (b->in_memory || b->backed_up == today || sqlite3_db_readonly(b->db, "main"))
		return true;
	if (!backup_start(b->path, start, sizeof start, &name, e))
		return false;
	backup_path(start, today, path, sizeof path);
	if (lstat(path, &st) != 0) {
		if (!file_folders(path, N_("today's backup is not made"), e) ||
			(!back_up(b, path, &taken, e) && !taken))
			return false;
		if (taken && e) /* another program was quicker */
			*e = (struct err){ 0 };
		drop_old(start, name, today);
		drop_parts(b, start, name, path);
	}
	b->backed_up = today;
	return true;
}
