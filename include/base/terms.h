/* terms.h - the fixed vocabularies of the trade, one table each. The same words
 * stand in the book, in CSV files and (translated) on the pages. */
#ifndef BASE_TERMS_H
#define BASE_TERMS_H

#include <stdbool.h>

/* What a visit to a trap found; see `struct outcome_facts` for what each means. */
enum outcome {
	OUTCOME_HUNG,
	OUTCOME_COUNTED,
	OUTCOME_FLOOR,   /* card full or fouled: at least this many */
	OUTCOME_SKIPPED, /* nobody looked; the interval goes on */
	OUTCOME_SPOILED, /* trap down, card lost, lure missing, blocked; put right */
	OUTCOME_MISSING, /* trap gone */
	OUTCOME_PULLED,
	OUTCOME_COUNT
};

enum reason {
	REASON_NONE,
	REASON_REENTRY, /* of a skipped visit */
	REASON_WEATHER,
	REASON_TIME,
	REASON_OTHER,
	REASON_DOWN, /* of a spoiled one */
	REASON_CARD_LOST,
	REASON_LURE_MISSING,
	REASON_BLOCKED,
	REASON_COUNT
};

enum place { PLACE_NONE, PLACE_BORDER, PLACE_INTERIOR, PLACE_OUTSIDE, PLACE_COUNT };

enum condition {
	CONDITION_NONE,
	CONDITION_CONVENTIONAL,
	CONDITION_DISRUPTED,
	CONDITION_COUNT
};

enum measure {
	MEASURE_TRAP_WEEK,
	MEASURE_BLOCK_WEEK,
	MEASURE_TRAP_NIGHT,
	MEASURE_BLOCK_NIGHT,
	MEASURE_TRAP_TOTAL,
	MEASURE_BLOCK_TOTAL,
	MEASURE_NONE, /* this pest's traps time the work, they do not decide it */
	MEASURE_COUNT
};

/* How far back a rule looks. Weeks for *-week, nights for *-night, nights or one of
 * the words for *-total. */
enum span_kind {
	SPAN_NUMBER,
	SPAN_HUNG,
	SPAN_BIOFIX,
	SPAN_FLIGHT,
	SPAN_TREATMENT,
	SPAN_COUNT
};

enum comparator { AT_LEAST, MORE_THAN, COMPARATOR_COUNT }; /* ">=" and ">" */

enum verdict {
	VERDICT_NONE, /* no threshold set, or the pest is for timing only */
	VERDICT_UNDER,
	VERDICT_NEAR,
	VERDICT_UNKNOWN,
	VERDICT_OVER,
	VERDICT_COUNT
}; /* in rising order of what a block's answer takes from its traps */

struct outcome_facts {
	const char *word; /* "counted" */
	enum { COUNT_NEVER, COUNT_MUST, COUNT_MAY } count;
	bool takes_reason;
	bool closes; /* ends the interval before it */
	bool opens;  /* the trap hangs cleared after it: a new interval starts */
};

extern const struct outcome_facts outcome_facts[OUTCOME_COUNT];

/* Words of the files, untranslated: "counted", "card lost", "border", "trap-week". */
const char *outcome_word(enum outcome o);
const char *reason_word(enum reason r); /* "" for REASON_NONE, as for the next two */
const char *place_word(enum place p);
const char *condition_word(enum condition c);
const char *measure_word(enum measure m);
const char *span_word(enum span_kind s); /* "" for SPAN_NUMBER */
const char *comparator_word(enum comparator c);
const char *verdict_word(enum verdict v); /* none, under, near, unknown, over */

/* The other way, to the letter. False: no such word. "" reads as the NONE or the
 * SPAN_NUMBER whose word it is. */
bool outcome_read(const char *word, enum outcome *out);
bool reason_read(const char *word, enum reason *out);
bool place_read(const char *word, enum place *out);
bool condition_read(const char *word, enum condition *out);
bool measure_read(const char *word, enum measure *out);
bool span_read(const char *word, enum span_kind *out);
bool comparator_read(const char *word, enum comparator *out);

/* True if the reason belongs to the outcome (re-entry to skipped, down to spoiled,
 * none to every outcome). */
bool reason_fits(enum reason r, enum outcome o);

bool measure_of_block(enum measure m); /* block-week, block-night, block-total */

#endif
