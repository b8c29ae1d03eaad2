/* Treatments and picks in the fixture's block. Clocks go by UTC unless f->log.zone says
 * otherwise; names are invented. */
#ifndef TESTS_ANSWERS_ACTS_H
#define TESTS_ANSWERS_ACTS_H

#include "fixture.h"

#include "answers/entry_bar.h"
#include "book/acts.h"

/* "2026-07-20 10:30" on the clocks of the log. */
static inline struct instant acts_at(const struct fixture *f, const char *when)
{
	char day[DAY_ISO_SIZE];
	int32_t minute = 0;

	snprintf(day, sizeof day, "%.10s", when);
	assert_true(clock_read(when + 11, &minute));
	return zone_local(&f->log.zone, day_of(day), minute);
}

/* Ended then, an hour after it began; -1: interval not entered. */
static inline struct treatment acts_treatment(
	const struct fixture *f, const char *ended, int32_t rei, int32_t phi)
{
	struct treatment t = treatment_blank;

	t.block = f->block.id;
	t.until = acts_at(f, ended);
	t.from = zone_at(&f->log.zone, t.until.minute - 60);
	t.day = instant_day(t.until);
	t.rei_hours = rei;
	t.phi_days = phi;
	text_copy(t.product, sizeof t.product, "Brackwater oil");
	return t;
}

static inline void acts_put(struct fixture *f, struct treatment t)
{
	struct err e = { 0 };

	must(book_put_treatment(f->book, &t, &e), &e);
}

static inline void acts_treat(
	struct fixture *f, const char *ended, int32_t rei, int32_t phi)
{
	acts_put(f, acts_treatment(f, ended, rei, phi));
}

static inline void acts_pick(struct fixture *f, const char *iso, bool is_done)
{
	struct pick p = pick_blank;
	struct err e = { 0 };

	p.block = f->block.id;
	p.day = day_of(iso);
	p.is_done = is_done;
	must(book_put_pick(f->book, &p, &e), &e);
}

static inline void acts_answer(struct fixture *f, struct answer a, enum decision d,
	const char *on, const char *note)
{
	struct err e = { 0 };

	a.decision = d;
	a.on = day_of(on);
	text_copy(a.note, sizeof a.note, note);
	must(book_put_answer(f->book, &a, &e), &e);
}

/* 12 a week before 15 July, then 3 and 4. */
static inline int64_t acts_trap_over(struct fixture *f)
{
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(f, "3", "2026-07-01");
	fixture_count(f, t, "2026-07-15", 24);
	return t;
}

/* Reads the log as it stands at that minute. */
static inline void acts_read(struct fixture *f, const char *now)
{
	struct err e = { 0 };

	f->log.now = acts_at(f, now);
	must(log_read(&f->log, f->book, 0, instant_day(f->log.now), &e), &e);
}

#endif
