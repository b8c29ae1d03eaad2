/* The texts of a form's fields. They are those of the files, but that zeros at the end
 * of a number are dropped and an area is in the grower's unit. */
#include "entry_family.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

enum { AREA_MAX_X100 = 100000000 };

static const double hectares_of_acre = 0.40468564224; /* international acre */

static bool is_number(const struct column *c)
{
	return c->type == &value_x100 || c->type == &value_area ||
	       c->type == &value_degree || c->type == &value_number;
}

/* "4.2000" becomes "4.2". */
static void drop_zeros(char *text)
{
	size_t n = strlen(text);

	if (!strchr(text, '.'))
		return;
	while (text[n - 1] == '0')
		text[--n] = '\0';
	if (text[n - 1] == '.')
		text[n - 1] = '\0';
}

/* Hundredths of a hectare carry tenths of an acre: what was typed so is shown so. */
static void write_area(int32_t hectares_x100, const struct manner *m, char *out)
{
	double area = hectares_x100 / 100.0;

	if (hectares_x100 < 0) {
		out[0] = '\0';
		return;
	}
	if (m->acres)
		area /= hectares_of_acre;
	snprintf(out, VALUE_BYTES, m->acres ? "%.1f" : "%.2f", area);
	drop_zeros(out);
	words_from_point(out);
	strcat(out, m->acres ? " acres" : " ha");
}

void text_of_field(const struct column *c, const void *row, const struct manner *m,
	char out[static ENTRY_TEXT])
{
	const void *field = (const char *)row + c->at;
	char value[VALUE_BYTES];

	if (c->type == &value_area) {
		write_area(*(const int32_t *)field, m, out);
		return;
	}
	const char *text = c->type->write(c, field, value);

	text_copy(out, ENTRY_TEXT, c->type == &value_word ? _(text) : text);
	if (!is_number(c))
		return;
	drop_zeros(out);
	words_from_point(out);
}

static bool is_acre(const char *unit)
{
	return strcasecmp(unit, "acres") == 0 || strcasecmp(unit, "acre") == 0 ||
	       strcasecmp(unit, "ac") == 0;
}

/* "12.5 acres", "5 ha", or a number in the grower's unit. */
static bool read_area(const char *text, const struct manner *m, int32_t *hectares_x100)
{
	char number[VALUE_BYTES];
	size_t n = strspn(text, "0123456789.");
	const char *unit = text + n + strspn(text + n, " ");
	int32_t x100;

	if (n >= sizeof number)
		return false;
	memcpy(number, text, n);
	number[n] = '\0';
	if (!text_x100(number, INT32_MAX / 10, &x100))
		return false;
	if (*unit && !is_acre(unit) && strcasecmp(unit, "ha") != 0)
		return false;
	bool acres = *unit ? is_acre(unit) : m->acres;
	*hectares_x100 = acres ? (int32_t)lround(x100 * hectares_of_acre) : x100;
	return *hectares_x100 <= AREA_MAX_X100;
}

/* A word of the column as the reader's language has it, or as files do. */
static bool read_word(const struct column *c, const char *text, void *field)
{
	for (int i = c->lo; i <= c->hi; i++)
		if (strcasecmp(text, _(c->word(i))) == 0) {
			*(int *)field = i;
			return true;
		}
	return c->type->read(c, text, field);
}

static bool read_value(
	const struct column *c, const struct manner *m, const char *text, void *field)
{
	if (c->type == &value_area)
		return read_area(text, m, field);
	if (c->type == &value_word)
		return read_word(c, text, field);
	return c->type->read(c, text, field);
}

static void say_right(
	const struct column *c, const struct manner *m, char out[static RIGHT_BYTES])
{
	if (c->type == &value_area && m->acres)
		snprintf(out, RIGHT_BYTES, "%s",
			_("an area such as 12.5 acres or 5 ha"));
	else
		c->type->right(c, out);
}

bool field_of_text(struct hearing *h, const struct column *c, const struct manner *m,
	const char *text, void *row)
{
	void *field = (char *)row + c->at;
	char trimmed[ENTRY_TEXT], right[RIGHT_BYTES];

	text_copy(trimmed, sizeof trimmed, text);
	text_trim(trimmed);
	if (!*trimmed) {
		c->type->clear(c, field);
		if (!c->needed)
			return true;
		say_right(c, m, right);
		return row_bad(h, c->name, _("a value is missing; it takes %s"), right);
	}
	if (is_number(c))
		words_to_point(trimmed);
	if (read_value(c, m, trimmed, field))
		return true;
	say_right(c, m, right);
	c->type->clear(c, field);
	return row_bad(h, c->name, _("is not right; it takes %s"), right);
}
