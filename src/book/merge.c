/* merge.c - another book's rows into this one: all in one transaction, after a copy of
 * the book as it was. How rows are matched and which version holds: merge_canon.c and
 * merge_versions.c, and "How books are merged" in DEVELOPERS.md. */
#include "merge_parts.h"

#include "backup.h"
#include "file.h"
#include "row.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const char *const what = N_("nothing is merged");

void merge_count_kind(
	struct merge *m, const char *kind, int64_t came, int64_t theirs, int64_t gone)
{
	struct merge_report *r = m->report;

	if (!m->ok || came + theirs + gone == 0)
		return;
	r->counts =
		mem_grow(r->counts, &r->cap_counts, r->n_counts + 1, sizeof *r->counts);
	struct merge_count *c = &r->counts[r->n_counts++];
	*c = (struct merge_count){ .came = came, .theirs = theirs, .gone = gone };
	text_copy(c->kind, sizeof c->kind, kind);
	text_copy(c->words, sizeof c->words, _(row_kind(kind)->words));
}

void book_merge_free(struct merge_report *r)
{
	free(r->counts);
	free(r->differences.items);
	book_matters_free(&r->matters);
	*r = (struct merge_report){ 0 };
}

/* Foreign keys are off within the merge. */
static void check_references(struct merge *m)
{
	int64_t bad = merge_number(m,
		"SELECT count(*) FROM main.sqlite_schema t JOIN "
		"pragma_foreign_key_check(t.name, 'main') WHERE t.type = 'table' AND "
		"t.name <> 'visit'");

	if (m->ok && bad > 0)
		m->ok = err_set(m->e, ERR_BOOK,
			_("%s: something would name a row that is not there"), _(what));
}

static void join_books(struct merge *m)
{
	merge_pests(m);
	merge_canon(m);
	m->writes = 0; /* what was only not noted yet is nothing new */
	merge_versions(m);
	merge_visits(m);
	merge_weather(m);
	merge_rows(m);
	merge_history(m);
	check_references(m);
}

/* The number in the header that each transaction that writes raises by one. */
static int64_t file_writes(struct book *b)
{
	unsigned char at[4] = { 0 };
	sqlite3_file *file = NULL;

	sqlite3_file_control(b->db, "main", SQLITE_FCNTL_FILE_POINTER, &file);
	if (b->in_memory || !file || !file->pMethods ||
		file->pMethods->xRead(file, at, sizeof at, 24) != SQLITE_OK)
		return 0;
	return (int64_t)at[0] << 24 | at[1] << 16 | at[2] << 8 | at[3];
}

/* Two books of one number of writes may have gone different ways. */
static void note_merge(struct merge *m, const char *other, const char *kept)
{
	const char *slash = strrchr(other, '/'), *name = strrchr(kept, '/');
	struct query q;

	if (!m->ok)
		return;
	query_start(&q, m->b,
		"INSERT INTO main.merged (file, kept, writes, at, by) VALUES (?1, ?2, "
		"?3, ?4, ?5)");
	query_text(&q, slash ? slash + 1 : other);
	query_text(&q, name ? name + 1 : kept);
	query_int(&q, file_writes(m->b) + 1);
	query_stamp(&q);
	merge_end(m, &q);
}

static void drop_tables(struct book *b)
{
	struct buf drop = { 0 };
	struct query q;

	query_start_once(&q, b,
		"SELECT type, name FROM sqlite_temp_schema WHERE type IN ('table', "
		"'view') AND name LIKE 'm\\_%' ESCAPE '\\'");
	while (query_row(&q)) {
		buf_addf(&drop, "DROP %s ", query_get_text(&q));
		buf_addf(&drop, "temp.%s;", query_get_text(&q));
	}
	query_end(&q, "", NULL);
	store_exec(b, drop.text ? drop.text : "", "", NULL);
	buf_free(&drop);
}

struct copy { /* of the book, as it was before */
	char path[STORE_PATH_BYTES], part[STORE_PATH_BYTES];
};

/* Within the transaction, so that nothing can come between; by a handle of its own,
 * since ours is about to change it. */
static bool copy_book(struct book *b, struct copy *copy, struct err *e)
{
	*copy = (struct copy){ "", "" };
	if (b->in_memory)
		return true;
	struct book *same = store_look(b->path, e);
	if (!same)
		return false;
	bool ok = backup_name_replaced(b, copy->path, sizeof copy->path, what, e) &&
		  file_part(copy->path, copy->part, sizeof copy->part, what, e) &&
		  backup_copy(same, copy->part, what, e);
	book_close(same);
	return ok;
}

/* Nobody is told of a copy that no merge came after. */
static void drop_copy(struct copy *copy, bool published)
{
	if (*copy->part)
		unlink(published ? copy->path : copy->part);
}

static bool publish_copy(struct copy *copy, bool *published, struct err *e)
{
	bool taken;

	*published = *copy->part == '\0' ||
		     file_publish(copy->part, copy->path, &taken, what, e);
	return *published;
}

static void finish_report(struct merge *m)
{
	m->ok = m->ok && book_open_matters(m->b, &m->report->matters, m->e);
	m->report->nothing_new = m->writes == 0;
}

/* The triggers write what a person changes into the history; a merge writes its own. */
static void set_triggers(struct book *b, int on)
{
	sqlite3_db_config(b->db, SQLITE_DBCONFIG_ENABLE_TRIGGER, on, NULL);
}

/* Within the transaction; false: it is to be taken back. */
static bool run(struct merge *m, const char *other, bool keep)
{
	struct copy copy = { "", "" };
	bool published = false;

	m->ok = !keep || copy_book(m->b, &copy, m->e);
	join_books(m);
	finish_report(m);
	bool write = m->ok && keep && !m->report->nothing_new;
	if (write)
		note_merge(m, other, copy.path);
	write = write && m->ok && publish_copy(&copy, &published, m->e);
	m->ok = m->ok && (write || !keep || m->report->nothing_new);
	if (write && store_end(m->b, true, what, m->e)) {
		const char *slash = strrchr(copy.path, '/');
		text_copy(m->report->kept, sizeof m->report->kept,
			slash ? slash + 1 : copy.path);
		return true;
	}
	m->ok = m->ok && !write;
	drop_copy(&copy, published);
	return false;
}

static bool merge(struct book *b, const char *other, bool keep,
	struct merge_report *out, struct err *e)
{
	struct merge m = { .b = b, .what = what, .e = e, .ok = true, .report = out };

	book_merge_free(out);
	if (b->grouped)
		return err_set(e, ERR_BOOK, _("%s: changes are under way"), _(what));
	bool ok = merge_attach(b, other, what, e) &&
		  store_exec(b, "PRAGMA foreign_keys = OFF", what, e) &&
		  store_begin(b, what, e);
	b->history = -1; /* it is no step */
	set_triggers(b, 0);
	if (ok && !run(&m, other, keep))
		store_end(b, false, what, NULL);
	set_triggers(b, 1);
	drop_tables(b);
	store_exec(b, "PRAGMA foreign_keys = ON", what, NULL);
	store_exec(b, "DETACH other", what, NULL);
	return ok && m.ok;
}

bool book_merge_look(
	struct book *b, const char *other, struct merge_report *out, struct err *e)
{
	return merge(b, other, false, out, e);
}

bool book_merge(
	struct book *b, const char *other, struct merge_report *out, struct err *e)
{
	return merge(b, other, true, out, e);
}

static bool read_last(struct book *b, struct merge_undo *out, char *kept, size_t size,
	int64_t *writes, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT file, kept, writes, at FROM merged ORDER BY id DESC LIMIT 1");
	bool found = query_row(&q);
	if (found) {
		query_get_copy(&q, out->file, sizeof out->file);
		query_get_copy(&q, kept, size);
		*writes = query_get(&q);
		query_get_copy(&q, out->at, sizeof out->at);
	}
	if (!query_end(&q, what, e))
		return false;
	return found ||
	       err_set(e, ERR_NOT_FOUND, _("no book was merged into this one"));
}

bool book_merge_undo(struct book *b, struct merge_undo *out, struct err *e)
{
	const char *slash = strrchr(b->path, '/');
	char kept[STORE_PATH_BYTES];
	struct buf path = { 0 };
	int64_t writes = 0;

	*out = (struct merge_undo){ 0 };
	if (!read_last(b, out, kept, sizeof kept, &writes, e))
		return false;
	if (writes != file_writes(b))
		return err_set(e, ERR_INPUT,
			_("the book was changed since %s was merged; mothtally restore "
			  "%s brings back what stood before, without what came since"),
			out->file, kept);
	buf_addf(
		&path, "%.*s%s", slash ? (int)(slash + 1 - b->path) : 0, b->path, kept);
	out->kept = path.text;
	return true;
}
