/* diary_page.h - every visit of one trap in a season, to be read, corrected, added to
 * and taken out. */
#ifndef SCREEN_DIARY_PAGE_H
#define SCREEN_DIARY_PAGE_H

#include "answers/trap_diary.h"
#include "screen/chooser.h"
#include "screen/run_page.h"
#include "screen/sift.h"

enum diary_mode {
	DIARY_LIST,    /* moving among the visits */
	DIARY_VISIT,   /* a visit is open: keys as on the Run page */
	DIARY_DAY,     /* the day of a new visit is typed */
	DIARY_KIND,    /* which lure it was is picked, then which card */
	DIARY_CHANGES, /* what stood there before is read */
};

struct diary_page {
	const struct trap_diary *diary; /* borrowed; set by diary_page_show */
	const char *right;              /* set to the right of the title; borrowed */
	enum diary_mode mode;
	size_t picked; /* of the visits; SIZE_MAX: none is shown */
	size_t top;
	struct sift sift; /* of DIARY_LIST: beside an open visit all are shown */
	int32_t day;      /* of the picked or open visit; DAY_NONE */
	bool is_new;      /* the open visit stands in the list, not in the book */
	size_t old_top;   /* of what changed */
	bool asked;       /* about taking it out: the next Delete does */
	bool turn_season; /* set by a key; the loop turns and clears */
	char line[DAY_ISO_SIZE]; /* the day as it is typed */
	/* The open visit as a run of one trap on its day, so that every key does there
	 * what it does in a run. */
	struct run run;
	struct run_trap trap;
	struct run_page typed;
	struct chooser kinds; /* of a lure or card that was another kind */
	bool is_card;         /* the card is picked, else the lure */
	struct visit other;   /* the visit with the kinds that are picked so far */
	struct visit before;  /* what stood there when it was saved; .trap 0: nothing */
	struct message message;
	char saved[64]; /* "saved 07:42:11"; "" before the first */
	int rows;       /* of the list in the last frame */
};

/* WANT_SAVE_PAST: .visit and .words; WANT_REMOVE_VISIT: .visit.trap, .day;
 * WANT_UNDO_PAST. Columns are dropped in this order as the page gets narrower: note,
 * scout, card, lure, nights, the mark of a corrected one, catch a week. Day and visit
 * stay. */
struct key_rows diary_page_keys(void);
/* What the marks on the page mean, and the keys of an open visit; up to NULL, N_(). */
const char *const *diary_page_notes(void);
struct wish diary_page_key(struct diary_page *p, struct input in);
void diary_page_draw(struct diary_page *p, struct canvas *c);

/* Shows a diary (again). first: at its latest visit, with nothing open. Else what is
 * typed stays, against what the book has now. limits are borrowed. */
void diary_page_show(struct diary_page *p, const struct trap_diary *d,
	const struct limits *limits, bool first);
/* The visit is on the disk since `clock`: closes it. */
void diary_page_saved(
	struct diary_page *p, const struct trap_diary *d, const char *clock);
/* It is not: what is typed stays open. */
void diary_page_not_saved(struct diary_page *p, const char *why);
/* "; lure CM 1 mg, was CM standard": where both put one in, of another kind; "". */
void diary_page_say_kinds(const struct diary_page *p, const struct visit *was,
	const struct visit *is, char out[static SAY_LINE]);
/* The visit on `day` of the diary that is shown, or the nearest before it. */
void diary_page_pick(struct diary_page *p, int32_t day);
void diary_page_free(struct diary_page *p);

#endif
