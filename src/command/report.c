#include "report.h"

#include "answers/say.h"
#include "answers/settings.h"
#include "answers/sheet.h"
#include "answers/shelf.h"
#include "answers/week.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "command/clock.h"
#include "paper/due.h"
#include "paper/flight.h"
#include "paper/week.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool find(const char *farm, const char *pest, struct report *r, struct err *e)
{
	const struct farm *f = farm ? log_find_farm(&r->log, farm, e) : NULL;
	const struct pest *p =
		!farm || f ? (pest ? log_find_pest(&r->log, pest, e) : NULL) : NULL;

	r->farm = f ? f->id : 0;
	r->pest = p ? p->id : 0;
	return (!farm || f) && (!pest || p);
}

bool report_open(const struct context *ctx, const char *farm, const char *pest,
	struct report *r, struct err *e)
{
	r->book = open_to_read(ctx, e);
	clock_stand(ctx->today, ctx->minute, &r->log.now, &r->log.zone);
	return r->book && settings_apply(r->book, ctx->settings, e) &&
	       log_read(&r->log, r->book, 0, ctx->today, e) && find(farm, pest, r, e);
}

void report_close(struct report *r)
{
	log_free(&r->log);
	if (r->book)
		book_close(r->book);
	r->book = NULL;
}

bool report_find_block(
	const struct report *r, const char *name, int64_t *block, struct err *e)
{
	const struct log *l = &r->log;
	struct buf there = { 0 };

	*block = 0;
	for (size_t i = 0; i < l->blocks.n; i++) {
		const struct block *b = &l->blocks.items[i];

		if (b->farm != r->farm)
			continue;
		if (strcmp(b->name, name) == 0)
			*block = b->id;
		buf_addf(&there, "%s%s", there.n ? ", " : "", b->name);
	}
	if (*block == 0)
		err_set(e, ERR_NOT_FOUND, _("%s has no block \"%s\"; it has: %s"),
			log_farm(l, r->farm)->name, name,
			there.text ? there.text : _("none"));
	buf_free(&there);
	return *block != 0;
}

bool report_read_year(const char *text, int *season, struct err *e)
{
	int32_t year = 0;

	if (text && !text_int(text, DAY_YEAR_MIN, DAY_YEAR_MAX, &year))
		return err_set(e, ERR_USAGE,
			_("--season \"%s\" is no year that a season began in, such as "
			  "2026"),
			text);
	*season = (int)year;
	return true;
}

void report_week(const struct report *r, int cols, struct buf *out)
{
	struct week week = { 0 };

	week_of(&r->log, r->farm, r->pest, &week);
	paper_week(&week, cols, true, out);
	week_free(&week);
}

bool report_due(const struct report *r, int cols, struct buf *out, struct err *e)
{
	struct due due = { 0 };
	struct shelf shelf = { 0 };

	due_of(&r->log, r->farm, &due);
	bool ok = shelf_read(&shelf, r->book, &r->log, &due, e);
	if (ok)
		paper_due(&due, &shelf, cols, true, out);
	shelf_free(&shelf);
	due_free(&due);
	return ok;
}

bool report_flight(const struct report *r, const struct flight_ask *a, int cols,
	struct buf *out, struct err *e)
{
	struct flight_view view = { 0 };
	bool ok = flight_read(&view, r->book, &r->log, a, e);

	if (ok)
		paper_flight(&view, cols, out);
	flight_free(&view);
	return ok;
}

static void set_text(
	const struct sheet_set *set, const struct sheet_form *form, struct buf *out)
{
	for (size_t i = 0; i < set->n; i++) {
		if (i)
			buf_add(out, "\f");
		paper_sheet(&set->items[i], form, out);
	}
}

/* Of the farm asked for, or of all. */
static bool read_sheets(
	const struct report *r, struct sheet *items, size_t *n, struct err *e)
{
	bool ok = true;

	for (size_t i = 0; ok && i < r->log.farms.n; i++) {
		int64_t farm = r->log.farms.items[i].id;

		if (!r->farm || r->farm == farm)
			ok = sheet_of(&r->log, r->book, farm, &items[(*n)++], e);
	}
	return ok;
}

static void name_job(const struct sheet_set *set, struct papers *out)
{
	if (set->n == 1)
		snprintf(out->title, sizeof out->title, _("Scouting sheet: %s"),
			set->items[0].farm);
	else
		text_copy(out->title, sizeof out->title, _("Scouting sheets"));
}

bool report_sheets(const struct report *r, struct sheet_form *form, struct papers *out,
	struct err *e)
{
	const char *cautions[PAPERS_CAUTIONS];
	struct sheet *items = mem_new(r->log.farms.n, sizeof *items);
	struct sheet_set set = { .items = items, .day = r->log.today };

	form->cautions = papers_cautions(cautions);
	form->caution_short = say_caution_short();
	bool ok = read_sheets(r, items, &set.n, e);
	if (ok && out->is_pdf)
		ok = paper_sheets_pdf(&set, form, &out->bytes, e);
	else if (ok)
		set_text(&set, form, &out->bytes);
	name_job(&set, out);
	out->without_font = set.without_font;
	form->cautions = NULL;
	for (size_t i = 0; i < set.n; i++)
		sheet_free(&items[i]);
	free(items);
	return ok;
}
