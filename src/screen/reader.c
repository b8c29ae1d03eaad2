#include "screen/reader.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

size_t reader_wrap(const char *s, int cols)
{
	size_t fit = text_fit(s, cols < 1 ? 1 : cols), cut = fit;
	uint32_t cp = 0;

	if (s[fit] == '\0' || (fit > 0 && s[fit] == ' '))
		return fit;
	while (cut > 0 && s[cut] != ' ')
		cut--;
	if (cut > 0)
		return cut;
	return fit > 0 ? fit : text_decode(s, strlen(s), &cp);
}

size_t reader_cut(const char *s, int cols)
{
	size_t fit = text_fit(s, cols < 1 ? 1 : cols), cut = fit;

	if (s[fit] == '\0')
		return fit;
	while (cut > 0 && s[cut] != ',')
		cut--;
	return cut > 0 ? cut : reader_wrap(s, cols);
}

static const char *next_line(const char *s, int cols, size_t *n)
{
	s += strspn(s, " ");
	*n = reader_wrap(s, cols);
	return s;
}

size_t reader_lines(const char *s, int cols)
{
	size_t lines = 0, n = 0;

	do {
		s = next_line(s, cols, &n);
		s += n;
		lines++;
	} while (*s);
	return lines;
}

int reader_text(struct canvas *c, struct reader_box box, enum ink ink, const char *s)
{
	int drawn = 0;
	size_t n = 0;

	for (size_t line = 0; drawn < box.rows && (line == 0 || *s); line++) {
		s = next_line(s, box.cols, &n);
		if (line >= box.skip)
			canvas_textf(c, box.row + drawn++, box.col, 0, ink, "%.*s",
				(int)n, s);
		s += n;
	}
	return drawn;
}

/* Long words of a narrow page need some room beside their indent. */
static int indent_of(const struct paragraph *p, int cols)
{
	return p->indent < cols / 2 ? p->indent : cols / 2;
}

static size_t lines_of(const struct paragraph *p, int cols)
{
	return reader_lines(p->text, cols - 2 - indent_of(p, cols));
}

static int draw_one(
	struct canvas *c, int row, int last, size_t skip, const struct paragraph *p)
{
	int indent = indent_of(p, c->cols);
	struct reader_box box = { row, 1 + indent, c->cols - 2 - indent, last - row + 1,
		skip };

	if (p->lead && skip == 0 && row <= last)
		canvas_text(c, row, 1, indent, INK_TITLE, p->lead);
	return reader_text(c, box, p->ink, p->text);
}

size_t reader_draw(struct canvas *c, int first, int last, size_t *top,
	const struct paragraph *p, size_t n)
{
	size_t total = 0, rows = last < first ? 0 : (size_t)(last - first + 1), at = 0;

	for (size_t i = 0; i < n; i++)
		total += lines_of(&p[i], c->cols);
	if (*top + rows > total)
		*top = total > rows ? total - rows : 0;
	for (size_t i = 0; i < n && first <= last; i++) {
		size_t lines = lines_of(&p[i], c->cols);

		if (at + lines > *top)
			first += draw_one(
				c, first, last, *top > at ? *top - at : 0, &p[i]);
		at += lines;
	}
	return total;
}

void reader_more(struct canvas *c, int last, size_t below)
{
	if (below > 0)
		canvas_text(c, last + 1, c->cols - 8, 0, INK_PICKED, _(" more "));
}
