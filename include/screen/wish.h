/* wish.h - what a page wants done: the loop in command does it and tells the page. */
#ifndef SCREEN_WISH_H
#define SCREEN_WISH_H

#include "base/records.h"

#include <stdint.h>

enum want {
	WANT_NOTHING,
	WANT_BACK, /* to the page before; Today never wishes it */
	WANT_QUIT,
	WANT_HELP, /* the keys that work on this page */
	WANT_RUN,  /* the run of .farm */
	WANT_WEEK, /* the Week page, filtered by .farm and .pest (0 = all) */
	WANT_WHY, /* behind .trap, or .block and .pest; Run, Alerts: .visit.trap (id) */
	WANT_SHEET,  /* print the weekly sheet of .farm; .by 1: the one to carry */
	WANT_SEASON, /* print the page of .farm's season .id, the year it began in */
	/* .visit and .words: on the disk before the next frame; .by: it was asked
	 * about, as the trap may not be entered (enum waiting_state) */
	WANT_SAVE,
	WANT_UNDO,    /* take back the latest change in this run */
	WANT_FLIGHT,  /* the Flight page of .farm, .block, .trap, .pest */
	WANT_BIOFIX,  /* set it to .day for .farm and .pest; DAY_NONE: take it out */
	WANT_WEATHER, /* the weather of .farm's station */
	WANT_SAVE_WEATHER, /* .weather: on the disk before the next frame */
	WANT_NEW_STATION,  /* named .words.note */
	WANT_HOTSPOTS,     /* the Hot spots page of .farm and .pest (0: the first) */
	WANT_RUN_DAY,      /* the same run on another date, .day */
	WANT_START,        /* the ways to begin a book */
	WANT_START_TYPING, /* the first farm, block and traps typed in */
	WANT_START_FILE,   /* the file of traps at .words.note taken in */
	WANT_START_DEMO,
	WANT_BOOK, /* the Book page */
	WANT_BACKUPS,
	/* the backup .id of the list in place of the book; .by 0: shows what is in it
	 * first */
	WANT_RESTORE,
	WANT_MERGE_PAGE,
	WANT_MERGE_LOOK, /* what the book at .words.note would bring */
	WANT_MERGE,      /* it is merged */
	WANT_MERGE_UNDO, /* back to before the latest merge; .by 0 looks if that goes */
	WANT_SETTLE,     /* see merge_page.h */
	WANT_ENTRIES,    /* the list of the family .kind, of .farm, .block, .pest */
	WANT_ENTRY_FARM, /* the list of the next farm only, then of all */
	WANT_ENTRY_PEST, /* the same for the pest */
	WANT_ENTRY_ALL,  /* those put away too, or no longer */
	WANT_FORM,       /* the record .id of the family .kind; 0: a new one */
	WANT_FORM_FIELD, /* the hand is on another field: its choices */
	WANT_PUT,        /* the form's record; .by: ENTRY_OVER | ENTRY_SURE */
	WANT_PUT_BLOCK,  /* another block first, then traps in it */
	WANT_THEIRS,     /* the form's record as the book has it now */
	WANT_RETIRE,     /* .id put away (.by 1) or brought back (0) */
	WANT_REMOVE,     /* .id taken out; .by 0: looks first whether it may be */
	WANT_MOVE,       /* the trap .id down (.by 1) or up (-1) on its run */
	WANT_HANG,       /* the trap .id, today */
	WANT_PULL,
	WANT_REPLACE,   /* the trap .id by one for the pest in .words.note; "" asks */
	WANT_CHANGES,   /* what changed in .id */
	WANT_UNDO_STEP, /* take back the latest step of this session, in any family */
	/* of .trap, an index in the log, or of .visit.trap or .id; without one the
	 * season of .block */
	WANT_DIARY,
	WANT_SAVE_PAST,    /* .visit and .words of the Diary page, as WANT_SAVE */
	WANT_REMOVE_VISIT, /* of .visit.trap on .day */
	WANT_UNDO_PAST,    /* take back the latest change in that trap's season */
	WANT_SERVICE,      /* the Service page of .farm (0 = all) */
	/* a new lure (.kind 1) or card (0) of the kind .id (0: the usual) went into
	 * .trap today; .by: see service_page.h */
	WANT_CHANGED,
	WANT_UNDO_CHANGED, /* take back what was changed last on the Service page */
	WANT_THRESHOLDS,   /* the thresholds of .pest (0 = all), own and published */
	WANT_TAKE_RULE,    /* the published one in row .id of the list */
	WANT_ALERTS,       /* the Alerts page */
	/* to the alert .id of the list, on Why to its own: the decision .by, with
	 * .words.note */
	WANT_ANSWER,
	WANT_PICKS,  /* the Picks page */
	WANT_RECORD, /* of the season's treatments, as a text */
	WANT_PASS,   /* the open traps of .block, skipped: re-entry */
	WANT_COUNT
};

struct wish {
	enum want want;
	int64_t farm, block, pest;
	int trap; /* index in the log; -1 none */
	int32_t day;
	struct visit visit;
	struct weather_day weather;
	struct visit_words words;
	int kind;   /* enum entry_kind */
	int64_t id; /* of a record of that family; 0: a new one */
	int by;
};

/* A wish for nothing but `want`: no trap, no day. */
struct wish page_wish(enum want want);

#endif
