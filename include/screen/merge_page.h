/* merge_page.h - bringing another scout's book in: its path is asked for, what would
 * come is shown before anything happens, and what is left open is settled. */
#ifndef SCREEN_MERGE_PAGE_H
#define SCREEN_MERGE_PAGE_H

#include "answers/merging.h"
#include "screen/page.h"

enum { MERGE_FOUND = 8 };

enum merge_stage {
	MERGE_LIST,   /* of what is to be settled */
	MERGE_MATTER, /* the picked one, with its answers */
	MERGE_PATH,   /* of the other book, in the message line */
	MERGE_SHOWN,  /* what would come in: Enter merges */
	MERGE_COUNT,  /* another count, in the message line */
};

struct merge_page {
	enum merge_stage stage;
	const struct open_matters *open; /* filled by the loop, owned by it */
	const struct merging *look;      /* the same, with MERGE_SHOWN */
	size_t picked, top;              /* of the list */
	size_t read;                     /* first line shown of what is read */
	int rows;                        /* of the last frame */
	/* Books that may be meant: beside this one, or on a stick. By the loop. */
	char found[MERGE_FOUND][NOTE_BYTES];
	size_t n_found;
	char path[NOTE_BYTES], count[8];
	size_t cursor;
	bool fresh; /* nothing was typed into the path yet */
	bool sure;  /* u was pressed: the next one goes back to before the merge */
	struct message message;
};

/* WANT_MERGE_LOOK and WANT_MERGE: the path in .words.note. WANT_SETTLE: .id is the
 * matter's index, .kind the answer from 0 on, or .by a count of 0 or more.
 * WANT_MERGE_UNDO: .by 0 asks whether it can be. */
struct key_rows merge_page_keys(void);
/* Those that do something on what is shown now. */
struct key_rows merge_page_keys_now(const struct merge_page *p);
/* Which of the books found the path names, from 1 on; 0: none of them. */
size_t merge_page_found(const struct merge_page *p);
struct wish merge_page_key(struct merge_page *p, struct input in);
void merge_page_draw(struct merge_page *p, struct canvas *c);

#endif
