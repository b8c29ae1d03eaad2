/* entry.h - the records that a grower keeps on the Book page: a family of them is a
 * table of fields (base/column.h), which are those of its file. One list and one form
 * serve them all; what a file is refused for, a form is refused for in the same words.
 * A new field is a row of its family's table, a new family a row of entry_families. */
#ifndef ANSWERS_ENTRY_H
#define ANSWERS_ENTRY_H

#include "answers/manner.h"
#include "answers/say.h"
#include "base/column.h"
#include "base/source.h"
#include "book/steps.h"

enum entry_kind {
	ENTRY_FARMS,
	ENTRY_BLOCKS,
	ENTRY_TRAPS,
	ENTRY_PESTS,
	ENTRY_LURES,
	ENTRY_CARDS,
	ENTRY_THRESHOLDS,
	ENTRY_STATIONS,
	ENTRY_SOURCES,
	ENTRY_TREATMENTS,
	ENTRY_PICKS,
	ENTRY_CHECKS,
	ENTRY_DISPENSERS,
	ENTRY_SETTINGS, /* a record each; none can be added or removed */
	ENTRY_KINDS
};

enum {
	ENTRY_FIELDS_MAX = 24,
	ENTRY_CELLS_MAX = 6,
	ENTRY_TEXT = OUTLINE_BYTES, /* all others are shorter */
	ENTRY_CELL = NAME_BYTES,
};

/* What a family is to the pages. */
struct entry_family {
	const char *name; /* N_(): "farms" */
	const char *one;  /* N_(): "farm" */
	const char *help; /* N_(): a sentence for the Book page */
	const struct column *columns;
	size_t n_columns;
	bool can_add, can_retire, can_move; /* can_move: by its turn on the run */
	bool is_act; /* what was done in a block: the cautions go with it */
};
extern const struct entry_family entry_families[ENTRY_KINDS];

/* Which of a family's records. */
struct entry_ask {
	enum entry_kind kind;
	int64_t farm, pest; /* 0: all */
	int64_t block;      /* of what was done in one; 0: all */
	bool retired;       /* show those put away (of traps: pulled) as well */
};

struct entry_row {
	int64_t id; /* settings: their place, 1.. */
	/* of the columns with list_cols, in order */
	char cells[ENTRY_CELLS_MAX][ENTRY_CELL];
	bool is_retired;
	enum tone tone;
	char note[SAY_LINE]; /* "hangs since 4 May", "pulled 3 Sep", "usual: 5"; "" */
};

struct entry_list {
	struct entry_ask ask;
	char title[SAY_LINE]; /* "Traps of Addermoor" */
	struct entry_row *rows;
	size_t n, cap;
	int n_hidden; /* put away, not shown */
};
bool entry_list_read(struct entry_list *out, struct book *b,
	const struct entry_ask *ask, const struct log *l, struct err *e);
void entry_list_free(struct entry_list *s);

/* One record as a form holds it: a text per column of its family. */
struct entry {
	enum entry_kind kind;
	int64_t id; /* 0: new */
	struct row_stamp stamp;
	bool is_retired;
	struct manner manner;
	char name[SAY_LINE]; /* "trap 7 of Addermoor"; of a new one "new trap" */
	char text[ENTRY_FIELDS_MAX][ENTRY_TEXT];
};

/* How a form is put into the book. */
enum {
	ENTRY_OVER = 1, /* also when somebody else changed it meanwhile */
	ENTRY_SURE = 2, /* also when something speaks against it (is_doubt) */
};

/* What is wrong with a form: the field (index of its column; -1: the whole) and a
 * sentence. */
struct entry_fault {
	int field;
	bool is_elsewhere; /* the row was changed by somebody else since it was read */
	bool is_doubt; /* it can be put in, and the text says what speaks against it */
	char text[sizeof((struct err *)0)->text];
};

/* What a value may be chosen from, for the record as it is typed now; texts as a field
 * holds them. Retired ones are not among them. */
struct entry_choices {
	struct entry_choice {
		char text[ENTRY_CELL];
		char help[SAY_LINE]; /* "21 days, for CM"; "" */
	} * items;
	size_t n, cap;
	bool only; /* nothing else may be typed */
};

#endif
