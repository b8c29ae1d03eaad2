/* entry_text.c - the texts of a form's fields. They are those of the files, but that
 * zeros at the end of a number are dropped and an area is in the grower's unit. */
#include "entry_family.h"

#include "answers/entry_forms.h"
#include "base/text.h"
#include "base/words.h"
#include "season/biofix.h"

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

const char *text_of_word(const struct column *c, const char *text)
{
	if (c->shipped)
		return words_shipped(text);
	if (c->type == &value_word ||
		(c->pick == PICK_BIOFIX_RULE && biofix_rule_find(text)))
		return _(text);
	return text;
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

	text_copy(out, ENTRY_TEXT, text_of_word(c, text));
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

/* The word of the biofix rule that is shown so; else the text. */
static const char *rule_of(const char *text)
{
	size_t n;
	const struct biofix_rule *all = biofix_rules(&n);

	for (size_t i = 0; i < n; i++)
		if (strcasecmp(text, _(all[i].word)) == 0)
			return all[i].word;
	return text;
}

static bool read_value(
	const struct column *c, const struct manner *m, const char *text, void *field)
{
	if (c->type == &value_area)
		return read_area(text, m, field);
	if (c->type == &value_word)
		return read_word(c, text, field);
	if (c->shipped && c->pick != PICK_NONE)
		text = words_as_shipped(text);
	if (c->pick == PICK_BIOFIX_RULE)
		text = rule_of(text);
	return c->type->read(c, text, field);
}

void entry_settle_days(struct entry *r, const struct log *l)
{
	const struct entry_family *f = &entry_families[r->kind];

	for (size_t i = 0; i < f->n_columns; i++) {
		char text[ENTRY_TEXT];
		int32_t day;

		text_copy(text, sizeof text, r->text[i]);
		text_trim(text);
		if (f->columns[i].type != &value_day || !*text || day_parse(text, &day))
			continue;
		day = r->kind == ENTRY_PICKS ? day_typed_ahead(text, l->today)
					     : day_typed(text, l->today);
		if (day != DAY_NONE)
			day_iso(day, r->text[i]);
	}
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
		if (c->pick > PICK_WORD && c->pick <= PICK_CARD)
			return row_bad(h, c->name,
				_("a value is missing; it is chosen from the list"));
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
