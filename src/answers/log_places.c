/* log_places.c - blocks and traps by their ids: a book may have thousands, and each is
 * asked for over and over. */
#include "log_parts.h"

#include "base/mem.h"

#include <stdint.h>
#include <stdlib.h>

static int by_id(const void *a, const void *b)
{
	const struct log_place *x = a, *y = b;

	return (x->id > y->id) - (x->id < y->id);
}

static void add(struct log_places *p, int64_t id, size_t at)
{
	p->items = mem_grow(p->items, &p->cap, p->n + 1, sizeof *p->items);
	p->items[p->n++] = (struct log_place){ id, at };
}

static void sort(struct log_places *p)
{
	if (p->n > 1)
		qsort(p->items, p->n, sizeof *p->items, by_id);
}

void log_set_places(struct log *l)
{
	log_clear_places(l);
	for (size_t i = 0; i < l->blocks.n; i++)
		add(&l->block_places, l->blocks.items[i].id, i);
	for (size_t i = 0; i < l->traps.n; i++)
		add(&l->trap_places, l->traps.items[i].id, i);
	sort(&l->block_places);
	sort(&l->trap_places);
}

void log_clear_places(struct log *l)
{
	l->block_places.n = l->trap_places.n = 0;
}

void log_free_places(struct log *l)
{
	free(l->block_places.items);
	free(l->trap_places.items);
}

size_t log_place_of(const struct log_places *p, int64_t id)
{
	const struct log_place key = { .id = id };
	const struct log_place *found = NULL;

	if (p->n > 0)
		found = bsearch(&key, p->items, p->n, sizeof *p->items, by_id);
	return found ? found->at : SIZE_MAX;
}
