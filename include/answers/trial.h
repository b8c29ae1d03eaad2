/* trial.h - what a threshold would have called, before it decides anything; and the
 * published ones beside the grower's own. */
#ifndef ANSWERS_TRIAL_H
#define ANSWERS_TRIAL_H

#include "answers/say.h"

struct trial {
	/* Trap-weeks (block rules: block-weeks) of this season that it held for. */
	int n;
	int n_over, n_near, n_under, n_unknown;
	char says[SAY_LINE];  /* "OVER in 4 of 132 trap-weeks this season" */
	char never[SAY_LINE]; /* why it can never apply: "no block grows pear"; "" */
};

/* The rule alone, week by week of the log's season up to log.today, wherever its fields
 * hold. Only what it compares is looked at: not what narrower rules would replace.
 * A trap is asked on the day of its last visit in the week; a week that nobody looked
 * is unknown, the present one is left out until somebody did. What the log does not
 * know of past weeks (which flight it was, degree-days before today) makes them
 * unknown. */
void trial_of(const struct log *l, const struct rule *r, struct trial *out);
/* Why it can never apply, as in struct trial; "" when it can, or may. */
void trial_never(const struct log *l, const struct rule *r, char *out, size_t size);

/* Where and when a rule holds: "apple, disrupted, 1 May to 31 Jul"; "everywhere". */
void say_where(const struct log *l, const struct rule *r, char *out, size_t size);

/* A published threshold, and whether the grower has it. */
struct published_row {
	struct rule rule; /* id 0; lure, farm and block 0 */
	bool is_taken;    /* one of the book's has its source and all its numbers */
	int64_t changed;  /* one of the book's came from it and differs; 0: none */
	int64_t own;      /* the one of the book that is_taken is about; 0: none */
	char pest[CODE_BYTES], brief[SAY_SHORT]; /* "CM", ">=5" */
	char rule_text[SAY_LINE], where[SAY_LINE];
};
struct published_rows {
	struct published_row *items;
	size_t n, cap;
};
/* Those that come with the program, of one pest (0: all), as share/thresholds.csv has
 * them; those of a pest that the book does not have are left out. */
bool published_read(
	struct published_rows *out, const struct log *l, int64_t pest, struct err *e);
void published_free(struct published_rows *p);

/* The note of an own rule that was taken and then changed: what was different in which
 * source, such as "changed from CM2: was >=5, 1 May to 31 Jul"; "" when nothing is.
 * p: all of them. */
void published_changes(const struct published_rows *p, const struct log *l,
	const struct rule *own, char *out, size_t size);

/* The grower's own, as the Thresholds page lists them. */
struct own_row {
	struct rule rule;
	char pest[CODE_BYTES], brief[SAY_SHORT];
	char rule_text[SAY_LINE], where[SAY_LINE];
	char changed[SAY_LINE], never[SAY_LINE]; /* published_changes, trial_never */
	/* Own ones that are judged in its place where they hold, "CM2 (1 May to 31
	 * Jul)"; those in whose place it is judged, "CM1"; "" */
	char replaced[SAY_LINE], replaces[SAY_LINE];
};
struct threshold_list {
	int64_t pest;          /* 0: all */
	char filter[SAY_LINE]; /* "CM", "all pests" */
	struct own_row *own;
	size_t n_own, cap_own;
	struct published_rows published;
};
bool threshold_list_read(
	struct threshold_list *out, const struct log *l, int64_t pest, struct err *e);
void threshold_list_free(struct threshold_list *t);

#endif
