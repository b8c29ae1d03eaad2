/* crafted.h - a book with a row of everything, changed past its CHECKs. */
#ifndef TESTS_BOOK_CRAFTED_H
#define TESTS_BOOK_CRAFTED_H

#include "fixture.h"

enum { CRAFTED_DAY = 20000 }; /* hung then, 3 counted a week later */

struct damage {
	const char *sql, *says;
};

static inline void craft(struct desk *d, const char *sql)
{
	desk_memory(d);
	struct visit hung = without_count(d->trap, CRAFTED_DAY, OUTCOME_HUNG);
	struct visit v = counted(d->trap, CRAFTED_DAY + 7, 3);
	struct rule r = { .pest = d->pest,
		.measure = MEASURE_TRAP_WEEK,
		.span = 1,
		.value_x100 = 500 };
	struct treatment t = treatment_blank;
	t.block = d->block;
	t.day = CRAFTED_DAY;
	must(book_save_visit(d->book, &hung, NULL, e));
	must(book_save_visit(d->book, &v, NULL, e));
	must(book_put_rule(d->book, &r, e));
	must(book_put_treatment(d->book, &t, e));
	raw(d->book, "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF");
	if (raw(d->book, sql) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(d->book->db));
}

static inline void assert_damaged(
	const char *sql, bool read, const struct err *e, const char *says)
{
	if (read || e->kind != ERR_BOOK || !strstr(e->text, "the book is damaged") ||
		!strstr(e->text, says))
		fail_msg("%s: %s", sql, read ? "not refused" : e->text);
}

#endif
