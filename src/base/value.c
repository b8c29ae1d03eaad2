/* value.c - the columns of files: how each kind of value is read and written. */
#include "base/buf.h"
#include "base/column.h"
#include "base/day.h"
#include "base/terms.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

static bool text_read(const struct column *c, const char *text, void *field)
{
	size_t n = strlen(text);

	if (n >= (size_t)c->hi || strpbrk(text, "\t\r\n"))
		return false;
	memcpy(field, text, n + 1);
	return true;
}

static void text_clear(const struct column *c, void *field)
{
	(void)c;
	*(char *)field = '\0';
}

static const char *text_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	(void)c;
	(void)out;
	return field;
}

static void text_right(const struct column *c, char out[static RIGHT_BYTES])
{
	snprintf(out, RIGHT_BYTES,
		_("a text of at most %d letters in one line (an accented one counts as "
		  "two)"),
		(int)c->hi - 1);
}

const struct value value_text = { text_read, text_clear, text_write, text_right };

static bool int_read(const struct column *c, const char *text, void *field)
{
	return text_int(text, c->lo, c->hi, field);
}

static void int_clear(const struct column *c, void *field)
{
	*(int32_t *)field = c->none;
}

static const char *int_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	int32_t value = *(const int32_t *)field;

	if (value == c->none)
		return "";
	snprintf(out, VALUE_BYTES, "%d", (int)value);
	return out;
}

static void int_right(const struct column *c, char out[static RIGHT_BYTES])
{
	snprintf(out, RIGHT_BYTES, _("a whole number from %d to %d"), (int)c->lo,
		(int)c->hi);
}

const struct value value_int = { int_read, int_clear, int_write, int_right };

/* Decimals beyond the second are fine while they are zeros: exports have four. */
static bool x100_read(const struct column *c, const char *text, void *field)
{
	char cut[VALUE_BYTES];
	size_t n = strlen(text);
	const char *dot = strchr(text, '.');

	if (n >= sizeof cut)
		return false;
	memcpy(cut, text, n + 1);
	if (dot)
		while (n > (size_t)(dot - text) + 3 && cut[n - 1] == '0')
			cut[--n] = '\0';
	return text_x100(cut, c->hi, field) && *(int32_t *)field >= c->lo;
}

static const char *x100_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	int32_t value = *(const int32_t *)field;

	if (value == c->none)
		return "";
	if (value % 100)
		snprintf(out, VALUE_BYTES, "%d.%02d00", (int)value / 100,
			(int)value % 100);
	else
		snprintf(out, VALUE_BYTES, "%d", (int)value / 100);
	return out;
}

static void x100_right(const struct column *c, char out[static RIGHT_BYTES])
{
	char lo[VALUE_BYTES], hi[VALUE_BYTES];

	snprintf(lo, sizeof lo, c->lo % 100 ? "%d.%02d" : "%d", (int)c->lo / 100,
		(int)c->lo % 100);
	snprintf(hi, sizeof hi, c->hi % 100 ? "%d.%02d" : "%d", (int)c->hi / 100,
		(int)c->hi % 100);
	snprintf(out, RIGHT_BYTES,
		_("a number from %s to %s with a decimal point and at most two "
		  "decimals"),
		lo, hi);
}

const struct value value_x100 = { x100_read, int_clear, x100_write, x100_right };
const struct value value_area = { x100_read, int_clear, x100_write, x100_right };

static bool degree_read(const struct column *c, const char *text, void *field)
{
	double value = 0;

	if (!text_degrees(&text, &value) || *text || value < c->lo || value > c->hi)
		return false;
	*(double *)field = value;
	return true;
}

static void degree_clear(const struct column *c, void *field)
{
	(void)c;
	*(double *)field = (double)NAN;
}

static const char *degree_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	double value = *(const double *)field;

	(void)c;
	if (isnan(value))
		return "";
	snprintf(out, VALUE_BYTES, "%.6f", value); /* 0.1 m */
	char *dot = strchr(out, '.');
	if (dot && strspn(dot + 1, "0") == strlen(dot + 1))
		*dot = '\0';
	return strcmp(out, "-0") == 0 ? "0" : out;
}

static void degree_right(const struct column *c, char out[static RIGHT_BYTES])
{
	snprintf(out, RIGHT_BYTES,
		_("degrees from %d to %d with a decimal point, such as 46.251849"),
		(int)c->lo, (int)c->hi);
}

const struct value value_degree = { degree_read, degree_clear, degree_write,
	degree_right };

static bool day_read(const struct column *c, const char *text, void *field)
{
	(void)c;
	return day_parse(text, field);
}

static void day_clear(const struct column *c, void *field)
{
	(void)c;
	*(int32_t *)field = DAY_NONE;
}

static const char *day_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	(void)c;
	day_iso(*(const int32_t *)field, out);
	return out;
}

static void day_right(const struct column *c, char out[static RIGHT_BYTES])
{
	(void)c;
	snprintf(out, RIGHT_BYTES, "%s",
		_("a date of the calendar as year-month-day, such as 2026-07-21"));
}

const struct value value_day = { day_read, day_clear, day_write, day_right };

static bool md_read(const struct column *c, const char *text, void *field)
{
	(void)c;
	return day_md_parse(text, field);
}

static void md_clear(const struct column *c, void *field)
{
	(void)c;
	*(int *)field = 0;
}

static const char *md_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	int md = *(const int *)field;

	(void)c;
	if (md == 0)
		return "";
	snprintf(out, VALUE_BYTES, "%02d-%02d", md / 100, md % 100);
	return out;
}

static void md_right(const struct column *c, char out[static RIGHT_BYTES])
{
	(void)c;
	snprintf(out, RIGHT_BYTES, "%s",
		_("a day of the year as month-day, such as 05-01"));
}

const struct value value_md = { md_read, md_clear, md_write, md_right };

static bool word_read(const struct column *c, const char *text, void *field)
{
	for (int i = c->lo; i <= c->hi; i++)
		if (strcasecmp(c->word(i), text) == 0)
			return *(int *)field = i, true;
	return false;
}

static void word_clear(const struct column *c, void *field)
{
	*(int *)field = c->none;
}

static const char *word_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	int i = *(const int *)field;

	(void)out;
	return i == c->none ? "" : c->word(i);
}

static void word_right(const struct column *c, char out[static RIGHT_BYTES])
{
	struct buf words = { 0 };

	for (int i = c->lo; i <= c->hi; i++)
		buf_addf(&words, "%s%s", i > c->lo ? ", " : "", c->word(i));
	snprintf(out, RIGHT_BYTES, _("one of: %s"), words.text);
	buf_free(&words);
}

const struct value value_word = { word_read, word_clear, word_write, word_right };

static bool span_value_read(const struct column *c, const char *text, void *field)
{
	struct span *s = field;
	enum span_kind kind;

	if (span_read(text, &kind)) {
		*s = (struct span){ (int)kind, 0 };
		return true;
	}
	s->kind = SPAN_NUMBER;
	return text_int(text, c->lo, c->hi, &s->n);
}

static void span_clear(const struct column *c, void *field)
{
	(void)c;
	*(struct span *)field = (struct span){ SPAN_NUMBER, 0 };
}

static const char *span_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	const struct span *s = field;

	(void)c;
	if (s->kind != SPAN_NUMBER)
		return span_word((enum span_kind)s->kind);
	if (s->n == 0)
		return "";
	snprintf(out, VALUE_BYTES, "%d", (int)s->n);
	return out;
}

static void span_right(const struct column *c, char out[static RIGHT_BYTES])
{
	(void)c;
	snprintf(out, RIGHT_BYTES, "%s",
		_("weeks (1 to 8) of a weekly measure, nights (1 to 366) of a nightly "
		  "one; of a total nights, hung, biofix, flight or treatment"));
}

const struct value value_span = { span_value_read, span_clear, span_write, span_right };
