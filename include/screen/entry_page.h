/* entry_page.h - the list of a family's records. */
#ifndef SCREEN_ENTRY_PAGE_H
#define SCREEN_ENTRY_PAGE_H

#include "screen/asking.h"
#include "screen/chooser.h"
#include "screen/list.h"
#include "screen/narrow.h"

enum { ENTRY_KEYS_MAX = 32, ENTRY_COLUMNS = ENTRY_CELLS_MAX + 1 };

struct entry_page {
	const struct entry_family *family; /* borrowed; set by entry_page_show */
	const struct entry_list *list;     /* borrowed */
	size_t *shown;                     /* rows that are not narrowed out; owned */
	size_t n_shown, cap_shown;
	size_t picked, top; /* in shown */
	int rows;           /* of the last frame */
	int64_t picked_id;  /* found again in a new list */
	struct narrow narrow;
	int64_t sure; /* Delete was pressed on it once, and it may go; 0: on none */
	struct asking asking; /* whether to hang a trap or take it down */
	bool replacing;
	struct chooser chooser; /* of the pest that a trap is replaced for */
	struct key_row keys[ENTRY_KEYS_MAX]; /* those that this family has */
	size_t n_keys;
	struct list_column column[ENTRY_COLUMNS]; /* of the cells; the note last */
	struct columns columns;
	const char *caution; /* that goes with the family; borrowed; NULL */
	struct message message;
};

/* Columns are dropped from the right as the page gets narrower: those that a record may
 * go without, then the note; the message line then says all of the picked row. */
struct key_rows entry_page_keys(const struct entry_page *p);
/* All keys of all families, for the test that looks them up in the manual. */
struct key_rows entry_page_all_keys(void);
struct wish entry_page_key(struct entry_page *p, struct input in);
void entry_page_draw(struct entry_page *p, struct canvas *c);

/* Asks for Delete once more, when nothing refers to the picked record. */
void entry_page_ask_removal(struct entry_page *p);
/* Shows a list (again); the picked record stays picked. first: the first row, and
 * nothing is narrowed. */
void entry_page_show(struct entry_page *p, const struct entry_family *family,
	const struct entry_list *list, bool first);
/* Picks a record, if it is shown. */
void entry_page_pick(struct entry_page *p, int64_t id);
/* Asks which pest the trap is replaced for; borrowed until it is answered. */
void entry_page_ask(struct entry_page *p, const struct entry_choices *pests);
void entry_page_free(struct entry_page *p);

#endif
