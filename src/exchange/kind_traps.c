#include "traps_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

static bool read_names(struct taking *t, struct trap_state *s, struct err *e)
{
	if (!known_read(&s->known, t->book, e))
		return false;
	const struct blocks *blocks = &s->known.blocks;
	const struct traps *traps = &s->known.traps;
	for (size_t i = 0; i < s->known.farms.n; i++)
		names_add(&s->farms, 0, s->known.farms.items[i].name,
			s->known.farms.items[i].id);
	s->block = mem_grow(s->block, &s->cap_blocks, blocks->n, sizeof *s->block);
	for (size_t i = 0; i < blocks->n; i++) {
		const struct block *b = &blocks->items[i];
		names_add(&s->blocks, b->farm, b->name, (int64_t)s->n_blocks);
		s->block[s->n_blocks++].block = *b;
	}
	s->trap = mem_grow(s->trap, &s->cap_traps, traps->n, sizeof *s->trap);
	for (size_t i = 0; i < traps->n; i++) {
		const struct trap *p = &traps->items[i];
		names_add(&s->traps, p->farm, p->label, (int64_t)s->n_traps);
		s->trap[s->n_traps++] = (struct trap_in){ *p, 0, DAY_NONE, DAY_NONE };
	}
	return true;
}

static bool traps_begin(struct taking *t, struct err *e)
{
	t->state = mem_new(1, sizeof(struct trap_state));
	return read_names(t, t->state, e);
}

static void traps_end(struct taking *t)
{
	struct trap_state *s = t->state;

	names_free(&s->farms);
	names_free(&s->blocks);
	names_free(&s->traps);
	known_free(&s->known);
	free(s->block);
	free(s->trap);
	free(s);
}

/* The same position as far as a file can tell. */
static bool same_degree(double a, double b)
{
	char one[VALUE_BYTES], two[VALUE_BYTES];
	const struct column *c = NULL;

	return strcmp(value_degree.write(c, &a, one), value_degree.write(c, &b, two)) ==
	       0;
}

static bool same_trap(const struct trap *a, const struct trap *b)
{
	bool same_spot = a->has_position == b->has_position &&
			 (!a->has_position || (same_degree(a->lat, b->lat) &&
						      same_degree(a->lon, b->lon)));

	return same_spot && a->block == b->block && a->pest == b->pest &&
	       a->lure == b->lure && a->card == b->card && a->place == b->place &&
	       a->order == b->order;
}

/* The trap's place in the state: found, or added when new. */
static struct trap_in *find_trap(struct trap_state *s, int64_t farm, const char *label)
{
	int64_t i = names_find(&s->traps, farm, label);

	if (i >= 0)
		return &s->trap[i];
	s->trap = mem_grow(s->trap, &s->cap_traps, s->n_traps + 1, sizeof *s->trap);
	s->trap[s->n_traps] = (struct trap_in){ .hung = DAY_NONE, .pulled = DAY_NONE };
	names_add(&s->traps, farm, label, (int64_t)s->n_traps);
	return &s->trap[s->n_traps++];
}

static bool put_trap(struct taking *t, const struct trap_row *r,
	const struct trap *made, struct err *e)
{
	struct trap_state *s = t->state;
	struct trap_in *in = find_trap(s, made->farm, r->trap);
	bool is_new = in->trap.id == 0;

	if (in->line)
		return taking_bad(t, "trap",
			_("is in the file twice, in line %lld too; a farm has it once"),
			(long long)in->line);
	in->line = t->csv.line;
	struct trap p = trap_after(&t->hear, r, &in->trap, made);
	bool same = !is_new && same_trap(&p, &in->trap);
	if (!same && !book_put_trap(t->book, &p, e))
		return false;
	if (!same)
		in->trap = p;
	if (!traps_diary(t, r, in, e))
		return false;
	bool added = in->hung != DAY_NONE || in->pulled != DAY_NONE;
	if (!in->trap.lure && s->no_lure++ == 0)
		s->no_lure_line = t->csv.line;
	taking_count(t, is_new ? TOOK_NEW : same && !added ? TOOK_SAME : TOOK_CHANGED);
	return true;
}

static void traps_look(struct taking *t, const void *row)
{
	const struct trap_row *r = row;
	struct trap_state *s = t->state;
	int64_t pest, id;

	row_find_pest(&t->hear, &s->known, r->pest, &pest);
	row_find_lure(&t->hear, &s->known.lures, pest, r->lure, &id);
	row_find_card(&t->hear, &s->known, r->card, &id);
}

static bool traps_take(struct taking *t, const void *row, struct err *e)
{
	const struct trap_row *r = row;
	const struct trap_state *s = t->state;
	struct trap made = { 0 };
	bool good = trap_good(&t->hear, &s->known, r, &made);
	const struct block_in *in = traps_block(t, r, e);

	if (!in && e->kind != ERR_NONE)
		return false;
	if (!in || !good)
		return true;
	made.farm = in->block.farm;
	made.block = in->block.id;
	return put_trap(t, r, &made, e);
}

static void tell(struct taking *t)
{
	struct trap_state *s = t->state;
	struct buf note = { 0 };

	if (s->new_farms || s->new_blocks) {
		buf_addf(&note, _("new farms: %d; new blocks: %d"), s->new_farms,
			s->new_blocks);
		sentences_add(&t->out->notes, note.text);
		buf_clear(&note);
	}
	if (s->no_lure == 1)
		buf_addf(&note,
			_("1 trap without a lure kind (line %lld): when its "
			  "lure is due is not known"),
			(long long)s->no_lure_line);
	else if (s->no_lure)
		buf_addf(&note,
			_("%d traps without a lure kind (the first in line %lld): when "
			  "their lures are due is not known"),
			s->no_lure, (long long)s->no_lure_line);
	if (s->no_lure)
		sentences_add(&t->out->notes, note.text);
	buf_free(&note);
}

static bool traps_finish(struct taking *t, struct err *e)
{
	if (!traps_blocks_finish(t, e) || !traps_diary_finish(t, e))
		return false;
	traps_far(t);
	tell(t);
	return true;
}

const struct kind kind_traps = {
	.name = "traps",
	.help = N_("traps with their farms and blocks"),
	.columns = trap_columns,
	.n_columns = TRAP_COLUMNS,
	.row_bytes = sizeof(struct trap_row),
	.begin = traps_begin,
	.take = traps_take,
	.look = traps_look,
	.finish = traps_finish,
	.end = traps_end,
	.give = traps_give,
};
