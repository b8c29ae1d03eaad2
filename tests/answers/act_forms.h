/* act_forms.h - treatments and picks typed on forms, and what they bar. Include it
 * first. */
#ifndef TESTS_ANSWERS_ACT_FORMS_H
#define TESTS_ANSWERS_ACT_FORMS_H

#include "acts.h"

#include "answers/forms.h"
#include "book/steps.h"

/* Clocks an hour ahead of UTC in winter and two in summer: forward on 29 March 2026,
 * back on 25 October 2026, both at 01:00 UTC. */
static inline void set_clocks(struct fixture *f)
{
	f->log.zone.n = 3;
	f->log.zone.steps[0].east = 60;
	f->log.zone.steps[1].from = (int64_t)day_of("2026-03-29") * MINUTES_A_DAY + 60;
	f->log.zone.steps[1].east = 120;
	f->log.zone.steps[2].from = (int64_t)day_of("2026-10-25") * MINUTES_A_DAY + 60;
	f->log.zone.steps[2].east = 60;
}

static inline struct entry *act(
	struct fixture *f, enum entry_kind kind, const char *date)
{
	struct entry *r = form_new(f->book, &f->log, kind);

	form_type(r, "farm", f->farm.name);
	form_type(r, "block", f->block.name);
	form_type(r, "date", date);
	return r;
}

/* At a minute: whether the block is barred, as the run says it. */
static inline bool barred_at(
	struct fixture *f, int64_t minute, char *brief, size_t size)
{
	struct bars bars = { 0 };
	struct err e = { 0 };

	f->log.now = zone_at(&f->log.zone, minute);
	must(log_read(&f->log, f->book, 0, instant_day(f->log.now), &e), &e);
	bars_of(&f->log, 0, &bars);
	const struct bar *bar = bars_find(&bars, f->block.id);
	text_copy(brief, size, bar ? bar->brief : "");
	bars_free(&bars);
	return *brief != '\0';
}

static inline struct entry *treatment(
	struct fixture *f, const char *date, const char *rei, const char *phi)
{
	struct entry *r = act(f, ENTRY_TREATMENTS, date);

	form_type(r, "started_at", "06:00");
	form_type(r, "ended_at", "07:00");
	form_type(r, "rei_hours", rei);
	form_type(r, "phi_days", phi);
	form_type(r, "job", "mix");
	return r;
}

/* A pick on that day is asked about; it is not put in. */
static inline bool asks_about(
	struct fixture *f, const char *date, char *says, size_t size)
{
	struct entry *r = act(f, ENTRY_PICKS, date);
	struct entry_fault fault;
	struct undone_step u;
	struct err e = { 0 };
	bool put = entry_put(r, f->book, &f->log, 0, &fault);

	if (put)
		must(book_undo_own(f->book, &u, &e), &e);
	else if (!fault.is_doubt)
		fail_msg("%s: %s", date, fault.text);
	text_copy(says, size, put ? "" : fault.text);
	free(r);
	return !put;
}

#endif
