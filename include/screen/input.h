/* input.h - what the person did, whatever the terminal calls it. */
#ifndef SCREEN_INPUT_H
#define SCREEN_INPUT_H

#include <stdbool.h>
#include <stdint.h>

enum input_kind {
	INPUT_NONE, /* nothing for now (a signal, a time-out) */
	INPUT_CHAR, /* ch: a character, 0x20 and up (number pad digits and signs too) */
	INPUT_ENTER,
	INPUT_ESC,
	INPUT_UP,
	INPUT_DOWN,
	INPUT_LEFT,
	INPUT_RIGHT,
	INPUT_PAGE_UP,
	INPUT_PAGE_DOWN,
	INPUT_HOME,
	INPUT_END,
	INPUT_BACKSPACE,
	INPUT_DELETE,
	INPUT_TAB,
	INPUT_RESIZE, /* draw again: the size may have changed */
	INPUT_LEAVE, /* SIGTERM, SIGHUP or the terminal is gone: put things away, end */
};

struct input {
	enum input_kind kind;
	uint32_t ch;
};

/* False for what asks nothing of a page: nothing came, another size, the end. */
bool input_is_key(struct input in);

#endif
