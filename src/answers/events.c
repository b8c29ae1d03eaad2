/* events.c - the published events of a pest, out of share/phenology.csv. */
#include "events.h"

#include "base/csv.h"
#include "base/mem.h"
#include "base/shipped.h"
#include "base/text.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PEST, EVENT, GENERATION, DD_LO, DD_HI, UNIT, BASE, CAP, CUTOFF, BIOFIX, SOURCE };

static double number(const char *text)
{
	return *text ? strtod(text, NULL) : NAN; /* LC_NUMERIC is never set */
}

static bool starts_at_catch(const struct csv *row)
{
	return strncmp(row->field[BIOFIX].text, "catch", 5) == 0;
}

static void take(struct published_list *out, const struct csv *row)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct published *p = &out->items[out->n++];

	*p = (struct published){ .unit = row->field[UNIT].text[0],
		.lo = number(row->field[DD_LO].text),
		.hi = number(row->field[DD_HI].text),
		.base = number(row->field[BASE].text),
		.cap = number(row->field[CAP].text) };
	if (isnan(p->hi))
		p->hi = p->lo;
	text_copy(p->event, sizeof p->event, row->field[EVENT].text);
	text_copy(p->generation, sizeof p->generation, row->field[GENERATION].text);
	text_copy(p->cutoff, sizeof p->cutoff, row->field[CUTOFF].text);
	text_copy(p->source, sizeof p->source, row->field[SOURCE].text);
}

static int by_sum(const void *a, const void *b)
{
	const struct published *x = a, *y = b;
	double fx = x->unit == 'C' ? x->lo * 1.8 : x->lo;
	double fy = y->unit == 'C' ? y->lo * 1.8 : y->lo;

	return (fx > fy) - (fx < fy);
}

bool published_events(const char *pest, struct published_list *out, struct err *e)
{
	const struct shipped *file = shipped_find("phenology.csv");
	FILE *in = file ? fmemopen((void *)(uintptr_t)file->text, file->n, "r") : NULL;
	struct csv row;
	enum csv_got got;

	out->n = 0;
	if (!in)
		return err_set(e, ERR_BOOK, "phenology.csv");
	csv_open(&row, in, "phenology.csv");
	while ((got = csv_next(&row, e)) == CSV_ROW)
		if (row.n_fields > SOURCE && strcmp(row.field[PEST].text, pest) == 0 &&
			starts_at_catch(&row))
			take(out, &row);
	csv_close(&row);
	fclose(in);
	if (out->n > 1)
		qsort(out->items, out->n, sizeof *out->items, by_sum);
	return got == CSV_END;
}
