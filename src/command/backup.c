/* backup.c - the command that copies the book to a file. */
#include "base/words.h"
#include "command/command.h"

bool command_backup(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct buf text = { 0 };
	struct args a = { .max = 1 };

	if (!args_read(argc, argv, &a, e))
		return false;
	const char *target = a.rest[0];
	if (!target)
		return err_set(e, ERR_USAGE,
			_("backup wants the name of a new file: mothtally backup "
			  "FILE"));
	struct book *b = open_to_read(ctx, e);
	bool ok = b && book_backup(b, target, e);
	if (b)
		book_close(b);
	if (ok) {
		out_sentence(&text, _("the book is copied to %s"), target);
		ok = out_text(&text, ctx->utf8, e);
	}
	buf_free(&text);
	return ok;
}
