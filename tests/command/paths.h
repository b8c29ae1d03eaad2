/* paths.h - a book with a block that is barred for a year, and what a way must say of
 * it, for the tests of all ways by which that could pass unsaid. */
#ifndef TESTS_COMMAND_PATHS_H
#define TESTS_COMMAND_PATHS_H

#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "book/acts.h"
#include "program.h"

#define TODAY "2026-07-21"

static inline int32_t day_of(const char *iso)
{
	int32_t day = DAY_NONE;

	assert_true(day_parse(iso, &day));
	return day;
}

static inline void must(bool ok, const struct err *e)
{
	if (!ok)
		fail_msg("%s", e->text);
}

/* Quarry Rows: barred for a year from yesterday on, picks from 3 August on. */
static inline void put_acts(struct book *b)
{
	const struct zone utc = { .n = 0 };
	struct treatment t = treatment_blank;
	struct pick p = pick_blank;
	struct err e = { 0 };

	t.block = p.block = 1;
	t.day = day_of("2026-07-20");
	t.until = zone_local(&utc, t.day, 630);
	t.rei_hours = 8784;
	t.phi_days = 14;
	text_copy(t.product, sizeof t.product, "Brackwater oil");
	p.day = day_of("2026-08-02");
	must(book_put_treatment(b, &t, &e), &e);
	must(book_put_pick(b, &p, &e), &e);
}

static inline struct book *open_book(void)
{
	struct err e = { 0 };
	struct book *b = book_open("b.db", BOOK_CREATE, "T", &e);

	must(b != NULL, &e);
	return b;
}

static inline int fill_book(void **state)
{
	struct ran r = { 0 };
	int failed = program_setup(state);

	program_write("traps.csv",
		"farm,block,trap,pest,lure,card,condition,crop,hung\n"
		"Quillet Farm,Quarry Rows,1,CM,CM standard,delta liner,conventional,"
		"apple,2026-06-01\n");
	program_run(&r, "--book b.db --today " TODAY " import traps traps.csv");
	failed |= r.status;
	struct book *b = open_book();
	put_acts(b);
	book_close(b);
	program_run(&r, "--book b.db --today " TODAY " backup kept.db");
	failed |= r.status;
	program_forget(&r);
	return failed;
}

/* What a way shows or takes, and what it must say; without either: why it need not. */
struct way {
	const char *name, *with, *says[2], *why;
};

static inline const struct way *way_find(
	const struct way *all, size_t n, const char *name)
{
	for (size_t i = 0; i < n; i++)
		if (strcmp(all[i].name, name) == 0)
			return &all[i];
	return NULL;
}
#define WAY(table, name) way_find(table, sizeof table / sizeof *(table), name)

static inline void says_all(const struct way *w, const char *text)
{
	for (size_t i = 0; i < 2 && w->says[i]; i++)
		if (!program_tells(text, w->says[i]))
			fail_msg("%s: no \"%s\" in:\n%s", w->name, w->says[i], text);
}

#endif
