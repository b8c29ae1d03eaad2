/* entry_acts_lost.c - what changes when a treatment is taken out. */
#include "answers/entry_bar.h"
#include "answers/entry_forms.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdlib.h>

/* The block's treatments, all but one. */
static struct treatments without(const struct log *l, const struct treatment *gone)
{
	struct block_part of = bar_treatments(l, gone->block);
	struct treatments out = { 0 };

	for (size_t i = 0; i < of.n; i++) {
		if (of.items[i].id == gone->id)
			continue;
		out.items = mem_grow(out.items, &out.cap, out.n + 1, sizeof *out.items);
		out.items[out.n++] = of.items[i];
	}
	return out;
}

static void say_entry(const struct log *l, const struct treatment *gone,
	const struct treatments *rest, struct buf *out)
{
	struct block_part was = bar_treatments(l, gone->block);
	struct instant now = log_now(l);
	struct waiting before = waiting_entry(was.items, was.n, &l->zone, now);
	struct waiting after = waiting_entry(rest->items, rest->n, &l->zone, now);

	if (before.state == WAITING_FREE ||
		(before.state == after.state &&
			before.until.minute == after.until.minute))
		return;
	if (after.state == WAITING_FREE) {
		buf_add(out, _(" Nothing then bars entry."));
	} else if (after.state == WAITING_BARRED) {
		buf_add(out, _(" Still barred: "));
		bar_say_until(rest->items, &after, out);
		buf_add(out, ".");
	} else {
		buf_add(out, _(" Whether it may be entered is then not known."));
	}
}

/* Planned picks that it alone bars, or leaves open. */
static int freed_picks(const struct log *l, const struct treatment *gone,
	const struct treatments *rest)
{
	struct block_part was = bar_treatments(l, gone->block);
	int n = 0;

	for (size_t i = 0; i < l->picks.n; i++) {
		const struct pick *p = &l->picks.items[i];
		n += p->block == gone->block && !p->is_done &&
		     waiting_pick(was.items, was.n, &l->zone, p->day).state !=
			     WAITING_FREE &&
		     waiting_pick(rest->items, rest->n, &l->zone, p->day).state ==
			     WAITING_FREE;
	}
	return n;
}

static void say_freed(const struct log *l, const struct treatment *gone,
	const struct treatments *rest, struct buf *out)
{
	int n = freed_picks(l, gone, rest);

	if (n > 0)
		buf_addf(out,
			ngettext(" %d planned pick is then allowed.",
				" %d planned picks are then allowed.",
				(unsigned long)n),
			n);
}

static void say_picks(const struct log *l, const struct treatment *gone,
	const struct treatments *rest, struct buf *out)
{
	int32_t day = gone->day > l->today ? gone->day : l->today;
	struct block_part was = bar_treatments(l, gone->block);
	struct pick_wait before = waiting_pick(was.items, was.n, &l->zone, day);
	struct pick_wait after = waiting_pick(rest->items, rest->n, &l->zone, day);

	if (before.state != WAITING_FREE &&
		(after.state != before.state || after.earliest != before.earliest)) {
		if (after.state == WAITING_FREE) {
			buf_add(out, _(" Nothing then bars a pick."));
		} else {
			buf_add(out, _(" Still barred: "));
			bar_say_earliest(rest->items, &after, out);
			buf_add(out, ".");
		}
	}
}

/* A threshold that sums up since treatments, and for traps that this one was for. */
static bool sums_since(
	const struct log *l, const struct rule *r, const struct treatment *t)
{
	const struct block *b = log_block(l, t->block);

	return r->span_kind == SPAN_TREATMENT && (!t->pest || t->pest == r->pest) &&
	       (!r->farm || (b && b->farm == r->farm)) &&
	       (!r->block || r->block == t->block);
}

static void say_totals(
	const struct log *l, const struct treatment *gone, struct buf *out)
{
	for (size_t i = 0; i < l->rules.n; i++) {
		if (!sums_since(l, &l->rules.items[i], gone))
			continue;
		buf_add(out,
			gone->border
				? _(" Totals of border traps since a treatment "
				    "go on without it.")
				: _(" Totals since a treatment go on without it."));
		return;
	}
}

void entry_removal_says(
	const struct log *l, enum entry_kind kind, int64_t id, char *out, size_t size)
{
	const struct treatment *gone = NULL;
	struct buf text = { 0 };

	for (size_t i = 0; kind == ENTRY_TREATMENTS && i < l->treatments.n; i++)
		if (l->treatments.items[i].id == id)
			gone = &l->treatments.items[i];
	buf_add(&text, "");
	if (gone) {
		struct treatments rest = without(l, gone);
		say_freed(l, gone, &rest, &text);
		say_entry(l, gone, &rest, &text);
		say_picks(l, gone, &rest, &text);
		say_totals(l, gone, &text);
		free(rest.items);
	}
	text_copy(out, size, text.text);
	buf_free(&text);
}
