/* log.h - what the grower's questions are asked of: this season's part of the book,
 * read once. Plain data; nothing here goes back to the book. */
#ifndef ANSWERS_LOG_H
#define ANSWERS_LOG_H

#include "answers/log_lists.h"
#include "base/records.h"
#include "book/book.h"
#include "season/service.h"

enum { LOG_ACT_DAYS = 400 }; /* longer than any PHI, REI and pick together */

struct log {
	/* Set by the caller before log_read, which leaves them as they are. All zero:
	 * clocks at UTC, and the first minute of `today` (log_now). */
	struct instant now;
	struct zone zone;
	int32_t today;
	int32_t first_day; /* whose visits are read of all traps: before the season */
	struct limits limits;
	struct farms farms;   /* by name */
	struct blocks blocks; /* by name */
	struct traps traps;   /* by farm name and driving order */
	struct pests pests;
	struct lure_kinds lures;
	struct card_kinds cards;
	struct rules rules;
	struct stations stations;
	struct biofix_dates biofixes; /* of all seasons */
	/* By block and day: of this season and of the LOG_ACT_DAYS before today, and
	 * all that are dated later; those that are only answered as well
	 * (answers/answered.h). */
	struct treatments treatments;
	struct picks picks;
	struct disruptions disruptions;
	struct answers answers; /* of alerts of this season */
	/* Of this season and the six weeks before, and of traps that hang over from an
	 * earlier one; by trap and day. */
	struct visits visits;
	struct disputes disputes;     /* by trap and day, of the same days */
	struct season_states seasons; /* of farms and pests that a rule needs it for */
	struct diary
		*diaries; /* one for each of traps.items, over its part of visits */
	struct lure_state *lure_states; /* the same, as at the end of today */
	struct card_state *card_states;
	/* For log_block and log_trap; where these are empty the lists are looked
	 * through. */
	struct log_places block_places, trap_places;
};

/* Reads farm `farm` (0 = all) as it stood at the end of `today`; later visits are not
 * read. Zero-initialise l; reading again reuses and replaces. */
bool log_read(
	struct log *l, struct book *b, int64_t farm, int32_t today, struct err *e);
void log_free(struct log *l);

/* "counted twice: 14 by JR, 9 by MB; not settled"; "" when the visit is undisputed. */
void log_say_dispute(
	const struct log *l, const struct visit *shown, char *out, size_t size);

/* log.now; the first minute of log.today on local clocks when it was not set. */
struct instant log_now(const struct log *l);

/* By id; NULL when there is none. */
const struct farm *log_farm(const struct log *l, int64_t id);
const struct block *log_block(const struct log *l, int64_t id);
const struct pest *log_pest(const struct log *l, int64_t id);
const struct lure_kind *log_lure(const struct log *l, int64_t id);
const struct card_kind *log_card(const struct log *l, int64_t id);
/* Index in traps; SIZE_MAX when there is none. */
size_t log_trap(const struct log *l, int64_t id);

/* By name, exactly; NULL (SIZE_MAX) and *e with the names that there are. */
const struct farm *log_find_farm(const struct log *l, const char *name, struct err *e);
const struct pest *log_find_pest(const struct log *l, const char *code, struct err *e);

/* True if the trap hangs on the log's day, or did within this season. */
bool log_in_season(const struct log *l, size_t trap);
bool log_hangs(const struct log *l, size_t trap);

/* Last day up to `upto` on which the farm was run (a visit that is no hanging and was
 * not skipped); DAY_NONE. */
int32_t log_last_run(const struct log *l, int64_t farm, int32_t upto);
/* The trap's visit in the run of log.today: its latest of that date or the
 * limits.open_days days before it; NULL when it was only skipped on one of those. A
 * lure changed on one of those days (visit_is_service) is passed over. */
const struct visit *log_run_visit(const struct log *l, size_t trap);
bool log_visited_in_run(const struct log *l, size_t trap);
/* Traps of the farm that hang and are not visited in the run. */
int log_open_traps(const struct log *l, int64_t farm);
/* The day a run is due after one on `last`: a week later, or on the farm's weekday, at
 * least 4 days later. */
int32_t log_run_after(const struct farm *f, int32_t last);
/* The day the present run is due, or the next one when nothing is open: after the last
 * run, else after the last hanging, else today. May lie in the past. */
int32_t log_next_run(const struct log *l, int64_t farm);

#endif
