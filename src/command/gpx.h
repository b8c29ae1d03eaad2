/* gpx.h - inside src/command: waypoints in and out, which are no CSV kind. */
#ifndef COMMAND_GPX_H
#define COMMAND_GPX_H

#include "command/command.h"

/* True if the arguments of import or export name the waypoints. */
bool gpx_is_asked(int argc, char **argv);
bool gpx_take_in(const struct context *ctx, int argc, char **argv, struct err *e);
bool gpx_give_out(const struct context *ctx, int argc, char **argv, struct err *e);

#endif
