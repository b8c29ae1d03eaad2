/* restore.c - going back to a backup: what is in each, what would be replaced, then
 * doing it. */
#include "base/words.h"
#include "command/command.h"
#include "contents.h"

#include <string.h>
#include <sys/stat.h>

enum { KEPT_BYTES = 1024 };

/* What is in the book at a path, as a line; a file that cannot be read says why. */
static bool add_book(struct buf *out, const char *path, struct err *e)
{
	struct book_contents c = { 0 };

	if (!book_look_into(path, &c, e))
		return false;
	contents_say(&c, out);
	buf_add(out, "; ");
	contents_say_change(&c, out);
	return true;
}

static const char *name_in(const char *path)
{
	const char *slash = strrchr(path, '/');

	return slash ? slash + 1 : path;
}

static void add_backup(struct buf *out, const struct backup *b)
{
	struct buf line = { 0 };
	struct err e = { 0 };

	if (b->is_replaced)
		buf_addf(&line, "%s: ", _("replaced"));
	if (add_book(&line, b->path, &e))
		out_sentence(out, "%s: %s", name_in(b->path), line.text);
	else
		out_sentence(out, "%s: %s", name_in(b->path), e.text);
	buf_free(&line);
}

static bool list(const struct context *ctx, struct err *e)
{
	struct backups all = { 0 };
	struct buf text = { 0 };
	bool ok = book_backups(ctx->book_path, &all, e);

	for (size_t i = 0; i < all.n; i++)
		add_backup(&text, &all.items[i]);
	if (ok && all.n == 0)
		out_sentence(
			&text, _("there is no backup beside %s yet"), ctx->book_path);
	ok = ok && out_text(&text, ctx->utf8, e);
	book_backups_free(&all);
	buf_free(&text);
	return ok;
}

/* The path of the backup that is named: by its file, with or without the folder, or by
 * its day. False: there is none. */
static bool find(
	const struct context *ctx, const char *given, struct buf *path, struct err *e)
{
	struct backups all = { 0 };
	struct stat there;
	int32_t day = DAY_NONE;
	bool ok = book_backups(ctx->book_path, &all, e);

	if (!day_parse(given, &day))
		day = DAY_NONE;
	for (size_t i = 0; i < all.n && path->n == 0; i++)
		if (strcmp(name_in(all.items[i].path), given) == 0 ||
			(day != DAY_NONE && all.items[i].day == day &&
				!all.items[i].is_replaced))
			buf_add(path, all.items[i].path);
	book_backups_free(&all);
	if (path->n == 0 && ok && stat(given, &there) == 0)
		buf_add(path, given);
	if (ok && path->n == 0)
		return err_set(e, ERR_NOT_FOUND,
			_("there is no backup \"%.100s\"; mothtally restore lists "
			  "them"),
			given);
	return ok;
}

/* Both in words; a book that is not there or is damaged is said, not refused: that is
 * when a backup is needed. */
static bool compare(
	const struct context *ctx, const char *backup, struct buf *out, struct err *e)
{
	struct buf line = { 0 };
	struct err present = { 0 };
	bool ok = add_book(&line, backup, e);

	if (ok)
		out_sentence(out, _("the backup holds %s"), line.text);
	buf_clear(&line);
	if (add_book(&line, ctx->book_path, &present))
		out_sentence(out, _("the present book holds %s"), line.text);
	else
		out_sentence(out, _("the present book: %s"), present.text);
	buf_free(&line);
	return ok;
}

static bool replace(
	const struct context *ctx, const char *backup, struct buf *out, struct err *e)
{
	char kept[KEPT_BYTES] = "";

	if (!book_restore(ctx->book_path, backup, kept, sizeof kept, e))
		return false;
	out_sentence(out, _("%s is in place of the book"), backup);
	if (kept[0])
		out_sentence(out, _("the book that it replaced is kept as %s"), kept);
	return true;
}

static bool restore(
	const struct context *ctx, const char *given, bool yes, struct err *e)
{
	struct buf path = { 0 }, text = { 0 };
	bool ok = find(ctx, given, &path, e) && compare(ctx, path.text, &text, e);

	if (ok && yes)
		ok = replace(ctx, path.text, &text, e);
	else if (ok)
		out_sentence(&text,
			_("nothing is changed; with --yes the backup takes the place "
			  "of the book, which is kept beside it"));
	ok = ok && out_text(&text, ctx->utf8, e);
	buf_free(&path);
	buf_free(&text);
	return ok;
}

bool command_restore(const struct context *ctx, int argc, char **argv, struct err *e)
{
	bool yes = false;
	const struct option_row rows[] = { { "yes", NULL, &yes, 0 }, { 0 } };
	struct args a = { .rows = rows, .max = 1 };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (a.n_rest == 0 && yes)
		return err_set(e, ERR_USAGE,
			_("--yes goes with a backup: mothtally restore BACKUP --yes"));
	return a.n_rest == 0 ? list(ctx, e) : restore(ctx, a.rest[0], yes, e);
}
