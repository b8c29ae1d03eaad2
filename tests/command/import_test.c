/* import and export at the command line. */
#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/shipped.h"
#include "program.h"

static void run(struct ran *r, const char *line, int status, const char *says)
{
	program_run(r, line);
	if (r->status != status || !strstr(r->err.text, says))
		fail_msg("%s: status %d, \"%s\"", line, r->status, r->err.text);
}

static void a_refused_first_import_leaves_no_book(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_write("bad.csv", "farm,block,trap,pest\nOtterlea,Bank,1,XX\n");
	run(&r, "--book new.db import traps bad.csv", 3, "is not in the book");
	assert_int_not_equal(access("new.db", F_OK), 0);
	assert_int_not_equal(access("backups", F_OK), 0);
	run(&r, "--book new.db import thresholds --published --pest XX", 4, "");
	assert_int_not_equal(access("new.db", F_OK), 0);
	program_forget(&r);
}

static void a_refused_later_import_leaves_the_book(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_write("good.csv", "farm,block,trap,pest\nOtterlea,Bank,1,CM\n");
	run(&r, "--book old.db import traps good.csv", 0, "");
	run(&r, "--book old.db import traps bad.csv", 3, "is not in the book");
	run(&r, "--book old.db export traps", 0, "");
	assert_non_null(strstr(r.out.text, "Otterlea,Bank,1,CM"));
	program_forget(&r);
}

static void starting_values_are_exported_without_a_book(void **state)
{
	struct ran r = { 0 };

	(void)state;
	run(&r, "--book none.db export lures", 0,
		"there is no book yet: these are the lures that a new one starts with");
	assert_non_null(strstr(r.out.text, "\nCM 1 mg,CM,21,"));
	run(&r, "--book none.db export pests", 0, "");
	assert_non_null(strstr(r.out.text, "\nOFM,"));
	run(&r, "--book none.db export cards", 0, "");
	run(&r, "--book none.db export traps", 4, "there is no book at none.db yet");
	assert_int_not_equal(access("none.db", F_OK), 0);
	program_forget(&r);
}

static void shipped_files_import_as_they_are(void **state)
{
	static const char *const names[] = { "pests", "lures", "cards" };
	struct ran r = { 0 };
	char line[80], file[20];

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		snprintf(file, sizeof file, "%s.csv", names[i]);
		program_write("shipped.csv", shipped_find(file)->text);
		snprintf(line, sizeof line, "--book s.db import %s shipped.csv",
			names[i]);
		run(&r, line, 0, "");
		assert_non_null(strstr(r.out.text, ": 0 new, "));
	}
	program_forget(&r);
}

static void replace_asks_for_a_file_of_thresholds(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_write("t.csv", "pest,measure,comparator,value\nCM,trap-week,>=,5\n");
	run(&r, "--book r.db import thresholds t.csv --replace", 0, "");
	program_write("t.csv", "pest,measure,comparator,value\nCM,trap-week,>=,4\n");
	run(&r, "--book r.db import thresholds t.csv", 0,
		"t.csv, line 2: two thresholds of CM now judge the same traps");
	run(&r, "--book r.db import thresholds t.csv --replace", 0, "");
	assert_string_equal(
		r.out.text, "thresholds: 0 new, 1 removed, 1 already there\n");
	run(&r, "--book r.db import traps t.csv --replace", 2,
		"--replace goes with thresholds");
	run(&r, "--book r.db import thresholds --published --replace", 2,
		"--replace needs the file");
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_refused_first_import_leaves_no_book),
		cmocka_unit_test(a_refused_later_import_leaves_the_book),
		cmocka_unit_test(starting_values_are_exported_without_a_book),
		cmocka_unit_test(shipped_files_import_as_they_are),
		cmocka_unit_test(replace_asks_for_a_file_of_thresholds),
	};

	return cmocka_run_group_tests(tests, program_setup, program_teardown);
}
