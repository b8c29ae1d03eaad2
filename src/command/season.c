/* season.c - the command that sets a farm's season page. */
#include "paper/season.h"
#include "answers/season_page.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "command/clock.h"
#include "command/command.h"
#include "paper/ascii.h"
#include "papers.h"
#include "report.h"

#include <stdio.h>
#include <stdlib.h>

enum { FILE_COLS = 78 };

/* What the command line says of the season; NULL: not given. */
struct words {
	const char *farm, *year;
	int season; /* 0: the one of today */
};

static bool read_words(
	int argc, char **argv, struct words *w, struct papers *p, struct err *e)
{
	const struct option_row rows[] = {
		{ "farm", &w->farm, NULL, 0 },
		{ "season", &w->year, NULL, 0 },
		{ "paper", &p->paper, NULL, 0 },
		{ "format", &p->format, NULL, 0 },
		{ "o", &p->file, NULL, 'o' },
		{ 0 },
	};
	struct args a = { .rows = rows };

	return args_read(argc, argv, &a, e) && papers_choose(p, e) &&
	       report_read_year(w->year, &w->season, e);
}

/* A past season is told as the book stood on its last day. */
static bool turn_to(struct report *r, const struct context *ctx, int season,
	int64_t farm, struct err *e)
{
	int present = log_season(&r->log, farm, ctx->today);
	int32_t day = ctx->today;

	if (season > present)
		return err_set(e, ERR_NOT_FOUND,
			_("season %d has not begun yet; the present one is %d"), season,
			present);
	if (season && season < present)
		day = season_page_last_day(&r->log, farm, season);
	if (day == r->log.today)
		return true;
	clock_stand(day, ctx->minute, &r->log.now, &r->log.zone);
	return log_read(&r->log, r->book, 0, day, e);
}

static bool read_pages(struct report *r, const struct context *ctx, int season,
	struct season_page *items, size_t *n, struct err *e)
{
	bool ok = true;

	for (size_t i = 0; ok && i < r->log.farms.n; i++) {
		int64_t farm = r->log.farms.items[i].id;
		if (r->farm && r->farm != farm)
			continue;
		ok = turn_to(r, ctx, season, farm, e) &&
		     season_page_read(&items[(*n)++], r->book, &r->log, farm, e);
	}
	return ok && (*n > 0 || err_set(e, ERR_NOT_FOUND,
					_("the book holds no farm yet, so there is no "
					  "season page; import traps first")));
}

static bool set_pages(
	struct season_set *set, bool utf8, struct papers *p, struct err *e)
{
	struct buf text = { 0 };
	const char *cautions[PAPERS_CAUTIONS];
	const struct season_form form = { .paper = p->size,
		.caution_short = say_caution_short(),
		.cautions = papers_cautions(cautions) };
	int cols = p->file || p->to_printer ? FILE_COLS : out_cols();

	if (p->is_pdf)
		return paper_seasons_pdf(set, &form, &p->bytes, e);
	for (size_t i = 0; i < set->n; i++) {
		if (i > 0)
			buf_add(&text, p->file || p->to_printer ? "\f" : "\n\n");
		paper_season(&set->items[i], &form, cols, &text);
	}
	if (utf8)
		buf_add(&p->bytes, text.text);
	else
		paper_ascii(text.text, &p->bytes);
	buf_free(&text);
	return true;
}

static void name_job(const struct season_set *set, struct papers *p)
{
	if (set->n == 1)
		snprintf(p->title, sizeof p->title, _("Season page: %s"),
			set->items->farm);
	else
		text_copy(p->title, sizeof p->title, _("Season pages"));
}

static bool make(const struct context *ctx, const struct words *w, struct papers *p,
	struct err *e)
{
	struct report r = { 0 };
	struct season_page *items = NULL;
	struct season_set set = { .day = ctx->today };
	bool ok = report_open(ctx, w->farm, NULL, &r, e) && papers_settle(p, r.book, e);

	if (ok) {
		set.items = items = mem_new(r.log.farms.n, sizeof *items);
		ok = read_pages(&r, ctx, w->season, items, &set.n, e) &&
		     set_pages(&set, ctx->utf8, p, e);
		name_job(&set, p);
		p->without_font = set.without_font;
	}
	for (size_t i = 0; i < set.n; i++)
		season_page_free(&items[i]);
	free(items);
	report_close(&r);
	return ok;
}

bool papers_season(const struct context *ctx, int argc, char **argv, struct papers *p,
	struct err *e)
{
	struct words w = { 0 };

	return read_words(argc, argv, &w, p, e) && make(ctx, &w, p, e);
}

bool command_season(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct papers p = { 0 };
	bool ok = papers_season(ctx, argc, argv, &p, e) && papers_write(&p, e);

	papers_free(&p);
	return ok;
}
