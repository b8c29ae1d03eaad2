#include "screen/canvas.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct cell blank = { { ' ' }, INK_PLAIN };
static const char ink_letter[INK_COUNT] = {
	[INK_PLAIN] = ' ',
	[INK_TITLE] = 't',
	[INK_PICKED] = 'p',
	[INK_FIELD] = 'f',
	[INK_OVER] = 'o',
	[INK_UNSURE] = 'u',
	[INK_QUIET] = 'q',
	[INK_FAULT] = '!',
};

void canvas_size(struct canvas *c, int rows, int cols)
{
	c->rows = rows < 1 ? 1 : rows;
	c->cols = cols < 1 ? 1 : cols;
	free(c->cells);
	c->cells = mem_new((size_t)c->rows * (size_t)c->cols, sizeof *c->cells);
	canvas_clear(c);
}

void canvas_clear(struct canvas *c)
{
	for (size_t i = 0; i < (size_t)c->rows * (size_t)c->cols; i++)
		c->cells[i] = blank;
	c->cursor_row = c->cursor_col = 0;
	c->cursor_shown = false;
}

void canvas_free(struct canvas *c)
{
	free(c->cells);
	*c = (struct canvas){ 0 };
}

static struct cell *cell_at(struct canvas *c, int row, int col)
{
	if (row < 0 || row >= c->rows || col < 0 || col >= c->cols)
		return NULL;
	return &c->cells[(size_t)row * (size_t)c->cols + (size_t)col];
}

/* Half a double-width character cannot be shown: the half that stays turns blank. */
static void unpair(struct canvas *c, int row, int col)
{
	struct cell *here = cell_at(c, row, col);
	struct cell *last = cell_at(c, row, col - 1);
	struct cell *next = cell_at(c, row, col + 1);

	if (here && here->ch[0] == 0 && last)
		*last = (struct cell){ { ' ' }, last->ink };
	if (here && next && next->ch[0] == 0)
		next->ch[0] = ' ';
}

static void put_char(struct canvas *c, int row, int col, int cols, struct cell what)
{
	struct cell *cell[2] = { cell_at(c, row, col),
		cell_at(c, row, col + cols - 1) };

	unpair(c, row, col);
	unpair(c, row, col + cols - 1);
	if (!cell[0] || !cell[1])
		what = (struct cell){ { ' ' }, what.ink };
	if (cell[0])
		*cell[0] = what;
	if (cols == 2 && cell[1])
		*cell[1] = (struct cell){ { cell[0] ? 0 : ' ' }, what.ink };
}

/* Marks that join letters or turn their direction would reorder the row on some
 * terminals: they are left out. */
static bool is_format_mark(uint32_t cp)
{
	return (cp >= 0x200B && cp <= 0x200F) || (cp >= 0x202A && cp <= 0x202E) ||
	       (cp >= 0x2060 && cp <= 0x206F) || cp == 0xFEFF || cp == 0xAD;
}

/* Reads one character with its combining ones; returns its bytes, 0 at the end. A
 * combining character that has nothing to stand on is left out (*cols = 0). */
static size_t next_char(const char *s, struct cell *out, int *cols)
{
	uint32_t cp = 0;
	size_t n = text_decode(s, strnlen(s, 4), &cp), more = 0;
	int marks = 0;

	if (n == 0)
		return 0;
	*cols = is_format_mark(cp) ? 0 : text_char_cols(cp);
	out->ch[0] = text_control(cp) || (cp == 0xFFFD && n == 1) ? '?' : cp;
	for (int i = 1; i < CELL_CHARS; i++)
		out->ch[i] = 0;
	while ((more = text_decode(s + n, strnlen(s + n, 4), &cp)) > 0) {
		if (text_char_cols(cp) != 0 && !is_format_mark(cp))
			break;
		if (!is_format_mark(cp) && ++marks < CELL_CHARS)
			out->ch[marks] = cp;
		n += more;
	}
	return n;
}

static int put_text(
	struct canvas *c, int row, int col, int end, struct cell cell, const char *s)
{
	int cols = 0;

	for (size_t n = 0; (n = next_char(s, &cell, &cols)) > 0; s += n) {
		if (cols > end - col)
			break;
		if (cols > 0)
			put_char(c, row, col, cols, cell);
		col += cols;
	}
	return col;
}

static int put_blanks(struct canvas *c, int row, int col, int end, enum ink ink)
{
	for (; col < end; col++)
		put_char(c, row, col, 1, (struct cell){ { ' ' }, (uint8_t)ink });
	return col;
}

int canvas_text(
	struct canvas *c, int row, int col, int width, enum ink ink, const char *utf8)
{
	struct cell cell = { .ink = (uint8_t)ink };
	int end = width ? col + abs(width) : c->cols;

	assert(ink < INK_COUNT);
	if (width < 0) {
		int lead = -width - text_cols(utf8);

		col = put_blanks(c, row, col, col + (lead > 0 ? lead : 0), ink);
	}
	col = put_text(c, row, col, end, cell, utf8);
	return width ? put_blanks(c, row, col, end, ink) : col;
}

int canvas_textf(struct canvas *c, int row, int col, int width, enum ink ink,
	const char *fmt, ...)
{
	va_list args;

	va_start(args, fmt);
	int n = words_vprint(NULL, 0, fmt, args);
	va_end(args);
	if (n < 0)
		return col;
	char *text = mem_new((size_t)n + 1, 1);
	va_start(args, fmt);
	words_vprint(text, (size_t)n + 1, fmt, args);
	va_end(args);
	col = canvas_text(c, row, col, width, ink, text);
	free(text);
	return col;
}

void canvas_line(struct canvas *c, int row)
{
	for (int col = 0; col < c->cols; col++)
		canvas_text(c, row, col, 1, INK_QUIET, "\u2500");
}

static int clamp(int value, int hi)
{
	return value < 0 ? 0 : value > hi ? hi : value;
}

void canvas_cursor(struct canvas *c, int row, int col)
{
	c->cursor_row = clamp(row, c->rows - 1);
	c->cursor_col = clamp(col, c->cols - 1);
	c->cursor_shown = true;
}

static void trim_line(struct buf *out, size_t start)
{
	while (out->n > start && out->text[out->n - 1] == ' ')
		out->text[--out->n] = '\0';
	buf_add(out, "\n");
}

static void dump_cell(const struct cell *cell, struct buf *out)
{
	char utf8[5];

	for (int i = 0; i < CELL_CHARS && cell->ch[i]; i++) {
		text_encode(cell->ch[i], utf8);
		buf_add(out, utf8);
	}
}

static void dump_block(const struct canvas *c, bool inks, struct buf *out)
{
	const struct cell *cell = c->cells;

	for (int row = 0; row < c->rows; row++) {
		size_t start = out->n;

		for (int col = 0; col < c->cols; col++, cell++)
			if (inks)
				buf_add_n(out, &ink_letter[cell->ink], 1);
			else
				dump_cell(cell, out);
		trim_line(out, start);
	}
}

void canvas_dump(const struct canvas *c, bool inks, struct buf *out)
{
	dump_block(c, false, out);
	if (!inks)
		return;
	for (int col = 0; col < c->cols; col++)
		buf_add(out, "-");
	buf_add(out, "\n");
	dump_block(c, true, out);
}

uint32_t canvas_ascii(uint32_t ch)
{
	static const struct {
		uint32_t first, last;
		char like;
	} row[] = {
		{ 0xA0, 0xA0, ' ' },     /* a blank that does not break */
		{ 0xB7, 0xB7, '.' },     /* middle dot */
		{ 0xD7, 0xD7, 'x' },     /* times */
		{ 0x2009, 0x2009, ' ' }, /* thin blanks */
		{ 0x202F, 0x202F, ' ' },
		{ 0x2010, 0x2015, '-' }, /* dashes */
		{ 0x2018, 0x2019, '\'' },
		{ 0x201C, 0x201D, '"' },
		{ 0x2212, 0x2212, '-' }, /* minus */
		{ 0x2500, 0x2501, '-' }, /* lines */
		{ 0x2502, 0x2503, '|' },
		{ 0x2504, 0x257F, '+' },
	};

	if (ch < 0x7F)
		return ch;
	if (ch >= 0x2581 && ch <= 0x2588) /* flight-line blocks */
		return '1' + (ch - 0x2581);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (ch >= row[i].first && ch <= row[i].last)
			return (uint32_t)row[i].like;
	return '?';
}
