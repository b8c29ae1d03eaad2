#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "paper/pdf.h"
#include "program.h"

static const char traps[] = "farm,block,trap,pest,lure,order,hung\n"
			    "Otterlea,Quarry Rows,1,CM,CM 1 mg,1,2026-05-05\n"
			    "Otterlea,Quarry Rows,2,CM,CM 1 mg,2,2026-05-05\n"
			    "Quillet Farm,Ridge,R1,OFM,OFM standard,1,2026-05-05\n";

static void write_file(const char *name, const char *text)
{
	FILE *f = fopen(name, "w");

	assert_non_null(f);
	assert_int_equal(fputs(text, f) >= 0, 1);
	assert_int_equal(fclose(f), 0);
}

static void put_lp(const char *ends)
{
	assert_int_equal(program_put_lp(ends), 0);
}

static int setup(void **state)
{
	struct ran r = { 0 };

	if (program_setup(state) != 0)
		return -1;
	write_file("traps.csv", traps);
	program_run(&r, "--book b.db --today 2026-07-21 import traps traps.csv");
	int status = r.status;
	program_forget(&r);
	return status;
}

static void expect_file(const char *name, const char *starts)
{
	struct buf text = { 0 };

	program_read(name, &text);
	if (strncmp(text.text, starts, strlen(starts)) != 0)
		fail_msg("%s begins with %.60s", name, text.text);
	buf_free(&text);
}

static const char *usual_start(void)
{
	return pdf_built_in() ? "%PDF-1.4" : "Scouting sheet";
}

static void print_tells_the_job_that_lp_made_of_it(void **state)
{
	struct ran r = { 0 };

	(void)state;
	put_lp("cat >lp-data\necho 'request id is Barn-7 (1 file(s))'");
	program_run(&r, "--book b.db --today 2026-07-21 print");
	assert_string_equal(r.err.text, "");
	assert_int_equal(r.status, 0);
	assert_string_equal(
		r.out.text, "Given to the printer: request id is Barn-7 (1 file(s))\n");
	expect_file("lp-data", usual_start());
	expect_file("lp-words", "-t\nScouting sheets\n");
	program_forget(&r);
}

static void print_hands_on_what_was_asked_for(void **state)
{
	static const struct {
		const char *why, *words, *lp_words, *data;
	} row[] = {
		{ "the sheet by its name", "sheet", "-t\nScouting sheets\n", "" },
		{ "a farm's", "sheet --farm Otterlea", "-t\nScouting sheet: Otterlea\n",
			"" },
		{ "a printer", "--printer Barn sheet",
			"-t\nScouting sheets\n-d\nBarn\n", "" },
		{ "a printer called sheet", "--printer sheet",
			"-t\nScouting sheets\n-d\nsheet\n", "" },
		{ "as text", "sheet --format text --blank", "-t\n",
			"Scouting sheet to carry: Otterlea" },
		{ "a name that looks like an option", "--printer=-Barn sheet",
			"-t\nScouting sheets\n-d\n-Barn\n", "" },
	};

	(void)state;
	put_lp("cat >lp-data");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct ran r = { 0 };
		char line[128];

		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 print %s",
			row[i].words);
		program_run(&r, line);
		if (r.status != 0)
			fail_msg("%s: %s", row[i].why, r.err.text);
		assert_string_equal(r.out.text, "Given to the printer.\n");
		expect_file("lp-words", row[i].lp_words);
		expect_file("lp-data", row[i].data[0] ? row[i].data : usual_start());
		program_forget(&r);
	}
}

static void print_says_why_nothing_was_printed(void **state)
{
	static const struct {
		const char *why, *lp; /* NULL: there is none */
		const char *words;
		int status;
		const char *says;
	} row[] = {
		{ "no lp", NULL, "", 4, "this machine has no lp" },
		{ "lp refuses",
			"echo 'lp: Error - no default destination.' >&2; exit 1", "", 5,
			"lp refused: lp: Error - no default destination." },
		{ "lp refuses without a word", "exit 1", "", 5, "it did not say why" },
		{ "lp is killed", "kill -9 $$", "", 5, "it did not say why" },
		{ "lp writes what no terminal should see",
			"printf 'a\\033[2Jb\\n' >&2; exit 1", "", 5, "a?[2Jb" },
		{ "a file is named", "exit 0", "sheet -o x.pdf", 2,
			"print sends to the printer" },
		{ "no such option", "exit 0", "--farm Otterlea", 2,
			"it takes --printer and --help" },
		{ "no such paper", "exit 0", "sheet --paper a5", 2, "a4 or letter" },
		{ "no such farm", "exit 0", "sheet --farm Nowhere", 4,
			"no farm \"Nowhere\"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char path[4096], line[128];
		struct ran r = { 0 };

		snprintf(path, sizeof path, "%s", getenv("PATH"));
		if (row[i].lp)
			put_lp(row[i].lp);
		else
			setenv("PATH", "/nowhere", 1);
		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 print%s%s",
			row[i].words[0] ? " " : "", row[i].words);
		program_run(&r, line);
		setenv("PATH", path, 1);
		if (r.status != row[i].status || !strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d, \"%s\"", row[i].why, r.status,
				r.err.text);
		assert_int_equal(r.out.n, 0);
		program_forget(&r);
	}
}

/* A full pipe would wait for a reader; the page is in a file. */
static void print_minds_no_lp_that_does_not_read(void **state)
{
	struct ran r = { 0 };

	(void)state;
	put_lp("exec true");
	program_run(&r, "--book b.db --today 2026-07-21 print");
	assert_int_equal(r.status, 0);
	program_forget(&r);
}

static void print_leaves_no_file_behind(void **state)
{
	struct ran r = { 0 };

	(void)state;
	put_lp("ls -a >lp-sees");
	program_run(&r, "--book b.db --today 2026-07-21 print");
	struct buf seen = { 0 };
	program_read("lp-sees", &seen);
	assert_null(strstr(seen.text, "mothtally-print"));
	buf_free(&seen);
	program_forget(&r);
}

static void sheet_is_a_pdf_by_its_name_or_when_asked(void **state)
{
	static const struct {
		const char *why, *words, *file;
		bool is_pdf;
	} row[] = {
		{ "by its name", "-o a.pdf", "a.pdf", true },
		{ "in capitals too", "-o B.PDF", "B.PDF", true },
		{ "another name is text", "-o c.txt", "c.txt", false },
		{ "a name that only holds it", "-o d.pdf.txt", "d.pdf.txt", false },
		{ "asked for", "--format pdf -o e", "e", true },
		{ "asked not to", "--format text -o f.pdf", "f.pdf", false },
		{ "to stdout", "--format pdf", "stdout.txt", true },
		{ "to carry", "--blank --paper letter -o g.pdf", "g.pdf", true },
	};

	(void)state;
	if (!pdf_built_in())
		skip();
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct ran r = { 0 };
		char line[128];

		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 sheet %s",
			row[i].words);
		program_run(&r, line);
		if (r.status != 0 || r.err.n)
			fail_msg("%s: %s", row[i].why, r.err.text);
		expect_file(row[i].file, row[i].is_pdf ? "%PDF-1.4" : "Scouting sheet");
		program_forget(&r);
	}
}

/* Letter is 60 lines of text, A4 64. */
static void sheet_is_set_for_the_paper_of_the_settings(void **state)
{
	static const struct {
		const char *why, *settings, *words;
		int lines;
	} row[] = {
		{ "A4 unless something is said", "", "", 64 },
		{ "the setting", "paper=letter", "", 60 },
		{ "the command line before it", "paper=letter", " --paper a4", 64 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct ran r = { 0 };
		char line[128];
		int lines = 0;

		snprintf(line, sizeof line,
			"--book b.db --today 2026-07-21 sheet --farm Otterlea%s",
			row[i].words);
		setenv("MOTHTALLY_SETTINGS", row[i].settings, 1);
		program_run(&r, line);
		unsetenv("MOTHTALLY_SETTINGS");
		for (const char *at = r.out.text; (at = strchr(at, '\n')); at++)
			lines++;
		if (lines != row[i].lines)
			fail_msg("%s: %d lines", row[i].why, lines);
		program_forget(&r);
	}
}

static void sheet_of_a_day_is_the_same_file_again(void **state)
{
	struct buf one = { 0 }, two = { 0 };
	struct ran r = { 0 };

	(void)state;
	if (!pdf_built_in())
		skip();
	program_run(&r, "--book b.db --today 2026-07-21 sheet -o one.pdf");
	program_run(&r, "--book b.db --today 2026-07-21 sheet -o two.pdf");
	program_read("one.pdf", &one);
	program_read("two.pdf", &two);
	assert_int_equal(one.n, two.n);
	assert_memory_equal(one.text, two.text, one.n);
	buf_free(&one);
	buf_free(&two);
	program_forget(&r);
}

static void a_machine_without_fonts_says_so(void **state)
{
	struct ran r = { 0 };
	char path[4096];

	if (!pdf_built_in())
		skip();
	write_file("no-fonts.conf",
		"<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\">"
		"<fontconfig></fontconfig>\n");
	snprintf(path, sizeof path, "%s/no-fonts.conf", (char *)*state);
	setenv("FONTCONFIG_FILE", path, 1);
	program_run(&r, "--book b.db --today 2026-07-21 sheet -o none.pdf");
	unsetenv("FONTCONFIG_FILE");
	assert_int_equal(r.status, 5);
	assert_non_null(strstr(r.err.text, "no font"));
	assert_int_not_equal(access("none.pdf", F_OK), 0);
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(print_tells_the_job_that_lp_made_of_it),
		cmocka_unit_test(print_hands_on_what_was_asked_for),
		cmocka_unit_test(print_says_why_nothing_was_printed),
		cmocka_unit_test(print_minds_no_lp_that_does_not_read),
		cmocka_unit_test(print_leaves_no_file_behind),
		cmocka_unit_test(sheet_is_a_pdf_by_its_name_or_when_asked),
		cmocka_unit_test(sheet_is_set_for_the_paper_of_the_settings),
		cmocka_unit_test(sheet_of_a_day_is_the_same_file_again),
		cmocka_unit_test(a_machine_without_fonts_says_so),
	};
	return cmocka_run_group_tests(tests, setup, program_teardown);
}
