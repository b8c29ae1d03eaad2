/* service_parts.h - what the files of the service page share. */
#ifndef SCREEN_SERVICE_PARTS_H
#define SCREEN_SERVICE_PARTS_H

#include "base/buf.h"
#include "screen/service_page.h"

/* Rows that can be picked: items, then a bring list a farm, then that of all farms,
 * then the shelf. */
size_t service_count(const struct service_page *p);
/* Bring lists among them. */
size_t service_brings(const struct service_page *p);
/* Finds which of them are shown, if that is not known. */
void service_find(struct service_page *p);
/* The picked lure or card; NULL: another row. */
const struct due_item *service_picked_item(const struct service_page *p);

enum { SERVICE_TEXT = 256 };
/* Row i that is no item. */
void service_say_row(const struct service_page *p, size_t i, struct buf *out);
/* "no entry till Wed 06:00, 3 d overdue": who changes it goes into the block. */
void service_say_state(const struct due_item *item, char out[static SERVICE_TEXT]);
/* The picked row in full. */
void service_say_picked(const struct service_page *p, char out[static SERVICE_TEXT]);

struct frame;
void service_draw_rows(struct service_page *p, struct canvas *c, const struct frame *f);

#endif
