/* season_parts.h - inside src/paper: what the files of the season page share. */
#ifndef PAPER_SEASON_PARTS_H
#define PAPER_SEASON_PARTS_H

#include "leaf.h"
#include "paper/season.h"

#include <stdbool.h>

/* From days and catches to millimetres. */
struct season_scale {
	struct pdf_box box; /* within the axes */
	int32_t from, to;   /* days at its sides */
	double step, top;   /* between two marks of the axis of catches; at its end */
};

double season_x(const struct season_scale *s, int32_t day);
double season_y(const struct season_scale *s, double rate);

/* What a plot with its axes and marks takes, mm. */
extern const double season_plot_height;
/* Sets the plot of a chart at l->y and moves below it; c->first_day is a day. */
void season_plot(
	struct leaf *l, const struct season_page *p, const struct season_chart *c);
/* Within it: thresholds; biofix, peaks, what was done. */
void season_plot_limits(
	struct leaf *l, const struct season_scale *s, const struct season_chart *c);
void season_plot_marks(struct leaf *l, const struct season_scale *s,
	const struct season_chart *c, const struct flight_biofix *b);

/* The last season's line, or NULL. */
const struct flight_line *season_last_year(const struct season_chart *c);

/* A paragraph, after which *text is empty. */
void season_set(
	struct leaf *l, double indent, const struct pdf_type *type, struct buf *text);
/* "name: text"; nothing when there is no text. */
void season_named(struct leaf *l, const char *name, const char *text);
/* The table of flights; nothing when there are none. */
void season_flights(struct leaf *l, const struct flight_view *v);
void season_chart_part(
	struct leaf *l, const struct season_page *p, const struct season_chart *c);
void season_hot(
	struct leaf *l, const struct season_page *p, const struct season_pest *s);
/* True if there is enough for a map. */
bool season_has_map(const struct hot_view *v);
/* The farm's map, or why there is none. */
void season_map(
	struct leaf *l, const struct season_page *p, const struct season_pest *s);

#endif
