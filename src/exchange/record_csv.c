#include "exchange/report_csv.h"

#include "base/column.h"
#include "base/csv.h"

#include <stdio.h>

static void add_day(struct buf *out, int32_t day)
{
	char text[DAY_ISO_SIZE];

	day_iso(day, text);
	csv_add(out, text, false);
}

static void add_instant(struct buf *out, struct instant t)
{
	char text[INSTANT_SIZE];

	instant_write(t, text);
	csv_add(out, text, false);
}

/* Not entered: empty, never 0. */
static void add_count(struct buf *out, int32_t n)
{
	char text[VALUE_BYTES] = "";

	if (n >= 0)
		snprintf(text, sizeof text, "%d", (int)n);
	csv_add(out, text, false);
}

static void add_area(struct buf *out, int32_t x100)
{
	char text[VALUE_BYTES] = "";
	double ha = x100 / 100.0;

	csv_add(out, x100 >= 0 ? value_number.write(NULL, &ha, text) : "", false);
}

static void add_corrections(const struct entry_changes *c, struct buf *out)
{
	struct buf all = { 0 };

	buf_add(&all, "");
	for (size_t i = 0; i < c->n; i++)
		buf_addf(&all, "%s%s", i ? "; " : "", c->lines[i]);
	csv_add(out, all.text, false);
	buf_free(&all);
}

static void add_row(const struct record_row *r, struct buf *out)
{
	const struct treatment *t = r->treatment;

	csv_add(out, r->farm, true);
	csv_add(out, r->block, false);
	csv_add(out, r->crop, false);
	csv_add(out, r->pest, false);
	add_day(out, t->day);
	add_instant(out, t->from);
	add_instant(out, t->until);
	csv_add(out, t->border ? "yes" : "no", false);
	csv_add(out, t->product, false);
	csv_add(out, t->registration, false);
	csv_add(out, t->amount, false);
	csv_add(out, t->amount_unit, false);
	add_area(out, t->area_x100);
	csv_add(out, t->applicator, false);
	csv_add(out, t->certificate, false);
	add_count(out, t->rei_hours);
	add_count(out, t->phi_days);
	add_instant(out, r->entry_from);
	add_day(out, r->pick_from);
	csv_add(out, r->missing, false);
	csv_add(out, t->note, false);
	csv_add(out, *r->answered ? "answer" : "entry", false);
	add_corrections(&r->corrected, out);
	csv_end_row(out);
}

void record_csv(const struct record *r, struct buf *out)
{
	buf_add(out, "farm,block,crop,pest,date,from,until,border,product,"
		     "registration,amount,amount_unit,area_ha,applicator,certificate,"
		     "rei_hours,phi_days,entry_from,pick_from,not_entered,note,"
		     "told_by,corrected\r\n");
	for (size_t i = 0; i < r->n; i++)
		add_row(&r->rows[i], out);
}
