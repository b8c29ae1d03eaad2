/* session_merge.c - the Merge page: another scout's book, and what is left to
 * settle. */
#include "session_book.h"

#include "base/text.h"
#include "base/words.h"

#include <glob.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { KEPT_BYTES = 1024 };

bool session_read_merge(struct session *s, struct err *e)
{
	s->merge.page.open = &s->merge.matters;
	s->merge.page.look = &s->merge.answer;
	return session_read_log(s, e) && merging_open(s->book, &s->merge.matters, e);
}

static bool is_book(const char *path)
{
	struct book_contents contents;
	struct err e = { 0 };

	return book_look_into(path, &contents, &e);
}

/* Books that match, but for this one and its copies from before a merge. */
static void add_found(struct session *s, const char *pattern)
{
	struct merge_page *p = &s->merge.page;
	struct stat own, other;
	glob_t found;

	if (glob(pattern, 0, NULL, &found) != 0)
		return;
	bool known = stat(s->ctx->book_path, &own) == 0;
	for (size_t i = 0; i < found.gl_pathc && p->n_found < MERGE_FOUND; i++) {
		const char *path = found.gl_pathv[i], *name = strrchr(path, '/');
		if (strstr(name ? name : path, "-replaced-"))
			continue;
		bool same = stat(path, &other) != 0 ||
			    (known && own.st_dev == other.st_dev &&
				    own.st_ino == other.st_ino);
		if (!same && S_ISREG(other.st_mode) && strlen(path) < NOTE_BYTES &&
			is_book(path))
			text_copy(p->found[p->n_found++], NOTE_BYTES, path);
	}
	globfree(&found);
}

/* The folder of a file, in which no letter stands for others. */
static void add_folder(const char *path, struct buf *out)
{
	const char *slash = strrchr(path, '/');

	for (; slash && path <= slash; path++)
		buf_addf(out, strchr("*?[\\", *path) ? "\\%c" : "%c", *path);
}

/* On sticks, then beside the book. */
static void find_others(struct session *s)
{
	struct buf pattern = { 0 };

	add_found(s, "/media/*/*.db");
	add_found(s, "/media/*/*/*.db");
	add_found(s, "/run/media/*/*/*.db");
	add_folder(s->ctx->book_path, &pattern);
	buf_add(&pattern, "*.db");
	add_found(s, pattern.text);
	buf_free(&pattern);
}

void session_merge_page(struct session *s, const struct wish *w)
{
	(void)w;
	s->merge.page = (struct merge_page){ 0 };
	find_others(s);
	session_open(s, PAGE_MERGE);
}

/* Reads the page again; the sentence is what was done, or what is wrong. */
static void tell(struct session *s, bool ok, const char *said, const struct err *e)
{
	struct err again = { 0 };

	if (!session_read(s, &again) && ok)
		message_set(session_message(s), true, "%s", again.text);
	else
		message_set(session_message(s), !ok, "%s", ok ? said : e->text);
}

void session_merge_look(struct session *s, const struct wish *w)
{
	char path[PATH_MAX];
	struct err e = { 0 };

	session_expand(w->words.note, path, sizeof path);
	if (merging_look(s->book, path, &s->merge.answer, &e))
		s->merge.page.stage = MERGE_SHOWN;
	else
		tell(s, false, "", &e);
}

static void say_merged(const struct merging *m, char said[static 2 * SAY_LINE])
{
	if (m->open > 0)
		snprintf(said, 2 * SAY_LINE,
			ngettext("Merged; %lld matter is left to settle. u takes the "
				 "merge back.",
				"Merged; %lld matters are left to settle. u takes the "
				"merge back.",
				(unsigned long)m->open),
			(long long)m->open);
	else
		snprintf(said, 2 * SAY_LINE, "%s",
			_("Merged; there is nothing to settle. u takes it back."));
}

void session_merge(struct session *s, const struct wish *w)
{
	char path[PATH_MAX], said[2 * SAY_LINE] = "";
	struct err e = { 0 };

	session_expand(w->words.note, path, sizeof path);
	session_before_change(s);
	bool ok = merging_do(s->book, path, &s->merge.answer, &e);
	if (ok)
		say_merged(&s->merge.answer, said);
	s->merge.page.picked = s->merge.page.top = 0;
	tell(s, ok, said, &e);
}

void session_settle(struct session *s, const struct wish *w)
{
	char said[SAY_LINE] = "";
	struct err e = { 0 };

	session_before_change(s);
	const struct settling how = { (size_t)w->id, w->kind, w->by };
	bool ok = merging_settle(s->book, &s->merge.matters, &how, said, &e);
	tell(s, ok, said, &e);
}

/* The book is closed meanwhile. When it cannot be opened again the pages end. */
static bool go_back(struct session *s, const char *kept_book, struct err *e)
{
	char kept[KEPT_BYTES] = "";

	book_close(s->book);
	bool ok = book_restore(s->ctx->book_path, kept_book, kept, sizeof kept, e);
	return session_open_book(s, &s->lost) && ok;
}

void session_merge_undo(struct session *s, const struct wish *w)
{
	struct merge_undo u = { 0 };
	char said[2 * SAY_LINE];
	struct err e = { 0 };
	bool ok = book_merge_undo(s->book, &u, &e);

	if (ok && w->by == 0) {
		s->merge.page.sure = true;
		free(u.kept);
		return;
	}
	ok = ok && go_back(s, u.kept, &e);
	if (s->lost.kind == ERR_NONE) {
		snprintf(said, sizeof said,
			_("The book is as it was before %.100s was merged."), u.file);
		tell(s, ok, said, &e);
	}
	free(u.kept);
}
