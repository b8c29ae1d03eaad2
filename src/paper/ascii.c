#include "paper/ascii.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

static char ascii_of(uint32_t cp)
{
	if (cp >= 0x2581 && cp <= 0x2588) /* lower one eighth block .. full block */
		return (char)('1' + (cp - 0x2581));
	switch (cp) {
	case 0x2013: /* dashes and box-drawing lines */
	case 0x2014:
	case 0x2500:
		return '-';
	case 0xB7:
		return '.';
	case 0x2026:
		return '~';
	case 0x2018:
	case 0x2019:
		return '\'';
	case 0xA0:
		return ' ';
	default:
		return '?';
	}
}

const char *paper_ascii(const char *text, struct buf *out)
{
	size_t n = strlen(text);

	buf_add(out, "");
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(text + at, n - at, &cp);
		if (cp < 0x80) {
			buf_add_n(out, text + at, 1);
			continue;
		}
		char ch = ascii_of(cp);
		for (int cols = text_char_cols(cp); cols > 0; cols--)
			buf_add_n(out, &ch, 1);
	}
	return out->text;
}

/* Bytes of the next line of `text`, without the blanks at its end. */
static size_t line_bytes(const char *text, int cols)
{
	size_t fits = text_fit(text, cols), n = fits;

	while (text[fits] && n > 0 && text[n] != ' ')
		n--;
	if (n == 0) /* a word longer than the line, or a character wider than it */
		return fits ? fits : strlen(text);
	while (n > 0 && text[n - 1] == ' ')
		n--;
	return n;
}

void paper_wrap(struct buf *out, const char *text, int indent, int cols)
{
	text += strspn(text, " ");
	while (*text) {
		size_t n = line_bytes(text, cols - indent);
		struct buf line = { 0 };

		buf_add_n(&line, text, n);
		buf_add_field(out, "", indent);
		buf_add_field(out, line.text, text_cols(line.text));
		buf_add(out, "\n");
		buf_free(&line);
		text += n;
		text += strspn(text, " ");
	}
}

void paper_cell(struct buf *out, const char *text, int cols)
{
	struct buf cut = { 0 };

	if (text_cols(text) <= abs(cols)) {
		buf_add_field(out, text, cols);
		return;
	}
	buf_add_n(&cut, text, text_fit(text, abs(cols) - 1));
	buf_add(&cut, "\u2026");
	buf_add_field(out, cut.text, cols);
	buf_free(&cut);
}
