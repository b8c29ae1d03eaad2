/* export.c - the command that writes records as a file. */
#include "base/words.h"
#include "command/command.h"
#include "exchange/exchange.h"
#include "formats.h"

#include <stdio.h>
#include <string.h>

static bool to_stdout(void *arg, struct buf *text, struct err *e)
{
	(void)arg;
	return out_print(text, e);
}

static bool to_memory(void *arg, struct buf *text, struct err *e)
{
	struct buf *all = arg;

	(void)e;
	buf_add_n(all, text->text, text->n);
	buf_clear(text);
	return true;
}

/* A file appears whole or not at all. */
static bool to_file(
	struct book *b, const struct kind *kind, const char *path, struct err *e)
{
	struct buf all = { 0 };
	bool ok =
		exchange_export(b, kind, to_memory, &all, e) && out_file(path, &all, e);

	buf_free(&all);
	return ok;
}

/* The book of ctx; for kinds that a new book has, its starting values without one. */
static struct book *open_to_export(
	const struct context *ctx, const struct kind *kind, struct err *e)
{
	struct err why = { 0 };
	struct book *b = open_to_read(ctx, &why);

	if (b)
		return b;
	if (why.kind != ERR_NOT_FOUND || !kind->starts) {
		err_set(e, why.kind, "%s", why.text);
		return NULL;
	}
	b = book_open(":memory:", BOOK_CREATE, ctx->who, e);
	if (b)
		fprintf(stderr,
			_("there is no book yet: these are the %s that a new "
			  "one starts with\n"),
			kind->name);
	return b;
}

bool command_export(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct args a = { .max = 2 };

	if (formats_are_asked(argc, argv))
		return formats_give_out(ctx, argc, argv, e);
	if (!args_read(argc, argv, &a, e))
		return false;
	if (a.n_rest == 0)
		return err_set(e, ERR_USAGE,
			_("export needs a kind of file: mothtally export KIND [FILE]"));
	const struct kind *kind = kind_find(a.rest[0], e);
	if (!kind)
		return false;
	struct book *b = open_to_export(ctx, kind, e);
	if (!b)
		return false;
	bool ok = a.rest[1] && strcmp(a.rest[1], "-") != 0
			  ? to_file(b, kind, a.rest[1], e)
			  : exchange_export(b, kind, to_stdout, NULL, e);
	book_close(b);
	return ok;
}
