/* published.c - the thresholds that come with the program, out of
 * share/thresholds.csv. */
#include "answers/trial.h"

#include "base/column.h"
#include "base/csv.h"
#include "base/mem.h"
#include "base/shipped.h"
#include "base/text.h"
#include "base/words.h"
#include "trial_parts.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A row of the file as it stands there. */
struct shipped_row {
	char pest[CODE_BYTES], crop[NAME_BYTES];
	int condition, place, from, to, measure, comparator;
	int32_t flight, until_dd, value_x100;
	struct span span;
	char note[NOTE_BYTES], source[SOURCE_BYTES];
};

static const char *word_of_condition(int i)
{
	return condition_word((enum condition)i);
}

static const char *word_of_place(int i)
{
	return place_word((enum place)i);
}

static const char *word_of_measure(int i)
{
	return measure_word((enum measure)i);
}

static const char *word_of_comparator(int i)
{
	return comparator_word((enum comparator)i);
}

#define COLUMN(field) .name = #field, .at = offsetof(struct shipped_row, field)

enum { FLIGHT_MAX = 9, UNTIL_MAX = 99999, VALUE_MAX_X100 = 99999999 };

static const struct column columns[] = {
	{ COLUMN(pest), .type = &value_text, .hi = CODE_BYTES },
	{ COLUMN(crop), .type = &value_text, .hi = NAME_BYTES },
	{ COLUMN(condition), .type = &value_word, .lo = 1, .hi = CONDITION_COUNT - 1,
		.word = word_of_condition },
	{ COLUMN(place), .type = &value_word, .lo = 1, .hi = PLACE_COUNT - 1,
		.word = word_of_place },
	{ COLUMN(flight), .type = &value_int, .lo = 1, .hi = FLIGHT_MAX },
	{ COLUMN(from), .type = &value_md },
	{ COLUMN(to), .type = &value_md },
	{ COLUMN(until_dd), .type = &value_int, .lo = 1, .hi = UNTIL_MAX },
	{ COLUMN(measure), .type = &value_word, .hi = MEASURE_COUNT - 1,
		.none = MEASURE_NONE, .word = word_of_measure },
	{ COLUMN(span), .type = &value_span, .lo = 1, .hi = NIGHTS_MAX },
	{ COLUMN(comparator), .type = &value_word, .hi = COMPARATOR_COUNT - 1,
		.word = word_of_comparator },
	{ .name = "value",
		.at = offsetof(struct shipped_row, value_x100),
		.type = &value_x100,
		.hi = VALUE_MAX_X100 },
	{ COLUMN(note), .type = &value_text, .hi = NOTE_BYTES },
	{ COLUMN(source), .type = &value_text, .hi = SOURCE_BYTES },
};

enum { COLUMNS = sizeof columns / sizeof *columns };

/* The column of each field of the file's rows; NULL: one for places of the grower's
 * own, which nothing published fills. */
struct header {
	const struct column *column[CSV_FIELDS_MAX];
};

static void read_header(const struct csv *c, struct header *h)
{
	for (size_t f = 0; f < c->n_fields; f++) {
		h->column[f] = NULL;
		for (size_t i = 0; i < COLUMNS; i++)
			if (strcmp(columns[i].name, c->field[f].text) == 0)
				h->column[f] = &columns[i];
	}
}

static bool read_row(const struct csv *c, const struct header *h,
	struct shipped_row *out, struct err *e)
{
	for (size_t f = 0; f < c->n_fields; f++) {
		const struct column *col = h->column[f];
		const char *text = c->field[f].text;
		void *field = col ? (char *)out + col->at : NULL;

		if (!col)
			continue;
		if (!*text)
			col->type->clear(col, field);
		else if (!col->type->read(col, text, field))
			return err_set(e, ERR_INPUT,
				_("%s, line %lld: the %s \"%s\" cannot be read"),
				c->name, (long long)c->line, col->name, text);
	}
	return true;
}

static int64_t pest_of(const struct log *l, const char *code)
{
	for (size_t i = 0; i < l->pests.n; i++)
		if (strcmp(l->pests.items[i].code, code) == 0)
			return l->pests.items[i].id;
	return 0;
}

static struct rule rule_of(const struct shipped_row *row, int64_t pest)
{
	struct rule r = { .pest = pest,
		.condition = (enum condition)row->condition,
		.place = (enum place)row->place,
		.flight = (int)row->flight,
		.from = row->from,
		.to = row->to,
		.until_dd = row->until_dd,
		.measure = (enum measure)row->measure };

	if (r.measure != MEASURE_NONE) {
		bool weeks = r.measure == MEASURE_TRAP_WEEK ||
			     r.measure == MEASURE_BLOCK_WEEK;
		r.span_kind = (enum span_kind)row->span.kind;
		r.span = row->span.n;
		r.comparator = (enum comparator)row->comparator;
		r.value_x100 = row->value_x100;
		if (weeks && r.span_kind == SPAN_NUMBER && r.span == 0)
			r.span = 1; /* an empty span is one week */
	}
	text_copy(r.crop, sizeof r.crop, row->crop);
	text_copy(r.note, sizeof r.note, row->note);
	text_copy(r.source, sizeof r.source, row->source);
	return r;
}

static void add_row(struct published_rows *out, const struct log *l,
	const struct shipped_row *row, int64_t pest)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	struct published_row *p = &out->items[out->n++];

	*p = (struct published_row){ .rule = rule_of(row, pest) };
	text_copy(p->pest, sizeof p->pest, row->pest);
	say_rule_short(&p->rule, p->brief);
	say_rule(&p->rule, p->rule_text, sizeof p->rule_text);
	say_where(l, &p->rule, p->where, sizeof p->where);
}

/* Whether one of the book's came from it. Which one changed is said when none is just
 * like it. */
static void compare(struct published_row *p, const struct log *l)
{
	for (size_t i = 0; i < l->rules.n; i++) {
		const struct rule *own = &l->rules.items[i];
		if (!*own->source || own->pest != p->rule.pest ||
			strcmp(own->source, p->rule.source) != 0)
			continue;
		if (rule_same(own, &p->rule)) {
			p->is_taken = true;
			p->own = own->id;
		} else
			p->changed = own->id;
	}
	if (p->is_taken)
		p->changed = 0;
}

static bool read_rows(struct csv *c, struct published_rows *out, const struct log *l,
	int64_t pest, struct err *e)
{
	struct header h = { { NULL } };
	enum csv_got got = csv_next(c, e);

	if (got == CSV_ROW)
		read_header(c, &h);
	while (got == CSV_ROW && (got = csv_next(c, e)) == CSV_ROW) {
		struct shipped_row row = { .measure = MEASURE_NONE };
		if (!read_row(c, &h, &row, e))
			return false;
		int64_t of = pest_of(l, row.pest);
		if (of != 0 && (pest == 0 || pest == of))
			add_row(out, l, &row, of);
	}
	return got == CSV_END;
}

bool published_read(
	struct published_rows *out, const struct log *l, int64_t pest, struct err *e)
{
	const struct shipped *file = shipped_find("thresholds.csv");
	FILE *f = file ? fmemopen((void *)(uintptr_t)file->text, file->n, "r") : NULL;
	struct csv c = { 0 };

	out->n = 0;
	if (!file)
		return err_set(e, ERR_NOT_FOUND,
			_("this program carries no published thresholds"));
	if (!f)
		return err_set(e, ERR_BOOK, _("%s: cannot be read: %s"), file->name,
			strerror(errno));
	csv_open(&c, f, file->name);
	bool ok = read_rows(&c, out, l, pest, e);
	csv_close(&c);
	fclose(f);
	for (size_t i = 0; ok && i < out->n; i++)
		compare(&out->items[i], l);
	return ok;
}

void published_free(struct published_rows *p)
{
	free(p->items);
	*p = (struct published_rows){ 0 };
}
