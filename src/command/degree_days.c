/* degree_days.c - the command that sums degree-days of a station. */
#include "answers/dd_table.h"
#include "answers/heat.h"
#include "answers/settings.h"
#include "base/words.h"
#include "book/places.h"
#include "book/weather.h"
#include "command/command.h"
#include "exchange/report_csv.h"
#include "paper/dd_table.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What the command line says; NULL: not given. */
struct words {
	const char *station, *pest, *base, *cap, *method, *cutoff, *from, *to;
	bool csv;
};

static bool read_words(int argc, char **argv, struct words *w, struct err *e)
{
	const struct option_row rows[] = {
		{ "station", &w->station, NULL, 0 },
		{ "pest", &w->pest, NULL, 0 },
		{ "base", &w->base, NULL, 0 },
		{ "cap", &w->cap, NULL, 0 },
		{ "method", &w->method, NULL, 0 },
		{ "cutoff", &w->cutoff, NULL, 0 },
		{ "from", &w->from, NULL, 0 },
		{ "to", &w->to, NULL, 0 },
		{ "csv", NULL, &w->csv, 0 },
		{ 0 },
	};
	struct args a = { .rows = rows };

	if (!args_read(argc, argv, &a, e))
		return false;
	if (!w->station || !w->from)
		return err_set(e, ERR_USAGE,
			_("degree-days needs --station STATION and --from DATE"));
	if (w->pest && (w->base || w->cap || w->method || w->cutoff))
		return err_set(e, ERR_USAGE,
			_("--pest brings its own base, cap, method and cutoff; give "
			  "either the pest or those"));
	if (!w->pest && !(w->base && w->method && w->cutoff))
		return err_set(e, ERR_USAGE,
			_("degree-days needs --pest CODE, or --base, --method and "
			  "--cutoff"));
	return true;
}

/* "50F" or "10 C" */
static bool read_degrees(
	const char *option, const char *text, double *out, char *unit, struct err *e)
{
	char number[32], *end;
	size_t n = strlen(text);

	*unit = n > 1 ? (char)toupper((unsigned char)text[n - 1]) : '\0';
	if (n >= sizeof number || (*unit != 'C' && *unit != 'F') ||
		strspn(text, "-.0123456789 ") != n - 1)
		return err_set(e, ERR_USAGE,
			_("--%s \"%s\" is no temperature with its unit, such as 50F or "
			  "10C"),
			option, text);
	snprintf(number, sizeof number, "%.*s", (int)n - 1, text);
	*out = strtod(number, &end);
	if (end == number || end[strspn(end, " ")] != '\0')
		return err_set(e, ERR_USAGE,
			_("--%s \"%s\" is no temperature with its unit, such as 50F or "
			  "10C"),
			option, text);
	return true;
}

static bool unknown_word(const char *option, const char *given,
	const char *(*word)(int i), int n, struct err *e)
{
	struct buf there = { 0 };

	for (int i = 0; i < n; i++)
		buf_addf(&there, "%s%s", i ? ", " : "", word(i));
	err_set(e, ERR_USAGE, _("--%s \"%s\" is not known; there are: %s"), option,
		given, there.text);
	buf_free(&there);
	return false;
}

static const char *method_of(int i)
{
	return dd_method_word((enum dd_method)i);
}

static const char *cutoff_of(int i)
{
	return dd_cutoff_word((enum dd_cutoff)i);
}

/* The rule that the options give; its cap in the unit of its base. */
static bool read_rule(const struct words *w, struct dd_ask *ask, struct err *e)
{
	struct dd_rule *r = &ask->rule;
	char unit;

	r->cap = (double)NAN;
	if (!read_degrees("base", w->base, &r->base, &ask->unit, e))
		return false;
	if (w->cap && !read_degrees("cap", w->cap, &r->cap, &unit, e))
		return false;
	if (w->cap && unit != ask->unit)
		r->cap = unit == 'C' ? r->cap * 9 / 5 + 32 : (r->cap - 32) * 5 / 9;
	if (!dd_method_read(w->method, &r->method))
		return unknown_word("method", w->method, method_of, DD_METHOD_COUNT, e);
	if (!dd_cutoff_read(w->cutoff, &r->cutoff))
		return unknown_word("cutoff", w->cutoff, cutoff_of, DD_CUTOFF_COUNT, e);
	const char *fault = dd_rule_fault(r);
	if (fault)
		return err_set(e, ERR_USAGE, "%s", fault);
	if (w->cap && !dd_uses_cap(r))
		return err_set(e, ERR_USAGE,
			_("--cap has no use with method %s and cutoff %s; leave it "
			  "out, or choose a cutoff"),
			w->method, w->cutoff);
	return true;
}

static bool read_day(const char *option, const char *text, int32_t *day, struct err *e)
{
	return day_parse(text, day) ||
	       err_set(e, ERR_USAGE, _("--%s \"%s\" is no date such as 2026-07-21"),
		       option, text);
}

/* Base, cap and words of the pest; *about tells whose they are. */
static bool pest_rule(struct book *b, const char *code, struct dd_ask *ask,
	struct buf *about, struct err *e)
{
	struct log log = { 0 };
	bool ok = book_pests(b, &log.pests, e);
	const struct pest *p = ok ? log_find_pest(&log, code, e) : NULL;

	ok = p && heat_rule(p, &ask->rule, e);
	if (ok) {
		ask->unit = p->heat.unit;
		buf_addf(about, *p->heat.source ? "%s: %s" : "%s", p->code,
			words_shipped(p->heat.source));
	}
	free(log.pests.items);
	return ok;
}

static bool find_station(
	struct book *b, const char *name, struct station *out, struct err *e)
{
	struct stations all = { 0 };
	struct buf there = { 0 };
	bool found = false;

	if (!book_stations(b, &all, e))
		return false;
	for (size_t i = 0; i < all.n; i++) {
		if (strcmp(all.items[i].name, name) == 0) {
			*out = all.items[i];
			found = true;
		}
		buf_addf(&there, "%s%s", i ? ", " : "", all.items[i].name);
	}
	if (!found)
		err_set(e, ERR_NOT_FOUND,
			all.n ? _("there is no station \"%s\" in the book; it has: %s")
			      : _("there is no station \"%s\" in the book, which has "
				  "none: import stations or weather%s"),
			name, all.n ? there.text : "");
	buf_free(&there);
	free(all.items);
	return found;
}

static bool answer(const struct context *ctx, const struct words *w, struct book *b,
	struct dd_ask *ask, struct err *e)
{
	struct buf text = { 0 }, about = { 0 };
	struct dd_table table = { 0 };

	buf_add(&about, "");
	bool ok = find_station(b, w->station, &ask->station, e) &&
		  (!w->pest || pest_rule(b, w->pest, ask, &about, e)) &&
		  dd_table_read(&table, b, ask, e);
	if (ok && w->csv)
		dd_csv(&table, &text);
	else if (ok)
		paper_dd_table(&table, about.text, out_cols(), &text);
	ok = ok && out_text(&text, ctx->utf8 || w->csv, e);
	dd_table_free(&table);
	buf_free(&text);
	buf_free(&about);
	return ok;
}

bool command_degree_days(
	const struct context *ctx, int argc, char **argv, struct err *e)
{
	struct dd_ask ask = { .to = DAY_NONE, .today = ctx->today };
	struct words w = { 0 };

	if (!read_words(argc, argv, &w, e) || !read_day("from", w.from, &ask.from, e) ||
		(w.to && !read_day("to", w.to, &ask.to, e)) ||
		(!w.pest && !read_rule(&w, &ask, e)))
		return false;
	struct book *b = open_to_read(ctx, e);
	if (!b)
		return false;
	bool ok = settings_apply(b, ctx->settings, e) && answer(ctx, &w, b, &ask, e);
	book_close(b);
	return ok;
}
