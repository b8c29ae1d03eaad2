/* page_table.c - the pages of the loop, one row each: adding a page is adding a row. */
#include "session_act.h"
#include "session_book.h"
#include "session_past.h"
#include "session_season.h"

#include "answers/checks.h"
#include "base/words.h"

static bool read_today(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	today_of(&s->log, &s->today.answer);
	if (!today_read_hots(&s->log, s->book, &s->today.answer, e) ||
		!today_read_next(&s->log, s->book, &s->today.answer, e))
		return false;
	session_mark(s,
		(struct title){ s->today.answer.title, s->today.answer.title_short });
	today_page_show(&s->today.page, &s->today.answer);
	return true;
}

static bool read_run(struct session *s, struct err *e)
{
	return session_open_run(s, s->run.farm, s->run.day, false, e);
}

static bool read_week(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	session_week(s);
	return true;
}

/* Asked from the run page it is as it stood on the run's date. Another program may have
 * put traps before this one, or taken it out. */
static bool read_why(struct session *s, struct err *e)
{
	int at = NO_TRAP;

	if (s->why.of_run ? !session_read_run(s, e) : !session_read_log(s, e))
		return false;
	const struct log *l = s->why.of_run ? &s->run.log : &s->log;
	if (s->why.trap && (at = (int)log_trap(l, s->why.trap)) == NO_TRAP)
		return err_set(e, ERR_NOT_FOUND,
			_("the %s is not in the book any more"),
			ngettext("trap", "traps", 1));
	why_of(l, at, s->why.block, s->why.pest, &s->why.answer);
	if (at == NO_TRAP && !why_read_checks(l, s->book, s->why.block, s->why.pest,
				     &s->why.answer, e))
		return false;
	s->why.page.alert = session_why_alert(s);
	s->why.page.why = &s->why.answer;
	s->why.page.right =
		s->why.of_run ? s->run.answer.title_short : s->today.answer.title_short;
	return true;
}

static struct key_rows keys_entries(const struct session *s)
{
	return entry_page_keys(&s->entry.page);
}

static void pick_entry(struct session *s, int64_t id)
{
	entry_page_pick(&s->entry.page, id);
}

/* Keys are the page's, not the book's; a text was written when it was opened. */
static bool read_nothing(struct session *s, struct err *e)
{
	(void)s;
	(void)e;
	return true;
}

/* Each page takes a key, draws itself, says what happened; only its struct differs. */
#define PAGE_CALLS(name, kind, at)                                                     \
	static struct wish key_##name(struct session *s, struct input in)              \
	{                                                                              \
		return kind##_page_key(&s->at, in);                                    \
	}                                                                              \
	static void draw_##name(struct session *s, struct canvas *c)                   \
	{                                                                              \
		kind##_page_draw(&s->at, c);                                           \
	}                                                                              \
	static struct message *message_##name(struct session *s)                       \
	{                                                                              \
		return &s->at.message;                                                 \
	}

PAGE_CALLS(today, today, today.page)
PAGE_CALLS(run, run, run.page)
PAGE_CALLS(week, week, week.page)
PAGE_CALLS(why, why, why.page)
PAGE_CALLS(flight, flight, flight.page)
PAGE_CALLS(hotspots, hotspots, hot.page)
PAGE_CALLS(weather, weather, weather.page)
PAGE_CALLS(start, start, start_page)
PAGE_CALLS(book, book, book_page)
PAGE_CALLS(entries, entry, entry.page)
PAGE_CALLS(form, form, form.page)
PAGE_CALLS(backups, backups, backups.page)
PAGE_CALLS(merge, merge, merge.page)
PAGE_CALLS(text, text, text.page)
PAGE_CALLS(diary, diary, diary.page)
PAGE_CALLS(service, service, service.page)
PAGE_CALLS(thresholds, thresholds, thresholds.page)
PAGE_CALLS(alerts, alerts, alerts.page)
PAGE_CALLS(picks, picks, picks.page)
PAGE_CALLS(help, help, help_page)

#define CALLS_OF(name) .key = key_##name, .draw = draw_##name, .message = message_##name

const struct page_row session_pages[PAGE_COUNT] = {
	[PAGE_TODAY] = { N_("Today"), today_page_keys, .read = read_today,
		CALLS_OF(today) },
	[PAGE_RUN] = { N_("Run"), run_page_keys, .notes = run_page_notes,
		.read = read_run, CALLS_OF(run) },
	[PAGE_WEEK] = { N_("Week"), week_page_keys, .notes = week_page_notes,
		.read = read_week, CALLS_OF(week), .turn = session_filter_week },
	[PAGE_WHY] = { N_("Why"), why_page_keys, .read = read_why, CALLS_OF(why) },
	[PAGE_FLIGHT] = { N_("Flight"), flight_page_keys, .notes = flight_page_notes,
		.read = session_read_flight, CALLS_OF(flight),
		.turn = session_turn_flight },
	[PAGE_HOTSPOTS] = { N_("Hot spots"), hotspots_page_keys,
		.notes = hotspots_page_notes, .read = session_read_hotspots,
		CALLS_OF(hotspots), .turn = session_turn_hotspots },
	[PAGE_WEATHER] = { N_("Weather"), weather_page_keys,
		.notes = weather_page_notes, .read = session_read_weather,
		CALLS_OF(weather), .turn = session_turn_weather },
	[PAGE_START] = { N_("Start"), start_page_keys, .read = session_read_start,
		CALLS_OF(start) },
	[PAGE_BOOK] = { N_("Book"), book_page_keys, .read = session_read_book,
		CALLS_OF(book) },
	[PAGE_ENTRIES] = { N_("List"), entry_page_all_keys,
		.read = session_read_entries, CALLS_OF(entries), .pick = pick_entry,
		.keys_now = keys_entries },
	[PAGE_FORM] = { N_("Form"), form_page_keys, .notes = form_page_notes,
		.read = session_read_form, CALLS_OF(form), .turn = session_try_form },
	[PAGE_BACKUPS] = { N_("Backups"), backups_page_keys,
		.read = session_read_backups, CALLS_OF(backups) },
	[PAGE_MERGE] = { N_("Merging"), merge_page_keys, .read = session_read_merge,
		CALLS_OF(merge) },
	[PAGE_TEXT] = { N_("Text"), text_page_keys, .read = read_nothing,
		CALLS_OF(text) },
	[PAGE_DIARY] = { N_("Diary"), diary_page_keys, .notes = diary_page_notes,
		.read = session_read_diary, CALLS_OF(diary),
		.turn = session_turn_diary },
	[PAGE_SERVICE] = { N_("Service"), service_page_keys,
		.notes = service_page_notes, .read = session_read_service,
		CALLS_OF(service), .turn = session_turn_service },
	[PAGE_THRESHOLDS] = { N_("Thresholds"), thresholds_page_keys,
		.notes = thresholds_page_notes, .read = session_read_thresholds,
		CALLS_OF(thresholds), .turn = session_turn_thresholds },
	[PAGE_ALERTS] = { N_("Alerts"), alerts_page_keys, .read = session_read_alerts,
		CALLS_OF(alerts) },
	[PAGE_PICKS] = { N_("Picks"), picks_page_keys, .read = session_read_picks,
		CALLS_OF(picks) },
	[PAGE_HELP] = { N_("Keys"), help_page_keys, .read = read_nothing,
		CALLS_OF(help) },
};
