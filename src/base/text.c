#define _XOPEN_SOURCE 700 /* wcwidth */

#include "base/text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

/* Bytes of the character that a byte from 0x80 on begins; 0 if it begins none. */
static size_t announced(unsigned char lead)
{
	if (lead < 0xC2 || lead > 0xF4)
		return 0;
	return lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

size_t text_decode(const char *s, size_t n, uint32_t *cp)
{
	if (n == 0)
		return 0;
	unsigned char lead = (unsigned char)*s;
	if (lead < 0x80) {
		*cp = lead;
		return 1;
	}
	static const uint32_t least[] = { 0, 0, 0x80, 0x800, 0x10000 };
	size_t bytes = announced(lead);
	uint32_t got = bytes ? lead & (0x7FU >> bytes) : 0;

	*cp = 0xFFFD;
	if (bytes == 0 || bytes > n)
		return 1;
	for (size_t i = 1; i < bytes; i++) {
		if ((s[i] & 0xC0) != 0x80)
			return 1;
		got = got << 6 | ((unsigned char)s[i] & 0x3F);
	}
	if (got < least[bytes] || got > 0x10FFFF || (got >= 0xD800 && got <= 0xDFFF))
		return 1;
	*cp = got;
	return bytes;
}

size_t text_encode(uint32_t cp, char out[static 5])
{
	size_t bytes = cp < 0x80 ? 1 : cp < 0x800 ? 2 : cp < 0x10000 ? 3 : 4;
	static const unsigned char mark[] = { 0, 0, 0xC0, 0xE0, 0xF0 };

	for (size_t i = bytes - 1; i > 0; i--, cp >>= 6)
		out[i] = (char)(0x80 | (cp & 0x3F));
	out[0] = (char)(mark[bytes] | cp);
	out[bytes] = '\0';
	return bytes;
}

bool text_valid(const char *s, size_t n, size_t *bad)
{
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(s + at, n - at, &cp);
		if (cp == 0xFFFD && step == 1) {
			if (bad)
				*bad = at;
			return false;
		}
	}
	return true;
}

bool text_control(uint32_t cp)
{
	if (cp < 0x2000)
		return cp < 0x20 || (cp >= 0x7F && cp <= 0x9F);
	return (cp >= 0x200B && cp <= 0x200F) || (cp >= 0x2028 && cp <= 0x202E) ||
	       (cp >= 0x2066 && cp <= 0x2069) || cp == 0xFEFF;
}

int text_char_cols(uint32_t cp)
{
	int cols = text_control(cp) ? 1 : wcwidth((wchar_t)cp);

	/* What the locale does not know takes one cell, as on terminals. */
	return cols < 0 ? 1 : cols;
}

int text_cols(const char *s)
{
	size_t n = strlen(s);
	int cols = 0;

	for (size_t at = 0; at < n;) {
		uint32_t cp;
		at += text_decode(s + at, n - at, &cp);
		cols += text_char_cols(cp);
	}
	return cols;
}

size_t text_fit(const char *s, int cols)
{
	size_t n = strlen(s), at = 0;

	while (at < n) {
		uint32_t cp;
		size_t step = text_decode(s + at, n - at, &cp);
		cols -= text_char_cols(cp);
		if (cols < 0)
			break;
		at += step;
	}
	return at;
}

double text_hundredths(double x)
{
	return round(x * 100) / 100 + 0.0; /* -0 + 0 is 0 */
}

bool text_copy(char *out, size_t size, const char *s)
{
	size_t n = strlen(s);
	bool fits = n < size;

	if (size == 0)
		return false;
	if (!fits) {
		n = size - 1;
		while (n > 0 && (s[n] & 0xC0) == 0x80)
			n--;
	}
	memcpy(out, s, n);
	out[n] = '\0';
	return fits;
}

/* The longest word with a slash in it; its bytes, 0: there is none. */
static size_t longest_path(char *s, char **at)
{
	size_t most = 0;

	for (s += strspn(s, " "); *s; s += strspn(s, " ")) {
		size_t n = strcspn(s, " ");

		if (n > most && memchr(s, '/', n)) {
			most = n;
			*at = s;
		}
		s += n;
	}
	return most;
}

static bool is_inside(const char *s)
{
	return ((unsigned char)*s & 0xC0) == 0x80;
}

/* Takes bytes from..to out and puts the gap there; no character is torn. */
static void take_middle(char *s, size_t from, size_t to)
{
	static const char gap[] = "...";

	while (from > 0 && is_inside(s + from))
		from--;
	while (is_inside(s + to))
		to++;
	memmove(s + from + strlen(gap), s + to, strlen(s + to) + 1);
	memcpy(s + from, gap, strlen(gap));
}

void text_shorten_paths(char *s, size_t size)
{
	enum { PATH_LEAST = 24, GAP = 3 };
	size_t n = 0;
	char *path = NULL;

	while (strlen(s) >= size && (n = longest_path(s, &path)) > PATH_LEAST) {
		size_t over = strlen(s) - size + 1 + GAP;
		size_t keep = n > over + PATH_LEAST ? n - over : PATH_LEAST - GAP;

		take_middle(path, keep / 2, n - (keep - keep / 2));
	}
}

void text_trim(char *s)
{
	size_t from = strspn(s, " \t"), n = strlen(s);

	while (n > from && (s[n - 1] == ' ' || s[n - 1] == '\t'))
		n--;
	memmove(s, s + from, n - from);
	s[n - from] = '\0';
}

/* Digits at *s as a whole number; -1 if there are none or they pass INT32_MAX. */
static int64_t digits(const char **s)
{
	const char *from = *s;
	int64_t sum = 0;

	for (; **s >= '0' && **s <= '9'; ++*s) {
		sum = sum * 10 + (**s - '0');
		if (sum > INT32_MAX)
			return -1;
	}
	return *s == from ? -1 : sum;
}

void text_erase_last(char *s)
{
	size_t at = 0, last = 0, n = 0;
	uint32_t cp = 0;

	while ((n = text_decode(s + at, strlen(s + at), &cp)) > 0) {
		if (text_char_cols(cp) > 0)
			last = at;
		at += n;
	}
	s[last] = '\0';
}

bool text_int(const char *s, int32_t lo, int32_t hi, int32_t *out)
{
	int64_t value = digits(&s);

	if (value < 0 || *s || value < lo || value > hi)
		return false;
	*out = (int32_t)value;
	return true;
}

bool text_degrees(const char **text, double *out)
{
	static const char digits[] = "0123456789";
	const char *s = *text + (**text == '-');
	size_t whole = strspn(s, digits), part = 0;

	if (whole < 1 || whole > 3)
		return false;
	s += whole;
	if (*s == '.') {
		part = strspn(++s, digits);
		s += part;
		if (part < 1 || part > 15)
			return false;
	}
	*out = strtod(*text, NULL) + 0.0; /* -0 is 0 */
	*text = s;
	return true;
}

bool text_x100(const char *s, int32_t max_x100, int32_t *out)
{
	int64_t value = digits(&s);

	if (value < 0)
		return false;
	value *= 100;
	if (*s == '.') {
		const char *from = ++s;
		int64_t part = digits(&s);
		if (part < 0 || s - from > 2)
			return false;
		value += s - from == 1 ? part * 10 : part;
	}
	if (*s || value > max_x100)
		return false;
	*out = (int32_t)value;
	return true;
}
