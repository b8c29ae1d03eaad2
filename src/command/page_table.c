/* The pages of the loop, one row each: adding a page is adding a row. */
#include "session.h"

#include "base/words.h"

static bool read_today(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	today_of(&s->log, &s->today);
	if (!today_read_next(&s->log, s->book, &s->today, e))
		return false;
	session_mark(s, (struct title){ s->today.title, s->today.title_short });
	s->today_page.today = &s->today;
	return true;
}

static struct wish key_today(struct session *s, struct input in)
{
	return today_page_key(&s->today_page, in);
}

static void draw_today(struct session *s, struct canvas *c)
{
	today_page_draw(&s->today_page, c);
}

static struct message *message_today(struct session *s)
{
	return &s->today_page.message;
}

static bool read_run(struct session *s, struct err *e)
{
	return session_open_run(s, s->run_farm, s->run_day, false, e);
}

static struct wish key_run(struct session *s, struct input in)
{
	return run_page_key(&s->run_page, in);
}

static void draw_run(struct session *s, struct canvas *c)
{
	run_page_draw(&s->run_page, c);
}

static struct message *message_run(struct session *s)
{
	return &s->run_page.message;
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
	return week_page_key(&s->week_page, in);
}

static void draw_week(struct session *s, struct canvas *c)
{
	week_page_draw(&s->week_page, c);
}

static struct message *message_week(struct session *s)
{
	return &s->week_page.message;
}

/* Asked from the run page it is as it stood on the run's date. */
static bool read_why(struct session *s, struct err *e)
{
	if (s->why_of_run ? !session_read_run(s, e) : !session_read_log(s, e))
		return false;
	why_of(s->why_of_run ? &s->run_log : &s->log, s->why_trap, s->why_block,
		s->why_pest, &s->why);
	s->why_page.why = &s->why;
	s->why_page.right = s->why_of_run ? s->run.title_short : s->today.title_short;
	return true;
}

static struct wish key_why(struct session *s, struct input in)
{
	return why_page_key(&s->why_page, in);
}

static void draw_why(struct session *s, struct canvas *c)
{
	why_page_draw(&s->why_page, c);
}

static struct message *message_why(struct session *s)
{
	return &s->why_page.message;
}

static struct wish key_flight(struct session *s, struct input in)
{
	return flight_page_key(&s->flight_page, in);
}

static void draw_flight(struct session *s, struct canvas *c)
{
	flight_page_draw(&s->flight_page, c);
}

static struct message *message_flight(struct session *s)
{
	return &s->flight_page.message;
}

static struct wish key_weather(struct session *s, struct input in)
{
	return weather_page_key(&s->weather_page, in);
}

static void draw_weather(struct session *s, struct canvas *c)
{
	weather_page_draw(&s->weather_page, c);
}

static struct message *message_weather(struct session *s)
{
	return &s->weather_page.message;
}

static bool read_help(struct session *s, struct err *e)
{
	(void)s;
	(void)e;
	return true; /* the keys are the page's, not the book's */
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
		draw_today, message_today },
	[PAGE_RUN] = { N_("Run"), run_page_keys, run_page_notes, read_run, key_run,
		draw_run, message_run },
	[PAGE_WEEK] = { N_("Week"), week_page_keys, week_page_notes, read_week,
		key_week, draw_week, message_week },
	[PAGE_WHY] = { N_("Why"), why_page_keys, NULL, read_why, key_why, draw_why,
		message_why },
	[PAGE_FLIGHT] = { N_("Flight"), flight_page_keys, flight_page_notes,
		session_read_flight, key_flight, draw_flight, message_flight },
	[PAGE_WEATHER] = { N_("Weather"), weather_page_keys, weather_page_notes,
		session_read_weather, key_weather, draw_weather, message_weather },
	[PAGE_HELP] = { N_("Keys"), help_page_keys, NULL, read_help, key_help,
		draw_help, message_help },
};
