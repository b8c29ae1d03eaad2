/* proof.h - every published case that the program is checked against: the source, what
 * went in, what is printed there and what this program makes of it. Takes no book. */
#ifndef ANSWERS_PROOF_H
#define ANSWERS_PROOF_H

#include <stdbool.h>
#include <stddef.h>

enum { PROOF_TEXT_BYTES = 96, PROOF_REMARK_BYTES = 240 };

struct proof_case {
	const char *id;     /* "CM1" as in share/thresholds.csv; X and P for examples */
	const char *source; /* bibliographic, not translated */
	const char *printed; /* what the source says, in our words */
	/* what in it is ours: inferred, derived; "" */
	char remark[PROOF_REMARK_BYTES];
	char rule[PROOF_TEXT_BYTES];  /* "trap-week 2 >= 2"; "lure life", "card load" */
	char input[PROOF_TEXT_BYTES]; /* "7 nights: 2 - 2"; see proof_legend */
	char expected[PROOF_TEXT_BYTES], ours[PROOF_TEXT_BYTES];
	bool holds;
};

/* Runs them all. *out is the caller's to free(). */
size_t proof_run(struct proof_case **out);

/* One sentence on how to read an input. */
const char *proof_legend(void);

#endif
