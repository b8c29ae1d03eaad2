/* session_thresholds.c - the Thresholds page: own and published ones, and what the
 * picked one would call. */
#include "session_book.h"
#include "session_past.h"

#include "base/words.h"
#include "book/rules.h"

void session_thresholds(struct session *s, const struct wish *w)
{
	s->thresholds.pest = w->pest;
	thresholds_page_free(&s->thresholds.page);
	session_open(s, PAGE_THRESHOLDS);
}

/* Of so few traps the trial is worked out within a frame. */
enum { FEW_TRAPS = 200 };

static void try_picked(struct session *s)
{
	struct thresholds_page *p = &s->thresholds.page;
	const struct rule *r = thresholds_page_picked(p);

	if (!r || p->trial)
		return;
	trial_of(&s->log, r, &s->thresholds.trial);
	p->trial = &s->thresholds.trial;
}

bool session_waits(const struct session *s)
{
	const struct thresholds_page *p = &s->thresholds.page;

	return session_shown(s) == PAGE_THRESHOLDS && !p->trial &&
	       thresholds_page_picked(p);
}

bool session_catch_up(struct session *s)
{
	if (!session_waits(s))
		return false;
	try_picked(s);
	return true;
}

bool session_read_thresholds(struct session *s, struct err *e)
{
	struct thresholds_page *p = &s->thresholds.page;

	if (!session_read_log(s, e) || !threshold_list_read(&s->thresholds.answer,
					       &s->log, s->thresholds.pest, e))
		return false;
	p->right = s->today.answer.title_short;
	thresholds_page_show(p, &s->thresholds.answer);
	try_picked(s);
	return true;
}

static bool has_traps(const struct log *l, int64_t pest)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].pest == pest)
			return true;
	return false;
}

/* The pests in the order in which they are gone through: those with traps in the book,
 * then the others. `at` counts them; 0: beyond the last. */
static int64_t pest_in_turn(const struct log *l, size_t at)
{
	for (int others = 0; others < 2; others++)
		for (size_t i = 0; i < l->pests.n; i++)
			if (has_traps(l, l->pests.items[i].id) != (others != 0) &&
				at-- == 0)
				return l->pests.items[i].id;
	return 0;
}

/* The next pest that has a threshold, own or published; all after the last. */
static bool turn_pest(struct session *s, struct err *e)
{
	size_t at = 0;
	int64_t pest = s->thresholds.pest;

	while (pest && at < s->log.pests.n && pest_in_turn(&s->log, at) != pest)
		at++;
	at += pest != 0;
	while ((pest = pest_in_turn(&s->log, at++)) != 0) {
		if (!threshold_list_read(&s->thresholds.answer, &s->log, pest, e))
			return false;
		if (s->thresholds.answer.n_own + s->thresholds.answer.published.n > 0)
			break;
	}
	s->thresholds.pest = pest;
	return session_read_thresholds(s, e);
}

void session_turn_thresholds(struct session *s)
{
	struct thresholds_page *p = &s->thresholds.page;
	struct err e = { 0 };

	if (p->next_pest) {
		p->next_pest = false;
		p->picked = p->top = p->top_published = 0;
		if (!turn_pest(s, &e))
			message_set(&p->message, true, "%s", e.text);
	}
	if (s->log.traps.n <= FEW_TRAPS)
		try_picked(s);
}

static const struct own_row *own_of(const struct session *s, int64_t id)
{
	for (size_t i = 0; i < s->thresholds.answer.n_own; i++)
		if (s->thresholds.answer.own[i].rule.id == id)
			return &s->thresholds.answer.own[i];
	return NULL;
}

/* One that turns another off, or is off itself, is not taken for both to be judged. */
static void say_taken(struct session *s, int64_t id)
{
	struct message *m = &s->thresholds.page.message;
	const struct own_row *own = own_of(s, id);

	if (s->thresholds.trial.never[0])
		message_set(m, false, _("Taken, but it can never apply: %s."),
			s->thresholds.trial.never);
	else if (own && own->replaced[0])
		message_set(m, false,
			_("Taken, but off where these hold: %s. u undoes."),
			own->replaced);
	else if (own && own->replaces[0])
		message_set(m, false,
			_("Taken. Where it holds %s is off now: not both are judged. u "
			  "undoes."),
			own->replaces);
	else
		message_set(m, false,
			_("Taken: it is yours now and applies. Enter opens it to be "
			  "changed, u takes it back."));
}

void session_take_rule(struct session *s, const struct wish *w)
{
	struct thresholds_page *p = &s->thresholds.page;
	struct err e = { 0 };

	if (w->id < 0 || (size_t)w->id >= s->thresholds.answer.published.n)
		return;
	struct rule r = s->thresholds.answer.published.items[w->id].rule;
	if (!session_make_book(s, &e)) {
		message_set(&p->message, true, "%s", e.text);
		return;
	}
	session_before_change(s);
	if (!book_put_rule(s->book, &r, &e) || !session_read_thresholds(s, &e)) {
		message_set(&p->message, true, "%s", e.text);
		return;
	}
	thresholds_page_pick(p, r.id);
	try_picked(s);
	say_taken(s, r.id);
}
