/* book_page.h - what the book holds, a line a family; and its backups. */
#ifndef SCREEN_BOOK_PAGE_H
#define SCREEN_BOOK_PAGE_H

#include "answers/say.h"
#include "screen/page.h"

enum { BOOK_LINES_MAX = 20 };

struct book_line {
	enum want want;            /* that Enter wishes ... */
	int kind;                  /* ... for this family */
	const char *name, *help;   /* translated; borrowed */
	char count[SAY_SHORT * 2]; /* "20, 3 put away" */
};

struct book_page {
	struct book_line lines[BOOK_LINES_MAX]; /* filled by the loop */
	size_t n, picked, top;
	int rows;          /* of the last frame */
	const char *right; /* set to the right of the title; borrowed */
	struct message message;
};

struct key_rows book_page_keys(void);
struct wish book_page_key(struct book_page *p, struct input in);
void book_page_draw(struct book_page *p, struct canvas *c);

/* A backup and what it holds. */
struct backup_line {
	char day[SAY_SHORT], holds[SAY_LINE], changed[SAY_LINE];
};

struct backups_page {
	struct backup_line *lines; /* as in struct backups; the loop's */
	size_t n, picked, top;
	int rows;
	bool shown; /* what is in it, instead of the list */
	bool sure;  /* then r was pressed: the next one restores it */
	/* of shown: that backup, the present book, what is kept */
	char about[3][SAY_LINE];
	struct message message;
};

/* WANT_RESTORE: .id is the picked line's index. */
struct key_rows backups_page_keys(void);
struct wish backups_page_key(struct backups_page *p, struct input in);
void backups_page_draw(struct backups_page *p, struct canvas *c);

#endif
