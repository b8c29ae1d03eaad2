/* seed_heat.c - the degree-day rules that a new book's pests start with. */
#include "shape.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

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

struct wanted {
	const char *pest;
	struct heat *out;
};

static bool take_wanted(void *arg, const struct csv *c, struct err *e)
{
	const struct wanted *w = arg;

	return strcmp(c->field[PEST].text, w->pest) != 0 || read_heat(c, w->out, e);
}

bool store_seed_heat(const char *pest, struct heat *out, struct err *e)
{
	struct wanted w = { pest, out };

	return seed_rows("degree-days.csv", COLUMNS, take_wanted, &w, e);
}
