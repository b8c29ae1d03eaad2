#include "base/source.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

static const char *const kinds[SOURCE_KIND_COUNT] = {
	[SOURCE_ABANDONED] = N_("abandoned"),
	[SOURCE_WILD] = N_("wild"),
	[SOURCE_WOODLOT] = N_("woodlot"),
	[SOURCE_BINS] = N_("bins"),
	[SOURCE_OTHER] = N_("other"),
};

const char *source_kind_word(enum source_kind k)
{
	return kinds[k];
}

bool source_kind_read(const char *word, enum source_kind *out)
{
	for (int i = 0; i < SOURCE_KIND_COUNT; i++)
		if (strcmp(kinds[i], word) == 0)
			return *out = (enum source_kind)i, true;
	return false;
}

bool corner_good(struct corner c)
{
	return c.lat >= -90 && c.lat <= 90 && c.lon >= -180 && c.lon <= 180;
}

/* Without zeros at its end; returns its bytes. */
static int write_degrees(double degrees, char out[static 13])
{
	int n = snprintf(out, 13, "%.7f", degrees);

	while (out[n - 1] == '0')
		n--;
	if (out[n - 1] == '.')
		n--;
	out[n] = '\0';
	if (strcmp(out, "-0") == 0)
		return (int)strlen(strcpy(out, "0"));
	return n;
}

void outline_write(const struct source *s, char *out)
{
	*out = '\0';
	for (size_t i = 0; i < s->n_outline; i++) {
		if (i > 0)
			out += strlen(strcpy(out, "; "));
		out += write_degrees(s->outline[i].lat, out);
		*out++ = ' ';
		out += write_degrees(s->outline[i].lon, out);
	}
}

static void skip_blanks(const char **text)
{
	*text += strspn(*text, " \t");
}

/* "lat lon" and the ';' behind it, unless it is the last. */
static bool take_corner(const char **text, struct corner *out)
{
	if (!text_degrees(text, &out->lat) || (**text != ' ' && **text != '\t'))
		return false;
	skip_blanks(text);
	if (!text_degrees(text, &out->lon) || !corner_good(*out))
		return false;
	skip_blanks(text);
	if (**text == '\0')
		return true;
	return *(*text)++ == ';';
}

bool outline_read(const char *text, struct source *s)
{
	struct corner read[OUTLINE_MAX] = { { 0, 0 } };
	size_t n = 0;

	for (skip_blanks(&text); *text; skip_blanks(&text), n++)
		if (n == OUTLINE_MAX || !take_corner(&text, &read[n]))
			return false;
	if (n > 0 && n < OUTLINE_MIN)
		return false;
	memcpy(s->outline, read, sizeof read);
	s->n_outline = n;
	return true;
}
