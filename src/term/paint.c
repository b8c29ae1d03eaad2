/* paint.c - the canvas drawn with curses: inks as attributes first, colours last. */
#include "parts.h"

#include <curses.h>
#include <term.h>

#include <string.h>

enum { PAIR_NONE, PAIR_RED, PAIR_YELLOW, PAIR_COUNT };

static const struct {
	attr_t attrs;
	short pair;
} inks[INK_COUNT] = {
	[INK_PLAIN] = { A_NORMAL, PAIR_NONE },
	[INK_TITLE] = { A_BOLD, PAIR_NONE },
	[INK_PICKED] = { A_REVERSE, PAIR_NONE },
	[INK_FIELD] = { A_REVERSE | A_BOLD, PAIR_NONE },
	[INK_OVER] = { A_REVERSE | A_BOLD, PAIR_RED },
	[INK_UNSURE] = { A_UNDERLINE, PAIR_YELLOW },
	[INK_QUIET] = { A_NORMAL, PAIR_NONE }, /* dim is lost in full sun */
	[INK_FAULT] = { A_REVERSE, PAIR_RED },
};

static bool utf8;
static short pair_of[INK_COUNT];

/* What a terminal cannot show together with colour, as terminfo counts it. curses would
 * keep the colour and drop the rest; here colour is what goes. */
static bool colour_spoils(attr_t attrs)
{
	static const struct {
		attr_t attr;
		int bit;
	} row[] = { { A_UNDERLINE, 2 }, { A_REVERSE, 4 }, { A_BOLD, 32 } };
	int spoilt = tigetnum("ncv");

	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (spoilt > 0 && (attrs & row[i].attr) && (spoilt & row[i].bit))
			return true;
	return false;
}

void paint_open(struct term_look look)
{
	bool colour = look.colour && has_colors() && start_color() == OK &&
		      use_default_colors() == OK;

	utf8 = look.utf8;
	if (colour) {
		init_pair(PAIR_RED, COLOR_RED, -1);
		init_pair(PAIR_YELLOW, COLOR_YELLOW, -1);
	}
	for (int i = 0; i < INK_COUNT; i++)
		pair_of[i] = colour && !colour_spoils(inks[i].attrs) ? inks[i].pair
								     : PAIR_NONE;
}

static void paint_cell(int row, int col, const struct cell *cell)
{
	wchar_t text[CELL_CHARS + 1] = { 0 };
	cchar_t cc;

	for (int i = 0; i < CELL_CHARS && cell->ch[i]; i++)
		text[i] = (wchar_t)(utf8 ? cell->ch[i] : canvas_ascii(cell->ch[i]));
	if (!utf8)
		text[1] = 0; /* combining characters are left out, not shown as '?' */
	if (setcchar(&cc, text, inks[cell->ink].attrs, pair_of[cell->ink], NULL) == OK)
		mvadd_wch(row, col, &cc);
}

void paint_canvas(const struct canvas *c)
{
	const struct cell *cell = c->cells;

	erase();
	for (int row = 0; row < c->rows; row++)
		for (int col = 0; col < c->cols; col++, cell++)
			if (cell->ch[0])
				paint_cell(row, col, cell);
	move(c->cursor_row, c->cursor_col);
	curs_set(c->cursor_shown ? 1 : 0);
}
