/* import_ghcn.h - inside src/command: import of weather from GHCN-Daily files, which
 * are no CSV kinds of the book's own. */
#ifndef COMMAND_IMPORT_GHCN_H
#define COMMAND_IMPORT_GHCN_H

#include "command/command.h"

/* True if the arguments of import name one of its layouts. */
bool import_is_ghcn(int argc, char **argv);
/* A book that this call made and nothing went into goes again. */
void import_drop_new(const struct context *ctx, struct book *b);
bool import_ghcn(const struct context *ctx, int argc, char **argv, struct err *e);

#endif
