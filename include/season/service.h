/* service.h - when lures and cards are due.
 * Each day in the trap uses 1/life of a lure, or 1/hot life within the kind's hot
 * window; due on the day the sum reaches 1. A card is due at the end of its life or
 * when the moths caught since it was new reach change_at, whichever comes first.
 * A lure or card found gone and not replaced is due on the day it was found so. */
#ifndef SEASON_SERVICE_H
#define SEASON_SERVICE_H

#include "season/diary.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum service_state {
	SERVICE_NONE, /* nothing hangs, or when it was put in is not known */
	SERVICE_FINE,
	SERVICE_NEXT_RUN, /* due before or on the next run */
	SERVICE_DUE,      /* due today */
	SERVICE_OVERDUE,
	SERVICE_STATE_COUNT
};

enum card_mark { CARD_CLEAN, CARD_STIR, CARD_CHANGE, CARD_FLOOR };

struct lure_state {
	enum service_state state;
	int64_t kind;         /* 0 = not known */
	int32_t since, due;   /* DAY_NONE when not known */
	int32_t overdue_days; /* 0.. */
	int32_t age_days;
};

struct card_state {
	enum service_state state;
	int64_t kind;
	int32_t since, due; /* due by age; a full card is due at once */
	int32_t overdue_days;
	int32_t moths; /* on it since it was new, others included; floors as given */
	enum card_mark mark;
	bool stirred_since_mark; /* the glue was stirred after it reached stir_at */
};

/* The day a lure put in on `since` is due. 1 mg, 21 days, 1 May: 22 May. */
int32_t service_lure_due(const struct lure_kind *kind, int32_t since);

/* As at the end of `today`; next_run > today or DAY_NONE (then nothing is
 * SERVICE_NEXT_RUN). Kinds are looked up by id in the lists; a kind that is not
 * there gives SERVICE_NONE. */
struct lure_state service_lure(const struct diary *d, const struct lure_kinds *kinds,
	int32_t today, int32_t next_run);
struct card_state service_card(const struct diary *d, const struct card_kinds *kinds,
	int32_t today, int32_t next_run);

/* One line of a bring list: so many of a kind. */
struct bring {
	bool is_lure; /* else a card */
	int64_t kind;
	int32_t n;
};

struct brings {
	struct bring *items;
	size_t n, cap;
	int32_t unknown; /* traps that hang with a lure of which it is not known when it
			    is due: its kind or its day is not */
};

/* Adds what a trap will need on the run at `run`, given that the run after it is on
 * `after`: each lure and card that is due before `after` would not last until then,
 * so it is changed on this run. Nothing for a trap that does not hang. */
void service_bring(struct brings *out, const struct diary *d,
	const struct lure_kinds *lures, const struct card_kinds *cards, int32_t run,
	int32_t after);

#endif
