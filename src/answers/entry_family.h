/* entry_family.h - inside src/answers: what the lists and forms ask of a family. */
#ifndef ENTRY_FAMILY_H
#define ENTRY_FAMILY_H

#include "answers/entry.h"
#include "answers/entry_acts.h"
#include "answers/entry_kinds.h"
#include "answers/entry_rules.h"
#include "season/ground.h"

/* The lists of the book that records are made of. */
struct shelves {
	struct known known;
	struct sources sources;
	struct settings settings;
	/* Of their own kinds alone, latest first; picks bring their treatments, and
	 * treatments the picks, by block and day. */
	struct treatments treatments;
	struct picks picks;
	struct fruit_checks checks;
	struct disruptions dispensers;
	const struct log *log; /* borrowed */
};
/* For records of a kind; the log may be NULL. Freed in any case. */
bool shelves_read(struct shelves *s, struct book *b, enum entry_kind kind,
	const struct log *l, struct err *e);
void shelves_free(struct shelves *s);
/* The part of it that holds what was done in blocks. */
bool shelves_read_acts(
	struct shelves *s, struct book *b, enum entry_kind kind, struct err *e);

/* A row on its way into the book. */
struct putting {
	struct book *book;
	const struct shelves *shelves;
	struct hearing hear;
	int64_t id; /* 0: new; then the id that it got */
	size_t at;  /* of the record in the lists, if it has an id */
	bool touched[ENTRY_FIELDS_MAX]; /* by column */
	const struct entry_family *family;
	bool sure;        /* nothing is asked any more */
	bool doubts_full; /* the fault has no room for one more doubt */
	struct entry_fault *fault;
	struct err *e;
};
/* Something speaks against it: true if it was said already and is put in all the same.
 * Several are said one behind the other, as far as a page has room for them. */
bool putting_doubt(struct putting *p, const char *text);
/* The same of a position absurdly far from the other traps of its farm; what: "trap
 * 3". */
bool putting_far(struct putting *p, int64_t farm, struct position at, const char *what);
bool putting_touched(const struct putting *p, const char *column);

struct family_ops {
	const char *table; /* of the book */
	size_t row_bytes;
	size_t (*count)(const struct shelves *s);
	int64_t (*id)(const struct shelves *s, size_t i);
	/* Whether it is of the asked farm and pest. */
	bool (*wanted)(const struct shelves *s, size_t i, const struct entry_ask *ask);
	bool (*retired)(const struct shelves *s, size_t i); /* NULL: never */
	void (*row)(const struct shelves *s, size_t i, void *row);
	void (*name)(const void *row, char *out, size_t size);
	void (*note)(const struct shelves *s, size_t i, char out[static SAY_LINE]);
	/* Fills in a new row, which is empty; NULL: it stays so. */
	void (*guess)(const struct shelves *s, const struct entry_ask *ask, void *row);
	/* Into the book. False: heard, or p->e says why. */
	bool (*put)(struct putting *p, const void *row);
	bool (*retire)(struct book *b, const struct shelves *s, size_t i, bool retired,
		struct err *e); /* NULL: it cannot be */
};
/* The index of a record; SIZE_MAX: it is not there. */
size_t family_find(enum entry_kind kind, const struct shelves *s, int64_t id);

extern const struct family_ops *const family_ops[ENTRY_KINDS];
extern const struct family_ops farms_ops, blocks_ops, traps_ops, pests_ops, lures_ops,
	cards_ops, thresholds_ops, stations_ops, sources_ops, treatments_ops, picks_ops,
	checks_ops, dispensers_ops, settings_ops;

/* A word of files or of a shipped table as the reader's language has it; another text
 * as it is. */
const char *text_of_word(const struct column *c, const char *text);
/* Row by row of a family's columns, as texts of a form. */
void text_of_field(const struct column *c, const void *row, const struct manner *m,
	char out[static ENTRY_TEXT]);
/* Reads a field's text into the row; false: heard. */
bool field_of_text(struct hearing *h, const struct column *c, const struct manner *m,
	const char *text, void *row);
void row_clear(const struct entry_family *f, void *row);

/* The only farm that is not put away; the asked one if there is one; NULL. */
const struct farm *shelves_farm(const struct shelves *s, const struct entry_ask *ask);

#endif
