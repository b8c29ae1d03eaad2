/* alerts_after.c - what the catch did after a decision: numbers and what makes them
 * doubtful. */
#include "alerts_parts.h"

#include "answers/say.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "season/after.h"

#include <stdio.h>
#include <stdlib.h>

/* "12.0", "12.0+", "not read" */
static void say_side(const struct after_side *s, char out[static SAY_LINE])
{
	int32_t x10 = s->read > 0 ? ratio_x10(s->week.lo) : -1;

	if (x10 < 0)
		text_copy(out, SAY_LINE, _("not read"));
	else
		words_print(out, SAY_LINE, _("%.1f%s a week"), (double)x10 / 10,
			s->week.open ? "+" : "");
}

/* "14 nights"; of several traps "7 to 14 nights" */
static void say_nights(const struct after_side *s, struct buf *out)
{
	if (s->read == 0)
		buf_add(out, "-");
	else if (s->least == s->most)
		buf_addf(out, ngettext("%d night", "%d nights", (unsigned long)s->most),
			(int)s->most);
	else
		buf_addf(out, _("%d to %d nights"), (int)s->least, (int)s->most);
}

static void say_lures(const struct after_side *s, bool before, struct buf *out)
{
	if (s->lures_overdue > 0)
		buf_add(out, before ? _("; lure overdue before")
				    : _("; lure overdue after"));
	if (s->lures_unknown > 0)
		buf_add(out, before ? _("; lure not known before")
				    : _("; lure not known after"));
	if (s->intervals_lost > 0)
		buf_add(out, before ? _("; not all was read before")
				    : _("; not all was read after"));
}

static void add_doubts(const struct after *a, struct buf *out)
{
	say_lures(&a->before, true, out);
	say_lures(&a->after, false, out);
	if (a->across > 0)
		buf_add(out, _("; an interval that the day falls into is left out"));
	if (a->before.read > 0 && a->after.read > 0 &&
		(a->both < a->before.read || a->both < a->after.read))
		buf_add(out, _("; not the same traps"));
	if (!a->is_over)
		buf_add(out, _("; the two weeks after are not over"));
}

static void say_after(const struct after *a, struct buf *out)
{
	char before[SAY_LINE], after[SAY_LINE];

	say_side(&a->before, before);
	say_side(&a->after, after);
	buf_addf(out, _("before %s, after %s ("), before, after);
	say_nights(&a->before, out);
	buf_add(out, _(" and "));
	say_nights(&a->after, out);
	add_doubts(a, out);
	buf_add(out, ")");
}

static bool is_of(const struct trap *t, const struct answer *x)
{
	return x->trap != 0 ? t->id == x->trap
			    : t->block == x->block && t->pest == x->pest;
}

void alert_say_after(
	const struct log *l, const struct answer *x, char *out, size_t size)
{
	const struct diary **traps = mem_new(l->traps.n, sizeof *traps);
	struct buf text = { 0 };
	size_t n = 0;

	for (size_t i = 0; i < l->traps.n; i++)
		if (is_of(&l->traps.items[i], x))
			traps[n++] = &l->diaries[i];
	struct after a = after_decision(traps, n, &l->lures, x->on, l->today);
	say_after(&a, &text);
	text_copy(out, size, text.text);
	buf_free(&text);
	free(traps);
}
