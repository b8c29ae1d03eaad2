/* parts.h - what the files of this layer share. */
#ifndef TERM_PARTS_H
#define TERM_PARTS_H

#include "screen/input.h"
#include "term/term.h"

/* Names the number pad and what terminfo leaves out; after keypad(). */
void keys_define(void);
/* The next key that is here already; INPUT_NONE if there is none. */
struct input keys_next(void);

/* Prepares the inks for this terminal; after start-up. */
void paint_open(struct term_look look);
void paint_canvas(const struct canvas *c);

#endif
