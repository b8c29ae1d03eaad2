/* alerts_spell.c - one alert that was over at several checks in a row. */
#include "alerts_parts.h"

#include "base/buf.h"
#include "base/text.h"
#include "base/words.h"

#include <stdlib.h>

static int by_place_latest_first(const void *a, const void *b)
{
	const struct alert *x = a, *y = b;

	if (x->block != y->block)
		return x->block < y->block ? -1 : 1;
	if (x->pest != y->pest)
		return x->pest < y->pest ? -1 : 1;
	if (x->trap != y->trap)
		return x->trap < y->trap ? -1 : 1;
	return (x->day < y->day) - (x->day > y->day);
}

/* An open one of the check before belongs to the alert that came after it: whoever
 * answered that knew of it. */
static bool goes_on_into(const struct alert *earlier, const struct alert *later)
{
	return !earlier->is_answered && earlier->block == later->block &&
	       earlier->pest == later->pest && earlier->trap == later->trap &&
	       earlier->day == later->before;
}

static void say_spell(struct alert *a)
{
	char day[DAY_TEXT_SIZE];
	struct buf text = { 0 };

	day_short(a->since, day, sizeof day);
	buf_addf(&text, _("%s; over at each of %d checks since %s"), a->says,
		(int)a->checks, day);
	text_copy(a->says, sizeof a->says, text.text);
	buf_free(&text);
}

void alerts_join_spells(struct alerts *a)
{
	size_t n = 0;

	if (a->n > 1)
		qsort(a->items, a->n, sizeof *a->items, by_place_latest_first);
	for (size_t i = 0; i < a->n; i++) {
		struct alert *last = n > 0 ? &a->items[n - 1] : NULL;
		if (!last || !goes_on_into(&a->items[i], last)) {
			a->items[n++] = a->items[i];
			continue;
		}
		last->checks++;
		last->since = a->items[i].day;
		last->before = a->items[i].before;
	}
	a->n = n;
	for (size_t i = 0; i < n; i++)
		if (a->items[i].checks > 1)
			say_spell(&a->items[i]);
}
