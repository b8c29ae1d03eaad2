/* trap_diary.h - every visit of one trap in a season, with what it was worth then, and
 * what stood there before. */
#ifndef ANSWERS_TRAP_DIARY_H
#define ANSWERS_TRAP_DIARY_H

#include "answers/entry.h"
#include "answers/run.h"

struct diary_row {
	struct visit visit; /* trap and day; as it stands */
	struct visit_words words;
	char day_text[SAY_SHORT];       /* "Tue 21 Jul" */
	char visit_text[SAY_SHORT * 2]; /* "12 cl", "skipped, weather" */
	char nights_text[SAY_SHORT];    /* "7 n"; "" where no interval closed */
	char weekly_text[SAY_SHORT];    /* catch per week over those nights; "-" */
	char lure_text[SAY_SHORT], card_text[SAY_SHORT]; /* age in days: "14 d" */
	/* "new lure CM 1 mg, new card delta liner": what it put in; "" nothing */
	char kinds_text[SAY_LINE];
	int64_t lure_kind, card_kind; /* in the trap before it, else those it gets */
	int32_t card_full_at;         /* moths that this card holds; 0: not known */
	int n_old;                    /* earlier forms that say something else */
	enum tone tone;
};

/* An earlier form of a visit: "was 41, changed 4 Aug 19:12 by JR", "was hung, changed
 * 4 Aug 19:12 by JR; lure CM 1 mg, was CM standard". */
struct diary_old {
	int32_t day;
	char day_text[SAY_SHORT];
	char text[SAY_LINE * 2];
	struct visit visit;
};

/* Kinds that a visit may have put in, those put away among them: ids beside names. */
struct kind_choices {
	struct entry_choices names;
	int64_t *ids;
	size_t cap_ids;
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
	struct kind_choices lures, cards; /* lures of its pest, and of no single one */
	struct diary_old *olds;           /* latest change first; removed visits too */
	size_t n_olds, cap_olds;
};

/* season 0: the present one. */
bool trap_diary_read(struct trap_diary *out, struct book *b, const struct log *l,
	int64_t trap, int season, struct err *e);
void trap_diary_free(struct trap_diary *d);

#endif
