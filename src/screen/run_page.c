#include "screen/run_page.h"

#include "base/text.h"
#include "base/words.h"
#include "run_parts.h"
#include "screen/list.h"
#include "screen/run_entry.h"
#include "screen/run_keys.h"
#include "screen/run_say.h"
#include "screen/run_typing.h"

#include <string.h>

static struct wish run_wish(const struct run_page *p, enum want want)
{
	struct wish w = page_wish(want);

	if (p->run) {
		w.farm = p->run->farm;
		w.day = p->run->day;
	}
	return w;
}

static void change_entry(struct run_page *p, run_entry_key *key, struct input in)
{
	const struct run_trap t = run_entry_trap(run_picked(p), p->run->day);
	struct run_entry start = run_entry_start(&t);

	if (!p->entry.touched)
		p->entry = start;
	key(&p->entry, &t, in, &p->message);
	/* The same digits typed anew are something typed: + may follow. */
	p->entry.touched = !run_entry_same(&p->entry, &start) ||
			   (p->entry.digits[0] && !p->entry.old_digits);
}

/* Typed, and not just what the visit says already. */
static bool has_changed(const struct run_page *p)
{
	struct run_trap t;
	struct run_entry start;

	if (!p->entry.touched)
		return false;
	t = run_entry_trap(run_picked(p), p->run->day);
	start = run_entry_start(&t);
	return !run_entry_same(&p->entry, &start);
}

/* Moving away would drop what is typed: true, and asked what to do with it. */
static bool holds_back(struct run_page *p)
{
	char text[RUN_ENTRY_TEXT];

	if (!has_changed(p))
		return false;
	run_entry_text(&p->entry, text);
	message_set(&p->message, false,
		_("Not kept yet: Enter keeps %s, Esc drops it."),
		text[0] ? text : _("the empty field"));
	return true;
}

static struct wish keep_typed(struct run_page *p)
{
	const struct run_trap t = run_entry_trap(run_picked(p), p->run->day);
	struct wish w = run_wish(p, WANT_SAVE);

	if (!run_entry_ready(
		    &p->entry, &t, p->limits ? p->limits : &limits_usual, &p->message))
		return page_wish(WANT_NOTHING);
	if (run_entry_goes_in(&p->entry, &t)) {
		if (!p->entry.asked_entry) {
			run_entry_ask(&p->entry, &t, &p->message);
			return page_wish(WANT_NOTHING);
		}
		w.by = (int)t.entry;
	}
	w.visit = run_entry_visit(&p->entry, &t, p->run->day);
	w.day = w.visit.day;
	text_copy(w.words.note, sizeof w.words.note,
		p->entry.note[0] || !t.is_serviced ? p->entry.note
						   : t.serviced_words.note);
	text_copy(w.words.scout, sizeof w.words.scout,
		!t.open && t.words.scout[0] ? t.words.scout : p->scout);
	return w;
}

static struct wish keep(struct run_page *p, struct input in)
{
	const struct run_trap *t = run_picked(p);
	size_t next = run_next_open(p->run, p->picked);

	(void)in;
	if (has_changed(p))
		return keep_typed(p);
	if (t->open)
		message_set(&p->message, true,
			t->hangs ? _("Type the count (0 for none), or - to skip.")
				 : _("This trap does not hang: / when it is hung "
				     "again, - to leave it."));
	else if (next < p->run->n) {
		run_drop(p);
		run_pick_at(p, next);
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
	run_drop(p);
	message_set(&p->message, false, _("Dropped what was typed."));
	return page_wish(WANT_NOTHING);
}

static struct wish leave(struct run_page *p, struct input in)
{
	if (p->entry.touched)
		return undo(p, in);
	return page_wish(WANT_BACK);
}

static struct wish pass(struct run_page *p, struct input in)
{
	const struct run_trap *t = run_picked(p);
	struct wish w = run_wish(p, WANT_PASS);

	(void)in;
	if (holds_back(p))
		return page_wish(WANT_NOTHING);
	w.block = t->block_id;
	text_copy(w.words.scout, sizeof w.words.scout, p->scout);
	if (t->entry != WAITING_FREE)
		return w;
	message_set(&p->message, false,
		_("Nothing in the log bars %s: - skips the trap."), t->block);
	return page_wish(WANT_NOTHING);
}

static struct wish week(struct run_page *p, struct input in)
{
	(void)in;
	return holds_back(p) ? page_wish(WANT_NOTHING) : run_wish(p, WANT_WEEK);
}

static struct wish trap_wish(struct run_page *p, enum want want)
{
	struct wish w = run_wish(p, want);

	if (holds_back(p))
		return page_wish(WANT_NOTHING);
	w.visit.trap = run_picked(p)->trap;
	return w;
}

static struct wish why(struct run_page *p, struct input in)
{
	(void)in;
	return trap_wish(p, WANT_WHY);
}

static struct wish diary(struct run_page *p, struct input in)
{
	(void)in;
	return trap_wish(p, WANT_DIARY);
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
	[RUN_PASS] = pass,
	[RUN_WEEK] = week,
	[RUN_WHY] = why,
	[RUN_DIARY] = diary,
	[RUN_LEAVE] = leave,
	[RUN_HELP] = help,
};

static run_entry_key *const entry_keys[RUN_ACTIONS] = {
	[RUN_DIGIT] = run_entry_digit,
	[RUN_SKIP] = run_entry_skip,
	[RUN_PLUS] = run_entry_plus,
	[RUN_CARD] = run_entry_card,
	[RUN_LURE] = run_entry_lure,
	[RUN_SPOIL] = run_entry_spoil,
	[RUN_STIR] = run_entry_stir,
	[RUN_ERASE] = run_entry_erase,
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
	if (run_picked(p))
		t = run_entry_trap(run_picked(p), p->run->day);
	typing_start(p, typing, run_picked(p) ? &t : NULL);
}

static void move_to(struct run_page *p, int action)
{
	size_t to = p->picked;

	if (holds_back(p) || !list_move(action, p->run->n, p->rows, &to))
		return;
	p->at_rest = false;
	run_drop(p);
	run_pick_at(p, to);
}

/* Keys that change the picked trap. */
static bool changes(int action)
{
	return entry_keys[action] || typings[action] == TYPING_NOTE ||
	       typings[action] == TYPING_FEMALES || typings[action] == TYPING_OTHERS;
}

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
	else if (!run_picked(p) && !works_empty(action))
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

	if (!run_picked(p))
		return typing_key(p, NULL, in);
	t = run_entry_trap(run_picked(p), p->run->day);
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
	const struct run_trap *t = run_picked(p);
	bool touched = p->entry.touched;
	struct wish w;

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (p->typing != TYPING_COUNT)
		w = type(p, in);
	else
		w = act(p, keys_find(run_page_keys(), in), in);
	if (!touched && p->entry.touched && !t->open &&
		!run_entry_corrects(t, p->run->day))
		say_new(p, t);
	return w;
}
