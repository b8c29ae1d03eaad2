/* biofix.h - the day from which degree-days are summed, suggested from trap counts.
 * The rules are those in print that a log of counts can evaluate, and one of our own.
 * They differ by pest and place; which one holds is the grower's choice, and a biofix
 * is a judgement: what is suggested here can be overruled by hand.
 *
 * A rule is answered with an interval: the day lies in (after, by], that is after the
 * check `after` and at the latest on the check `by`. From weekly visits it is a week
 * long, and no day inside it is claimed. */
#ifndef SEASON_BIOFIX_H
#define SEASON_BIOFIX_H

#include "season/diary.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct biofix_rule {
	const char *word;   /* of files: "three-evenings" */
	const char *said;   /* one line, marked N_() */
	const char *where;  /* pest and region of the source; "" = any */
	const char *source; /* "" = our own rule */
	int32_t nights_max; /* traps must be read this often; 0 = any log does */
};

/* All rules, in the order they are offered; *n of them. The first is our own. */
const struct biofix_rule *biofix_rules(size_t *n);
/* NULL: no such word. */
const struct biofix_rule *biofix_rule_find(const char *word);

enum biofix_state {
	BIOFIX_NONE_YET,
	BIOFIX_WAITS, /* caught at the last check: the next one decides */
	BIOFIX_DATED,
	/* the traps are not read often enough for the rule to tell; read_nights says
	 * how often they are */
	BIOFIX_READ_TOO_SELDOM,
	BIOFIX_STATE_COUNT
};

/* Words of files: "none yet", "waits", "dated", "read too seldom". */
const char *biofix_state_word(enum biofix_state s);

enum { BIOFIX_SEEN_MAX = 12 };

/* A visit that the answer rests on: diaries[diary]->visits[visit]. */
struct biofix_seen {
	size_t diary, visit;
};

struct biofix {
	enum biofix_state state;
	int32_t after, by; /* with BIOFIX_DATED and BIOFIX_WAITS, else DAY_NONE */
	bool or_earlier; /* flight may have begun before anyone could have seen it so */
	bool is_disputed; /* scouts do not agree on a visit that may move it earlier */
	int32_t read_nights; /* usual nights between two readings; 0: none read */
	struct biofix_seen seen[BIOFIX_SEEN_MAX]; /* by date; empty for a fixed date */
	size_t n_seen, n_unlisted;                /* listed, and further ones */
};

/* What the rule says of the traps of one pest on one farm, visits of first..last only.
 * first: the season's first day; last: its last, or the day it is asked. r: from
 * biofix_rules. */
struct biofix biofix_suggest(const struct biofix_rule *r,
	const struct diary *const *diaries, size_t n, int32_t first, int32_t last);

#endif
