#include "glass.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ESC = 0x1B, PARAMETERS = 8, COLOUR_BITS = 8 };

/* Bits of ink; colours stand above them, one more than their number. */
enum { BOLD = 1, UNDERLINE = 2, REVERSE = 4 };

static const uint32_t bits_front = 0xFFu << COLOUR_BITS;
static const uint32_t bits_back = 0xFFu << 2 * COLOUR_BITS;

static const struct glass_cell blank = { ' ', 0 };

static _Noreturn void unknown(const struct glass *g)
{
	fprintf(stderr, "the program sent what the glass does not know: \"");
	for (size_t i = 0; i < g->n_seq; i++)
		fprintf(stderr, g->seq[i] == ESC ? "\\E" : "%c", g->seq[i]);
	fprintf(stderr, "\"\n");
	exit(3);
}

void glass_open(struct glass *g, int rows, int cols)
{
	*g = (struct glass){ .rows = rows, .cols = cols, .bottom = rows - 1 };
	for (int r = 0; r < rows; r++)
		for (int c = 0; c < cols; c++)
			g->cell[r][c] = blank;
}

static void wipe(struct glass *g, int row, int from, int to)
{
	for (int c = from; c < to && c < g->cols; c++)
		g->cell[row][c] = blank;
}

static int within(int x, int lo, int hi)
{
	return x < lo ? lo : x > hi ? hi : x;
}

static void go(struct glass *g, int row, int col)
{
	g->row = within(row, 0, g->rows - 1);
	g->col = within(col, 0, g->cols - 1);
	g->wraps = false;
}

/* Rows from..to go up by n, down if it is negative. */
static void shift(struct glass *g, int from, int to, int n)
{
	int rows = to - from + 1, by = abs(n) < rows ? abs(n) : rows;
	size_t kept = (size_t)(rows - by) * sizeof g->cell[0];

	if (n > 0)
		memmove(g->cell[from], g->cell[from + by], kept);
	else
		memmove(g->cell[from + by], g->cell[from], kept);
	for (int i = 0; i < by; i++)
		wipe(g, n > 0 ? to - i : from + i, 0, g->cols);
}

static void line_feed(struct glass *g)
{
	if (g->row == g->bottom)
		shift(g, g->top, g->bottom, 1);
	else
		go(g, g->row + 1, g->col);
}

/* The rest of the row goes right by n, left if it is negative. */
static void push(struct glass *g, int n)
{
	struct glass_cell *at = &g->cell[g->row][g->col];
	int room = g->cols - g->col, by = abs(n) < room ? abs(n) : room;
	size_t kept = (size_t)(room - by) * sizeof *at;

	memmove(n > 0 ? at + by : at, n > 0 ? at : at + by, kept);
	wipe(g, g->row, n > 0 ? g->col : g->cols - by, n > 0 ? g->col + by : g->cols);
}

static void put(struct glass *g, uint32_t ch)
{
	if (ch >= 0x300 && ch < 0x370)
		return;
	if (g->wraps) {
		g->col = 0;
		line_feed(g);
	}
	if (g->inserts)
		push(g, 1);
	g->cell[g->row][g->col] = (struct glass_cell){ ch, g->ink };
	g->wraps = g->col == g->cols - 1;
	if (!g->wraps)
		g->col++;
}

static void control(struct glass *g, unsigned char byte)
{
	if (byte == '\r')
		go(g, g->row, 0);
	else if (byte == '\n')
		line_feed(g);
	else if (byte == '\b')
		go(g, g->row, g->col - 1);
	else if (byte == '\t')
		go(g, g->row, g->col / 8 * 8 + 8);
}

static void dye(struct glass *g, int what)
{
	int digit = what % 10;
	uint32_t colour = digit == 9 ? 0 : (uint32_t)digit + 1;

	if (what == 0)
		g->ink = 0;
	else if (what == 1)
		g->ink |= BOLD;
	else if (what == 4)
		g->ink |= UNDERLINE;
	else if (what == 7)
		g->ink |= REVERSE;
	else if (what == 24)
		g->ink &= ~(uint32_t)UNDERLINE;
	else if (what == 27)
		g->ink &= ~(uint32_t)REVERSE;
	else if (what / 10 == 3 && digit != 8)
		g->ink = (g->ink & ~bits_front) | colour << COLOUR_BITS;
	else if (what / 10 == 4 && digit != 8)
		g->ink = (g->ink & ~bits_back) | colour << 2 * COLOUR_BITS;
	else
		unknown(g);
}

static void erase_screen(struct glass *g, int how)
{
	int from = how == 0 ? g->row + 1 : 0;
	int to = how == 1 ? g->row - 1 : g->rows - 1;

	for (int r = from; r <= to; r++)
		wipe(g, r, 0, g->cols);
	if (how == 0)
		wipe(g, g->row, g->col, g->cols);
	else if (how == 1)
		wipe(g, g->row, 0, g->col + 1);
}

static void erase_row(struct glass *g, int how)
{
	wipe(g, g->row, how == 0 ? g->col : 0, how == 1 ? g->col + 1 : g->cols);
}

static void repeat(struct glass *g, int n)
{
	uint32_t ch = g->col > 0 || g->wraps
			      ? g->cell[g->row][g->wraps ? g->col : g->col - 1].ch
			      : ' ';

	while (n-- > 0)
		put(g, ch);
}

static void scroll_within(struct glass *g, int n, const int *p)
{
	g->top = n > 0 && p[0] ? p[0] - 1 : 0;
	g->bottom = n > 1 && p[1] ? p[1] - 1 : g->rows - 1;
	go(g, 0, 0);
}

static int numbers(const char *text, int p[PARAMETERS])
{
	int n = 0;

	memset(p, 0, PARAMETERS * sizeof *p);
	for (; n < PARAMETERS && (*text >= '0' && *text <= ';'); n++) {
		p[n] = (int)strtol(text, (char **)&text, 10);
		if (*text == ';')
			text++;
	}
	return n;
}

static void obey(struct glass *g, char last)
{
	int p[PARAMETERS], n = numbers(g->seq + 2, p), one = p[0] ? p[0] : 1;

	switch (last) {
	case 'H':
		go(g, one - 1, (p[1] ? p[1] : 1) - 1);
		break;
	case 'A':
		go(g, g->row - one, g->col);
		break;
	case 'B':
		go(g, g->row + one, g->col);
		break;
	case 'C':
		go(g, g->row, g->col + one);
		break;
	case 'D':
		go(g, g->row, g->col - one);
		break;
	case 'G':
		go(g, g->row, one - 1);
		break;
	case 'd':
		go(g, one - 1, g->col);
		break;
	case 'J':
		erase_screen(g, p[0]);
		break;
	case 'K':
		erase_row(g, p[0]);
		break;
	case 'X':
		wipe(g, g->row, g->col, g->col + one);
		break;
	case 'P':
		push(g, -one);
		break;
	case '@':
		push(g, one);
		break;
	case 'L':
		shift(g, g->row, g->bottom, -one);
		break;
	case 'M':
		shift(g, g->row, g->bottom, one);
		break;
	case 'S':
		shift(g, g->top, g->bottom, one);
		break;
	case 'T':
		shift(g, g->top, g->bottom, -one);
		break;
	case 'b':
		repeat(g, one);
		break;
	case 'r':
		scroll_within(g, n, p);
		break;
	case 'm':
		dye(g, p[0]);
		for (int i = 1; i < n; i++)
			dye(g, p[i]);
		break;
	case 'h':
	case 'l':
		g->inserts = p[0] == 4 && last == 'h';
		break;
	case 't':
		break;
	default:
		unknown(g);
	}
}

/* True once the sequence is whole. */
static bool ends(const struct glass *g, char byte)
{
	if (g->n_seq < 2)
		return false;
	if (g->n_seq == 2)
		return !strchr("[(", byte);
	return g->seq[1] == '(' || (byte >= '@' && byte <= '~');
}

static void two_letters(struct glass *g)
{
	char what = g->seq[1];

	if (what == 'M' && g->row == g->top)
		shift(g, g->top, g->bottom, -1);
	else if (what == 'M')
		go(g, g->row - 1, g->col);
	else if (what == '7') {
		g->kept_row = g->row;
		g->kept_col = g->col;
	} else if (what == '8')
		go(g, g->kept_row, g->kept_col);
	else if (what != '=' && what != '>')
		unknown(g);
}

static void sequence(struct glass *g, char byte)
{
	if (g->n_seq + 1 == sizeof g->seq)
		unknown(g);
	g->seq[g->n_seq++] = byte;
	g->seq[g->n_seq] = '\0';
	if (!ends(g, byte))
		return;
	if (g->seq[1] == '(')
		g->draws = byte == '0';
	else if (g->seq[1] != '[')
		two_letters(g);
	else if (g->seq[2] != '?')
		obey(g, byte);
	g->n_seq = 0;
}

static void text_byte(struct glass *g, unsigned char byte)
{
	if (byte < 0x80)
		put(g, g->draws ? byte | 0x10000u : byte);
	else if (byte < 0xC0) {
		g->now = g->now << 6 | (byte & 0x3Fu);
		if (--g->more == 0)
			put(g, g->now);
	} else {
		g->more = byte < 0xE0 ? 1 : byte < 0xF0 ? 2 : 3;
		g->now = byte & (0x3Fu >> g->more);
	}
}

void glass_take(struct glass *g, const char *bytes, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		unsigned char byte = (unsigned char)bytes[i];

		if (g->n_seq > 0 || byte == ESC)
			sequence(g, bytes[i]);
		else if (byte < ' ')
			control(g, byte);
		else
			text_byte(g, byte);
	}
}

static size_t encode(uint32_t ch, char *out)
{
	if (ch < 0x80) {
		out[0] = (char)ch;
		return 1;
	}
	if (ch < 0x800) {
		out[0] = (char)(0xC0 | ch >> 6);
		out[1] = (char)(0x80 | (ch & 0x3F));
		return 2;
	}
	out[0] = (char)(0xE0 | (ch >> 12 & 0xF));
	out[1] = (char)(0x80 | (ch >> 6 & 0x3F));
	out[2] = (char)(0x80 | (ch & 0x3F));
	return 3;
}

void glass_row(const struct glass *g, int row, char out[static GLASS_TEXT])
{
	size_t n = 0, end = 0;

	for (int c = 0; c < g->cols; c++) {
		n += encode(g->cell[row][c].ch, out + n);
		if (g->cell[row][c].ch != ' ')
			end = n;
	}
	out[end] = '\0';
}

int glass_find(const struct glass *g, const char *text)
{
	char line[GLASS_TEXT];

	for (int row = 0; row < g->rows; row++) {
		glass_row(g, row, line);
		if (strstr(line, text))
			return row;
	}
	return -1;
}

long glass_changed(const struct glass *a, const struct glass *b)
{
	long n = 0;

	for (int r = 0; r < a->rows; r++)
		for (int c = 0; c < a->cols; c++)
			n += a->cell[r][c].ch != b->cell[r][c].ch ||
			     a->cell[r][c].ink != b->cell[r][c].ink;
	return n;
}
