/* report.h - inside src/command: what the reporting commands share. */
#ifndef COMMAND_REPORT_H
#define COMMAND_REPORT_H

#include "answers/flight.h"
#include "answers/log.h"
#include "answers/record.h"
#include "command/command.h"
#include "paper/sheet.h"
#include "papers.h"

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

/* The block of that name on the farm of r; ERR_NOT_FOUND names those that it has. */
bool report_find_block(
	const struct report *r, const char *name, int64_t *block, struct err *e);
/* --season as the year that a season began in; without (NULL) 0: the one of today. */
bool report_read_year(const char *text, int *season, struct err *e);

/* The text of each command: width `cols`, UTF-8 marks (out_text makes them ASCII). */
void report_week(const struct report *r, int cols, struct buf *out);
bool report_due(const struct report *r, int cols, struct buf *out, struct err *e);
/* The season that is asked for. */
bool report_flight(const struct report *r, const struct flight_ask *a, int cols,
	struct buf *out, struct err *e);
/* Every farm's sheet, each from a new page, as text or PDF. Fills form->caution*. */
bool report_sheets(const struct report *r, struct sheet_form *form, struct papers *out,
	struct err *e);

/* A block's season, then the record of its treatments, with what is said of both. */
bool report_block(const struct report *r, const struct record_ask *a, struct buf *out,
	struct err *e);

/* The season of the farm that the day lies in; of all (0) the one that began first. */
struct record_ask report_season_of(const struct log *l, int64_t farm, int32_t day);
/* Adds the record of treatments, with what is to be said of it and the cautions. */
bool report_record(const struct report *r, const struct record_ask *a, int cols,
	struct buf *out, struct err *e);

#endif
