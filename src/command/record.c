/* record.c - the command that writes the record of treatments, or a block's season. */
#include "answers/record.h"

#include "answers/say.h"
#include "base/words.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "paper/record.h"
#include "report.h"

#include <stdio.h>

enum { PARAGRAPHS_MAX = 8 };

/* What the command line says; NULL: not given. */
struct words {
	const char *farm, *block, *from, *to;
	int32_t first, last; /* DAY_NONE: the season's */
	bool csv;
};

static bool read_day(const char *option, const char *text, int32_t *out, struct err *e)
{
	*out = DAY_NONE;
	if (!text || day_parse(text, out))
		return true;
	return err_set(e, ERR_USAGE, _("%s \"%s\" is no date, such as 2026-07-21"),
		option, text);
}

static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = {
		{ "farm", &w->farm, NULL, 0 },
		{ "block", &w->block, NULL, 0 },
		{ "from", &w->from, NULL, 0 },
		{ "to", &w->to, NULL, 0 },
		{ "csv", NULL, &w->csv, 0 },
		{ 0 },
	};
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e) ||
		!read_day("--from", w->from, &w->first, e) ||
		!read_day("--to", w->to, &w->last, e))
		return false;
	if (w->block && !w->farm)
		return err_set(e, ERR_USAGE,
			_("--block needs --farm: names are a farm's own"));
	if (w->first != DAY_NONE && w->last != DAY_NONE && w->first > w->last)
		return err_set(e, ERR_USAGE,
			_("--from %s lies after --to %s; it comes first"), w->from,
			w->to);
	return true;
}

/* The season of the last day asked for; of all farms the one that begins first. */
static int32_t season_start(const struct log *l, int64_t farm, int32_t day)
{
	int32_t first = DAY_NONE;

	for (size_t i = 0; i < l->farms.n; i++) {
		const struct farm *f = &l->farms.items[i];
		int32_t start = day_season_start(day, f->season_start);
		if ((farm == 0 || farm == f->id) &&
			(first == DAY_NONE || start < first))
			first = start;
	}
	return first == DAY_NONE ? day_season_start(day, 101) : first;
}

/* Up to the end of the season that `from` lies in, for what is planned. */
static int32_t season_end(const struct log *l, int64_t farm, int32_t from)
{
	enum { INTO_NEXT = 366 };
	int32_t start = season_start(l, farm, from);

	return season_start(l, farm, start + INTO_NEXT) - 1;
}

struct record_ask report_season_of(const struct log *l, int64_t farm, int32_t day)
{
	return (struct record_ask){ .farm = farm,
		.from = season_start(l, farm, day),
		.to = season_end(l, farm, day) };
}

static bool ask_of(const struct report *r, const struct words *w, struct record_ask *a,
	struct err *e)
{
	const struct log *l = &r->log;
	int32_t day = w->first != DAY_NONE && w->last == DAY_NONE ? w->first
		      : w->last != DAY_NONE                       ? w->last
								  : l->today;

	*a = report_season_of(l, r->farm, day);
	if (w->first != DAY_NONE)
		a->from = w->first;
	if (w->last != DAY_NONE)
		a->to = w->last;
	return !w->block || report_find_block(r, w->block, &a->block, e);
}

static struct record_form form_of(int cols, const char **says, const char **cautions)
{
	for (size_t i = 0; i < PARAGRAPHS_MAX - 1; i++) {
		if (!(says[i] = record_says(i)))
			break;
	}
	for (size_t i = 0; i < PARAGRAPHS_MAX - 1; i++) {
		if (!(cautions[i] = say_caution(i)))
			break;
	}
	return (struct record_form){
		.cols = cols, .utf8 = true, .says = says, .cautions = cautions
	};
}

bool report_record(const struct report *r, const struct record_ask *a, int cols,
	struct buf *out, struct err *e)
{
	const char *says[PARAGRAPHS_MAX] = { NULL },
		   *cautions[PARAGRAPHS_MAX] = { NULL };
	struct record_form form = form_of(cols, says, cautions);
	struct record record = { 0 };
	bool ok = record_read(&record, r->book, &r->log, a, e);

	if (ok)
		paper_record(&record, &form, out);
	record_free(&record);
	return ok;
}

static bool add_csv(const struct report *r, const struct record_ask *a, struct buf *out,
	struct err *e)
{
	struct record record = { 0 };
	bool ok = record_read(&record, r->book, &r->log, a, e);

	if (ok)
		record_csv(&record, out);
	record_free(&record);
	return ok;
}

bool report_block(const struct report *r, const struct record_ask *a, struct buf *out,
	struct err *e)
{
	/* the record comes below it, with what is to be said of both */
	const struct record_form form = { .cols = out_cols(), .utf8 = true };
	struct block_diary diary = { 0 };
	bool ok = block_diary_read(&diary, r->book, &r->log, a, e);

	if (ok) {
		paper_block_diary(&diary, &form, out);
		buf_add(out, "\n");
	}
	block_diary_free(&diary);
	return ok && report_record(r, a, out_cols(), out, e);
}

/* A file has no room for what is said of it. */
static void say_of_csv(void)
{
	fprintf(stderr, "%s\n", record_says(1));
}

/* A block is told with what was caught there: as it stood when the span ended. */
static struct context context_of(const struct context *ctx, const struct words *w)
{
	struct context at = *ctx;

	if (w->block && w->last != DAY_NONE && w->last < ctx->today)
		at.today = w->last;
	return at;
}

static bool write_as_asked(const struct report *r, const struct record_ask *a,
	const struct words *w, struct buf *out, struct err *e)
{
	if (w->csv)
		return add_csv(r, a, out, e);
	return w->block ? report_block(r, a, out, e)
			: report_record(r, a, out_cols(), out, e);
}

bool command_record(const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct words w = { 0 };
	struct report r = { 0 };
	struct record_ask a;
	struct buf text = { 0 };

	if (!read_words(argc, argv, &w, e))
		return false;
	struct context at = context_of(ctx, &w);
	bool ok = report_open(&at, w.farm, NULL, &r, e) && ask_of(&r, &w, &a, e) &&
		  write_as_asked(&r, &a, &w, &text, e) &&
		  out_text(&text, ctx->utf8 || w.csv, e);
	if (ok && w.csv)
		say_of_csv();
	report_close(&r);
	buf_free(&text);
	return ok;
}
