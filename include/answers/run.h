/* run.h - the weekly trip round one farm's traps. */
#ifndef ANSWERS_RUN_H
#define ANSWERS_RUN_H

#include "answers/entry_bar.h"

enum { RUN_LAST = 4 };

struct run_trap {
	int64_t trap, block_id;
	char label[NAME_BYTES], block[NAME_BYTES], pest[CODE_BYTES];
	char lure[NAME_BYTES], card[NAME_BYTES]; /* the kinds that it gets */
	int64_t lure_kind, card_kind;
	int32_t card_full_at; /* moths that the card holds; 0: not known */
	bool is_border, is_disrupted, hangs;
	/* the last four weekly catches before this run, oldest first: "2", "30+", "-"
	 * not read, "" none */
	char last[RUN_LAST][8];
	int32_t last_count[RUN_LAST]; /* raw, of the last four that were counted */
	size_t n_last_count;
	/* entered in this run */
	bool open;          /* nothing yet, or no more than a lure changed (below) */
	struct visit visit; /* valid unless open */
	struct visit_words words;
	char visit_text[SAY_SHORT];
	/* A lure changed on the run's very day, outside the run: it goes into the visit
	 * that is made of that day. */
	bool is_serviced;
	struct visit serviced;
	struct visit_words serviced_words;
	/* its answer, as at the visit's day (valid unless open) */
	char week_text[SAY_SHORT];     /* "7.0"; "2.0 14n" */
	char week_says[SAY_SHORT * 2]; /* "7.0 a week"; "2.0 a week over 14 nights" */
	char rule_text[SAY_SHORT];     /* ">=5"; "-" */
	char verdict_text[SAY_SHORT];  /* "OVER"; "no threshold" */
	/* what an unknown lacks: "6 moths in 35 nights cannot be divided"; "" */
	char lacks[SAY_LINE];
	enum tone verdict_tone;
	bool is_over;
	/* what to do there; after a visit what it left undone */
	char service[SAY_SHORT * 2];
	bool lure_due, card_due; /* by the next run at the latest */
	/* whether people may go there, at log_now: FREE, BARRED or UNKNOWN */
	enum waiting_state entry;
	/* "no entry till Wed 06:00", "entry not known"; "" */
	char barred[SAY_SHORT * 3];
};

struct run {
	int64_t farm;
	char farm_name[NAME_BYTES];
	int32_t day; /* the run's date */
	int32_t today;
	char title_day[DAY_TEXT_SIZE];   /* "Tue 21 July 2026 · week 30" */
	char title_short[DAY_TEXT_SIZE]; /* "Tue 21 Jul" */
	char last_text[SAY_SHORT * 2];   /* "last run Tue 14 Jul, 7 nights" */
	/* in driving order; those that hang, are missing or were visited in this run */
	struct run_trap *traps;
	size_t n, cap;
	int done, over;
	int lures_left, cards_left; /* due and not changed yet */
	int barred; /* traps where entry is barred or not known, open or not */
	/* "no entry: Pond block until Wed 22 Jul 06:00"; "" */
	char barred_text[SAY_LINE * 2];
	char barred_brief[SAY_LINE]; /* "Pond block: no entry till Wed 06:00" */
	int barred_blocks;
};

/* The run of `farm` on `day`: a trap is open while it has no visit on that date or the
 * limits.open_days days before it. The log must have been read with today = day. */
void run_of(const struct log *l, int64_t farm, int32_t day, struct run *out);
/* Fills scouts and notes of this run's visits, lures changed that day included, from
 * the book. */
bool run_read_words(struct run *r, struct book *b, struct err *e);
void run_free(struct run *r);

/* The weekly catches of the last visits before a day, oldest first, as in run_trap. */
void run_last_catches(const struct diary *d, int32_t before, const struct limits *l,
	char last[static RUN_LAST][8]);

/* True if the count should be asked for once more (judge_odd_count). */
bool run_is_odd(const struct run_trap *t, int32_t count, const struct limits *l);

#endif
