/* What changed in a record, in the words of its form. */
#include "answers/entry_forms.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"
#include "entry_family.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Columns of the book's tables that are not called like those of the files. */
static const struct {
	enum entry_kind kind;
	const char *field, *column;
} renamed[] = {
	{ ENTRY_FARMS, "name", "farm" },
	{ ENTRY_BLOCKS, "name", "block" },
	{ ENTRY_BLOCKS, "area_x100", "area_ha" },
	{ ENTRY_TRAPS, "label", "trap" },
	{ ENTRY_TRAPS, "driving_order", "order" },
	{ ENTRY_PESTS, "dd_unit", "unit" },
	{ ENTRY_PESTS, "dd_base", "base" },
	{ ENTRY_PESTS, "dd_cap", "cap" },
	{ ENTRY_PESTS, "dd_method", "method" },
	{ ENTRY_PESTS, "dd_cutoff", "cutoff" },
	{ ENTRY_LURES, "name", "lure" },
	{ ENTRY_CARDS, "name", "card" },
	{ ENTRY_THRESHOLDS, "from_md", "from" },
	{ ENTRY_THRESHOLDS, "to_md", "to" },
	{ ENTRY_THRESHOLDS, "span_kind", "span" },
	{ ENTRY_THRESHOLDS, "value_x100", "value" },
	{ ENTRY_STATIONS, "name", "station" },
	{ ENTRY_TREATMENTS, "day", "date" },
	{ ENTRY_TREATMENTS, "unit", "amount_unit" },
	{ ENTRY_TREATMENTS, "area_x100", "area_ha" },
	{ ENTRY_PICKS, "day", "date" },
	{ ENTRY_PICKS, "planned", "done" },
	{ ENTRY_CHECKS, "day", "date" },
	{ ENTRY_DISPENSERS, "day", "up" },
	{ ENTRY_DISPENSERS, "until", "down" },
	{ ENTRY_DISPENSERS, "per_ha_x100", "per_ha" },
};

struct telling {
	enum entry_kind kind;
	struct manner manner;
};

static const struct column *column_of(enum entry_kind kind, const char *field)
{
	const struct entry_family *f = &entry_families[kind];

	for (size_t i = 0; i < sizeof renamed / sizeof *renamed; i++)
		if (renamed[i].kind == kind && strcmp(renamed[i].field, field) == 0)
			field = renamed[i].column;
	for (size_t i = 0; i < f->n_columns; i++)
		if (strcmp(f->columns[i].name, field) == 0)
			return &f->columns[i];
	return NULL;
}

/* The book keeps hundredths, days of the year and some words as numbers: those go the
 * way of a form's texts. */
static void write_value(const struct telling *t, const struct column *c,
	const char *raw, char out[static ENTRY_TEXT])
{
	char *row;
	int32_t number;

	text_copy(out, ENTRY_TEXT, raw);
	if (c && c->type == &value_moment)
		say_time(raw, out);
	if (!c || !text_int(raw, 0, INT32_MAX, &number))
		return;
	/* The book says what is planned, the form what is done. */
	if (t->kind == ENTRY_PICKS && c->type == &value_word)
		number = 1 - number;
	bool word = c->type == &value_word && number >= c->lo && number <= c->hi;
	if (!word && c->type != &value_x100 && c->type != &value_area &&
		c->type != &value_md)
		return;
	row = mem_new(1, family_ops[t->kind]->row_bytes);
	memcpy(row + c->at, &number, sizeof number); /* an int, of 32 bits here too */
	text_of_field(c, row, &t->manner, out);
	free(row);
}

static const char *field_label(const struct row_change *c, const struct column *column)
{
	if (strcmp(c->field, "retired") == 0)
		return _("put away");
	return column && column->label ? _(column->label) : c->field;
}

static void say_what(
	const struct telling *t, const struct row_change *c, struct buf *out)
{
	const struct column *column = column_of(t->kind, c->field);
	char before[ENTRY_TEXT], after[ENTRY_TEXT];

	if (!*c->field) {
		buf_addf(out, *c->after ? _("%s put in") : _("%s taken out"),
			*c->after ? c->after : c->before);
		return;
	}
	write_value(t, column, c->before, before);
	write_value(t, column, c->after, after);
	buf_addf(out, _("%s was %s, is %s"), field_label(c, column),
		*before ? before : _("empty"), *after ? after : _("empty"));
}

static void add_line(
	struct entry_changes *out, const struct telling *t, const struct row_change *c)
{
	char when[SAY_SHORT];
	struct buf line = { 0 };

	say_time(c->changed_at, when);
	buf_addf(&line, *c->changed_by ? "%s %s: " : "%s%s: ", when, c->changed_by);
	say_what(t, c, &line);
	out->lines = mem_grow(out->lines, &out->cap, out->n + 1, sizeof *out->lines);
	text_copy(out->lines[out->n++], sizeof *out->lines, line.text);
	buf_free(&line);
}

/* What clocks were ahead of UTC goes with its time. */
static bool is_offset(const char *field)
{
	return strcmp(field, "started_east") == 0 || strcmp(field, "ended_east") == 0;
}

bool entry_changes_read(struct entry_changes *out, struct book *b, enum entry_kind kind,
	int64_t id, struct err *e)
{
	struct row_changes all = { 0 };
	struct telling t = { .kind = kind };

	out->n = 0;
	if (!manner_read(&t.manner, b, e))
		return false;
	if (kind == ENTRY_SETTINGS &&
		!book_setting_id(b, setting_facts[id - 1].name, &id, e))
		return false;
	bool ok = id == 0 || book_row_changes(b, family_ops[kind]->table, id, &all, e);
	for (size_t i = 0; ok && i < all.n; i++)
		if (!is_offset(all.items[i].field))
			add_line(out, &t, &all.items[i]);
	free(all.items);
	return ok;
}

void entry_changes_free(struct entry_changes *c)
{
	free(c->lines);
	*c = (struct entry_changes){ 0 };
}
