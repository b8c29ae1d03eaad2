#include "screen/run_samples.h"

/* Trap 1 of two: its block may not be entered. */
static struct run barred_run(void)
{
	struct run r = sample_open_run(2);

	r.traps[0].entry = WAITING_BARRED;
	SET(r.traps[0].barred, "no entry till Wed 06:00");
	r.barred = r.barred_blocks = 1;
	return r;
}

static struct run_page page_after(const struct run *r, const char *keys)
{
	struct run_page p = { .limits = &limits_usual };

	run_page_show(&p, r, true);
	run_page_pick(&p, r->traps[0].trap);
	for (; *keys; keys++)
		run_page_key(&p, sample_key(*keys));
	return p;
}

static void run_page_offers_re_entry_first_where_it_bars(void **state)
{
	static const struct {
		const char *why, *keys;
		enum waiting_state entry;
		enum reason reason;
		const char *says;
	} row[] = {
		{ "barred", "-", WAITING_BARRED, REASON_REENTRY,
			"Skipped for re-entry. Once more: without a reason, weather, "
			"time, other." },
		{ "not known", "-", WAITING_UNKNOWN, REASON_REENTRY,
			"Skipped for re-entry. Once more: without a reason, weather, "
			"time, other." },
		{ "for no reason", "--", WAITING_BARRED, REASON_NONE, "" },
		{ "for the weather", "---", WAITING_BARRED, REASON_WEATHER, "" },
		{ "free", "-", WAITING_FREE, REASON_NONE,
			"Skipped. Once more for a reason: re-entry, weather, time, "
			"other." },
		{ "free, for re-entry", "--", WAITING_FREE, REASON_REENTRY, "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = barred_run();

		r.traps[0].entry = row[i].entry;
		struct run_page p = page_after(&r, row[i].keys);
		if (p.entry.outcome != OUTCOME_SKIPPED ||
			p.entry.reason != row[i].reason ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: reason %d, \"%s\"", row[i].why,
				(int)p.entry.reason, p.message.text);
		free(r.traps);
	}
}

static void run_page_cautions_where_entry_is_barred(void **state)
{
	static const struct {
		int rows, cols;
	} size[] = { { 24, 80 }, { 16, 40 } };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof size / sizeof *size; i++) {
		struct run r = barred_run();
		struct run_page p = page_after(&r, "");

		canvas_size(&c, size[i].rows, size[i].cols);
		run_page_draw(&p, &c);
		expect_shows("barred", &c, "till Wed 06:00");
		expect_shows("with the caution", &c, "label is the law)");
		run_page_key(&p, sample_key('~'));
		run_page_draw(&p, &c);
		expect_hides("not on the next", &c, "is the law)");
		free(r.traps);
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(run_page_offers_re_entry_first_where_it_bars),
		cmocka_unit_test(run_page_cautions_where_entry_is_barred),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
