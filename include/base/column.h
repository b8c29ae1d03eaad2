/* column.h - how one column of a CSV file is read, written and explained. A kind of
 * file is a table of these: reading, writing, every complaint and the check of the
 * manual follow it. */
#ifndef BASE_COLUMN_H
#define BASE_COLUMN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
	VALUE_BYTES = 64,  /* any value but a text, written out, with its NUL */
	RIGHT_BYTES = 240, /* what would be right, with its NUL */
};

struct column;

/* Lists that a field's value is chosen from, instead of being typed out. */
enum pick_from {
	PICK_NONE,
	PICK_WORD, /* the words of the column itself */
	PICK_FARM,
	PICK_BLOCK, /* of the record's farm */
	PICK_PEST,
	PICK_LURE, /* of the record's pest, or of no single one */
	PICK_CARD,
	PICK_STATION,
	PICK_CROP, /* of blocks, and of published thresholds; another may be typed */
	PICK_BIOFIX_RULE,
	PICK_APPLICATOR,  /* those of earlier treatments; another may be typed */
	PICK_CERTIFICATE, /* the same, of that applicator if one is typed */
	PICK_COUNT
};

/* A type of value. `field` is the column's place in the row's struct. */
struct value {
	/* Reads a text that is not empty and has no blanks around it. */
	bool (*read)(const struct column *c, const char *text, void *field);
	/* Sets what an empty value means. */
	void (*clear)(const struct column *c, void *field);
	/* Returns the value as it stands in a file, in out or in the field itself; what
	 * clear sets is written empty. */
	const char *(*write)(const struct column *c, const void *field,
		char out[static VALUE_BYTES]);
	/* What would be right: "a whole number from 0 to 9999". */
	void (*right)(const struct column *c, char out[static RIGHT_BYTES]);
};

struct column {
	const char *name; /* as in the header row; not translated */
	size_t at;        /* offset of the field */
	const struct value *type;
	int32_t lo, hi; /* number: range; text: hi is its size; word: first, last */
	int32_t none;   /* number or word that stands for an empty value */
	bool needed;    /* the column must be there and no value empty */
	bool passing;   /* read and passed over: the book has no place for it */
	const char *(*word)(int i); /* of a word column */
	const char *help;           /* N_(): one sentence */
	/* on a form */
	const char *label;     /* N_(): "hung on"; NULL: not on the form */
	const char *form_help; /* N_(): where help is only true of a file; NULL: help */
	enum pick_from pick;   /* what its value is chosen from */
	bool shipped;          /* a text that may be one of words_shipped() */
	int list_cols;         /* widest in a list of records; 0: not in the list */
};

extern const struct value value_text; /* char[hi] */
extern const struct value value_int;  /* int32_t */
extern const struct value value_x100; /* int32_t, hundredths; lo, hi in hundredths */
extern const struct value value_area; /* the same, of hectares; a form may show acres */
extern const struct value value_degree; /* double; NAN = empty; lo, hi in degrees */
extern const struct value value_number; /* double; NAN = empty; four decimals count */
extern const struct value value_day;    /* int32_t; DAY_NONE = empty */
extern const struct value value_md;     /* int, month * 100 + day; 0 = empty */
extern const struct value value_word;   /* int, lo..hi; in either case of letters */
extern const struct value value_span;   /* struct span */

struct span {
	int kind;  /* enum span_kind */
	int32_t n; /* with SPAN_NUMBER; 0 = empty */
};

#endif
