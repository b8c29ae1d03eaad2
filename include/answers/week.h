/* week.h - the week's answers as a tree: farm, block and pest, trap. */
#ifndef ANSWERS_WEEK_H
#define ANSWERS_WEEK_H

#include "answers/say.h"
#include "season/flightline.h"

enum week_level { WEEK_FARM, WEEK_BLOCK, WEEK_TRAP };

struct week_row {
	enum week_level level;
	int64_t farm, block, pest; /* pest 0 on a farm's row */
	int trap;                  /* index in log.traps; NO_TRAP */
	int rule;                  /* the worst answer's; NO_RULE */
	char name[NAME_BYTES];     /* farm, block, or trap label */
	char pest_code[CODE_BYTES];
	bool is_border, is_disrupted;
	char catch_text[SAY_SHORT];   /* trap: "14.0"; block: mean "4.0" */
	char highest_text[SAY_SHORT]; /* block: highest trap "17.0"; else "" */
	char nights_text[SAY_SHORT];  /* trap: "7 n"; block: "3 of 4" read; "" */
	char rule_text[SAY_SHORT];
	char verdict_text[SAY_SHORT];
	enum tone tone;
	enum verdict verdict; /* farm: the worst of its blocks */
	/* Near or under with a question mark; a block or farm: something in it is. */
	bool is_doubted;
	char says[SAY_LINE]; /* what is missing, or doubts, or "" */
	struct mark *line;   /* owned; n_weeks marks, oldest first; NULL on a farm */
};

struct week {
	int32_t day;
	char title_day[DAY_TEXT_SIZE], title_short[DAY_TEXT_SIZE];
	struct week_row *rows;
	size_t n, cap;
	size_t n_weeks; /* of every line */
	int n_over, n_unknown, n_near,
		n_under; /* traps and block means with a threshold */
	int n_none;      /* traps without one */
	/* Near or under, but an old lure or a full card may hide more: not counted in
	 * n_near and n_under. */
	int n_doubted;
	char doubted_text[SAY_SHORT * 2]; /* ", 1 near?, 3 under?"; "" */
};

/* farm and pest: 0 = all. */
void week_of(const struct log *l, int64_t farm, int64_t pest, struct week *out);
void week_free(struct week *w);

#endif
