#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

struct biofix_row {
	char farm[NAME_BYTES], pest[CODE_BYTES];
	int32_t season, day;
	char rule[SOURCE_BYTES];
};

struct biofix_state {
	struct biofix_dates there;
	size_t n_before; /* those that the book had; the rest came from this file */
	bool *told;      /* by index below n_before: this file has it too */
	struct farms farms;
	struct names farm_names; /* index in farms */
	struct names pests;      /* id */
};

#define AT(field) .at = offsetof(struct biofix_row, field)

static const struct column columns[] = {
	{ .name = "farm",
		AT(farm),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the farm; the book must have it.") },
	{ .name = "pest",
		AT(pest),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("Code of the pest; the book must have it.") },
	{ .name = "season",
		AT(season),
		.type = &value_int,
		.lo = DAY_YEAR_MIN,
		.hi = DAY_YEAR_MAX,
		.help = N_(
			"Year that the season began in; empty: the one that the date "
			"falls in.") },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The biofix: the day that degree-days are counted from.") },
	{ .name = "rule",
		AT(rule),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.help = N_("The rule behind it, or own words; empty: set by hand.") },
};

static bool biofix_begin(struct taking *t, struct err *e)
{
	struct biofix_state *s = t->state = mem_new(1, sizeof *s);
	bool ok = book_biofixes(t->book, &s->there, e) &&
		  book_farms(t->book, &s->farms, e) &&
		  names_of_pests(t->book, &s->pests, e);

	s->n_before = s->there.n;
	s->told = mem_new(s->n_before + 1, sizeof *s->told);
	for (size_t i = 0; ok && i < s->farms.n; i++)
		names_add(&s->farm_names, 0, s->farms.items[i].name, (int64_t)i);
	return ok;
}

static void biofix_end(struct taking *t)
{
	struct biofix_state *s = t->state;

	free(s->there.items);
	free(s->told);
	free(s->farms.items);
	names_free(&s->farm_names);
	names_free(&s->pests);
	free(s);
}

static void biofix_look(struct taking *t, const void *row)
{
	const struct biofix_row *r = row;
	const struct biofix_state *s = t->state;
	int64_t id;

	taking_find(t, &s->farm_names, "farm", r->farm, &id);
	taking_find(t, &s->pests, "pest", r->pest, &id);
}

/* What the row says; false: it says something wrong. */
static bool read_row(
	struct taking *t, const struct biofix_row *r, struct biofix_date *d)
{
	const struct biofix_state *s = t->state;
	char today[DAY_ISO_SIZE];
	int64_t farm;

	if (r->day > t->from->today) {
		day_iso(t->from->today, today);
		return !taking_bad(t, "date", _("lies after today, %s"), today);
	}
	if (!taking_find(t, &s->farm_names, "farm", r->farm, &farm) ||
		!taking_find(t, &s->pests, "pest", r->pest, &d->pest))
		return false;
	const struct farm *f = &s->farms.items[farm];
	int year = day_to_ymd(r->day).year;
	d->farm = f->id;
	d->day = r->day;
	d->season = r->season;
	if (r->season == 0)
		d->season = day_to_ymd(day_season_start(r->day, f->season_start)).year;
	else if (year != r->season && year != r->season + 1)
		return !taking_bad(t, "season",
			_("began in another year than the date's or the one before "
			  "it; its date is %s"),
			taking_value(t, "date"));
	return true;
}

/* Index of the same farm, pest and season; n: none. */
static size_t find_biofix(const struct biofix_state *s, const struct biofix_date *d)
{
	size_t i = 0;

	while (i < s->there.n && (s->there.items[i].farm != d->farm ||
					 s->there.items[i].pest != d->pest ||
					 s->there.items[i].season != d->season))
		i++;
	return i;
}

static bool biofix_take(struct taking *t, const void *row, struct err *e)
{
	const struct biofix_row *r = row;
	struct biofix_state *s = t->state;
	struct biofix_date d = { 0 };

	if (!read_row(t, r, &d))
		return true;
	size_t i = find_biofix(s, &d);
	bool there = i < s->there.n;
	if (there && (i >= s->n_before || s->told[i]))
		return taking_bad(t, "date",
			_("is a second biofix of %s on %s in the season of %d; there "
			  "is one"),
			r->pest, r->farm, d.season);
	if (there)
		s->told[i] = true;
	text_copy(d.rule, sizeof d.rule,
		there && !taking_has(t, "rule") ? s->there.items[i].rule : r->rule);
	if (there && d.day == s->there.items[i].day &&
		strcmp(d.rule, s->there.items[i].rule) == 0) {
		taking_count(t, TOOK_SAME);
		return true;
	}
	if (!book_put_biofix(t->book, &d, e))
		return false;
	taking_count(t, there ? TOOK_CHANGED : TOOK_NEW);
	if (there)
		return true;
	s->there.items = mem_grow(
		s->there.items, &s->there.cap, s->there.n + 1, sizeof *s->there.items);
	s->there.items[s->there.n++] = d;
	return true;
}

static bool biofix_give(struct giving *g, struct err *e)
{
	struct biofix_dates all = { 0 };
	struct known known = { 0 };
	bool ok = book_biofixes(g->book, &all, e) && known_read(&known, g->book, e);

	for (size_t i = 0; ok && i < all.n; i++) {
		const struct biofix_date *d = &all.items[i];
		struct biofix_row r = { .season = d->season, .day = d->day };
		text_copy(r.farm, sizeof r.farm, known_farm(&known, d->farm));
		text_copy(r.pest, sizeof r.pest, known_pest(&known, d->pest));
		text_copy(r.rule, sizeof r.rule, d->rule);
		ok = giving_row(g, &r);
	}
	free(all.items);
	known_free(&known);
	return ok;
}

const struct kind kind_biofix = {
	.name = "biofix",
	.help = N_("biofix dates by farm, pest and season"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct biofix_row),
	.begin = biofix_begin,
	.take = biofix_take,
	.look = biofix_look,
	.end = biofix_end,
	.give = biofix_give,
};
