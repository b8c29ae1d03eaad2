/* seed_heat.c - the degree-day rules that a new book's pests start with. */
#include "store.h"

#include "base/csv.h"
#include "base/shipped.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char file_name[] = "degree-days.csv";

/* pest, base, cap, unit, method, cutoff, source */
enum { PEST, BASE, CAP, UNIT, METHOD, CUTOFF, SOURCE, COLUMNS };

static bool cell_degrees(const struct csv *c, size_t column, double *out, struct err *e)
{
	const char *text = c->field[column].text;
	char *end;

	*out = *text ? strtod(text, &end) : (double)NAN;
	if (*text == '\0' || *end == '\0')
		return true;
	return err_set(e, ERR_INPUT, _("%s, line %d: %s is no number of degrees"),
		c->name, (int)c->line, text);
}

static bool read_heat(const struct csv *c, struct heat *out, struct err *e)
{
	out->unit = c->field[UNIT].text[0];
	text_copy(out->method, sizeof out->method, c->field[METHOD].text);
	text_copy(out->cutoff, sizeof out->cutoff, c->field[CUTOFF].text);
	text_copy(out->source, sizeof out->source, c->field[SOURCE].text);
	return cell_degrees(c, BASE, &out->base, e) &&
	       cell_degrees(c, CAP, &out->cap, e);
}

static bool find_heat(struct csv *c, const char *pest, struct heat *out, struct err *e)
{
	enum csv_got got = csv_next(c, e); /* the names of the columns */

	while (got == CSV_ROW && (got = csv_next(c, e)) == CSV_ROW) {
		if (c->n_fields != COLUMNS)
			return err_set(e, ERR_INPUT,
				_("%s, line %d: %zu columns, not %zu"), c->name,
				(int)c->line, c->n_fields, (size_t)COLUMNS);
		if (strcmp(c->field[PEST].text, pest) == 0)
			return read_heat(c, out, e);
	}
	return got == CSV_END;
}

bool store_seed_heat(const char *pest, struct heat *out, struct err *e)
{
	const struct shipped *file = shipped_find(file_name);
	struct csv c;

	if (!file || file->n == 0)
		return true;
	FILE *f = fmemopen((void *)(uintptr_t)file->text, file->n, "r");
	if (!f)
		return err_set(e, ERR_BOOK,
			_("the book is not made: %s cannot be read"), file_name);
	csv_open(&c, f, file_name);
	bool ok = find_heat(&c, pest, out, e);
	csv_close(&c);
	fclose(f);
	return ok;
}
