#include "exchange/gpx.h"
#include "answers/log.h"
#include "base/words.h"
#include "book/places.h"
#include "command/command.h"
#include "gpx.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct words {
	const char *farm, *path;
};

bool gpx_is_asked(int argc, char **argv)
{
	int i = 1;

	while (i < argc && argv[i][0] == '-' && argv[i][1])
		i += strcmp(argv[i], "--farm") == 0 ? 2 : 1;
	return i < argc && strcmp(argv[i], "gpx") == 0;
}

/* The words after "gpx". */
static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = { { "farm", &w->farm, NULL, 0 } };
	const char *rest[2] = { NULL, NULL };
	size_t n;

	if (!args_read(argc, argv, rows, 1, rest, 2, &n, e))
		return false;
	w->path = rest[1];
	if (!w->farm)
		return err_set(e, ERR_USAGE,
			_("%s gpx needs --farm FARM: a trap's number is its farm's "
			  "own"),
			argv[0]);
	return true;
}

static bool find_farm(struct book *b, const char *name, int64_t *id, struct err *e)
{
	struct log l = { 0 };
	const struct farm *f =
		book_farms(b, &l.farms, e) ? log_find_farm(&l, name, e) : NULL;

	*id = f ? f->id : 0;
	free(l.farms.items);
	return f != NULL;
}

/* Results go to stdout; what is wrong to stderr, main's sentence last. */
static bool tell(const struct imported *i, bool ok, struct err *e)
{
	const struct sentences *said = ok ? &i->warnings : &i->problems;
	int64_t all = ok ? i->n_warnings : i->n_problems;
	struct buf text = { 0 };

	for (size_t n = 0; n < said->n; n++)
		fprintf(stderr, "%s\n", said->items[n]);
	if (all > (int64_t)said->n)
		fprintf(stderr, _("and %lld more\n"),
			(long long)(all - (int64_t)said->n));
	if (!ok)
		return false;
	for (size_t n = 0; n < i->notes.n; n++)
		buf_addf(&text, "%s\n", i->notes.items[n]);
	buf_addf(&text, _("gpx: positions set: %lld, there already: %lld\n"),
		(long long)i->n_changed, (long long)i->n_same);
	ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

static bool take_in(const struct context *ctx, const struct words *w,
	struct gpx_from *from, struct err *e)
{
	struct imported out = { 0 };
	struct book *b = book_open(ctx->book_path, BOOK_EXISTING, ctx->who, e);

	if (!b)
		return false;
	bool taken = find_farm(b, w->farm, &from->farm, e) &&
		     book_daily_backup(b, ctx->today, e) &&
		     gpx_import(b, from, &out, e);
	bool ok = tell(&out, taken, e);
	imported_free(&out);
	book_close(b);
	return ok;
}

bool gpx_take_in(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct gpx_from from = { 0 };
	struct words w = { 0 };

	if (!read_words(argc, argv, &w, e))
		return false;
	if (!w.path)
		return err_set(e, ERR_USAGE,
			_("import needs a file: mothtally import gpx FILE --farm FARM "
			  "(- is the standard input)"));
	bool piped = strcmp(w.path, "-") == 0;
	from.name = piped ? _("standard input") : w.path;
	from.file = piped ? stdin : fopen(w.path, "rbe");
	if (!from.file)
		return err_set(e, errno == ENOENT ? ERR_NOT_FOUND : ERR_INPUT,
			_("%s cannot be read: %s"), w.path, strerror(errno));
	bool ok = take_in(ctx, &w, &from, e);
	if (!piped)
		fclose(from.file);
	return ok;
}

bool gpx_give_out(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct words w = { 0 };
	struct buf text = { 0 };
	int64_t farm = 0;

	if (!read_words(argc, argv, &w, e))
		return false;
	struct book *b = open_to_read(ctx, e);
	if (!b)
		return false;
	bool ok = find_farm(b, w.farm, &farm, e) && gpx_export(b, farm, &text, e);
	if (ok && w.path && strcmp(w.path, "-") != 0)
		ok = out_file(w.path, &text, e);
	else if (ok)
		ok = out_print(&text, e);
	buf_free(&text);
	book_close(b);
	return ok;
}
