/* flight.c - the command that tells the flights of a season. */
#include "answers/flight.h"
#include "base/words.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "report.h"

#include <string.h>

/* What the command line says; NULL: not given. */
struct words {
	const char *pest, *farm, *block, *trap, *year;
	int season; /* 0: the one of today */
	bool csv;
};

static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = {
		{ "pest", &w->pest, NULL, 0 },
		{ "farm", &w->farm, NULL, 0 },
		{ "block", &w->block, NULL, 0 },
		{ "trap", &w->trap, NULL, 0 },
		{ "season", &w->year, NULL, 0 },
		{ "csv", NULL, &w->csv, 0 },
		{ 0 },
	};
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (!w->pest)
		return err_set(
			e, ERR_USAGE, _("flight needs --pest CODE, such as --pest CM"));
	if ((w->block || w->trap) && !w->farm)
		return err_set(e, ERR_USAGE,
			_("--block and --trap need --farm: names are a farm's own"));
	return report_read_year(w->year, &w->season, e);
}

static bool is_asked(const struct flight_ask *a, const struct trap *t)
{
	return t->pest == a->pest && (a->farm == 0 || t->farm == a->farm) &&
	       (a->block == 0 || t->block == a->block);
}

static bool find_trap(
	const struct log *l, const struct words *w, struct flight_ask *a, struct err *e)
{
	struct buf there = { 0 };

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];

		if (!is_asked(a, t))
			continue;
		if (strcmp(t->label, w->trap) == 0)
			a->trap = (int)i;
		buf_addf(&there, "%s%s", there.n ? ", " : "", t->label);
	}
	if (a->trap == NO_TRAP)
		err_set(e, ERR_NOT_FOUND,
			_("there is no trap \"%s\" for %s there; there are: %s"),
			w->trap, w->pest, there.text ? there.text : _("none"));
	buf_free(&there);
	return a->trap != NO_TRAP;
}

static bool add_csv(const struct report *r, const struct flight_ask *a, struct buf *out,
	struct err *e)
{
	struct flight_view view = { 0 };
	bool ok = flight_read(&view, r->book, &r->log, a, e);

	if (ok)
		flight_csv(&r->log, &view, out);
	flight_free(&view);
	return ok;
}

static bool add_season(const struct report *r, const struct flight_ask *a, bool csv,
	struct buf *out, struct err *e)
{
	return csv ? add_csv(r, a, out, e) : report_flight(r, a, out_cols(), out, e);
}

static bool has_traps(const struct log *l, const struct flight_ask *a)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (is_asked(a, &l->traps.items[i]))
			return true;
	return false;
}

/* All farms together, then each that has traps of the pest. */
static bool add_all(const struct report *r, const struct words *w, struct flight_ask a,
	struct buf *out, struct err *e)
{
	const struct log *l = &r->log;
	bool ok = add_season(r, &a, w->csv, out, e);

	for (size_t i = 0; ok && i < l->farms.n; i++) {
		a.farm = l->farms.items[i].id;
		a.season = w->season ? w->season : log_season(l, a.farm, l->today);
		if (!has_traps(l, &a))
			continue;
		if (!w->csv)
			buf_add(out, "\n\n");
		ok = add_season(r, &a, w->csv, out, e);
	}
	return ok;
}

static bool answer(
	const struct report *r, const struct words *w, struct buf *out, struct err *e)
{
	const struct log *l = &r->log;
	struct flight_ask a = { .farm = r->farm, .pest = r->pest, .trap = NO_TRAP };

	if ((w->block && !report_find_block(r, w->block, &a.block, e)) ||
		(w->trap && !find_trap(l, w, &a, e)))
		return false;
	a.season = w->season ? w->season : log_season(l, a.farm, l->today);
	if (w->csv)
		flight_csv_head(out);
	return a.farm ? add_season(r, &a, w->csv, out, e) : add_all(r, w, a, out, e);
}

bool command_flight(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct words w = { 0 };
	struct report r = { 0 };
	struct buf text = { 0 };

	if (!read_words(argc, argv, &w, e))
		return false;
	bool ok = report_open(ctx, w.farm, w.pest, &r, e) && answer(&r, &w, &text, e) &&
		  out_text(&text, ctx->utf8 || w.csv, e);
	report_close(&r);
	buf_free(&text);
	return ok;
}
