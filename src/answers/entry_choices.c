/* entry_choices.c - what the fields of a form are chosen from. */
#include "answers/entry_forms.h"
#include "answers/trial.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_family.h"
#include "season/biofix.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct choosing {
	const struct entry *entry;
	const struct column *column;
	const struct log *log;
	struct entry_choices *out;
};

static void add(struct entry_choices *out, const char *text, const char *help)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct entry_choice *c = &out->items[out->n++];
	text_copy(c->text, sizeof c->text, text);
	text_copy(c->help, sizeof c->help, help);
}

/* The text of the field that is picked so; "" without one. */
static const char *picked(const struct choosing *c, enum pick_from pick)
{
	const struct entry_family *f = &entry_families[c->entry->kind];

	for (size_t i = 0; i < f->n_columns; i++)
		if (f->columns[i].pick == pick)
			return c->entry->text[i];
	return "";
}

static int64_t farm_of(const struct choosing *c)
{
	const char *name = picked(c, PICK_FARM);

	for (size_t i = 0; i < c->log->farms.n; i++)
		if (strcmp(c->log->farms.items[i].name, name) == 0)
			return c->log->farms.items[i].id;
	return 0;
}

static int64_t pest_of(const struct choosing *c)
{
	const char *code = picked(c, PICK_PEST);

	for (size_t i = 0; i < c->log->pests.n; i++)
		if (strcmp(c->log->pests.items[i].code, code) == 0)
			return c->log->pests.items[i].id;
	return 0;
}

static void words(const struct choosing *c)
{
	for (int i = c->column->lo; i <= c->column->hi; i++)
		add(c->out, _(c->column->word(i)), "");
}

static void farms(const struct choosing *c)
{
	const struct farms *all = &c->log->farms;

	for (size_t i = 0; i < all->n; i++)
		if (!all->items[i].retired)
			add(c->out, all->items[i].name, "");
}

static void blocks(const struct choosing *c)
{
	const struct blocks *all = &c->log->blocks;
	int64_t farm = farm_of(c);

	for (size_t i = 0; i < all->n; i++)
		if (!all->items[i].retired && all->items[i].farm == farm)
			add(c->out, all->items[i].name,
				words_shipped(all->items[i].crop));
}

/* Which of the log's pests a trap is for; the caller frees the list. */
static bool *with_traps(const struct log *l)
{
	bool *has = mem_new(l->pests.n, sizeof *has);

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct pest *p = log_pest(l, l->traps.items[i].pest);
		if (p)
			has[p - l->pests.items] = true;
	}
	return has;
}

/* Those that a trap is for come first. */
static void pests(const struct choosing *c)
{
	const struct pests *all = &c->log->pests;
	bool *first = with_traps(c->log);

	for (int pass = 0; pass < 2; pass++)
		for (size_t i = 0; i < all->n; i++)
			if (!all->items[i].retired && first[i] == (pass == 0))
				add(c->out, all->items[i].code,
					words_shipped(all->items[i].name));
	free(first);
}

static void lures(const struct choosing *c)
{
	const struct lure_kinds *all = &c->log->lures;
	int64_t pest = pest_of(c);
	char help[SAY_LINE];

	for (size_t i = 0; i < all->n; i++) {
		const struct lure_kind *k = &all->items[i];
		const struct pest *p = log_pest(c->log, k->pest);
		if (k->retired || (pest && k->pest && k->pest != pest))
			continue;
		snprintf(help, sizeof help, p ? _("%d days, for %s") : _("%d days"),
			(int)k->life_days, p ? p->code : "");
		add(c->out, words_shipped(k->name), help);
	}
}

static void cards(const struct choosing *c)
{
	const struct card_kinds *all = &c->log->cards;
	char help[SAY_LINE];

	for (size_t i = 0; i < all->n; i++) {
		if (all->items[i].retired)
			continue;
		snprintf(help, sizeof help, _("%d days, due at %d, full at %d"),
			(int)all->items[i].life_days, (int)all->items[i].change_at,
			(int)all->items[i].floor_at);
		add(c->out, words_shipped(all->items[i].name), help);
	}
}

static void stations(const struct choosing *c)
{
	for (size_t i = 0; i < c->log->stations.n; i++)
		add(c->out, c->log->stations.items[i].name, "");
}

static void add_once(struct entry_choices *out, const char *text, const char *help)
{
	for (size_t i = 0; i < out->n; i++)
		if (strcmp(out->items[i].text, text) == 0)
			return;
	if (*text)
		add(out, text, help);
}

/* Each that a block has, once; then those that published thresholds are for, lest the
 * first block's is written otherwise and none of them finds it. */
static void crops(const struct choosing *c)
{
	const struct blocks *all = &c->log->blocks;
	struct published_rows published = { 0 };
	struct err none = { 0 };

	for (size_t i = 0; i < all->n; i++)
		add_once(c->out, words_shipped(all->items[i].crop), "");
	if (published_read(&published, c->log, 0, &none))
		for (size_t i = 0; i < published.n; i++)
			add_once(c->out, words_shipped(published.items[i].rule.crop),
				"");
	published_free(&published);
}

static void biofix_rule_words(const struct choosing *c)
{
	size_t n;
	const struct biofix_rule *all = biofix_rules(&n);

	for (size_t i = 0; i < n; i++)
		add(c->out, _(all[i].word), _(all[i].said));
}

/* Whoever a treatment of the season names, with the certificate named beside. */
static void applicators(const struct choosing *c)
{
	const struct treatments *all = &c->log->treatments;

	for (size_t i = 0; i < all->n; i++)
		add_once(c->out, all->items[i].applicator, all->items[i].certificate);
}

static void certificates(const struct choosing *c)
{
	const struct treatments *all = &c->log->treatments;
	const char *of = picked(c, PICK_APPLICATOR);

	for (size_t i = 0; i < all->n; i++)
		if (!*of || strcmp(all->items[i].applicator, of) == 0)
			add_once(c->out, all->items[i].certificate,
				all->items[i].applicator);
}

static void (*const lists[PICK_COUNT])(const struct choosing *c) = {
	[PICK_WORD] = words,
	[PICK_FARM] = farms,
	[PICK_BLOCK] = blocks,
	[PICK_PEST] = pests,
	[PICK_LURE] = lures,
	[PICK_CARD] = cards,
	[PICK_STATION] = stations,
	[PICK_CROP] = crops,
	[PICK_BIOFIX_RULE] = biofix_rule_words,
	[PICK_APPLICATOR] = applicators,
	[PICK_CERTIFICATE] = certificates,
};

/* A setting's own words, if it takes only these. */
static void setting_words(const struct choosing *c)
{
	for (size_t i = 0; i < SETTING_COUNT; i++) {
		const char *const *all = setting_facts[i].words;
		if (strcmp(setting_facts[i].name, c->entry->text[0]) != 0)
			continue;
		for (; all && *all; all++)
			add(c->out, _(*all), "");
		for (int yes = 1; setting_facts[i].look == SETTING_YES_NO && yes >= 0;
			yes--)
			add(c->out, _(column_yes_no(yes)), "");
		c->out->only = c->out->n > 0;
	}
}

/* A new treatment may be of several blocks, with commas between their names. */
static bool may_be_several(const struct entry *r, const struct column *c)
{
	return r->kind == ENTRY_TREATMENTS && r->id == 0 && c->pick == PICK_BLOCK;
}

/* Choices are then no more than what is likely. */
static bool may_be_typed(const struct entry *r, const struct column *c)
{
	return c->pick == PICK_CROP || c->pick == PICK_APPLICATOR ||
	       c->pick == PICK_CERTIFICATE || may_be_several(r, c);
}

void entry_choices_of(const struct entry *r, int field, const struct log *l,
	struct entry_choices *out)
{
	const struct column *column = &entry_families[r->kind].columns[field];
	struct choosing c = { r, column, l, out };

	out->n = 0;
	out->only = false;
	if (r->kind == ENTRY_SETTINGS) {
		setting_words(&c);
	} else if (lists[column->pick]) {
		lists[column->pick](&c);
		out->only = !may_be_typed(r, column);
	}
}

void entry_choices_free(struct entry_choices *c)
{
	free(c->items);
	*c = (struct entry_choices){ 0 };
}
