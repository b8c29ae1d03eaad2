/* printer.h - inside src/command: to the system's printer, by the program lp. */
#ifndef COMMAND_PRINTER_H
#define COMMAND_PRINTER_H

#include "papers.h"

#include <sys/types.h>

enum { PRINTER_SAYS_BYTES = 256 };

/* A job while lp has it. Zero-initialise. */
struct printer {
	/* lp gets no terminal: beside pages it can ask for no password and no key that
	 * ends or stops these reaches it. Set by whoever sends. */
	bool without_terminal;
	pid_t lp; /* 0: none is under way */
	int said; /* a file without a name that lp writes into */
};

enum printer_state {
	PRINTER_BUSY,    /* lp has not ended */
	PRINTER_TOOK,    /* it told the job's name, or nothing */
	PRINTER_REFUSED, /* it told why, or nothing */
};

/* Hands the papers to lp, for the printer named (NULL: the system's own choice), and
 * comes back at once. None may be under way. ERR_NOT_FOUND: there is no lp here. */
bool printer_send(
	struct printer *j, const struct papers *p, const char *name, struct err *e);
/* How far it is; `wait` until lp has ended. `says` is then the first line that lp
 * wrote, "" if none; it is of a foreign program and shown as it is. */
enum printer_state printer_look(
	struct printer *j, bool wait, char says[static PRINTER_SAYS_BYTES]);

#endif
