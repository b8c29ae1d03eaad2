/* formats.h - inside src/command: the open formats beside CSV, of import and export:
 * waypoints (GPX), maps (GeoJSON), calendars (iCalendar). */
#ifndef COMMAND_FORMATS_H
#define COMMAND_FORMATS_H

#include "command/command.h"

/* True if the arguments of import or export name one of them. */
bool formats_are_asked(int argc, char **argv);
bool formats_take_in(const struct context *ctx, int argc, char **argv, struct err *e);
bool formats_give_out(const struct context *ctx, int argc, char **argv, struct err *e);

#endif
