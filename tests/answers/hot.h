/* An orchard of twelve traps in four blocks for the tests of Hot spots. Its counts were
 * worked through with R 4.2.2 (tests/reference/orch12.csv has them as they are). */
#ifndef TESTS_ANSWERS_HOT_H
#define TESTS_ANSWERS_HOT_H

#include "fixture.h"

#include "answers/hotspots.h"
#include "book/sources.h"

#include <math.h>

struct hot_spec {
	const char *label, *block;
	double lat, lon; /* NAN: no position */
	enum place place;
	int count, nights;
};

enum { ORCHARD_TRAPS = 12 };
static const struct hot_spec orchard[ORCHARD_TRAPS] = {
	{ "1", "Ash", 46.1002, -35.5010, PLACE_BORDER, 41, 84 },
	{ "2", "Ash", 46.1010, -35.5008, PLACE_BORDER, 29, 84 },
	{ "3", "Ash", 46.0996, -35.4996, PLACE_INTERIOR, 22, 77 },
	{ "4", "Birch", 46.1014, -35.4988, PLACE_INTERIOR, 12, 84 },
	{ "5", "Birch", 46.1004, -35.4980, PLACE_INTERIOR, 17, 84 },
	{ "6", "Birch", 46.0994, -35.4974, PLACE_BORDER, 6, 70 },
	{ "7", "Cedar", 46.1016, -35.4964, PLACE_BORDER, 9, 84 },
	{ "8", "Cedar", 46.1006, -35.4958, PLACE_INTERIOR, 3, 84 },
	{ "9", "Cedar", 46.0996, -35.4952, PLACE_BORDER, 7, 84 },
	{ "10", "Dale", 46.1018, -35.4940, PLACE_BORDER, 2, 77 },
	{ "11", "Dale", 46.1008, -35.4934, PLACE_INTERIOR, 4, 84 },
	{ "12", "Dale", 46.0998, -35.4928, PLACE_BORDER, 1, 84 },
};

static inline int64_t hot_block(struct fixture *f, const char *name)
{
	struct blocks blocks = { 0 };
	struct err e = { 0 };
	int64_t id = 0;

	must(book_blocks(f->book, f->farm.id, &blocks, &e), &e);
	for (size_t i = 0; i < blocks.n; i++)
		if (strcmp(blocks.items[i].name, name) == 0)
			id = blocks.items[i].id;
	free(blocks.items);
	if (id)
		return id;
	struct block b = { .farm = f->farm.id,
		.crop = "apple",
		.condition = CONDITION_CONVENTIONAL,
		.area_x100 = -1 };
	text_copy(b.name, sizeof b.name, name);
	must(book_put_block(f->book, &b, &e), &e);
	return b.id;
}

static inline void hot_hang(struct fixture *f, int64_t trap, const char *iso)
{
	struct visit v = fixture_counted(trap, iso, COUNT_NONE);

	v.outcome = OUTCOME_HUNG;
	v.new_lure = f->lure.id;
	v.new_card = f->card.id;
	fixture_save(f, v);
}

/* A trap of the spec, hung on `hung` (NULL: never) and counted once. */
static inline int64_t hot_trap(
	struct fixture *f, const struct hot_spec *spec, const char *hung)
{
	struct err e = { 0 };
	char iso[DAY_ISO_SIZE];
	struct trap t = { .farm = f->farm.id,
		.block = hot_block(f, spec->block),
		.pest = f->cm.id,
		.lure = f->lure.id,
		.card = f->card.id,
		.place = spec->place,
		.has_position = !isnan(spec->lat) };

	t.lat = t.has_position ? spec->lat : 0;
	t.lon = t.has_position ? spec->lon : 0;
	text_copy(t.label, sizeof t.label, spec->label);
	must(book_put_trap(f->book, &t, &e), &e);
	if (!hung)
		return t.id;
	hot_hang(f, t.id, hung);
	day_iso(day_of(hung) + spec->nights, iso);
	fixture_count(f, t.id, iso, spec->count);
	return t.id;
}

static inline void hot_traps(
	struct fixture *f, const struct hot_spec *specs, size_t n, const char *hung)
{
	for (size_t i = 0; i < n; i++)
		hot_trap(f, &specs[i], hung);
}

static inline void is_sound(const char *text)
{
	if (strstr(text, "nan") || strstr(text, "inf") || strstr(text, "(null)") ||
		strstr(text, "e+"))
		fail_msg("no such number is fit to be read: \"%s\"", text);
}

/* No text of the page holds what is no number. */
static inline void hot_is_sound(const struct hot_view *v)
{
	for (size_t i = 0; i < v->n; i++) {
		is_sound(v->rows[i].says);
		is_sound(v->rows[i].numbers);
		is_sound(v->rows[i].power);
	}
	for (size_t i = 0; i < v->n_sources; i++) {
		is_sound(v->sources[i].says);
		is_sound(v->sources[i].numbers);
	}
	for (size_t i = 0; i < v->n_traps; i++)
		is_sound(v->traps[i].text);
	is_sound(v->says);
	is_sound(v->clumping);
}

static inline void hot_see(struct fixture *f, struct hot_view *v, struct hot_ask ask)
{
	struct err e = { 0 };

	ask.farm = f->farm.id;
	ask.pest = f->cm.id;
	fixture_read(f, "2026-08-12");
	must(hotspots_read(v, f->book, &f->log, &ask, &e), &e);
	hot_is_sound(v);
}

static inline const struct hot_row *hot_row_named(
	const struct hot_view *v, const char *name)
{
	for (size_t i = 0; i < v->n; i++)
		if (strcmp(v->rows[i].name, name) == 0)
			return &v->rows[i];
	fail_msg("there is no row \"%s\"", name);
	return v->rows;
}

static inline void has_text(const char *text, const char *part)
{
	if (!strstr(text, part))
		fail_msg("\"%s\" is not in \"%s\"", part, text);
}

static inline void near_to(double got, double want)
{
	if (!(fabs(got - want) <= 1e-9 * fabs(want)))
		fail_msg("%.17g, not %.17g", got, want);
}

#endif
