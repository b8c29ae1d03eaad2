/* entry_ops_checks.c - fruit checks and dispensers on the Book page, and what the
 * families of acts share. */
#include "answers/answered.h"
#include "answers/checks.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "entry_ops_acts.h"
#include "season/fruit.h"

#include <stdio.h>
#include <stdlib.h>

bool act_wanted(const struct shelves *s, int64_t block, const struct entry_ask *ask)
{
	const struct block *b = known_block(&s->known, block);

	return (!ask->block || ask->block == block) &&
	       (!ask->farm || (b && b->farm == ask->farm));
}

void act_guess(
	const struct shelves *s, const struct entry_ask *ask, struct act_place place)
{
	const struct block *b = known_block(&s->known, ask->block);
	const struct farm *f = shelves_farm(s, ask);

	text_copy(place.farm, NAME_BYTES,
		b   ? known_farm(&s->known, b->farm)
		: f ? f->name
		    : "");
	text_copy(place.block, place.size, b ? b->name : "");
}

void act_say(const char *before, const char *block, int32_t day, char *out, size_t size)
{
	char text[DAY_TEXT_SIZE] = "";

	if (day != DAY_NONE)
		day_short(day, text, sizeof text);
	snprintf(out, size, "%s %s, %s", before, block, text);
}

/* Latest first; of one day the one that was put in last. */
static int by_day(int32_t a, int32_t b, int64_t id_a, int64_t id_b)
{
	if (a != b)
		return a > b ? -1 : 1;
	return (id_a < id_b) - (id_a > id_b);
}

static int by_treatment(const void *a, const void *b)
{
	const struct treatment *x = a, *y = b;

	return by_day(x->day, y->day, x->id, y->id);
}

static int by_pick(const void *a, const void *b)
{
	const struct pick *x = a, *y = b;

	return by_day(x->day, y->day, x->id, y->id);
}

static int by_check(const void *a, const void *b)
{
	const struct fruit_check *x = a, *y = b;

	return by_day(x->day, y->day, x->id, y->id);
}

static int by_dispensers(const void *a, const void *b)
{
	const struct disruption *x = a, *y = b;

	return by_day(x->up, y->up, x->id, y->id);
}

static void sort(
	void *items, size_t n, size_t bytes, int (*order)(const void *, const void *))
{
	if (n > 1)
		qsort(items, n, bytes, order);
}

bool shelves_read_acts(
	struct shelves *s, struct book *b, enum entry_kind kind, struct err *e)
{
	int32_t from = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	int32_t to = day_from_ymd(DAY_YEAR_MAX, 12, 31);
	bool treatments = kind == ENTRY_TREATMENTS || kind == ENTRY_PICKS;
	bool ok = (kind != ENTRY_TREATMENTS ||
			  book_treatments(b, 0, from, to, &s->treatments, e)) &&
		  (kind != ENTRY_PICKS ||
			  treatments_that_bar(b, 0, from, to, &s->treatments, e)) &&
		  (!treatments || book_picks(b, 0, from, to, &s->picks, e)) &&
		  (kind != ENTRY_CHECKS ||
			  book_fruit_checks(b, 0, from, to, &s->checks, e)) &&
		  (kind != ENTRY_DISPENSERS ||
			  book_disruptions(b, 0, from, to, &s->dispensers, e));

	sort(s->treatments.items, s->treatments.n, sizeof *s->treatments.items,
		by_treatment);
	if (kind == ENTRY_PICKS)
		sort(s->picks.items, s->picks.n, sizeof *s->picks.items, by_pick);
	sort(s->checks.items, s->checks.n, sizeof *s->checks.items, by_check);
	sort(s->dispensers.items, s->dispensers.n, sizeof *s->dispensers.items,
		by_dispensers);
	return ok;
}

static size_t checks_count(const struct shelves *s)
{
	return s->checks.n;
}

static int64_t checks_id(const struct shelves *s, size_t i)
{
	return s->checks.items[i].id;
}

static bool checks_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	const struct fruit_check *c = &s->checks.items[i];

	return act_wanted(s, c->block, ask) &&
	       (!ask->pest || !c->pest || c->pest == ask->pest);
}

static void checks_row(const struct shelves *s, size_t i, void *row)
{
	*(struct fruit_check_row *)row =
		fruit_check_row_of(&s->known, &s->checks.items[i]);
}

static void checks_name(const void *row, char *out, size_t size)
{
	const struct fruit_check_row *r = row;

	act_say(_("fruit check of"), r->block, r->day, out, size);
}

static void checks_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct fruit_check *c = &s->checks.items[i];
	struct buf text = { 0 };

	if (fruit_hurt(c) > 0) /* stung ones are among them, which no column tells */
		buf_addf(&text, _("hurt %d: "), (int)fruit_hurt(c));
	check_say_share(c, &text);
	text_copy(out, SAY_LINE, text.text ? text.text : "");
	buf_free(&text);
}

static void checks_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct fruit_check_row *r = row;

	act_guess(s, ask, (struct act_place){ r->farm, r->block, sizeof r->block });
	text_copy(r->pest, sizeof r->pest, known_pest(&s->known, ask->pest));
	r->day = s->log ? s->log->today : DAY_NONE;
}

static bool checks_put(struct putting *p, const void *row)
{
	const struct shelves *s = p->shelves;
	struct fruit_check one = p->id ? s->checks.items[p->at] : fruit_check_blank;

	if (!fruit_check_over(&p->hear, &s->known, row, &one) ||
		!book_put_fruit_check(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

const struct family_ops checks_ops = { "fruit_check", sizeof(struct fruit_check_row),
	checks_count, checks_id, checks_wanted, NULL, checks_row, checks_name,
	checks_note, checks_guess, checks_put, NULL };

static size_t dispensers_count(const struct shelves *s)
{
	return s->dispensers.n;
}

static int64_t dispensers_id(const struct shelves *s, size_t i)
{
	return s->dispensers.items[i].id;
}

static bool dispensers_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	const struct disruption *d = &s->dispensers.items[i];

	return act_wanted(s, d->block, ask) &&
	       (!ask->pest || !d->pest || d->pest == ask->pest);
}

static void dispensers_row(const struct shelves *s, size_t i, void *row)
{
	*(struct dispenser_row *)row =
		dispenser_row_of(&s->known, &s->dispensers.items[i]);
}

static void dispensers_name(const void *row, char *out, size_t size)
{
	const struct dispenser_row *r = row;

	act_say(_("dispensers of"), r->block, r->up, out, size);
}

static void dispensers_note(
	const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct disruption *d = &s->dispensers.items[i];
	bool is_up = s->log && d->up <= s->log->today &&
		     (d->down == DAY_NONE || d->down >= s->log->today);

	text_copy(out, SAY_LINE, is_up ? _("up: no catch does not mean no moths") : "");
}

static void dispensers_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct dispenser_row *r = row;

	act_guess(s, ask, (struct act_place){ r->farm, r->block, sizeof r->block });
	text_copy(r->pest, sizeof r->pest, known_pest(&s->known, ask->pest));
	r->up = s->log ? s->log->today : DAY_NONE;
}

static bool dispensers_put(struct putting *p, const void *row)
{
	const struct shelves *s = p->shelves;
	struct disruption one = p->id ? s->dispensers.items[p->at] : disruption_blank;

	if (!dispenser_over(&p->hear, &s->known, row, &one) ||
		!book_put_disruption(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

const struct family_ops dispensers_ops = { "dispensers", sizeof(struct dispenser_row),
	dispensers_count, dispensers_id, dispensers_wanted, NULL, dispensers_row,
	dispensers_name, dispensers_note, dispensers_guess, dispensers_put, NULL };
