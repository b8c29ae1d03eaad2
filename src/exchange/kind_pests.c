#include "base/mem.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct pest_state {
	struct pests there;
	struct names names; /* index in there */
};

static bool pests_begin(struct taking *t, struct err *e)
{
	struct pest_state *s = t->state = mem_new(1, sizeof *s);
	const char *lacks = heat_lacks(&t->hear);

	if (lacks)
		return err_set(e, ERR_INPUT,
			_("%s, line %lld: the column %s is missing; unit, base, method "
			  "and cutoff go together"),
			t->from->name, (long long)t->csv.line, lacks);
	if (!book_pests(t->book, &s->there, e))
		return false;
	for (size_t i = 0; i < s->there.n; i++)
		names_add(&s->names, 0, s->there.items[i].code, (int64_t)i);
	return true;
}

static void pests_end(struct taking *t)
{
	struct pest_state *s = t->state;

	free(s->there.items);
	names_free(&s->names);
	free(s);
}

static bool pest_same(const struct pest *a, const struct pest *b)
{
	return strcmp(a->name, b->name) == 0 && strcmp(a->latin, b->latin) == 0 &&
	       strcmp(a->biofix_rule, b->biofix_rule) == 0 &&
	       a->retired == b->retired && heat_same(&a->heat, &b->heat);
}

static bool pests_take(struct taking *t, const void *row, struct err *e)
{
	const struct pest_row *r = row;
	struct pest_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->code);
	struct pest p = i < 0 ? (struct pest){ 0 } : s->there.items[i];

	if (!pest_over(&t->hear, r, &p))
		return true;
	if (i >= 0 && pest_same(&p, &s->there.items[i])) {
		taking_count(t, TOOK_SAME);
		return true;
	}
	if (!book_put_pest(t->book, &p, e))
		return false;
	taking_count(t, i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i >= 0) {
		s->there.items[i] = p;
		return true;
	}
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	names_add(&s->names, 0, p.code, (int64_t)s->there.n);
	s->there.items[s->there.n++] = p;
	return true;
}

static bool pests_give(struct giving *g, struct err *e)
{
	struct pests all = { 0 };
	bool ok = book_pests(g->book, &all, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		struct pest_row r = pest_row_of(&all.items[i]);
		ok = giving_row(g, &r);
	}
	free(all.items);
	return ok;
}

const struct kind kind_pests = {
	.name = "pests",
	.help = N_("pests and their abbreviations"),
	.columns = pest_columns,
	.n_columns = PEST_COLUMNS,
	.row_bytes = sizeof(struct pest_row),
	.begin = pests_begin,
	.take = pests_take,
	.end = pests_end,
	.give = pests_give,
	.starts = true,
};
