/* verdicts_parts.h - inside src/answers: what the verdicts are worked out from. */
#ifndef ANSWERS_VERDICTS_PARTS_H
#define ANSWERS_VERDICTS_PARTS_H

#include "answers/verdicts.h"

/* A rule of the log, by its block. */
struct rule_place {
	int64_t block; /* 0: of none alone */
	size_t at;     /* index in the log */
};

/* The rules that may hold for a block and pest, in the order of the log. */
struct few {
	struct rule *rules; /* copies */
	size_t *at;         /* indices in the log */
	size_t n, cap, cap_at;
};

/* All rules, those of no block first, then by block, each in the log's order. The
 * caller frees them. */
struct rule_place *rules_by_block(const struct log *l);
/* Those of no block and of the trap's, of its pest or any; replaces what few held. */
void rules_find_few(const struct log *l, const struct rule_place *all,
	const struct trap *t, struct few *few);
void rules_free_few(struct few *few);

#endif
