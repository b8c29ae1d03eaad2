/* session_book.c - the Book page, the lists of records, and what is done on a record
 * from there. */
#include "session_book.h"

#include "answers/entry_changes.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

/* How many there are, and how many of them are put away. */
static bool count(
	struct session *s, enum entry_kind kind, struct book_line *line, struct err *e)
{
	const struct entry_ask ask = { .kind = kind };
	struct entry_list list = { 0 };
	bool ok = entry_list_read(&list, s->book, &ask, &s->log, e);

	if (list.n_hidden > 0)
		snprintf(line->count, sizeof line->count,
			entry_families[kind].can_move ? _("%zu, %d pulled")
						      : _("%zu, %d put away"),
			list.n, list.n_hidden);
	else
		snprintf(line->count, sizeof line->count, "%zu", list.n);
	entry_list_free(&list);
	return ok;
}

static bool add_family(struct session *s, enum entry_kind kind, struct err *e)
{
	struct book_line *line = &s->book_page.lines[s->book_page.n++];

	*line = (struct book_line){ .want = WANT_ENTRIES,
		.kind = (int)kind,
		.name = _(entry_families[kind].name),
		.help = _(entry_families[kind].help) };
	if (kind == ENTRY_THRESHOLDS)
		line->want = WANT_THRESHOLDS;
	return count(s, kind, line, e);
}

static struct book_line *add_line(
	struct session *s, enum want want, const char *name, const char *help)
{
	struct book_line *line = &s->book_page.lines[s->book_page.n++];

	*line = (struct book_line){ .want = want, .name = name, .help = help };
	return line;
}

bool session_read_book(struct session *s, struct err *e)
{
	struct book_line *line = NULL;
	bool ok = session_read_log(s, e);

	s->book_page.n = 0;
	for (int kind = 0; kind < ENTRY_KINDS && ok; kind++)
		ok = add_family(s, (enum entry_kind)kind, e);
	if (!ok || !book_backups(s->ctx->book_path, &s->backups.found, e))
		return false;
	line = add_line(s, WANT_WEATHER, _("weather"),
		_("Temperatures of the stations, day by day."));
	snprintf(line->count, sizeof line->count,
		ngettext("%zu station", "%zu stations", s->log.stations.n),
		s->log.stations.n);
	line = add_line(
		s, WANT_BACKUPS, _("backups"), _("Copies of the book, to go back to."));
	snprintf(line->count, sizeof line->count, "%zu", s->backups.found.n);
	ok = merging_open(s->book, &s->merge.matters, e);
	line = add_line(s, WANT_MERGE_PAGE, _("merging"),
		_("Another scout's book, brought into this one."));
	if (s->merge.matters.n > 0)
		snprintf(line->count, sizeof line->count, _("%zu to settle"),
			s->merge.matters.n);
	s->book_page.right = s->ctx->book_path;
	return ok;
}

const char *session_caution(enum entry_kind kind)
{
	return entry_families[kind].is_act ? say_caution_acts() : NULL;
}

bool session_read_entries(struct session *s, struct err *e)
{
	if (!session_read_log(s, e) ||
		!entry_list_read(&s->entry.answer, s->book, &s->entry.ask, &s->log, e))
		return false;
	entry_page_show(&s->entry.page, &entry_families[s->entry.ask.kind],
		&s->entry.answer, s->entry.anew);
	s->entry.page.caution = session_caution(s->entry.ask.kind);
	s->entry.anew = false;
	return true;
}

void session_entries(struct session *s, const struct wish *w)
{
	s->entry.ask = (struct entry_ask){ .kind = (enum entry_kind)w->kind,
		.farm = w->farm,
		.block = w->block,
		.pest = w->pest };
	s->entry.anew = true;
	session_open(s, PAGE_ENTRIES);
}

/* The list again, after it was asked for in another way. */
static void ask_anew(struct session *s)
{
	struct err e = { 0 };

	s->entry.anew = true;
	if (!session_read_entries(s, &e))
		message_set(session_message(s), true, "%s", e.text);
}

void session_entry_farm(struct session *s, const struct wish *w)
{
	const struct farms *f = &s->log.farms;
	size_t i = 0;

	(void)w;
	while (i < f->n && f->items[i].id != s->entry.ask.farm)
		i++;
	i = s->entry.ask.farm == 0 ? 0 : i + 1;
	s->entry.ask.farm = i < f->n ? f->items[i].id : 0;
	ask_anew(s);
}

void session_entry_pest(struct session *s, const struct wish *w)
{
	const struct pests *p = &s->log.pests;
	size_t i = 0;

	(void)w;
	while (i < p->n && p->items[i].id != s->entry.ask.pest)
		i++;
	i = s->entry.ask.pest == 0 ? 0 : i + 1;
	while (i < p->n && p->items[i].retired)
		i++;
	s->entry.ask.pest = i < p->n ? p->items[i].id : 0;
	ask_anew(s);
}

void session_entry_all(struct session *s, const struct wish *w)
{
	(void)w;
	s->entry.ask.retired = !s->entry.ask.retired;
	ask_anew(s);
	bool pulled = entry_families[s->entry.ask.kind].can_move;
	message_set(session_message(s), false, "%s",
		!s->entry.ask.retired ? pulled ? _("Without those that are pulled.")
					       : _("Without those that are put away.")
		: pulled ? _("With those that are pulled: a hides them.")
			 : _("With those that are put away: a hides them."));
}

/* The record's name, before something is done to it. */
static bool name_of(struct session *s, const struct wish *w, char out[static SAY_LINE],
	struct err *e)
{
	const struct entry_ask ask = { .kind = (enum entry_kind)w->kind };
	struct entry r = { 0 };
	bool ok = entry_read(&r, s->book, &ask, w->id, &s->log, e);

	snprintf(out, SAY_LINE, "%s", r.name);
	return ok;
}

/* Reads the page again and says what was done, or why not. */
static void tell(
	struct session *s, bool ok, const char *done, const char *name, struct err *e)
{
	struct err again = { 0 };

	if (!session_read(s, &again) && ok)
		message_set(session_message(s), true, "%s", again.text);
	else if (ok && !session_has_changed(s))
		message_set(session_message(s), false, _("Nothing was changed at %s."),
			name);
	else if (ok)
		message_set(session_message(s), false, _("%s: %s. u takes it back."),
			done, name);
	else
		message_set(session_message(s), true, "%s", e->text);
}

void session_retire(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	session_before_change(s);
	bool ok = name_of(s, w, name, &e) &&
		  entry_retire(s->book, (enum entry_kind)w->kind, w->id, w->by == 1,
			  &s->log, &e);
	tell(s, ok, w->by == 1 ? _("Put away") : _("Brought back"), name, &e);
}

/* Nothing is promised that would then be refused. */
static void ask_removal(struct session *s, const struct wish *w)
{
	const struct entry_family *f = &entry_families[w->kind];
	struct message *m = session_message(s);
	struct buf users = { 0 };
	char name[SAY_LINE], then[SAY_LINE * 2];
	struct err e = { 0 };
	bool ok = name_of(s, w, name, &e) &&
		  entry_users(s->book, (enum entry_kind)w->kind, w->id, &users, &e);

	if (!ok)
		message_set(m, true, "%s", e.text);
	else if (users.n == 0) {
		entry_page_ask_removal(&s->entry.page);
		entry_removal_says(
			&s->log, (enum entry_kind)w->kind, w->id, then, sizeof then);
		if (then[0])
			message_set(m, false, _("Delete again takes out %s.%s"), name,
				then);
	} else if (w->kind == ENTRY_TRAPS)
		message_set(m, true, _("%s is in use, by %s: o takes it down."), name,
			users.text);
	else if (f->can_retire)
		message_set(m, true, _("%s is in use, by %s: x puts it away."), name,
			users.text);
	else
		message_set(m, true, _("%s is in use, by %s."), name, users.text);
	buf_free(&users);
}

static void take_out(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	session_before_change(s);
	bool ok = name_of(s, w, name, &e) &&
		  entry_remove(s->book, (enum entry_kind)w->kind, w->id, &e);
	tell(s, ok, _("Taken out"), name, &e);
}

void session_remove(struct session *s, const struct wish *w)
{
	if (w->by == 0)
		ask_removal(s, w);
	else
		take_out(s, w);
}

void session_move(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	session_before_change(s);
	session_pick(s, w->id);
	bool ok = name_of(s, w, name, &e) &&
		  entry_move(s->book, w->id, w->by, &s->log, &e);
	tell(s, ok, w->by > 0 ? _("Later on the run") : _("Earlier on the run"), name,
		&e);
	if (ok && !session_has_changed(s))
		message_set(session_message(s), false,
			w->by > 0 ? _("%s comes last on the run already.")
				  : _("%s comes first on the run already."),
			name);
}

void session_hang(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	session_before_change(s);
	bool ok = name_of(s, w, name, &e) &&
		  entry_hang(s->book, w->id, s->day, &s->log, &e);
	tell(s, ok, _("Hung today"), name, &e);
	session_tell_bar(s, w->id);
}

void session_pull(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	session_before_change(s);
	bool ok = name_of(s, w, name, &e) &&
		  entry_pull(s->book, w->id, s->day, &s->log, &e);
	tell(s, ok, _("Taken down today"), name, &e);
	session_tell_bar(s, w->id);
}

/* For its own pest a trap takes a new lure. */
static void drop_choice(struct entry_choices *c, const char *text)
{
	size_t kept = 0;

	for (size_t i = 0; i < c->n; i++)
		if (strcmp(c->items[i].text, text) != 0)
			c->items[kept++] = c->items[i];
	c->n = kept;
}

/* The pests that a trap may be replaced for, as a form would offer them. */
static void ask_pest(struct session *s, const struct wish *w)
{
	const struct entry_family *f = &entry_families[ENTRY_TRAPS];
	const struct entry_ask ask = { .kind = ENTRY_TRAPS };
	struct entry r = { 0 };
	struct err e = { 0 };
	size_t i = 0;

	while (i < f->n_columns && f->columns[i].pick != PICK_PEST)
		i++;
	if (!entry_read(&r, s->book, &ask, w->id, &s->log, &e)) {
		message_set(session_message(s), true, "%s", e.text);
		return;
	}
	r.id = 0; /* of the new trap: any pest */
	entry_choices_of(&r, (int)i, &s->log, &s->form.choices);
	drop_choice(&s->form.choices, r.text[i]);
	if (s->form.choices.n == 0) {
		message_set(session_message(s), false,
			_("The book has no other pest: a new lure is enough."));
		return;
	}
	entry_page_ask(&s->entry.page, &s->form.choices);
}

/* Its lure was guessed: it is said, and where it is put right. */
static void say_replaced(struct session *s)
{
	const struct trap *t = NULL;

	for (size_t i = 0; i < s->log.traps.n; i++)
		if (!t || s->log.traps.items[i].id > t->id)
			t = &s->log.traps.items[i];
	const struct lure_kind *lure = t ? log_lure(&s->log, t->lure) : NULL;
	if (lure)
		message_set(session_message(s), false,
			_("Replaced by trap %s today, with lure %s. If it is another: "
			  "d, then k. u takes it back."),
			t->label, words_shipped(lure->name));
	else if (t)
		message_set(session_message(s), false,
			_("Replaced by trap %s today, whose lure is not known: Enter "
			  "on it says which. u takes it back."),
			t->label);
}

void session_replace(struct session *s, const struct wish *w)
{
	char name[SAY_LINE];
	struct err e = { 0 };

	if (!w->words.note[0]) {
		ask_pest(s, w);
		return;
	}
	session_before_change(s);
	const struct pest *p = log_find_pest(&s->log, w->words.note, &e);
	bool ok = p && name_of(s, w, name, &e) &&
		  entry_replace(s->book, w->id, p->id, s->day, &s->log, &e);
	tell(s, ok, _("Replaced by a new trap today"), name, &e);
	if (ok)
		say_replaced(s);
	session_tell_bar(s, w->id);
}

void session_changes(struct session *s, const struct wish *w)
{
	struct entry_changes c = { 0 };
	char name[SAY_LINE];
	struct err e = { 0 };

	if (!name_of(s, w, name, &e) ||
		!entry_changes_read(&c, s->book, (enum entry_kind)w->kind, w->id, &e)) {
		message_set(session_message(s), true, "%s", e.text);
		entry_changes_free(&c);
		return;
	}
	buf_clear(&s->text.written);
	for (size_t i = 0; i < c.n; i++)
		buf_addf(&s->text.written, "%s%s", i ? "\n" : "", c.lines[i]);
	if (c.n == 0)
		buf_add(&s->text.written,
			_("Nothing was changed since it was put in."));
	entry_changes_free(&c);
	s->text.page = (struct text_page){ .text = s->text.written.text };
	snprintf(s->text.page.title, sizeof s->text.page.title, _("Changes  %s"), name);
	session_open(s, PAGE_TEXT);
}
