#include "screen/run_keys.h"

#include "base/words.h"
#include "screen/run_page.h"

static const struct key_row rows[] = {
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, RUN_DIGIT, "0-9", N_("count"),
		N_("the count, up to 9999; on a trap that is done: corrects it if it "
		   "was counted on the run's date, else a new visit; with all done: "
		   "after an arrow key only") },
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, RUN_KEEP, "Enter", N_("keep, next"),
		N_("saves the trap and goes to the next open one; once more keeps an "
		   "odd count") },
	{ { INPUT_CHAR, '-' }, { INPUT_CHAR, 's' }, RUN_SKIP, "-", N_("skip"),
		N_("skipped: nobody looked; again for re-entry, weather, time, other, "
		   "then back") },
	{ { INPUT_CHAR, 'e' }, { INPUT_NONE, 0 }, RUN_PASS, "e", NULL,
		N_("re-entry: all open traps of this block are passed over as skipped, "
		   "when people may not go in or it is not known whether they may") },
	{ { INPUT_CHAR, '+' }, { INPUT_NONE, 0 }, RUN_PLUS, "+", N_("card"),
		N_("before the count: new card; right after it: at least so many, the "
		   "card was full and is changed; again takes it back") },
	{ { INPUT_CHAR, '*' }, { INPUT_CHAR, 'l' }, RUN_LURE, "*", N_("lure"),
		N_("new lure; again takes it back") },
	{ { INPUT_CHAR, '/' }, { INPUT_CHAR, 'x' }, RUN_SPOIL, "/", N_("spoiled"),
		N_("trap down; again for card lost, lure missing, blocked, trap "
		   "missing, then back; on a trap that does not hang: hung again") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, RUN_UNDO, "u", N_("undo"),
		N_("drops what is typed, else takes back the latest change of this "
		   "run") },
	{ { INPUT_CHAR, '.' }, { INPUT_CHAR, 'n' }, RUN_NOTE, ".", N_("note"),
		N_("a note for this trap, added to what is there; Enter ends it, Esc "
		   "drops it") },
	{ { INPUT_CHAR, ',' }, { INPUT_NONE, 0 }, RUN_NOTE, ",", NULL,
		N_("the same, where the number pad has a comma") },
	{ { INPUT_CHAR, 'c' }, { INPUT_NONE, 0 }, RUN_CARD, "c", NULL,
		N_("new card and nothing else; again takes it back") },
	{ { INPUT_CHAR, 'g' }, { INPUT_NONE, 0 }, RUN_STIR, "g", NULL,
		N_("glue stirred; again takes it back") },
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, RUN_FEMALES, "f", NULL,
		N_("females among the moths") },
	{ { INPUT_CHAR, 'o' }, { INPUT_NONE, 0 }, RUN_OTHERS, "o", NULL,
		N_("other moths on the card, not in the count") },
	{ { INPUT_CHAR, 'i' }, { INPUT_NONE, 0 }, RUN_SCOUT, "i", NULL,
		N_("initials of the scout, for the traps kept from now on") },
	{ { INPUT_CHAR, 't' }, { INPUT_NONE, 0 }, RUN_DATE, "t", N_("date"),
		N_("the date of the run, to enter or correct an earlier one: "
		   "2026-07-14, 07-14 or 14, the latest such day; Enter once more "
		   "for one over 60 days back") },
	{ { INPUT_BACKSPACE, 0 }, { INPUT_DELETE, 0 }, RUN_ERASE, "Backspace", NULL,
		N_("takes back the last digit or character") },
	{ { INPUT_UP, 0 }, { INPUT_NONE, 0 }, LIST_UP, "Up", NULL,
		N_("to the trap above") },
	{ { INPUT_DOWN, 0 }, { INPUT_NONE, 0 }, LIST_DOWN, "Down", NULL,
		N_("to the trap below; a count that is typed is kept or dropped first") },
	{ { INPUT_PAGE_UP, 0 }, { INPUT_NONE, 0 }, LIST_PAGE_UP, "PgUp", NULL,
		N_("one page up") },
	{ { INPUT_PAGE_DOWN, 0 }, { INPUT_NONE, 0 }, LIST_PAGE_DOWN, "PgDn", NULL,
		N_("one page down") },
	{ { INPUT_HOME, 0 }, { INPUT_NONE, 0 }, LIST_HOME, "Home", NULL,
		N_("to the first trap") },
	{ { INPUT_END, 0 }, { INPUT_NONE, 0 }, LIST_END, "End", NULL,
		N_("to the last trap") },
	{ { INPUT_CHAR, 'w' }, { INPUT_NONE, 0 }, RUN_WEEK, "w", N_("week"),
		N_("the week's answers for this farm") },
	{ { INPUT_CHAR, 'y' }, { INPUT_NONE, 0 }, RUN_WHY, "y", N_("why"),
		N_("what stands behind the verdict of this trap") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, RUN_DIARY, "d", NULL,
		N_("the diary of this trap: every visit, to be read and corrected") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, RUN_LEAVE, "Esc", NULL,
		N_("drops what is typed, else goes back; what is saved stays saved") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, RUN_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows run_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *run_page_notes(void)
{
	static const char *const notes[] = {
		N_("Beside a block: b is a border trap, d a block under mating "
		   "disruption."),
		N_("Last four: the catch a week of the four runs before, oldest first; "
		   "30+ is at least 30, - was not read."),
		N_("Today: 14 counted, 14+ at least (the card was full); c new card, l "
		   "new lure, s glue stirred, f females, o other moths, n a note; - "
		   "skipped, spoiled 3+ at least 3; 14 Fri was counted that "
		   "Friday, within the run but before its date. Keys change what "
		   "stands between [ and ]."),
		N_("a week: the catch per seven nights. A trap that was skipped is not "
		   "a zero: its moths come with the next count."),
		N_("no entry until: by what was entered from the label. e passes over "
		   "the block; a count before that hour is asked about once, and the "
		   "trap's note says so. The label is the law."),
		NULL,
	};

	return notes;
}
