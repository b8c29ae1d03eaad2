/* hotspots_page.h - which block, which edge: a ranked list in words, a map, and what
 * the catch does with the distance to a source. */
#ifndef SCREEN_HOTSPOTS_PAGE_H
#define SCREEN_HOTSPOTS_PAGE_H

#include "answers/hotspots.h"
#include "screen/sift.h"

enum hotspots_show {
	HOTSPOTS_LIST,
	HOTSPOTS_NUMBERS, /* behind the picked row of the list */
	HOTSPOTS_MAP,
	HOTSPOTS_SOURCES,
};

struct hotspots_page {
	const struct hot_view *view; /* borrowed; set by hotspots_page_show */
	const char *right;           /* set to the right of the title; borrowed */
	enum hotspots_show show;
	size_t picked; /* of the view's rows; SIZE_MAX: none is shown */
	size_t top;    /* of the list */
	struct sift sift;
	size_t text_top; /* of what is read */
	size_t trap;     /* picked on the map: index of view->traps */
	int rows;        /* of the list or the text in the last frame */
	struct message message;
	/* set by a key; the loop changes what is asked and clears them: -1, 0, 1 */
	int turn_farm, turn_pest, turn_season, turn_flight, turn_alike;
};

/* Of the list the columns are dropped in this order: ratio, rate; name and answer stay.
 * The picked row's sentence stands below it, then sources that the catch falls away
 * from and what was left out, as far as there is room; the answer as a whole with the
 * numbers. On the map the arrows go to the next trap in their direction; a digit is a
 * trap and the class of its catch, ? one that was not read, o one that is not compared,
 * a letter a source, dots its outline; the picked trap is reversed, those near it
 * underlined and named below. As the map gets lower these go: what the digits mean, the
 * sources' names, the scale. */
struct key_rows hotspots_page_keys(void);
/* What the marks on the page mean, for the help page: up to NULL, N_(). */
const char *const *hotspots_page_notes(void);
struct wish hotspots_page_key(struct hotspots_page *p, struct input in);
void hotspots_page_draw(struct hotspots_page *p, struct canvas *c);

/* Shows a view (again); the row in the same place stays picked. */
void hotspots_page_show(struct hotspots_page *p, const struct hot_view *view);
/* Picks a row of it; shows all when it would not be shown. */
void hotspots_page_pick(struct hotspots_page *p, size_t row);
void hotspots_page_free(struct hotspots_page *p);

#endif
