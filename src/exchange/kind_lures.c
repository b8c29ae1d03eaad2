#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct lure_row {
	char lure[NAME_BYTES], pest[CODE_BYTES];
	int32_t life_days, hot_days;
	int hot_from, hot_to;
	char source[SOURCE_BYTES];
};

struct lure_state_in {
	struct lure_kinds there;
	struct names names; /* index in there */
	struct names pests;
};

#define AT(field) .at = offsetof(struct lure_row, field)

static const struct column columns[] = {
	{ .name = "lure",
		AT(lure),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the lure kind.") },
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.help = N_(
			"Code of the pest that it draws; empty: of no single pest.") },
	{ .name = "life_days",
		AT(life_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.needed = true,
		.help = N_("Days that it lasts.") },
	{ .name = "hot_days",
		AT(hot_days),
		.type = &value_int,
		.lo = 1,
		.hi = NIGHTS_MAX,
		.help = N_("Days that it lasts in the hot season; empty: the same.") },
	{ .name = "hot_from",
		AT(hot_from),
		.type = &value_md,
		.help = N_("First day of the hot season, as month-day.") },
	{ .name = "hot_to",
		AT(hot_to),
		.type = &value_md,
		.help = N_("Last day of the hot season.") },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.help = N_("Where these numbers come from.") },
};

static bool lures_begin(struct taking *t, struct err *e)
{
	struct lure_state_in *s = t->state = mem_new(1, sizeof *s);

	if (!book_lures(t->book, &s->there, e) ||
		!names_of_pests(t->book, &s->pests, e))
		return false;
	for (size_t i = 0; i < s->there.n; i++)
		names_add(&s->names, 0, s->there.items[i].name, (int64_t)i);
	return true;
}

static void lures_end(struct taking *t)
{
	struct lure_state_in *s = t->state;

	free(s->there.items);
	names_free(&s->names);
	names_free(&s->pests);
	free(s);
}

/* Puts what the row says over the kind; false: it says something wrong. */
static bool lure_over(struct taking *t, const struct lure_row *r, struct lure_kind *k)
{
	struct lure_state_in *s = t->state;

	if (strcmp(r->lure, "kept") == 0)
		return !taking_bad(t, "lure",
			_("cannot name a lure: in a file of visits it means that the "
			  "old one stays"));
	memcpy(k->name, r->lure, sizeof k->name);
	if (taking_has(t, "pest") &&
		!taking_find(t, &s->pests, "pest", r->pest, &k->pest))
		return false;
	k->life_days = r->life_days;
	if (taking_has(t, "hot_days"))
		k->hot_days = r->hot_days;
	if (taking_has(t, "hot_from"))
		k->hot_from = r->hot_from;
	if (taking_has(t, "hot_to"))
		k->hot_to = r->hot_to;
	if (taking_has(t, "source"))
		memcpy(k->source, r->source, sizeof k->source);
	if ((k->hot_days == 0) != (k->hot_from == 0) ||
		(k->hot_days == 0) != (k->hot_to == 0))
		return !taking_bad(t, "hot_days",
			_("goes together with hot_from and hot_to: all three or none"));
	if (k->hot_days > k->life_days)
		return !taking_bad(t, "hot_days",
			_("is longer than life_days, %d; heat shortens a lure's life"),
			(int)k->life_days);
	return true;
}

static bool lure_same(const struct lure_kind *a, const struct lure_kind *b)
{
	return a->pest == b->pest && a->life_days == b->life_days &&
	       a->hot_days == b->hot_days && a->hot_from == b->hot_from &&
	       a->hot_to == b->hot_to && strcmp(a->source, b->source) == 0;
}

static void lures_look(struct taking *t, const void *row)
{
	const struct lure_row *r = row;
	const struct lure_state_in *s = t->state;
	int64_t id;

	taking_find(t, &s->pests, "pest", r->pest, &id);
}

static bool lures_take(struct taking *t, const void *row, struct err *e)
{
	const struct lure_row *r = row;
	struct lure_state_in *s = t->state;
	int64_t i = names_find(&s->names, 0, r->lure);
	struct lure_kind k = i < 0 ? (struct lure_kind){ 0 } : s->there.items[i];

	if (!lure_over(t, r, &k))
		return true;
	if (i >= 0 && lure_same(&k, &s->there.items[i])) {
		taking_count(t, TOOK_SAME);
		return true;
	}
	if (!book_put_lure(t->book, &k, e))
		return false;
	taking_count(t, i < 0 ? TOOK_NEW : TOOK_CHANGED);
	if (i >= 0) {
		s->there.items[i] = k;
		return true;
	}
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	names_add(&s->names, 0, k.name, (int64_t)s->there.n);
	s->there.items[s->there.n++] = k;
	return true;
}

static bool lures_give(struct giving *g, struct err *e)
{
	struct known known = { 0 };
	bool ok = known_read(&known, g->book, e);

	for (size_t i = 0; ok && i < known.lures.n; i++) {
		const struct lure_kind *k = &known.lures.items[i];
		struct lure_row r = {
			.life_days = k->life_days,
			.hot_days = k->hot_days,
			.hot_from = k->hot_from,
			.hot_to = k->hot_to,
		};
		text_copy(r.lure, sizeof r.lure, k->name);
		text_copy(r.pest, sizeof r.pest, known_pest(&known, k->pest));
		text_copy(r.source, sizeof r.source, k->source);
		ok = giving_row(g, &r);
	}
	known_free(&known);
	return ok;
}

const struct kind kind_lures = {
	.name = "lures",
	.help = N_("lure kinds and how long they last"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct lure_row),
	.begin = lures_begin,
	.take = lures_take,
	.look = lures_look,
	.end = lures_end,
	.give = lures_give,
	.starts = true,
};
