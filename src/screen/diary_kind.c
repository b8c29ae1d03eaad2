/* diary_kind.c - a lure or card of a visit that was another kind: picked from a
 * list. */
#include "base/text.h"
#include "base/words.h"
#include "diary_parts.h"

#include <stdio.h>

static const struct kind_choices *choices(const struct trap_diary *d, bool card)
{
	return card ? &d->cards : &d->lures;
}

static const char *name_of(const struct kind_choices *k, int64_t id)
{
	for (size_t i = 0; i < k->names.n; i++)
		if (k->ids[i] == id)
			return k->names.items[i].text;
	return _("not known");
}

/* The list, with the kind that stands there picked. */
static void show_list(struct diary_page *p, bool card)
{
	const struct kind_choices *k = choices(p->diary, card);
	int64_t now = card ? p->other.new_card : p->other.new_lure;

	p->is_card = card;
	p->kinds = (struct chooser){ .choices = &k->names };
	chooser_open(&p->kinds, 0, &p->message);
	for (size_t i = 0; i < k->names.n; i++)
		if (k->ids[i] == now)
			p->kinds.picked = (int)i;
}

static const struct diary_row *row_of_day(const struct diary_page *p)
{
	for (size_t i = 0; i < p->diary->n; i++)
		if (p->diary->rows[i].visit.day == p->day)
			return &p->diary->rows[i];
	return NULL;
}

void diary_kind_open(struct diary_page *p)
{
	const struct diary_row *row = row_of_day(p);

	if (!row || (!row->visit.new_lure && !row->visit.new_card)) {
		message_set(&p->message, false,
			_("No lure or card was put in there: k is for a visit with l, "
			  "c or hung."));
		return;
	}
	p->mode = DIARY_KIND;
	p->trap = p->diary->blank;
	p->trap.open = false; /* what the book is held against before it is saved */
	p->trap.visit = p->other = row->visit;
	show_list(p, !row->visit.new_lure);
}

static void shut(struct diary_page *p)
{
	p->mode = DIARY_LIST;
	p->kinds = (struct chooser){ 0 };
}

void diary_kind_renew(struct diary_page *p)
{
	const struct diary_row *row = row_of_day(p);

	if (row && visit_same(&row->visit, &p->trap.visit))
		return;
	shut(p);
	diary_page_pick(p, p->day);
	message_set(&p->message, true,
		row ? _("It was changed meanwhile, the kind is not saved: look at it "
			"again.")
		    : _("It was taken out meanwhile, the kind is not saved."));
}

void diary_kind_prompt(const struct diary_page *p, char out[static SAY_LINE])
{
	char day[DAY_TEXT_SIZE];

	day_short(p->day, day, sizeof day);
	snprintf(out, SAY_LINE,
		p->is_card ? _("The new card of %s was: %s")
			   : _("The new lure of %s was: %s"),
		day, p->kinds.typed);
}

static struct wish save(struct diary_page *p)
{
	const struct diary_row *row = row_of_day(p);
	struct wish w = page_wish(WANT_NOTHING);

	if (!row || visit_same(&p->other, &p->trap.visit)) {
		shut(p);
		message_set(&p->message, false, _("Left as it was."));
		return w;
	}
	w.want = WANT_SAVE_PAST;
	w.visit = p->other;
	w.words = row->words; /* who was there stays */
	p->before = p->trap.visit;
	return w;
}

static struct wish take(struct diary_page *p)
{
	const struct kind_choices *k = choices(p->diary, p->is_card);
	const struct entry_choice *one = chooser_picked(&p->kinds);

	if (!one) {
		chooser_say_none(&p->kinds, &p->message);
		return page_wish(WANT_NOTHING);
	}
	*(p->is_card ? &p->other.new_card : &p->other.new_lure) =
		k->ids[one - k->names.items];
	if (p->is_card || !p->other.new_card)
		return save(p);
	show_list(p, true);
	return page_wish(WANT_NOTHING);
}

struct wish diary_kind_key(struct diary_page *p, struct input in)
{
	if (in.kind == INPUT_ENTER)
		return take(p);
	if (in.kind == INPUT_ESC) {
		shut(p);
		message_set(&p->message, false, _("Left as it was."));
	} else
		chooser_key(&p->kinds, in, &p->message);
	return page_wish(WANT_NOTHING);
}

static bool is_other(int64_t was, int64_t is)
{
	return was && is && was != is;
}

void diary_page_say_kinds(const struct diary_page *p, const struct visit *was,
	const struct visit *is, char out[static SAY_LINE])
{
	const struct kind_choices *lures = &p->diary->lures, *cards = &p->diary->cards;
	size_t n = 0;

	out[0] = '\0';
	if (is_other(was->new_lure, is->new_lure))
		n = (size_t)snprintf(out, SAY_LINE, _("; lure %s, was %s"),
			name_of(lures, is->new_lure), name_of(lures, was->new_lure));
	if (n < SAY_LINE && is_other(was->new_card, is->new_card))
		snprintf(out + n, SAY_LINE - n, _("; card %s, was %s"),
			name_of(cards, is->new_card), name_of(cards, was->new_card));
}
