#include "answers/entry_bar.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { DAYS_TOLD_BY_NAME = 6, DAYS_AHEAD = 7, MORE_BYTES = 40 };

/* The first treatment of a block >= `block`; they are sorted by block. */
static size_t first_of(const struct treatments *t, int64_t block)
{
	size_t lo = 0, hi = t->n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		if (t->items[mid].block < block)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}

struct block_part bar_treatments(const struct log *l, int64_t block)
{
	size_t at = first_of(&l->treatments, block);

	return (struct block_part){ l->treatments.n ? &l->treatments.items[at] : NULL,
		first_of(&l->treatments, block + 1) - at };
}

struct instant bar_begin(const struct log *l, const struct treatment *t)
{
	return t->from.minute != INSTANT_NONE ? t->from
					      : zone_local(&l->zone, t->day, 0);
}

bool bar_is_coming(const struct log *l, const struct treatment *t)
{
	return bar_begin(l, t).minute > log_now(l).minute &&
	       t->day <= l->today + DAYS_AHEAD;
}

/* "Wed 06:00" within a week, "Wed 29 Jul 06:00" beyond it. */
static void say_soon(const struct log *l, struct instant until, struct buf *out)
{
	char day[DAY_TEXT_SIZE];
	int32_t minute = instant_minute_of_day(until);

	day_short(instant_day(until), day, sizeof day);
	if (instant_day(until) - instant_day(log_now(l)) > DAYS_TOLD_BY_NAME)
		bar_say_instant(until, l->today, out);
	else
		buf_addf(out, "%.*s %02d:%02d", (int)strcspn(day, " "), day,
			(int)minute / 60, (int)minute % 60);
}

static void say_text(
	const struct treatment *t, const struct waiting *w, struct buf *out)
{
	if (w->state == WAITING_BARRED) {
		bar_say_until(t, w, out);
		return;
	}
	buf_add(out, _("whether it may be entered is not known: "));
	if (w->unknown >= 0)
		bar_say_lacking(&t[w->unknown], true, false, out);
	else
		buf_add(out, _("this machine's clock shows no usable time"));
}

static void say_brief(const struct log *l, const struct waiting *w, struct buf *out)
{
	if (w->state != WAITING_BARRED) {
		buf_add(out, _("entry not known"));
		return;
	}
	buf_add(out, _("no entry till "));
	say_soon(l, w->until, out);
	if (w->unknown >= 0)
		buf_add(out, _(", then not known"));
}

static void add_bar(const struct log *l, const struct block *block,
	const struct treatment *t, const struct waiting *w, struct bars *out)
{
	struct buf text = { 0 }, brief = { 0 }, until = { 0 }, by = { 0 },
		   place = { 0 };
	int at = w->state == WAITING_BARRED ? w->treatment : w->unknown;

	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct bar *b = &out->items[out->n++];
	*b = (struct bar){ .farm = block->farm, .block = block->id, .waiting = *w };
	text_copy(b->block_name, sizeof b->block_name, block->name);
	bar_say_place(l, block, &place);
	text_copy(b->place, sizeof b->place, place.text);
	buf_free(&place);
	say_text(t, w, &text);
	say_brief(l, w, &brief);
	if (w->state == WAITING_BARRED)
		bar_say_instant(w->until, l->today, &until);
	text_copy(b->until, sizeof b->until, until.text ? until.text : "");
	if (at >= 0)
		bar_say_by(&t[at], &by);
	text_copy(b->by, sizeof b->by, by.text ? by.text : "");
	text_copy(b->text, sizeof b->text, text.text);
	text_copy(b->brief, sizeof b->brief, brief.text);
	buf_free(&by);
	buf_free(&text);
	buf_free(&brief);
	buf_free(&until);
}

/* Adds the first treatment to come that begins when `after` is over. */
static void add_coming(const struct log *l, const struct block *block,
	struct block_part t, struct instant after, struct bars *out)
{
	struct instant first = { .minute = INSTANT_NONE };
	struct buf begin = { 0 };

	for (size_t i = 0; i < t.n; i++) {
		struct instant at = bar_begin(l, &t.items[i]);
		if (bar_is_coming(l, &t.items[i]) && at.minute >= after.minute &&
			(first.minute == INSTANT_NONE || at.minute < first.minute))
			first = at;
	}
	if (first.minute == INSTANT_NONE)
		return;
	out->coming = mem_grow(
		out->coming, &out->cap_coming, out->n_coming + 1, sizeof *out->coming);
	struct bar *b = &out->coming[out->n_coming++];
	*b = (struct bar){ .farm = block->farm, .block = block->id };
	text_copy(b->block_name, sizeof b->block_name, block->name);
	bar_say_instant(first, l->today, &begin);
	text_copy(b->until, sizeof b->until, begin.text);
	buf_free(&begin);
}

static void look_at(const struct log *l, const struct block *block, struct bars *out)
{
	struct block_part t = bar_treatments(l, block->id);
	struct waiting w = waiting_entry(t.items, t.n, &l->zone, log_now(l));

	if (w.state != WAITING_FREE)
		add_bar(l, block, t.items, &w, out);
	if (log_now(l).minute != INSTANT_NONE)
		add_coming(l, block, t,
			w.state == WAITING_BARRED ? w.until : log_now(l), out);
}

void bars_of(const struct log *l, int64_t farm, struct bars *out)
{
	out->n = out->n_coming = 0;
	for (size_t f = 0; f < l->farms.n; f++) {
		int64_t id = l->farms.items[f].id;
		if (farm != 0 && farm != id)
			continue;
		for (size_t i = 0; i < l->blocks.n; i++)
			if (l->blocks.items[i].farm == id)
				look_at(l, &l->blocks.items[i], out);
	}
}

void bars_free(struct bars *b)
{
	free(b->items);
	free(b->coming);
	*b = (struct bars){ 0 };
}

const struct bar *bars_find(const struct bars *b, int64_t block)
{
	for (size_t i = 0; i < b->n; i++)
		if (b->items[i].block == block)
			return &b->items[i];
	return NULL;
}

/* "Pond block until Wed 22 Jul 06:00"; one that is still free "from" when; a block of
 * which it is not known by name. */
static void say_block(const struct bar *b, struct buf *out)
{
	if (b->waiting.state == WAITING_FREE)
		buf_addf(out, _("%s from %s"), b->block_name, b->until);
	else if (b->waiting.state == WAITING_UNKNOWN)
		buf_add(out, b->block_name);
	else
		buf_addf(out,
			b->waiting.unknown < 0 ? _("%s until %s")
					       : _("%s until %s, then not known"),
			b->block_name, b->until);
}

/* Adds the farm's blocks of one state behind `head`; those that *out has no room for
 * are counted. */
static void say_blocks(const struct bars *b, int64_t farm, enum waiting_state state,
	const char *head, struct buf *out, size_t room)
{
	int more = 0, told = 0;

	for (size_t i = 0; i < b->n; i++) {
		struct buf one = { 0 };
		if (b->items[i].farm != farm || b->items[i].waiting.state != state)
			continue;
		say_block(&b->items[i], &one);
		buf_add(out, told + more > 0 ? "" : out->n ? "; " : "");
		buf_add(out, told + more > 0 ? "" : head);
		if (out->n + one.n + MORE_BYTES > room)
			more++;
		else
			buf_addf(out, "%s%s", told++ > 0 ? ", " : "", one.text);
		buf_free(&one);
	}
	if (more > 0)
		buf_addf(out,
			ngettext(" and %d more block", " and %d more blocks",
				(unsigned long)more),
			more);
}

void bars_say(const struct bars *b, int64_t farm, char *out, size_t size)
{
	const struct bars coming = { .items = b->coming, .n = b->n_coming };
	struct buf text = { 0 };

	buf_add(&text, "");
	say_blocks(b, farm, WAITING_BARRED, _("no entry: "), &text,
		size - size / 3); /* room for those that are not known */
	say_blocks(b, farm, WAITING_UNKNOWN, _("entry not known: "), &text, size);
	say_blocks(&coming, farm, WAITING_FREE, _("treatment planned: "), &text, size);
	text_copy(out, size, text.text);
	buf_free(&text);
}

int bars_say_brief(const struct bars *b, int64_t farm, char *out, size_t size)
{
	const struct bar *first = NULL;
	int n = 0;

	for (size_t i = 0; i < b->n; i++) {
		if (b->items[i].farm != farm)
			continue;
		first = first ? first : &b->items[i];
		n++;
	}
	text_copy(out, size, "");
	if (n == 1)
		snprintf(out, size, "%s: %s", first->block_name, first->brief);
	else if (n > 1)
		snprintf(out, size, _("%s: %s, and %d more"), first->block_name,
			first->brief, n - 1);
	return n;
}
