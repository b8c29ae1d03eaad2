/* import.c - the command that takes in a file of records. */
#include "base/words.h"
#include "book/places.h"
#include "book/rules.h"
#include "command/clock.h"
#include "command/command.h"
#include "exchange/exchange.h"
#include "formats.h"
#include "import_ghcn.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* What the command line asks for. */
struct wish {
	const struct kind *kind;
	const char *path; /* "-" = standard input; NULL with published */
	bool published;
	bool replace;
	bool columns; /* only tell what the file's columns are */
	struct published filter;
};

static bool check_wish(const struct wish *w, struct err *e)
{
	const struct published *f = &w->filter;
	bool filtered = f->pest || f->crop || f->condition || f->source;

	if (w->published && strcmp(w->kind->name, "thresholds") != 0)
		return err_set(e, ERR_USAGE,
			_("--published goes with thresholds: mothtally import "
			  "thresholds --published"));
	if (filtered && !w->published)
		return err_set(e, ERR_USAGE,
			_("--pest, --crop, --condition and --source go with "
			  "--published"));
	if (w->replace && strcmp(w->kind->name, "thresholds") != 0)
		return err_set(e, ERR_USAGE,
			_("--replace goes with thresholds: mothtally import thresholds "
			  "FILE --replace"));
	if (w->replace && !w->path)
		return err_set(e, ERR_USAGE,
			_("--replace needs the file that becomes all of the "
			  "thresholds: mothtally import thresholds FILE --replace"));
	if (w->published && w->columns)
		return err_set(e, ERR_USAGE,
			_("--published and --columns do not go together"));
	if (w->path && (w->published || w->columns))
		return err_set(e, ERR_USAGE, _("%s takes no file: \"%s\""),
			w->published ? "--published" : "--columns", w->path);
	if (!w->path && !w->published && !w->columns)
		return err_set(e, ERR_USAGE,
			_("import needs a file: mothtally import %s FILE (- is the "
			  "standard input)"),
			w->kind->name);
	return true;
}

static bool read_wish(int argc, char **argv, struct wish *w, struct err *e)
{
	const struct option_row rows[] = {
		{ .name = "published", .flag = &w->published },
		{ .name = "columns", .flag = &w->columns },
		{ .name = "replace", .flag = &w->replace },
		{ .name = "pest", .value = &w->filter.pest },
		{ .name = "crop", .value = &w->filter.crop },
		{ .name = "condition", .value = &w->filter.condition },
		{ .name = "source", .value = &w->filter.source },
		{ 0 },
	};
	struct args a = { .rows = rows, .max = 2 };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (a.n_rest == 0)
		return err_set(e, ERR_USAGE,
			_("import needs a kind of file: mothtally import KIND FILE"));
	w->kind = kind_find(a.rest[0], e);
	w->path = a.rest[1];
	return w->kind && check_wish(w, e);
}

static bool take(struct book *b, const struct wish *w, FILE *file, int32_t today,
	struct imported *out, struct err *e)
{
	struct zone zone;
	struct import_from from = {
		.file = file, .today = today, .replace = w->replace, .zone = &zone
	};

	clock_zone(&zone, today);
	if (w->published)
		return exchange_take_published(b, &w->filter, today, out, e);
	from.name = file == stdin ? _("standard input") : w->path;
	return exchange_import(b, w->kind, &from, out, e);
}

static void tell_list(const struct sentences *s, int64_t all)
{
	for (size_t n = 0; n < s->n; n++)
		fprintf(stderr, "%s\n", s->items[n]);
	if (all > (int64_t)s->n)
		fprintf(stderr, _("and %lld more\n"), (long long)(all - (int64_t)s->n));
}

/* Results go to stdout; what is wrong to stderr, main's sentence last. */
static bool tell(const struct wish *w, const struct imported *i, bool ok, struct err *e)
{
	struct buf text = { 0 };

	tell_list(&i->problems, i->n_problems);
	if (!ok)
		return false;
	tell_list(&i->warnings, i->n_warnings);
	for (size_t n = 0; n < i->notes.n; n++)
		buf_addf(&text, "%s\n", i->notes.items[n]);
	buf_addf(&text, "%s: ", w->kind->name);
	imported_say(i, &text);
	buf_add(&text, "\n");
	ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

static bool tell_columns(const struct kind *k, struct err *e)
{
	struct buf text = { 0 };
	char right[RIGHT_BYTES];

	for (size_t i = 0; i < k->n_columns; i++) {
		const struct column *c = &k->columns[i];
		c->type->right(c, right);
		buf_addf(&text, "%s%s\n    %s\n    %s\n", c->name,
			c->needed ? _(" (needed)") : "", _(c->help), right);
	}
	bool ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

/* Within a group, so that no other program puts something into it meanwhile. */
void import_drop_new(const struct context *ctx, struct book *b)
{
	struct farms farms = { 0 };
	struct rules rules = { 0 };

	if (!book_begin(b, NULL))
		return;
	if (book_farms(b, &farms, NULL) && book_rules(b, &rules, NULL) &&
		farms.n == 0 && rules.n == 0)
		unlink(ctx->book_path);
	book_rollback(b);
	free(farms.items);
	free(rules.items);
}

static bool import_into(
	const struct context *ctx, const struct wish *w, FILE *file, struct err *e)
{
	struct imported out = { 0 };
	struct stat st;
	bool is_new = stat(ctx->book_path, &st) != 0 && errno == ENOENT;
	struct book *b = book_open(ctx->book_path, BOOK_CREATE, ctx->who, e);

	if (!b)
		return false;
	/* A new book has nothing that a copy could keep. */
	bool taken = (is_new || book_daily_backup(b, ctx->today, e)) &&
		     take(b, w, file, ctx->today, &out, e);
	if (!taken && is_new)
		import_drop_new(ctx, b);
	bool ok = tell(w, &out, taken, e);
	imported_free(&out);
	book_close(b);
	return ok;
}

bool command_import(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct wish w = { 0 };
	FILE *file = NULL;

	if (import_is_ghcn(argc, argv))
		return import_ghcn(ctx, argc, argv, e);
	if (formats_are_asked(argc, argv))
		return formats_take_in(ctx, argc, argv, e);
	if (!read_wish(argc, argv, &w, e))
		return false;
	if (w.columns)
		return tell_columns(w.kind, e);
	if (w.path && strcmp(w.path, "-") == 0)
		file = stdin;
	else if (w.path)
		file = fopen(w.path, "rbe");
	if (w.path && !file)
		return err_set(e, errno == ENOENT ? ERR_NOT_FOUND : ERR_INPUT,
			_("%s cannot be read: %s"), w.path, strerror(errno));
	bool ok = import_into(ctx, &w, file, e);
	if (file && file != stdin)
		fclose(file);
	return ok;
}
