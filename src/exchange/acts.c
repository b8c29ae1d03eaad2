/* Rows of records that have no name. */
#include "acts_parts.h"

#include "answers/say.h"
#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

static void warn(void *arg, const char *sentence)
{
	taking_warn(arg, "%s", sentence);
}

void acts_warn_picks(struct taking *t, struct doubts *d)
{
	const struct acts_state *s = t->state;
	int64_t before = t->out->n_warnings;

	d->known = &s->known;
	d->zone = t->from->zone;
	picks_doubted(d, warn, t);
	if (t->out->n_warnings > before)
		sentences_add(&t->out->notes, say_caution_acts());
}

static void *record_at(const struct acts_state *s, size_t i)
{
	return s->records + i * s->way->record_bytes;
}

static const char *row_at(const struct acts_state *s, size_t i)
{
	return s->rows + i * s->way->kind->row_bytes;
}

bool acts_begin(struct taking *t, const struct act_way *way, struct err *e)
{
	struct acts_state *s = t->state = mem_new(1, sizeof *s);
	void *records = NULL;

	s->way = way;
	bool ok = known_read(&s->known, t->book, e) &&
		  way->read(t->book, &records, &s->n, e);
	s->n = ok ? s->n : 0;
	s->records = records;
	s->cap = s->n_before = s->n;
	s->touched_cap = s->n + 1;
	s->touched = mem_new(s->touched_cap, sizeof *s->touched);
	s->rows = mem_new(s->n + 1, way->kind->row_bytes);
	for (size_t i = 0; i < s->n; i++)
		way->row(
			&s->known, record_at(s, i), s->rows + i * way->kind->row_bytes);
	return ok;
}

void acts_end(struct taking *t)
{
	struct acts_state *s = t->state;

	known_free(&s->known);
	free(s->records);
	free(s->rows);
	free(s->touched);
	free(s->next_alike);
	names_free(&s->first_alike);
	free(s);
}

static bool same_value(const struct column *c, const char *a, const char *b)
{
	char one[VALUE_BYTES], two[VALUE_BYTES];

	return strcmp(c->type->write(c, a + c->at, one),
		       c->type->write(c, b + c->at, two)) == 0;
}

static bool is_key(const struct act_way *way, const struct column *c)
{
	for (const char *const *k = way->keys; *k; k++)
		if (strcmp(*k, c->name) == 0)
			return true;
	return false;
}

static bool same_row(const struct kind *kind, const char *a, const char *b)
{
	for (size_t i = 0; i < kind->n_columns; i++)
		if (!same_value(&kind->columns[i], a, b))
			return false;
	return true;
}

/* The values of the key columns that the file has, each behind its length: two rows are
 * about the same if these are. */
static void write_key(const struct taking *t, const char *row, struct buf *out)
{
	const struct acts_state *s = t->state;
	char value[VALUE_BYTES];

	buf_clear(out);
	buf_add(out, "");
	for (size_t i = 0; i < t->kind->n_columns; i++) {
		const struct column *c = &t->kind->columns[i];
		if (!is_key(s->way, c) || !taking_has(t, c->name))
			continue;
		const char *text = c->type->write(c, row + c->at, value);
		buf_addf(out, "%zu:%s", strlen(text), text);
	}
}

/* Chains the book's records of one key, in their order: a book may have thousands, and
 * so may the file. */
static void chain_alike(struct taking *t)
{
	struct acts_state *s = t->state;
	size_t *last = mem_new(s->n_before + 1, sizeof *last);
	struct buf key = { 0 };

	s->next_alike = mem_new(s->n_before + 1, sizeof *s->next_alike);
	for (size_t i = 0; i < s->n_before; i++) {
		s->next_alike[i] = SIZE_MAX;
		write_key(t, row_at(s, i), &key);
		int64_t first = names_find(&s->first_alike, 0, key.text);
		if (first < 0) {
			first = (int64_t)i;
			names_add(&s->first_alike, 0, key.text, first);
		} else {
			s->next_alike[last[first]] = i;
		}
		last[first] = i;
	}
	buf_free(&key);
	free(last);
}

/* The first record with the row's key; SIZE_MAX: none. */
static size_t find_alike(struct taking *t, const char *row)
{
	struct acts_state *s = t->state;
	struct buf key = { 0 };

	if (!s->next_alike)
		chain_alike(t);
	write_key(t, row, &key);
	int64_t first = names_find(&s->first_alike, 0, key.text);
	buf_free(&key);
	return first < 0 ? SIZE_MAX : (size_t)first;
}

/* The record i as the row leaves it; true: just as it was. Its faults were heard when
 * the row was read over a blank record, or are of what the file lacks. */
static bool left_alone(struct taking *t, size_t i, const void *row, char *record)
{
	struct acts_state *s = t->state;
	char *after = mem_new(1, t->kind->row_bytes);

	memcpy(record, record_at(s, i), s->way->record_bytes);
	bool same = s->way->over(&t->hear, &s->known, row, record);
	s->way->row(&s->known, record, after);
	same = same && same_row(t->kind, after, row_at(s, i));
	free(after);
	return same;
}

/* Index of the record that the row is about, and how it leaves it; n: a new one. */
static size_t find_record(struct taking *t, const void *row, const char *made_row,
	char *record, bool *same)
{
	const struct acts_state *s = t->state;
	size_t first = s->n;

	*same = false;
	for (size_t i = find_alike(t, made_row); i != SIZE_MAX; i = s->next_alike[i]) {
		if (s->touched[i])
			continue;
		int64_t bad = t->out->n_problems;
		*same = left_alone(t, i, row, record);
		if (*same || t->out->n_problems != bad)
			return i;
		first = first == s->n ? i : first;
	}
	if (first < s->n)
		left_alone(t, first, row, record);
	return first;
}

static void keep(struct acts_state *s, size_t i, const char *record)
{
	if (i == s->n) {
		s->records =
			mem_grow(s->records, &s->cap, s->n + 1, s->way->record_bytes);
		s->touched = mem_grow(
			s->touched, &s->touched_cap, s->n + 1, sizeof *s->touched);
		s->n++;
	}
	memcpy(record_at(s, i), record, s->way->record_bytes);
	s->touched[i] = true;
}

/* `record` is the row over a blank one. */
static bool take_record(struct taking *t, const void *row, char *record, struct err *e)
{
	struct acts_state *s = t->state;
	int64_t bad = t->out->n_problems;
	char *made_row = mem_new(1, t->kind->row_bytes);
	char *found = mem_new(1, s->way->record_bytes);
	bool same;

	s->way->row(&s->known, record, made_row);
	size_t i = find_record(t, row, made_row, found, &same);
	if (i < s->n)
		memcpy(record, found, s->way->record_bytes);
	free(made_row);
	free(found);
	if (t->out->n_problems != bad)
		return true;
	if (!same && !s->way->put(t->book, record, e))
		return false;
	taking_count(t, same ? TOOK_SAME : i < s->n ? TOOK_CHANGED : TOOK_NEW);
	keep(s, i, record);
	return true;
}

bool acts_take(struct taking *t, const void *row, struct err *e)
{
	struct acts_state *s = t->state;
	char *record = mem_new(1, s->way->record_bytes);

	memcpy(record, s->way->blank, s->way->record_bytes);
	bool ok = !s->way->over(&t->hear, &s->known, row, record) ||
		  take_record(t, row, record, e);
	free(record);
	return ok;
}

static bool give_block(
	struct giving *g, const struct acts_state *s, int64_t block, char *row)
{
	bool ok = true;

	for (size_t i = 0; ok && i < s->n; i++) {
		if (s->way->block(record_at(s, i)) != block)
			continue;
		memset(row, 0, g->kind->row_bytes);
		s->way->row(&s->known, record_at(s, i), row);
		ok = giving_row(g, row);
	}
	return ok;
}

bool acts_give(struct giving *g, const struct act_way *way, struct err *e)
{
	struct acts_state s = { .way = way };
	void *records = NULL;
	char *row = mem_new(1, g->kind->row_bytes);
	bool ok = known_read(&s.known, g->book, e) &&
		  way->read(g->book, &records, &s.n, e);

	s.records = records;
	for (size_t f = 0; ok && f < s.known.farms.n; f++)
		for (size_t i = 0; ok && i < s.known.blocks.n; i++)
			if (s.known.blocks.items[i].farm == s.known.farms.items[f].id)
				ok = give_block(g, &s, s.known.blocks.items[i].id, row);
	known_free(&s.known);
	free(records);
	free(row);
	return ok;
}
