/* visits_pile.c - visits that wait for their turn into the book. */
#include "visits_parts.h"

#include "base/mem.h"

#include <stdlib.h>
#include <string.h>

struct pending pending_of(const struct visit *v, uint32_t line)
{
	return (struct pending){
		.day = v->day,
		.trap = (uint32_t)v->trap,
		.new_card = v->new_card,
		.new_lure = v->new_lure,
		.line = line,
		.count = (int16_t)v->count,
		.females = (int16_t)v->females,
		.others = (int16_t)v->others,
		.outcome = v->outcome,
		.reason = v->reason,
		.stirred = v->stirred,
	};
}

struct visit pending_visit(const struct pending *p)
{
	return (struct visit){
		.trap = p->trap,
		.day = p->day,
		.outcome = (enum outcome)p->outcome,
		.reason = (enum reason)p->reason,
		.count = p->count,
		.females = p->females,
		.others = p->others,
		.new_card = p->new_card,
		.new_lure = p->new_lure,
		.stirred = p->stirred,
	};
}

int pending_order(const struct pending *p, const struct pending *q)
{
	if (p->day != q->day)
		return p->day < q->day ? -1 : 1;
	return (p->trap > q->trap) - (p->trap < q->trap);
}

static bool same_words(const char *scout, const char *other)
{
	return !strcmp(scout, other) &&
	       !strcmp(scout + strlen(scout) + 1, other + strlen(other) + 1);
}

/* Most visits have no note, and the scout of the one before. */
static uint32_t keep_words(struct pile *pile, const char *scout, const char *note)
{
	if (pile->words.n == 0)
		buf_add_n(&pile->words, "\0", 2); /* no scout and no note */
	if (!*note && !strcmp(pile->words.text + pile->plain, scout))
		return pile->plain;
	uint32_t at = (uint32_t)pile->words.n;
	buf_add_n(&pile->words, scout, strlen(scout) + 1);
	buf_add_n(&pile->words, note, strlen(note) + 1);
	if (!*note)
		pile->plain = at;
	return at;
}

void pile_put(struct pile *pile, struct pending p, const char *scout, const char *note)
{
	if (!pile->items)
		pile->items = mem_new(PILE_VISITS, sizeof *pile->items);
	p.words = keep_words(pile, scout, note);
	pile->items[pile->n++] = p;
}

bool pile_is_full(const struct pile *pile)
{
	return pile->n == PILE_VISITS || pile->words.n >= PILE_WORDS;
}

bool pile_tell(const struct pile *pile, size_t i, struct visit_words *w)
{
	const char *scout = pile->words.text + pile->items[i].words;

	if (pile->items[i].again)
		return false;
	strcpy(w->scout, scout); /* both came from a row, so they fit */
	strcpy(w->note, scout + strlen(scout) + 1);
	return true;
}

static int by_order(const void *a, const void *b)
{
	return pending_order(a, b);
}

static int by_line(const void *a, const void *b)
{
	uint32_t v = ((const struct pending *)a)->line;
	uint32_t w = ((const struct pending *)b)->line;

	return (v > w) - (v < w);
}

static void sort(struct pile *pile, int (*order)(const void *, const void *))
{
	struct pending *p = pile->items;
	const char *words = pile->words.text;

	if (pile->n == 0)
		return;
	qsort(p, pile->n, sizeof *p, order);
	p[0].again = false;
	for (size_t i = 1; i < pile->n; i++)
		p[i].again = p[i].words == p[i - 1].words ||
			     same_words(words + p[i].words, words + p[i - 1].words);
}

void pile_sort(struct pile *pile)
{
	sort(pile, by_order);
}

void pile_sort_by_line(struct pile *pile)
{
	sort(pile, by_line);
}

void pile_clear(struct pile *pile)
{
	pile->n = 0;
	pile->plain = 0;
	buf_clear(&pile->words);
}

void pile_free(struct pile *pile)
{
	free(pile->items);
	buf_free(&pile->words);
	*pile = (struct pile){ 0 };
}
