/* page_table.h - the pages of the loop, and what it does with each. */
#ifndef COMMAND_PAGE_TABLE_H
#define COMMAND_PAGE_TABLE_H

#include "base/err.h"
#include "screen/alerts_page.h"
#include "screen/book_page.h"
#include "screen/diary_page.h"
#include "screen/entry_page.h"
#include "screen/flight_page.h"
#include "screen/form_page.h"
#include "screen/hotspots_page.h"
#include "screen/merge_page.h"
#include "screen/picks_page.h"
#include "screen/run_page.h"
#include "screen/service_page.h"
#include "screen/start_page.h"
#include "screen/text_page.h"
#include "screen/thresholds_page.h"
#include "screen/today_page.h"
#include "screen/weather_page.h"
#include "screen/week_page.h"
#include "screen/why_page.h"

struct session;

enum page {
	PAGE_TODAY,
	PAGE_RUN,
	PAGE_WEEK,
	PAGE_WHY,
	PAGE_FLIGHT,
	PAGE_HOTSPOTS,
	PAGE_WEATHER,
	PAGE_START,
	PAGE_BOOK,
	PAGE_ENTRIES,
	PAGE_FORM,
	PAGE_BACKUPS,
	PAGE_MERGE,
	PAGE_TEXT,
	PAGE_DIARY,
	PAGE_SERVICE,
	PAGE_THRESHOLDS,
	PAGE_ALERTS,
	PAGE_PICKS,
	PAGE_HELP,
	PAGE_COUNT
};

/* One page of the loop: everything that the loop does with it. */
struct page_row {
	const char *name; /* N_() */
	struct key_rows (*keys)(void);
	const char *const *(*notes)(void); /* what its marks mean; NULL: it has none */
	bool (*read)(struct session *s, struct err *e); /* from the book, to be shown */
	struct wish (*key)(struct session *s, struct input in);
	void (*draw)(struct session *s, struct canvas *c);
	struct message *(*message)(struct session *s);
	/* After each key: reads what its page asks to be shown instead. NULL: it has
	 * nothing of the kind. */
	void (*turn)(struct session *s);
	/* Picks a record in its list, if it is there. NULL: it lists none. */
	void (*pick)(struct session *s, int64_t id);
	/* Those that work on what it shows now; NULL: keys(). */
	struct key_rows (*keys_now)(const struct session *s);
};

extern const struct page_row session_pages[PAGE_COUNT];

#endif
