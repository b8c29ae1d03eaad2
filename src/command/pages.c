/* pages.c - the page loop: reads a key, does what the page wishes, draws again. */
#include "command/command.h"

#include "answers/settings.h"
#include "base/text.h"
#include "book/rules.h"
#include "command/clock.h"
#include "deeds.h"
#include "session_book.h"
#include "session_past.h"
#include "term/term.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	LOOK_AGAIN_MS = 2000, /* how soon another program's change is noticed */
	REST_MS = 100,        /* a held key comes again sooner */
	PRINTING_MS = 200,    /* and that lp has ended */
};

enum page session_shown(const struct session *s)
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

	if (session_shown(s) == PAGE_HELP)
		return true;
	if (!session_pages[session_shown(s)].read(s, e))
		return false;
	s->data_version = version;
	return true;
}

void session_turn_day(struct session *s)
{
	int32_t now = clock_day();

	if (!s->ctx->today_given && now != DAY_NONE)
		s->day = now;
}

bool session_read_log(struct session *s, struct err *e)
{
	session_turn_day(s);
	clock_stand(s->day, s->ctx->minute, &s->log.now, &s->log.zone);
	return settings_apply(s->book, s->ctx->settings, e) &&
	       log_read(&s->log, s->book, 0, s->day, e);
}

struct message *session_message(struct session *s)
{
	return session_pages[session_shown(s)].message(s);
}

void session_pick(struct session *s, int64_t id)
{
	if (session_pages[session_shown(s)].pick)
		session_pages[session_shown(s)].pick(s, id);
}

void session_open(struct session *s, enum page page)
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

void session_back(struct session *s)
{
	struct err e = { 0 };

	if (s->depth == 0)
		return;
	s->depth--;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

void session_home(struct session *s)
{
	struct err e = { 0 };

	s->depth = 0;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

/* Does what a page wants. False: the program ends. */
static bool grant(struct session *s, const struct wish *w)
{
	if (w->want == WANT_QUIT)
		return false;
	if (s->asked.want != w->want)
		s->asked = (struct asked){ 0 };
	if (session_deeds[w->want])
		session_deeds[w->want](s, w);
	if (session_pages[session_shown(s)].turn)
		session_pages[session_shown(s)].turn(s);
	return true;
}

static void look_again(struct session *s)
{
	struct err e = { 0 };

	if (session_shown(s) == PAGE_HELP ||
		book_data_version(s->book) == s->data_version)
		return;
	if (!session_read(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

static void show(struct session *s, struct canvas *c)
{
	int rows, cols;

	term_size(&rows, &cols);
	canvas_size(c, rows, cols);
	session_pages[session_shown(s)].draw(s, c);
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
		struct wish w = session_pages[session_shown(s)].key(s, in);
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
		session_open(s, PAGE_START);
	return true;
}

/* look NULL: the terminal is open already. What is wrong with the book is said before
 * it is taken over. */
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
