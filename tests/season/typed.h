/* typed.h - treatments for tests, as a person types them. */
#ifndef TESTS_SEASON_TYPED_H
#define TESTS_SEASON_TYPED_H

#include "base/acts.h"
#include "base/clocks.h"

#include <stdio.h>
#include <string.h>

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

/* Day, from, until, REI, PHI as a person types them; "" and -1: not entered. */
struct typed {
	const char *day, *from, *until;
	int rei, phi;
};

enum { TYPED_MAX = 3 };

static inline size_t typed_read(const struct typed typed[TYPED_MAX],
	const struct zone *z, struct treatment out[TYPED_MAX])
{
	size_t n = 0;

	for (; n < TYPED_MAX && typed[n].day != NULL; n++) {
		out[n] = treatment_blank;
		day_parse(typed[n].day, &out[n].day);
		out[n].from = clocks_at(z, typed[n].from);
		out[n].until = clocks_at(z, typed[n].until);
		out[n].rei_hours = typed[n].rei;
		out[n].phi_days = typed[n].phi;
	}
	return n;
}

/* Of enum waiting_state. */
static const char *const state_words[] = { "free", "barred", "unknown", "from" };

#define MORNING                                                                        \
	{                                                                              \
		"2026-08-20", "2026-08-20 08:00", "2026-08-20 10:30", 12, 14           \
	}

#endif
