/* entry_rules.h - thresholds and settings as rows; see entry_rows.h. */
#ifndef ANSWERS_ENTRY_RULES_H
#define ANSWERS_ENTRY_RULES_H

#include "answers/entry_rows.h"

enum { THRESHOLD_COLUMNS = 17, SETTING_COLUMNS = 2 };

struct threshold_row {
	char pest[CODE_BYTES], crop[NAME_BYTES];
	int condition;
	char lure[NAME_BYTES];
	int place;
	char farm[NAME_BYTES], block[NAME_BYTES];
	int32_t flight;
	int from, to;
	int32_t until_dd;
	int measure;
	struct span span;
	int comparator;
	int32_t value_x100;
	char note[NOTE_BYTES], source[SOURCE_BYTES];
};
extern const struct column threshold_columns[THRESHOLD_COLUMNS];
struct threshold_row threshold_row_of(const struct known *k, const struct rule *r);
/* The row as a rule, without its id; false: something is wrong with it, and heard. */
bool rule_from(struct hearing *h, const struct known *k,
	const struct threshold_row *row, struct rule *out);
/* Its pest, lure, farm and block alone. */
void rule_find(struct hearing *h, const struct known *k,
	const struct threshold_row *row, struct rule *r);

/* How a form shows a setting that is a number in files and in the book. */
enum setting_look { SETTING_PLAIN, SETTING_PERCENT, SETTING_YES_NO };

/* The settings in the order of their file. */
struct setting_facts {
	const char *name;         /* of files and of the book: "join_nights" */
	const char *label;        /* N_() */
	const char *says;         /* N_(): what it does, a sentence for its form */
	int32_t lo, hi;           /* of a number; 0, 0: a text or a word */
	const char *const *words; /* that it may be, the first the usual one; NULL */
	enum setting_look look;
};
enum {
	SETTING_LIMITS = 11, /* the fields of struct limits, in their order */
	SETTING_SCOUT = SETTING_LIMITS,
	SETTING_AREA_UNIT,
	SETTING_LENGTH_UNIT,
	SETTING_DEGREE_UNIT,
	SETTING_DATE_STYLE,
	SETTING_WEEK_START,
	SETTING_PAPER,
	SETTING_COUNT
};
extern const struct setting_facts setting_facts[SETTING_COUNT];

struct setting_row {
	int name;
	char value[NOTE_BYTES];
};
extern const struct column setting_columns[SETTING_COLUMNS];
/* Each as it holds now, unset ones too. */
struct settings {
	char value[SETTING_COUNT][NOTE_BYTES];
};
bool settings_read(struct settings *out, struct book *b, struct err *e);
/* The usual value, which an empty one stands for; "" of the scout. */
void setting_usual(int i, char out[static NOTE_BYTES]);
/* Puts the usual value in for an empty one and a word as it is written; false: it is
 * none that the setting takes, and heard. Whether two numbers go together is the book's
 * to judge. */
bool setting_good(struct hearing *h, struct setting_row *r);
/* As a form shows it: "70 %", "yes". */
void setting_show(struct setting_row *r);
/* The same as setting_good of a row that a form shows, which becomes that of a file. */
bool setting_form_good(struct hearing *h, struct setting_row *r);

#endif
