/* steps.c - what was entered, taken back step by step. */
#include "book/steps.h"

#include "change.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct changes {
	struct change *items;
	size_t n, cap;
};

bool book_latest_step(struct book *b, int64_t *step, struct err *e)
{
	struct query q;

	*step = 0;
	query_start(&q, b,
		"SELECT coalesce(step, id) FROM history ORDER BY id DESC LIMIT 1");
	if (query_row(&q))
		*step = query_get(&q);
	return query_end(&q, N_("the history cannot be read"), e);
}

/* The latest step of which something is not taken back. */
static bool find_step(struct book *b, const char *by, int64_t after, int64_t *step,
	const char *what, struct err *e)
{
	struct query q;

	*step = 0;
	query_start(&q, b,
		"SELECT coalesce(h.step, h.id) FROM history h WHERE h.id > ?1 "
		"AND coalesce(h.step, h.id) > ?1 AND h.undoes IS NULL "
		"AND (?2 IS NULL OR h.by = ?2) "
		"AND NOT EXISTS (SELECT 1 FROM history u WHERE u.undoes = h.id) "
		"ORDER BY h.id DESC LIMIT 1");
	query_int(&q, after);
	if (by)
		query_text(&q, by);
	if (query_row(&q))
		*step = query_get(&q);
	if (!query_end(&q, what, e))
		return false;
	return *step ||
	       err_set(e, ERR_NOT_FOUND, _("there is nothing left to take back"));
}

static void read_change(struct query *q, struct change *c)
{
	c->id = query_get(q);
	c->kind = row_kind(query_get_text(q));
	query_require(q, c->kind != NULL);
	const char *op = query_get_text(q);
	c->inserted = strcmp(op, "insert") == 0;
	c->removed = strcmp(op, "delete") == 0;
	c->of_visit = query_get(q) != 0;
}

/* What of it is not taken back, in the order in which it was done. The rows of a step
 * lie side by side. */
static bool read_step(struct book *b, int64_t step, struct changes *out,
	char at[static STORE_TIME_SIZE], const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"SELECT coalesce(h.step, h.id), h.undoes IS NOT NULL OR EXISTS (SELECT "
		"1 FROM history u WHERE u.undoes = h.id), h.at, h.id, h.kind, h.op, "
		"h.trap IS NOT NULL FROM history h WHERE h.id >= ?1 ORDER BY h.id");
	q.table = "history";
	query_int(&q, step);
	while (query_row(&q)) {
		if (query_get(&q) != step)
			break;
		if (query_get(&q) != 0)
			continue;
		query_get_copy(&q, at, STORE_TIME_SIZE);
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_change(&q, &out->items[out->n++]);
	}
	return query_end(&q, what, e);
}

/* Latest first, so that each row stands as its change left it. */
static bool take_back(
	struct book *b, const struct changes *all, const char *what, struct err *e)
{
	bool ok = true;

	for (size_t i = all->n; ok && i-- > 0;) {
		const struct change *c = &all->items[i];
		int64_t last = 0;

		ok = change_last(b, &last, what, e) &&
		     change_take_back(b, c, what, e) &&
		     change_mark(b, c->id, last, what, e);
	}
	return ok;
}

/* What no table can say. A book may be torn already: only what an undo tears is
 * refused. */
struct sound {
	int64_t torn; /* traps in blocks of another farm */
	bool settings;
	struct err why; /* unless the settings fit each other */
};

static bool look(struct book *b, struct sound *out, const char *what, struct err *e)
{
	struct limits limits;
	struct query q;

	query_start(&q, b,
		"SELECT count(*) FROM trap t JOIN block k ON k.id = t.block "
		"WHERE k.farm <> t.farm");
	if (query_row(&q))
		out->torn = query_get(&q);
	out->settings = store_limits(b, &limits, &out->why);
	return query_end(&q, what, e);
}

static bool hangs_together(
	struct book *b, const struct sound *before, const char *what, struct err *e)
{
	struct sound now = { 0 };

	if (!look(b, &now, what, e))
		return false;
	if (now.torn > before->torn)
		return err_set(e, ERR_INPUT,
			_("%s: a trap would stand in a block of another farm"),
			_(what));
	return now.settings || !before->settings ||
	       err_set(e, ERR_INPUT, "%s: %s", _(what), now.why.text);
}

/* What a step is named by: its first row that is no visit, for a trap that was replaced
 * has one too; else its first. */
static const struct change *lead_of(const struct changes *all)
{
	for (size_t i = 0; i < all->n; i++)
		if (!all->items[i].of_visit)
			return &all->items[i];
	return &all->items[0];
}

static void name_lead(
	struct book *b, const struct changes *all, struct undone_step *out)
{
	const struct change *first = lead_of(all);

	out->rows = (int)all->n;
	out->was_new = first->inserted;
	text_copy(out->kind, sizeof out->kind, first->kind->table);
	row_say_change(b, first->kind, first->id, out->name, sizeof out->name);
}

/* The latest step of this handle of which something is not taken back. */
static bool find_own(struct book *b, int64_t *step, const char *what, struct err *e)
{
	char at[STORE_TIME_SIZE];
	struct changes left = { 0 };
	bool ok = true;

	while (ok && left.n == 0 && b->own.n > 0) {
		*step = b->own.items[b->own.n - 1];
		ok = read_step(b, *step, &left, at, what, e);
		b->own.n -= ok && left.n == 0;
	}
	bool found = left.n > 0;
	free(left.items);
	return ok && (found || err_set(e, ERR_NOT_FOUND,
				       _("there is nothing left to take back")));
}

/* out->step; the rest of *out is filled in. */
static bool undo(
	struct book *b, struct undone_step *out, const char *what, struct err *e)
{
	struct changes all = { 0 };
	struct sound before = { 0 };
	bool ok = read_step(b, out->step, &all, out->changed_at, what, e) &&
		  look(b, &before, what, e);

	if (ok && lead_of(&all)->inserted)
		name_lead(b, &all, out);
	ok = ok && take_back(b, &all, what, e) && hangs_together(b, &before, what, e);
	if (ok && !lead_of(&all)->inserted)
		name_lead(b, &all, out);
	free(all.items);
	return ok;
}

bool book_undo_step(struct book *b, const char *by, int64_t after,
	struct undone_step *out, struct err *e)
{
	const char *what = N_("nothing is taken back");
	char name[SCOUT_BYTES]; /* cut as book_set_who cuts it */

	*out = (struct undone_step){ 0 };
	text_copy(name, sizeof name, by ? by : "");
	return store_begin(b, what, e) &&
	       store_end(b,
		       find_step(b, by ? name : NULL, after, &out->step, what, e) &&
			       undo(b, out, what, e),
		       what, e);
}

bool book_undo_own(struct book *b, struct undone_step *out, struct err *e)
{
	const char *what = N_("nothing is taken back");

	*out = (struct undone_step){ 0 };
	return store_begin(b, what, e) &&
	       store_end(b, find_own(b, &out->step, what, e) && undo(b, out, what, e),
		       what, e);
}

/* It is taken back and that is thrown away: so it is named as it would be. */
bool book_would_undo(struct book *b, struct undone_step *out, struct err *e)
{
	const char *what = N_("nothing is taken back");

	*out = (struct undone_step){ 0 };
	if (!store_begin(b, what, e))
		return false;
	bool ok = find_own(b, &out->step, what, e) && undo(b, out, what, e);
	store_end(b, false, what, NULL);
	return ok;
}
