/* trap_diary.h - every visit of one trap in a season, with what it was worth then, and
 * what stood there before. */
#ifndef ANSWERS_TRAP_DIARY_H
#define ANSWERS_TRAP_DIARY_H

#include "answers/run.h"

struct diary_row {
	struct visit visit; /* trap and day; as it stands */
	struct visit_words words;
	char day_text[SAY_SHORT];       /* "Tue 21 Jul" */
	char visit_text[SAY_SHORT * 2]; /* "12 cl", "skipped, weather" */
	char nights_text[SAY_SHORT];    /* "7 n"; "" where no interval closed */
	char weekly_text[SAY_SHORT];    /* catch per week over those nights; "-" */
	char lure_text[SAY_SHORT], card_text[SAY_SHORT]; /* age in days: "14 d" */
	int64_t lure_kind, card_kind; /* in the trap before it, else those it gets */
	int n_old;                    /* earlier forms that the book keeps */
	enum tone tone;
};

/* An earlier form of a visit: "was 41, changed Tue 4 Aug 19:12 by JR". */
struct diary_old {
	int32_t day;
	char day_text[SAY_SHORT];
	char text[SAY_LINE];
};

struct trap_diary {
	char title[SAY_LINE];        /* "Addermoor · Old Kiln · trap 3 · CM" */
	char brief[SAY_LINE];        /* "trap 3 · CM" */
	char season_text[SAY_SHORT]; /* "season 2026" */
	int64_t trap;
	int season;          /* year that it began in */
	int32_t first, last; /* its days, up to today */
	int32_t today;
	int earlier, later; /* the nearest seasons with visits; 0: none */
	bool hangs_over;    /* it hung when the season began */
	/* For typing a visit: its names, the kinds that it gets now, and whether its
	 * block may be entered now. */
	struct run_trap blank;
	struct diary_row *rows; /* latest first */
	size_t n, cap;
	struct diary_old *olds; /* latest change first; removed visits too */
	size_t n_olds, cap_olds;
};

/* season 0: the present one. */
bool trap_diary_read(struct trap_diary *out, struct book *b, const struct log *l,
	int64_t trap, int season, struct err *e);
void trap_diary_free(struct trap_diary *d);

#endif
