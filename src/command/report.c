#include "report.h"

#include "answers/say.h"
#include "answers/settings.h"
#include "answers/sheet.h"
#include "answers/shelf.h"
#include "answers/week.h"
#include "base/words.h"
#include "command/clock.h"
#include "paper/due.h"
#include "paper/flight.h"
#include "paper/week.h"

enum { CAUTIONS_MAX = 16 };

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

bool report_sheets(
	const struct report *r, struct sheet_form form, struct buf *out, struct err *e)
{
	const char *cautions[CAUTIONS_MAX] = { NULL };
	struct sheet sheet = { 0 };
	bool ok = true;
	size_t before = out->n;

	for (size_t i = 0; i < CAUTIONS_MAX - 1; i++)
		if (!(cautions[i] = say_caution(i)))
			break;
	form.cautions = cautions;
	form.caution_short = say_caution_short();
	for (size_t i = 0; ok && i < r->log.farms.n; i++) {
		int64_t farm = r->log.farms.items[i].id;

		if (r->farm && r->farm != farm)
			continue;
		ok = sheet_of(&r->log, r->book, farm, &sheet, e);
		if (ok && out->n > before)
			buf_add(out, "\f");
		if (ok)
			paper_sheet(&sheet, &form, out);
	}
	sheet_free(&sheet);
	return ok;
}
