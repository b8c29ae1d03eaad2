/* A treatment entered, corrected, taken out and brought back: what a total that runs
 * since it comes to each time, and what the history says. */
#include "answers/fixture.h"

#include "answers/entry_changes.h"
#include "answers/forms.h"
#include "answers/verdicts.h"
#include "book/acts.h"
#include "book/steps.h"

#define TODAY "2026-05-22"

enum { SINCE_HUNG = 9 + 2 + 4, SINCE_8_MAY = 2 + 4, SINCE_15_MAY = 4 };

static void open_weeks(struct fixture *f)
{
	fixture_open(f);
	struct rule r = fixture_rule(f, MEASURE_TRAP_TOTAL, 0, 1000);
	r.span_kind = SPAN_TREATMENT;
	fixture_put_rule(f, r);
	int64_t t = fixture_trap(f, "1", "2026-05-01");
	fixture_count(f, t, "2026-05-08", 9);
	fixture_count(f, t, "2026-05-15", 2);
	fixture_count(f, t, TODAY, 4);
	fixture_read(f, TODAY);
}

static void total_is(struct fixture *f, const char *why, int64_t moths)
{
	struct verdict_rows v = { 0 };
	enum verdict want = moths >= 10 ? VERDICT_OVER : VERDICT_UNDER;

	fixture_read(f, TODAY);
	verdicts_of(&f->log, 0, 0, f->log.today, &v);
	assert_int_equal(v.n, 1);
	const struct judgement *j = &v.items[0].judgement;
	if (j->moths != moths || j->verdict != want)
		fail_msg("%s: %d moths", why, (int)j->moths);
	free(v.items);
}

static int64_t treat(struct fixture *f, const char *day)
{
	struct entry *r = form_new(f->book, &f->log, ENTRY_TREATMENTS);

	form_type(r, "farm", f->farm.name);
	form_type(r, "block", f->block.name);
	form_type(r, "date", day);
	form_put(r, f->book, &f->log);
	int64_t id = r->id;
	free(r);
	return id;
}

static void correct(struct fixture *f, int64_t id, const char *day)
{
	struct entry *r = form_of(f->book, &f->log, ENTRY_TREATMENTS, id);

	form_type(r, "date", day);
	form_put(r, f->book, &f->log);
	free(r);
}

static void undo(struct fixture *f)
{
	struct undone_step u;
	struct err e = { 0 };

	must(book_undo_own(f->book, &u, &e), &e);
	assert_string_equal(u.kind, "treatment");
}

static void totals_follow_a_treatment_corrected_taken_out_brought_back(void **state)
{
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	open_weeks(&f);
	total_is(&f, "no treatment", SINCE_HUNG);
	int64_t id = treat(&f, "2026-05-08");
	total_is(&f, "treated on 8 May", SINCE_8_MAY);
	fixture_read(&f, TODAY);
	correct(&f, id, "2026-05-15");
	total_is(&f, "it was on 15 May", SINCE_15_MAY);
	must(entry_remove(f.book, ENTRY_TREATMENTS, id, &e), &e);
	total_is(&f, "there was none", SINCE_HUNG);
	undo(&f);
	total_is(&f, "there was one", SINCE_15_MAY);
	undo(&f);
	total_is(&f, "on 8 May", SINCE_8_MAY);
	undo(&f);
	total_is(&f, "none after all", SINCE_HUNG);
	fixture_close(&f);
}

static void the_history_of_a_treatment_tells_each_of_it(void **state)
{
	static const char *const want[] = { " T: 2026-05-15 put in",
		" T: 2026-05-15 taken out", " T: date was 2026-05-08, is 2026-05-15",
		" put in" };
	struct fixture f;
	struct err e = { 0 };
	struct entry_changes c = { 0 };

	(void)state;
	open_weeks(&f);
	int64_t id = treat(&f, "2026-05-08");
	fixture_read(&f, TODAY);
	correct(&f, id, "2026-05-15");
	must(entry_remove(f.book, ENTRY_TREATMENTS, id, &e), &e);
	undo(&f);
	must(entry_changes_read(&c, f.book, ENTRY_TREATMENTS, id, &e), &e);
	assert_int_equal(c.n, sizeof want / sizeof *want);
	for (size_t i = 0; i < c.n; i++)
		if (!strstr(c.lines[i], want[i]))
			fail_msg("\"%s\" has no \"%s\"", c.lines[i], want[i]);
	entry_changes_free(&c);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			totals_follow_a_treatment_corrected_taken_out_brought_back),
		cmocka_unit_test(the_history_of_a_treatment_tells_each_of_it),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
