/* merge_attach.c - the other book: looked at without a byte of it being changed,
 * checked as a stranger's, and copied into a private database of ours that no other
 * program sees and that goes with the connection. */
#include "merge_parts.h"

#include "backup.h"
#include "check.h"
#include "file.h"
#include "shape.h"

#include "base/mem.h"
#include "base/shipped.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

struct first_fault {
	char text[256];
};

static void keep_first(void *arg, const char *text)
{
	struct first_fault *first = arg;

	if (*first->text == '\0')
		text_copy(first->text, sizeof first->text, text);
}

static bool histories_read(struct book *b, const char *what, struct err *e)
{
	int64_t bad = store_number(b,
		"SELECT count(*) FROM history WHERE old IS NOT NULL AND NOT "
		"json_valid(old)",
		-1);

	return bad == 0 ||
	       err_set(e, ERR_BOOK, _("%s: the other book's history cannot be read"),
		       _(what));
}

static bool is_sound(struct book *b, const char *path, const char *what, struct err *e)
{
	struct first_fault first = { "" };
	int found = 0;
	struct finder f = { b, keep_first, &first, &found, "visit" };

	if (!check_sound(&f, what, e))
		return false;
	if (found > 0)
		return err_set(
			e, ERR_INPUT, _("%s: %s: %s"), _(what), path, first.text);
	return merge_visits_sound(b, path, what, e) && histories_read(b, what, e);
}

static bool copy_into(struct book *from, sqlite3 *to, const char *schema,
	const char *what, struct err *e)
{
	int code = backup_pages(from, to, schema);

	return code == SQLITE_OK || store_fail(from, code, what, e);
}

static bool bring_up(struct book *b, const char *path, struct err *e)
{
	char fault[256] = "";

	if (store_number(b, "PRAGMA user_version", 0) == STORE_VERSION)
		return true;
	return store_upgrade(b, &store_upgrades, e) &&
	       store_shape_fault(b, fault, sizeof fault, e) &&
	       (*fault == '\0' || err_set(e, ERR_BOOK, _("%s (%s)"), fault, path));
}

/* A private copy, brought to this version. It is the copy that is checked: SQLite looks
 * at no CHECK of a file that it may not write to. */
static struct book *private_copy(const char *path, const char *what, struct err *e)
{
	struct book *from = store_look(path, e), *b = mem_new(1, sizeof *b);

	b->path = mem_text(path);
	b->in_memory = true;
	bool ok = from && store_connect(b, "", 0, e) &&
		  copy_into(from, b->db, "main", what, e) && bring_up(b, path, e);
	book_close(from);
	if (ok)
		return b;
	book_close(b);
	return NULL;
}

bool merge_attach(struct book *b, const char *path, const char *what, struct err *e)
{
	if (!b->in_memory && file_same(b->path, path))
		return err_set(
			e, ERR_INPUT, _("%s: %s is the book itself"), _(what), path);
	struct book *other = private_copy(path, what, e);
	if (!other)
		return false;
	bool ok = is_sound(other, path, what, e) &&
		  store_exec(b, "ATTACH '' AS other; PRAGMA other.cache_size = -4000",
			  what, e) &&
		  copy_into(other, b->db, "other", what, e);
	book_close(other);
	return ok;
}
