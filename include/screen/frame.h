/* frame.h - what stands round the content of a page, and where there is room left.
 * From the top: title, the line under it, a rule; content; a rule, status, message,
 * key line. Lower windows go without the line under the title (below 12 rows), the
 * rules (10), status (8) and key line (6). A message takes as many rows as it needs, up
 * to a quarter of the window. */
#ifndef SCREEN_FRAME_H
#define SCREEN_FRAME_H

#include "screen/page.h"

struct frame {
	const char *title, *right;
	/* It too says what is shown, a season or a unit: the title is cut beside it,
	 * else the right text goes when the title has no room. */
	bool keeps_right;
	const char *under;                 /* NULL: none */
	const char *status, *status_right; /* NULL: none */
	const struct message *message;     /* NULL: none */
	struct key_rows keys;
	/* set by frame_draw */
	int first, last; /* rows left for content; last < first: no room */
	int message_row;
	bool ruled; /* a rule above and below the content */
};

enum { FRAME_WIDE = 60 }; /* from this width long dates fit beside the title */

/* Empties the canvas and draws. False below 20x4: the canvas holds a sentence. */
bool frame_draw(struct canvas *c, struct frame *f);
/* Marks the rules, if any, when rows precede the first or follow the last one. */
void frame_more(struct canvas *c, const struct frame *f, bool above, bool below);

#endif
