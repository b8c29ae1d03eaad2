/* trap_diary_kinds.c - the lure and card kinds that a visit of a trap may have put
 * in. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "trap_diary_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct entry_choice *add(struct kind_choices *k, int64_t id, const char *name)
{
	struct entry_choices *c = &k->names;

	c->items = mem_grow(c->items, &c->cap, c->n + 1, sizeof *c->items);
	k->ids = mem_grow(k->ids, &k->cap_ids, c->n + 1, sizeof *k->ids);
	k->ids[c->n] = id;
	struct entry_choice *one = &c->items[c->n++];
	text_copy(one->text, sizeof one->text, words_shipped(name));
	one->help[0] = '\0';
	return one;
}

static void say_help(struct entry_choice *one, int32_t days, bool retired)
{
	snprintf(one->help, sizeof one->help,
		retired ? _("%d days, put away") : _("%d days"), (int)days);
}

static void add_lures(struct trap_diary *out, const struct log *l, int64_t pest)
{
	for (size_t i = 0; i < l->lures.n; i++) {
		const struct lure_kind *k = &l->lures.items[i];
		if (!k->pest || k->pest == pest)
			say_help(add(&out->lures, k->id, k->name), k->life_days,
				k->retired);
	}
}

void trap_diary_list_kinds(struct trap_diary *out, const struct log *l, int64_t pest)
{
	out->lures.names.n = out->cards.names.n = 0;
	out->lures.names.only = out->cards.names.only = true;
	add_lures(out, l, pest);
	for (size_t i = 0; i < l->cards.n; i++) {
		const struct card_kind *k = &l->cards.items[i];
		say_help(add(&out->cards, k->id, k->name), k->life_days, k->retired);
	}
}

int32_t trap_diary_card_holds(const struct log *l, int64_t card)
{
	const struct card_kind *k = log_card(l, card);

	return k ? k->floor_at : 0;
}

void kind_choices_free(struct kind_choices *k)
{
	free(k->names.items);
	free(k->ids);
	*k = (struct kind_choices){ 0 };
}

void trap_diary_say_kinds(
	const struct log *l, const struct visit *v, char out[static SAY_LINE])
{
	const struct lure_kind *lure = log_lure(l, v->new_lure);
	const struct card_kind *card = log_card(l, v->new_card);

	if (lure && card)
		snprintf(out, SAY_LINE, _("new lure %s, new card %s"),
			words_shipped(lure->name), words_shipped(card->name));
	else if (lure || card)
		snprintf(out, SAY_LINE, lure ? _("new lure %s") : _("new card %s"),
			words_shipped(lure ? lure->name : card->name));
	else
		out[0] = '\0';
}

static const char *lure_name(const struct log *l, int64_t id)
{
	const struct lure_kind *k = log_lure(l, id);

	return k ? words_shipped(k->name) : "";
}

static const char *card_name(const struct log *l, int64_t id)
{
	const struct card_kind *k = log_card(l, id);

	return k ? words_shipped(k->name) : "";
}

static void say_lure(
	const struct log *l, int64_t was, int64_t is, char *out, size_t size)
{
	if (was && is && was != is)
		snprintf(out, size, _("; lure %s, was %s"), lure_name(l, is),
			lure_name(l, was));
	else if (was && was != is)
		snprintf(out, size, _("; new lure %s"), lure_name(l, was));
}

static void say_card(
	const struct log *l, int64_t was, int64_t is, char *out, size_t size)
{
	if (was && is && was != is)
		snprintf(out, size, _("; card %s, was %s"), card_name(l, is),
			card_name(l, was));
	else if (was && was != is)
		snprintf(out, size, _("; new card %s"), card_name(l, was));
}

void trap_diary_say_other_kinds(const struct log *l, const struct visit *was,
	const struct visit *is, char out[static SAY_LINE])
{
	size_t n = 0;

	out[0] = '\0';
	say_lure(l, was->new_lure, is ? is->new_lure : 0, out, SAY_LINE);
	n = strlen(out);
	say_card(l, was->new_card, is ? is->new_card : 0, out + n, SAY_LINE - n);
}
