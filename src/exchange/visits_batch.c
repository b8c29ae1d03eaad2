#include "visits_parts.h"

/* Again, for a visit that was refused: a bare hanging or pulling, as a file of traps
 * makes it, gives way to a fuller one. */
static bool fill_in(struct taking *t, const struct visit *v,
	const struct visit_words *w, struct err *e)
{
	bool ends = v->outcome == OUTCOME_HUNG || v->outcome == OUTCOME_PULLED, same;
	struct visit was;
	struct visit_words words;

	if (!ends || !book_visit(t->book, v->trap, v->day, &was, &words, NULL) ||
		was.outcome != v->outcome || was.count != COUNT_NONE || *words.scout ||
		*words.note)
		return book_add_visit(t->book, v, w, &same, e);
	if (!book_save_visit(t->book, v, w, e))
		return false;
	taking_count(t, TOOK_CHANGED);
	return true;
}

/* In the order of the file. */
static bool judge_refused(struct taking *t, struct batch *b, struct err *e)
{
	struct visit_words w = { 0 };

	pile_sort_by_line(&b->refused);
	for (size_t i = 0; i < b->refused.n; i++) {
		struct visit v = pending_visit(&b->refused.items[i]);
		struct err why = { 0 };
		pile_tell(&b->refused, i, &w);
		if (fill_in(t, &v, &w, &why))
			continue;
		if (why.kind == ERR_BOOK)
			return err_set(e, ERR_BOOK, "%s", why.text);
		taking_bad_row(t, b->refused.items[i].line, why.text);
	}
	pile_clear(&b->refused);
	return true;
}

static bool add(struct taking *t, struct batch *b, const struct pending *p,
	const struct visit_words *w, struct err *e)
{
	struct visit v = pending_visit(p);
	struct err why = { 0 };
	bool same = false;

	if (book_add_visit(t->book, &v, w, &same, &why)) {
		taking_count(t, same ? TOOK_SAME : TOOK_NEW);
		return true;
	}
	if (why.kind == ERR_BOOK)
		return err_set(e, ERR_BOOK, "%s", why.text);
	pile_put(&b->refused, *p, w->scout, w->note);
	return !pile_is_full(&b->refused) || judge_refused(t, b, e);
}

static bool add_pile(struct taking *t, struct batch *b, struct err *e)
{
	struct visit_words w = { 0 };

	for (size_t i = 0; i < b->coming.n; i++) {
		pile_tell(&b->coming, i, &w);
		if (!add(t, b, &b->coming.items[i], &w, e))
			return false;
	}
	pile_clear(&b->coming);
	return judge_refused(t, b, e);
}

/* Out of the way until all have come; into the book at once if there is no room. */
static bool lay_aside(struct taking *t, struct batch *b, struct err *e)
{
	pile_sort(&b->coming);
	if (!runs_add(&b->runs, &b->coming))
		return add_pile(t, b, e);
	pile_clear(&b->coming);
	return true;
}

bool batch_add(struct taking *t, struct batch *b, const struct visit *v,
	const struct visit_row *r, struct err *e)
{
	struct pending p = pending_of(v, (uint32_t)t->csv.line);

	pile_put(&b->coming, p, r->scout, r->note);
	return !pile_is_full(&b->coming) || lay_aside(t, b, e);
}

/* Adds visits of the run as long as they come before those of all others. */
static bool add_run(struct taking *t, struct batch *b, struct run *r,
	const struct pending *until, struct err *e)
{
	do {
		if (!add(t, b, run_now(r), &r->words, e) ||
			!run_next(r, t->from->name, e))
			return false;
	} while (r->file && (!until || pending_order(run_now(r), until) < 0));
	return true;
}

/* All runs as one, so that the book grows at its end alone. */
static bool add_runs(struct taking *t, struct batch *b, struct err *e)
{
	const struct pending *until;
	struct run *r;

	pile_free(&b->coming); /* the book's cache needs as much */
	for (size_t i = 0; i < b->runs.n; i++)
		if (!run_next(&b->runs.items[i], t->from->name, e))
			return false;
	while ((r = runs_first(&b->runs, &until)))
		if (!add_run(t, b, r, until, e))
			return false;
	return judge_refused(t, b, e);
}

bool batch_finish(struct taking *t, struct batch *b, struct err *e)
{
	if (b->runs.n == 0) {
		pile_sort(&b->coming);
		return add_pile(t, b, e);
	}
	return lay_aside(t, b, e) && add_runs(t, b, e);
}

void batch_free(struct batch *b)
{
	pile_free(&b->coming);
	pile_free(&b->refused);
	runs_free(&b->runs);
}
