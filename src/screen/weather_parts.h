/* weather_parts.h - what the files of the Weather page share. */
#ifndef SCREEN_WEATHER_PARTS_H
#define SCREEN_WEATHER_PARTS_H

#include "screen/frame.h"
#include "screen/weather_page.h"

/* The picked day; NULL: the list is empty. */
const struct weather_row *weather_picked(const struct weather_page *p);

/* One key into the field where the hand is; a refusal stands in p->message. */
void weather_type(struct weather_page *p, uint32_t ch);
void weather_erase(struct weather_page *p);
bool weather_has_typed(const struct weather_page *p);
void weather_drop(struct weather_page *p);

/* Enter in a field: goes to the next one, wants the day saved, or picks the next
 * missing day. */
struct wish weather_enter(struct weather_page *p);

/* Picks the next missing day below the picked one; false, and says so: none. */
bool weather_pick_missing(struct weather_page *p);
void weather_pick(struct weather_page *p, size_t i);

/* The name of a new station. */
struct wish weather_naming_key(struct weather_page *p, struct input in);

/* "12.5" of a temperature; "" when it is not known. */
void weather_text(double degrees, char out[static SAY_SHORT]);

void weather_draw_list(struct weather_page *p, struct canvas *c, const struct frame *f);

#endif
