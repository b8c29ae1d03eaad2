/* told.h - a list whose rows are a head and some sentences below it, each wrapped to
 * the width of the page. */
#ifndef SCREEN_TOLD_H
#define SCREEN_TOLD_H

#include "answers/say.h"
#include "screen/canvas.h"
#include "screen/sift.h"

enum { TOLD_SENTENCES = 3 };

struct told_row {
	enum tone tone;
	char head[SAY_LINE * 2];
	const char *sentence[TOLD_SENTENCES]; /* "" or NULL: none; borrowed */
};

struct told {
	struct told_row *rows; /* owned */
	size_t n, cap;
	size_t picked; /* of the rows; SIZE_MAX: none is shown */
	size_t top;    /* of those that are shown */
	int shown;     /* rows of the list in the last frame, at least 1 */
	struct sift sift;
};

/* A new row at the end, empty. */
struct told_row *told_add(struct told *t);
void told_clear(struct told *t);
void told_free(struct told *t);
/* Finds which rows are shown, if that is not known; *picked may give way. */
void told_find(struct told *t);
/* Shows all from the first row on. */
void told_start(struct told *t);
/* What is typed to look for something, and moving; false: the key is for the page. */
bool told_key(struct told *t, int action, struct input in, struct message *m);
/* Draws it in the rows first..last with the picked row whole, if it fits; the cursor is
 * on its head. Returns true if rows follow below; *above: some are above. */
bool told_draw(struct told *t, struct canvas *c, int first, int last, bool *above);

#endif
