/* caution.h - the cautions at the foot of a page on which a treatment, a re-entry or a
 * pick shows. */
#ifndef SCREEN_CAUTION_H
#define SCREEN_CAUTION_H

#include "screen/canvas.h"

/* Draws the text in the last rows up to *last, which is moved above it: whole where
 * that leaves the page two thirds of its rows, else its beginning in one row; nothing
 * where fewer than four rows are left, or without a text (NULL, ""). */
void caution_draw(struct canvas *c, int first, int *last, const char *text);

#endif
