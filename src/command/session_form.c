/* session_form.c - the form: a record opened, its fields looked at. */
#include "session_form.h"

#include "answers/entry_rules.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

int session_field_of(const struct entry_family *f, enum pick_from pick)
{
	for (size_t i = 0; i < f->n_columns; i++)
		if (f->columns[i].pick == pick)
			return (int)i;
	return -1;
}

/* What a threshold would have called, what a setting does, what a pick or a treatment
 * would mean. */
void session_try_form(struct session *s)
{
	struct form_page *p = &s->form.page;
	struct trial t = { 0 };
	struct rule r;

	entry_live(&p->entry, &s->log, p->live);
	if (p->entry.kind == ENTRY_SETTINGS)
		text_copy(p->live[0], sizeof p->live[0],
			_(setting_facts[p->entry.id - 1].says));
	if (p->entry.kind != ENTRY_THRESHOLDS || !entry_rule(&p->entry, &s->log, &r))
		return;
	trial_of(&s->log, &r, &t);
	text_copy(p->live[0], sizeof p->live[0], t.says);
	text_copy(p->live[1], sizeof p->live[1], t.never);
}

/* A lure draws one pest: when another was chosen, its lure is too. */
static void drop_lure(struct session *s, int left)
{
	struct form_page *p = &s->form.page;
	int lure = session_field_of(p->family, PICK_LURE);
	struct entry_choices fit = { 0 };
	bool fits = false;

	if (p->entry.kind != ENTRY_TRAPS ||
		left != session_field_of(p->family, PICK_PEST) ||
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

void session_offer_choices(struct session *s)
{
	struct form_page *p = &s->form.page;

	entry_choices_free(&s->form.choices);
	if (form_page_field(p) >= 0)
		entry_choices_of(
			&p->entry, form_page_field(p), &s->log, &s->form.choices);
	form_page_choose(p, s->form.choices.n > 0 ? &s->form.choices : NULL);
	session_try_form(s);
}

void session_show_form(struct session *s, const struct entry *r)
{
	s->form.move_asked = false;
	form_page_show(&s->form.page, &entry_families[r->kind], r);
	s->form.page.caution = session_caution(r->kind);
	session_offer_choices(s);
}

/* What the list is filtered by is what a new record most likely is of. */
static struct entry_ask ask_of(const struct session *s, const struct wish *w)
{
	struct entry_ask ask = { .kind = (enum entry_kind)w->kind,
		.farm = w->farm,
		.block = w->block,
		.pest = w->pest };

	if (ask.kind == s->entry.ask.kind && ask.farm == 0)
		ask.farm = s->entry.ask.farm;
	if (ask.kind == s->entry.ask.kind && ask.pest == 0)
		ask.pest = s->entry.ask.pest;
	if (ask.kind == s->entry.ask.kind && ask.block == 0)
		ask.block = s->entry.ask.block;
	return ask;
}

bool session_open_form(
	struct session *s, const struct entry_ask *ask, int64_t id, struct err *e)
{
	struct entry r = { 0 };

	if (!session_read_log(s, e) || !entry_read(&r, s->book, ask, id, &s->log, e))
		return false;
	session_show_form(s, &r);
	return true;
}

void session_form(struct session *s, const struct wish *w)
{
	const struct entry_ask ask = ask_of(s, w);
	struct err e = { 0 };

	s->form.then_traps = false;
	if (session_open_form(s, &ask, w->id, &e))
		session_open(s, PAGE_FORM);
	else
		message_set(session_message(s), true, "%s", e.text);
}

/* Their record stands in the form. */
static void say_theirs(struct form_page *p, const char *by)
{
	if (by[0])
		message_set(&p->message, false,
			_("Changed meanwhile by %s: this is how it stands now."), by);
	else
		message_set(&p->message, false,
			_("Changed meanwhile: this is how it stands now."));
}

/* Another program's change is shown; of a form in which is typed at its saving. */
bool session_read_form(struct session *s, struct err *e)
{
	struct form_page *p = &s->form.page;
	const struct entry_ask ask = { .kind = p->entry.kind };
	struct entry now = { 0 };
	struct err gone = { 0 };

	if (!session_read_log(s, e))
		return false;
	if (p->entry.id == 0 || form_page_changed(p)) {
		if (!p->chooser.open)
			session_offer_choices(s);
		return true;
	}
	if (!entry_read(&now, s->book, &ask, p->entry.id, &s->log, &gone))
		message_set(&p->message, true, "%s", gone.text);
	else if (strcmp(now.stamp.changed_at, p->entry.stamp.changed_at) != 0) {
		session_show_form(s, &now);
		say_theirs(p, now.stamp.changed_by);
	} else
		session_offer_choices(s);
	return true;
}

void session_form_field(struct session *s, const struct wish *w)
{
	struct form_page *p = &s->form.page;
	struct entry_fault fault = { .field = -1 };
	int left = form_page_left(p);

	(void)w;
	entry_settle_days(&p->entry, &s->log);
	if (left >= 0 && !entry_field_good(&p->entry, left, &fault))
		form_page_refuse(p, &fault);
	else if (left >= 0)
		drop_lure(s, left);
	session_offer_choices(s);
}

void session_theirs(struct session *s, const struct wish *w)
{
	const struct entry_ask ask = { .kind = s->form.page.entry.kind };
	struct err e = { 0 };

	(void)w;
	if (session_open_form(s, &ask, s->form.page.entry.id, &e))
		message_set(session_message(s), false,
			_("This is what stands in the book now."));
	else
		message_set(session_message(s), true, "%s", e.text);
}
