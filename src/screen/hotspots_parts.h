/* hotspots_parts.h - what the files of the Hot spots page share. */
#ifndef SCREEN_HOTSPOTS_PARTS_H
#define SCREEN_HOTSPOTS_PARTS_H

#include "prose.h"
#include "screen/frame.h"
#include "screen/hotspots_page.h"

/* Finds which rows of the view are shown, if that is not known. */
void hotspots_find(struct hotspots_page *p);
/* The ranked rows and below them the picked one's sentence, in f->first..f->last. */
void hotspots_list_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f);

/* Behind the picked row; about the sources. To be read from p->text_top on. */
void hotspots_numbers_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f);
void hotspots_sources_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f);
/* What was left out, is clumped, cannot be said. */
void hotspots_add_rest(struct prose *to, const struct hot_view *v);

void hotspots_map_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f);
/* What the picked trap caught, for a page of `cols` columns, and which are near it. */
enum { SPOTS_STATUS = 2 * SAY_LINE };
void hotspots_map_say(const struct hotspots_page *p, int cols,
	char status[static SPOTS_STATUS], struct message *m);
/* True if some trap has a position; p->trap is then one of those. */
bool hotspots_pick_trap(struct hotspots_page *p);
/* To the next located trap: towards x east or y north, one of them 1 or -1, the other
 * 0; in driving order. */
void hotspots_move(struct hotspots_page *p, int x, int y);
void hotspots_next_trap(struct hotspots_page *p);

#endif
