/* season_words.h - inside src/paper: the sentences that the season page has as text and
 * as a PDF. Each is added to *out; none leaves *out without a text. */
#ifndef PAPER_SEASON_WORDS_H
#define PAPER_SEASON_WORDS_H

#include "base/buf.h"
#include "base/day.h"
#include "paper/season.h"

#include <stddef.h>

enum { SEASON_GLANCE = 9, SEASON_FLIGHT = 9 };

/* Cells of a row of the table at a glance, of the one of flights; NULL: titles. */
void season_glance_cells(
	const struct season_chart *c, const char *cells[static SEASON_GLANCE]);
void season_flight_cells(
	const struct flight_row *r, const char *cells[static SEASON_FLIGHT]);

/* SEASON_FLIGHT, or one less where the last cell is empty in all rows. */
size_t season_flight_columns(const struct flight_view *v);

/* "27 Jul" */
void season_say_day(int32_t day, char out[static DAY_TEXT_SIZE]);
/* "Addermoor, season 2026"; the days that it is about and the one it was told on. */
void season_say_title(const struct season_page *p, struct buf *out);
void season_say_days(
	const struct season_page *p, const struct season_form *form, struct buf *out);
/* Which pest, and what its hot spots say as a whole. */
void season_say_hot(const struct season_pest *s, struct buf *out);
/* What the table at a glance has in its columns. */
const char *season_glance_note(void);
/* What is amiss with its flights, each with its name; "". */
void season_say_flags(const struct flight_view *v, struct buf *out);
/* What it is judged by; the numbers in brackets are those of the sources. */
void season_say_limits(const struct season_chart *c, struct buf *out);
void season_say_lures(const struct season_chart *c, struct buf *out);
/* How often it was over its threshold, and that was answered; "" without one. */
void season_say_over(const struct season_chart *c, struct buf *out);
/* Alert i, unless it was answered, as a piece of the list of those that were not: with
 * its day if it is that day's first, and what parts it from the next piece; "". */
void season_say_open(const struct season_chart *c, size_t i, struct buf *out);
/* One that was answered, with what the catch did after. */
void season_say_answer(const struct season_alert *a, struct buf *out);
void season_say_act(const struct season_act *a, struct buf *out);
/* Instead of them. */
const char *season_no_acts(void);
const char *season_hot_caution(void);
/* What the judgement goes by: above the sources. */
const char *season_as_of_now(void);
/* "[2] ..." */
void season_say_source(const struct season_page *p, size_t i, struct buf *out);

#endif
