/* glass.h - what stands on the glass of a terminal after the bytes that a program sent
 * to it. Knows what curses sends where TERM is xterm; at anything else it says so and
 * ends the program that asked. */
#ifndef TESTS_E2E_GLASS_H
#define TESTS_E2E_GLASS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { GLASS_ROWS = 50, GLASS_COLS = 160, GLASS_TEXT = 4 * GLASS_COLS + 1 };

struct glass_cell {
	uint32_t ch;  /* code point; combining ones are left out */
	uint32_t ink; /* bits of bold and the like, colours above them */
};

struct glass {
	int rows, cols, row, col;
	int kept_row, kept_col;
	bool wraps; /* the next character goes to the next row */
	bool draws; /* letters are line drawing */
	bool inserts;
	int top, bottom;   /* rows that scroll */
	uint32_t ink, now; /* being set; the character being read */
	int more;          /* bytes that lack of it */
	char seq[64];      /* a control sequence being read, with the escape */
	size_t n_seq;
	struct glass_cell cell[GLASS_ROWS][GLASS_COLS];
};

/* Blank, up to GLASS_ROWS x GLASS_COLS. */
void glass_open(struct glass *g, int rows, int cols);
void glass_take(struct glass *g, const char *bytes, size_t n);

/* A row as UTF-8, blanks at its end left out. */
void glass_row(const struct glass *g, int row, char out[static GLASS_TEXT]);
/* The first row that contains the text; -1: none. */
int glass_find(const struct glass *g, const char *text);
/* How many cells differ, by their character or how it is shown. */
long glass_changed(const struct glass *a, const struct glass *b);

#endif
