/* deeds.h - a book with a row of everything, and one of each call that include/book has
 * for it. */
#ifndef TESTS_BOOK_DEEDS_H
#define TESTS_BOOK_DEEDS_H

#include "fixture.h"

#include "book/backups.h"
#include "book/matters.h"
#include "book/merge.h"
#include "book/sources.h"
#include "book/steps.h"
#include "book/uid.h"
#include "book/weather.h"

enum { DEED_DAY = 20000, FIRST = 1 };

struct deed {
	const char *name;
	/* On the open book, or on the one at d->path where it opens what it needs. */
	bool (*run)(struct desk *d, struct err *e);
	/* GROWS: from an older version to this one, which stays though what comes after
	 * it fails. */
	enum { LOOKS, CHANGES, OPENS, GROWS } kind;
	bool (*first)(struct desk *d, struct err *e); /* before it, or NULL */
};

static inline struct treatment deed_treatment(const struct desk *d)
{
	struct treatment t = treatment_blank;

	t.block = d->block;
	t.pest = d->pest;
	t.day = DEED_DAY;
	return t;
}

static inline void deed_fill_kinds(struct desk *d)
{
	struct station s = { .name = "Weir", .has_position = true, .lat = 1, .lon = 2 };
	struct weather_day w = { FIRST, DEED_DAY, 4, 20, 'C' };
	struct biofix_date b = {
		.farm = d->farm, .pest = d->pest, .season = 2024, .day = DEED_DAY
	};
	struct rule r = { .pest = d->pest,
		.measure = MEASURE_TRAP_WEEK,
		.span = 1,
		.value_x100 = 500 };
	struct source p = { .farm = d->farm, .name = "Bin pile" };
	struct source h = { .farm = d->farm, .name = "Hedge" };

	must(book_put_station(d->book, &s, e));
	must(book_save_weather(d->book, &w, e));
	must(book_put_biofix(d->book, &b, e));
	must(book_put_rule(d->book, &r, e));
	must(book_put_source(d->book, &p, e));
	must(book_put_source(d->book, &h, e));
	must(book_put_setting(d->book, "scout", "JR", e));
}

static inline void deed_fill_acts(struct desk *d)
{
	struct treatment t = deed_treatment(d);
	struct pick k = { .block = d->block, .day = DEED_DAY + 40 };
	struct fruit_check c = fruit_check_blank;
	struct disruption u = disruption_blank;
	struct answer a = { .block = d->block,
		.pest = d->pest,
		.trap = d->trap,
		.day = DEED_DAY + 7,
		.on = DEED_DAY + 8 };

	c.block = u.block = d->block;
	c.day = u.up = DEED_DAY;
	c.looked_at = 300;
	c.entered = 2;
	must(book_put_treatment(d->book, &t, e));
	must(book_put_pick(d->book, &k, e));
	must(book_put_fruit_check(d->book, &c, e));
	must(book_put_disruption(d->book, &u, e));
	must(book_put_answer(d->book, &a, e));
}

/* Beside the book, in the same folder. */
static inline void deed_path(
	const struct desk *d, const char *file, char out[static 128])
{
	snprintf(out, 128, "%s/%s", d->folder, file);
}

/* What the other book changes and takes out. */
static inline void deed_change_other(const struct desk *d, const char *path)
{
	struct visit v = counted(d->trap, DEED_DAY + 7, 5);
	struct source s = { .id = FIRST, .farm = d->farm, .name = "Bin heap" };
	struct trap t = {
		.farm = d->farm, .block = d->block, .pest = d->other_pest, .label = "9"
	};
	struct book *other;

	must(other = book_open(path, BOOK_EXISTING, "Ida", e));
	must(book_save_visit(other, &v, NULL, e));
	must(book_remove(other, "pick", FIRST, e));
	must(book_put_source(other, &s, e));
	must(book_put_trap(other, &t, e));
	book_close(other);
}

/* Another scout's book counts otherwise, has lost a pick that this one moved and kept a
 * source that this one took out, and has a trap of the same name: all that is merged
 * and left to be settled. Then that book goes on. */
static inline void deed_part(struct desk *d)
{
	struct visit v = counted(d->trap, DEED_DAY + 7, 6);
	struct pick k = { .id = FIRST, .block = d->block, .day = DEED_DAY + 41 };
	struct merge_report r = { 0 };
	struct book *other;
	char path[128];

	deed_path(d, "other.db", path);
	must(book_backup(d->book, path, e));
	deed_change_other(d, path);
	must(book_put_pick(d->book, &k, e));
	must(book_remove_source(d->book, FIRST, e));
	desk_add_trap(d, "9");
	must(book_save_visit(d->book, &v, NULL, e));
	must(book_merge(d->book, path, &r, e));
	book_merge_free(&r);
	v.day++;
	must(other = book_open(path, BOOK_EXISTING, "Ida", e));
	must(book_save_visit(other, &v, NULL, e));
	book_close(other);
}

/* A row of everything; the trap was hung and read once, and that was corrected. */
static inline void deed_fill(struct desk *d)
{
	struct visit hung = without_count(d->trap, DEED_DAY, OUTCOME_HUNG);
	struct visit v = counted(d->trap, DEED_DAY + 7, 3);
	struct visit_words w = { "JR", "half of the card was wet" };

	deed_fill_kinds(d);
	deed_fill_acts(d);
	desk_add_trap(d, "2");
	must(book_save_visit(d->book, &hung, NULL, e));
	must(book_save_visit(d->book, &v, &w, e));
	v.count = 4;
	must(book_save_visit(d->book, &v, NULL, e));
}

#endif
