/* log.h - diaries for tests, written as one line.
 * "0h*+ 7c4 14s 21f30 28x 35x2 42m 49p": days after the first Monday of May 2026 and
 * what was found: hung, counted, skipped, floor, x spoiled, missing, pulled; then the
 * count; then * for a new lure, + for a new card (kind 1 each), ~ for stirred glue,
 * L or C for a lure or card found gone, o9 for nine others. */
#ifndef TESTS_SEASON_LOG_H
#define TESTS_SEASON_LOG_H

#include "season/diary.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { LOG_MAX = 64 };

struct log {
	struct visit visits[LOG_MAX];
	size_t n;
	struct diary diary;
};

static inline int32_t log_day(int32_t after)
{
	return day_from_ymd(2026, 5, 4) + after;
}

static inline enum outcome log_outcome(char c)
{
	static const char letters[] = "hcfsxmp";
	static const enum outcome outcomes[] = { OUTCOME_HUNG, OUTCOME_COUNTED,
		OUTCOME_FLOOR, OUTCOME_SKIPPED, OUTCOME_SPOILED, OUTCOME_MISSING,
		OUTCOME_PULLED };
	const char *at = strchr(letters, c);

	if (at == NULL || c == '\0')
		fail_msg("no outcome is written %c", c);
	return outcomes[at == NULL ? 0 : at - letters];
}

static inline void log_flags(struct visit *v, const char *s)
{
	for (; *s != '\0' && *s != ' '; s++) {
		if (*s == '*')
			v->new_lure = 1;
		else if (*s == '+')
			v->new_card = 1;
		else if (*s == '~')
			v->stirred = true;
		else if (*s == 'L')
			v->reason = REASON_LURE_MISSING;
		else if (*s == 'C')
			v->reason = REASON_CARD_LOST;
		else if (*s == 'o')
			v->others = (int32_t)strtol(s + 1, NULL, 10);
	}
}

static inline void log_read(struct log *log, const char *text)
{
	*log = (struct log){ .n = 0 };
	while (*text != '\0') {
		char *end;
		struct visit v = { .trap = 1, .count = COUNT_NONE };
		v.females = v.others = COUNT_NONE;
		v.day = log_day((int32_t)strtol(text, &end, 10));
		v.outcome = log_outcome(*end++);
		if (*end >= '0' && *end <= '9')
			v.count = (int32_t)strtol(end, &end, 10);
		log_flags(&v, end);
		log->visits[log->n++] = v;
		text = end + strcspn(end, " ");
		text += strspn(text, " ");
	}
	diary_read(&log->diary, log->visits, log->n);
}

static inline void log_free(struct log *log)
{
	diary_free(&log->diary);
}

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

#endif
