#include "paper/dd_table.h"

#include "base/words.h"
#include "paper/ascii.h"

#include <math.h>
#include <stdio.h>

enum { CELL = 16 };

static void add_head(
	const struct dd_table *t, const char *about, int cols, struct buf *out)
{
	struct buf text = { 0 };

	buf_addf(&text, _("Degree-days  %s"), t->ask.station.name);
	paper_wrap(out, text.text, 0, cols);
	paper_wrap(out, t->rule_text, 0, cols);
	paper_wrap(out, about, 0, cols);
	buf_free(&text);
}

static const char *cell(double value, char out[static CELL])
{
	if (isnan(value))
		return "-";
	words_print(out, CELL, "%.1f", value);
	return out;
}

static const char *remark(const struct dd_line *l)
{
	if (isnan(l->dd))
		return _("  missing");
	return l->filled ? _("  filled") : "";
}

static void add_lines(const struct dd_table *t, struct buf *out)
{
	char min[CELL], max[CELL], dd[CELL], iso[DAY_ISO_SIZE];

	buf_addf(out, "\n%-10s %7s %7s %7s %9s\n", _("date"), _("min"), _("max"),
		_("dd"), _("sum"));
	for (size_t i = 0; i < t->n; i++) {
		const struct dd_line *l = &t->lines[i];

		day_iso(l->day, iso);
		words_addf(out, "%-10s %7s %7s %7s %8.1f%s%s\n", iso,
			cell(l->used_min, min), cell(l->used_max, max), cell(l->dd, dd),
			l->sum, l->missing ? "+" : "", remark(l));
	}
}

static void add_sum(const struct dd_table *t, struct buf *out)
{
	char from[DAY_ISO_SIZE], to[DAY_ISO_SIZE];

	day_iso(t->ask.from, from);
	day_iso(t->ask.to, to);
	words_addf(out,
		t->total.missing ? _("at least %.1f %c degree-days from %s to %s")
				 : _("%.1f %c degree-days from %s to %s"),
		t->total.sum, t->ask.unit, from, to);
}

static void add_missing(int n, struct buf *out)
{
	buf_addf(out,
		ngettext("%d day is missing and adds nothing: the sum is a lower "
			 "bound",
			"%d days are missing and add nothing: the sum is a lower bound",
			(unsigned long)n),
		n);
}

static void add_filled(int n, struct buf *out)
{
	buf_addf(out,
		ngettext("%d day was not read and is filled by the mean of its "
			 "neighbours",
			"%d days were not read and are filled by the mean of their "
			"neighbours",
			(unsigned long)n),
		n);
}

static void add_single(int n, struct buf *out)
{
	buf_addf(out,
		ngettext("%d day is counted by the single method, since the next day's "
			 "minimum is not known",
			"%d days are counted by the single method, since the next "
			"day's minimum is not known",
			(unsigned long)n),
		n);
}

static void add_foot(const struct dd_table *t, int cols, struct buf *out)
{
	const struct {
		int32_t n;
		void (*add)(int n, struct buf *out);
	} notes[] = {
		{ t->total.missing, add_missing },
		{ t->total.filled, add_filled },
		{ t->total.single_days, add_single },
	};
	struct buf text = { 0 };

	add_sum(t, &text);
	buf_add(out, "\n");
	paper_wrap(out, text.text, 0, cols);
	for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
		if (notes[i].n == 0)
			continue;
		buf_clear(&text);
		notes[i].add((int)notes[i].n, &text);
		paper_wrap(out, text.text, 0, cols);
	}
	buf_free(&text);
}

void paper_dd_table(
	const struct dd_table *t, const char *about, int cols, struct buf *out)
{
	add_head(t, about, cols, out);
	add_lines(t, out);
	add_foot(t, cols, out);
}
