/* flight_parts.h - a season's visits of the traps that a Flight page is about. */
#ifndef ANSWERS_FLIGHT_PARTS_H
#define ANSWERS_FLIGHT_PARTS_H

#include "answers/flight.h"

/* One season, read anew from the book. */
struct flight_season {
	int32_t start, end; /* first and last day looked at */
	struct visits visits;
	struct diary *diaries; /* one a trap */
	const struct diary **list;
	size_t n;
	struct flight_series series; /* n = 0: nothing was read */
};

bool flight_season_read(struct flight_season *s, struct book *b, const struct log *l,
	const struct flight_ask *ask, int season, struct err *e);
void flight_season_free(struct flight_season *s);

/* True if the trap (index in log.traps) is one that is asked about. */
bool flight_asks_for(const struct log *l, const struct flight_ask *ask, size_t trap);

/* Weeks between the season's first day and the first week of its series. */
int flight_lead(const struct flight_season *s);
/* The chart line of a season whose first `lead` weeks were before its own series. */
void flight_fill_line(
	struct flight_line *line, const struct flight_season *s, int season, int lead);

/* Rows of the table and the peaks' marks, out of v->found. */
void flight_fill_rows(struct flight_view *v, const struct flight_season *s);
void flight_add_mark(struct flight_view *v, enum flight_mark_kind kind, int32_t day);

/* Degree-days since the season's biofix at the end of each week of a line; of the
 * present season also their sum in words and at each flight's half-catch day. */
bool flight_fill_line_heat(struct flight_line *line, struct book *b,
	const struct log *l, const struct flight_ask *ask, int32_t end, struct err *e);
bool flight_fill_heat(struct flight_view *v, struct book *b, const struct log *l,
	const struct flight_season *s, struct err *e);

/* Biofix set, suggested, of earlier seasons. */
void flight_fill_biofix(
	struct flight_view *v, const struct log *l, const struct flight_season *s);

#endif
