/* deeds_undo.h - takes back what was done, and settles what two books left open. */
#ifndef TESTS_BOOK_DEEDS_UNDO_H
#define TESTS_BOOK_DEEDS_UNDO_H

#include "deeds_changes.h"

static bool undo_visit(struct desk *d, struct err *e)
{
	struct undone u;

	return book_undo_visit(d->book,
		&(struct undo_reach){ d->farm, 0, DEED_DAY, DEED_DAY + 9, "JR" }, &u,
		e);
}

static bool undo_trap(struct desk *d, struct err *e)
{
	struct undone u;

	return book_undo_visit(d->book,
		&(struct undo_reach){ 0, d->trap, DEED_DAY, DEED_DAY + 9, NULL }, &u,
		e);
}

static bool undo_step(struct desk *d, struct err *e)
{
	struct undone_step u;

	return book_undo_step(d->book, "JR", 0, &u, e);
}

static bool would_undo(struct desk *d, struct err *e)
{
	struct undone_step u;

	return book_would_undo(d->book, &u, e);
}

static bool undo_own(struct desk *d, struct err *e)
{
	struct undone_step u;

	return book_undo_own(d->book, &u, e);
}

static bool settle_visit(struct desk *d, struct err *e)
{
	struct visit v = counted(d->trap, DEED_DAY + 7, 6);

	return book_settle_visit(d->book, d->trap, v.day, &v, NULL, e);
}

static bool settle_no_visit(struct desk *d, struct err *e)
{
	return book_settle_visit(d->book, d->trap, DEED_DAY + 7, NULL, NULL, e);
}

/* Every matter of that kind. */
static bool settle(struct desk *d, enum matter_kind what, bool keep, struct err *e)
{
	struct matters all = { 0 };
	bool ok = book_open_matters(d->book, &all, e);
	int n = 0;

	for (size_t i = 0; ok && i < all.n; i++)
		if (all.items[i].what == what) {
			ok = book_settle_row(d->book, &all.items[i], keep, e);
			n++;
		}
	book_matters_free(&all);
	assert_true(!ok || n == 1);
	return ok;
}

static bool keep_pick(struct desk *d, struct err *e)
{
	return settle(d, MATTER_KEPT, true, e);
}

static bool drop_pick(struct desk *d, struct err *e)
{
	return settle(d, MATTER_KEPT, false, e);
}

static bool bring_source_back(struct desk *d, struct err *e)
{
	return settle(d, MATTER_ASIDE, true, e);
}

static bool leave_source_out(struct desk *d, struct err *e)
{
	return settle(d, MATTER_ASIDE, false, e);
}

static bool keep_name(struct desk *d, struct err *e)
{
	return settle(d, MATTER_NAMES, true, e);
}

/* Of the day on which nobody says otherwise. */
static bool correct_hung(struct desk *d, struct err *e)
{
	struct visit v = without_count(d->trap, DEED_DAY, OUTCOME_HUNG);
	struct visit_words w = { "Ida", "in the fourth row" };

	return book_save_visit(d->book, &v, &w, e);
}

static bool remove_hung(struct desk *d, struct err *e)
{
	return book_remove_visit(d->book, d->trap, DEED_DAY, e);
}

static const struct deed deeds_undo[] = {
	{ "a visit undone", undo_visit, CHANGES, NULL },
	{ "a trap's visit undone", undo_trap, CHANGES, NULL },
	{ "a step undone", undo_step, CHANGES, NULL },
	{ "what could be undone", would_undo, LOOKS, put_farm },
	{ "a count settled", settle_visit, CHANGES, NULL },
	{ "no count settled", settle_no_visit, CHANGES, NULL },
	{ "a row kept", keep_pick, CHANGES, NULL },
	{ "a row dropped", drop_pick, CHANGES, NULL },
	{ "a row brought back", bring_source_back, CHANGES, NULL },
	{ "a row left out", leave_source_out, CHANGES, NULL },
	{ "a name kept", keep_name, CHANGES, NULL },
	{ "a row undone", undo_own, CHANGES, put_farm },
	{ "a change of a row undone", undo_own, CHANGES, move_trap },
	{ "a row taken out undone", undo_own, CHANGES, remove_source },
	{ "a new visit undone", undo_own, CHANGES, save_new },
	{ "a correction undone", undo_own, CHANGES, correct_hung },
	{ "a visit taken out undone", undo_own, CHANGES, remove_hung },
	{ "a day of weather undone", undo_own, CHANGES, save_weather },
	{ "a day taken out undone", undo_own, CHANGES, remove_weather },
	{ "a group undone", undo_own, CHANGES, save_group },
	{ "the visit itself undone", undo_visit, CHANGES, remove_hung },
	{ "the correction itself undone", undo_trap, CHANGES, correct_hung },
};

#endif
