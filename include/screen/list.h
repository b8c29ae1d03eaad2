/* list.h - rows of columns, and moving among them. */
#ifndef SCREEN_LIST_H
#define SCREEN_LIST_H

#include "answers/say.h"
#include "screen/page.h"

/* Actions that all lists share; a page's own start at LIST_OTHERS. */
enum list_action {
	LIST_UP = 1,
	LIST_DOWN,
	LIST_PAGE_UP,
	LIST_PAGE_DOWN,
	LIST_HOME,
	LIST_END,
	LIST_OTHERS
};

/* The rows of the key table for them, with the number pad's digits as aliases. */
#define LIST_KEYS                                                                      \
	{ { INPUT_UP, 0 }, { INPUT_CHAR, '8' }, LIST_UP, "Up", NULL,                   \
		N_("one row up") },                                                    \
		{ { INPUT_DOWN, 0 }, { INPUT_CHAR, '2' }, LIST_DOWN, "Down", NULL,     \
			N_("one row down") },                                          \
		{ { INPUT_PAGE_UP, 0 }, { INPUT_CHAR, '9' }, LIST_PAGE_UP, "PgUp",     \
			NULL, N_("one page up") },                                     \
		{ { INPUT_PAGE_DOWN, 0 }, { INPUT_CHAR, '3' }, LIST_PAGE_DOWN, "PgDn", \
			NULL, N_("one page down") },                                   \
		{ { INPUT_HOME, 0 }, { INPUT_CHAR, '7' }, LIST_HOME, "Home", NULL,     \
			N_("to the first row") },                                      \
	{                                                                              \
		{ INPUT_END, 0 }, { INPUT_CHAR, '1' }, LIST_END, "End", NULL,          \
			N_("to the last row")                                          \
	}

/* Moves *picked within n rows; `rows` is a page of them. False: not such an action. */
bool list_move(int action, size_t n, int rows, size_t *picked);

enum {
	COLUMNS_MAX = 12,
	COLUMN_NUMBER = 99, /* a number is never cut */
	COLUMN_LABEL = 10,  /* a trap's label should not be */
};

struct list_column {
	const char *head; /* N_(); "" none */
	int least;        /* terminal columns it can shrink to */
	int drop;         /* the lowest is dropped first; 0 = stays */
	int whole;        /* up to this many it is never narrower than what it holds */
	bool right;       /* set to the right */
};

struct columns {
	const struct list_column *col;
	size_t n;
	bool tight;            /* one blank between two even where there is room */
	int want[COLUMNS_MAX]; /* of the widest text; 0 = left out */
	/* set by columns_fit */
	int width[COLUMNS_MAX], at[COLUMNS_MAX]; /* width 0: dropped */
	bool dropped;                            /* one or more are, or are cut */
};

/* Text `text` will stand in column i. */
void columns_want(struct columns *s, size_t i, const char *text);
/* Places the columns from `from` up to column `to` (excluded): drops by order until
 * the least widths fit, then widens from the left up to what is wanted. */
void columns_fit(struct columns *s, int from, int to);
/* Writes a cell; nothing when the column was dropped. */
void columns_cell(const struct columns *s, struct canvas *c, int row, size_t i,
	enum ink ink, const char *text);
/* The heads of all columns. */
void columns_heads(const struct columns *s, struct canvas *c, int row);

enum ink list_ink(enum tone tone);

#endif
