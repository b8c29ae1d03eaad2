#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "command/command.h"

#include <string.h>

enum { WORDS_MAX = 8 };

struct got {
	const char *farm, *file;
	bool csv;
	struct args args;
	struct err e;
	bool ok;
};

static struct got read_words(const char *const *words)
{
	static char copies[WORDS_MAX][32];
	char *argv[WORDS_MAX + 1] = { NULL };
	struct got g = { 0 };
	const struct option_row rows[] = {
		{ "farm", &g.farm, NULL, 0 },
		{ "csv", NULL, &g.csv, 0 },
		{ "o", &g.file, NULL, 'o' },
		{ 0 },
	};
	int argc = 0;

	g.args = (struct args){ .rows = rows, .max = 2 };

	for (; words[argc]; argc++) {
		strncpy(copies[argc], words[argc], sizeof copies[argc] - 1);
		argv[argc] = copies[argc];
	}
	g.ok = args_read(argc, argv, &g.args, &g.e);
	return g;
}

static void check_text(const char *why, const char *got, const char *want)
{
	if (!got != !want || (got && strcmp(got, want) != 0))
		fail_msg("%s: %s, not %s", why, got ? got : "none",
			want ? want : "none");
}

static void args_take_options_anywhere(void **state)
{
	static const struct {
		const char *why, *words[WORDS_MAX];
		const char *farm, *file;
		bool csv;
		size_t n_rest;
	} row[] = {
		{ "nothing", { "week", NULL }, NULL, NULL, false, 0 },
		{ "a value after it", { "week", "--farm", "A", NULL }, "A", NULL, false,
			0 },
		{ "a value behind =", { "week", "--farm=A", NULL }, "A", NULL, false,
			0 },
		{ "a value with =", { "week", "--farm=A=B", NULL }, "A=B", NULL, false,
			0 },
		{ "an empty value", { "week", "--farm=", NULL }, "", NULL, false, 0 },
		{ "a value like an option", { "week", "--farm", "--csv", NULL },
			"--csv", NULL, false, 0 },
		{ "after an argument", { "week", "x", "--csv", NULL }, NULL, NULL, true,
			1 },
		{ "a letter", { "week", "-o", "f", NULL }, NULL, "f", false, 0 },
		{ "a letter with its value", { "week", "-of", NULL }, NULL, "f", false,
			0 },
		{ "-- ends options", { "week", "--", "--csv", NULL }, NULL, NULL, false,
			1 },
		{ "- is an argument", { "week", "-", NULL }, NULL, NULL, false, 1 },
		{ "room for two", { "week", "x", "y", NULL }, NULL, NULL, false, 2 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct got g = read_words(row[i].words);

		if (!g.ok)
			fail_msg("%s: %s", row[i].why, g.e.text);
		check_text(row[i].why, g.farm, row[i].farm);
		check_text(row[i].why, g.file, row[i].file);
		if (g.csv != row[i].csv || g.args.n_rest != row[i].n_rest)
			fail_msg("%s: csv %d, rest %d", row[i].why, g.csv,
				(int)g.args.n_rest);
	}
}

static void args_refuse_with_what_there_is(void **state)
{
	static const struct {
		const char *why, *words[WORDS_MAX], *says;
	} row[] = {
		{ "unknown option", { "week", "--frm", "A", NULL },
			"\"--frm\" is no option of week; it takes --farm, --csv, -o "
			"and "
			"--help" },
		{ "the start of one", { "week", "--far", "A", NULL }, "is no option" },
		{ "more than one", { "week", "--farms", "A", NULL }, "is no option" },
		{ "unknown letter", { "week", "-x", NULL }, "\"-x\" is no option" },
		{ "no value", { "week", "--farm", NULL }, "--farm wants a value" },
		{ "no value for a letter", { "week", "-o", NULL }, "-o wants a value" },
		{ "a value too many", { "week", "--csv=1", NULL }, "takes no value" },
		{ "twice", { "week", "--farm", "A", "--farm", "B", NULL }, "twice" },
		{ "one argument too many", { "week", "x", "y", "z", NULL },
			"week has no use for \"z\"" },
		{ "book after the command", { "week", "--book", "f", NULL },
			"stands before the command" },
		{ "today after the command", { "week", "--today=2026-07-21", NULL },
			"stands before the command" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct got g = read_words(row[i].words);

		if (g.ok || g.e.kind != ERR_USAGE || !strstr(g.e.text, row[i].says))
			fail_msg("%s: \"%s\"", row[i].why, g.e.text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(args_take_options_anywhere),
		cmocka_unit_test(args_refuse_with_what_there_is),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
