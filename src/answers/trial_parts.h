/* trial_parts.h - what the files of trial share. */
#ifndef ANSWERS_TRIAL_PARTS_H
#define ANSWERS_TRIAL_PARTS_H

#include "answers/trial.h"

/* True if both hold in the same places at the same times and say the same there; note
 * and source apart. */
bool rule_same(const struct rule *a, const struct rule *b);

/* "1 May to 31 Jul" of the rule's window. */
void say_window(const struct rule *r, char *out, size_t size);

#endif
