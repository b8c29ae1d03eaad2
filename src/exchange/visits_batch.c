#include "visits_parts.h"

#include "base/mem.h"

#include <stdlib.h>
#include <string.h>

enum { BATCH_VISITS = 1 << 15 };

/* The book keeps all traps' visits of a day together. */
static int by_day_and_trap(const void *a, const void *b)
{
	const struct visit *v = &((const struct pending *)a)->visit;
	const struct visit *w = &((const struct pending *)b)->visit;

	if (v->day != w->day)
		return v->day < w->day ? -1 : 1;
	return (v->trap > w->trap) - (v->trap < w->trap);
}

static int by_line(const void *a, const void *b)
{
	uint32_t v = ((const struct pending *)a)->line;
	uint32_t w = ((const struct pending *)b)->line;

	return (v > w) - (v < w);
}

static struct visit_words words_of(const struct batch *b, const struct pending *p)
{
	struct visit_words w = { 0 };

	if (!p->words)
		return w;
	const char *scout = b->words.text + p->words;
	strcpy(w.scout, scout); /* both came from a row, so they fit */
	strcpy(w.note, scout + strlen(scout) + 1);
	return w;
}

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

/* Adds the visits; the refused ones are moved to the front, *refused of them. */
static bool add_all(struct taking *t, struct batch *b, size_t *refused, struct err *e)
{
	*refused = 0;
	for (size_t i = 0; i < b->n; i++) {
		struct pending p = b->items[i];
		struct visit_words w = words_of(b, &p);
		struct err why = { 0 };
		bool same = false;
		if (book_add_visit(t->book, &p.visit, &w, &same, &why))
			taking_count(t, same ? TOOK_SAME : TOOK_NEW);
		else if (why.kind == ERR_BOOK)
			return err_set(e, ERR_BOOK, "%s", why.text);
		else
			b->items[(*refused)++] = p;
	}
	return true;
}

bool batch_flush(struct taking *t, struct batch *b, struct err *e)
{
	size_t refused;

	if (b->n)
		qsort(b->items, b->n, sizeof *b->items, by_day_and_trap);
	if (!add_all(t, b, &refused, e))
		return false;
	if (refused)
		qsort(b->items, refused, sizeof *b->items, by_line);
	for (size_t i = 0; i < refused; i++) {
		struct visit_words w = words_of(b, &b->items[i]);
		struct err why = { 0 };
		if (fill_in(t, &b->items[i].visit, &w, &why))
			continue;
		if (why.kind == ERR_BOOK)
			return err_set(e, ERR_BOOK, "%s", why.text);
		taking_bad_row(t, b->items[i].line, why.text);
	}
	b->n = 0;
	buf_clear(&b->words);
	return true;
}

bool batch_add(struct taking *t, struct batch *b, const struct visit *v,
	const struct visit_row *r, struct err *e)
{
	struct pending p = { .visit = *v, .line = (uint32_t)t->csv.line };

	if (*r->scout || *r->note) {
		if (b->words.n == 0)
			buf_add_n(&b->words, "", 1); /* offset 0 is for none */
		p.words = (uint32_t)b->words.n;
		buf_add_n(&b->words, r->scout, strlen(r->scout) + 1);
		buf_add_n(&b->words, r->note, strlen(r->note) + 1);
	}
	b->items = mem_grow(b->items, &b->cap, b->n + 1, sizeof *b->items);
	b->items[b->n++] = p;
	return b->n < BATCH_VISITS || batch_flush(t, b, e);
}

void batch_free(struct batch *b)
{
	free(b->items);
	buf_free(&b->words);
}
