/* agenda_blocks.c - when nobody may enter a block, and when it may be picked. */
#include "agenda_parts.h"

#include "answers/entry_bar.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdio.h>

/* Adds the caution that goes with re-entry and picks wherever they show. */
static void close_details(struct agenda_item *item, struct buf *says)
{
	buf_addf(says, "\n%s", say_caution_acts());
	text_copy(item->details, sizeof item->details, says->text);
	buf_free(says);
}

static bool is_asked(const struct writing *w, int64_t block)
{
	const struct block *b = log_block(w->log, block);

	return b && (w->farm == 0 || b->farm == w->farm);
}

static void title_block(const struct writing *w, int64_t block, const char *what,
	struct agenda_item *item)
{
	const struct block *b = log_block(w->log, block);
	const struct farm *f = log_farm(w->log, b->farm);

	snprintf(item->title, sizeof item->title, "%s: %s, %s", what, b->name,
		f ? f->name : "");
}

/* How long this treatment alone keeps people out. */
static struct waiting wait_after(const struct log *l, const struct treatment *t)
{
	return waiting_entry(t, 1, &l->zone, bar_begin(l, t));
}

static bool add_barred(const struct writing *w, const struct treatment *t,
	const struct waiting *wait, struct err *e)
{
	struct agenda_item *item = agenda_add(w, AGENDA_ENTRY, "treatment", t->id, e);
	struct buf says = { 0 };

	if (!item)
		return false;
	item->from = bar_begin(w->log, t);
	item->until = wait->until;
	item->day = instant_day(item->from);
	title_block(w, t->block, _("No entry"), item);
	bar_say_name(t, &says);
	buf_add(&says, ": ");
	bar_say_until(t, wait, &says);
	close_details(item, &says);
	return true;
}

static bool add_unknown(
	const struct writing *w, const struct treatment *t, struct err *e)
{
	struct agenda_item *item = agenda_add(w, AGENDA_ENTRY, "treatment", t->id, e);
	struct buf says = { 0 };

	if (!item)
		return false;
	item->day = t->day > w->log->today ? t->day : w->log->today;
	title_block(w, t->block, _("Entry not known"), item);
	bar_say_lacking(t, true, false, &says);
	close_details(item, &says);
	return true;
}

static bool add_entry(const struct writing *w, const struct treatment *t, struct err *e)
{
	struct waiting wait = wait_after(w->log, t);

	if (t->day < w->log->today - AGENDA_ENTRY_DAYS || !is_asked(w, t->block))
		return true;
	if (wait.state == WAITING_BARRED)
		return add_barred(w, t, &wait, e);
	return wait.state == WAITING_FREE || add_unknown(w, t, e);
}

bool agenda_add_entries(const struct writing *w, struct err *e)
{
	bool ok = true;

	for (size_t i = 0; ok && i < w->log->treatments.n; i++)
		ok = add_entry(w, &w->log->treatments.items[i], e);
	return ok;
}

static const char *title_of(const struct pick_row *row)
{
	if (row->id == 0)
		return row->wait.earliest == DAY_NONE ? _("Earliest pick not known")
						      : _("Earliest pick");
	if (row->wait.state == WAITING_FREE)
		return _("Pick");
	return row->wait.state == WAITING_UNKNOWN ? _("Pick, not known whether allowed")
	       : row->wait.state == WAITING_FROM  ? _("Pick, not all day")
						  : _("Pick too early");
}

static bool add_pick(const struct writing *w, const struct pick_row *row, struct err *e)
{
	bool planned = row->id != 0;
	struct agenda_item *item =
		agenda_add(w, planned ? AGENDA_PICK : AGENDA_EARLIEST,
			planned ? "pick" : "block", planned ? row->id : row->block, e);
	struct buf says = { 0 };

	if (!item)
		return false;
	if (planned)
		item->day = row->day;
	else if (row->wait.earliest > w->log->today)
		item->day = row->wait.earliest;
	title_block(w, row->block, title_of(row), item);
	buf_add(&says, row->says);
	close_details(item, &says);
	return true;
}

bool agenda_add_picks(const struct writing *w, struct err *e)
{
	struct pick_rows rows = { 0 };
	bool ok = true;

	pick_rows_of(w->log, w->farm, &rows);
	for (size_t i = 0; ok && i < rows.n; i++)
		if (!rows.items[i].is_done)
			ok = add_pick(w, &rows.items[i], e);
	pick_rows_free(&rows);
	return ok;
}
