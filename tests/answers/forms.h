/* forms.h - forms filled in by the names of their columns. Include after cmocka. */
#ifndef TESTS_ANSWERS_FORMS_H
#define TESTS_ANSWERS_FORMS_H

#include "answers/entry_forms.h"
#include "base/mem.h"
#include "base/text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static inline int form_column(enum entry_kind kind, const char *name)
{
	const struct entry_family *f = &entry_families[kind];

	for (size_t i = 0; i < f->n_columns; i++)
		if (strcmp(f->columns[i].name, name) == 0)
			return (int)i;
	fail_msg("%s have no column %s", f->name, name);
	return -1;
}

static inline const char *form_text(const struct entry *r, const char *name)
{
	return r->text[form_column(r->kind, name)];
}

static inline void form_type(struct entry *r, const char *name, const char *text)
{
	text_copy(r->text[form_column(r->kind, name)], ENTRY_TEXT, text);
}

/* A form is large: freed by the caller. */
static inline struct entry *form_read(
	struct book *b, const struct log *l, const struct entry_ask *ask, int64_t id)
{
	struct entry *r = mem_new(1, sizeof *r);
	struct err e = { 0 };

	if (!entry_read(r, b, ask, id, l, &e))
		fail_msg("%s: %s", entry_families[ask->kind].name, e.text);
	return r;
}

static inline struct entry *form_new(
	struct book *b, const struct log *l, enum entry_kind kind)
{
	return form_read(b, l, &(struct entry_ask){ .kind = kind }, 0);
}

static inline struct entry *form_of(
	struct book *b, const struct log *l, enum entry_kind kind, int64_t id)
{
	return form_read(b, l, &(struct entry_ask){ .kind = kind }, id);
}

static inline void form_put(struct entry *r, struct book *b, const struct log *l)
{
	struct entry_fault fault;

	if (!entry_put(r, b, l, false, &fault))
		fail_msg("%s: field %d: %s", r->name, fault.field, fault.text);
}

static inline struct entry_list list_of(
	struct book *b, const struct log *l, const struct entry_ask *ask)
{
	struct entry_list list = { 0 };
	struct err e = { 0 };

	if (!entry_list_read(&list, b, ask, l, &e))
		fail_msg("%s", e.text);
	return list;
}

/* The choices of a field, one after the other. */
static inline void form_choices_are(const struct log *l, const struct entry *r,
	const char *column, const char *want, bool only)
{
	struct entry_choices c = { 0 };
	char got[2000] = "";

	entry_choices_of(r, form_column(r->kind, column), l, &c);
	for (size_t i = 0; i < c.n; i++)
		snprintf(got + strlen(got), sizeof got - strlen(got), "%s%s",
			i ? "|" : "", c.items[i].text);
	if (strcmp(got, want) != 0 || c.only != only)
		fail_msg("%s: %s", column, got);
	entry_choices_free(&c);
}

#endif
