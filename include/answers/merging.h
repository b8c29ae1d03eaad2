/* merging.h - bringing another scout's book into this one, in words: what would come,
 * what came, and what a person has to settle afterwards. */
#ifndef ANSWERS_MERGING_H
#define ANSWERS_MERGING_H

#include "answers/say.h"
#include "book/matters.h"
#include "book/merge.h"

struct merging_line {
	enum tone tone;
	int indent;
	char text[2 * SAY_LINE];
};
/* Zero-initialise. */
struct merging {
	struct merging_line *lines;
	size_t n, cap;
	bool nothing_new;      /* this book has all that the other one holds */
	int64_t open;          /* matters to be settled once it is done */
	char kept[MERGE_TEXT]; /* the file with the book as it was; "": none */
};
void merging_free(struct merging *m);

/* What would come in, change and go, and what would be left to settle; nothing is
 * changed. As book_merge_look. */
bool merging_look(struct book *b, const char *file, struct merging *out, struct err *e);
/* Does it, and says what came, changed and went. As book_merge. */
bool merging_do(struct book *b, const char *file, struct merging *out, struct err *e);

enum { MERGING_CHOICES = 6 };

struct open_matter {
	char title[SAY_LINE];                    /* what it is about */
	char choices[MERGING_CHOICES][SAY_LINE]; /* what may be done, by number */
	int n_choices;
	bool takes_count; /* or another number, typed */
};
struct open_matters {
	struct open_matter *items;
	size_t n, cap;
	struct matters book; /* the same as the book has them */
};
/* The question that a matter of the book is. */
void merging_ask(const struct matter *from, struct open_matter *m);
/* All that merges left open; replaces what the list held. */
bool merging_open(struct book *b, struct open_matters *out, struct err *e);
void merging_open_free(struct open_matters *m);

/* How a matter is settled. */
struct settling {
	size_t at;     /* index of the matter */
	int choice;    /* of the matter's, from 0 on; unless there is a count */
	int32_t count; /* 0 or more: this count holds */
};
/* *said: what was done, in a sentence. */
bool merging_settle(struct book *b, const struct open_matters *m,
	const struct settling *how, char said[static SAY_LINE], struct err *e);

/* The matters as lines: on paper and for the command. */
void merging_say_open(const struct open_matters *m, struct merging *out);

#endif
