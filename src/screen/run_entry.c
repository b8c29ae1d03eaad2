#include "screen/run_entry.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

enum { DIGITS = 4 };

struct step {
	enum outcome outcome;
	enum reason reason;
};

static void write_number(char *out, size_t size, int32_t n)
{
	out[0] = '\0';
	if (n != COUNT_NONE)
		snprintf(out, size, "%d", (int)n);
}

bool run_entry_corrects(const struct run_trap *t, int32_t day)
{
	return !t->open && t->visit.day == day;
}

struct run_trap run_entry_trap(const struct run_trap *t, int32_t day)
{
	struct run_trap now = *t;

	now.open = !run_entry_corrects(t, day);
	return now;
}

struct run_entry run_entry_start(const struct run_trap *t)
{
	const struct visit *v = &t->visit;
	struct run_entry e = { .outcome = OUTCOME_COUNTED };

	if (t->open)
		return e;
	e.outcome = v->outcome;
	e.reason = v->reason;
	e.new_card = v->new_card != 0;
	e.new_lure = v->new_lure != 0;
	e.stirred = v->stirred;
	write_number(e.digits, sizeof e.digits, v->count);
	write_number(e.females, sizeof e.females, v->females);
	write_number(e.others, sizeof e.others, v->others);
	text_copy(e.note, sizeof e.note, t->words.note);
	e.old_digits = e.digits[0] != '\0';
	return e;
}

static void set_card(struct run_entry *e, bool on, bool is_auto)
{
	e->new_card = on;
	e->auto_card = on && is_auto;
}

static void set_lure(struct run_entry *e, bool on, bool is_auto)
{
	e->new_lure = on;
	e->auto_lure = on && is_auto;
}

/* A full card or a lost one is changed, a trap hung again gets both; when the outcome
 * goes, so does what it brought. */
static void set_outcome(struct run_entry *e, const struct run_trap *t, struct step to)
{
	bool hung = to.outcome == OUTCOME_HUNG;
	bool card =
		hung || to.outcome == OUTCOME_FLOOR || to.reason == REASON_CARD_LOST;
	bool lure = hung || to.reason == REASON_LURE_MISSING;

	if (e->auto_card)
		set_card(e, false, false);
	if (e->auto_lure)
		set_lure(e, false, false);
	if (card && !e->new_card && t->card_kind)
		set_card(e, true, true);
	if (lure && !e->new_lure && t->lure_kind)
		set_lure(e, true, true);
	e->outcome = to.outcome;
	e->reason = to.reason;
}

static bool was_missing(const struct run_trap *t)
{
	return !t->open && t->visit.outcome == OUTCOME_MISSING;
}

/* False, with a sentence, for a trap that was hung or pulled in this run. */
static bool can_change(const struct run_trap *t, struct message *m)
{
	if (t->open || (t->visit.outcome != OUTCOME_HUNG &&
			       t->visit.outcome != OUTCOME_PULLED))
		return true;
	message_set(m, true,
		t->visit.outcome == OUTCOME_HUNG
			? _("Trap %s was hung in this run: its first count comes with "
			    "the next one. u takes it back.")
			: _("Trap %s was pulled in this run."),
		t->label);
	return false;
}

static bool can_count(const struct run_trap *t, struct message *m)
{
	if (!can_change(t, m))
		return false;
	if (!t->open || t->hangs)
		return true;
	message_set(m, true,
		_("Trap %s does not hang, so there is nothing to count: / when it is "
		  "hung again."),
		t->label);
	return false;
}

void run_entry_digit(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	bool nobody_looked =
		e->outcome == OUTCOME_SKIPPED || e->outcome == OUTCOME_MISSING;
	size_t n = 0;

	if (!can_count(t, m))
		return;
	if (nobody_looked || (e->old_digits && e->outcome == OUTCOME_FLOOR))
		set_outcome(e, t, (struct step){ OUTCOME_COUNTED, REASON_NONE });
	if (nobody_looked || e->old_digits || strcmp(e->digits, "0") == 0)
		e->digits[0] = '\0';
	e->old_digits = false;
	n = strlen(e->digits);
	if (n >= DIGITS) {
		message_set(m, true, _("A count has at most 4 digits, up to 9999."));
		return;
	}
	e->digits[n] = (char)in.ch;
	e->digits[n + 1] = '\0';
	e->asked = false;
}

void run_entry_card(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	(void)in;
	if (!e->new_card && !t->card_kind)
		message_set(m, true,
			_("The book does not say which card trap %s gets."), t->label);
	else
		set_card(e, !e->new_card, false);
}

void run_entry_lure(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	(void)in;
	if (!e->new_lure && !t->lure_kind)
		message_set(m, true,
			_("The book does not say which lure trap %s gets."), t->label);
	else
		set_lure(e, !e->new_lure, false);
}

void run_entry_plus(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	bool typed = e->digits[0] && !e->old_digits;

	if (typed && strcmp(e->digits, "0") == 0 && e->outcome == OUTCOME_COUNTED) {
		run_entry_card(e, t, in, m); /* no card is full of none */
		return;
	}
	if (typed && e->outcome == OUTCOME_COUNTED)
		set_outcome(e, t, (struct step){ OUTCOME_FLOOR, REASON_NONE });
	else if (typed && e->outcome == OUTCOME_FLOOR)
		set_outcome(e, t, (struct step){ OUTCOME_COUNTED, REASON_NONE });
	else
		run_entry_card(e, t, in, m);
}

void run_entry_stir(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	(void)t;
	(void)in;
	(void)m;
	e->stirred = !e->stirred;
}

/* What is counted again after the last step; digits of a full card stay a floor. */
static struct step nothing(const struct run_entry *e, const struct run_trap *t)
{
	bool floor = !t->open && t->visit.outcome == OUTCOME_FLOOR && e->old_digits;

	return (struct step){ floor ? OUTCOME_FLOOR : OUTCOME_COUNTED, REASON_NONE };
}

/* The step after the one that holds, the first when none does; past the last:
 * nothing. */
static void next_step(struct run_entry *e, const struct run_trap *t,
	const struct step *steps, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (steps[i].outcome == e->outcome && steps[i].reason == e->reason) {
			set_outcome(e, t, i + 1 < n ? steps[i + 1] : nothing(e, t));
			return;
		}
	set_outcome(e, t, steps[0]);
}

static void say_skipped(const struct run_entry *e, bool barred, struct message *m)
{
	if (e->digits[0])
		message_set(
			m, false, _("Skipped: the %s will not be kept."), e->digits);
	else if (barred && e->reason == REASON_REENTRY)
		message_set(m, false,
			_("Skipped for re-entry. Once more: without a reason, weather, "
			  "time, other."));
	else if (!barred && e->reason == REASON_NONE)
		message_set(m, false,
			_("Skipped. Once more for a reason: re-entry, weather, time, "
			  "other."));
}

/* Where nobody may go in, that is the reason that is offered first. */
void run_entry_skip(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	static const struct step steps[] = {
		{ OUTCOME_SKIPPED, REASON_NONE },
		{ OUTCOME_SKIPPED, REASON_REENTRY },
		{ OUTCOME_SKIPPED, REASON_WEATHER },
		{ OUTCOME_SKIPPED, REASON_TIME },
		{ OUTCOME_SKIPPED, REASON_OTHER },
	};
	static const struct step barred_steps[] = {
		{ OUTCOME_SKIPPED, REASON_REENTRY },
		{ OUTCOME_SKIPPED, REASON_NONE },
		{ OUTCOME_SKIPPED, REASON_WEATHER },
		{ OUTCOME_SKIPPED, REASON_TIME },
		{ OUTCOME_SKIPPED, REASON_OTHER },
	};
	bool barred = t->entry != WAITING_FREE;

	(void)in;
	if (!can_change(t, m))
		return;
	next_step(e, t, barred ? barred_steps : steps, sizeof steps / sizeof *steps);
	if (e->outcome == OUTCOME_SKIPPED)
		say_skipped(e, barred, m);
}

static void say_spoiled(const struct run_entry *e, struct message *m)
{
	const char *reason = _(reason_word(e->reason));

	if (e->digits[0])
		message_set(m, false,
			_("Spoiled (%s): %s becomes at least %s. / gives the next "
			  "reason."),
			reason, e->digits, e->digits);
	else
		message_set(
			m, false, _("Spoiled (%s). / gives the next reason."), reason);
}

void run_entry_spoil(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	static const struct step steps[] = {
		{ OUTCOME_SPOILED, REASON_DOWN },
		{ OUTCOME_SPOILED, REASON_CARD_LOST },
		{ OUTCOME_SPOILED, REASON_LURE_MISSING },
		{ OUTCOME_SPOILED, REASON_BLOCKED },
		{ OUTCOME_MISSING, REASON_NONE },
		{ OUTCOME_HUNG, REASON_NONE },
	};
	size_t n = sizeof steps / sizeof *steps;

	(void)in;
	if (!can_change(t, m))
		return;
	if (t->open && !t->hangs)
		next_step(e, t, &steps[n - 1], 1);
	else
		next_step(e, t, steps, was_missing(t) ? n : n - 1);
	if (e->outcome == OUTCOME_MISSING && e->digits[0])
		message_set(
			m, false, _("Missing: the %s will not be kept."), e->digits);
	else if (e->outcome == OUTCOME_SPOILED)
		say_spoiled(e, m);
}

void run_entry_erase(struct run_entry *e, const struct run_trap *t, struct input in,
	struct message *m)
{
	size_t n = strlen(e->digits);

	(void)in;
	(void)m;
	if (e->outcome == OUTCOME_FLOOR && !e->old_digits)
		set_outcome(e, t, (struct step){ OUTCOME_COUNTED, REASON_NONE });
	else if (n > 0)
		e->digits[n - 1] = '\0';
	e->old_digits = false;
	e->asked = false;
}

bool run_entry_same(const struct run_entry *a, const struct run_entry *b)
{
	return a->outcome == b->outcome && a->reason == b->reason &&
	       a->new_card == b->new_card && a->new_lure == b->new_lure &&
	       a->stirred == b->stirred && strcmp(a->digits, b->digits) == 0 &&
	       strcmp(a->females, b->females) == 0 &&
	       strcmp(a->others, b->others) == 0 && strcmp(a->note, b->note) == 0;
}
