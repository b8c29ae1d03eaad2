#include "visits_parts.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

#define AT(field) .at = offsetof(struct visit_row, field)
#define NAME .type = &value_text, .hi = NAME_BYTES
#define MOTHS .type = &value_int, .hi = COUNT_MAX, .none = COUNT_NONE

static const char *word_of_outcome(int i)
{
	return outcome_word((enum outcome)i);
}

static const char *word_of_reason(int i)
{
	return reason_word((enum reason)i);
}

static const struct column columns[] = {
	{ .name = "farm",
		AT(farm),
		NAME,
		.needed = true,
		.help = N_("Farm of the trap.") },
	{ .name = "trap",
		AT(trap),
		NAME,
		.needed = true,
		.help = N_("Number or name of the trap; the book must have it.") },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("Date of the visit, not after today; one visit a day.") },
	{ .name = "outcome",
		AT(outcome),
		.type = &value_word,
		.hi = OUTCOME_COUNT - 1,
		.none = -1,
		.word = word_of_outcome,
		.help = N_("What was found; empty: counted, if there is a count.") },
	{ .name = "reason",
		AT(reason),
		.type = &value_word,
		.lo = 1,
		.hi = REASON_COUNT - 1,
		.word = word_of_reason,
		.help = N_("Why it was skipped or spoiled; empty: not said.") },
	{ .name = "count",
		AT(count),
		MOTHS,
		.help = N_(
			"Moths of the trap's pest. Empty is never 0: it goes with the "
			"outcomes that have no count.") },
	{ .name = "females",
		AT(females),
		MOTHS,
		.help = N_("How many of them were females; empty: not looked at.") },
	{ .name = "others",
		AT(others),
		MOTHS,
		.help = N_(
			"Other moths, not part of the count; empty: not looked at.") },
	{ .name = "card",
		AT(card),
		NAME,
		.shipped = true,
		.help = N_(
			"Card kind newly put in; empty: the old one stays, but a trap "
			"that is hung gets its usual one unless this says kept.") },
	{ .name = "lure",
		AT(lure),
		NAME,
		.shipped = true,
		.help = N_("Lure kind newly put in, in the same way.") },
	{ .name = "stirred",
		AT(stirred),
		.type = &value_word,
		.hi = 1,
		.none = 0,
		.word = column_yes_no,
		.help = N_("Whether the glue was stirred; empty: no.") },
	{ .name = "scout",
		AT(scout),
		.type = &value_text,
		.hi = SCOUT_BYTES,
		.help = N_("Who looked.") },
	{ .name = "note",
		AT(note),
		.type = &value_text,
		.hi = NOTE_BYTES,
		.help = N_("Anything else, in one line.") },
};

/* What a walk over all visits goes along with. */
struct walk {
	struct giving *g;
	struct known known;
	size_t at;            /* trap of the latest visit */
	struct visit_row row; /* its farm and trap are of trap `at` */
	bool begun, ok;
};

/* Visits come trap by trap in the order of the list, so the next one is near. */
static bool walk_to(struct walk *w, int64_t trap)
{
	const struct traps *all = &w->known.traps;
	size_t i = 0;

	if (w->begun && all->items[w->at].id == trap)
		return true;
	while (i < all->n && all->items[(w->at + i) % all->n].id != trap)
		i++;
	if (i == all->n)
		return false;
	w->at = (w->at + i) % all->n;
	w->begun = true;
	text_copy(w->row.farm, sizeof w->row.farm,
		known_farm(&w->known, all->items[w->at].farm));
	text_copy(w->row.trap, sizeof w->row.trap, all->items[w->at].label);
	return true;
}

static const char *put_in(const char *name, enum outcome outcome)
{
	return *name || outcome != OUTCOME_HUNG ? name : VISIT_KEPT;
}

static bool give_visit(
	void *arg, const struct visit *v, const struct visit_words *words)
{
	struct walk *w = arg;
	struct visit_row *r = &w->row;

	if (!walk_to(w, v->trap))
		return true;
	r->day = v->day;
	r->outcome = (int)v->outcome;
	r->reason = (int)v->reason;
	r->count = v->count;
	r->females = v->females;
	r->others = v->others;
	text_copy(r->card, sizeof r->card,
		put_in(known_card(&w->known, v->new_card), v->outcome));
	text_copy(r->lure, sizeof r->lure,
		put_in(known_lure(&w->known, v->new_lure), v->outcome));
	r->stirred = v->stirred;
	memcpy(r->scout, words->scout, sizeof r->scout);
	memcpy(r->note, words->note, sizeof r->note);
	w->ok = giving_row(w->g, r);
	return w->ok;
}

static bool visits_give(struct giving *g, struct err *e)
{
	struct walk w = { .g = g, .ok = true };
	bool ok = known_read(&w.known, g->book, e) &&
		  book_each_visit(g->book, 0, day_from_ymd(DAY_YEAR_MIN, 1, 1),
			  day_from_ymd(DAY_YEAR_MAX, 12, 31), give_visit, &w, e);

	known_free(&w.known);
	return ok && w.ok;
}

const struct kind kind_visits = {
	.name = "visits",
	.help = N_("the diary: every visit to every trap"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct visit_row),
	.begin = visits_begin,
	.take = visits_take,
	.look = visits_look,
	.finish = visits_finish,
	.end = visits_end,
	.give = visits_give,
};
