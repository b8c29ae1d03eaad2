/* The pages of the loop, one row each: adding a page is adding a row. */
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

static struct wish key_today(struct session *s, struct input in)
{
	return today_page_key(&s->today.page, in);
}

static void draw_today(struct session *s, struct canvas *c)
{
	today_page_draw(&s->today.page, c);
}

static struct message *message_today(struct session *s)
{
	return &s->today.page.message;
}

static bool read_run(struct session *s, struct err *e)
{
	return session_open_run(s, s->run.farm, s->run.day, false, e);
}

static struct wish key_run(struct session *s, struct input in)
{
	return run_page_key(&s->run.page, in);
}

static void draw_run(struct session *s, struct canvas *c)
{
	run_page_draw(&s->run.page, c);
}

static struct message *message_run(struct session *s)
{
	return &s->run.page.message;
}

static bool read_week(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	session_week(s);
	return true;
}

static struct wish key_week(struct session *s, struct input in)
{
	return week_page_key(&s->week.page, in);
}

static void draw_week(struct session *s, struct canvas *c)
{
	week_page_draw(&s->week.page, c);
}

static struct message *message_week(struct session *s)
{
	return &s->week.page.message;
}

/* Asked from the run page it is as it stood on the run's date. */
static bool read_why(struct session *s, struct err *e)
{
	if (s->why.of_run ? !session_read_run(s, e) : !session_read_log(s, e))
		return false;
	const struct log *l = s->why.of_run ? &s->run.log : &s->log;
	why_of(l, s->why.trap, s->why.block, s->why.pest, &s->why.answer);
	if (s->why.trap < 0 && !why_read_checks(l, s->book, s->why.block, s->why.pest,
				       &s->why.answer, e))
		return false;
	s->why.page.alert = session_why_alert(s);
	s->why.page.why = &s->why.answer;
	s->why.page.right =
		s->why.of_run ? s->run.answer.title_short : s->today.answer.title_short;
	return true;
}

static struct wish key_why(struct session *s, struct input in)
{
	return why_page_key(&s->why.page, in);
}

static void draw_why(struct session *s, struct canvas *c)
{
	why_page_draw(&s->why.page, c);
}

static struct message *message_why(struct session *s)
{
	return &s->why.page.message;
}

static struct wish key_flight(struct session *s, struct input in)
{
	return flight_page_key(&s->flight.page, in);
}

static void draw_flight(struct session *s, struct canvas *c)
{
	flight_page_draw(&s->flight.page, c);
}

static struct message *message_flight(struct session *s)
{
	return &s->flight.page.message;
}

static struct wish key_hotspots(struct session *s, struct input in)
{
	return hotspots_page_key(&s->hot.page, in);
}

static void draw_hotspots(struct session *s, struct canvas *c)
{
	hotspots_page_draw(&s->hot.page, c);
}

static struct message *message_hotspots(struct session *s)
{
	return &s->hot.page.message;
}

static struct wish key_weather(struct session *s, struct input in)
{
	return weather_page_key(&s->weather.page, in);
}

static void draw_weather(struct session *s, struct canvas *c)
{
	weather_page_draw(&s->weather.page, c);
}

static struct message *message_weather(struct session *s)
{
	return &s->weather.page.message;
}

static struct wish key_start(struct session *s, struct input in)
{
	return start_page_key(&s->start_page, in);
}

static void draw_start(struct session *s, struct canvas *c)
{
	start_page_draw(&s->start_page, c);
}

static struct message *message_start(struct session *s)
{
	return &s->start_page.message;
}

static struct wish key_book(struct session *s, struct input in)
{
	return book_page_key(&s->book_page, in);
}

static void draw_book(struct session *s, struct canvas *c)
{
	book_page_draw(&s->book_page, c);
}

static struct message *message_book(struct session *s)
{
	return &s->book_page.message;
}

static struct wish key_entries(struct session *s, struct input in)
{
	return entry_page_key(&s->entry.page, in);
}

static void draw_entries(struct session *s, struct canvas *c)
{
	entry_page_draw(&s->entry.page, c);
}

static struct message *message_entries(struct session *s)
{
	return &s->entry.page.message;
}

static struct wish key_form(struct session *s, struct input in)
{
	return form_page_key(&s->form.page, in);
}

static void draw_form(struct session *s, struct canvas *c)
{
	form_page_draw(&s->form.page, c);
}

static struct message *message_form(struct session *s)
{
	return &s->form.page.message;
}

static struct wish key_backups(struct session *s, struct input in)
{
	return backups_page_key(&s->backups.page, in);
}

static void draw_backups(struct session *s, struct canvas *c)
{
	backups_page_draw(&s->backups.page, c);
}

static struct message *message_backups(struct session *s)
{
	return &s->backups.page.message;
}

static struct wish key_text(struct session *s, struct input in)
{
	return text_page_key(&s->text.page, in);
}

static void draw_text(struct session *s, struct canvas *c)
{
	text_page_draw(&s->text.page, c);
}

static struct message *message_text(struct session *s)
{
	return &s->text.page.message;
}

static struct key_rows keys_entries(const struct session *s)
{
	return entry_page_keys(&s->entry.page);
}

static struct wish key_diary(struct session *s, struct input in)
{
	return diary_page_key(&s->diary.page, in);
}

static void draw_diary(struct session *s, struct canvas *c)
{
	diary_page_draw(&s->diary.page, c);
}

static struct message *message_diary(struct session *s)
{
	return &s->diary.page.message;
}

static struct wish key_service(struct session *s, struct input in)
{
	return service_page_key(&s->service.page, in);
}

static void draw_service(struct session *s, struct canvas *c)
{
	service_page_draw(&s->service.page, c);
}

static struct message *message_service(struct session *s)
{
	return &s->service.page.message;
}

static struct wish key_thresholds(struct session *s, struct input in)
{
	return thresholds_page_key(&s->thresholds.page, in);
}

static void draw_thresholds(struct session *s, struct canvas *c)
{
	thresholds_page_draw(&s->thresholds.page, c);
}

static struct message *message_thresholds(struct session *s)
{
	return &s->thresholds.page.message;
}

static struct wish key_alerts(struct session *s, struct input in)
{
	return alerts_page_key(&s->alerts.page, in);
}

static void draw_alerts(struct session *s, struct canvas *c)
{
	alerts_page_draw(&s->alerts.page, c);
}

static struct message *message_alerts(struct session *s)
{
	return &s->alerts.page.message;
}

static struct wish key_picks(struct session *s, struct input in)
{
	return picks_page_key(&s->picks.page, in);
}

static void draw_picks(struct session *s, struct canvas *c)
{
	picks_page_draw(&s->picks.page, c);
}

static struct message *message_picks(struct session *s)
{
	return &s->picks.page.message;
}

/* Keys are the page's, not the book's; a text was written when it was opened. */
static bool read_nothing(struct session *s, struct err *e)
{
	(void)s;
	(void)e;
	return true;
}

static struct wish key_help(struct session *s, struct input in)
{
	return help_page_key(&s->help_page, in);
}

static void draw_help(struct session *s, struct canvas *c)
{
	help_page_draw(&s->help_page, c);
}

static struct message *message_help(struct session *s)
{
	return &s->help_page.message;
}

const struct page_row session_pages[PAGE_COUNT] = {
	[PAGE_TODAY] = { N_("Today"), today_page_keys, NULL, read_today, key_today,
		draw_today, message_today, NULL },
	[PAGE_RUN] = { N_("Run"), run_page_keys, run_page_notes, read_run, key_run,
		draw_run, message_run, NULL },
	[PAGE_WEEK] = { N_("Week"), week_page_keys, week_page_notes, read_week,
		key_week, draw_week, message_week, NULL },
	[PAGE_WHY] = { N_("Why"), why_page_keys, NULL, read_why, key_why, draw_why,
		message_why, NULL },
	[PAGE_FLIGHT] = { N_("Flight"), flight_page_keys, flight_page_notes,
		session_read_flight, key_flight, draw_flight, message_flight, NULL },
	[PAGE_HOTSPOTS] = { N_("Hot spots"), hotspots_page_keys, hotspots_page_notes,
		session_read_hotspots, key_hotspots, draw_hotspots, message_hotspots,
		NULL },
	[PAGE_WEATHER] = { N_("Weather"), weather_page_keys, weather_page_notes,
		session_read_weather, key_weather, draw_weather, message_weather,
		NULL },
	[PAGE_START] = { N_("Start"), start_page_keys, NULL, session_read_start,
		key_start, draw_start, message_start, NULL },
	[PAGE_BOOK] = { N_("Book"), book_page_keys, NULL, session_read_book, key_book,
		draw_book, message_book, NULL },
	[PAGE_ENTRIES] = { N_("List"), entry_page_all_keys, NULL, session_read_entries,
		key_entries, draw_entries, message_entries, keys_entries },
	[PAGE_FORM] = { N_("Form"), form_page_keys, form_page_notes, session_read_form,
		key_form, draw_form, message_form, NULL },
	[PAGE_BACKUPS] = { N_("Backups"), backups_page_keys, NULL, session_read_backups,
		key_backups, draw_backups, message_backups, NULL },
	[PAGE_MERGE] = { N_("Merging"), merge_page_keys, NULL, session_read_merge,
		session_key_merge, session_draw_merge, session_message_merge, NULL },
	[PAGE_TEXT] = { N_("Text"), text_page_keys, NULL, read_nothing, key_text,
		draw_text, message_text, NULL },
	[PAGE_DIARY] = { N_("Diary"), diary_page_keys, diary_page_notes,
		session_read_diary, key_diary, draw_diary, message_diary, NULL },
	[PAGE_SERVICE] = { N_("Service"), service_page_keys, service_page_notes,
		session_read_service, key_service, draw_service, message_service,
		NULL },
	[PAGE_THRESHOLDS] = { N_("Thresholds"), thresholds_page_keys,
		thresholds_page_notes, session_read_thresholds, key_thresholds,
		draw_thresholds, message_thresholds, NULL },
	[PAGE_ALERTS] = { N_("Alerts"), alerts_page_keys, NULL, session_read_alerts,
		key_alerts, draw_alerts, message_alerts, NULL },
	[PAGE_PICKS] = { N_("Picks"), picks_page_keys, NULL, session_read_picks,
		key_picks, draw_picks, message_picks, NULL },
	[PAGE_HELP] = { N_("Keys"), help_page_keys, NULL, read_nothing, key_help,
		draw_help, message_help, NULL },
};
