/* entry_list.c - the records of a family as a list. */
#include "answers/entry_forms.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_hang.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>

static bool is_retired(enum entry_kind kind, const struct shelves *s, size_t i)
{
	const struct family_ops *o = family_ops[kind];

	return o->retired && o->retired(s, i);
}

static void fill_cells(const struct entry_family *f, const void *row,
	const struct manner *m, struct entry_row *out)
{
	char text[ENTRY_TEXT];
	size_t n = 0;

	for (size_t i = 0; i < f->n_columns && n < ENTRY_CELLS_MAX; i++) {
		if (!f->columns[i].list_cols)
			continue;
		text_of_field(&f->columns[i], row, m, text);
		text_copy(out->cells[n++], ENTRY_CELL, text);
	}
}

static void fill_row(struct entry_list *out, const struct shelves *s, size_t i,
	const struct manner *m)
{
	const struct family_ops *o = family_ops[out->ask.kind];
	void *row = mem_new(1, o->row_bytes);

	out->rows = mem_grow(out->rows, &out->cap, out->n + 1, sizeof *out->rows);
	struct entry_row *r = &out->rows[out->n++];
	*r = (struct entry_row){ .id = o->id(s, i) };
	r->is_retired = is_retired(out->ask.kind, s, i);
	r->tone = r->is_retired ? TONE_QUIET : TONE_PLAIN;
	o->row(s, i, row);
	fill_cells(&entry_families[out->ask.kind], row, m, r);
	/* In the list a setting goes by what it says. */
	if (out->ask.kind == ENTRY_SETTINGS)
		o->name(row, r->cells[0], ENTRY_CELL);
	if (o->note)
		o->note(s, i, r->note);
	if (r->is_retired && out->ask.kind != ENTRY_TRAPS)
		text_copy(r->note, sizeof r->note, _("put away"));
	free(row);
}

/* "Traps of Addermoor, CM" */
static void write_title(struct entry_list *out, const struct shelves *s)
{
	const struct block *block = known_block(&s->known, out->ask.block);
	const char *farm = block ? block->name : known_farm(&s->known, out->ask.farm);
	const char *pest = known_pest(&s->known, out->ask.pest);
	const char *name = _(entry_families[out->ask.kind].name);

	if (*farm)
		snprintf(out->title, sizeof out->title, _("%s of %s%s%s"), name, farm,
			*pest ? ", " : "", pest);
	else
		snprintf(out->title, sizeof out->title, "%s%s%s", name,
			*pest ? ", " : "", pest);
	out->title[0] = (char)toupper((unsigned char)out->title[0]);
}

/* Blocks, traps and sources go by their farm first; traps by their turn already. */
static size_t farm_rank(const struct shelves *s, size_t i, enum entry_kind kind)
{
	const struct farms *farms = &s->known.farms;
	size_t rank = 0;

	while (kind == ENTRY_BLOCKS && rank < farms->n &&
		farms->items[rank].id != s->known.blocks.items[i].farm)
		rank++;
	return rank;
}

static void fill_rows(
	struct entry_list *out, const struct shelves *s, const struct manner *m)
{
	const struct family_ops *o = family_ops[out->ask.kind];
	size_t ranks = out->ask.kind == ENTRY_BLOCKS ? s->known.farms.n : 1;

	for (size_t rank = 0; rank < ranks; rank++)
		for (size_t i = 0; i < o->count(s); i++) {
			if (farm_rank(s, i, out->ask.kind) != rank ||
				!o->wanted(s, i, &out->ask))
				continue;
			if (!out->ask.retired && is_retired(out->ask.kind, s, i))
				out->n_hidden++;
			else
				fill_row(out, s, i, m);
		}
}

bool entry_list_read(struct entry_list *out, struct book *b,
	const struct entry_ask *ask, const struct log *l, struct err *e)
{
	struct shelves s = { 0 };
	struct manner m;
	bool ok =
		shelves_read(&s, b, ask->kind, l, e) && manner_read(&m, b, e) &&
		(ask->kind != ENTRY_TRAPS || traps_read_hangings(&s, b, ask->farm, e));

	out->ask = *ask;
	out->n = 0;
	out->n_hidden = 0;
	if (ok) {
		write_title(out, &s);
		fill_rows(out, &s, &m);
	}
	shelves_free(&s);
	return ok;
}

void entry_list_free(struct entry_list *s)
{
	free(s->rows);
	*s = (struct entry_list){ 0 };
}
