#include "terminal.h"

#include "fuzz.h"

#include "base/text.h"
#include "term/term.h"

enum { ROWS_MAX = 60, COLS_MAX = 200, RESIZE = 0x0F };

static const uint8_t *at, *end;
static int rows, cols;

void terminal_type(const uint8_t *keys, size_t n)
{
	at = keys;
	end = keys + n;
	rows = 24;
	cols = 80;
}

bool term_open(struct term_look look, struct err *e)
{
	(void)look, (void)e;
	return true;
}

void term_close(void)
{
}

void term_size(int *r, int *c)
{
	*r = rows;
	*c = cols;
}

static void look_at(const struct cell *cell)
{
	must(cell->ink < INK_COUNT);
	for (int i = 0; i < CELL_CHARS; i++)
		must(cell->ch[i] == 0 ||
			(!text_control(cell->ch[i]) && cell->ch[i] <= 0x10FFFF));
}

void term_show(const struct canvas *c)
{
	must(c->rows == rows && c->cols == cols);
	if (c->cursor_shown)
		must(c->cursor_row >= 0 && c->cursor_row < rows && c->cursor_col >= 0 &&
			c->cursor_col < cols);
	for (int i = 0; i < rows * cols; i++)
		look_at(&c->cells[i]);
}

static struct input character(void)
{
	uint32_t ch;

	at += text_decode((const char *)at, (size_t)(end - at), &ch);
	return (struct input){ text_control(ch) ? INPUT_NONE : INPUT_CHAR, ch };
}

static struct input resize(void)
{
	if (end - at < 2)
		return (struct input){ .kind = INPUT_NONE };
	rows = 1 + at[0] % ROWS_MAX;
	cols = 1 + at[1] % COLS_MAX;
	at += 2;
	return (struct input){ .kind = INPUT_RESIZE };
}

struct input term_read(int wait_ms)
{
	static const enum input_kind named[' '] = { [0x01] = INPUT_UP,
		INPUT_DOWN,
		INPUT_LEFT,
		INPUT_RIGHT,
		INPUT_PAGE_UP,
		INPUT_PAGE_DOWN,
		INPUT_HOME,
		INPUT_END,
		['\t'] = INPUT_TAB,
		['\n'] = INPUT_ENTER,
		[0x0E] = INPUT_DELETE,
		['\r'] = INPUT_ENTER,
		[0x1B] = INPUT_ESC };

	(void)wait_ms;
	if (at == end)
		return (struct input){ .kind = INPUT_LEAVE };
	if (*at >= ' ' && *at != 0x7F)
		return character();
	uint8_t byte = *at++;
	if (byte == RESIZE)
		return resize();
	return (struct input){ .kind = byte == 0x7F ? INPUT_BACKSPACE : named[byte] };
}

bool term_leaving(void)
{
	return at == end;
}
