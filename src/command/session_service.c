/* session_service.c - the Service page: what is due, what to bring, the shelf; lures
 * and cards changed outside a run. */
#include "session_book.h"
#include "session_past.h"
#include "session_season.h"

#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdio.h>

void session_service(struct session *s, const struct wish *w)
{
	s->service.farm = w->farm;
	service_page_free(&s->service.page);
	s->service.changed = 0;
	session_open(s, PAGE_SERVICE);
}

bool session_read_service(struct session *s, struct err *e)
{
	struct service_page *p = &s->service.page;

	if (!session_read_log(s, e))
		return false;
	const struct farm *f = log_farm(&s->log, s->service.farm);
	text_copy(s->service.filter, sizeof s->service.filter,
		f ? f->name : _("all farms"));
	due_of(&s->log, f ? f->id : 0, &s->service.due);
	due_by_day(&s->service.due);
	session_mark(s, (struct title){ s->service.due.today.title,
				s->service.due.today.title_short });
	if (!shelf_read(&s->service.shelf, s->book, &s->log, &s->service.due, e))
		return false;
	service_page_show(p, &s->service.due, &s->service.shelf);
	p->filter = s->service.filter;
	return true;
}

void session_turn_service(struct session *s)
{
	struct service_page *p = &s->service.page;
	struct err e = { 0 };
	size_t i = 0;

	if (!p->next_farm)
		return;
	p->next_farm = false;
	while (s->service.farm && i < s->log.farms.n &&
		s->log.farms.items[i].id != s->service.farm)
		i++;
	i += s->service.farm != 0;
	s->service.farm = i < s->log.farms.n ? s->log.farms.items[i].id : 0;
	p->picked = p->top = 0;
	if (!session_read_service(s, &e))
		message_set(&p->message, true, "%s", e.text);
}

/* What the wish is about, looked up. */
struct change {
	const struct trap *trap;
	bool is_lure;
	int64_t kind;
	bool is_there; /* the trap has a visit today */
	struct visit visit;
	struct visit_words words;
};

static bool find_change(
	struct session *s, const struct wish *w, struct change *c, struct err *e)
{
	struct err none = { 0 };

	*c = (struct change){ .is_lure = w->kind != 0 };
	if (w->trap < 0 || (size_t)w->trap >= s->log.traps.n)
		return err_set(e, ERR_NOT_FOUND, _("this trap is not in the book"));
	c->trap = &s->log.traps.items[w->trap];
	c->kind = c->is_lure ? s->log.lure_states[w->trap].kind
			     : s->log.card_states[w->trap].kind;
	if (w->id)
		c->kind = w->id;
	if (!c->kind)
		c->kind = c->is_lure ? c->trap->lure : c->trap->card;
	if (!c->kind)
		return err_set(e, ERR_INPUT,
			c->is_lure ? _("the book does not say which lure trap %s gets")
				   : _("the book does not say which card trap %s gets"),
			c->trap->label);
	c->is_there =
		book_visit(s->book, c->trap->id, s->day, &c->visit, &c->words, &none);
	if (!c->is_there && none.kind != ERR_NOT_FOUND)
		return err_set(e, none.kind, "%s", none.text);
	return true;
}

/* True: the page asks something first, also when a visit came or went meanwhile. */
static bool asks(struct session *s, const struct wish *w, const struct change *c)
{
	char was[SAY_SHORT], text[SAY_LINE];

	if (c->is_there ? w->by == 1 : w->by == 2 || c->is_lure)
		return false;
	say_visit(&c->visit, was);
	snprintf(text, sizeof text, _("Trap %s has a visit today (%s)"), c->trap->label,
		was);
	service_page_ask(&s->service.page, c->is_there ? text : NULL);
	return true;
}

/* Today's visit, with the flag. */
static bool mark_visit(struct change *c, struct err *e)
{
	enum outcome o = c->visit.outcome;

	if (o == OUTCOME_MISSING || o == OUTCOME_PULLED ||
		(o == OUTCOME_SKIPPED && !c->is_lure))
		return err_set(e, ERR_INPUT,
			_("trap %s has \"%s\" today: its diary corrects that"),
			c->trap->label, _(outcome_word(o)));
	if (c->is_lure)
		c->visit.new_lure = c->kind;
	else
		c->visit.new_card = c->kind;
	return true;
}

/* A lure says nothing of the moths on the card: the count stays open over it, as over a
 * skipped visit (visit_is_service). A card takes its moths along: counted, they close
 * the interval; not counted, nobody knows its catch. */
static void make_visit(struct session *s, struct change *c, int32_t count)
{
	c->visit = (struct visit){ .trap = c->trap->id,
		.day = s->day,
		.outcome = OUTCOME_SKIPPED,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
	c->words = (struct visit_words){ 0 };
	text_copy(c->words.scout, sizeof c->words.scout, s->run.page.scout);
	if (c->is_lure) {
		c->visit.new_lure = c->kind;
		return;
	}
	c->visit.new_card = c->kind;
	c->visit.count = count;
	c->visit.outcome = count == COUNT_NONE ? OUTCOME_SPOILED : OUTCOME_COUNTED;
	c->visit.reason = count == COUNT_NONE ? REASON_CARD_LOST : REASON_NONE;
}

static bool save_change(
	struct session *s, const struct wish *w, struct change *c, struct err *e)
{
	const struct visit was = c->visit;
	const struct shown_visit shown = { c->is_there ? &was : NULL, c->trap->label };
	struct wish save = page_wish(WANT_CHANGED);

	if (c->is_there) {
		if (!mark_visit(c, e))
			return false;
	} else
		make_visit(s, c, w->visit.count);
	save.visit = c->visit;
	save.words = c->words;
	session_before_change(s);
	return session_save_visit(s, &save, &shown, e);
}

/* Several farms may have a trap 3. */
static void say_trap_there(
	const struct session *s, const struct trap *t, char out[static SAY_LINE])
{
	const struct farm *f = log_farm(&s->log, t->farm);
	const struct block *b = log_block(&s->log, t->block);

	snprintf(out, SAY_LINE, _("%s, %s, trap %s"), f ? f->name : "",
		b ? b->name : "", t->label);
}

static void say_changed(struct session *s, const struct change *c)
{
	struct message *m = &s->service.page.message;
	char where[SAY_LINE];

	say_trap_there(s, c->trap, where);
	if (!session_has_changed(s))
		message_set(m, false, _("%s: it stood so already."), where);
	else if (c->is_lure)
		message_set(m, false, _("Saved: new lure today, %s. u takes it back."),
			where);
	else if (c->visit.outcome == OUTCOME_SPOILED && !c->is_there)
		message_set(m, false,
			_("Saved: new card today, %s; the old one was not counted: its "
			  "catch is unknown. u takes it back."),
			where);
	else
		message_set(m, false, _("Saved: new card today, %s. u takes it back."),
			where);
}

void session_changed(struct session *s, const struct wish *w)
{
	struct message *m = &s->service.page.message;
	struct err e = { 0 };
	struct change c;

	if (!find_change(s, w, &c, &e)) {
		message_set(m, true, "%s", e.text);
		return;
	}
	if (asks(s, w, &c))
		return;
	const struct trap trap = *c.trap; /* reading the book again moves the log */
	if (!save_change(s, w, &c, &e)) {
		message_set(m, true, _("NOT SAVED: %s"), session_reason(e.text));
		return;
	}
	c.trap = &trap;
	s->service.changed = session_has_changed(s) ? trap.id : 0;
	service_page_changed(&s->service.page);
	if (session_read_service(s, &e))
		say_changed(s, &c);
	else
		message_set(m, true, _("saved, but %s"), e.text);
	session_tell_bar(s, trap.id);
}

void session_undo_changed(struct session *s, const struct wish *w)
{
	struct message *m = &s->service.page.message;
	struct err e = { 0 };
	struct undone u;
	char where[SAY_LINE] = "";

	(void)w;
	if (s->service.changed == 0) {
		message_set(m, false, _("Nothing was changed on this page yet."));
		return;
	}
	session_before_change(s);
	const struct undo_reach reach = { 0, s->service.changed, s->day, s->day,
		session_author(s) };
	bool back = book_undo_visit(s->book, &reach, &u, &e);
	s->service.changed = 0;
	if (back && session_read_service(s, &e)) {
		size_t at = log_trap(&s->log, u.trap);
		if (at != SIZE_MAX)
			say_trap_there(s, &s->log.traps.items[at], where);
		message_set(m, false, _("Taken back: %s is as it was before."), where);
	} else
		message_set(m, true, "%s", e.text);
}
