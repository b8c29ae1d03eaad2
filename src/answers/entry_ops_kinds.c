/* entry_ops_kinds.c - pests, lures and cards on the Book page. */
#include "entry_family.h"

#include "base/text.h"
#include "base/words.h"
#include "book/places.h"

#include <stdio.h>

static size_t pests_count(const struct shelves *s)
{
	return s->known.pests.n;
}

static int64_t pests_id(const struct shelves *s, size_t i)
{
	return s->known.pests.items[i].id;
}

static bool pests_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	return !ask->pest || s->known.pests.items[i].id == ask->pest;
}

static bool pests_retired(const struct shelves *s, size_t i)
{
	return s->known.pests.items[i].retired;
}

static void pests_row(const struct shelves *s, size_t i, void *row)
{
	*(struct pest_row *)row = pest_row_of(&s->known.pests.items[i]);
}

static void pests_name(const void *row, char *out, size_t size)
{
	snprintf(out, size, _("pest %s"), ((const struct pest_row *)row)->code);
}

static bool pests_put(struct putting *p, const void *row)
{
	const struct pests *all = &p->shelves->known.pests;
	struct pest one = p->id ? all->items[p->at] : (struct pest){ 0 };

	if (!pest_over(&p->hear, row, &one) || !book_put_pest(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

static bool pests_retire(
	struct book *b, const struct shelves *s, size_t i, bool retired, struct err *e)
{
	struct pest one = s->known.pests.items[i];

	one.retired = retired;
	return book_put_pest(b, &one, e);
}

const struct family_ops pests_ops = { "pest", sizeof(struct pest_row), pests_count,
	pests_id, pests_wanted, pests_retired, pests_row, pests_name, NULL, NULL,
	pests_put, pests_retire };

/* A shelf that is counted again is counted today, unless the day was typed as well. */
static struct stock_row counted(const struct putting *p, const struct stock_row *r)
{
	struct stock_row counted = *r;

	if (putting_touched(p, "stock") && !putting_touched(p, "stock_day"))
		counted.day = DAY_NONE;
	return counted;
}

static size_t lures_count(const struct shelves *s)
{
	return s->known.lures.n;
}

static int64_t lures_id(const struct shelves *s, size_t i)
{
	return s->known.lures.items[i].id;
}

/* Those of no single pest are of each. */
static bool lures_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	int64_t pest = s->known.lures.items[i].pest;

	return !ask->pest || !pest || pest == ask->pest;
}

static bool lures_retired(const struct shelves *s, size_t i)
{
	return s->known.lures.items[i].retired;
}

static void lures_row(const struct shelves *s, size_t i, void *row)
{
	*(struct lure_row *)row = lure_row_of(&s->known, &s->known.lures.items[i]);
}

static void lures_name(const void *row, char *out, size_t size)
{
	snprintf(out, size, _("lure %s"), ((const struct lure_row *)row)->lure);
}

static void lures_guess(const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct lure_row *r = row;

	text_copy(r->pest, sizeof r->pest, known_pest(&s->known, ask->pest));
}

static bool lures_put(struct putting *p, const void *row)
{
	const struct known *k = &p->shelves->known;
	struct lure_row r = *(const struct lure_row *)row;
	struct lure_kind one = p->id ? k->lures.items[p->at] : (struct lure_kind){ 0 };

	r.stock = counted(p, &r.stock);
	if (!lure_over(&p->hear, k, &r, &one) || !book_put_lure(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

static bool lures_retire(
	struct book *b, const struct shelves *s, size_t i, bool retired, struct err *e)
{
	struct lure_kind one = s->known.lures.items[i];

	one.retired = retired;
	return book_put_lure(b, &one, e);
}

const struct family_ops lures_ops = { "lure", sizeof(struct lure_row), lures_count,
	lures_id, lures_wanted, lures_retired, lures_row, lures_name, NULL, lures_guess,
	lures_put, lures_retire };

static size_t cards_count(const struct shelves *s)
{
	return s->known.cards.n;
}

static int64_t cards_id(const struct shelves *s, size_t i)
{
	return s->known.cards.items[i].id;
}

static bool cards_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	(void)s;
	(void)i;
	(void)ask;
	return true;
}

static bool cards_retired(const struct shelves *s, size_t i)
{
	return s->known.cards.items[i].retired;
}

static void cards_row(const struct shelves *s, size_t i, void *row)
{
	*(struct card_row *)row = card_row_of(&s->known.cards.items[i]);
}

static void cards_name(const void *row, char *out, size_t size)
{
	snprintf(out, size, _("card %s"), ((const struct card_row *)row)->card);
}

static bool cards_put(struct putting *p, const void *row)
{
	const struct card_kinds *all = &p->shelves->known.cards;
	struct card_row r = *(const struct card_row *)row;
	struct card_kind one = p->id ? all->items[p->at] : (struct card_kind){ 0 };

	r.stock = counted(p, &r.stock);
	if (!card_over(&p->hear, &r, &one) || !book_put_card(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

static bool cards_retire(
	struct book *b, const struct shelves *s, size_t i, bool retired, struct err *e)
{
	struct card_kind one = s->known.cards.items[i];

	one.retired = retired;
	return book_put_card(b, &one, e);
}

const struct family_ops cards_ops = { "card", sizeof(struct card_row), cards_count,
	cards_id, cards_wanted, cards_retired, cards_row, cards_name, NULL, NULL,
	cards_put, cards_retire };
