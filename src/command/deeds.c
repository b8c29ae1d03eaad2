#include "deeds.h"

#include "base/words.h"
#include "session_act.h"
#include "session_book.h"
#include "session_past.h"
#include "session_season.h"

static void open_run(struct session *s, int64_t farm, int32_t day, bool push_it)
{
	struct err e = { 0 };

	if (!session_open_run(s, farm, day, true, &e))
		message_set(session_message(s), true, "%s", e.text);
	else if (push_it)
		session_open(s, PAGE_RUN);
}

static void open_help(struct session *s, const struct wish *w)
{
	enum page of = session_shown(s);

	(void)w;
	if (of == PAGE_HELP)
		return;
	const struct page_row *row = &session_pages[of];
	s->help_page = (struct help_page){ .title = of == PAGE_TEXT ? s->text.page.title
								    : _(row->name),
		.keys = row->keys_now ? row->keys_now(s) : row->keys(),
		.notes = row->notes ? row->notes() : NULL };
	session_open(s, PAGE_HELP);
}

static void open_why(struct session *s, const struct wish *w)
{
	s->why.of_run = session_shown(s) == PAGE_RUN;
	bool listed =
		!s->why.of_run && w->trap >= 0 && (size_t)w->trap < s->log.traps.n;

	s->why.trap = w->visit.trap ? w->visit.trap
		      : listed      ? s->log.traps.items[w->trap].id
				    : 0;
	s->why.block = w->block;
	s->why.pest = w->pest;
	s->why.page.top = 0;
	s->why.page.answering.stage = ANSWERING_OFF;
	session_open(s, PAGE_WHY);
}

static void open_week(struct session *s, const struct wish *w)
{
	s->week.farm = w->farm;
	s->week.pest = w->pest;
	s->week.page.picked = s->week.page.top = 0;
	sift_end(&s->week.page.sift);
	session_open(s, PAGE_WEEK);
}

static void open_flight(struct session *s, const struct wish *w)
{
	const struct wish about =
		session_shown(s) == PAGE_WHY ? session_why_flight(s, *w) : *w;

	session_ask_flight(s, &about);
	session_open(s, PAGE_FLIGHT);
}

static void run_today(struct session *s, const struct wish *w)
{
	session_turn_day(s);
	open_run(s, w->farm, s->day, true);
}

static void run_on_day(struct session *s, const struct wish *w)
{
	open_run(s, s->run.farm, w->day, false);
}

static void undo(struct session *s, const struct wish *w)
{
	(void)w;
	session_undo(s);
}

static void open_weather(struct session *s, const struct wish *w)
{
	session_ask_weather(s, w);
	session_open(s, PAGE_WEATHER);
}

static void open_book(struct session *s, const struct wish *w)
{
	(void)w;
	session_open(s, PAGE_BOOK);
}

static void open_hotspots(struct session *s, const struct wish *w)
{
	session_ask_hotspots(s, w);
	session_open(s, PAGE_HOTSPOTS);
}

static void print_sheet(struct session *s, const struct wish *w)
{
	session_sheet(s, w->farm, w->by != 0);
}

deed *const session_deeds[WANT_COUNT] = {
	[WANT_BACK] = session_leave,
	[WANT_HELP] = open_help,
	[WANT_RUN] = run_today,
	[WANT_RUN_DAY] = run_on_day,
	[WANT_WEEK] = open_week,
	[WANT_WHY] = open_why,
	[WANT_FLIGHT] = open_flight,
	[WANT_HOTSPOTS] = open_hotspots,
	[WANT_WEATHER] = open_weather,
	[WANT_SHEET] = print_sheet,
	[WANT_SEASON] = session_season_page,
	[WANT_SAVE] = session_save,
	[WANT_UNDO] = undo,
	[WANT_BIOFIX] = session_biofix,
	[WANT_SAVE_WEATHER] = session_save_weather,
	[WANT_NEW_STATION] = session_new_station,
	[WANT_START] = session_start,
	[WANT_START_TYPING] = session_start_typing,
	[WANT_START_FILE] = session_start_file,
	[WANT_START_DEMO] = session_start_demo,
	[WANT_BOOK] = open_book,
	[WANT_BACKUPS] = session_backups,
	[WANT_RESTORE] = session_restore,
	[WANT_MERGE_PAGE] = session_merge_page,
	[WANT_MERGE_LOOK] = session_merge_look,
	[WANT_MERGE] = session_merge,
	[WANT_MERGE_UNDO] = session_merge_undo,
	[WANT_SETTLE] = session_settle,
	[WANT_ENTRIES] = session_entries,
	[WANT_ENTRY_FARM] = session_entry_farm,
	[WANT_ENTRY_PEST] = session_entry_pest,
	[WANT_ENTRY_ALL] = session_entry_all,
	[WANT_FORM] = session_form,
	[WANT_FORM_FIELD] = session_form_field,
	[WANT_PUT] = session_put,
	[WANT_PUT_BLOCK] = session_put_block,
	[WANT_THEIRS] = session_theirs,
	[WANT_RETIRE] = session_retire,
	[WANT_REMOVE] = session_remove,
	[WANT_MOVE] = session_move,
	[WANT_HANG] = session_hang,
	[WANT_PULL] = session_pull,
	[WANT_REPLACE] = session_replace,
	[WANT_CHANGES] = session_changes,
	[WANT_UNDO_STEP] = session_undo_step,
	[WANT_DIARY] = session_diary,
	[WANT_SAVE_PAST] = session_save_past,
	[WANT_REMOVE_VISIT] = session_remove_visit,
	[WANT_UNDO_PAST] = session_undo_past,
	[WANT_SERVICE] = session_service,
	[WANT_CHANGED] = session_changed,
	[WANT_UNDO_CHANGED] = session_undo_changed,
	[WANT_THRESHOLDS] = session_thresholds,
	[WANT_TAKE_RULE] = session_take_rule,
	[WANT_ALERTS] = session_alerts,
	[WANT_ANSWER] = session_answer,
	[WANT_PICKS] = session_picks,
	[WANT_RECORD] = session_record,
	[WANT_PASS] = session_pass,
};
