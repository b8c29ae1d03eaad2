/* hotspots_parts.h - what the files of the Hot spots page share: what each trap
 * caught in a window, the traps that may be compared, rows. A season's readings are in
 * hotspots_season.h, the words of rows in hotspots_words.h. */
#ifndef ANSWERS_HOTSPOTS_PARTS_H
#define ANSWERS_HOTSPOTS_PARTS_H

#include "answers/hotspots.h"
#include "hotspots_season.h"

enum { HOT_NO_GROUP = -1 };

/* What one trap caught in the window. */
struct hot_take {
	int trap; /* index in log.traps */
	struct hot_catch catch;
	bool at_least;
	int n_disputed;      /* visits left out: scouts do not agree on them */
	int32_t first, last; /* first night, last check; DAY_NONE: never read */
	int64_t lure;        /* the kind that hung most of the nights */
	enum condition condition;
	int group;     /* index of hot_field.alikes, or HOT_NO_GROUP */
	bool is_short; /* read for less than half of the nights of its like */
};

/* All traps of a farm and pest in a window, and those that are alike. */
struct hot_field {
	struct hot_take *takes; /* by driving order */
	size_t n;
	struct hot_alike *alikes; /* most traps first */
	size_t n_alikes;
};
void hot_field_take(struct hot_field *f, const struct log *l,
	const struct hot_season *s, const struct hot_ask *ask, struct hot_window w);
void hot_field_free(struct hot_field *f);

/* The traps that are compared, in the form that season wants. */
struct hot_set {
	const struct log *log;
	size_t n;
	const struct hot_take **takes;
	struct hot_catch *catches;
	bool *in;     /* the traps that a row is about */
	int *stratum; /* number of the trap's block */
};
enum hot_choice {
	HOT_ALL,
	HOT_IN_BLOCKS, /* without those that hang outside their block */
	HOT_SIDES,     /* border and interior of blocks that have both */
	HOT_LOCATED,
};
void hot_set_of(struct hot_set *set, const struct log *l, const struct hot_field *f,
	size_t group, enum hot_choice choice);
void hot_set_free(struct hot_set *set);

struct hot_rows {
	struct hot_row *items;
	size_t n, cap;
};

/* Adds a row about the traps of set->in: its numbers up to the shuffle, no grade.
 * Borrowed until the next is added. */
struct hot_row *hot_rows_add(
	struct hot_rows *rows, const struct hot_set *set, enum hot_what what);
/* Shuffles whole traps, within strata if that is asked; for a row that has enough. */
void hot_row_shuffle(struct hot_row *row, const struct hot_set *set, bool in_strata);
/* Adjusts the rows first.. for being looked at together, and grades them. */
void hot_rows_grade(struct hot_rows *rows, size_t first);
/* Grades by luck alone, never above HOT_HIGHER. */
void hot_row_grade_low(struct hot_row *row);
/* Hottest first: grade, then rate. */
void hot_rows_sort(struct hot_rows *rows, size_t first);

/* Rows of one kind, graded and in words, hottest first; no block where none can come
 * to the grade `least`. */
void hot_add_blocks(
	struct hot_rows *rows, const struct hot_set *set, enum hot_grade least);
void hot_add_borders(struct hot_rows *rows, const struct log *l,
	const struct hot_field *f, size_t group);
void hot_add_traps(struct hot_rows *rows, const struct hot_set *set);
/* set: of located traps. */
void hot_add_near(struct hot_rows *rows, const struct hot_set *set, double band);

/* Fills `earlier` of the block rows: earlier seasons and the flights of this one. */
bool hot_fill_earlier(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_ask *ask, const struct hot_season *now, struct err *e);

/* Border traps on the source's side of their block, and the others; false: there are
 * not both, or the source lies among the traps. */
bool hot_facing(
	const struct hot_view *v, const struct hot_source *s, struct hot_split *out);

/* Distances. located: of traps with a position. */
struct position hot_position(const struct hot_set *located, size_t i);
/* All of them; the caller frees the list. */
struct position *hot_positions(const struct hot_set *located);
double hot_band(const struct hot_set *located);
/* Traps and sources on the map, gradients, what is missing for them. */
bool hot_fill_map(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_field *f, const struct hot_ask *ask, struct err *e);

#endif
