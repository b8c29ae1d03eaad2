/* hotspots_parts.h - what the files of the Hot spots page share: a season's readings,
 * what each trap caught in a window, the traps that may be compared, rows. Their words
 * are in hotspots_words.h. */
#ifndef ANSWERS_HOTSPOTS_PARTS_H
#define ANSWERS_HOTSPOTS_PARTS_H

#include "answers/hotspots.h"
#include "flight_parts.h"

/* One season of a pest on a farm: the present one out of the log, an earlier one read
 * from the book. */
struct hot_season {
	int year;
	int32_t start, end;          /* first and last day */
	const struct diary **of;     /* by index of log.traps; NULL: never visited */
	struct flight_series series; /* n = 0: nothing was read */
	struct flights found;
	struct flight_season read; /* of an earlier season */
};
bool hot_season_read(struct hot_season *s, struct book *b, const struct log *l,
	const struct hot_ask *ask, struct err *e);
void hot_season_free(struct hot_season *s);

/* Nights from..to-1. An interval belongs where its middle lies; its moths stay
 * whole. */
struct hot_window {
	int32_t from, to;
};
/* flight 0, or one that was not found: the whole season. */
struct hot_window hot_window_of(const struct hot_season *s, int flight);

enum { HOT_NO_GROUP = -1 };

/* What one trap caught in the window. */
struct hot_take {
	int trap; /* index in log.traps */
	struct hot_catch catch;
	bool at_least;
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

/* Rows of one kind, graded and in words, hottest first. */
void hot_add_blocks(struct hot_rows *rows, const struct hot_set *set);
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
