#include "import_ghcn.h"
#include "base/words.h"
#include "command/command.h"
#include "exchange/ghcn.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

typedef bool ghcn_read(const struct ghcn_from *from, struct ghcn *out, struct err *e);

static const struct layout {
	const char *word;
	ghcn_read *read;
} layouts[] = {
	{ "ghcn-dly", ghcn_read_dly },
	{ "ghcn-year", ghcn_read_year },
};

static const struct layout *find_layout(const char *word)
{
	for (size_t i = 0; i < sizeof layouts / sizeof *layouts; i++)
		if (strcmp(layouts[i].word, word) == 0)
			return &layouts[i];
	return NULL;
}

bool import_is_ghcn(int argc, char **argv)
{
	int i = 1;

	while (i < argc && argv[i][0] == '-' && argv[i][1])
		i += strcmp(argv[i], "--station") == 0 ? 2 : 1;
	return i < argc && find_layout(argv[i]);
}

/* Results go to stdout; what is wrong to stderr, main's sentence last. */
static bool tell(
	const struct layout *l, const struct imported *i, bool ok, struct err *e)
{
	struct buf text = { 0 };

	for (size_t n = 0; n < i->problems.n; n++)
		fprintf(stderr, "%s\n", i->problems.items[n]);
	if (i->n_problems > (int64_t)i->problems.n)
		fprintf(stderr, _("and %lld more\n"),
			(long long)(i->n_problems - (int64_t)i->problems.n));
	if (!ok)
		return false;
	for (size_t n = 0; n < i->notes.n; n++)
		buf_addf(&text, "%s\n", i->notes.items[n]);
	buf_addf(&text, _("%s, days: "), l->word);
	imported_say(i, &text);
	buf_add(&text, "\n");
	ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

static bool import_into(const struct context *ctx, const struct layout *l,
	const struct ghcn_from *from, struct err *e)
{
	struct imported out = { 0 };
	struct stat st;
	bool is_new = stat(ctx->book_path, &st) != 0 && errno == ENOENT;
	struct book *b = book_open(ctx->book_path, BOOK_CREATE, ctx->who, e);

	if (!b)
		return false;
	/* A new book has nothing that a copy could keep. */
	bool taken = (is_new || book_daily_backup(b, ctx->today, e)) &&
		     ghcn_import(b, l->read, from, &out, e);
	if (!taken && is_new)
		import_drop_new(ctx, b);
	bool ok = tell(l, &out, taken, e);
	imported_free(&out);
	book_close(b);
	return ok;
}

bool import_ghcn(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct ghcn_from from = { .today = ctx->today };
	const struct option_row rows[] = { { "station", &from.station, NULL, 0 },
		{ 0 } };
	struct args a = { .rows = rows, .max = 2 };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (a.n_rest < 2)
		return err_set(e, ERR_USAGE,
			_("import needs a file: mothtally import %s FILE (- is the "
			  "standard input)"),
			a.rest[0]);
	bool piped = strcmp(a.rest[1], "-") == 0;
	from.name = piped ? _("standard input") : a.rest[1];
	from.file = piped ? stdin : fopen(a.rest[1], "rbe");
	if (!from.file)
		return err_set(e, errno == ENOENT ? ERR_NOT_FOUND : ERR_INPUT,
			_("%s cannot be read: %s"), a.rest[1], strerror(errno));
	bool ok = import_into(ctx, find_layout(a.rest[0]), &from, e);
	if (!piped)
		fclose(from.file);
	return ok;
}
