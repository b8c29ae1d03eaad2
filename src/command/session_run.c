/* What the run page wishes for: saving, taking back, the sheet. */
#include "session.h"

#include "answers/sheet.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "book/rules.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

static bool read_run(struct session *s, struct err *e)
{
	if (!log_read(&s->run_log, s->book, s->run_farm, s->run_day, e))
		return false;
	run_of(&s->run_log, s->run_farm, s->run_day, &s->run);
	s->run.today = s->ctx->today;
	session_mark(s, (struct title){ s->run.title_day, s->run.title_short });
	return run_read_words(&s->run, s->book, e);
}

bool session_open_run(
	struct session *s, int64_t farm, int32_t day, bool first, struct err *e)
{
	int64_t old_farm = s->run_farm;
	int32_t old_day = s->run_day;

	s->run_farm = farm;
	s->run_day = day;
	if (!read_run(s, e)) {
		s->run_farm = old_farm;
		s->run_day = old_day;
		return false;
	}
	s->run_page.limits = &s->run_log.limits;
	run_page_show(&s->run_page, &s->run, first);
	return true;
}

static void clock_text(char *out, size_t size)
{
	time_t now = time(NULL);
	struct tm local;

	if (!localtime_r(&now, &local) || strftime(out, size, "%H:%M:%S", &local) == 0)
		text_copy(out, size, "");
}

/* The initials last used stand in the run page the next time. */
static bool keep_scout(struct session *s, const char *scout, struct err *e)
{
	if (strcmp(scout, s->scout) == 0)
		return true;
	if (!book_put_setting(s->book, "scout", scout, e))
		return false;
	text_copy(s->scout, sizeof s->scout, scout);
	return true;
}

void session_save(struct session *s, const struct wish *w)
{
	struct err e = { 0 }, aside = { 0 };
	char clock[16];

	/* A count matters more than a backup: a failed one is said, after the save. */
	bool backed_up = book_daily_backup(s->book, s->ctx->today, &aside);
	book_set_who(s->book, *w->words.scout ? w->words.scout : s->ctx->who);
	if (!book_save_visit(s->book, &w->visit, &w->words, &e)) {
		run_page_not_saved(&s->run_page, e.text);
		return;
	}
	clock_text(clock, sizeof clock);
	bool ok = keep_scout(s, w->words.scout, &aside) && backed_up;
	if (!read_run(s, &aside))
		ok = false;
	run_page_saved(&s->run_page, &s->run, clock);
	if (!ok)
		message_set(&s->run_page.message, true, _("saved, but %s"), aside.text);
}

static const char *label_of(const struct session *s, int64_t trap)
{
	for (size_t i = 0; i < s->run.n; i++)
		if (s->run.traps[i].trap == trap)
			return s->run.traps[i].label;
	return "";
}

void session_undo(struct session *s)
{
	struct err e = { 0 };
	struct undone u;
	char was[SAY_SHORT];
	int32_t first = s->run_day - s->run_log.limits.open_days;

	if (!book_undo_visit(s->book, s->run_farm, first, s->run_day, &u, &e) ||
		!read_run(s, &e)) {
		message_set(
			&s->run_page.message, e.kind != ERR_NOT_FOUND, "%s", e.text);
		return;
	}
	run_page_show(&s->run_page, &s->run, false);
	run_page_pick(&s->run_page, u.trap);
	say_visit(&u.was, was);
	message_set(&s->run_page.message, false,
		u.removed ? _("taken back: trap %s is open again (it had %s)")
			  : _("taken back: trap %s has its older entry again (it had "
			      "%s)"),
		label_of(s, u.trap), was);
}
