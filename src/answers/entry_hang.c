/* entry_hang.c - traps hung, pulled, replaced and put into another turn. */
#include "entry_hang.h"

#include "answers/entry_traps.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "book/places.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What a trap's diary has around a day. */
struct around {
	char name[SAY_LINE]; /* "trap 3 of Addermoor" */
	struct stand stand;  /* at the end of the day before */
	struct visit on;     /* on the day; trap 0: none */
	int32_t after;       /* first later visit; DAY_NONE */
};

static bool name_trap(
	struct book *b, const struct trap *t, char out[static SAY_LINE], struct err *e)
{
	struct known k = { 0 };
	bool ok = book_farms(b, &k.farms, e);

	if (ok)
		snprintf(out, SAY_LINE, _("trap %s of %s"), t->label,
			known_farm(&k, t->farm));
	known_free(&k);
	return ok;
}

static bool look_around(struct book *b, const struct trap *t, int32_t day,
	struct around *a, struct err *e)
{
	struct visits all = { 0 };
	struct diary d = { 0 };
	bool ok = name_trap(b, t, a->name, e) && book_trap_visits(b, t->id, &all, e);

	if (!ok)
		all.n = 0;
	diary_read(&d, all.items, all.n);
	a->stand = diary_stand(&d, day - 1);
	a->after = DAY_NONE;
	for (size_t i = 0; i < all.n; i++) {
		const struct visit *v = &all.items[i];
		if (v->day == day)
			a->on = *v;
		if (v->day > day && a->after == DAY_NONE)
			a->after = v->day;
	}
	diary_free(&d);
	free(all.items);
	return ok;
}

/* A day that is no later than today, and none of the diary's lies behind it. */
static bool day_good(const struct around *a, int32_t day, int32_t today, struct err *e)
{
	char iso[DAY_ISO_SIZE], other[DAY_ISO_SIZE];

	day_iso(day, iso);
	if (today != DAY_NONE && day > today) {
		day_iso(today, other);
		return err_set(e, ERR_INPUT, _("%s lies after today, %s"), iso, other);
	}
	if (a->after == DAY_NONE)
		return true;
	day_iso(a->after, other);
	return err_set(e, ERR_INPUT,
		_("%s has a visit after %s, on %s; put its diary right first"), a->name,
		iso, other);
}

/* Complains of the visit that stands on the day. */
static bool taken(const struct around *a, struct err *e)
{
	char iso[DAY_ISO_SIZE];

	day_iso(a->on.day, iso);
	return err_set(e, ERR_INPUT,
		_("%s has a visit on %s already (%s), and a trap has one a day; put "
		  "that one right in its diary"),
		a->name, iso, outcome_word(a->on.outcome));
}

static struct visit bare_visit(const struct trap *t, int32_t day, enum outcome o)
{
	return (struct visit){ .trap = t->id,
		.day = day,
		.outcome = o,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
}

bool trap_hang(
	struct book *b, const struct trap *t, int32_t day, int32_t today, struct err *e)
{
	struct visit v = bare_visit(t, day, OUTCOME_HUNG);
	struct around a = { 0 };
	char since[DAY_ISO_SIZE];

	if (!look_around(b, t, day, &a, e) || !day_good(&a, day, today, e))
		return false;
	if (a.on.trap)
		return taken(&a, e);
	if (a.stand.standing == STANDING_HANGS) {
		day_iso(a.stand.series_start, since);
		return err_set(e, ERR_INPUT,
			_("%s hangs already since %s; pull it first, or it is not "
			  "known what it caught"),
			a.name, since);
	}
	v.new_card = t->card;
	v.new_lure = t->lure;
	return book_save_visit(b, &v, NULL, e);
}

/* Only its first visit, and not past the next one. */
static bool rehang_good(const struct visits *all, const char *name, int32_t from,
	int32_t to, struct err *e)
{
	const struct visit *first = all->n ? &all->items[0] : NULL;
	char was[DAY_ISO_SIZE], next[DAY_ISO_SIZE];

	day_iso(from, was);
	if (!first || first->day != from || first->outcome != OUTCOME_HUNG)
		return err_set(e, ERR_INPUT,
			_("%s: %s is not its first visit; its diary puts that right"),
			name, was);
	if (all->n < 2 || to < all->items[1].day)
		return true;
	day_iso(all->items[1].day, next);
	return err_set(e, ERR_INPUT,
		_("%s has a visit on %s; the day on which it was hung lies before that"),
		name, next);
}

bool trap_rehang(
	struct book *b, const struct trap *t, int32_t from, int32_t to, struct err *e)
{
	struct visits all = { 0 };
	struct visit_words words;
	struct visit v;
	char name[SAY_LINE];
	bool ok = name_trap(b, t, name, e) && book_trap_visits(b, t->id, &all, e) &&
		  rehang_good(&all, name, from, to, e) &&
		  book_visit(b, t->id, from, &v, &words, e) &&
		  book_remove_visit(b, t->id, from, e);

	free(all.items);
	if (!ok)
		return false;
	v.day = to;
	return book_save_visit(b, &v, &words, e);
}

/* What was counted on the day that it is pulled is its last count. */
bool trap_pull(
	struct book *b, const struct trap *t, int32_t day, int32_t today, struct err *e)
{
	struct visit v = bare_visit(t, day, OUTCOME_PULLED);
	struct around a = { 0 };
	char iso[DAY_ISO_SIZE];

	if (!look_around(b, t, day, &a, e) || !day_good(&a, day, today, e))
		return false;
	bool counted = a.on.trap && a.on.outcome == OUTCOME_COUNTED;
	day_iso(day, iso);
	if (a.on.trap && a.on.outcome == OUTCOME_HUNG)
		return err_set(e, ERR_INPUT,
			_("%s was hung on %s and caught nothing yet; if it does not "
			  "stay there, take that visit out in its diary"),
			a.name, iso);
	if (a.on.trap && !counted && a.on.outcome != OUTCOME_SKIPPED)
		return taken(&a, e);
	if (a.stand.standing != STANDING_HANGS && !counted)
		return err_set(e, ERR_INPUT, _("%s does not hang on %s"), a.name, iso);
	if (counted) {
		v = a.on;
		v.outcome = OUTCOME_PULLED;
	}
	return book_save_visit(b, &v, NULL, e);
}

/* What is done to a trap within a group of its own. */
struct deed {
	struct shelves shelves;
	struct book *book;
	size_t at; /* of the trap */
	const struct trap *trap;
	int32_t day, today;
	int64_t pest;
};

static bool do_hang(struct deed *d, struct err *e)
{
	return trap_hang(d->book, d->trap, d->day, d->today, e);
}

static bool do_pull(struct deed *d, struct err *e)
{
	return trap_pull(d->book, d->trap, d->day, d->today, e);
}

/* "7b" after "7", "7c" after "7b": the next one that is free on the farm. */
static bool letter_on(const struct known *k, const struct trap *t,
	char out[static NAME_BYTES], struct err *e)
{
	size_t n = strlen(t->label);
	bool lettered = n > 1 && islower((unsigned char)t->label[n - 1]) &&
			isdigit((unsigned char)t->label[n - 2]);

	n -= lettered;
	if (n > NAME_BYTES - 2)
		n = NAME_BYTES - 2;
	for (char letter = 'b'; letter <= 'z'; letter++) {
		snprintf(out, NAME_BYTES, "%.*s%c", (int)n, t->label, letter);
		if (!known_find_trap(k, t->farm, out))
			return true;
	}
	return err_set(e, ERR_INPUT,
		_("trap %s was replaced too often to be numbered on; make a new trap"),
		t->label);
}

/* Another one in the same spot and turn: the plastic keeps the scent of the old one's
 * lure. */
static bool do_replace(struct deed *d, struct err *e)
{
	const struct known *k = &d->shelves.known;
	const struct trap *old = d->trap;
	struct trap t = *old;

	if (d->pest == old->pest)
		return err_set(e, ERR_INPUT,
			_("trap %s is one for %s already; give it a new lure instead"),
			old->label, known_pest(k, old->pest));
	if (!letter_on(k, old, t.label, e))
		return false;
	if (traps_stand(&d->shelves, d->at).standing == STANDING_HANGS &&
		!do_pull(d, e))
		return false;
	t.id = 0;
	t.pest = d->pest;
	t.lure = traps_usual_lure(k, old->farm, d->pest);
	return book_put_trap(d->book, &t, e) &&
	       trap_hang(d->book, &t, d->day, d->today, e);
}

static bool find_trap(struct deed *d, int64_t trap, struct err *e)
{
	d->at = family_find(ENTRY_TRAPS, &d->shelves, trap);
	if (d->at == SIZE_MAX)
		return err_set(
			e, ERR_NOT_FOUND, _("the trap is not in the book any more"));
	d->trap = &d->shelves.known.traps.items[d->at];
	return true;
}

/* All of it or nothing, as one step. */
static bool do_deed(struct deed *d, int64_t trap, const struct log *l,
	bool (*act)(struct deed *d, struct err *e), struct err *e)
{
	d->today = l->today;
	if (!book_begin(d->book, e))
		return false;
	bool ok = shelves_read(&d->shelves, d->book, ENTRY_TRAPS, l, e) &&
		  find_trap(d, trap, e) && act(d, e);
	shelves_free(&d->shelves);
	if (ok)
		return book_commit(d->book, e);
	book_rollback(d->book);
	return false;
}

bool entry_hang(
	struct book *b, int64_t trap, int32_t day, const struct log *l, struct err *e)
{
	struct deed d = { .book = b, .day = day };

	return do_deed(&d, trap, l, do_hang, e);
}

bool entry_pull(
	struct book *b, int64_t trap, int32_t day, const struct log *l, struct err *e)
{
	struct deed d = { .book = b, .day = day };

	return do_deed(&d, trap, l, do_pull, e);
}

bool entry_replace(struct book *b, int64_t trap, int64_t pest, int32_t day,
	const struct log *l, struct err *e)
{
	struct deed d = { .book = b, .day = day, .pest = pest };

	return do_deed(&d, trap, l, do_replace, e);
}

/* The next one of its farm in that direction that was not pulled; SIZE_MAX. */
static size_t neighbour(const struct shelves *s, size_t at, int by)
{
	const struct traps *all = &s->known.traps;
	int64_t farm = all->items[at].farm;

	for (size_t i = at + (size_t)by; i < all->n; i += (size_t)by) {
		if (all->items[i].farm != farm)
			break;
		if (!traps_pulled(s, i))
			return i;
	}
	return SIZE_MAX;
}

bool entry_move(
	struct book *b, int64_t trap, int by, const struct log *l, struct err *e)
{
	struct deed d = { .book = b };
	bool ok = shelves_read(&d.shelves, b, ENTRY_TRAPS, l, e) &&
		  find_trap(&d, trap, e) &&
		  traps_read_hangings(&d.shelves, b, d.trap->farm, e);

	if (ok) {
		size_t to = neighbour(&d.shelves, d.at, by);
		ok = to == SIZE_MAX ||
		     book_swap_traps(b, trap, d.shelves.known.traps.items[to].id, e);
	}
	shelves_free(&d.shelves);
	return ok;
}
