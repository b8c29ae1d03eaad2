/* rooms_book.h - the same as rooms.h for each page that keeps the book: records, diary,
 * service, backups and other books. Private to the page loop. */
#ifndef COMMAND_ROOMS_BOOK_H
#define COMMAND_ROOMS_BOOK_H

#include "answers/entry.h"
#include "answers/shelf.h"
#include "answers/trap_diary.h"
#include "book/backups.h"
#include "page_table.h"

struct diary_room {
	int64_t trap;
	int season; /* 0: the present one */
	bool anew;  /* it is shown from its latest visit on */
	struct trap_diary answer;
	struct diary_page page;
};

struct service_room {
	int64_t farm; /* 0: all */
	char filter[NAME_BYTES];
	int64_t changed; /* the trap that was changed latest; 0: none */
	struct due due;
	struct shelf shelf;
	struct service_page page;
};

/* The list of a family of records. */
struct entry_room {
	struct entry_ask ask;
	bool anew; /* it is shown from its first row on */
	struct entry_list answer;
	struct entry_page page;
};

/* The form of one record. */
struct form_room {
	bool beginning;   /* the first farm, block and traps are typed in */
	bool move_asked;  /* about the visits that go with a trap to its block */
	bool then_traps;  /* after this block new traps in it */
	int64_t saved_id; /* since it was opened; 0: nothing */
	struct entry_choices choices;
	struct form_page page;
};

struct backups_room {
	struct backups found;
	struct backup_line *lines;
	struct backups_page page;
};

struct merge_room {
	struct open_matters matters;
	struct merging answer;
	struct merge_page page;
};

struct text_room {
	struct buf written;
	struct text_page page;
};

#endif
