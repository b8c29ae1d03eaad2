/* check.c - the command that looks through the whole book. */
#include "base/words.h"
#include "command/command.h"

static void add_finding(void *arg, const char *text)
{
	out_sentence(arg, "%s", text);
}

static bool look(
	const struct context *ctx, struct book *b, struct buf *text, struct err *e)
{
	int found = 0;

	if (!book_check(b, ctx->today, add_finding, text, &found, e))
		return false;
	if (found == 0)
		out_sentence(text, _("the book %s is sound"), ctx->book_path);
	if (!out_text(text, ctx->utf8, e))
		return false;
	if (found == 0)
		return true;
	return err_set(e, ERR_BOOK,
		ngettext("%d thing in the book %s is not as it should be",
			"%d things in the book %s are not as they should be",
			(unsigned long)found),
		found, ctx->book_path);
}

bool command_check(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct buf text = { 0 };
	struct args a = { 0 };

	if (!args_read(argc, argv, &a, e))
		return false;
	struct book *b = open_to_read(ctx, e);
	bool ok = b && look(ctx, b, &text, e);
	if (b)
		book_close(b);
	buf_free(&text);
	return ok;
}
