#include "base/text.h"
#include "base/words.h"
#include "book/weather.h"
#include "exchange/ghcn.h"

#include <stdlib.h>
#include <string.h>

/* The station of that name, made if the book lacks it. */
static bool find_station(struct book *b, const char *name, int64_t *id, struct err *e)
{
	struct station made = { 0 };
	struct stations all = { 0 };
	bool ok = book_stations(b, &all, e);

	*id = 0;
	for (size_t i = 0; ok && i < all.n; i++)
		if (strcmp(all.items[i].name, name) == 0)
			*id = all.items[i].id;
	free(all.items);
	if (!ok || *id)
		return ok;
	text_copy(made.name, sizeof made.name, name);
	ok = book_put_station(b, &made, e);
	*id = made.id;
	return ok;
}

static void note_problem(struct imported *out, const char *text)
{
	if (out->n_problems++ < PROBLEMS_MAX)
		sentences_add(&out->problems, text);
}

/* False only if the book fails; a day that is there otherwise is a problem noted. */
static bool take_day(struct book *b, const struct ghcn_day *d, int64_t station,
	struct imported *out, struct err *e)
{
	const struct weather_day w = { .station = station,
		.day = d->day,
		.min = d->min,
		.max = d->max,
		.unit = 'C' };
	struct err why = { 0 };
	bool same = false;

	if (book_add_weather(b, &w, &same, &why)) {
		out->n_new += !same;
		out->n_same += same;
		return true;
	}
	if (why.kind == ERR_BOOK)
		return err_set(e, ERR_BOOK, "%s", why.text);
	note_problem(out, why.text);
	return true;
}

static bool take_days(
	struct book *b, const struct ghcn *g, struct imported *out, struct err *e)
{
	const char *name = "";
	int64_t station = 0;

	for (size_t i = 0; i < g->n; i++) {
		const struct ghcn_day *d = &g->items[i];
		if (strcmp(name, d->station) != 0 &&
			!find_station(b, d->station, &station, e))
			return false;
		name = d->station;
		if (!take_day(b, d, station, out, e))
			return false;
	}
	return true;
}

static bool all_right(
	const struct ghcn_from *from, const struct imported *out, struct err *e)
{
	return !out->n_problems ||
	       err_set(e, ERR_INPUT,
		       _("%s: days that differ from the book's: %lld, so nothing was "
			 "taken in; the book is as it was"),
		       from->name, (long long)out->n_problems);
}

static bool take_all(struct book *b, const struct ghcn_from *from, const struct ghcn *g,
	struct imported *out, struct err *e)
{
	if (!book_begin(b, e))
		return false;
	if (!take_days(b, g, out, e) || !all_right(from, out, e)) {
		book_rollback(b);
		return false;
	}
	return book_commit(b, e);
}

bool ghcn_import(struct book *b,
	bool (*read)(const struct ghcn_from *from, struct ghcn *out, struct err *e),
	const struct ghcn_from *from, struct imported *out, struct err *e)
{
	struct ghcn g = { 0 };
	bool ok = read(from, &g, e);

	for (size_t i = 0; i < g.problems.n; i++)
		sentences_add(&out->problems, g.problems.items[i]);
	out->n_problems = g.n_problems;
	if (ok)
		ghcn_notes(&g, &out->notes);
	ok = ok && take_all(b, from, &g, out, e);
	ghcn_free(&g);
	return ok;
}
