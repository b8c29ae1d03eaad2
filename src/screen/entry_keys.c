/* entry_keys.c - the keys of the list of records: one table, of which each family has a
 * part. The key line takes them from the front, so they stand by how often they are
 * needed. */
#include "base/words.h"
#include "entry_parts.h"

enum {
	FOR_NEW = 1,
	FOR_AWAY = 2,
	FOR_MOVE = 4,
	FOR_FARM = 8,
	FOR_PEST = 16,
	FOR_HIDDEN = 32
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, ENTRIES_OPEN, "Enter",
		NC_("key", "open"),
		N_("opens the picked record to be read or changed") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'n' }, { INPUT_CHAR, '0' }, ENTRIES_NEW, "n", N_("new"),
		N_("a new record, with what may be guessed filled in") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, ENTRIES_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, ENTRIES_DIARY, "d", N_("diary"),
		N_("every visit of the trap") },
	{ { INPUT_CHAR, '-' }, { INPUT_NONE, 0 }, ENTRIES_MOVE_UP, "-", N_("up"),
		N_("moves the trap one turn up in the driving order") },
	{ { INPUT_CHAR, '+' }, { INPUT_NONE, 0 }, ENTRIES_MOVE_DOWN, "+",
		NC_("key", "down"),
		N_("moves the trap one turn down in the driving order") },
	{ { INPUT_CHAR, 'h' }, { INPUT_NONE, 0 }, ENTRIES_HANG, "h", N_("hang"),
		N_("asks; Enter then hangs the trap today, with a new card and a new "
		   "lure") },
	{ { INPUT_CHAR, 'o' }, { INPUT_NONE, 0 }, ENTRIES_PULL, "o", N_("take down"),
		N_("asks; Enter then takes the trap down today: it is pulled, its "
		   "visits stay") },
	{ { INPUT_CHAR, 'r' }, { INPUT_NONE, 0 }, ENTRIES_REPLACE, "r", N_("replace"),
		N_("takes the trap down and hangs a new one for another pest in its "
		   "place; their counts are never joined") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, ENTRIES_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, ENTRIES_FARM, "f", N_("farm"),
		N_("the next farm only; after the last one all farms") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, ENTRIES_PEST, "p", N_("pest"),
		N_("the next pest only; after the last one all pests") },
	{ { INPUT_CHAR, 'x' }, { INPUT_NONE, 0 }, ENTRIES_RETIRE, "x",
		NC_("key", "put away"),
		N_("puts the record away: it is offered nowhere and stays in past "
		   "seasons; on one that is put away: brings it back") },
	{ { INPUT_DELETE, 0 }, { INPUT_BACKSPACE, 0 }, ENTRIES_REMOVE, "Delete", NULL,
		N_("takes out what nothing refers to; asks once more; so does "
		   "Backspace") },
	{ { INPUT_CHAR, 'a' }, { INPUT_NONE, 0 }, ENTRIES_ALL, "a", N_("all"),
		N_("shows those that are put away too, or no longer") },
	{ { INPUT_CHAR, 'c' }, { INPUT_NONE, 0 }, ENTRIES_CHANGES, "c", N_("changes"),
		N_("what changed in the record, when and by whom") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, ENTRIES_BACK, "Esc", N_("back"),
		N_("ends looking for something; then to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, ENTRIES_HELP, "?", N_("keys"),
		N_("this page") },
};

static const int needs[ENTRIES_HELP + 1] = {
	[ENTRIES_NEW] = FOR_NEW,
	[ENTRIES_RETIRE] = FOR_AWAY,
	[ENTRIES_REMOVE] = FOR_NEW,
	[ENTRIES_DIARY] = FOR_MOVE,
	[ENTRIES_HANG] = FOR_MOVE,
	[ENTRIES_PULL] = FOR_MOVE,
	[ENTRIES_REPLACE] = FOR_MOVE,
	[ENTRIES_MOVE_UP] = FOR_MOVE,
	[ENTRIES_MOVE_DOWN] = FOR_MOVE,
	[ENTRIES_FARM] = FOR_FARM,
	[ENTRIES_PEST] = FOR_PEST,
	[ENTRIES_ALL] = FOR_HIDDEN,
};

_Static_assert(sizeof rows / sizeof *rows <= ENTRY_KEYS_MAX, "all keys fit");

static int has(const struct entry_family *f)
{
	int can = (f->can_add ? FOR_NEW : 0) | (f->can_retire ? FOR_AWAY : 0) |
		  (f->can_move ? FOR_MOVE : 0) |
		  (f->can_retire || f->can_move ? FOR_HIDDEN : 0);

	for (size_t i = 0; i < f->n_columns; i++) {
		if (f->columns[i].pick == PICK_FARM)
			can |= FOR_FARM;
		if (f->columns[i].pick == PICK_PEST)
			can |= FOR_PEST;
	}
	return can;
}

struct key_rows entry_page_all_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

void entries_fill_keys(struct entry_page *p)
{
	int can = has(p->family);

	p->n_keys = 0;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if ((needs[rows[i].action] & ~can) == 0)
			p->keys[p->n_keys++] = rows[i];
}

struct key_rows entry_page_keys(const struct entry_page *p)
{
	return (struct key_rows){ p->keys, p->n_keys };
}
