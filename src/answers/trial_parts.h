/* trial_parts.h - what the files of trial share. */
#ifndef ANSWERS_TRIAL_PARTS_H
#define ANSWERS_TRIAL_PARTS_H

#include "answers/trial.h"

/* True if both hold in the same places at the same times and say the same there; note
 * and source apart. */
bool rule_same(const struct rule *a, const struct rule *b);

/* The book's rules that turn `own` off where they hold, "CM2 (1 May to 31 Jul)", and
 * those that it turns off, "CM1, >=3"; "" for none. */
void trial_replaced(
	const struct log *l, const struct rule *own, char *out, size_t size);
void trial_replaces(
	const struct log *l, const struct rule *own, char *out, size_t size);

/* "1 May to 31 Jul" of the rule's window. */
void say_window(const struct rule *r, char *out, size_t size);

#endif
