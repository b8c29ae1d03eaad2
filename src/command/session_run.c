/* session_run.c - what the run page wishes for: saving, taking back, the sheet. */
#include "session_season.h"

#include "answers/sheet.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "book/rules.h"
#include "command/clock.h"

#include <stdio.h>
#include <string.h>

bool session_read_run(struct session *s, struct err *e)
{
	clock_stand(s->run.day, s->ctx->minute, &s->run.log.now, &s->run.log.zone);
	if (!log_read(&s->run.log, s->book, s->run.farm, s->run.day, e))
		return false;
	run_of(&s->run.log, s->run.farm, s->run.day, &s->run.answer);
	s->run.answer.today = s->day;
	session_mark(s,
		(struct title){ s->run.answer.title_day, s->run.answer.title_short });
	return run_read_words(&s->run.answer, s->book, e);
}

bool session_open_run(
	struct session *s, int64_t farm, int32_t day, bool first, struct err *e)
{
	int64_t old_farm = s->run.farm;
	int32_t old_day = s->run.day;

	s->run.farm = farm;
	s->run.day = day;
	if (!session_read_run(s, e)) {
		s->run.farm = old_farm;
		s->run.day = old_day;
		return false;
	}
	s->run.page.limits = &s->run.log.limits;
	run_page_show(&s->run.page, &s->run.answer, first);
	return true;
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

/* Who types now, whoever counted what is being corrected. */
const char *session_author(const struct session *s)
{
	return *s->run.page.scout ? s->run.page.scout : s->ctx->who;
}

static const struct run_trap *find_trap(const struct session *s, int64_t trap)
{
	for (size_t i = 0; i < s->run.answer.n; i++)
		if (s->run.answer.traps[i].trap == trap)
			return &s->run.answer.traps[i];
	return NULL;
}

/* The page took it that this stands on the trap's day (or nothing): another program
 * may have entered something since. */
static bool as_shown(struct session *s, const struct visit *v,
	const struct shown_visit *shown, struct err *e)
{
	struct visit there;
	struct visit_words words;
	struct err none = { 0 };
	char was[SAY_SHORT];

	if (!book_visit(s->book, v->trap, v->day, &there, &words, &none)) {
		if (none.kind == ERR_NOT_FOUND && !shown->visit)
			return true;
		if (none.kind != ERR_NOT_FOUND)
			return err_set(e, none.kind, "%s", none.text);
		return err_set(e, ERR_INPUT,
			_("the visit was taken out meanwhile; Enter puts yours in"));
	}
	if (shown->visit && visit_same(&there, shown->visit))
		return true;
	say_visit(&there, was);
	if (words.scout[0])
		return err_set(e, ERR_INPUT,
			_("trap %s got %s meanwhile from %s; Enter once more replaces "
			  "it"),
			shown->label, was, words.scout);
	return err_set(e, ERR_INPUT,
		_("trap %s got %s meanwhile; Enter once more replaces it"),
		shown->label, was);
}

bool session_save_visit(struct session *s, const struct wish *w,
	const struct shown_visit *shown, struct err *e)
{
	if (!book_begin(s->book, e))
		return false;
	if (as_shown(s, &w->visit, shown, e) &&
		book_save_visit(s->book, &w->visit, &w->words, e) &&
		book_commit(s->book, e))
		return true;
	book_rollback(s->book);
	return false;
}

static struct shown_visit shown_in_run(const struct session *s, const struct visit *v)
{
	const struct run_trap *t = find_trap(s, v->trap);
	bool there = t && !t->open && t->visit.day == v->day;

	if (t && t->is_serviced && t->serviced.day == v->day)
		return (struct shown_visit){ &t->serviced, t->label };
	return (struct shown_visit){ there ? &t->visit : NULL, t ? t->label : "" };
}

/* The page says itself that the count is not saved; what follows is why. */
const char *session_reason(const char *text)
{
	const char *said = _("this count is not saved");
	size_t n = strlen(said);

	return strncmp(text, said, n) == 0 && text[n] == ':' ? text + n + 2 : text;
}

/* That somebody was asked before an entry in a block that is barred stands in its note,
 * with the time, before whatever else is noted. Both whole: false when they do not
 * fit. */
bool session_note_asked(const struct session *s, struct wish *w, struct err *e)
{
	const struct visit_words typed = w->words;
	struct instant now;
	struct zone z;

	if (w->by == WAITING_FREE)
		return true;
	clock_stand(w->visit.day, s->ctx->minute, &now, &z);
	int32_t minute = instant_minute_of_day(now);
	int n = snprintf(w->words.note, sizeof w->words.note,
		w->by == WAITING_BARRED
			? _("entered before re-entry ended, asked %02d:%02d%s%s")
			: _("entered while re-entry was not known, asked %02d:%02d%s%s"),
		(int)(minute / 60), (int)(minute % 60), *typed.note ? "; " : "",
		typed.note);
	int over = n + 1 - (int)sizeof w->words.note;
	return over <= 0 ||
	       err_set(e, ERR_INPUT,
		       ngettext(
			       "its note must say that you were asked: shorten yours by "
			       "%d character",
			       "its note must say that you were asked: shorten yours by "
			       "%d characters",
			       (unsigned long)over),
		       over);
}

void session_save(struct session *s, const struct wish *w)
{
	struct wish noted = *w;
	const struct shown_visit shown = shown_in_run(s, &w->visit);
	struct err e = { 0 }, aside = { 0 };
	char clock[16];

	if (!session_note_asked(s, &noted, &e)) {
		message_set(&s->run.page.message, true, _("Not kept: %s"), e.text);
		return;
	}
	/* A count matters more than a backup: a failed one is said, after the save. */
	bool backed_up = book_daily_backup(s->book, s->day, &aside);
	book_set_who(s->book, session_author(s));
	session_note_page(s);
	if (!session_save_visit(s, &noted, &shown, &e)) {
		if (e.kind == ERR_INPUT)
			session_read_run(s, &aside);
		run_page_not_saved(&s->run.page, session_reason(e.text));
		return;
	}
	clock_text(clock, sizeof clock);
	bool ok = keep_scout(s, w->words.scout, &aside) && backed_up;
	if (!session_read_run(s, &aside))
		ok = false;
	run_page_saved(&s->run.page, &s->run.answer, clock);
	if (!ok)
		message_set(&s->run.page.message, true, _("saved, but %s"), aside.text);
}

static struct visit skipped(const struct session *s, int64_t trap)
{
	return (struct visit){ .trap = trap,
		.day = s->run.day,
		.outcome = OUTCOME_SKIPPED,
		.reason = REASON_REENTRY,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
}

/* All of the block's open traps, or none. Counts the traps. */
static bool pass_block(
	struct session *s, const struct wish *w, int *passed, struct err *e)
{
	bool ok = book_begin(s->book, e);

	*passed = 0;
	if (!ok)
		return false;
	for (size_t i = 0; ok && i < s->run.answer.n; i++) {
		const struct run_trap *t = &s->run.answer.traps[i];
		struct visit v = skipped(s, t->trap);
		if (t->block_id != w->block || !t->open || !t->hangs)
			continue;
		const struct shown_visit shown = shown_in_run(s, &v);
		if (shown.visit)
			v.new_lure = shown.visit->new_lure;
		ok = as_shown(s, &v, &shown, e) &&
		     book_save_visit(s->book, &v, &w->words, e);
		++*passed;
	}
	if (ok && book_commit(s->book, e))
		return true;
	book_rollback(s->book);
	return false;
}

void session_pass(struct session *s, const struct wish *w)
{
	struct err e = { 0 }, aside = { 0 };
	char clock[16];
	int passed = 0;

	session_before_change(s);
	if (!pass_block(s, w, &passed, &e)) {
		session_read_run(s, &aside);
		message_set(&s->run.page.message, true, "%s", e.text);
		return;
	}
	clock_text(clock, sizeof clock);
	if (!session_read_run(s, &e)) {
		message_set(&s->run.page.message, true, _("saved, but %s"), e.text);
		return;
	}
	run_page_passed(&s->run.page, &s->run.answer, passed, clock);
}

static const char *label_of(const struct session *s, int64_t trap)
{
	const struct run_trap *t = find_trap(s, trap);

	return t ? t->label : "";
}

void session_undo(struct session *s)
{
	struct err e = { 0 };
	struct undone u;
	char was[SAY_SHORT];
	int32_t first = s->run.day - s->run.log.limits.open_days;

	book_set_who(s->book, session_author(s));
	const struct undo_reach reach = { s->run.farm, 0, first, s->run.day,
		session_author(s) };
	if (!book_undo_visit(s->book, &reach, &u, &e) || !session_read_run(s, &e)) {
		if (e.kind == ERR_NOT_FOUND && *session_author(s))
			message_set(&s->run.page.message, false,
				_("Nothing that %s kept in this run is left to take "
				  "back."),
				session_author(s));
		else
			message_set(&s->run.page.message, e.kind != ERR_NOT_FOUND, "%s",
				e.text);
		return;
	}
	run_page_show(&s->run.page, &s->run.answer, false);
	run_page_pick(&s->run.page, u.trap);
	say_visit(&u.was, was);
	message_set(&s->run.page.message, false,
		u.removed ? _("taken back: trap %s is open again (it had %s)")
			  : _("taken back: trap %s has its older entry again (it had "
			      "%s)"),
		label_of(s, u.trap), was);
}
