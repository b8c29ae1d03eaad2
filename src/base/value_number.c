/* value_number.c - columns that hold a number with a decimal point. */
#include "base/column.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Read like a degree of latitude, and kept as it is written: in ten-thousandths. */
static bool number_read(const struct column *c, const char *text, void *field)
{
	double *value = field;

	if (!value_degree.read(c, text, field))
		return false;
	*value = round(*value * 1e4) / 1e4 + 0.0; /* -0 is 0 */
	return true;
}

static void number_clear(const struct column *c, void *field)
{
	value_degree.clear(c, field);
}

static const char *number_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	double value = *(const double *)field;

	(void)c;
	if (isnan(value))
		return "";
	snprintf(out, VALUE_BYTES, "%.4f", value);
	char *dot = strchr(out, '.');
	if (dot && strspn(dot + 1, "0") == strlen(dot + 1))
		*dot = '\0';
	return strcmp(out, "-0") == 0 ? "0" : out;
}

static void number_right(const struct column *c, char out[static RIGHT_BYTES])
{
	snprintf(out, RIGHT_BYTES,
		_("a number from %d to %d with a decimal point, such as 21.5"),
		(int)c->lo, (int)c->hi);
}

const struct value value_number = { number_read, number_clear, number_write,
	number_right };
