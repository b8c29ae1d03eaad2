/* sheet.h - the weekly scouting sheet of one farm, before it is set on paper. */
#ifndef ANSWERS_SHEET_H
#define ANSWERS_SHEET_H

#include "answers/due.h"
#include "answers/hot_lines.h"
#include "answers/run.h"
#include "answers/week.h"

struct sheet_trap {
	char label[NAME_BYTES], block[NAME_BYTES], pest[CODE_BYTES], lure[NAME_BYTES];
	bool is_border, is_disrupted;
	char lure_since[8], card_since[8]; /* "14 Jul" */
	char service[SAY_SHORT * 2];       /* what is due there by the next run */
	bool lure_due, card_due;
	/* "no entry till Wed 06:00"; "treatment planned: Thu 23 Jul 18:00"; "" */
	char barred[SAY_SHORT * 3];
	char last[RUN_LAST][8]; /* weekly catches of the four runs before */
	char count[SAY_SHORT];  /* this run's visit: "7 c"; "" when there is none */
	char week[SAY_SHORT];   /* catch per week; "-" */
	char nights[SAY_SHORT];
	char rule[SAY_SHORT], verdict[SAY_SHORT];
	bool is_over;
	char total[SAY_SHORT]; /* moths this season; at least: "12+"; never read: "-" */
	char says[SAY_LINE];   /* what is missing, doubts */
	bool needs_attention;  /* over, unknown, overdue, barred, not hanging */
};

struct sheet_block {
	char name[NAME_BYTES], pest[CODE_BYTES];
	char mean[SAY_SHORT], highest[SAY_SHORT],
		read[SAY_SHORT]; /* "4.0" "17.0" "3 of 4" */
	char rule[SAY_SHORT], verdict[SAY_SHORT];
	char says[SAY_LINE];  /* which trap, what is missing, the total */
	bool needs_attention; /* its own mean or total is over or unknown */
	bool is_over;         /* its worst answer, the verdict above */
};

struct sheet {
	char farm[NAME_BYTES];
	char day[DAY_TEXT_SIZE]; /* "Tue 21 July 2026 · week 30" */
	char scout[SCOUT_BYTES]; /* of this run's visits, "" when none or several */
	char last_run[SAY_SHORT * 2];
	/* "2 CM 1 mg lures, 1 delta card; 1 lure not known"; "nothing"; "nothing known"
	 * where a lure is not known */
	char bring[SAY_LINE];
	struct sheet_trap *traps; /* driving order */
	size_t n, cap;
	struct sheet_block *blocks;
	size_t n_blocks, cap_blocks;
	/* Of this farm: who may enter and pick which block from when. */
	struct block_clocks clocks;
	struct hot_lines hot; /* blocks that stand out this season, a line each */
	int visited;          /* traps visited in this run; 0: it has not begun */
	int counted;          /* of these with a count */
	int over, unknown;    /* traps and block means, as on the Week page */
	int32_t moths;        /* counted in this run, all traps */
};

/* farm must exist in the log. */
bool sheet_of(const struct log *l, struct book *b, int64_t farm, struct sheet *out,
	struct err *e);
void sheet_free(struct sheet *s);

#endif
