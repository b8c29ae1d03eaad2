/* begun.h - books that are hardly begun, in a folder of their own. */
#ifndef TESTS_COMMAND_BEGUN_H
#define TESTS_COMMAND_BEGUN_H

#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/day.h"
#include "book/diary.h"
#include "book/places.h"
#include "program.h"

#define BEGUN_TODAY "2026-07-21"

/* How far the grower has come; each has all that the ones before it have. */
enum begun { EMPTY, FARM, BLOCK, TRAP, HUNG, SKIPPED, PULLED, BEGUN_COUNT };

static const char *const begun_names[BEGUN_COUNT] = {
	[EMPTY] = "empty.db",
	[FARM] = "farm.db",
	[BLOCK] = "block.db",
	[TRAP] = "trap.db",
	[HUNG] = "hung.db",
	[SKIPPED] = "skipped.db",
	[PULLED] = "pulled.db",
};

static inline int64_t pest_of(struct book *b, const char *code)
{
	struct pests all = { 0 };
	struct err e = { 0 };
	int64_t id = 0;

	if (book_pests(b, &all, &e))
		for (size_t i = 0; i < all.n; i++)
			id = strcmp(all.items[i].code, code) ? id : all.items[i].id;
	free(all.items);
	return id;
}

static inline bool begun_visit(
	struct book *b, int64_t trap, int day, enum outcome o, struct err *e)
{
	struct visit v = { .trap = trap,
		.day = day_from_ymd(2026, 7, day),
		.outcome = o,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE };

	return book_save_visit(b, &v, NULL, e);
}

static inline bool begin(struct book *b, enum begun upto, struct err *e)
{
	struct farm f = { .name = "Hather", .season_start = 101 };
	struct block k = { .name = "Weir", .area_x100 = -1 };
	struct trap t = { .label = "1", .pest = pest_of(b, "CM") };

	if (upto >= FARM && !book_put_farm(b, &f, e))
		return false;
	k.farm = t.farm = f.id;
	if (upto >= BLOCK && !book_put_block(b, &k, e))
		return false;
	t.block = k.id;
	return (upto < TRAP || book_put_trap(b, &t, e)) &&
	       (upto < HUNG || begun_visit(b, t.id, 1, OUTCOME_HUNG, e)) &&
	       (upto < SKIPPED || begun_visit(b, t.id, 8, OUTCOME_SKIPPED, e)) &&
	       (upto < PULLED || begun_visit(b, t.id, 15, OUTCOME_PULLED, e));
}

static inline int make_books_here(void)
{
	int failed = 0;

	for (int i = 0; failed == 0 && i < BEGUN_COUNT; i++) {
		struct err e = { 0 };
		struct book *b = book_open(begun_names[i], BOOK_CREATE, "JR", &e);
		failed = !b || !begin(b, (enum begun)i, &e);
		book_close(b);
		if (failed)
			fprintf(stderr, "%s: %s\n", begun_names[i], e.text);
	}
	return failed;
}

/* Group set-up. */
static inline int make_books(void **state)
{
	int failed = program_setup(state);

	return failed ? failed : make_books_here();
}

#endif
