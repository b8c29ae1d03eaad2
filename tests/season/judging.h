/* judging.h - what a rule says of a trap whose visits are written as in log.h. */
#ifndef TESTS_SEASON_JUDGING_H
#define TESTS_SEASON_JUDGING_H

#include "season/judge.h"
#include "season/log.h"

/* Nothing is known of the season. */
static const struct moment bare = {
	.biofix = DAY_NONE, .flight_start = DAY_NONE, .dd = -1, .treated = DAY_NONE
};

static inline struct judgement judge_at(
	const struct rule *r, const char *visits, struct moment m, int asked)
{
	struct log log;

	log_read(&log, visits);
	m.day = log_day(asked);
	struct subject s = { .diary = &log.diary };
	struct judgement j = judge_trap(r, FIT_YES, &s, &m, &limits_usual);
	log_free(&log);
	return j;
}

static inline void expect(const char *why, const struct judgement *j, enum verdict v,
	enum lacking lacking)
{
	if (j->verdict != v)
		fail_msg("%s: %s, not %s", why, verdict_word(j->verdict),
			verdict_word(v));
	if (j->lacking != lacking)
		fail_msg("%s: lacking %d, not %d", why, (int)j->lacking, (int)lacking);
}

#endif
