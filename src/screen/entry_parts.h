/* entry_parts.h - what the files of the list of records share. */
#ifndef SCREEN_ENTRY_PARTS_H
#define SCREEN_ENTRY_PARTS_H

#include "screen/entry_page.h"

enum entries_action {
	ENTRIES_OPEN = LIST_OTHERS,
	ENTRIES_NEW,
	ENTRIES_NARROW,
	ENTRIES_RETIRE,
	ENTRIES_REMOVE,
	ENTRIES_MOVE_DOWN,
	ENTRIES_MOVE_UP,
	ENTRIES_HANG,
	ENTRIES_PULL,
	ENTRIES_REPLACE,
	ENTRIES_DIARY,
	ENTRIES_ALL,
	ENTRIES_FARM,
	ENTRIES_PEST,
	ENTRIES_UNDO,
	ENTRIES_CHANGES,
	ENTRIES_BACK,
	ENTRIES_HELP,
};

/* Fills the page's keys with those that its family has. */
void entries_fill_keys(struct entry_page *p);
/* Finds the columns of its list and how wide they want to be. */
void entries_fill_columns(struct entry_page *p);

/* The picked row; NULL: none is shown. */
const struct entry_row *entries_picked(const struct entry_page *p);
/* Its cells in one line: "7, Old Kiln, CM". */
void entries_say_row(const struct entry_row *r, size_t cells, char *out, size_t size);
/* Cells that the family's rows have. */
size_t entries_cells(const struct entry_family *f);

#endif
