/* The form: a record opened, its fields looked at, put into the book. */
#include "session_book.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

/* Index of the first column that is chosen from `pick`; -1: none. */
static int field_of(const struct entry_family *f, enum pick_from pick)
{
	for (size_t i = 0; i < f->n_columns; i++)
		if (f->columns[i].pick == pick)
			return (int)i;
	return -1;
}

/* What a threshold would have called, as far as it is one. */
void session_try_form(struct session *s)
{
	struct form_page *p = &s->form_page;
	struct trial t = { 0 };
	struct rule r;

	p->live[0][0] = p->live[1][0] = '\0';
	if (p->entry.kind != ENTRY_THRESHOLDS || !entry_rule(&p->entry, &s->log, &r))
		return;
	trial_of(&s->log, &r, &t);
	text_copy(p->live[0], sizeof p->live[0], t.says);
	text_copy(p->live[1], sizeof p->live[1], t.never);
}

/* A lure draws one pest: when another was chosen, its lure is too. */
static void drop_lure(struct session *s, int left)
{
	struct form_page *p = &s->form_page;
	int lure = field_of(p->family, PICK_LURE);
	struct entry_choices fit = { 0 };
	bool fits = false;

	if (p->entry.kind != ENTRY_TRAPS || left != field_of(p->family, PICK_PEST) ||
		strcmp(p->entry.text[left], p->was.text[left]) == 0 ||
		!p->entry.text[lure][0])
		return;
	entry_choices_of(&p->entry, lure, &s->log, &fit);
	for (size_t i = 0; i < fit.n; i++)
		fits |= strcmp(fit.items[i].text, p->entry.text[lure]) == 0;
	entry_choices_free(&fit);
	if (fits)
		return;
	message_set(&p->message, false,
		_("%s is no lure for %s: its lure is open now."), p->entry.text[lure],
		p->entry.text[left]);
	p->entry.text[lure][0] = '\0';
}

static void offer_choices(struct session *s)
{
	struct form_page *p = &s->form_page;

	entry_choices_free(&s->choices);
	if (form_page_field(p) >= 0)
		entry_choices_of(&p->entry, form_page_field(p), &s->log, &s->choices);
	form_page_choose(p, s->choices.n > 0 ? &s->choices : NULL);
	session_try_form(s);
}

static void show_form(struct session *s, const struct entry *r)
{
	s->move_asked = false;
	form_page_show(&s->form_page, &entry_families[r->kind], r);
	s->form_page.caution = session_caution(r->kind);
	offer_choices(s);
}

/* What the list is filtered by is what a new record most likely is of. */
static struct entry_ask ask_of(const struct session *s, const struct wish *w)
{
	struct entry_ask ask = { .kind = (enum entry_kind)w->kind,
		.farm = w->farm,
		.block = w->block,
		.pest = w->pest };

	if (ask.kind == s->entry_ask.kind && ask.farm == 0)
		ask.farm = s->entry_ask.farm;
	if (ask.kind == s->entry_ask.kind && ask.pest == 0)
		ask.pest = s->entry_ask.pest;
	if (ask.kind == s->entry_ask.kind && ask.block == 0)
		ask.block = s->entry_ask.block;
	return ask;
}

static bool open_form(
	struct session *s, const struct entry_ask *ask, int64_t id, struct err *e)
{
	struct entry r = { 0 };

	if (!session_read_log(s, e) || !entry_read(&r, s->book, ask, id, &s->log, e))
		return false;
	show_form(s, &r);
	return true;
}

void session_form(struct session *s, const struct wish *w)
{
	const struct entry_ask ask = ask_of(s, w);
	struct err e = { 0 };

	s->then_traps = false;
	if (open_form(s, &ask, w->id, &e))
		session_open(s, PAGE_FORM);
	else
		message_set(session_message(s), true, "%s", e.text);
}

/* Another program's change is shown; of a form in which is typed at its saving. */
bool session_read_form(struct session *s, struct err *e)
{
	struct form_page *p = &s->form_page;
	const struct entry_ask ask = { .kind = p->entry.kind };
	struct entry now = { 0 };
	struct err gone = { 0 };

	if (!session_read_log(s, e))
		return false;
	if (p->entry.id == 0 || form_page_changed(p)) {
		if (!p->chooser.open)
			offer_choices(s);
		return true;
	}
	if (!entry_read(&now, s->book, &ask, p->entry.id, &s->log, &gone))
		message_set(&p->message, true, "%s", gone.text);
	else if (strcmp(now.stamp.changed_at, p->entry.stamp.changed_at) != 0) {
		show_form(s, &now);
		message_set(&p->message, false,
			_("Changed meanwhile%s%s: this is how it stands now."),
			now.stamp.changed_by[0] ? _(" by ") : "", now.stamp.changed_by);
	} else
		offer_choices(s);
	return true;
}

void session_form_field(struct session *s, const struct wish *w)
{
	struct form_page *p = &s->form_page;
	struct entry_fault fault = { .field = -1 };
	int left = form_page_left(p);

	(void)w;
	if (left >= 0 && !entry_field_good(&p->entry, left, &fault))
		form_page_refuse(p, &fault);
	else if (left >= 0)
		drop_lure(s, left);
	offer_choices(s);
}

void session_theirs(struct session *s, const struct wish *w)
{
	const struct entry_ask ask = { .kind = s->form_page.entry.kind };
	struct err e = { 0 };

	(void)w;
	if (open_form(s, &ask, s->form_page.entry.id, &e))
		message_set(session_message(s), false,
			_("This is what stands in the book now."));
	else
		message_set(session_message(s), true, "%s", e.text);
}

/* The farm that a record says it is of; 0: none. */
static int64_t farm_of(const struct session *s, const struct entry *r)
{
	const struct entry_family *f = &entry_families[r->kind];
	int field = r->kind == ENTRY_FARMS ? 0 : field_of(f, PICK_FARM);

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

	return open_form(s, &ask, 0, e);
}

/* The first trap of a block that was just put in. */
static bool trap_in(struct session *s, const struct entry *block, struct err *e)
{
	const struct entry_family *traps = &entry_families[ENTRY_TRAPS];
	const struct entry_ask ask = { .kind = ENTRY_TRAPS, .farm = farm_of(s, block) };
	int from = 0, to = field_of(traps, PICK_BLOCK);
	struct entry r = { 0 };

	while (strcmp(entry_families[ENTRY_BLOCKS].columns[from].name, "block") != 0)
		from++;
	if (!entry_read(&r, s->book, &ask, 0, &s->log, e))
		return false;
	if (to >= 0)
		text_copy(r.text[to], NAME_BYTES, block->text[from]);
	show_form(s, &r);
	form_page_offer(&s->form_page, &r, block->name, true);
	offer_choices(s);
	return true;
}

/* After a trap the next one is offered with one key; its guesses are those of this. */
static bool offer_next(struct session *s, const struct entry *saved, struct err *e)
{
	const struct entry_ask ask = { .kind = ENTRY_TRAPS, .farm = farm_of(s, saved) };
	struct entry next = { 0 };

	if (!session_read_log(s, e) || !entry_read(&next, s->book, &ask, 0, &s->log, e))
		return false;
	form_page_offer(&s->form_page, &next, saved->name, true);
	offer_choices(s);
	return true;
}

/* Goes on after a new record was saved: true, or the form is done. */
static bool go_on(struct session *s, const struct entry *saved, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	if (saved->kind == ENTRY_TRAPS)
		return offer_next(s, saved, e);
	if (s->then_traps && saved->kind == ENTRY_BLOCKS)
		return trap_in(s, saved, e);
	if (!s->beginning || saved->kind != ENTRY_FARMS ||
		!new_of_farm(s, ENTRY_BLOCKS, farm_of(s, saved), e))
		return false;
	message_set(&s->form_page.message, false, _("Saved: %s. Now its first block."),
		saved->name);
	return true;
}

/* What was typed in first is done: Today, once a trap hangs. */
static void end_beginning(struct session *s)
{
	s->beginning = false;
	if (s->log.traps.n == 0)
		return;
	session_home(s);
	message_set(session_message(s), false,
		_("Saved; when the traps are counted, Enter begins the run."));
}

void session_leave(struct session *s, const struct wish *w)
{
	bool was_form = s->stack[s->depth] == PAGE_FORM;

	(void)w;
	if (s->stack[s->depth] == PAGE_START && s->unmade) {
		message_set(session_message(s), false,
			_("There is no book yet: 1, 2 or 3 leads on, q ends."));
		return;
	}
	session_back(s);
	if (was_form && s->beginning)
		end_beginning(s);
	else if (was_form && s->saved_id && s->stack[s->depth] == PAGE_ENTRIES)
		entry_page_pick(&s->entry_page, s->saved_id);
	s->saved_id = 0;
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
		_("Saved: %s. The lure in it now is still %s. If it never was: d, and on "
		  "the visit that put it in * and Enter, then * and Enter again."),
		r->name, there->name);
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
	message_set(session_message(s), e.kind != ERR_NONE, _("Saved: %s.%s%s"),
		r->name, e.kind ? " " : "", e.text);
}

/* A book that is not made yet is made for what can be put into it. */
static bool put(struct session *s, struct entry *r, int how, struct entry_fault *fault)
{
	struct entry first = *r;
	struct err e = { 0 };

	if (!entry_put(r, s->book, &s->log, how, fault))
		return false;
	s->saved_id = r->id;
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
		s->saved_id = r->id;
		return true;
	}
	session_unmake_book(s);
	return false;
}

enum { TIME_AT = 11, TIME_CHARS = 5, DATE_CHARS = 10 }; /* of a stamp's time */

/* By whom and when, as the book has it. */
static void say_elsewhere(struct session *s, struct entry_fault *fault)
{
	const struct entry_ask ask = { .kind = s->form_page.entry.kind };
	struct entry now = { 0 };
	const char *at = now.stamp.changed_at, *by = now.stamp.changed_by;

	if (!entry_read(&now, s->book, &ask, s->form_page.entry.id, &s->log, NULL))
		return;
	snprintf(fault->text, sizeof fault->text,
		_("%s was changed meanwhile%s%s, %.*s %.*s UTC"), now.name,
		by[0] ? _(" by ") : "", by, DATE_CHARS, at, TIME_CHARS, at + TIME_AT);
}

/* Once: a trap's visits go where the trap goes, into another block's answers. */
static bool asks_move(struct session *s, const struct entry *r)
{
	struct form_page *p = &s->form_page;
	int block = field_of(&entry_families[r->kind], PICK_BLOCK);
	size_t at =
		r->kind == ENTRY_TRAPS && r->id ? log_trap(&s->log, r->id) : SIZE_MAX;

	if (s->move_asked || at == SIZE_MAX || s->log.diaries[at].n_visits == 0 ||
		strcmp(r->text[block], p->was.text[block]) == 0)
		return false;
	s->move_asked = true;
	form_page_ask(p,
		_("Its past visits go to this block too: Enter moves them. If it was "
		  "carried there, Esc; then r hangs a new one."));
	return true;
}

void session_put(struct session *s, const struct wish *w)
{
	struct entry_fault fault = { .field = -1 };
	struct entry r = s->form_page.entry;
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
	form_page_not_saved(&s->form_page, &fault);
	offer_choices(s);
}

/* From the offer of the next trap: another block, then the traps in it. */
void session_put_block(struct session *s, const struct wish *w)
{
	struct err e = { 0 };
	int64_t farm = farm_of(s, &s->form_page.entry);

	(void)w;
	s->then_traps = true;
	bool ok = new_of_farm(s, ENTRY_BLOCKS, farm, &e);
	message_set(session_message(s), !ok, "%s",
		ok ? _("The next block; then the traps in it.") : e.text);
}
