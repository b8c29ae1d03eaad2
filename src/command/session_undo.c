/* session_undo.c - what goes with every change of the book, and taking one back. */
#include "session_book.h"

#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"
#include "book/steps.h"
#include "command/clock.h"

#include <string.h>

/* A form belongs to the page that it was opened from. */
static struct made made_here(const struct session *s)
{
	int at =
		s->depth > 0 && session_shown(s) == PAGE_FORM ? s->depth - 1 : s->depth;
	struct made m = { .page = s->stack[at] };

	if (m.page == PAGE_ENTRIES)
		m.kind = (int)s->entry.ask.kind;
	return m;
}

void session_note_page(struct session *s)
{
	struct made m = made_here(s);

	if (!book_latest_step(s->book, &m.after, NULL))
		return;
	if (s->n_made > 0 && s->made[s->n_made - 1].after == m.after)
		s->n_made--;
	if (s->n_made == MADE_MAX)
		memmove(s->made, s->made + 1, --s->n_made * sizeof *s->made);
	s->made[s->n_made++] = m;
}

void session_before_change(struct session *s)
{
	if (!s->unmade)
		book_daily_backup(s->book, s->day, NULL);
	book_set_who(s->book, session_author(s));
	session_note_page(s);
}

bool session_has_changed(const struct session *s)
{
	int64_t step = 0;

	return s->n_made == 0 || !book_latest_step(s->book, &step, NULL) ||
	       step != s->made[s->n_made - 1].after;
}

bool session_is_sure(struct session *s, enum want want, int64_t about)
{
	enum { BOUNCE_MS = 300 };
	const struct asked was = s->asked;

	s->asked = (struct asked){ want, about, clock_ms() };
	return was.want == want && was.about == about && was.about != 0 &&
	       s->asked.ms - was.ms >= BOUNCE_MS;
}

static bool is_made_here(const struct session *s, int64_t step)
{
	const struct made here = made_here(s);
	size_t i = s->n_made;

	while (i > 0 && s->made[i - 1].after >= step)
		i--;
	return i > 0 && s->made[i - 1].page == here.page &&
	       s->made[i - 1].kind == here.kind;
}

static const char *name_of(const struct undone_step *u)
{
	return u->name[0] ? u->name : u->kind;
}

/* A hand that presses u means what it did here: what was done elsewhere is named
 * first. */
static bool asks_back(struct session *s)
{
	struct undone_step u = { 0 };

	if (!book_would_undo(s->book, &u, NULL) || is_made_here(s, u.step) ||
		session_is_sure(s, WANT_UNDO_STEP, u.step))
		return false;
	message_set(session_message(s), false,
		u.was_new ? _("Made on another page: u again takes out %s.")
			  : _("Made on another page: u again puts %s back as it was "
			      "before."),
		name_of(&u));
	return true;
}

void session_take_scout(struct session *s)
{
	char now[SCOUT_BYTES];

	if (!book_setting(s->book, "scout", now, sizeof now, NULL) ||
		strcmp(now, s->scout) == 0)
		return;
	text_copy(s->scout, sizeof s->scout, now);
	text_copy(s->run.page.scout, sizeof s->run.page.scout, now);
}

void session_undo_step(struct session *s, const struct wish *w)
{
	struct undone_step u = { 0 };
	struct err e = { 0 };

	(void)w;
	if (asks_back(s))
		return;
	s->asked = (struct asked){ 0 };
	session_before_change(s);
	bool ok = book_undo_own(s->book, &u, &e) && session_read(s, &e);
	session_take_scout(s);
	if (!ok && e.kind == ERR_NOT_FOUND)
		message_set(session_message(s), false,
			_("Nothing that was changed here is left to take back."));
	else if (!ok)
		message_set(session_message(s), true, "%s", e.text);
	else if (u.was_new)
		message_set(session_message(s), false,
			_("Taken back: %s is out again."), name_of(&u));
	else
		message_set(session_message(s), false,
			_("Taken back: %s is as it was before."), name_of(&u));
}
