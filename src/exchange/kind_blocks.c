/* The blocks of farms, those without traps too. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct block_state {
	struct names farms; /* id */
	struct blocks there;
	bool *told; /* by index in there: a row of this file is about it */
	size_t told_cap;
	struct names names; /* in a farm: index in there */
	int new_farms;
};

static size_t add_block(struct block_state *s, const struct block *b)
{
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->told = mem_grow(s->told, &s->told_cap, s->there.n + 1, sizeof *s->told);
	s->there.items[s->there.n] = *b;
	s->told[s->there.n] = false;
	names_add(&s->names, b->farm, b->name, (int64_t)s->there.n);
	return s->there.n++;
}

static bool blocks_begin(struct taking *t, struct err *e)
{
	struct block_state *s = t->state = mem_new(1, sizeof *s);
	struct blocks all = { 0 };
	bool ok = names_of_farms(t->book, &s->farms, e) &&
		  book_blocks(t->book, 0, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		add_block(s, &all.items[i]);
	free(all.items);
	return ok;
}

static void blocks_end(struct taking *t)
{
	struct block_state *s = t->state;

	free(s->there.items);
	free(s->told);
	names_free(&s->farms);
	names_free(&s->names);
	free(s);
}

/* Finds the farm or makes it: files of a whole book go into a new one in any order. */
static bool find_farm(struct taking *t, const char *name, int64_t *id, struct err *e)
{
	struct block_state *s = t->state;
	struct farm made = { .season_start = CALENDAR_YEAR };

	*id = names_find(&s->farms, 0, name);
	if (*id >= 0)
		return true;
	text_copy(made.name, sizeof made.name, name);
	if (!book_put_farm(t->book, &made, e))
		return false;
	*id = made.id;
	names_add(&s->farms, 0, made.name, made.id);
	s->new_farms++;
	return true;
}

static bool same_block(const struct block *a, const struct block *b)
{
	return strcmp(a->crop, b->crop) == 0 && strcmp(a->variety, b->variety) == 0 &&
	       a->condition == b->condition && a->area_x100 == b->area_x100 &&
	       a->retired == b->retired;
}

static bool blocks_take(struct taking *t, const void *row, struct err *e)
{
	const struct block_row *r = row;
	struct block_state *s = t->state;
	struct block b = { .area_x100 = -1 };

	if (!find_farm(t, r->farm, &b.farm, e))
		return false;
	int64_t i = names_find(&s->names, b.farm, r->block);
	if (i >= 0 && s->told[i])
		return taking_bad(t, "block", _("is in this file before"));
	if (i >= 0)
		b = s->there.items[i];
	block_over(&t->hear, r, &b);
	bool same = i >= 0 && same_block(&b, &s->there.items[i]);
	if (!same && !book_put_block(t->book, &b, e))
		return false;
	taking_count(t, same ? TOOK_SAME : i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i < 0)
		i = (int64_t)add_block(s, &b);
	s->there.items[i] = b;
	s->told[i] = true;
	return true;
}

static bool blocks_finish(struct taking *t, struct err *e)
{
	const struct block_state *s = t->state;
	struct buf note = { 0 };

	(void)e;
	if (s->new_farms == 0)
		return true;
	buf_addf(&note, _("new farms: %d"), s->new_farms);
	sentences_add(&t->out->notes, note.text);
	buf_free(&note);
	return true;
}

/* By farm, then by block. */
static bool blocks_give(struct giving *g, struct err *e)
{
	struct known k = { 0 };
	bool ok = known_read(&k, g->book, e);

	for (size_t f = 0; ok && f < k.farms.n; f++)
		for (size_t i = 0; ok && i < k.blocks.n; i++) {
			if (k.blocks.items[i].farm != k.farms.items[f].id)
				continue;
			struct block_row r = block_row_of(&k, &k.blocks.items[i]);
			ok = giving_row(g, &r);
		}
	known_free(&k);
	return ok;
}

const struct kind kind_blocks = {
	.name = "blocks",
	.help = N_("the blocks of farms and what grows in them"),
	.columns = block_columns,
	.n_columns = BLOCK_COLUMNS,
	.row_bytes = sizeof(struct block_row),
	.begin = blocks_begin,
	.take = blocks_take,
	.finish = blocks_finish,
	.end = blocks_end,
	.give = blocks_give,
};
