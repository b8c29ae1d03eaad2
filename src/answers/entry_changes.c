/* entry_changes.c - what changed in a record, in the words of its form. */
#include "answers/entry_changes.h"

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
	bool corrections; /* these alone, not that it was put in */
	int setting;      /* of settings, which one; -1: it is not known */
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

static void write_setting(int setting, const char *raw, char out[static ENTRY_TEXT])
{
	struct setting_row row = { .name = setting };

	text_copy(row.value, sizeof row.value, raw);
	if (*raw)
		setting_show(&row);
	text_copy(out, ENTRY_TEXT, row.value);
}

/* The book keeps hundredths, days of the year and some words as numbers: those go the
 * way of a form's texts. */
static void write_value(const struct telling *t, const struct column *c,
	const char *raw, char out[static ENTRY_TEXT])
{
	char *row;
	int32_t number;

	text_copy(out, ENTRY_TEXT, c ? text_of_word(c, raw) : raw);
	if (t->kind == ENTRY_SETTINGS && t->setting >= 0)
		write_setting(t->setting, raw, out);
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
		const char *name = *c->after ? c->after : c->before;
		buf_addf(out, *c->after ? _("%s put in") : _("%s taken out"),
			t->kind == ENTRY_SETTINGS ? _(setting_facts[t->setting].label)
						  : words_shipped(name));
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

static bool read_changes(struct entry_changes *out, struct book *b,
	const struct telling *t, int64_t id, struct err *e)
{
	struct row_changes all = { 0 };
	bool ok =
		id == 0 || book_row_changes(b, family_ops[t->kind]->table, id, &all, e);

	for (size_t i = 0; ok && i < all.n; i++)
		if (!is_offset(all.items[i].field) &&
			(*all.items[i].field || !t->corrections))
			add_line(out, t, &all.items[i]);
	free(all.items);
	return ok;
}

bool entry_changes_read(struct entry_changes *out, struct book *b, enum entry_kind kind,
	int64_t id, struct err *e)
{
	struct telling t = { .kind = kind, .setting = (int)id - 1 };

	out->n = 0;
	if (!manner_read(&t.manner, b, e))
		return false;
	if (kind == ENTRY_SETTINGS &&
		!book_setting_id(b, setting_facts[id - 1].name, &id, e))
		return false;
	return read_changes(out, b, &t, id, e);
}

bool treatment_corrections_read(struct entry_changes *out, struct book *b,
	const struct manner *m, int64_t treatment, struct err *e)
{
	struct telling t = {
		.manner = *m, .kind = ENTRY_TREATMENTS, .corrections = true
	};

	out->n = 0;
	return read_changes(out, b, &t, treatment, e);
}

void entry_say_value(const char *table, const struct manner *m, const char *field,
	const char *raw, char label[static SAY_SHORT], char out[static ENTRY_TEXT])
{
	struct telling t = { .manner = *m, .setting = -1 };
	struct row_change c = { 0 };

	text_copy(c.field, sizeof c.field, field);
	while (t.kind < ENTRY_KINDS && strcmp(family_ops[t.kind]->table, table) != 0)
		t.kind++;
	const struct column *column =
		t.kind < ENTRY_KINDS ? column_of(t.kind, field) : NULL;
	text_copy(label, SAY_SHORT, field_label(&c, column));
	write_value(&t, column, raw, out);
}

void entry_changes_free(struct entry_changes *c)
{
	free(c->lines);
	*c = (struct entry_changes){ 0 };
}
