#include "command/command.h"

#include "answers/settings.h"
#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"
#include "command/clock.h"
#include "session_act.h"
#include "session_book.h"
#include "session_past.h"
#include "session_season.h"
#include "term/term.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	LOOK_AGAIN_MS = 2000, /* how soon another program's change is noticed */
	REST_MS = 100,        /* a held key comes again sooner */
	PRINTING_MS = 200,    /* and that lp has ended */
};

static enum page shown(const struct session *s)
{
	return s->stack[s->depth];
}

void session_mark(const struct session *s, struct title title)
{
	char text[2 * DAY_TEXT_SIZE];
	int brief = (int)strcspn(s->notice, ":");

	if (!*s->notice)
		return;
	snprintf(text, sizeof text, "%.60s \302\267 %.60s", s->notice, title.whole);
	text_copy(title.whole, DAY_TEXT_SIZE, text);
	snprintf(text, sizeof text, "%.*s \302\267 %.60s", brief, s->notice,
		title.brief);
	text_copy(title.brief, DAY_TEXT_SIZE, text);
}

/* What another program changed while help was shown is still to be read after it. */
bool session_read(struct session *s, struct err *e)
{
	int64_t version = book_data_version(s->book);

	if (shown(s) == PAGE_HELP)
		return true;
	if (!session_pages[shown(s)].read(s, e))
		return false;
	s->data_version = version;
	return true;
}

/* A page left open over midnight is of the new day. */
static void turn_day(struct session *s)
{
	int32_t now = clock_day();

	if (!s->ctx->today_given && now != DAY_NONE)
		s->day = now;
}

bool session_read_log(struct session *s, struct err *e)
{
	turn_day(s);
	clock_stand(s->day, s->ctx->minute, &s->log.now, &s->log.zone);
	return settings_apply(s->book, s->ctx->settings, e) &&
	       log_read(&s->log, s->book, 0, s->day, e);
}

struct message *session_message(struct session *s)
{
	return session_pages[shown(s)].message(s);
}

static void push(struct session *s, enum page page)
{
	struct err e = { 0 };

	if (s->depth + 1 == DEPTH_MAX) {
		memmove(s->stack + 1, s->stack + 2, (DEPTH_MAX - 2) * sizeof *s->stack);
		s->depth--;
	}
	s->stack[++s->depth] = page;
	message_set(session_message(s), false, "%s", "");
	if (session_read(s, &e))
		return;
	s->depth--;
	message_set(session_message(s), true, "%s", e.text);
}

static void pop(struct session *s)
{
	struct err e = { 0 };

	if (s->depth == 0)
		return;
	s->depth--;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

void session_open(struct session *s, enum page page)
{
	push(s, page);
}

void session_back(struct session *s)
{
	pop(s);
}

void session_home(struct session *s)
{
	struct err e = { 0 };

	s->depth = 0;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

static void open_run(struct session *s, int64_t farm, int32_t day, bool push_it)
{
	struct err e = { 0 };

	if (!session_open_run(s, farm, day, true, &e))
		message_set(session_message(s), true, "%s", e.text);
	else if (push_it)
		push(s, PAGE_RUN);
}

static void open_help(struct session *s)
{
	enum page of = shown(s);

	if (of == PAGE_HELP)
		return;
	const struct page_row *row = &session_pages[of];
	s->help_page = (struct help_page){ .title = of == PAGE_TEXT ? s->text.page.title
								    : _(row->name),
		.keys = row->keys_now ? row->keys_now(s) : row->keys(),
		.notes = row->notes ? row->notes() : NULL };
	push(s, PAGE_HELP);
}

static void open_why(struct session *s, const struct wish *w)
{
	s->why.of_run = shown(s) == PAGE_RUN;
	s->why.trap = s->why.of_run   ? (int)log_trap(&s->run.log, w->visit.trap)
		      : w->visit.trap ? (int)log_trap(&s->log, w->visit.trap)
				      : w->trap;
	s->why.block = w->block;
	s->why.pest = w->pest;
	s->why.page.top = 0;
	s->why.page.answering.stage = ANSWERING_OFF;
	push(s, PAGE_WHY);
}

static void open_week(struct session *s, const struct wish *w)
{
	s->week.farm = w->farm;
	s->week.pest = w->pest;
	s->week.page.picked = s->week.page.top = 0;
	sift_end(&s->week.page.sift);
	push(s, PAGE_WEEK);
}

static void open_flight(struct session *s, const struct wish *w)
{
	const struct wish about = shown(s) == PAGE_WHY ? session_why_flight(s, *w) : *w;

	session_ask_flight(s, &about);
	push(s, PAGE_FLIGHT);
}

static void show_help(struct session *s, const struct wish *w)
{
	(void)w;
	open_help(s);
}

static void run_today(struct session *s, const struct wish *w)
{
	turn_day(s);
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
	push(s, PAGE_WEATHER);
}

static void open_book(struct session *s, const struct wish *w)
{
	(void)w;
	push(s, PAGE_BOOK);
}

static void open_hotspots(struct session *s, const struct wish *w)
{
	session_ask_hotspots(s, w);
	push(s, PAGE_HOTSPOTS);
}

static void print_sheet(struct session *s, const struct wish *w)
{
	session_sheet(s, w->farm, w->by != 0);
}

/* What is done for each want; WANT_QUIT ends the loop instead. */
typedef void deed(struct session *s, const struct wish *w);

static deed *const deeds[WANT_COUNT] = {
	[WANT_BACK] = session_leave,
	[WANT_HELP] = show_help,
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

/* Does what a page wants. False: the program ends. */
static bool grant(struct session *s, const struct wish *w)
{
	if (w->want == WANT_QUIT)
		return false;
	if (s->asked.want != w->want)
		s->asked = (struct asked){ 0 };
	if (deeds[w->want])
		deeds[w->want](s, w);
	if (shown(s) == PAGE_WEEK && (s->week.page.next_farm || s->week.page.next_pest))
		session_filter_week(s);
	if (shown(s) == PAGE_FLIGHT)
		session_turn_flight(s);
	if (shown(s) == PAGE_HOTSPOTS)
		session_turn_hotspots(s);
	if (shown(s) == PAGE_WEATHER)
		session_turn_weather(s);
	if (shown(s) == PAGE_FORM)
		session_try_form(s);
	if (shown(s) == PAGE_DIARY)
		session_turn_diary(s);
	if (shown(s) == PAGE_SERVICE)
		session_turn_service(s);
	if (shown(s) == PAGE_THRESHOLDS)
		session_turn_thresholds(s);
	return true;
}

static void look_again(struct session *s)
{
	struct err e = { 0 };

	if (shown(s) == PAGE_HELP || book_data_version(s->book) == s->data_version)
		return;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

static void show(struct session *s, struct canvas *c)
{
	int rows, cols;

	term_size(&rows, &cols);
	canvas_size(c, rows, cols);
	session_pages[shown(s)].draw(s, c);
	term_show(c);
}

static int patience_ms(const struct session *s)
{
	return session_waits(s)     ? REST_MS
	       : s->printing.job.lp ? PRINTING_MS
				    : LOOK_AGAIN_MS;
}

static void loop(struct session *s)
{
	struct canvas canvas = { 0 };
	bool on = true;

	while (on) {
		session_look_at_printer(s);
		show(s, &canvas);
		struct input in = term_read(patience_ms(s));
		if (in.kind == INPUT_LEAVE)
			break;
		if (in.kind == INPUT_NONE) {
			if (!session_catch_up(s))
				look_again(s);
			continue;
		}
		s->form.page.now_ms = s->service.page.now_ms = clock_ms();
		struct wish w = session_pages[shown(s)].key(s, in);
		on = grant(s, &w) && s->lost.kind == ERR_NONE;
	}
	canvas_free(&canvas);
}

static bool prepare(struct session *s, struct err *e)
{
	if (!session_open_book(s, e) || !settings_apply(s->book, s->ctx->settings, e) ||
		!book_setting(s->book, "scout", s->scout, sizeof s->scout, e))
		return false;
	text_copy(s->run.page.scout, sizeof s->run.page.scout, s->scout);
	if (!session_read(s, e))
		return false;
	if (session_is_empty(s))
		push(s, PAGE_START);
	return true;
}

/* look NULL: the terminal is open already. What is wrong with the book is said before it
 * is taken over. */
static bool run(const struct context *ctx, const char *notice,
	const struct term_look *look, struct err *e)
{
	struct session s = {
		.ctx = ctx, .notice = notice ? notice : "", .day = ctx->today
	};
	bool ok = prepare(&s, e) && (!look || term_open(*look, e));

	if (ok)
		loop(&s);
	if (look)
		term_close();
	if (ok && s.lost.kind != ERR_NONE)
		ok = err_set(e, s.lost.kind, "%s", s.lost.text);
	session_free(&s);
	return ok;
}

bool pages_within(const struct context *ctx, const char *notice, struct err *e)
{
	return run(ctx, notice, NULL, e);
}

bool pages_run(const struct context *ctx, const char *notice, struct err *e)
{
	const char *no_color = getenv("NO_COLOR");
	const struct term_look look = { .utf8 = ctx->utf8,
		.colour = !no_color || !*no_color };

	return run(ctx, notice, &look, e);
}
