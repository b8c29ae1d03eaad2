#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct pest_row {
	char code[CODE_BYTES], name[NAME_BYTES], latin[NAME_BYTES];
	char source[SOURCE_BYTES];
};

struct pest_state {
	struct pests there;
	struct names names; /* index in there */
};

static const struct column columns[] = {
	{ .name = "code",
		.at = offsetof(struct pest_row, code),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("The pest's abbreviation, such as CM.") },
	{ .name = "name",
		.at = offsetof(struct pest_row, name),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Its common name.") },
	{ .name = "latin",
		.at = offsetof(struct pest_row, latin),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Its scientific name.") },
	{ .name = "source",
		.at = offsetof(struct pest_row, source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.passing = true,
		.help = N_("May stand in a file; it is not kept.") },
};

static bool pests_begin(struct taking *t, struct err *e)
{
	struct pest_state *s = t->state = mem_new(1, sizeof *s);

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

static bool pests_take(struct taking *t, const void *row, struct err *e)
{
	const struct pest_row *r = row;
	struct pest_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->code);
	struct pest p = i < 0 ? (struct pest){ 0 } : s->there.items[i];
	struct pest was = p;

	memcpy(p.code, r->code, sizeof p.code);
	if (taking_has(t, "name"))
		memcpy(p.name, r->name, sizeof p.name);
	if (taking_has(t, "latin"))
		memcpy(p.latin, r->latin, sizeof p.latin);
	if (i >= 0 && !strcmp(p.name, was.name) && !strcmp(p.latin, was.latin)) {
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
		struct pest_row r = { 0 };
		text_copy(r.code, sizeof r.code, all.items[i].code);
		text_copy(r.name, sizeof r.name, all.items[i].name);
		text_copy(r.latin, sizeof r.latin, all.items[i].latin);
		ok = giving_row(g, &r);
	}
	free(all.items);
	return ok;
}

const struct kind kind_pests = {
	.name = "pests",
	.help = N_("pests and their abbreviations"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct pest_row),
	.begin = pests_begin,
	.take = pests_take,
	.end = pests_end,
	.give = pests_give,
	.starts = true,
};
