/* entry_acts_live.c - what a pick or a treatment would mean, while its form is still
 * being filled in; and what taking one out would change. */
#include "answers/entry_bar.h"
#include "answers/entry_forms.h"
#include "answers/verdicts.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"
#include "entry_live.h"
#include "record_parts.h"

#include <stdlib.h>
#include <string.h>

static int64_t block_of(const struct log *l, const char *farm, const char *name)
{
	const struct known k = live_known(l);

	return known_find_block(&k, known_find_farm(&k, farm), name);
}

static void take(struct buf *text, char out[static SAY_LINE])
{
	text_copy(out, SAY_LINE, text->text ? text->text : "");
	buf_free(text);
}

/* As long as no day is typed: the block's earliest. */
static void live_no_day(const struct log *l, int64_t block, char out[static SAY_LINE])
{
	const struct block *b = log_block(l, block);
	struct block_part t = bar_treatments(l, block);
	struct pick_wait w = waiting_pick(t.items, t.n, &l->zone, l->today);
	struct buf text = { 0 };

	if (b)
		bar_say_place(l, b, &text);
	buf_add(&text, ": ");
	if (w.state == WAITING_FREE)
		buf_add(&text, _("nothing in the log bars a pick today"));
	else
		bar_say_earliest(t.items, &w, &text);
	take(&text, out);
}

static void live_pick(const struct entry *r, const struct log *l, char (*out)[SAY_LINE])
{
	struct pick_entry_row row = { 0 };
	bool read = live_row(r, false, &row);
	int64_t block = read ? block_of(l, row.farm, row.block) : 0;
	struct buf text = { 0 };

	if (!block)
		return;
	if (row.day == DAY_NONE) {
		live_no_day(l, block, out[0]);
		return;
	}
	struct block_part t = bar_treatments(l, block);
	struct pick_wait w = waiting_pick(t.items, t.n, &l->zone, row.day);
	bar_say_day(row.day, l->today, &text);
	buf_add(&text, ": ");
	bar_say_pick(t.items, &w, row.done == 1, &text);
	take(&text, out[w.state == WAITING_FREE ? 0 : 1]);
}

/* What was not typed yet is not said to be missing before it is saved. */
static void live_waits(
	const struct log *l, const struct treatment *t, bool barring, struct buf *says)
{
	if (t->rei_hours >= 0)
		record_say_entry(t, &l->zone, says);
	if (t->phi_days < 0 || barring) /* a barred pick says it */
		return;
	buf_add(says, says->n > 0 ? "; " : "");
	record_say_pick(t, &l->zone, says);
}

/* Its picks that the treatment bars, the first of them whole. */
static void live_bars(const struct log *l, const struct treatment *t, struct buf *text,
	size_t *others)
{
	char said[1][SAY_LINE * 2];
	size_t n = treatment_bars_picks(l, t, said, 1);

	if (n > 0 && text->n == 0) {
		buf_add(text, said[0]);
		n--;
	}
	*others += n;
}

/* The form may name several blocks; all have the same hours and intervals. */
static void live_blocks(const struct entry *r, const struct log *l,
	struct treatment_row *row, struct buf *says, struct buf *bars)
{
	struct known k = live_known(l);
	char names[NOTE_BYTES], *next = names;
	size_t others = 0;

	text_copy(names, sizeof names, row->block);
	for (char *name = names; next; name = next) {
		struct hearing h = live_hearing(l);
		struct treatment t = treatment_blank;

		next = block_of(l, row->farm, name) ? NULL : strchr(name, ',');
		if (next)
			*next++ = '\0';
		text_copy(row->block, sizeof row->block, name);
		text_trim(row->block);
		t.id = r->id;
		if (!block_of(l, row->farm, row->block) ||
			!treatment_over(&h, &k, row, &t))
			continue;
		if (t.rei_hours >= 0 || t.phi_days >= 0)
			live_bars(l, &t, bars, &others);
		buf_clear(says);
		live_waits(l, &t, bars->n > 0, says);
	}
	if (others > 0)
		buf_addf(bars,
			ngettext("; and %zu more pick", "; and %zu more picks", others),
			others);
}

static void live_treatment(
	const struct entry *r, const struct log *l, char (*out)[SAY_LINE])
{
	struct treatment_row row = { 0 };
	struct buf says = { 0 }, bars = { 0 };

	if (live_row(r, false, &row) && row.day != DAY_NONE)
		live_blocks(r, l, &row, &says, &bars);
	take(&says, out[0]);
	take(&bars, out[1]);
}

void entry_live(const struct entry *r, const struct log *l, char (*out)[SAY_LINE])
{
	out[0][0] = out[1][0] = '\0';
	if (r->kind == ENTRY_PICKS)
		live_pick(r, l, out);
	else if (r->kind == ENTRY_TREATMENTS)
		live_treatment(r, l, out);
}
