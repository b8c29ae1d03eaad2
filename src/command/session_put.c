/* session_put.c - the form put into the book, and what comes after it. */
#include "session_form.h"

#include "base/text.h"
#include "base/words.h"
#include "command/clock.h"

#include <stdio.h>
#include <string.h>

/* The farm that a record says it is of; 0: none. */
static int64_t farm_of(const struct session *s, const struct entry *r)
{
	const struct entry_family *f = &entry_families[r->kind];
	int field = r->kind == ENTRY_FARMS ? 0 : session_field_of(f, PICK_FARM);

	for (size_t i = 0; i < s->log.farms.n && field >= 0; i++)
		if (strcmp(s->log.farms.items[i].name, r->text[field]) == 0)
			return s->log.farms.items[i].id;
	return 0;
}

/* A new record of a farm in the form. */
static bool new_of_farm(
	struct session *s, enum entry_kind kind, int64_t farm, struct err *e)
{
	const struct entry_ask ask = { .kind = kind, .farm = farm };

	return session_open_form(s, &ask, 0, e);
}

/* The first trap of a block that was just put in. */
static bool trap_in(struct session *s, const struct entry *block, struct err *e)
{
	const struct entry_family *traps = &entry_families[ENTRY_TRAPS];
	const struct entry_ask ask = { .kind = ENTRY_TRAPS, .farm = farm_of(s, block) };
	int from = 0, to = session_field_of(traps, PICK_BLOCK);
	struct entry r = { 0 };

	while (strcmp(entry_families[ENTRY_BLOCKS].columns[from].name, "block") != 0)
		from++;
	if (!entry_read(&r, s->book, &ask, 0, &s->log, e))
		return false;
	if (to >= 0)
		text_copy(r.text[to], NAME_BYTES, block->text[from]);
	session_show_form(s, &r);
	s->form.page.now_ms = clock_ms();
	form_page_offer(&s->form.page, &r, block->name, true);
	session_offer_choices(s);
	return true;
}

/* Most traps of a farm hang since the same day. */
static void carry_day(const struct entry *saved, struct entry *next)
{
	const struct entry_family *f = &entry_families[ENTRY_TRAPS];

	for (size_t i = 0; i < f->n_columns; i++)
		if (strcmp(f->columns[i].name, "hung") == 0)
			text_copy(next->text[i], ENTRY_TEXT, saved->text[i]);
}

/* After a trap the next one is offered with one key; its guesses are those of this. */
static bool offer_next(struct session *s, const struct entry *saved, struct err *e)
{
	const struct entry_ask ask = { .kind = ENTRY_TRAPS, .farm = farm_of(s, saved) };
	struct entry next = { 0 };

	if (!session_read_log(s, e) || !entry_read(&next, s->book, &ask, 0, &s->log, e))
		return false;
	carry_day(saved, &next);
	s->form.page.now_ms = clock_ms();
	form_page_offer(&s->form.page, &next, saved->name, true);
	session_offer_choices(s);
	return true;
}

/* Goes on after a new record was saved: true, or the form is done. */
static bool go_on(struct session *s, const struct entry *saved, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	if (saved->kind == ENTRY_TRAPS)
		return offer_next(s, saved, e);
	if (s->form.then_traps && saved->kind == ENTRY_BLOCKS)
		return trap_in(s, saved, e);
	if (!s->form.beginning || saved->kind != ENTRY_FARMS ||
		!new_of_farm(s, ENTRY_BLOCKS, farm_of(s, saved), e))
		return false;
	message_set(&s->form.page.message, false, _("Saved: %s. Now its first block."),
		saved->name);
	return true;
}

/* What was typed in first is done: Today, once a trap hangs. */
static void end_beginning(struct session *s)
{
	s->form.beginning = false;
	if (s->log.traps.n == 0)
		return;
	session_home(s);
	message_set(session_message(s), false,
		_("What was saved stays; when the traps are counted, Enter begins the "
		  "run."));
}

void session_leave(struct session *s, const struct wish *w)
{
	bool was_form = session_shown(s) == PAGE_FORM;

	(void)w;
	if (session_shown(s) == PAGE_START && s->unmade) {
		message_set(session_message(s), false,
			_("There is no book yet: 1, 2 or 3 leads on, q ends."));
		return;
	}
	session_back(s);
	if (was_form && s->form.beginning)
		end_beginning(s);
	else if (was_form && s->form.saved_id)
		session_pick(s, s->form.saved_id);
	s->form.saved_id = 0;
}

/* The field says what the trap usually gets; what was put in at a visit stays so. */
static bool say_lure(struct session *s, const struct entry *r, int64_t lure_was)
{
	size_t at = r->kind == ENTRY_TRAPS ? log_trap(&s->log, r->id) : SIZE_MAX;

	if (at == SIZE_MAX || s->log.traps.items[at].lure == lure_was)
		return false;
	const struct lure_kind *there = log_lure(&s->log, s->log.lure_states[at].kind);
	if (!there || there->id == s->log.traps.items[at].lure)
		return false;
	message_set(session_message(s), false,
		_("Saved: %s. The lure in it now is still %s. If it never was: d, then k "
		  "on the visit that put it in."),
		r->name, words_shipped(there->name));
	return true;
}

static int64_t lure_of(const struct session *s, const struct entry *r)
{
	size_t at = r->kind == ENTRY_TRAPS ? log_trap(&s->log, r->id) : SIZE_MAX;

	return at == SIZE_MAX ? 0 : s->log.traps.items[at].lure;
}

static void saved(struct session *s, const struct entry *r, bool was_new)
{
	struct err e = { 0 };
	int64_t lure_was = lure_of(s, r);

	if (was_new && go_on(s, r, &e))
		return;
	session_leave(s, NULL);
	if (!was_new && e.kind == ERR_NONE && say_lure(s, r, lure_was))
		return;
	if (e.kind == ERR_NONE && !session_has_changed(s))
		message_set(session_message(s), false, _("Nothing was changed at %s."),
			r->name);
	else if (e.kind == ERR_NONE)
		message_set(session_message(s), false, _("Saved: %s."), r->name);
	else
		message_set(
			session_message(s), true, _("Saved: %s. %s"), r->name, e.text);
}

/* A book that is not made yet is made for what can be put into it. */
static bool put(struct session *s, struct entry *r, int how, struct entry_fault *fault)
{
	struct err e = { 0 };

	entry_settle_days(r, &s->log);
	struct entry first = *r;
	if (!entry_put(r, s->book, &s->log, how, fault))
		return false;
	s->form.saved_id = r->id;
	if (!s->unmade)
		return true;
	if (!session_make_book(s, &e)) {
		session_unmake_book(s);
		*fault = (struct entry_fault){ .field = -1 };
		text_copy(fault->text, sizeof fault->text, e.text);
		return false;
	}
	session_before_change(s);
	*r = first;
	if (entry_put(r, s->book, &s->log, how, fault)) {
		s->form.saved_id = r->id;
		return true;
	}
	session_unmake_book(s);
	return false;
}

/* By whom and when, as the book has it. */
static void say_elsewhere(struct session *s, struct entry_fault *fault)
{
	const struct entry_ask ask = { .kind = s->form.page.entry.kind };
	struct entry now = { 0 };
	const char *by = now.stamp.changed_by;
	char when[SAY_SHORT];

	if (!entry_read(&now, s->book, &ask, s->form.page.entry.id, &s->log, NULL))
		return;
	say_time(now.stamp.changed_at, when);
	if (by[0])
		snprintf(fault->text, sizeof fault->text,
			_("%s was changed meanwhile by %s, %s"), now.name, by, when);
	else
		snprintf(fault->text, sizeof fault->text,
			_("%s was changed meanwhile, %s"), now.name, when);
}

/* Once: a trap's visits go where the trap goes, into another block's answers. */
static bool asks_move(struct session *s, const struct entry *r)
{
	struct form_page *p = &s->form.page;
	int block = session_field_of(&entry_families[r->kind], PICK_BLOCK);
	size_t at =
		r->kind == ENTRY_TRAPS && r->id ? log_trap(&s->log, r->id) : SIZE_MAX;

	if (s->form.move_asked || at == SIZE_MAX || s->log.diaries[at].n_visits == 0 ||
		strcmp(r->text[block], p->was.text[block]) == 0)
		return false;
	s->form.move_asked = true;
	form_page_ask(p,
		_("Its past visits go to this block too: Enter moves them. If it was "
		  "carried there: Esc, then o takes this one down and n makes a new "
		  "one there."));
	return true;
}

void session_put(struct session *s, const struct wish *w)
{
	struct entry_fault fault = { .field = -1 };
	struct entry r = s->form.page.entry;
	bool was_new = r.id == 0;

	if (asks_move(s, &r))
		return;
	session_before_change(s);
	if (put(s, &r, w->by, &fault)) {
		session_take_scout(s);
		saved(s, &r, was_new);
		return;
	}
	if (fault.is_elsewhere)
		say_elsewhere(s, &fault);
	form_page_not_saved(&s->form.page, &fault);
	session_offer_choices(s);
}

/* From the offer of the next trap: another block, then the traps in it. */
void session_put_block(struct session *s, const struct wish *w)
{
	struct err e = { 0 };
	int64_t farm = farm_of(s, &s->form.page.entry);

	(void)w;
	s->form.then_traps = true;
	bool ok = new_of_farm(s, ENTRY_BLOCKS, farm, &e);
	message_set(session_message(s), !ok, "%s",
		ok ? _("The next block; then the traps in it.") : e.text);
}
