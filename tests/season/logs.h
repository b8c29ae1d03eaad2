/* logs.h - several traps' diaries for tests, each written as in log.h. */
#ifndef TESTS_SEASON_LOGS_H
#define TESTS_SEASON_LOGS_H

#include "season/log.h"

enum { LOGS_MAX = 3 };

struct logs {
	struct log log[LOGS_MAX];
	const struct diary *list[LOGS_MAX];
	size_t n;
};

/* Up to the first NULL. */
static inline void logs_read(struct logs *l, const char *const texts[LOGS_MAX])
{
	for (l->n = 0; l->n < LOGS_MAX && texts[l->n] != NULL; l->n++) {
		log_read(&l->log[l->n], texts[l->n]);
		l->list[l->n] = &l->log[l->n].diary;
	}
}

static inline void logs_free(struct logs *l)
{
	for (size_t i = 0; i < l->n; i++)
		log_free(&l->log[i]);
}

/* Repeatable numbers, 0..n-1 (a linear congruence; the low bits are left out). */
static inline int draw(uint32_t *seed, int n)
{
	*seed = *seed * 1664525u + 1013904223u;
	return (int)((*seed >> 8) % (uint32_t)n);
}

#endif
