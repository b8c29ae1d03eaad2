#include "screen/run_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/run_entry.h"
#include "screen/run_keys.h"
#include "screen/run_say.h"
#include "screen/run_typing.h"

#include <string.h>

static const struct run_trap *picked_trap(const struct run_page *p)
{
	return p->run && p->picked < p->run->n ? &p->run->traps[p->picked] : NULL;
}

static struct wish run_wish(const struct run_page *p, enum want want)
{
	struct wish w = page_wish(want);

	if (p->run) {
		w.farm = p->run->farm;
		w.day = p->run->day;
	}
	return w;
}

static void drop_entry(struct run_page *p)
{
	p->unsaved = false;
	p->entry = (struct entry){ .outcome = OUTCOME_COUNTED };
	p->typing = TYPING_COUNT;
	p->line[0] = '\0';
	p->fresh = p->asked_date = false;
}

static void pick(struct run_page *p, size_t i)
{
	const struct run_trap *t = NULL;

	p->picked = i;
	t = picked_trap(p);
	p->picked_trap = t ? t->trap : 0;
}

static void change_entry(struct run_page *p, entry_key *key, struct input in)
{
	const struct run_trap t = entry_trap(picked_trap(p), p->run->day);
	struct entry start = entry_start(&t);

	if (!p->entry.touched)
		p->entry = start;
	key(&p->entry, &t, in, &p->message);
	/* The same digits typed anew are something typed: + may follow. */
	p->entry.touched = !entry_same(&p->entry, &start) ||
			   (p->entry.digits[0] && !p->entry.old_digits);
}

/* Typed, and not just what the visit says already. */
static bool has_changed(const struct run_page *p)
{
	struct run_trap t;
	struct entry start;

	if (!p->entry.touched)
		return false;
	t = entry_trap(picked_trap(p), p->run->day);
	start = entry_start(&t);
	return !entry_same(&p->entry, &start);
}

/* Moving away would drop what is typed: true, and asked what to do with it. */
static bool holds_back(struct run_page *p)
{
	char text[ENTRY_TEXT];

	if (!has_changed(p))
		return false;
	entry_text(&p->entry, text);
	message_set(&p->message, false,
		_("Not kept yet: Enter keeps %s, Esc drops it."),
		text[0] ? text : _("the empty field"));
	return true;
}

/* The open trap after the picked one, wrapping; n when all are done. */
static size_t next_open(const struct run *r, size_t after)
{
	for (size_t i = 1; i <= r->n; i++)
		if (r->traps[(after + i) % r->n].open)
			return (after + i) % r->n;
	return r->n;
}

static struct wish keep_typed(struct run_page *p)
{
	const struct run_trap t = entry_trap(picked_trap(p), p->run->day);
	struct wish w = run_wish(p, WANT_SAVE);

	if (!entry_ready(
		    &p->entry, &t, p->limits ? p->limits : &limits_usual, &p->message))
		return page_wish(WANT_NOTHING);
	w.visit = entry_visit(&p->entry, &t, p->run->day);
	w.day = w.visit.day;
	text_copy(w.words.note, sizeof w.words.note, p->entry.note);
	text_copy(w.words.scout, sizeof w.words.scout,
		!t.open && t.words.scout[0] ? t.words.scout : p->scout);
	return w;
}

static struct wish keep(struct run_page *p, struct input in)
{
	const struct run_trap *t = picked_trap(p);
	size_t next = next_open(p->run, p->picked);

	(void)in;
	if (has_changed(p))
		return keep_typed(p);
	if (t->open)
		message_set(&p->message, true,
			t->hangs ? _("Type the count (0 for none), or - to skip.")
				 : _("This trap does not hang: / when it is hung "
				     "again, - to leave it."));
	else if (next < p->run->n) {
		drop_entry(p);
		pick(p, next);
	} else if (p->said_done)
		return page_wish(WANT_BACK);
	else
		message_set(&p->message, false,
			_("All %d traps are done: Enter goes back; an arrow key picks "
			  "one to correct."),
			(int)p->run->n);
	p->said_done = p->at_rest = !t->open && next == p->run->n;
	return page_wish(WANT_NOTHING);
}

static struct wish undo(struct run_page *p, struct input in)
{
	(void)in;
	p->at_rest = false;
	if (!p->entry.touched)
		return run_wish(p, WANT_UNDO);
	drop_entry(p);
	message_set(&p->message, false, _("Dropped what was typed."));
	return page_wish(WANT_NOTHING);
}

static struct wish leave(struct run_page *p, struct input in)
{
	if (p->entry.touched)
		return undo(p, in);
	return page_wish(WANT_BACK);
}

static struct wish week(struct run_page *p, struct input in)
{
	(void)in;
	return holds_back(p) ? page_wish(WANT_NOTHING) : run_wish(p, WANT_WEEK);
}

static struct wish why(struct run_page *p, struct input in)
{
	const struct run_trap *t = picked_trap(p);
	struct wish w = run_wish(p, WANT_WHY);

	(void)in;
	if (holds_back(p))
		return page_wish(WANT_NOTHING);
	w.visit.trap = t->trap;
	return w;
}

static struct wish help(struct run_page *p, struct input in)
{
	(void)p;
	(void)in;
	return page_wish(WANT_HELP);
}

typedef struct wish page_key(struct run_page *p, struct input in);

static page_key *const page_keys[RUN_ACTIONS] = {
	[RUN_KEEP] = keep,
	[RUN_UNDO] = undo,
	[RUN_WEEK] = week,
	[RUN_WHY] = why,
	[RUN_LEAVE] = leave,
	[RUN_HELP] = help,
};

static entry_key *const entry_keys[RUN_ACTIONS] = {
	[RUN_DIGIT] = entry_digit,
	[RUN_SKIP] = entry_skip,
	[RUN_PLUS] = entry_plus,
	[RUN_CARD] = entry_card,
	[RUN_LURE] = entry_lure,
	[RUN_SPOIL] = entry_spoil,
	[RUN_STIR] = entry_stir,
	[RUN_ERASE] = entry_erase,
};

static const enum typing typings[RUN_ACTIONS] = {
	[RUN_NOTE] = TYPING_NOTE,
	[RUN_FEMALES] = TYPING_FEMALES,
	[RUN_OTHERS] = TYPING_OTHERS,
	[RUN_SCOUT] = TYPING_SCOUT,
	[RUN_DATE] = TYPING_DATE,
};

static void start_typing(struct run_page *p, enum typing typing)
{
	struct run_trap t;

	if (typing == TYPING_DATE && holds_back(p))
		return;
	if (typing == TYPING_DATE)
		p->at_rest = false;
	if (picked_trap(p))
		t = entry_trap(picked_trap(p), p->run->day);
	typing_start(p, typing, picked_trap(p) ? &t : NULL);
}

static void move_to(struct run_page *p, int action)
{
	size_t to = p->picked;

	if (holds_back(p) || !list_move(action, p->run->n, p->rows, &to))
		return;
	p->at_rest = false;
	drop_entry(p);
	pick(p, to);
}

/* Keys that change the picked trap. */
static bool changes(int action)
{
	return entry_keys[action] || typings[action] == TYPING_NOTE ||
	       typings[action] == TYPING_FEMALES || typings[action] == TYPING_OTHERS;
}

/* A run without traps: only what needs none. */
static bool works_empty(int action)
{
	return action == RUN_LEAVE || action == RUN_HELP || action == RUN_WEEK ||
	       action == RUN_DATE || action == RUN_UNDO;
}

static struct wish act(struct run_page *p, int action, struct input in)
{
	bool said_done = p->said_done;

	p->said_done = false;
	if (action == 0)
		page_no_key(&p->message, in);
	else if (!picked_trap(p) && !works_empty(action))
		message_set(&p->message, true, _("No trap hangs on this farm."));
	else if (page_keys[action]) {
		p->said_done = said_done;
		return page_keys[action](p, in);
	} else if (p->unsaved && changes(action) && action != RUN_ERASE)
		message_set(&p->message, true,
			_("Not saved yet: Enter tries again, Esc drops it."));
	else if (p->at_rest && changes(action))
		message_set(&p->message, true,
			_("All %d traps are done and unchanged: an arrow key picks "
			  "one to correct."),
			(int)p->run->n);
	else if (entry_keys[action]) {
		p->unsaved = false;
		change_entry(p, entry_keys[action], in);
	} else if (typings[action] != TYPING_COUNT)
		start_typing(p, typings[action]);
	else
		move_to(p, action);
	return page_wish(WANT_NOTHING);
}

static struct wish type(struct run_page *p, struct input in)
{
	struct run_trap t;

	if (!picked_trap(p))
		return typing_key(p, NULL, in);
	t = entry_trap(picked_trap(p), p->run->day);
	return typing_key(p, &t, in);
}

static void say_new(struct run_page *p, const struct run_trap *t)
{
	run_say_new(p, t, &p->message);
	p->told_trap = t->trap;
	p->told_day = t->visit.day;
}

struct wish run_page_key(struct run_page *p, struct input in)
{
	const struct run_trap *t = picked_trap(p);
	bool touched = p->entry.touched;
	struct wish w;

	if (in.kind == INPUT_NONE || in.kind == INPUT_RESIZE || in.kind == INPUT_LEAVE)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (p->typing != TYPING_COUNT)
		w = type(p, in);
	else
		w = act(p, keys_find(run_page_keys(), in), in);
	if (!touched && p->entry.touched && !t->open && !entry_corrects(t, p->run->day))
		say_new(p, t);
	return w;
}

static void take_run(struct run_page *p, const struct run *run, bool first)
{
	if (run->farm != p->farm || run->day != p->day)
		p->saved[0] = '\0';
	p->run = run;
	p->farm = run->farm;
	p->day = run->day;
	p->at_rest = (first || p->at_rest) && run->n > 0 &&
		     next_open(run, run->n - 1) == run->n;
	p->said_done = false;
}

void run_page_show(struct run_page *p, const struct run *run, bool first)
{
	size_t at = p->picked;

	take_run(p, run, first);
	if (first)
		at = run->n ? next_open(run, run->n - 1) : 0;
	else
		for (size_t i = 0; i < run->n; i++)
			if (run->traps[i].trap == p->picked_trap)
				at = i;
	if (at >= run->n)
		at = first || run->n == 0 ? 0 : run->n - 1;
	if (first || at >= run->n || run->traps[at].trap != p->picked_trap)
		drop_entry(p);
	pick(p, at);
	if (first && run->day == p->told_day)
		run_page_pick(p, p->told_trap);
	if (first)
		p->told_trap = 0;
}

void run_page_pick(struct run_page *p, int64_t trap)
{
	for (size_t i = 0; p->run && i < p->run->n; i++)
		if (p->run->traps[i].trap == trap) {
			drop_entry(p);
			pick(p, i);
			p->at_rest = false;
		}
}

void run_page_saved(struct run_page *p, const struct run *run, const char *clock)
{
	const struct run_trap *t = NULL;
	size_t next = 0;

	drop_entry(p);
	run_page_show(p, run, false);
	message_set(&p->message, false, _("saved %s"), clock);
	text_copy(p->saved, sizeof p->saved, p->message.text);
	p->message = (struct message){ 0 };
	t = picked_trap(p);
	if (!t)
		return;
	next = next_open(run, p->picked);
	message_set(&p->message, false,
		next < run->n
			? _("Trap %s kept: %s  %s")
			: _("Trap %s kept: %s  %s  All are done: Enter goes back."),
		t->label, t->visit_text, t->verdict_text);
	if (next < run->n)
		pick(p, next);
	else
		p->said_done = p->at_rest = true;
}

void run_page_not_saved(struct run_page *p, const char *reason)
{
	p->unsaved = true;
	message_set(&p->message, true, _("NOT SAVED, Enter tries again: %s"), reason);
}
