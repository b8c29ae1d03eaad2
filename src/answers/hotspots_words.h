/* hotspots_words.h - the Hot spots page in plain words. */
#ifndef ANSWERS_HOTSPOTS_WORDS_H
#define ANSWERS_HOTSPOTS_WORDS_H

#include "hotspots_parts.h"

/* The words of a row whose numbers stand; the set it was made of. */
void hot_say_row(struct hot_row *row, const struct hot_set *set);
/* "4.5 times the rest"; "2.6 a trap and week, 0.6 elsewhere" */
void hot_say_times(const struct hot_row *row, char out[static SAY_LINE]);
void hot_say_rates(const struct hot_row *row, char out[static SAY_LINE]);
void hot_say_power(struct hot_rows *rows, const struct hot_set *set);
/* The whole in a sentence or two. */
void hot_say_all(struct hot_view *v, const struct hot_set *set);
void hot_say_window(struct hot_view *v, const struct hot_field *f, size_t group);
void hot_say_left_out(struct hot_view *v, const struct log *l,
	const struct hot_field *f, size_t group);
void hot_say_others(struct hot_view *v, const struct log *l, const struct hot_field *f);
void hot_say_clumping(struct hot_view *v, const struct hot_set *set);
/* Adds a sentence after a blank. */
void hot_add(char *out, size_t size, const char *sentence);
/* "0.0045", "under 0.0001" */
void hot_say_p(double p, char out[static SAY_SHORT]);

/* Border rows of a block: `earlier` tells of weeks in which it ran ahead of the
 * interior, the sentence on which side it caught most. */
void hot_say_edges(struct hot_view *v, const struct log *l, const struct hot_season *s,
	struct hot_window of);

/* What the catch does going away from a source; what cannot be said for want of
 * positions. */
void hot_say_gradient(struct hot_source *s, const struct hot_view *v);
void hot_say_missing(struct hot_view *v, const struct hot_set *located);

#endif
