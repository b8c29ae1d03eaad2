#include "exchange/series.h"

#include "base/mem.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdlib.h>
#include <string.h>

enum { WINDOW_DAYS = 120 }; /* read at a time */

struct series_day *series_at(struct series *s, int32_t day)
{
	size_t from = 0, to = s->n;

	if (s->n && s->items[s->n - 1].day < day)
		from = s->n;
	while (from < to) {
		size_t middle = from + (to - from) / 2;
		if (s->items[middle].day < day)
			from = middle + 1;
		else
			to = middle;
	}
	if (from < s->n && s->items[from].day == day)
		return &s->items[from];
	s->items = mem_grow(s->items, &s->cap, s->n + 1, sizeof *s->items);
	memmove(s->items + from + 1, s->items + from, (s->n - from) * sizeof *s->items);
	s->items[from] = (struct series_day){ .day = day };
	s->n++;
	return &s->items[from];
}

/* Where each trap's series stands, by id. */
static struct series **by_id(struct series *all, size_t n, size_t *size)
{
	int64_t most = 0;

	for (size_t i = 0; i < n; i++)
		most = all[i].trap > most ? all[i].trap : most;
	*size = (size_t)most + 1;
	struct series **at = mem_new(*size, sizeof(struct series *));
	for (size_t i = 0; i < n; i++)
		at[all[i].trap] = &all[i];
	return at;
}

/* Visits come by trap and day within a window. */
static void take_window(const struct visits *v, struct series **at, size_t size)
{
	for (size_t i = 0; i < v->n; i++) {
		const struct visit *in = &v->items[i];
		if (in->trap < 0 || (size_t)in->trap >= size || !at[in->trap])
			continue;
		struct series_day *d = series_at(at[in->trap], in->day);
		d->outcome = (uint32_t)in->outcome & 7;
		d->in_book = 1;
	}
}

bool series_read(struct book *b, struct series *all, size_t n, struct err *e)
{
	int32_t last, day = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	struct visits window = { 0 };
	size_t got, size;

	if (!book_visit_days(
		    b, 0, day_from_ymd(DAY_YEAR_MAX, 12, 31), &last, 1, &got, e))
		return false;
	if (!got || !n)
		return true;
	struct series **at = by_id(all, n, &size);
	bool ok = true;
	for (; ok && day <= last; day += WINDOW_DAYS) {
		ok = book_visits(b, 0, day, day + WINDOW_DAYS - 1, &window, e);
		if (ok)
			take_window(&window, at, size);
	}
	free(window.items);
	free(at);
	return ok;
}

/* Visits that cannot be: `at`, since the trap does not hang after `after`. */
struct fault {
	const struct series *series;
	const struct series_day *at;
	const struct series_day *after; /* pulled or missing; NULL: never hung before */
	uint32_t line;                  /* that brings it about */
};

struct faults {
	struct fault *items;
	size_t n, cap;
};

static bool brought(const struct series_day *d)
{
	return d && d->line && !d->in_book;
}

static void add_fault(struct faults *f, struct fault found)
{
	bool at = brought(found.at);

	if (!at && !brought(found.after))
		return; /* the book held it before; this file has no part in it */
	found.line = at ? found.at->line : found.after->line;
	f->items = mem_grow(f->items, &f->cap, f->n + 1, sizeof *f->items);
	f->items[f->n++] = found;
}

static void warn_hung(struct taking *t, const struct series *s,
	const struct series_day *since, const struct series_day *again)
{
	char from[DAY_ISO_SIZE], day[DAY_ISO_SIZE];
	const struct series_day *said = brought(again) ? again : since;

	if (!brought(said))
		return;
	day_iso(since->day, from);
	day_iso(again->day, day);
	taking_warn(t,
		_("%s, line %lu: trap %s of %s hangs already since %s; hung again on "
		  "%s, what it caught since its last visit is not known"),
		t->from->name, (unsigned long)said->line, s->label, s->farm, from, day);
}

static bool is_touched(const struct series *s)
{
	for (size_t i = 0; i < s->n; i++)
		if (brought(&s->items[i]))
			return true;
	return false;
}

/* One complaint for each stretch in which the trap does not hang. */
static void walk(struct taking *t, const struct series *s, struct faults *f)
{
	const struct series_day *hung = NULL, *after = NULL;
	bool told = false;

	for (size_t i = 0; i < s->n; i++) {
		const struct series_day *d = &s->items[i];
		if (d->outcome == OUTCOME_HUNG) {
			if (hung)
				warn_hung(t, s, hung, d);
			hung = d;
			told = false;
			continue;
		}
		size_t n = f->n;
		if (!hung && !told)
			add_fault(f, (struct fault){ s, d, after, 0 });
		told = told || f->n > n;
		if (hung && (d->outcome == OUTCOME_PULLED ||
				    d->outcome == OUTCOME_MISSING)) {
			after = d;
			hung = NULL;
		}
	}
}

static int by_line(const void *a, const void *b)
{
	const struct fault *f = a, *g = b;

	return (f->line > g->line) - (f->line < g->line);
}

static void complain(struct taking *t, const struct fault *f)
{
	const char *label = f->series->label, *farm = f->series->farm;
	const char *found = outcome_word((enum outcome)f->at->outcome);
	const char *where = brought(f->at) ? "" : _(", in the book");
	char day[DAY_ISO_SIZE], gone[DAY_ISO_SIZE];
	struct buf what = { 0 };

	day_iso(f->at->day, day);
	day_iso(f->after ? f->after->day : DAY_NONE, gone);
	if (!f->after)
		buf_addf(&what,
			_("trap %s of %s does not hang on %s (%s%s): no earlier row or "
			  "visit says hung; add the row that hung it, or put the date "
			  "right"),
			label, farm, day, found, where);
	else
		buf_addf(&what,
			_("trap %s of %s does not hang on %s (%s%s): it is %s on %s; add "
			  "a row that hung it again between, or put the date right"),
			label, farm, day, found, where,
			outcome_word((enum outcome)f->after->outcome), gone);
	taking_bad_row(t, f->line, what.text);
	buf_free(&what);
}

void series_check(struct taking *t, const struct series *all, size_t n)
{
	struct faults faults = { 0 };

	for (size_t i = 0; i < n; i++)
		if (is_touched(&all[i]))
			walk(t, &all[i], &faults);
	if (faults.n)
		qsort(faults.items, faults.n, sizeof *faults.items, by_line);
	for (size_t i = 0; i < faults.n; i++)
		complain(t, &faults.items[i]);
	free(faults.items);
}

void series_free(struct series *all, size_t n)
{
	for (size_t i = 0; i < n; i++)
		free(all[i].items);
	free(all);
}
