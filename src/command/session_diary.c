/* session_diary.c - the Diary page: a trap's visits corrected, added, taken out and
 * taken back. */
#include "session_act.h"
#include "session_past.h"
#include "session_season.h"

#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "command/clock.h"

#include <stdio.h>

/* The trap that the page shown is about: an id; 0: none. */
static int64_t trap_of(const struct session *s, const struct wish *w)
{
	const struct traps *all = &s->log.traps;

	if (w->visit.trap)
		return w->visit.trap;
	if (w->kind == ENTRY_TRAPS && w->id)
		return w->id;
	if (session_shown(s) == PAGE_WHY)
		return s->why.trap;
	return w->trap >= 0 && (size_t)w->trap < all->n ? all->items[w->trap].id : 0;
}

void session_diary(struct session *s, const struct wish *w)
{
	int64_t trap = trap_of(s, w);

	int64_t block = session_shown(s) == PAGE_WHY ? s->why.block : w->block;

	if (trap == 0 && block) {
		session_block_diary(s, block);
		return;
	}
	if (trap == 0) {
		message_set(session_message(s), false,
			_("Pick a trap or a block: a diary is of one."));
		return;
	}
	s->diary.trap = trap;
	s->diary.season = 0;
	s->diary.anew = true;
	session_open(s, PAGE_DIARY);
}

bool session_read_diary(struct session *s, struct err *e)
{
	if (!session_read_log(s, e) ||
		!trap_diary_read(&s->diary.answer, s->book, &s->log, s->diary.trap,
			s->diary.season, e))
		return false;
	text_copy(s->diary.page.typed.scout, sizeof s->diary.page.typed.scout,
		s->run.page.scout);
	s->diary.page.right = s->today.answer.title_short;
	diary_page_show(
		&s->diary.page, &s->diary.answer, &s->log.limits, s->diary.anew);
	s->diary.anew = false;
	return true;
}

void session_save_past(struct session *s, const struct wish *w)
{
	struct diary_page *p = &s->diary.page;
	struct wish noted = *w;
	const struct visit there = p->trap.visit;
	const struct shown_visit shown = { p->trap.open ? NULL : &there,
		p->trap.label };
	struct err e = { 0 }, aside = { 0 };
	char clock[16];

	if (!session_note_asked(s, &noted, &e)) {
		message_set(&p->message, true, _("Not kept: %s"), e.text);
		return;
	}
	session_before_change(s);
	if (!session_save_visit(s, &noted, &shown, &e)) {
		if (e.kind == ERR_INPUT)
			session_read_diary(s, &aside);
		diary_page_not_saved(p, session_reason(e.text));
		return;
	}
	clock_text(clock, sizeof clock);
	bool read = session_read_diary(s, &aside);
	diary_page_saved(p, &s->diary.answer, clock);
	if (!read)
		message_set(&p->message, true, _("saved, but %s"), aside.text);
}

/* In one transaction: what is taken out is what was shown. */
static bool take_out(struct session *s, const struct wish *w, struct err *e)
{
	struct visit there;

	if (!book_begin(s->book, e))
		return false;
	bool same = book_visit(s->book, w->visit.trap, w->day, &there, NULL, e) &&
		    (visit_same(&there, &w->visit) ||
			    err_set(e, ERR_INPUT,
				    _("this visit was changed meanwhile: look at it "
				      "again")));
	if (same && book_remove_visit(s->book, w->visit.trap, w->day, e) &&
		book_commit(s->book, e))
		return true;
	book_rollback(s->book);
	return false;
}

void session_remove_visit(struct session *s, const struct wish *w)
{
	struct message *m = &s->diary.page.message;
	struct err e = { 0 }, aside = { 0 };
	char day[DAY_TEXT_SIZE], was[SAY_SHORT];

	session_before_change(s);
	bool out = take_out(s, w, &e);
	if (!session_read_diary(s, out ? &e : &aside) || !out) {
		message_set(m, true, "%s", e.text);
		return;
	}
	day_short(w->day, day, sizeof day);
	say_visit(&w->visit, was);
	message_set(m, false, _("Taken out: %s (%s). u brings it back."), day, was);
}

static const struct diary_row *row_of(const struct trap_diary *d, int32_t day)
{
	for (size_t i = 0; i < d->n; i++)
		if (d->rows[i].visit.day == day)
			return &d->rows[i];
	return NULL;
}

static void say_undone(struct session *s, const struct undone *u)
{
	struct message *m = &s->diary.page.message;
	const struct diary_row *now = row_of(&s->diary.answer, u->day);
	char day[DAY_TEXT_SIZE], was[SAY_SHORT], kinds[SAY_LINE] = "";

	day_short(u->day, day, sizeof day);
	say_visit(&u->was, was);
	if (now)
		diary_page_say_kinds(&s->diary.page, &u->was, &now->visit, kinds);
	if (u->removed)
		message_set(m, false,
			_("Taken back: the visit of %s is out again (it had %s)."), day,
			was);
	else if (u->was.trap == 0)
		message_set(m, false, _("Taken back: the visit of %s is there again."),
			day);
	else
		message_set(m, false,
			_("Taken back: %s has its older entry again (it had %s%s)."),
			day, was, kinds);
}

void session_undo_past(struct session *s, const struct wish *w)
{
	struct message *m = &s->diary.page.message;
	const char *by = session_author(s);
	struct err e = { 0 };
	struct undone u;

	(void)w;
	session_before_change(s);
	const struct undo_reach reach = { 0, s->diary.trap, s->diary.answer.first,
		s->diary.answer.last, by };
	if (book_undo_visit(s->book, &reach, &u, &e) && session_read_diary(s, &e)) {
		diary_page_pick(&s->diary.page, u.day);
		say_undone(s, &u);
	} else if (e.kind == ERR_NOT_FOUND && *by)
		message_set(m, false,
			_("Nothing that %s changed in this season is left to take "
			  "back."),
			by);
	else
		message_set(m, e.kind != ERR_NOT_FOUND, "%s", e.text);
}

void session_turn_diary(struct session *s)
{
	struct diary_page *p = &s->diary.page;
	struct err e = { 0 };
	int was = s->diary.season;

	if (!p->turn_season)
		return;
	p->turn_season = false;
	if (!s->diary.answer.earlier && !s->diary.answer.later) {
		message_set(&p->message, false,
			_("No other season has visits of this trap."));
		return;
	}
	s->diary.season = s->diary.answer.earlier; /* 0: round to the present one */
	s->diary.anew = true;
	if (session_read_diary(s, &e))
		return;
	s->diary.season = was;
	message_set(&p->message, true, "%s", e.text);
}
