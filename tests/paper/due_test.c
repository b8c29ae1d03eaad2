#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "lines.h"
#include "paper/due.h"

static struct due sample(void)
{
	static struct today_run runs[] = {
		{ .farm = 1,
			.name = "Quillet Farm",
			.traps_text = "18 traps",
			.last_text = "last run Tue 14 Jul, 7 days",
			.due = true },
		{ .farm = 2,
			.name = "Otterlea",
			.traps_text = "1 trap",
			.last_text = "not run yet" },
	};
	static struct due_item items[] = {
		{ .farm = 1,
			.is_lure = true,
			.farm_name = "Quillet Farm",
			.block_name = "Quarry Rows",
			.label = "4",
			.kind_name = "CM 1 mg",
			.state_text = "3 d overdue" },
		{ .farm = 1,
			.farm_name = "Quillet Farm",
			.block_name = "Quarry Rows",
			.label = "11",
			.kind_name = "delta liner",
			.state_text = "32 moths on it" },
		{ .farm = 2,
			.is_lure = true,
			.farm_name = "Otterlea",
			.block_name = "Bank",
			.label = "1",
			.kind_name = "OFM standard",
			.state_text = "by next run" },
	};
	static struct due_bring brings[] = { { 1, true, 2, "CM 1 mg", 1 },
		{ 1, false, 1, "delta liner", 1 } };
	static struct due_bring totals[] = { { 0, true, 2, "CM 1 mg", 1 },
		{ 0, false, 1, "delta liner", 1 } };

	runs[0].next_run = items[1].due = day_from_ymd(2026, 7, 21);
	items[0].due = day_from_ymd(2026, 7, 18);
	runs[1].next_run = items[2].due = day_from_ymd(2026, 7, 24);
	return (struct due){
		.today = { .title = "Tue 21 July 2026 \u00b7 week 30",
			.runs = runs,
			.n_runs = 2 },
		.items = items,
		.n = 3,
		.brings = brings,
		.n_brings = 2,
		.totals = totals,
		.n_totals = 2,
	};
}

static char *print(const struct due *d, int cols, bool utf8)
{
	struct buf out = { 0 };

	static struct shelf_row rows[] = {
		{ .is_lure = true,
			.name = "CM 1 mg",
			.left = 1,
			.text = "1 left, 2 to bring: 1 too few" },
		{ .name = "delta liner",
			.left = 40,
			.text = "40 left, 1 to bring, reorder at 20" },
		{ .name = "spare", .left = -1, .text = "stock not kept, 1 to bring" },
	};
	const struct shelf shelf = { .items = rows, .n = 3, .is_kept = true };

	paper_due(d, &shelf, cols, utf8, &out);
	return out.text;
}

static const char whole_page[] =
	"Due  Tue 21 July 2026 \u00b7 week 30\n"
	"\n"
	"Runs\n"
	"  Quillet Farm: 18 traps, last run Tue 14 Jul, 7 days, due now (Tue 21 Jul)\n"
	"  Otterlea: 1 trap, next run Fri 24 Jul\n"
	"\n"
	"Bring on the next run\n"
	"  Quillet Farm: 2 lures CM 1 mg, 1 card delta liner\n"
	"  Otterlea: nothing\n"
	"  all farms: 2 lures CM 1 mg, 1 card delta liner\n"
	"\n"
	"Lures and cards\n"
	"  Quillet Farm\n"
	"  trap block            kind         due        state\n"
	"  4    Quarry Rows lure CM 1 mg      Sat 18 Jul 3 d overdue\n"
	"  11   Quarry Rows card delta liner  Tue 21 Jul 32 moths on it\n"
	"\n"
	"  Otterlea\n"
	"  trap block            kind         due        state\n"
	"  1    Bank        lure OFM standard Fri 24 Jul by next run\n"
	"\n"
	"On the shelf\n"
	"  lure CM 1 mg: 1 left, 2 to bring: 1 too few\n"
	"  card delta liner: 40 left, 1 to bring, reorder at 20\n";

static void due_tells_runs_what_to_bring_and_what_is_due(void **state)
{
	struct due d = sample();
	char *text = print(&d, 80, true);

	(void)state;
	assert_string_equal(text, whole_page);
	free(text);
}

static void due_keeps_to_any_width(void **state)
{
	struct due d = sample();

	(void)state;
	for (int cols = 40; cols <= 120; cols++) {
		char *text = print(&d, cols, true);

		if (lines_widest(text) > cols)
			fail_msg("%d columns: a line of %d", cols, lines_widest(text));
		free(text);
	}
}

static void due_says_when_nothing_is_due(void **state)
{
	struct due d = sample();

	(void)state;
	d.n = 0;
	char *text = print(&d, 80, false);
	assert_non_null(
		strstr(text, "Lures and cards\n  none is due by the next run\n"));
	assert_null(strstr(text, "\u00b7"));
	free(text);
}

/* A lure that nobody noted may be due. */
static void due_takes_no_unknown_lure_for_a_fine_one(void **state)
{
	struct due d = sample();

	(void)state;
	d.n = 0;
	d.has_unknown = true;
	d.n_totals = 0;
	text_copy(d.today.runs[1].unknown_text, sizeof d.today.runs[1].unknown_text,
		"; 1 lure not known");
	text_copy(d.unknown_text, sizeof d.unknown_text, "; 2 lures not known");
	char *text = print(&d, 80, true);
	d.today.runs[1].unknown_text[0] = '\0';
	if (!strstr(text, "Otterlea: nothing known; 1 lure not known\n") ||
		!strstr(text, "all farms: nothing known; 2 lures not known\n") ||
		!strstr(text, "  none is known to be due by the next run\n"))
		fail_msg("%s", text);
	free(text);
}

static void due_says_when_no_trap_hangs(void **state)
{
	struct due d = sample();

	(void)state;
	d.n = d.n_brings = d.today.n_runs = 0;
	char *text = print(&d, 80, true);
	assert_non_null(strstr(text, "Runs\n  no trap hangs\n"));
	assert_null(strstr(text, "Bring"));
	free(text);
}

static void due_tells_what_a_run_under_way_still_needs(void **state)
{
	struct due d = sample();
	struct today_run run = d.today.runs[0];

	(void)state;
	run.traps = 18;
	run.open = 7;
	d.today.runs = &run;
	d.today.n_runs = 1;
	char *text = print(&d, 120, true);
	assert_non_null(strstr(text, "last run Tue 14 Jul, 7 days, under way\n"));
	assert_non_null(strstr(text, "\n  Quillet Farm, rest of this run: 2 lures"));
	free(text);
}

static void due_leaves_out_a_shelf_that_nobody_keeps(void **state)
{
	struct due d = sample();
	struct shelf_row row = { .name = "spare", .left = -1, .text = "not kept" };
	const struct shelf shelf = { .items = &row, .n = 1 };
	struct buf out = { 0 };

	(void)state;
	paper_due(&d, &shelf, 80, true, &out);
	assert_null(strstr(out.text, "shelf"));
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(due_tells_runs_what_to_bring_and_what_is_due),
		cmocka_unit_test(due_keeps_to_any_width),
		cmocka_unit_test(due_says_when_nothing_is_due),
		cmocka_unit_test(due_takes_no_unknown_lure_for_a_fine_one),
		cmocka_unit_test(due_tells_what_a_run_under_way_still_needs),
		cmocka_unit_test(due_says_when_no_trap_hangs),
		cmocka_unit_test(due_leaves_out_a_shelf_that_nobody_keeps),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
