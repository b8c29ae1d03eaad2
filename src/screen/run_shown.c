/* run_shown.c - the run that the page shows: set anew after each save, and what was
 * saved. */
#include "screen/run_page.h"

#include "base/text.h"
#include "base/words.h"
#include "run_parts.h"
#include "screen/run_entry.h"
#include "screen/run_say.h"

#include <stdio.h>

const struct run_trap *run_picked(const struct run_page *p)
{
	return p->run && p->picked < p->run->n ? &p->run->traps[p->picked] : NULL;
}

void run_drop(struct run_page *p)
{
	p->unsaved = false;
	p->entry = (struct run_entry){ .outcome = OUTCOME_COUNTED };
	p->typing = TYPING_COUNT;
	p->line[0] = '\0';
	p->fresh = p->asked_date = false;
}

void run_pick_at(struct run_page *p, size_t i)
{
	const struct run_trap *t = NULL;

	p->picked = i;
	t = run_picked(p);
	p->picked_trap = t ? t->trap : 0;
}

size_t run_next_open(const struct run *r, size_t after)
{
	for (size_t i = 1; i <= r->n; i++)
		if (r->traps[(after + i) % r->n].open)
			return (after + i) % r->n;
	return r->n;
}

static void take_run(struct run_page *p, const struct run *run, bool first)
{
	if (run->farm != p->farm || run->day != p->day)
		p->saved[0] = '\0';
	p->run = run;
	p->farm = run->farm;
	p->day = run->day;
	p->at_rest = (first || p->at_rest) && run->n > 0 &&
		     run_next_open(run, run->n - 1) == run->n;
	p->said_done = false;
}

void run_page_show(struct run_page *p, const struct run *run, bool first)
{
	size_t at = p->picked;

	take_run(p, run, first);
	if (first)
		at = run->n ? run_next_open(run, run->n - 1) : 0;
	else
		for (size_t i = 0; i < run->n; i++)
			if (run->traps[i].trap == p->picked_trap)
				at = i;
	if (at >= run->n)
		at = first || run->n == 0 ? 0 : run->n - 1;
	if (first || at >= run->n || run->traps[at].trap != p->picked_trap)
		run_drop(p);
	run_pick_at(p, at);
	if (first && run->day == p->told_day)
		run_page_pick(p, p->told_trap);
	if (first)
		p->told_trap = 0;
}

void run_page_pick(struct run_page *p, int64_t trap)
{
	for (size_t i = 0; p->run && i < p->run->n; i++)
		if (p->run->traps[i].trap == trap) {
			run_drop(p);
			run_pick_at(p, i);
			p->at_rest = false;
		}
}

/* That a skipped trap is not known needs no reason; that a counted one is not does. */
static void say_kept(const struct run_trap *t, bool is_last, struct message *m)
{
	bool counted = t->visit.outcome == OUTCOME_COUNTED ||
		       t->visit.outcome == OUTCOME_FLOOR;
	char answer[SAY_SHORT + SAY_LINE + 4];

	if (counted && t->lacks[0])
		snprintf(answer, sizeof answer, _("%s: %s"), t->verdict_text, t->lacks);
	else
		text_copy(answer, sizeof answer, t->verdict_text);
	message_set(m, false,
		is_last ? _("Trap %s kept: %s  %s  All are done: Enter goes back.")
			: _("Trap %s kept: %s  %s"),
		t->label, t->visit_text, answer);
}

void run_page_saved(struct run_page *p, const struct run *run, const char *clock)
{
	const struct run_trap *t = NULL;
	size_t next = 0;

	run_drop(p);
	run_page_show(p, run, false);
	message_set(&p->message, false, _("saved %s"), clock);
	text_copy(p->saved, sizeof p->saved, p->message.text);
	p->message = (struct message){ 0 };
	t = run_picked(p);
	if (!t)
		return;
	next = run_next_open(run, p->picked);
	say_kept(t, next >= run->n, &p->message);
	run_say_unchanged(t, &p->message);
	if (next < run->n)
		run_pick_at(p, next);
	else
		p->said_done = p->at_rest = true;
}

void run_page_passed(
	struct run_page *p, const struct run *run, int n, const char *clock)
{
	size_t next = 0;

	run_drop(p);
	run_page_show(p, run, false);
	snprintf(p->saved, sizeof p->saved, _("saved %s"), clock);
	if (!run_picked(p))
		return;
	if (n == 0) {
		message_set(&p->message, false, _("No trap of %s is open."),
			run_picked(p)->block);
		return;
	}
	message_set(&p->message, false,
		ngettext("%d trap of %s skipped: re-entry. u takes it back.",
			"%d traps of %s skipped: re-entry. u takes each back.",
			(unsigned)n),
		n, run_picked(p)->block);
	next = run_next_open(run, p->picked);
	if (next < run->n)
		run_pick_at(p, next);
	else
		p->said_done = p->at_rest = true;
}

void run_page_not_saved(struct run_page *p, const char *reason)
{
	p->unsaved = true;
	message_set(&p->message, true, _("NOT SAVED, Enter tries again: %s"), reason);
}
