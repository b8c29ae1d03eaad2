/* sift.h - which rows of a list are shown while it is narrowed: found once, then kept
 * until other letters are typed or other rows come. A page's picked row stays an index
 * of all its rows. */
#ifndef SCREEN_SIFT_H
#define SCREEN_SIFT_H

#include "screen/narrow.h"

struct sift {
	struct narrow narrow;
	size_t *rows;  /* those that are shown, in the order of the list; owned */
	size_t n, cap; /* of them */
	size_t all;    /* of the list */
	bool is_found;
	size_t was; /* picked before nothing was shown */
};

/* True if row i of a page contains the text, in what it shows. */
typedef bool sift_has(const void *page, size_t i, const char *text);

/* Other rows came. */
void sift_forget(struct sift *s);
/* Finds what is shown, unless that is known, and leaves *picked on a shown row: itself,
 * else the nearest below, else the last; SIZE_MAX when none of them is shown. */
void sift_find(
	struct sift *s, size_t all, sift_has *has, const void *page, size_t *picked);
/* Shows all again. */
void sift_end(struct sift *s);
void sift_free(struct sift *s);

/* What is typed to look for something; Esc shows all again before it goes back. False:
 * the key is for the page. */
bool sift_key(struct sift *s, struct input in, struct message *m);
/* As list_move, among the rows that are shown. */
bool sift_move(const struct sift *s, int action, int rows, size_t *picked);

/* Where the row stands among those that are shown; if it is not, where the next one
 * does, up to n. */
size_t sift_place(const struct sift *s, size_t row);
bool sift_shows(const struct sift *s, size_t row);

/* As narrow_say. */
int sift_say(const struct sift *s, struct message *m);
/* As narrow_keys. */
struct key_rows sift_keys(struct sift *s, struct key_rows page);
/* Adds " · 3 of 40" to the title of a list that is narrowed. */
void sift_title(const struct sift *s, char *title, size_t size);

#endif
