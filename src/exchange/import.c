#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/taking.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

enum {
	SHOWN_BYTES = 48, /* of a wrong value in a message, with its NUL */
};

static void note_problem(struct taking *t, const char *sentence)
{
	if (t->out->n_problems++ < PROBLEMS_MAX)
		sentences_add(&t->out->problems, sentence);
}

void taking_warn(struct taking *t, const char *fmt, ...)
{
	char text[400];
	struct err e;
	va_list args;

	va_start(args, fmt);
	words_vprint(text, sizeof text, fmt, args);
	va_end(args);
	err_set(&e, ERR_INPUT, "%s", text);
	if (t->out->n_warnings++ < PROBLEMS_MAX)
		sentences_add(&t->out->warnings, e.text);
}

static void shorten(char out[static SHOWN_BYTES], const char *value)
{
	if (!text_copy(out, SHOWN_BYTES - 3, value))
		strcat(out, "...");
}

static int column_index(const struct kind *k, const char *name)
{
	for (size_t i = 0; i < k->n_columns; i++)
		if (strcmp(k->columns[i].name, name) == 0)
			return (int)i;
	return -1;
}

bool taking_has(const struct taking *t, const char *column)
{
	int i = column_index(t->kind, column);

	return i >= 0 && t->field_of[i] >= 0;
}

const char *taking_value(const struct taking *t, const char *column)
{
	int i = column_index(t->kind, column);
	int field = i < 0 ? -1 : t->field_of[i];

	return field < 0 ? "" : t->csv.field[field].text;
}

bool taking_bad(struct taking *t, const char *column, const char *fmt, ...)
{
	char value[SHOWN_BYTES], what[400];
	struct err e;
	va_list args;

	va_start(args, fmt);
	words_vprint(what, sizeof what, fmt, args);
	va_end(args);
	shorten(value, taking_value(t, column));
	err_set(&e, ERR_INPUT,
		*value ? _("%s, line %lld, column %s: \"%s\" %s")
		       : _("%s, line %lld, column %s: %s%s"),
		t->from->name, (long long)t->csv.line, column, value, what);
	note_problem(t, e.text);
	return true;
}

void taking_bad_row(struct taking *t, int64_t line, const char *what)
{
	struct err e;

	err_set(&e, ERR_INPUT, _("%s, line %lld: %s"), t->from->name, (long long)line,
		what);
	note_problem(t, e.text);
}

bool taking_find(struct taking *t, const struct names *names, const char *column,
	const char *name, int64_t *id)
{
	*id = 0;
	if (!*name)
		return true;
	int64_t found = names_find(names, 0, name);
	if (found < 0)
		return row_unknown(&t->hear, column, names, 0);
	*id = found;
	return true;
}

void taking_count(struct taking *t, enum took what)
{
	t->out->n_new += what == TOOK_NEW;
	t->out->n_changed += what == TOOK_CHANGED;
	t->out->n_same += what == TOOK_SAME;
}

/* "farm, block, trap" */
static void list_columns(const struct kind *k, struct buf *out)
{
	for (size_t i = 0; i < k->n_columns; i++)
		buf_addf(out, "%s%s", i ? ", " : "", k->columns[i].name);
}

/* A column of the kind whose name is the text, blanks around it left out. */
static int find_column(const struct kind *k, const char *text)
{
	size_t from = strspn(text, " \t"), n = strlen(text);

	while (n > from && (text[n - 1] == ' ' || text[n - 1] == '\t'))
		n--;
	for (size_t i = 0; i < k->n_columns; i++)
		if (strlen(k->columns[i].name) == n - from &&
			strncasecmp(k->columns[i].name, text + from, n - from) == 0)
			return (int)i;
	return -1;
}

static bool unknown_column(const struct taking *t, size_t field, struct err *e)
{
	struct buf there = { 0 };
	char value[SHOWN_BYTES];

	shorten(value, t->csv.field[field].text);
	list_columns(t->kind, &there);
	err_set(e, ERR_INPUT,
		_("%s, line %lld, column %d: \"%s\" is no column of %s, which has: %s"),
		t->from->name, (long long)t->csv.line, (int)field + 1, value,
		t->kind->name, there.text);
	buf_free(&there);
	return false;
}

/* Takes the header row in. */
static bool map_columns(struct taking *t, struct err *e)
{
	const struct kind *k = t->kind;

	t->n_fields = t->csv.n_fields;
	for (size_t i = 0; i < CSV_FIELDS_MAX; i++)
		t->field_of[i] = -1;
	for (size_t f = 0; f < t->n_fields; f++) {
		int c = find_column(k, t->csv.field[f].text);
		if (c < 0)
			return unknown_column(t, f, e);
		if (t->field_of[c] >= 0)
			return err_set(e, ERR_INPUT,
				_("%s, line %lld: the columns %d and %d are both "
				  "\"%s\"; each may be there once"),
				t->from->name, (long long)t->csv.line,
				t->field_of[c] + 1, (int)f + 1, k->columns[c].name);
		t->field_of[c] = (int)f;
		t->column_of[f] = c;
	}
	for (size_t c = 0; c < k->n_columns; c++)
		if (k->columns[c].needed && t->field_of[c] < 0)
			return err_set(e, ERR_INPUT,
				_("%s, line %lld: the column %s is missing; a file of "
				  "%s needs it"),
				t->from->name, (long long)t->csv.line,
				k->columns[c].name, k->name);
	return true;
}

static bool read_header(struct taking *t, struct err *e)
{
	struct buf there = { 0 };

	switch (csv_next(&t->csv, e)) {
	case CSV_ROW:
		return map_columns(t, e);
	case CSV_BAD:
		return false;
	default:
		list_columns(t->kind, &there);
		err_set(e, ERR_INPUT,
			_("%s is empty; its first row names the columns: %s"),
			t->from->name, there.text);
		buf_free(&there);
		return false;
	}
}

/* Drops blanks around the field's value. The bytes lie in the reader's own block. */
static void trim_field(struct csv_field *f)
{
	while (f->n && (f->text[f->n - 1] == ' ' || f->text[f->n - 1] == '\t'))
		f->n--;
	((char *)(uintptr_t)f->text)[f->n] = '\0';
	while (*f->text == ' ' || *f->text == '\t') {
		f->text++;
		f->n--;
	}
}

static bool read_value(struct taking *t, const struct column *c, char *row, int field)
{
	char right[RIGHT_BYTES];
	const char *text = "";

	if (field >= 0) {
		trim_field(&t->csv.field[field]);
		text = t->csv.field[field].text;
	}
	if (!*text) {
		c->type->clear(c, row + c->at);
		if (!c->needed)
			return true;
		c->type->right(c, right);
		taking_bad(t, c->name, _("a value is missing; it takes %s"), right);
		return false;
	}
	if (t->from->shipped && c->type == &value_text && !c->shipped)
		text = words_shipped(text);
	/* Thresholds find their blocks by it, in whatever language it was typed. */
	if (c->pick == PICK_CROP)
		text = words_as_shipped(text);
	if (c->type->read(c, text, row + c->at))
		return true;
	c->type->right(c, right);
	taking_bad(t, c->name, _("is not right; it takes %s"), right);
	c->type->clear(c, row + c->at);
	return false;
}

static void torn_row(struct taking *t)
{
	struct buf what = { 0 };

	buf_addf(&what,
		_("the row has %d values and the header row %d columns; each "
		  "row has one value for each column, empty ones too"),
		(int)t->csv.n_fields, (int)t->n_fields);
	taking_bad_row(t, t->csv.line, what.text);
	buf_free(&what);
}

static bool read_row(struct taking *t, char *row)
{
	bool good = true;

	for (size_t i = 0; i < t->kind->n_columns; i++)
		if (!read_value(t, &t->kind->columns[i], row, t->field_of[i]))
			good = false;
	return good;
}

/* One row into the book. False: nothing more can be done. */
static bool take_row(struct taking *t, char *row, struct err *e)
{
	struct err why = { 0 };

	if (t->csv.n_fields != t->n_fields) {
		torn_row(t);
		return true;
	}
	if (!read_row(t, row)) {
		if (t->kind->look)
			t->kind->look(t, row);
		return true;
	}
	if (t->from->wanted && !t->from->wanted(t->from->arg, row))
		return true;
	if (t->kind->take(t, row, &why))
		return true;
	if (why.kind == ERR_BOOK)
		return err_set(e, ERR_BOOK, "%s", why.text);
	taking_bad_row(t, t->csv.line, why.text);
	return true;
}

static bool take_rows(struct taking *t, struct err *e)
{
	char *row = mem_new(1, t->kind->row_bytes);
	struct err why = { 0 };
	enum csv_got got;
	bool ok = true;

	while (ok && (got = csv_next(&t->csv, &why)) != CSV_END) {
		if (got == CSV_BAD && why.kind == ERR_BOOK)
			ok = err_set(e, ERR_BOOK, "%s", why.text);
		if (got == CSV_BAD) {
			note_problem(t, why.text);
			break;
		}
		ok = take_row(t, row, e);
	}
	free(row);
	return ok && (!t->kind->finish || t->kind->finish(t, e));
}

/* Good only if no row was wrong. */
static bool all_right(const struct taking *t, struct err *e)
{
	if (t->out->n_problems == 0)
		return true;
	if (t->out->n_problems == 1)
		return err_set(e, ERR_INPUT,
			_("%s: one thing is wrong, so nothing was taken in; the book "
			  "is as it was"),
			t->from->name);
	return err_set(e, ERR_INPUT,
		_("%s: %lld things are wrong, so nothing was taken in; the book is as "
		  "it was"),
		t->from->name, (long long)t->out->n_problems);
}

static bool take_all(struct taking *t, struct err *e)
{
	if (!book_begin(t->book, e))
		return false;
	bool ok = t->kind->begin(t, e) && take_rows(t, e) && all_right(t, e);
	t->kind->end(t);
	if (!ok) {
		book_rollback(t->book);
		return false;
	}
	return book_commit(t->book, e);
}

static void hear_bad(void *arg, const char *column, const char *what)
{
	taking_bad(arg, column, "%s", what);
}

static void hear_warning(void *arg, const char *column, const char *what)
{
	(void)column;
	taking_warn(arg, "%s", what);
}

static bool hear_has(void *arg, const char *column)
{
	return taking_has(arg, column);
}

static const char *hear_value(void *arg, const char *column)
{
	return taking_value(arg, column);
}

bool exchange_import(struct book *b, const struct kind *kind,
	const struct import_from *from, struct imported *out, struct err *e)
{
	struct taking t = { .book = b, .kind = kind, .from = from, .out = out };

	t.hear = (struct hearing){ .bad = hear_bad,
		.warn = hear_warning,
		.has = hear_has,
		.value = hear_value,
		.arg = &t,
		.today = from->today,
		.zone = from->zone };
	csv_open(&t.csv, from->file, from->name);
	bool ok = read_header(&t, e) && take_all(&t, e);
	csv_close(&t.csv);
	return ok;
}
