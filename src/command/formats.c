#include "formats.h"

#include "answers/agenda.h"
#include "base/words.h"
#include "book/places.h"
#include "exchange/geojson.h"
#include "exchange/gpx.h"
#include "exchange/icalendar.h"
#include "report.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct words {
	const struct format *format;
	const char *farm, *path;
};

/* Where a file comes from. */
struct source_file {
	FILE *file;
	const char *name;
};

struct format {
	const char *name;
	bool gives_one_farm; /* of several it could not tell whose is what */
	/* NULL: it is only given out. */
	bool (*take_in)(struct book *b, const struct source_file *from, int64_t farm,
		struct imported *out, struct err *e);
	bool (*give)(const struct context *ctx, const char *farm, struct buf *out,
		struct err *e);
};

static bool find_farm(struct book *b, const char *name, int64_t *id, struct err *e)
{
	struct log l = { 0 };
	const struct farm *f =
		book_farms(b, &l.farms, e) ? log_find_farm(&l, name, e) : NULL;

	*id = f ? f->id : 0;
	free(l.farms.items);
	return f != NULL;
}

static bool take_gpx(struct book *b, const struct source_file *from, int64_t farm,
	struct imported *out, struct err *e)
{
	const struct gpx_from gpx = { from->file, from->name, farm };

	return gpx_import(b, &gpx, out, e);
}

static bool take_geojson(struct book *b, const struct source_file *from, int64_t farm,
	struct imported *out, struct err *e)
{
	const struct geojson_from geojson = { from->file, from->name, farm };

	return geojson_import(b, &geojson, out, e);
}

/* Of the farm named, or of all. */
static bool give_of(const struct context *ctx, const char *farm, struct buf *out,
	bool (*give)(struct book *b, int64_t farm, struct buf *out, struct err *e),
	struct err *e)
{
	int64_t id = 0;
	struct book *b = open_to_read(ctx, e);

	if (!b)
		return false;
	bool ok = (!farm || find_farm(b, farm, &id, e)) && give(b, id, out, e);
	book_close(b);
	return ok;
}

static bool give_gpx(
	const struct context *ctx, const char *farm, struct buf *out, struct err *e)
{
	return give_of(ctx, farm, out, gpx_export, e);
}

static bool give_geojson(
	const struct context *ctx, const char *farm, struct buf *out, struct err *e)
{
	return give_of(ctx, farm, out, geojson_export, e);
}

static bool give_icalendar(
	const struct context *ctx, const char *farm, struct buf *out, struct err *e)
{
	struct report r = { 0 };
	struct agenda agenda = { 0 };
	bool ok = report_open(ctx, farm, NULL, &r, e) &&
		  agenda_read(&r.log, r.book, r.farm, &agenda, e) &&
		  icalendar_write(&agenda, out, e);

	agenda_free(&agenda);
	report_close(&r);
	return ok;
}

static const struct format formats[] = {
	{ "gpx", true, take_gpx, give_gpx },
	{ "geojson", false, take_geojson, give_geojson },
	{ "icalendar", false, NULL, give_icalendar },
};

static const struct format *find(const char *name)
{
	for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
		if (strcmp(formats[i].name, name) == 0)
			return &formats[i];
	return NULL;
}

bool formats_are_asked(int argc, char **argv)
{
	int i = 1;

	while (i < argc && argv[i][0] == '-' && argv[i][1])
		i += strcmp(argv[i], "--farm") == 0 ? 2 : 1;
	return i < argc && find(argv[i]);
}

static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = { { "farm", &w->farm, NULL, 0 }, { 0 } };
	struct args a = { .rows = rows, .max = 2 };

	if (!args_read(argc, argv, &a, e))
		return false;
	w->format = find(a.rest[0]);
	w->path = a.rest[1];
	return true;
}

static bool needs_farm(const char *command, const struct words *w, struct err *e)
{
	return err_set(e, ERR_USAGE,
		_("%s %s needs --farm FARM: a trap's number is its farm's own"),
		command, w->format->name);
}

/* Results go to stdout; what is wrong to stderr, main's sentence last. */
static bool tell(
	const struct words *w, const struct imported *i, bool ok, struct err *e)
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
	buf_addf(&text, _("%s: positions set: %lld, there already: %lld"),
		w->format->name, (long long)i->n_changed, (long long)i->n_same);
	if (i->n_new > 0)
		buf_addf(&text, _(", new sources: %lld"), (long long)i->n_new);
	buf_add(&text, "\n");
	ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}

static bool take_in(const struct context *ctx, const struct words *w,
	const struct source_file *from, struct err *e)
{
	struct imported out = { 0 };
	int64_t farm;
	struct book *b = book_open(ctx->book_path, BOOK_EXISTING, ctx->who, e);

	if (!b)
		return false;
	bool taken = find_farm(b, w->farm, &farm, e) &&
		     book_daily_backup(b, ctx->today, e) &&
		     w->format->take_in(b, from, farm, &out, e);
	bool ok = tell(w, &out, taken, e);
	imported_free(&out);
	book_close(b);
	return ok;
}

static bool check_words(const char *command, const struct words *w, struct err *e)
{
	if (!w->format->take_in)
		return err_set(e, ERR_USAGE,
			_("%s is only given out: mothtally export %s [FILE]"),
			w->format->name, w->format->name);
	if (!w->farm)
		return needs_farm(command, w, e);
	if (!w->path)
		return err_set(e, ERR_USAGE,
			_("import needs a file: mothtally import %s FILE --farm FARM (- "
			  "is the standard input)"),
			w->format->name);
	return true;
}

bool formats_take_in(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct source_file from;
	struct words w = { 0 };

	if (!read_words(argc, argv, &w, e) || !check_words(argv[0], &w, e))
		return false;
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

bool formats_give_out(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct words w = { 0 };
	struct buf text = { 0 };

	if (!read_words(argc, argv, &w, e))
		return false;
	if (w.format->gives_one_farm && !w.farm)
		return needs_farm(argv[0], &w, e);
	bool ok = w.format->give(ctx, w.farm, &text, e);
	if (ok && w.path && strcmp(w.path, "-") != 0)
		ok = out_file(w.path, &text, e);
	else if (ok)
		ok = out_print(&text, e);
	buf_free(&text);
	return ok;
}
