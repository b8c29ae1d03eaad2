/* Paper carried into an orchard says what is barred there and what may be picked. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "paper/due.h"
#include "sheets.h"

#define BARRED "Quarry Rows: no entry until Wed 22 Jul 06:00"
#define EARLY                                                                          \
	"Quarry Rows, pick planned for Fri 28 Aug: too early: earliest pick Thu 3 Sep"
#define CAUTION "Clock caution of the test."

static struct block_clock clocks[] = { { .text = BARRED }, { .text = EARLY } };

static const struct {
	const char *why;
	bool blank;
	const char *then; /* what comes after the clocks */
} forms[] = {
	{ "filled in", false, "Needing attention" },
	{ "to carry", true, "\ntrap" },
};

static void a_sheet_says_it_before_the_traps_and_at_each(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		struct sheet s = sheets_with(2);
		s.clocks = (struct block_clocks){ clocks, 2, 2, CAUTION };
		text_copy(s.traps[1].barred, sizeof s.traps[1].barred,
			"no entry till Wed 06:00");
		char *text = sheets_print(&s, sheets_form(PAPER_A4, forms[i].blank));
		const char *barred = strstr(text, BARRED);
		const char *early = strstr(text, "too early: earliest pick");
		const char *then = strstr(text, forms[i].then);
		if (!barred || !early || !then || barred > early || early > then)
			fail_msg("%s: not before the traps:\n%s", forms[i].why, text);
		if (!strstr(text, CAUTION))
			fail_msg("%s: no caution", forms[i].why);
		const char *second = strstr(text, "\nT002");
		const char *at = second ? strstr(second, "no entry till Wed") : NULL;
		if (!at || lines_count(text, "no entry till Wed 06:00") != 1)
			fail_msg("%s: not at its trap:\n%s", forms[i].why, text);
		if (lines_widest(text) > SHEET_COLS)
			fail_msg("%s: %d columns", forms[i].why, lines_widest(text));
		free(text);
		free(s.traps);
	}
}

static void a_sheet_without_any_says_nothing_of_it(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		struct sheet s = sheets_with(2);
		char *text = sheets_print(&s, sheets_form(PAPER_A4, forms[i].blank));
		if (strstr(text, "Entry and picks"))
			fail_msg("%s", forms[i].why);
		free(text);
		free(s.traps);
	}
}

static void due_says_it_of_the_run_and_of_the_trap(void **state)
{
	static struct today_run run = { .farm = 1,
		.name = "Quillet Farm",
		.traps_text = "18 traps",
		.last_text = "last run Tue 14 Jul, 7 days",
		.barred = "no entry: Quarry Rows until Wed 22 Jul 06:00",
		.due = true };
	static struct due_item item = { .farm = 1,
		.is_lure = true,
		.farm_name = "Quillet Farm",
		.block_name = "Quarry Rows",
		.label = "4",
		.kind_name = "CM 1 mg",
		.state_text = "3 d overdue",
		.barred = "no entry till Wed 06:00" };
	static const int widths[] = { 40, 78, 120 };

	(void)state;
	for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
		struct due d = { .today = { .runs = &run, .n_runs = 1 },
			.clocks = { clocks, 2, 2, CAUTION },
			.items = &item,
			.n = 1 };
		struct shelf none = { 0 };
		struct buf out = { 0 };
		paper_due(&d, &none, widths[i], true, &out);
		const char *of_run = strstr(out.text, "    no entry: Quarry Rows");
		const char *of_trap = strstr(out.text, "    no entry till Wed 06:00");
		if (!of_run || !of_trap || of_run > of_trap ||
			!strstr(out.text, "Entry and picks") ||
			!strstr(out.text, "Clock caution"))
			fail_msg("at %d columns:\n%s", widths[i], out.text);
		if (lines_widest(out.text) > widths[i])
			fail_msg(
				"at %d columns: %d", widths[i], lines_widest(out.text));
		buf_free(&out);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_sheet_says_it_before_the_traps_and_at_each),
		cmocka_unit_test(a_sheet_without_any_says_nothing_of_it),
		cmocka_unit_test(due_says_it_of_the_run_and_of_the_trap),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
