/* report.h - inside src/command: what the reporting commands share. */
#ifndef COMMAND_REPORT_H
#define COMMAND_REPORT_H

#include "answers/flight.h"
#include "answers/log.h"
#include "command/command.h"
#include "paper/sheet.h"

struct report {
	struct book *book;
	struct log log;
	int64_t farm, pest; /* 0 = all */
};

/* Opens the book of ctx to read and reads the log for the farm and pest named (NULL =
 * all). Zero-initialise r; close it in any case. */
bool report_open(const struct context *ctx, const char *farm, const char *pest,
	struct report *r, struct err *e);
void report_close(struct report *r);

/* The text of each command: width `cols`, UTF-8 marks (out_text makes them ASCII). */
void report_week(const struct report *r, int cols, struct buf *out);
bool report_due(const struct report *r, int cols, struct buf *out, struct err *e);
/* The season that is asked for. */
bool report_flight(const struct report *r, const struct flight_ask *a, int cols,
	struct buf *out, struct err *e);
/* Every farm's sheet, each from a new page. form->caution* are filled in here. */
bool report_sheets(
	const struct report *r, struct sheet_form form, struct buf *out, struct err *e);

#endif
