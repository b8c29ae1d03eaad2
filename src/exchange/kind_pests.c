#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"
#include "pest_heat.h"

#include <stdlib.h>
#include <string.h>

/* Its degree-days begin at `unit`; see pest_heat.h. */
struct pest_row {
	char code[CODE_BYTES], name[NAME_BYTES], latin[NAME_BYTES];
	struct heat_row heat;
	char biofix_rule[BIOFIX_RULE_BYTES];
	char source[SOURCE_BYTES];
};

struct pest_state {
	struct pests there;
	struct names names; /* index in there */
};

#define AT(field) .at = offsetof(struct pest_row, field)

static const struct column columns[] = {
	{ .name = "code",
		AT(code),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("The pest's abbreviation, such as CM.") },
	{ .name = "name",
		AT(name),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Its common name.") },
	{ .name = "latin",
		AT(latin),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Its scientific name.") },
	{ .name = "unit",
		AT(heat.unit),
		.type = &value_word,
		.lo = 1,
		.hi = 2,
		.word = column_unit,
		.help = N_("Degrees of base, cap and sums; empty: no degree-days.") },
	{ .name = "base",
		AT(heat.base),
		.type = &value_number,
		.lo = HEAT_LEAST,
		.hi = HEAT_MOST,
		.help = N_("Temperature that degree-days are counted from.") },
	{ .name = "cap",
		AT(heat.cap),
		.type = &value_number,
		.lo = HEAT_LEAST,
		.hi = HEAT_MOST,
		.help = N_("Temperature that the cutoff goes by; empty: none.") },
	{ .name = "method",
		AT(heat.method),
		.type = &value_word,
		.hi = DD_METHOD_COUNT - 1,
		.none = -1,
		.word = column_method,
		.help = N_("How a day's degree-days are counted.") },
	{ .name = "cutoff",
		AT(heat.cutoff),
		.type = &value_word,
		.hi = DD_CUTOFF_COUNT - 1,
		.none = -1,
		.word = column_cutoff,
		.help = N_("What heat above the cap does.") },
	{ .name = "biofix_rule",
		AT(biofix_rule),
		.type = &value_text,
		.hi = BIOFIX_RULE_BYTES,
		.help = N_("Rule that its biofix is suggested by; empty: our own.") },
	{ .name = "dd_source",
		AT(heat.source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.help = N_("Who gives its base, cap, method and cutoff.") },
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

	if (!heat_columns_good(t, e) || !book_pests(t->book, &s->there, e))
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

/* Puts what the row says over the pest; false: it says something wrong. */
static bool pest_over(struct taking *t, const struct pest_row *r, struct pest *p)
{
	memcpy(p->code, r->code, sizeof p->code);
	if (taking_has(t, "name"))
		memcpy(p->name, r->name, sizeof p->name);
	if (taking_has(t, "latin"))
		memcpy(p->latin, r->latin, sizeof p->latin);
	if (taking_has(t, "biofix_rule"))
		memcpy(p->biofix_rule, r->biofix_rule, sizeof p->biofix_rule);
	return heat_over(t, &r->heat, &p->heat) && biofix_rule_good(t, p->biofix_rule);
}

static bool pest_same(const struct pest *a, const struct pest *b)
{
	return strcmp(a->name, b->name) == 0 && strcmp(a->latin, b->latin) == 0 &&
	       strcmp(a->biofix_rule, b->biofix_rule) == 0 &&
	       heat_same(&a->heat, &b->heat);
}

static bool pests_take(struct taking *t, const void *row, struct err *e)
{
	const struct pest_row *r = row;
	struct pest_state *s = t->state;
	int64_t i = names_find(&s->names, 0, r->code);
	struct pest p = i < 0 ? (struct pest){ 0 } : s->there.items[i];

	if (!pest_over(t, r, &p))
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
		const struct pest *p = &all.items[i];
		struct pest_row r = { .heat = heat_row_of(&p->heat) };
		text_copy(r.code, sizeof r.code, p->code);
		text_copy(r.name, sizeof r.name, p->name);
		text_copy(r.latin, sizeof r.latin, p->latin);
		text_copy(r.biofix_rule, sizeof r.biofix_rule, p->biofix_rule);
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
