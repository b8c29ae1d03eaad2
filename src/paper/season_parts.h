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
	struct season_tops *tops;
};

/* Where numbers stand over the top, mm: no other has room beside one. */
enum { SEASON_TOPS = 64 };
struct season_tops {
	double x[SEASON_TOPS];
	size_t n;
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
/* What the first page has. */
void season_glance(struct leaf *l, const struct season_page *p);
/* The table of flights and what is amiss with them; nothing when there are none. */
void season_flights(struct leaf *l, const struct flight_view *v);
void season_chart_part(
	struct leaf *l, const struct season_page *p, const struct season_chart *c);
/* True if something could be told of a block; else the first page says why not. */
bool season_is_compared(const struct hot_view *v);
void season_hot(struct leaf *l, const struct season_pest *s);
/* True if there is enough for a map. */
bool season_has_map(const struct hot_view *v);
/* What stands above and below it, mm. */
double season_map_words(const struct leaf *l, const struct season_pest *s);
/* The farm's map at l->y, `most` mm high or lower, as wide as the leaf's body, and what
 * is below it; goes to no new page. */
void season_map(struct leaf *l, const struct season_page *p,
	const struct season_pest *s, double most);

#endif
