#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/shipped.h"
#include "command/command.h"
#include "program.h"

static const char traps[] =
	"farm,block,trap,pest,lure,condition,crop,hung\n"
	"Quillet Farm,Quarry Rows,1,CM,CM standard,conventional,apple,2026-06-30\n"
	"Quillet Farm,Quarry Rows,2,CM,CM standard,conventional,apple,2026-06-30\n"
	"Otterlea,Bank,1,CM,CM standard,conventional,apple,2026-06-30\n";

/* Trap 1: 4 in 7 nights, then 12 in 10: 8.4 a week. Trap 2: hung, never read. */
static const char visits[] = "farm,trap,date,outcome,count\n"
			     "Quillet Farm,1,2026-07-07,counted,4\n"
			     "Quillet Farm,1,2026-07-17,counted,12\n"
			     "Otterlea,1,2026-07-14,counted,0\n";

static const char thresholds[] =
	"pest,farm,measure,span,comparator,value,source\n"
	"CM,Quillet Farm,trap-week,1,>=,5,\"own figure, invented\"\n";

static int fill_book(void **state)
{
	static const char *const kinds_taken[] = { "traps", "visits", "thresholds" };
	struct ran r = { 0 };
	int failed = program_setup(state);

	program_write("traps.csv", traps);
	program_write("visits.csv", visits);
	program_write("thresholds.csv", thresholds);
	for (size_t i = 0; failed == 0 && i < 3; i++) {
		char line[80];

		snprintf(line, sizeof line,
			"--book b.db --today 2026-07-21 import %s %s.csv",
			kinds_taken[i], kinds_taken[i]);
		program_run(&r, line);
		failed = r.status;
		if (failed)
			fprintf(stderr, "%s: %s", line, r.err.text);
	}
	program_forget(&r);
	return failed;
}

static void status_says_what_went_wrong(void **state)
{
	static const struct {
		const char *why, *line;
		int status;
		const char *says; /* on stderr */
	} row[] = {
		{ "done", "--version", 0, "" },
		{ "help", "--help", 0, "" },
		{ "a report", "--book b.db --today 2026-07-21 week", 0, "" },
		{ "no terminal for the pages", "", 2, "the pages need a terminal" },
		{ "nor for the demo's", "demo", 2, "demo --print" },
		{ "no such command", "wek", 2,
			"\"wek\" is no command; there are week, due," },
		{ "no such option", "--colour week", 2, "it takes --book, --today" },
		{ "an option without its value", "--book", 2, "--book wants a value" },
		{ "no date", "--today 2026-02-29 week", 2, "such as 2026-07-21" },
		{ "no such paper", "--book b.db sheet --paper a5", 2, "a4 or letter" },
		{ "no target", "--book b.db backup", 2, "mothtally backup FILE" },
		{ "bad rows", "--book b.db --today 2026-07-21 import visits traps.csv",
			3, "" },
		{ "no book", "--book none.db week", 4,
			"there is no book at none.db yet" },
		{ "no such farm", "--book b.db week --farm Otter", 4,
			"the book has: \"Otterlea\", \"Quillet Farm\"" },
		{ "no such pest", "--book b.db week --pest XM", 4, "CM" },
		{ "a backup onto a file", "--book b.db backup traps.csv", 5,
			"traps.csv" },
		{ "no book at all", "--book traps.csv week", 5, "traps.csv" },
		{ "a sheet onto a folder", "--book b.db sheet -o .", 5,
			". is a folder" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct ran r = { 0 };

		program_run(&r, row[i].line);
		if (r.status != row[i].status || !strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d, \"%s\"", row[i].why, r.status,
				r.err.text);
		if (row[i].status && r.out.n)
			fail_msg("%s: stdout has \"%s\"", row[i].why, r.out.text);
		program_forget(&r);
	}
}

static void complaints_are_one_sentence(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "wek");
	assert_true(strncmp(r.err.text, "mothtally: ", 11) == 0);
	assert_ptr_equal(strchr(r.err.text, '\n'), r.err.text + r.err.n - 1);
	program_forget(&r);
}

static void help_of_every_command_tells_synopsis_purpose_and_example(void **state)
{
	(void)state;
	for (const struct command *c = commands; c->name; c++) {
		struct ran r = { 0 };
		char line[80], first[80];

		snprintf(line, sizeof line, "%s --help", c->name);
		snprintf(first, sizeof first, "mothtally %s", c->name);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
		if (strncmp(r.out.text, first, strlen(first)) != 0 ||
			!strstr(r.out.text, c->example))
			fail_msg("%s: %s", line, r.out.text);
		assert_string_equal(r.err.text, "");
		program_forget(&r);
	}
}

static void help_of_the_program_lists_every_command_and_the_cautions(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--help");
	for (const struct command *c = commands; c->name; c++) {
		char line[40];

		snprintf(line, sizeof line, "\n  %s", c->name);
		if (!strstr(r.out.text, line))
			fail_msg("%s is not in the help", c->name);
	}
	assert_non_null(strstr(r.out.text, "Cautions\n"));
	assert_non_null(strstr(r.out.text, "label"));
	program_forget(&r);
}

static void examples_work_on_the_demo(void **state)
{
	static const char *const names[] = { "traps", "visits", "thresholds", "weather",
		"biofix" };
	struct ran r = { 0 };
	char line[160], file[32];

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		snprintf(file, sizeof file, "demo/%s.csv", names[i]);
		program_write("shipped.csv", shipped_find(file)->text);
		snprintf(line, sizeof line,
			"--book d.db --today 2026-07-21 import %s shipped.csv",
			names[i]);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
	}
	for (const struct command *c = commands; c->name; c++) {
		assert_true(strncmp(c->example, "mothtally ", 10) == 0);
		snprintf(line, sizeof line, "--book d.db --today 2026-07-21 %s",
			c->example + 10);
		program_run(&r, line);
		if (r.status != 0)
			fail_msg("%s: status %d, %s", c->example, r.status, r.err.text);
	}
	program_forget(&r);
}

static void week_shows_bounds_of_what_was_compared(void **state)
{
	static const char want[] =
		"farm,block,trap,pest,catch_lo,catch_hi,nights,measure,span,comparator,"
		"value,verdict,doubts,source\r\n"
		"Otterlea,Bank,1,CM,0,0,14,,,,,none,,\r\n"
		"Quillet Farm,Quarry Rows,1,CM,8.4000,8.4000,10,trap-week,1,>=,5,over,,"
		"\"own figure, invented\"\r\n"
		"Quillet Farm,Quarry Rows,2,CM,0,,,trap-week,1,>=,5,unknown,"
		"not read yet,\"own figure, invented\"\r\n";
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-21 week --csv");
	assert_string_equal(r.out.text, want);
	program_forget(&r);
}

static void week_is_filtered_by_farm_and_pest(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-21 week --farm Quillet~Farm");
	assert_non_null(strstr(r.out.text, "Quarry Rows"));
	assert_null(strstr(r.out.text, "Otterlea"));
	program_run(&r, "--book b.db --today 2026-07-21 week --pest OFM");
	assert_non_null(strstr(r.out.text, "No such trap hung this season."));
	program_forget(&r);
}

static void due_names_the_asked_farm_only(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-31 due --farm Otterlea");
	assert_non_null(strstr(r.out.text, "Otterlea: 1 trap"));
	assert_null(strstr(r.out.text, "Quillet"));
	program_run(&r, "--book b.db --today 2026-07-31 due --csv --farm Otterlea");
	assert_string_equal(r.out.text,
		"farm,trap,what,kind,due,state,no_entry_until\r\n"
		"Otterlea,1,lure,CM standard,2026-07-30,overdue,\r\n");
	program_forget(&r);
}

static void sheet_begins_every_farm_on_a_new_page(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-21 sheet");
	assert_non_null(strstr(r.out.text, "\fScouting sheet: Quillet Farm"));
	assert_true(strncmp(r.out.text, "Scouting sheet: Otterlea", 24) == 0);
	program_run(&r, "--book b.db --today 2026-07-21 sheet --farm Otterlea --blank "
			"-o s.txt");
	assert_string_equal(r.out.text, "");
	program_forget(&r);
	program_read("s.txt", &r.out);
	assert_null(strchr(r.out.text, '\f'));
	assert_non_null(strstr(r.out.text, "[        ] [    ] [    ]"));
	program_forget(&r);
}

static void sheet_tells_how_far_the_run_is(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-18 sheet --farm Quillet~Farm");
	assert_non_null(strstr(r.out.text, "1 of 2 traps counted so far, 12 moths.\n"));
	assert_non_null(strstr(r.out.text, "\nStill to bring: "));
	program_run(&r, "--book b.db --today 2026-07-21 sheet --farm Quillet~Farm");
	assert_non_null(strstr(r.out.text, "Totals: the run has not begun.\n"));
	assert_non_null(strstr(r.out.text, "\nBring on the next run: "));
	program_forget(&r);
}

static void check_finds_a_sound_book_sound(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-21 check");
	assert_int_equal(r.status, 0);
	assert_string_equal(r.out.text, "the book b.db is sound\n");
	program_run(&r, "--book b.db --today 2026-07-16 check");
	assert_int_equal(r.status, 5);
	assert_non_null(strstr(r.err.text, "1 thing in the book b.db"));
	assert_true(r.out.n > 0);
	program_forget(&r);
}

static void control_characters_never_reach_the_terminal(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db backup c\x1b[2J.db");
	assert_int_equal(r.status, 0);
	assert_string_equal(r.out.text, "the book is copied to c?[2J.db\n");
	program_run(&r, "--book b.db backup c\x1b[2J.db");
	assert_int_equal(r.status, 5);
	assert_null(strchr(r.err.text, '\x1b'));
	program_run(&r, "--book b.db week --farm \a");
	assert_int_equal(r.status, 4);
	assert_null(strchr(r.err.text, '\a'));
	program_forget(&r);
}

static void backup_is_a_book(void **state)
{
	struct ran r = { 0 };

	(void)state;
	unlink("copy.db");
	program_run(&r, "--book b.db backup copy.db");
	assert_int_equal(r.status, 0);
	program_run(&r, "--book copy.db --today 2026-07-21 week");
	assert_non_null(strstr(r.out.text, "Quarry Rows"));
	program_forget(&r);
}

static void proof_holds_and_says_so_last(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "proof");
	assert_int_equal(r.status, 0);
	assert_non_null(strstr(r.out.text, " cases hold.\n"));
	assert_null(strstr(r.out.text, "NOT HOLD"));
	program_run(&r, "proof --csv");
	assert_non_null(strstr(r.out.text, "\r\nCM1,"));
	assert_null(strstr(r.out.text, ",no\r\n"));
	program_forget(&r);
}

static void reports_are_ascii_where_utf8_does_not_show(void **state)
{
	static const char *const lines[] = {
		"--book b.db --today 2026-07-21 week",
		"--book b.db --today 2026-07-21 due",
		"--book b.db --today 2026-07-21 sheet",
		"demo --print",
		"proof",
	};
	struct ran r = { 0 };

	(void)state;
	setenv("LC_CTYPE", "C", 1);
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		program_run(&r, lines[i]);
		for (const char *p = r.out.text; *p; p++)
			if ((unsigned char)*p >= 0x80)
				fail_msg("%s: %s", lines[i], p);
		assert_true(r.out.n > 0);
	}
	setenv("LC_CTYPE", "C.UTF-8", 1);
	program_forget(&r);
}

static void reports_change_nothing(void **state)
{
	static const char *const lines[] = { "week", "week --csv", "due", "sheet",
		"check" };
	struct buf before = { 0 }, after = { 0 };
	struct ran r = { 0 };
	char line[80];

	(void)state;
	program_read("b.db", &before);
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 %s",
			lines[i]);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
	}
	program_read("b.db", &after);
	assert_int_equal(before.n, after.n);
	assert_memory_equal(before.text, after.text, before.n);
	buf_free(&before);
	buf_free(&after);
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(status_says_what_went_wrong),
		cmocka_unit_test(complaints_are_one_sentence),
		cmocka_unit_test(
			help_of_every_command_tells_synopsis_purpose_and_example),
		cmocka_unit_test(
			help_of_the_program_lists_every_command_and_the_cautions),
		cmocka_unit_test(examples_work_on_the_demo),
		cmocka_unit_test(week_shows_bounds_of_what_was_compared),
		cmocka_unit_test(week_is_filtered_by_farm_and_pest),
		cmocka_unit_test(due_names_the_asked_farm_only),
		cmocka_unit_test(sheet_begins_every_farm_on_a_new_page),
		cmocka_unit_test(sheet_tells_how_far_the_run_is),
		cmocka_unit_test(check_finds_a_sound_book_sound),
		cmocka_unit_test(control_characters_never_reach_the_terminal),
		cmocka_unit_test(backup_is_a_book),
		cmocka_unit_test(proof_holds_and_says_so_last),
		cmocka_unit_test(reports_are_ascii_where_utf8_does_not_show),
		cmocka_unit_test(reports_change_nothing),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
