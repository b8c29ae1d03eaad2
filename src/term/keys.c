/* keys.c - bytes from the terminal as keys. */
#include "parts.h"

#include <curses.h>

#include <stddef.h>
#include <wchar.h>

/* What a key of the number pad types, added to this, is its code for curses. */
enum { PAD_CODE = 0x1000, CTRL_L = 0x0C, BYTE_ESC = 0x1B, BYTE_DELETE = 0x7F };

struct sequence {
	const char *bytes;
	int code;
};

/* The number pad in application mode, as DEC terminals and their heirs send it. Some
 * terminfo entries give these names of function keys; here a digit is a digit. */
static const struct sequence pad[] = {
	{ "\033Op", PAD_CODE + '0' },
	{ "\033Oq", PAD_CODE + '1' },
	{ "\033Or", PAD_CODE + '2' },
	{ "\033Os", PAD_CODE + '3' },
	{ "\033Ot", PAD_CODE + '4' },
	{ "\033Ou", PAD_CODE + '5' },
	{ "\033Ov", PAD_CODE + '6' },
	{ "\033Ow", PAD_CODE + '7' },
	{ "\033Ox", PAD_CODE + '8' },
	{ "\033Oy", PAD_CODE + '9' },
	{ "\033Oj", PAD_CODE + '*' },
	{ "\033Ok", PAD_CODE + '+' },
	{ "\033Ol", PAD_CODE + ',' },
	{ "\033Om", PAD_CODE + '-' },
	{ "\033On", PAD_CODE + '.' },
	{ "\033Oo", PAD_CODE + '/' },
	{ "\033OM", KEY_ENTER },
};

/* Sent by many terminals whatever TERM says; used where terminfo has no other word. */
static const struct sequence usual[] = {
	{ "\033[A", KEY_UP },
	{ "\033OA", KEY_UP },
	{ "\033[B", KEY_DOWN },
	{ "\033OB", KEY_DOWN },
	{ "\033[C", KEY_RIGHT },
	{ "\033OC", KEY_RIGHT },
	{ "\033[D", KEY_LEFT },
	{ "\033OD", KEY_LEFT },
	{ "\033[H", KEY_HOME },
	{ "\033OH", KEY_HOME },
	{ "\033[1~", KEY_HOME },
	{ "\033[F", KEY_END },
	{ "\033OF", KEY_END },
	{ "\033[4~", KEY_END },
	{ "\033[5~", KEY_PPAGE },
	{ "\033[6~", KEY_NPAGE },
	{ "\033[3~", KEY_DC },
	{ "\033[E", KEY_B2 },
	{ "\033OE", KEY_B2 },
};

void keys_define(void)
{
	for (size_t i = 0; i < sizeof pad / sizeof *pad; i++)
		define_key(pad[i].bytes, pad[i].code);
	for (size_t i = 0; i < sizeof usual / sizeof *usual; i++)
		if (key_defined(usual[i].bytes) == 0)
			define_key(usual[i].bytes, usual[i].code);
}

static struct input input_char(uint32_t ch)
{
	return (struct input){ INPUT_CHAR, ch };
}

static struct input named_key(int code)
{
	static const struct {
		int code;
		struct input in;
	} row[] = {
		{ KEY_ENTER, { INPUT_ENTER, 0 } },
		{ KEY_UP, { INPUT_UP, 0 } },
		{ KEY_DOWN, { INPUT_DOWN, 0 } },
		{ KEY_LEFT, { INPUT_LEFT, 0 } },
		{ KEY_RIGHT, { INPUT_RIGHT, 0 } },
		{ KEY_PPAGE, { INPUT_PAGE_UP, 0 } },
		{ KEY_NPAGE, { INPUT_PAGE_DOWN, 0 } },
		{ KEY_HOME, { INPUT_HOME, 0 } },
		{ KEY_END, { INPUT_END, 0 } },
		{ KEY_BACKSPACE, { INPUT_BACKSPACE, 0 } },
		{ KEY_DC, { INPUT_DELETE, 0 } },
		{ KEY_RESIZE, { INPUT_RESIZE, 0 } },
		{ KEY_A1, { INPUT_CHAR, '7' } }, /* corners and middle of the pad */
		{ KEY_A3, { INPUT_CHAR, '9' } },
		{ KEY_B2, { INPUT_CHAR, '5' } },
		{ KEY_C1, { INPUT_CHAR, '1' } },
		{ KEY_C3, { INPUT_CHAR, '3' } },
	};

	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		if (row[i].code == code)
			return row[i].in;
	if (code > PAD_CODE && code < PAD_CODE + BYTE_DELETE)
		return input_char((uint32_t)(code - PAD_CODE));
	return (struct input){ INPUT_NONE, 0 };
}

/* Escape, or the start of a sequence nobody named: that one is dropped whole, lest its
 * letters be taken for keys. The rest of it is here already; a person is slower. */
static struct input escape(void)
{
	int ch = getch();

	if (ch != '[' && ch != 'O') {
		if (ch != ERR)
			ungetch(ch);
		return (struct input){ INPUT_ESC, 0 };
	}
	do
		ch = getch();
	while (ch >= 0x20 && ch < 0x40);
	return (struct input){ INPUT_NONE, 0 };
}

/* A character beyond ASCII in the locale's encoding, from its first byte on; a torn one
 * is dropped. curses' get_wch would take the keys that follow it, too. */
static struct input wide_key(int ch)
{
	mbstate_t state = { 0 };
	wchar_t wide = 0;
	size_t got = (size_t)-2;

	for (; got == (size_t)-2 && ch >= 0x80 && ch <= 0xFF; ch = getch()) {
		char byte = (char)ch;

		got = mbrtowc(&wide, &byte, 1, &state);
		if (got != (size_t)-2)
			break;
	}
	if (got == (size_t)-2 && ch != ERR)
		ungetch(ch);
	if (got > 1 || wide < 0xA0)
		return (struct input){ INPUT_NONE, 0 };
	return input_char((uint32_t)wide);
}

static struct input plain_key(int ch)
{
	switch (ch) {
	case '\r':
	case '\n':
		return (struct input){ INPUT_ENTER, 0 };
	case '\t':
		return (struct input){ INPUT_TAB, 0 };
	case '\b':
	case BYTE_DELETE:
		return (struct input){ INPUT_BACKSPACE, 0 };
	case CTRL_L:
		clearok(curscr, TRUE);
		return (struct input){ INPUT_RESIZE, 0 };
	case BYTE_ESC:
		return escape();
	default:
		if (ch < 0x20)
			return (struct input){ INPUT_NONE, 0 };
		return input_char((uint32_t)ch);
	}
}

static struct input meaning(int ch)
{
	if (ch >= KEY_MIN)
		return named_key(ch);
	return ch < 0x80 ? plain_key(ch) : wide_key(ch);
}

struct input keys_next(void)
{
	struct input in = { INPUT_NONE, 0 };

	/* What is dropped must not leave a key behind in curses' queue, where a
	 * poll does not see it. */
	for (int ch = 0; in.kind == INPUT_NONE && (ch = getch()) != ERR;)
		in = meaning(ch);
	return in;
}
