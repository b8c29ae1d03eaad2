/* backups.c - the daily backups of a book, and what is in a file. */
#include "book/backups.h"

#include "backup.h"
#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void add(struct backups *out, const char *path, int32_t day, bool is_replaced)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	out->items[out->n++] = (struct backup){ mem_text(path), day, is_replaced };
}

static int latest_first(const void *a, const void *b)
{
	const struct backup *x = a, *y = b;

	return strcmp(y->path, x->path);
}

/* They lie beside the book itself: a link to it may stand elsewhere. */
static bool add_replaced(const char *path, struct backups *out, struct err *e)
{
	char start[STORE_PATH_BYTES], folder[STORE_PATH_BYTES], name[STORE_PATH_BYTES];
	char *real = realpath(path, NULL);
	struct dirent *entry;
	size_t at;
	bool ok = backup_start(real ? real : path, start, sizeof start, &at, e);

	free(real);
	if (!ok)
		return false;
	backup_folder(start, at, folder);
	DIR *dir = opendir(folder[0] ? folder : ".");
	if (!dir && errno != ENOENT)
		return err_set(e, ERR_BOOK, _("the backups cannot be listed: %s (%s)"),
			strerror(errno), folder[0] ? folder : ".");
	while (dir && (entry = readdir(dir))) {
		int32_t day = backup_kept_day(entry->d_name, start + at);
		int n = snprintf(name, sizeof name, "%s%s", folder, entry->d_name);
		if (day != DAY_NONE && n < (int)sizeof name)
			add(out, name, day, true);
	}
	if (dir)
		closedir(dir);
	if (out->n > 0)
		qsort(out->items, out->n, sizeof *out->items, latest_first);
	return true;
}

bool book_backups(const char *path, struct backups *out, struct err *e)
{
	char start[STORE_PATH_BYTES], name[STORE_PATH_BYTES + 16];
	struct backup_days days = { 0 };
	size_t at;

	book_backups_free(out);
	if (!add_replaced(path, out, e) ||
		!backup_start(path, start, sizeof start, &at, e))
		return false;
	backup_list(start, at, INT32_MAX, &days);
	for (size_t i = 0; i < days.n; i++) {
		backup_path(start, days.items[i], name, sizeof name);
		add(out, name, days.items[i], false);
	}
	free(days.items);
	return true;
}

void book_backups_free(struct backups *s)
{
	for (size_t i = 0; i < s->n; i++)
		free(s->items[i].path);
	free(s->items);
	*s = (struct backups){ 0 };
}

static bool count_rows(struct book *b, struct book_contents *out, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT (SELECT count(*) FROM farm), (SELECT count(*) FROM block), "
		"(SELECT count(*) FROM trap), (SELECT count(*) FROM visit), "
		"(SELECT count(*) FROM threshold), (SELECT count(*) FROM weather), "
		"(SELECT day FROM visit ORDER BY id LIMIT 1) AS day, "
		"(SELECT day FROM visit ORDER BY id DESC LIMIT 1) AS day");
	q.table = "visit";
	if (query_row(&q)) {
		out->farms = query_get(&q);
		out->blocks = query_get(&q);
		out->traps = query_get(&q);
		out->visits = query_get(&q);
		out->thresholds = query_get(&q);
		out->weather_days = query_get(&q);
		out->first_visit = query_get_day(&q);
		out->last_visit = query_get_day(&q);
	}
	return query_end(&q, N_("the book cannot be read"), e);
}

/* Files of visits leave no history, and version 1 kept none of what was put in. */
static bool read_latest(struct book *b, struct book_contents *out, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT max(t), who FROM ("
		"SELECT max(at) AS t, by AS who FROM history UNION ALL "
		"SELECT max(changed_at), changed_by FROM farm UNION ALL "
		"SELECT max(changed_at), changed_by FROM block UNION ALL "
		"SELECT max(changed_at), changed_by FROM trap UNION ALL "
		"SELECT max(changed_at), changed_by FROM threshold UNION ALL "
		"SELECT max(changed_at), changed_by FROM pest UNION ALL "
		"SELECT max(changed_at), changed_by FROM visit UNION ALL "
		"SELECT max(changed_at), changed_by FROM weather)");
	if (query_row(&q)) {
		query_get_copy(&q, out->changed_at, sizeof out->changed_at);
		query_get_copy(&q, out->changed_by, sizeof out->changed_by);
	}
	return query_end(&q, N_("the book cannot be read"), e);
}

bool book_look_into(const char *path, struct book_contents *out, struct err *e)
{
	struct book *b = store_look(path, e);

	*out = (struct book_contents){ 0 };
	if (!b)
		return false;
	out->version = (int)store_number(b, "PRAGMA user_version", 0);
	bool ok = count_rows(b, out, e) && read_latest(b, out, e);
	book_close(b);
	return ok;
}
