/* proof_parts.h - how the cases of the proof are written down and collected. */
#ifndef ANSWERS_PROOF_PARTS_H
#define ANSWERS_PROOF_PARTS_H

#include "answers/proof.h"
#include "base/records.h"
#include "season/judge.h"

/* What in a case is not the source's own. */
enum remark {
	BARE = 1,       /* a bare number: the comparator is inferred */
	UNSAID = 2,     /* any one trap or the mean: not said, so checked both ways */
	WEEK = 4,       /* over how long: not said, taken as one week */
	DERIVED = 8,    /* our arithmetic on what was read */
	NO_COUNTS = 16, /* the source prints no counts: these are made to its words */
	SUMMER = 32,    /* summer is taken as June to August */
	PRACTICE = 64,  /* common practice, no source */
};

/* A printed statement. */
struct published {
	const char *id, *source, *printed; /* printed: N_() */
	unsigned remarks;
};

enum { INPUTS_MAX = 7 };

/* A rule made of it, with inputs and what they must give, one letter each: u under
 * (near or not), o OVER, ? unknown. Inputs: nights between visits, then the counts of
 * one trap; - for a visit skipped; | before the next trap. */
struct ruling {
	const char *id;
	enum measure measure;
	enum span_kind span_kind;
	int32_t span;
	enum comparator comparator;
	int32_t value_x100;
	const char *want;
	const char *input[INPUTS_MAX];
};

struct proof {
	struct proof_case *items;
	size_t n, cap;
};

/* Adds a case under a published statement, its texts still empty. */
struct proof_case *proof_add(struct proof *p, const char *id);
/* Counts as the cases have them, "7 nights: 2 - 2 | 1 1 1", in the reader's words. */
void proof_say_input(struct proof_case *c, const char *counts);
/* Fills in what came out, and whether it is what was printed. */
void proof_note(struct proof_case *c, const char *expected, const char *ours);
void proof_note_verdict(struct proof_case *c, char want, enum verdict ours);

void proof_add_rulings(struct proof *p, const struct ruling *r, size_t n);

/* The statements, searched by id; NULL at the end of each table. */
const struct published *proof_published(const char *id);
extern const struct published published_thresholds[], published_examples[];

/* One function for each table of cases. */
void proof_thresholds(struct proof *p);
void proof_examples(struct proof *p);
void proof_seasons(struct proof *p);
void proof_service(struct proof *p);

#endif
