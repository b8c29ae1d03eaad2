/* term.h - canvas to terminal, keys to input. The only user of curses. One terminal
 * at a time. */
#ifndef TERM_TERM_H
#define TERM_TERM_H

#include "base/err.h"
#include "screen/canvas.h"
#include "screen/input.h"

#include <stdbool.h>

struct term_look {
	bool utf8;   /* false: ASCII only (canvas_ascii) */
	bool colour; /* false with NO_COLOR */
};

/* Takes over the terminal (alternate screen, keypad, no echo). Refused when stdin or
 * stdout is no terminal or TERM is not known. */
bool term_open(struct term_look look, struct err *e);
/* Gives the terminal back as it was. Safe to call twice, or without term_open. */
void term_close(void);

/* Present size. */
void term_size(int *rows, int *cols);

/* Shows the canvas; sends only what changed, ends with the cursor where the canvas has
 * it. */
void term_show(const struct canvas *c);

/* Waits up to wait_ms (-1 = until something comes) for a key. Meets SIGTSTP by
 * itself: gives the terminal back, stops, takes it again and answers INPUT_RESIZE. */
struct input term_read(int wait_ms);

/* SIGTERM or SIGHUP came, or the terminal is gone. */
bool term_leaving(void);

#endif
