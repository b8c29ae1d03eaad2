/* Every answer that shows a run or a pick, of a book with a barred block and a pick
 * planned inside a preharvest interval: none of them leaves either unsaid. */
#include "acts.h"

#include "answers/record.h"
#include "answers/sheet.h"
#include "answers/why.h"

/* What each row of the walk lays out, as one text. */
struct told {
	char text[8192];
	size_t n;
};

static void tell(struct told *t, const char *text)
{
	int n = snprintf(t->text + t->n, sizeof t->text - t->n, "%s\n", text);

	assert_true(n >= 0 && t->n + (size_t)n < sizeof t->text);
	t->n += (size_t)n;
}

static void tell_clocks(struct told *t, const struct block_clocks *c)
{
	for (size_t i = 0; i < c->n; i++)
		tell(t, c->items[i].text);
	if (c->n > 0 && !strstr(c->caution, "re-entry interval"))
		fail_msg("no caution goes with them");
}

static void tell_today(struct fixture *f, struct told *t)
{
	struct today today = { 0 };

	today_of(&f->log, &today);
	assert_int_equal(today.n_runs, 1);
	tell(t, today.runs[0].barred);
	for (size_t i = 0; i < today.picks.n; i++)
		tell(t, today.picks.items[i].says);
	today_free(&today);
}

static void tell_run(struct fixture *f, struct told *t)
{
	struct run run = { 0 };

	run_of(&f->log, f->farm.id, f->log.today, &run);
	assert_int_equal(run.n, 1);
	assert_int_equal(run.barred, run.traps[0].entry != WAITING_FREE);
	tell(t, run.barred_text);
	tell(t, run.traps[0].barred);
	run_free(&run);
}

static void tell_due(struct fixture *f, struct told *t)
{
	struct due due = { 0 };

	due_of(&f->log, 0, &due);
	assert_int_equal(due.n, 1);
	tell(t, due.today.runs[0].barred);
	tell_clocks(t, &due.clocks);
	due_free(&due);
}

static void tell_due_items(struct fixture *f, struct told *t)
{
	struct due due = { 0 };

	due_of(&f->log, 0, &due);
	tell(t, due.items[0].barred);
	tell(t, due.items[0].no_entry_until);
	due_free(&due);
}

static void tell_sheet(struct fixture *f, struct told *t)
{
	struct sheet sheet = { 0 };
	struct err e = { 0 };

	must(sheet_of(&f->log, f->book, f->farm.id, &sheet, &e), &e);
	assert_int_equal(sheet.n, 1);
	tell(t, sheet.traps[0].barred);
	tell_clocks(t, &sheet.clocks);
	sheet_free(&sheet);
}

static void tell_why(struct fixture *f, struct told *t)
{
	struct why why = { 0 };

	why_of(&f->log, 0, 0, 0, &why);
	for (size_t i = 0; i < why.n; i++)
		tell(t, why.lines[i].text);
	why_free(&why);
}

static struct record_ask season(const struct fixture *f)
{
	return (struct record_ask){ .farm = f->farm.id,
		.block = f->block.id,
		.from = day_of("2026-01-01"),
		.to = day_of("2026-12-31") };
}

static void tell_record(struct fixture *f, struct told *t)
{
	struct record record = { 0 };
	struct record_ask ask = season(f);
	struct err e = { 0 };

	must(record_read(&record, f->book, &f->log, &ask, &e), &e);
	for (size_t i = 0; i < record.n; i++) {
		tell(t, record.rows[i].entry);
		tell(t, record.rows[i].pick);
	}
	record_free(&record);
}

static void tell_diary(struct fixture *f, struct told *t)
{
	struct block_diary diary = { 0 };
	struct record_ask ask = season(f);
	struct err e = { 0 };

	must(block_diary_read(&diary, f->book, &f->log, &ask, &e), &e);
	for (size_t i = 0; i < diary.n; i++)
		tell(t, diary.lines[i].text);
	block_diary_free(&diary);
}

static void tell_picks(struct fixture *f, struct told *t)
{
	struct pick_rows rows = { 0 };

	pick_rows_of(&f->log, 0, &rows);
	for (size_t i = 0; i < rows.n; i++)
		tell(t, rows.items[i].says);
	pick_rows_free(&rows);
}

/* What shows where; NULL: neither a run nor an entry, or no pick is shown there. */
static const struct answer_shown {
	const char *name;
	void (*tell)(struct fixture *f, struct told *t);
	const char *entry, *entry_unknown, *pick, *pick_unknown;
} shown[] = {
	{ "today", tell_today, "no entry: Upper Russet until Thu 9 Jul 10:00",
		"entry not known: Upper Russet", "too early: earliest pick Wed 22 Jul",
		"no preharvest interval entered" },
	{ "run", tell_run, "no entry till Thu 10:00", "entry not known", NULL, NULL },
	{ "due", tell_due, "no entry until Thu 9 Jul 10:00",
		"whether it may be entered is not known",
		"too early: earliest pick Wed 22 Jul", "no preharvest interval" },
	{ "due, its rows", tell_due_items, "no entry till Thu 10:00", "entry not known",
		NULL, NULL },
	{ "due, for files", tell_due_items, "2026-07-09T10:00+00:00", "unknown", NULL,
		NULL },
	{ "sheet", tell_sheet, "no entry till Thu 10:00", "entry not known",
		"too early: earliest pick Wed 22 Jul", "no preharvest interval" },
	{ "why", tell_why, "no entry until Thu 9 Jul 10:00",
		"whether it may be entered is not known",
		"too early: earliest pick Wed 22 Jul", "no preharvest interval" },
	{ "record", tell_record, "no entry until Thu 9 Jul 10:00",
		"re-entry interval not entered", "earliest pick Wed 22 Jul",
		"preharvest interval not entered" },
	{ "diary", tell_diary, "no entry until Thu 9 Jul 10:00",
		"re-entry interval not entered",
		"pick planned: too early: earliest pick Wed 22 Jul",
		"pick planned: not known: no re-entry and no preharvest interval" },
	{ "picks", tell_picks, NULL, NULL, "too early: earliest pick Wed 22 Jul",
		"no preharvest interval" },
};

static void open_guarded(struct fixture *f, int32_t rei, int32_t phi)
{
	fixture_open(f);
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 1, 500));
	int64_t t = fixture_trap(f, "1", "2026-06-10");
	fixture_count(f, t, "2026-07-01", 9);
	acts_treat(f, "2026-07-08 10:00", rei, phi);
	acts_pick(f, "2026-07-21", false);
	acts_read(f, "2026-07-08 12:00");
}

static void no_answer_leaves_a_barred_block_or_an_early_pick_unsaid(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		struct fixture f;
		struct told t = { 0 };
		open_guarded(&f, 24, 14);
		shown[i].tell(&f, &t);
		if (shown[i].entry && !strstr(t.text, shown[i].entry))
			fail_msg("%s does not say that entry is barred: %s",
				shown[i].name, t.text);
		if (shown[i].pick && !strstr(t.text, shown[i].pick))
			fail_msg("%s does not say that the pick is too early: %s",
				shown[i].name, t.text);
		fixture_close(&f);
	}
}

static void no_answer_takes_what_was_not_entered_for_free(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		struct fixture f;
		struct told t = { 0 };
		open_guarded(&f, -1, -1);
		shown[i].tell(&f, &t);
		if (shown[i].entry && !strstr(t.text, shown[i].entry_unknown))
			fail_msg("%s does not say that entry is not known: %s",
				shown[i].name, t.text);
		if (shown[i].pick && !strstr(t.text, shown[i].pick_unknown))
			fail_msg("%s does not say that the pick is not known: %s",
				shown[i].name, t.text);
		fixture_close(&f);
	}
}

static void no_answer_bars_what_is_free(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
		struct fixture f;
		struct told t = { 0 };
		open_guarded(&f, 2, 13);
		shown[i].tell(&f, &t);
		if (shown[i].tell != tell_record && shown[i].tell != tell_diary &&
			(strstr(t.text, "no entry") || strstr(t.text, "not known")))
			fail_msg("%s bars a free block: %s", shown[i].name, t.text);
		if (strstr(t.text, "too early"))
			fail_msg("%s calls the first free day too early: %s",
				shown[i].name, t.text);
		fixture_close(&f);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			no_answer_leaves_a_barred_block_or_an_early_pick_unsaid),
		cmocka_unit_test(no_answer_takes_what_was_not_entered_for_free),
		cmocka_unit_test(no_answer_bars_what_is_free),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
