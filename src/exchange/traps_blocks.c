#include "traps_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <string.h>

static bool find_farm(
	struct taking *t, const struct trap_row *r, int64_t *farm, struct err *e)
{
	struct trap_state *s = t->state;
	struct farm made = { .season_start = 101 };

	*farm = names_find(&s->farms, 0, r->farm);
	if (*farm >= 0)
		return true;
	memcpy(made.name, r->farm, sizeof made.name);
	if (!book_put_farm(t->book, &made, e))
		return false;
	*farm = made.id;
	names_add(&s->farms, 0, made.name, made.id);
	s->new_farms++;
	return true;
}

static bool make_block(
	struct taking *t, const struct trap_row *r, int64_t farm, struct err *e)
{
	struct trap_state *s = t->state;
	struct block b = {
		.farm = farm,
		.condition = (enum condition)r->condition,
		.area_x100 = r->area_x100,
	};

	memcpy(b.name, r->block, sizeof b.name);
	memcpy(b.crop, r->crop, sizeof b.crop);
	memcpy(b.variety, r->variety, sizeof b.variety);
	if (!book_put_block(t->book, &b, e))
		return false;
	s->block =
		mem_grow(s->block, &s->cap_blocks, s->n_blocks + 1, sizeof *s->block);
	s->block[s->n_blocks] = (struct block_in){ .block = b };
	names_add(&s->blocks, farm, b.name, (int64_t)s->n_blocks++);
	s->new_blocks++;
	return true;
}

/* Hears one fact of a block: true if this row is the first to say it. A row that says
 * something else than an earlier one is a problem. */
static bool hear(
	struct taking *t, const char *column, bool given, bool same, int64_t *line)
{
	if (!given)
		return false;
	if (*line == 0) {
		*line = t->csv.line;
		return true;
	}
	if (!same)
		taking_bad(t, column,
			_("differs from line %lld, which is of the same block; a block "
			  "has one %s"),
			(long long)*line, column);
	return false;
}

static void hear_row(struct taking *t, const struct trap_row *r, struct block_in *in)
{
	struct block *said = &in->said;

	in->in_file = true;
	if (hear(t, "condition", r->condition != CONDITION_NONE,
		    r->condition == (int)said->condition, &in->line.condition))
		said->condition = (enum condition)r->condition;
	if (hear(t, "crop", *r->crop, !strcmp(r->crop, said->crop), &in->line.crop))
		memcpy(said->crop, r->crop, sizeof said->crop);
	if (hear(t, "variety", *r->variety, !strcmp(r->variety, said->variety),
		    &in->line.variety))
		memcpy(said->variety, r->variety, sizeof said->variety);
	if (hear(t, "area_ha", r->area_x100 >= 0, r->area_x100 == said->area_x100,
		    &in->line.area))
		said->area_x100 = r->area_x100;
}

struct block_in *traps_block(struct taking *t, const struct trap_row *r, struct err *e)
{
	struct trap_state *s = t->state;
	int64_t farm, problems = t->out->n_problems;

	if (!find_farm(t, r, &farm, e))
		return NULL;
	int64_t i = names_find(&s->blocks, farm, r->block);
	if (i < 0) {
		if (!make_block(t, r, farm, e))
			return NULL;
		i = (int64_t)s->n_blocks - 1;
	}
	hear_row(t, r, &s->block[i]);
	return t->out->n_problems == problems ? &s->block[i] : NULL;
}

/* What no row says stays as it was. */
static struct block block_after(const struct block_in *in)
{
	struct block b = in->block;

	if (in->line.condition)
		b.condition = in->said.condition;
	if (in->line.crop)
		memcpy(b.crop, in->said.crop, sizeof b.crop);
	if (in->line.variety)
		memcpy(b.variety, in->said.variety, sizeof b.variety);
	if (in->line.area)
		b.area_x100 = in->said.area_x100;
	return b;
}

bool traps_blocks_finish(struct taking *t, struct err *e)
{
	struct trap_state *s = t->state;

	for (size_t i = 0; i < s->n_blocks; i++) {
		const struct block *was = &s->block[i].block;
		if (!s->block[i].in_file)
			continue;
		struct block b = block_after(&s->block[i]);
		if (b.condition == was->condition && b.area_x100 == was->area_x100 &&
			!strcmp(b.crop, was->crop) && !strcmp(b.variety, was->variety))
			continue;
		if (!book_put_block(t->book, &b, e))
			return false;
	}
	return true;
}
