/* proof_ruling.c - judges the inputs of a ruling by way of visits, diaries and rules,
 * as a count in the book is judged. */
#include "base/words.h"
#include "proof_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TRAPS_MAX = 6, VISITS_MAX = 12 };

struct line_of_traps {
	struct visit visits[TRAPS_MAX][VISITS_MAX];
	size_t n_visits[TRAPS_MAX], n;
	int32_t hung, asked;
};

static void begin_trap(struct line_of_traps *l)
{
	size_t t = l->n++;

	l->visits[t][0] = (struct visit){ .day = l->hung, .count = COUNT_NONE };
	l->n_visits[t] = 1;
}

static void add_visit(struct line_of_traps *l, int32_t nights, const char *count)
{
	size_t t = l->n - 1, i = l->n_visits[t]++;
	struct visit *v = &l->visits[t][i];
	bool skipped = *count == '-';

	*v = (struct visit){ .day = l->hung + nights * (int32_t)i };
	v->outcome = skipped ? OUTCOME_SKIPPED : OUTCOME_COUNTED;
	v->count = skipped ? COUNT_NONE : (int32_t)strtol(count, NULL, 10);
	l->asked = v->day > l->asked ? v->day : l->asked;
}

/* "7 nights: 2 - 2 | 1 1 1" */
static void read_traps(struct line_of_traps *l, const char *input)
{
	int32_t nights = (int32_t)strtol(input, NULL, 10);
	const char *s = strchr(input, ':');

	*l = (struct line_of_traps){ .hung = day_from_ymd(2026, 5, 4) };
	l->asked = l->hung;
	begin_trap(l);
	for (s = s == NULL ? "" : s + 1; *s != '\0'; s += strcspn(s, " ")) {
		s += strspn(s, " ");
		if (*s == '|' && l->n < TRAPS_MAX)
			begin_trap(l);
		else if (*s != '\0' && l->n_visits[l->n - 1] < VISITS_MAX)
			add_visit(l, nights, s);
	}
}

static enum verdict judge_traps(const struct ruling *r, const struct line_of_traps *l)
{
	struct rule rule = { .measure = r->measure,
		.span_kind = r->span_kind,
		.span = r->span,
		.comparator = r->comparator,
		.value_x100 = r->value_x100 };
	struct moment m = { .day = l->asked,
		.biofix = l->hung,
		.flight_start = l->hung,
		.flight = 1,
		.dd = -1,
		.treated = DAY_NONE };
	struct diary diaries[TRAPS_MAX] = { 0 };
	struct subject subjects[TRAPS_MAX] = { 0 };

	for (size_t t = 0; t < l->n; t++) {
		diary_read(&diaries[t], l->visits[t], l->n_visits[t]);
		subjects[t].diary = &diaries[t];
	}
	struct judgement j =
		measure_of_block(r->measure)
			? judge_block(&rule, FIT_YES, subjects, l->n, &m, &limits_usual)
			: judge_trap(&rule, FIT_YES, subjects, &m, &limits_usual);
	for (size_t t = 0; t < l->n; t++)
		diary_free(&diaries[t]);
	return j.verdict;
}

static void write_rule(char *out, size_t size, const struct ruling *r)
{
	char span[16];

	snprintf(span, sizeof span, "%d", (int)r->span);
	snprintf(out, size, "%s %s %s %d", _(measure_word(r->measure)),
		r->span_kind == SPAN_NUMBER ? span : _(span_word(r->span_kind)),
		comparator_word(r->comparator), (int)(r->value_x100 / 100));
}

static void add_ruling(struct proof *p, const struct ruling *r)
{
	for (size_t i = 0; r->want[i] != '\0'; i++) {
		struct line_of_traps line;
		struct proof_case *c = proof_add(p, r->id);
		read_traps(&line, r->input[i]);
		write_rule(c->rule, sizeof c->rule, r);
		proof_say_input(c, r->input[i]);
		proof_note_verdict(c, r->want[i], judge_traps(r, &line));
	}
}

void proof_add_rulings(struct proof *p, const struct ruling *r, size_t n)
{
	for (size_t i = 0; i < n; i++)
		add_ruling(p, &r[i]);
}
