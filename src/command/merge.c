/* merge.c - another scout's book into this one; looking first; going back. */
#include "answers/merging.h"
#include "base/words.h"
#include "book/backups.h"
#include "command/command.h"

#include <stdlib.h>
#include <string.h>

enum { KEPT_BYTES = 1024 };

static void add_lines(const struct merging *m, struct buf *out)
{
	for (size_t i = 0; i < m->n; i++)
		out_sentence(out, "%*s%s", m->lines[i].indent, "", m->lines[i].text);
}

static bool add_open(struct book *b, struct buf *out, struct err *e)
{
	struct open_matters open = { 0 };
	struct merging lines = { 0 };
	bool ok = merging_open(b, &open, e);

	if (ok)
		merging_say_open(&open, &lines);
	add_lines(&lines, out);
	if (ok && open.n > 0)
		out_sentence(
			out, "%s", _("settle it in the pages: b, then \"merging\""));
	merging_free(&lines);
	merging_open_free(&open);
	return ok;
}

static void say_done(const struct merging *m, bool look, struct buf *out)
{
	if (m->nothing_new)
		return;
	if (look)
		out_sentence(out,
			ngettext("nothing is changed yet; %lld matter would be left to "
				 "settle",
				"nothing is changed yet; %lld matters would be left to "
				"settle",
				(unsigned long)m->open),
			(long long)m->open);
	else if (*m->kept)
		out_sentence(out,
			_("merged; the book as it was is kept as %s, and mothtally "
			  "merge --undo goes back to it"),
			m->kept);
}

static bool merge(const struct context *ctx, const char *file, bool look, struct err *e)
{
	struct book *b = book_open(ctx->book_path, BOOK_EXISTING, ctx->who, e);
	struct merging m = { 0 };
	struct buf text = { 0 };

	if (!b)
		return false;
	bool ok = look ? merging_look(b, file, &m, e) : merging_do(b, file, &m, e);
	if (ok) {
		add_lines(&m, &text);
		say_done(&m, look, &text);
	}
	ok = ok && (look || add_open(b, &text, e)) && out_text(&text, ctx->utf8, e);
	book_close(b);
	merging_free(&m);
	buf_free(&text);
	return ok;
}

static bool undo(const struct context *ctx, struct err *e)
{
	struct book *b = book_open(ctx->book_path, BOOK_EXISTING, ctx->who, e);
	struct merge_undo u = { 0 };
	struct buf text = { 0 };
	char kept[KEPT_BYTES] = "";
	bool ok = b && book_merge_undo(b, &u, e);

	book_close(b);
	ok = ok && book_restore(ctx->book_path, u.kept, kept, sizeof kept, e);
	if (ok) {
		out_sentence(&text,
			_("the book is as it was before %s was merged; the merged one "
			  "is kept as %s"),
			u.file, kept);
		ok = out_text(&text, ctx->utf8, e);
	}
	free(u.kept);
	buf_free(&text);
	return ok;
}

static bool list_open(const struct context *ctx, struct err *e)
{
	struct book *b = open_to_read(ctx, e);
	struct buf text = { 0 };
	bool ok = b && add_open(b, &text, e);

	book_close(b);
	if (ok && text.n == 0)
		out_sentence(&text, "%s", _("there is nothing to settle"));
	ok = ok && out_text(&text, ctx->utf8, e);
	buf_free(&text);
	return ok;
}

bool command_merge(const struct context *ctx, int argc, char **argv, struct err *e)
{
	bool look = false, back = false, open = false;
	const struct option_row rows[] = { { "look", NULL, &look, 0 },
		{ "undo", NULL, &back, 0 }, { "open", NULL, &open, 0 }, { 0 } };
	struct args a = { .rows = rows, .max = 1 };

	if (!args_read(argc, argv, &a, e))
		return false;
	const char *file = a.rest[0];
	if ((a.n_rest == 0) != (back || open) || (back && open) || (look && !file))
		return err_set(e, ERR_USAGE,
			_("merge wants the other book: mothtally merge FILE; or --undo "
			  "or --open alone"));
	if (back)
		return undo(ctx, e);
	return open ? list_open(ctx, e) : merge(ctx, file, look, e);
}
