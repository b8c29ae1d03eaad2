/* demo.c - the invented book: made, opened in the pages, printed. */
#define _XOPEN_SOURCE 700 /* nftw */

#include "answers/settings.h"
#include "base/shipped.h"
#include "base/words.h"
#include "command/clock.h"
#include "command/command.h"
#include "exchange/exchange.h"
#include "report.h"

#include <errno.h>
#include <ftw.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { DEMO_YEAR = 2026, DEMO_MONTH = 7, DEMO_DAY = 21 };
enum { DEMO_MINUTE = 450, FILES_OPEN = 16 };

static int32_t last_day(void)
{
	return day_from_ymd(DEMO_YEAR, DEMO_MONTH, DEMO_DAY);
}

/* A file of the demo and what it holds. */
struct demo_file {
	const char *kind, *name;
};

static bool take_in(struct book *b, const struct demo_file *d, struct err *e)
{
	struct imported done = { 0 };
	struct zone zone;
	char name[32];

	clock_zone(&zone, last_day());
	snprintf(name, sizeof name, "demo/%s.csv", d->name);
	const struct shipped *s = shipped_find(name);
	const struct kind *k = kind_find(d->kind, e);
	FILE *file = s && k ? fmemopen((void *)(uintptr_t)s->text, s->n, "r") : NULL;
	if (!file)
		return err_set(e, ERR_BOOK, _("the demo's %s could not be read"), name);
	const struct import_from from = { .file = file,
		.name = name,
		.today = last_day(),
		.zone = &zone,
		.shipped = true };
	bool ok = exchange_import(b, k, &from, &done, e);
	fclose(file);
	imported_free(&done);
	return ok;
}

static bool fill(struct book *b, struct err *e)
{
	static const struct demo_file files[] = {
		{ "traps", "traps" },
		{ "places", "places" },
		{ "visits", "visits" },
		{ "visits", "visits-2025" },
		{ "thresholds", "thresholds" },
		{ "weather", "weather" },
		{ "biofix", "biofix" },
		{ "dispensers", "dispensers" },
		{ "treatments", "treatments" },
		{ "picks", "picks" },
		{ "fruit-checks", "fruit-checks" },
		{ "answers", "answers" },
	};

	for (size_t i = 0; i < sizeof files / sizeof *files; i++)
		if (!take_in(b, &files[i], e))
			return false;
	return true;
}

/* The season of codling moth on the first farm. */
static bool add_flight(const struct report *r, struct buf *out, struct err *e)
{
	const struct pest *p = log_find_pest(&r->log, "CM", e);
	struct flight_ask ask = { .trap = NO_TRAP };

	if (!p || r->log.farms.n == 0)
		return p != NULL;
	ask.farm = r->log.farms.items[0].id;
	ask.pest = p->id;
	ask.season = log_season(&r->log, ask.farm, r->log.today);
	return report_flight(r, &ask, out_cols(), out, e);
}

/* The season of the block that is picked first: caught, answered, treated, checked. */
static bool add_block(const struct report *r, struct buf *out, struct err *e)
{
	const struct log *l = &r->log;
	const struct block *b = log_block(l, l->picks.n ? l->picks.items[0].block : 0);
	const struct farm *f = log_farm(l, b ? b->farm : 0);

	if (!f)
		return true;
	const struct record_ask ask = { .farm = f->id,
		.block = b->id,
		.from = day_season_start(l->today, f->season_start),
		.to = day_season_end(l->today, f->season_start) };
	return report_block(r, &ask, out, e);
}

static bool add_texts(
	const struct context *ctx, struct report *r, struct buf *out, struct err *e)
{
	struct sheet_form form = { .paper = PAPER_A4, .utf8 = ctx->utf8 };
	struct papers sheet = { 0 };

	buf_add(out,
		_("Demo: the valley, its farms, people and counts are invented.\n\n"));
	report_week(r, out_cols(), out);
	buf_add(out, "\n");
	if (!report_due(r, out_cols(), out, e))
		return false;
	buf_add(out, "\n");
	if (!add_flight(r, out, e))
		return false;
	buf_add(out, "\n");
	if (!add_block(r, out, e))
		return false;
	buf_add(out, "\n");
	r->farm = r->log.farms.n ? r->log.farms.items[0].id : 0;
	bool ok = report_sheets(r, &form, &sheet, e);
	if (ok)
		buf_add_n(out, sheet.bytes.text, sheet.bytes.n);
	papers_free(&sheet);
	return ok;
}

/* Needs no file: the book is in memory. */
static bool print_demo(const struct context *ctx, int32_t today, struct err *e)
{
	struct report r = { .book = book_open(":memory:", BOOK_CREATE, "demo", e) };
	struct buf text = { 0 };

	clock_stand(today, DEMO_MINUTE, &r.log.now, &r.log.zone);
	bool ok = r.book && fill(r.book, e) &&
		  settings_apply(r.book, ctx->settings, e) &&
		  log_read(&r.log, r.book, 0, today, e) &&
		  add_texts(ctx, &r, &text, e) && out_text(&text, ctx->utf8, e);
	report_close(&r);
	buf_free(&text);
	return ok;
}

static int remove_one(
	const char *path, const struct stat *status, int what, struct FTW *where)
{
	(void)status, (void)what, (void)where;
	return remove(path);
}

static bool make_folder(struct buf *folder, struct err *e)
{
	const char *under = getenv("TMPDIR");

	buf_addf(folder, "%s/mothtally-demo-XXXXXX", under && *under ? under : "/tmp");
	return mkdtemp(folder->text) ||
	       err_set(e, ERR_BOOK, _("no folder for the demo could be made (%s): %s"),
		       folder->text, strerror(errno));
}

static bool make_book(const char *path, struct err *e)
{
	struct book *b = book_open(path, BOOK_CREATE, "demo", e);
	bool ok = b && fill(b, e);

	if (b)
		book_close(b);
	return ok;
}

/* What ends a program from outside; held back while the folder would be left behind. */
static sigset_t leaving(void)
{
	sigset_t set;

	sigemptyset(&set);
	sigaddset(&set, SIGINT);
	sigaddset(&set, SIGTERM);
	sigaddset(&set, SIGHUP);
	return set;
}

static bool asked_to_leave(void)
{
	sigset_t pending;

	sigpending(&pending);
	return sigismember(&pending, SIGINT) == 1 ||
	       sigismember(&pending, SIGTERM) == 1 ||
	       sigismember(&pending, SIGHUP) == 1;
}

static bool open_demo(const struct context *ctx, int32_t today,
	bool (*pages)(const struct context *, const char *, struct err *),
	struct err *e)
{
	struct context demo = *ctx;
	struct buf folder = { 0 }, path = { 0 };
	sigset_t hold = leaving(), before;

	sigprocmask(SIG_BLOCK, &hold, &before);
	bool ok = make_folder(&folder, e);
	if (ok) {
		buf_addf(&path, "%s/book.db", folder.text);
		demo.book_path = path.text;
		demo.today = today;
		demo.today_given = true; /* the invented season has its own day */
		demo.minute = DEMO_MINUTE;
		ok = make_book(path.text, e);
		if (ok && !asked_to_leave()) {
			sigprocmask(SIG_SETMASK, &before, NULL);
			ok = pages(&demo, _("demo: invented data"), e);
			sigprocmask(SIG_BLOCK, &hold, NULL);
		}
		nftw(folder.text, remove_one, FILES_OPEN, FTW_DEPTH | FTW_PHYS);
	}
	sigprocmask(SIG_SETMASK, &before, NULL);
	buf_free(&folder);
	buf_free(&path);
	return ok;
}

bool demo_open(const struct context *ctx,
	bool (*pages)(const struct context *, const char *, struct err *),
	struct err *e)
{
	return open_demo(ctx, last_day(), pages, e);
}

bool command_demo(const struct context *ctx, int argc, char **argv, struct err *e)
{
	bool print = false;
	const struct option_row rows[] = { { "print", NULL, &print, 0 }, { 0 } };
	struct args a = { .rows = rows };
	int32_t today = ctx->today_given ? ctx->today : last_day();

	if (!args_read(argc, argv, &a, e))
		return false;
	if (print)
		return print_demo(ctx, today, e);
	if (!ctx->out_is_terminal)
		return err_set(e, ERR_USAGE,
			_("the demo's pages need a terminal; mothtally demo --print "
			  "shows it without one"));
	return open_demo(ctx, today, pages_run, e);
}
