/* entry_form.c - one record as a form, and back into the book. */
#include "answers/entry_forms.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"
#include "entry_hang.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
	SHOWN_BYTES = 48, /* of a wrong value in a sentence, with its NUL */
	DOUBT_BYTES =
		210, /* of several doubts: a page's message has room for as many */
};

/* When the record was changed last; a setting that was never set has none. */
static bool read_stamp(struct book *b, enum entry_kind kind, int64_t id,
	struct row_stamp *out, struct err *e)
{
	*out = (struct row_stamp){ 0 };
	if (kind == ENTRY_SETTINGS &&
		!book_setting_id(b, setting_facts[id - 1].name, &id, e))
		return false;
	return id == 0 || book_stamp(b, family_ops[kind]->table, id, out, e);
}

static bool gone(const struct entry_family *f, struct err *e)
{
	return err_set(
		e, ERR_NOT_FOUND, _("the %s is not in the book any more"), _(f->one));
}

/* The record's row; its index in *at. */
static bool read_row(struct shelves *s, struct book *b, enum entry_kind kind,
	int64_t id, void *row, size_t *at, struct err *e)
{
	*at = family_find(kind, s, id);
	if (*at == SIZE_MAX)
		return gone(&entry_families[kind], e);
	if (kind == ENTRY_TRAPS && !known_read_hanging(&s->known, b, *at, e))
		return false;
	family_ops[kind]->row(s, *at, row);
	return true;
}

static void write_texts(struct entry *out, const void *row)
{
	const struct entry_family *f = &entry_families[out->kind];

	for (size_t i = 0; i < f->n_columns; i++)
		text_of_field(&f->columns[i], row, &out->manner, out->text[i]);
}

static bool read_old(
	struct entry *out, struct shelves *s, struct book *b, void *row, struct err *e)
{
	const struct family_ops *o = family_ops[out->kind];
	size_t at;

	if (!read_row(s, b, out->kind, out->id, row, &at, e) ||
		!read_stamp(b, out->kind, out->id, &out->stamp, e))
		return false;
	out->is_retired = o->retired && o->retired(s, at);
	o->name(row, out->name, sizeof out->name);
	return true;
}

static void guess_new(struct entry *out, const struct shelves *s,
	const struct entry_ask *ask, void *row)
{
	const struct entry_family *f = &entry_families[out->kind];

	row_clear(f, row);
	if (family_ops[out->kind]->guess)
		family_ops[out->kind]->guess(s, ask, row);
	snprintf(out->name, sizeof out->name, _("new %s"), _(f->one));
}

bool entry_read(struct entry *out, struct book *b, const struct entry_ask *ask,
	int64_t id, const struct log *l, struct err *e)
{
	void *row = mem_new(1, family_ops[ask->kind]->row_bytes);
	struct shelves s = { 0 };

	memset(out, 0, sizeof *out);
	out->kind = ask->kind;
	out->id = id;
	bool ok =
		manner_read(&out->manner, b, e) && shelves_read(&s, b, ask->kind, l, e);
	if (ok && id)
		ok = read_old(out, &s, b, row, e);
	else if (ok)
		guess_new(out, &s, ask, row);
	if (ok)
		write_texts(out, row);
	shelves_free(&s);
	free(row);
	return ok;
}

/* A form that hears what is wrong with it: the first thing is shown. */
struct listening {
	const struct entry *entry;
	struct entry_fault *fault;
	bool heard;
};

static int column_of(enum entry_kind kind, const char *name)
{
	const struct entry_family *f = &entry_families[kind];

	for (size_t i = 0; i < f->n_columns; i++)
		if (strcmp(f->columns[i].name, name) == 0)
			return (int)i;
	return -1;
}

static const char *value_of(void *arg, const char *column)
{
	const struct listening *l = arg;
	int i = column_of(l->entry->kind, column);

	return i < 0 ? "" : l->entry->text[i];
}

static void fault_set(struct entry_fault *fault, int field, const char *text)
{
	struct err said;

	err_set(&said, ERR_INPUT, "%s", text); /* without control characters */
	*fault = (struct entry_fault){ .field = field };
	text_copy(fault->text, sizeof fault->text, said.text);
}

static void add_doubt(struct putting *p, const char *text)
{
	const char *before = p->fault->text;
	struct buf all = { 0 };

	if (!p->fault->is_doubt) {
		buf_add(&all, text);
	} else if (strlen(before) + strlen(text) < DOUBT_BYTES) {
		buf_addf(&all, "%s; %s", before, text);
	} else {
		buf_addf(&all, _("%s; and more speaks against it"), before);
		p->doubts_full = true;
	}
	fault_set(p->fault, -1, all.text);
	p->fault->is_doubt = true;
	buf_free(&all);
}

bool putting_doubt(struct putting *p, const char *text)
{
	if (!p->sure && !p->doubts_full)
		add_doubt(p, text);
	return p->sure;
}

static void hear_bad(void *arg, const char *column, const char *what)
{
	struct listening *l = arg;
	char value[SHOWN_BYTES];
	struct buf text = { 0 };

	if (l->heard)
		return;
	l->heard = true;
	if (!text_copy(value, SHOWN_BYTES - 3, value_of(arg, column)))
		strcat(value, "...");
	buf_addf(&text, *value ? _("\"%s\" %s") : "%s%s", value, what);
	fault_set(l->fault, column_of(l->entry->kind, column), text.text);
	buf_free(&text);
}

/* Nobody reads warnings behind a form: what is likely not meant is refused. */
static void hear_warning(void *arg, const char *column, const char *what)
{
	struct listening *l = arg;

	if (!l->heard)
		fault_set(l->fault, column_of(l->entry->kind, column), what);
	l->heard = true;
}

static bool hear_has(void *arg, const char *column)
{
	(void)arg;
	(void)column;
	return true;
}

static struct hearing hearing_of(
	struct listening *l, int32_t today, const struct zone *zone)
{
	return (struct hearing){ .bad = hear_bad,
		.warn = hear_warning,
		.has = hear_has,
		.value = value_of,
		.arg = l,
		.today = today,
		.zone = zone,
		.clears = true };
}

bool entry_field_good(const struct entry *r, int field, struct entry_fault *fault)
{
	void *row = mem_new(1, family_ops[r->kind]->row_bytes);
	struct listening l = { .entry = r, .fault = fault };
	struct hearing h = hearing_of(&l, DAY_NONE, NULL);
	const struct entry_family *f = &entry_families[r->kind];
	bool good =
		field_of_text(&h, &f->columns[field], &r->manner, r->text[field], row);

	if (good && r->kind == ENTRY_SETTINGS) {
		struct setting_row *s = row;
		field_of_text(&h, &f->columns[0], &r->manner, r->text[0], row);
		good = setting_form_good(&h, s);
	}
	free(row);
	return good;
}

/* The same as text, blanks around it left out. */
static bool same_text(const char *a, const char *b)
{
	char one[ENTRY_TEXT], two[ENTRY_TEXT];

	text_copy(one, sizeof one, a);
	text_copy(two, sizeof two, b);
	text_trim(one);
	text_trim(two);
	return strcmp(one, two) == 0;
}

/* Reads what was touched over the record's row, so that the rest keeps what its text
 * cannot show. */
static bool read_texts(struct putting *p, const struct entry *r, void *row)
{
	char was[ENTRY_TEXT];

	for (size_t i = 0; i < p->family->n_columns; i++) {
		const struct column *c = &p->family->columns[i];
		text_of_field(c, row, &r->manner, was);
		p->touched[i] = !p->id || !same_text(was, r->text[i]);
		if (p->touched[i] &&
			!field_of_text(&p->hear, c, &r->manner, r->text[i], row))
			return false;
	}
	return true;
}

static bool any_touched(const struct putting *p)
{
	for (size_t i = 0; i < p->family->n_columns; i++)
		if (p->touched[i])
			return true;
	return false;
}

/* "changed by JR meanwhile" unless the stamp is that of the form. */
static bool still_ours(
	const struct entry *r, struct book *b, struct entry_fault *fault, struct err *e)
{
	struct row_stamp now;
	struct buf text = { 0 };

	if (!read_stamp(b, r->kind, r->id, &now, e))
		return false;
	if (strcmp(now.changed_at, r->stamp.changed_at) == 0 &&
		strcmp(now.changed_by, r->stamp.changed_by) == 0)
		return true;
	buf_addf(&text, _("%s was changed by %s meanwhile; nothing is overwritten"),
		r->name, *now.changed_by ? now.changed_by : _("somebody else"));
	fault_set(fault, -1, text.text);
	fault->is_elsewhere = true;
	buf_free(&text);
	return false;
}

/* Within the group. */
static bool put_row(struct putting *p, struct shelves *s, struct entry *r, void *row)
{
	const struct family_ops *o = family_ops[r->kind];

	row_clear(p->family, row);
	if (p->id && !read_row(s, p->book, r->kind, p->id, row, &p->at, p->e))
		return false;
	if (!read_texts(p, r, row))
		return false;
	if (any_touched(p) && !o->put(p, row))
		return false;
	r->id = p->id;
	o->name(row, r->name, sizeof r->name);
	return true;
}

static bool put_entry(struct entry *r, struct book *b, const struct log *l, int how,
	struct entry_fault *fault, struct err *e)
{
	void *row = mem_new(1, family_ops[r->kind]->row_bytes);
	struct listening hears = { .entry = r, .fault = fault };
	struct shelves s = { 0 };
	struct putting p = { .book = b,
		.shelves = &s,
		.hear = hearing_of(&hears, l->today, &l->zone),
		.id = r->id,
		.family = &entry_families[r->kind],
		.sure = (how & ENTRY_SURE) != 0,
		.fault = fault,
		.e = e };
	bool ok = ((how & ENTRY_OVER) || !r->id || still_ours(r, b, fault, e)) &&
		  shelves_read(&s, b, r->kind, l, e) && put_row(&p, &s, r, row) &&
		  read_stamp(b, r->kind, r->id, &r->stamp, e);

	shelves_free(&s);
	free(row);
	return ok;
}

bool entry_put(struct entry *r, struct book *b, const struct log *l, int how,
	struct entry_fault *fault)
{
	struct entry *done = mem_new(1, sizeof *done);
	struct err e = { 0 };

	*fault = (struct entry_fault){ .field = -1 };
	*done = *r;
	bool ok = book_begin(b, &e);
	if (ok && !put_entry(done, b, l, how, fault, &e)) {
		book_rollback(b);
		ok = false;
	} else if (ok) {
		ok = book_commit(b, &e);
	}
	if (ok)
		*r = *done;
	else if (e.kind != ERR_NONE)
		fault_set(fault, -1, e.text);
	free(done);
	return ok;
}
