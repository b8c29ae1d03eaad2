/* hotspots.c - the command that tells where it is hot. */
#include "answers/hotspots.h"
#include "base/text.h"
#include "base/words.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "paper/hotspots.h"
#include "report.h"

/* What the command line says; NULL: not given. */
struct words {
	const char *pest, *farm, *year, *flight;
	int season, number; /* 0: not given */
	bool csv;
};

static bool read_numbers(struct words *w, struct err *e)
{
	int32_t flight = 0;

	if (!report_read_year(w->year, &w->season, e))
		return false;
	if (w->flight && !text_int(w->flight, 1, FLIGHTS_MAX, &flight))
		return err_set(e, ERR_USAGE,
			_("--flight \"%s\" is no flight of a season, such as 1"),
			w->flight);
	w->number = (int)flight;
	return true;
}

static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = {
		{ "pest", &w->pest, NULL, 0 },
		{ "farm", &w->farm, NULL, 0 },
		{ "season", &w->year, NULL, 0 },
		{ "flight", &w->flight, NULL, 0 },
		{ "csv", NULL, &w->csv, 0 },
		{ 0 },
	};
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (!w->pest)
		return err_set(e, ERR_USAGE,
			_("hotspots needs --pest CODE, such as --pest CM"));
	return read_numbers(w, e);
}

/* A flight that was not found must not read as the whole season. */
static bool is_as_asked(const struct hot_view *v, const struct words *w,
	const char *farm, struct err *e)
{
	return v->flight == w->number ||
	       err_set(e, ERR_NOT_FOUND,
		       ngettext("there is no flight %d of %s on %s in that season: %d "
				"was told apart",
			       "there is no flight %d of %s on %s in that season: %d "
			       "were told apart",
			       (unsigned)v->n_flights),
		       w->number, w->pest, farm, v->n_flights);
}

static bool add_farm(const struct report *r, const struct words *w,
	const struct farm *farm, struct buf *out, struct err *e)
{
	const struct hot_ask ask = { .farm = farm->id,
		.pest = r->pest,
		.season = w->season,
		.flight = w->number };
	struct hot_view view = { 0 };
	bool ok = hotspots_read(&view, r->book, &r->log, &ask, e) &&
		  is_as_asked(&view, w, farm->name, e);

	if (ok && w->csv)
		hotspots_csv(&view, r->farm ? "" : farm->name, out);
	else if (ok)
		paper_hotspots(&view, say_caution_short(), out_cols(), out);
	hotspots_free(&view);
	return ok;
}

static bool has_traps(const struct report *r, int64_t farm)
{
	for (size_t i = 0; i < r->log.traps.n; i++)
		if (r->log.traps.items[i].farm == farm &&
			r->log.traps.items[i].pest == r->pest)
			return true;
	return false;
}

/* Farms are never compared with each other: each has an answer of its own. */
static bool answer(
	const struct report *r, const struct words *w, struct buf *out, struct err *e)
{
	bool ok = true;

	if (w->csv)
		hotspots_csv_head(out);
	for (size_t i = 0; ok && i < r->log.farms.n; i++) {
		const struct farm *f = &r->log.farms.items[i];

		if (r->farm ? f->id != r->farm : !has_traps(r, f->id))
			continue;
		if (!w->csv && out->n)
			buf_add(out, "\n\n");
		ok = add_farm(r, w, f, out, e);
	}
	if (ok && out->n == 0)
		out_sentence(out, _("No farm has a trap for %s."), w->pest);
	return ok;
}

bool command_hotspots(const struct context *ctx, int argc, char **argv, struct err *e)
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
