/* page.h - what all pages have in common. A page is a struct, a function that takes a
 * key and a function that draws. It never waits and never saves: it says what it
 * wants; the loop in command does it and tells the page. */
#ifndef SCREEN_PAGE_H
#define SCREEN_PAGE_H

#include "screen/canvas.h"
#include "screen/input.h"
#include "screen/wish.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* One key of a page. The same table feeds the dispatcher, the key line, the help page
 * and the test that looks every key up in the manual. */
struct key_row {
	struct input in;    /* the key; INPUT_CHAR with ch = 0: any digit */
	struct input alias; /* another key for the same; INPUT_NONE: none */
	int action;         /* the page's own enum, never 0 */
	const char *key;    /* as it is written: "Enter", "+", "0-9" */
	const char *word;   /* in the key line, N_(): "keep, next"; NULL: not there */
	const char *help;   /* on the help page, N_(): one sentence */
};

struct key_rows {
	const struct key_row *rows;
	size_t n;
};

/* The action for a key, 0 when the page has none. */
int keys_find(struct key_rows keys, struct input in);

/* The message line: what just happened, in words. In one that is too long paths lose
 * their middle. */
struct message {
	bool is_fault;
	char text[256];
};
void message_set(struct message *m, bool is_fault, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));
/* What is typed behind its prompt: the end of it that has room in one line, and behind
 * it what the last key said (borrowed). Returns the column of the cursor. */
int message_typed(struct message *m, const struct message *said, const char *prompt,
	const char *text, int cols);

/* A key that the page has no use for: says so, and where the keys are. */
void page_no_key(struct message *m, struct input in);

/* Keeps `picked` within 0..n-1 and `top` so that it shows in `rows` rows. */
void page_scroll(size_t n, int rows, size_t *picked, size_t *top);
/* The same, with a row above and one below the picked one where there is room. */
void page_scroll_near(size_t n, int rows, size_t *picked, size_t *top);

#endif
