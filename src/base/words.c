#include "base/words.h"

#include "base/shipped.h"

#include <langinfo.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

/* (locale_t)0: those of the program, with a point. */
static locale_t numbers;

const char *words_shown(const char *text)
{
	return *text ? gettext(text) : text;
}

const char *words_in(const char *key)
{
	const char *found = words_shown(key);
	const char *text = found == key ? strchr(key, '\004') : NULL;

	return text ? text + 1 : found;
}

/* A catalogue's first entry, that of the empty text, is about itself. */
static bool has_catalogue(void)
{
	return *gettext("") != '\0';
}

static const char *without_context(const char *key)
{
	return strchr(key, '\004') + 1;
}

const char *words_shipped(const char *text)
{
	if (!has_catalogue())
		return text;
	for (size_t i = 0; shipped_words[i]; i++)
		if (strcmp(without_context(shipped_words[i]), text) == 0)
			return words_in(shipped_words[i]);
	return text;
}

const char *words_as_shipped(const char *shown)
{
	if (!has_catalogue())
		return shown;
	for (size_t i = 0; shipped_words[i]; i++)
		if (strcasecmp(words_in(shipped_words[i]), shown) == 0)
			return without_context(shipped_words[i]);
	return shown;
}

void words_set_numbers(void)
{
	locale_t theirs = (locale_t)0;

	if (has_catalogue())
		theirs = newlocale(LC_NUMERIC_MASK, "", (locale_t)0);
	if (theirs && strcmp(nl_langinfo_l(RADIXCHAR, theirs), ",") != 0) {
		freelocale(theirs);
		theirs = (locale_t)0;
	}
	if (numbers)
		freelocale(numbers);
	numbers = theirs;
}

void words_plain(void)
{
	setlocale(LC_MESSAGES, "C");
	words_set_numbers();
}

bool words_comma(void)
{
	return numbers != (locale_t)0;
}

int words_vprint(char *out, size_t size, const char *fmt, va_list args)
{
	locale_t before = uselocale(numbers);
	int n = vsnprintf(out, size, fmt, args);

	if (numbers)
		uselocale(before);
	return n;
}

int words_print(char *out, size_t size, const char *fmt, ...)
{
	va_list args;

	va_start(args, fmt);
	int n = words_vprint(out, size, fmt, args);
	va_end(args);
	return n;
}

void words_addf(struct buf *b, const char *fmt, ...)
{
	locale_t before = uselocale(numbers);
	va_list args;

	va_start(args, fmt);
	buf_vaddf(b, fmt, args);
	va_end(args);
	if (numbers)
		uselocale(before);
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static void exchange_mark(char *number, char from, char to)
{
	char *at = words_comma() ? strchr(number, from) : NULL;

	if (at && at > number && is_digit(at[-1]) && is_digit(at[1]) &&
		!strchr(at + 1, from) && !strchr(number, to))
		*at = to;
}

void words_to_point(char *number)
{
	exchange_mark(number, ',', '.');
}

void words_from_point(char *number)
{
	exchange_mark(number, '.', ',');
}
