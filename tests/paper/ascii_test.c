#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "lines.h"
#include "paper/ascii.h"

static void ascii_keeps_columns_and_meaning(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "plain text stays", "12 moths, >=5", "12 moths, >=5" },
		{ "the lowest block is 1", "\u2581", "1" },
		{ "the full block is 8", "\u2588", "8" },
		{ "one below the lowest is no block", "\u2580", "?" },
		{ "one above the full block is none", "\u2589", "?" },
		{ "not read", "_\u00b7_", "_._" },
		{ "a rule", "\u2500\u2500", "--" },
		{ "a cut", "North\u2026", "North~" },
		{ "another letter", "Caf\u00e9", "Caf?" },
		{ "a wide character takes two", "\u6881x", "??x" },
		{ "a combining one takes none", "e\u0301x", "ex" },
		{ "a torn byte", "a\xc3", "a?" },
		{ "nothing", "", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf out = { 0 };

		paper_ascii(row[i].text, &out);
		if (strcmp(out.text, row[i].want) != 0)
			fail_msg("%s: \"%s\", not \"%s\"", row[i].why, out.text,
				row[i].want);
		buf_free(&out);
	}
}

static void wrap_breaks_at_blanks(void **state)
{
	static const struct {
		const char *why, *text;
		int indent, cols;
		const char *want;
	} row[] = {
		{ "what fits stays whole", "one two", 0, 7, "one two\n" },
		{ "one column less breaks", "one two", 0, 6, "one\ntwo\n" },
		{ "indent counts", "one two", 2, 9, "  one two\n" },
		{ "indent on every line", "one two", 2, 8, "  one\n  two\n" },
		{ "several blanks at a break go", "one   two", 0, 5, "one\ntwo\n" },
		{ "a long word is cut", "abcdefg", 0, 3, "abc\ndef\ng\n" },
		{ "an empty text adds nothing", "", 4, 20, "" },
		{ "blanks only add nothing", "   ", 4, 20, "" },
		{ "control characters show", "a\ab\nc", 0, 20, "a?b?c\n" },
		{ "wide characters count two", "\u6881\u6881 x", 0, 5,
			"\u6881\u6881\nx\n" },
		{ "wider than the line ends all the same", "\u6881", 0, 1, "\u6881\n" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf out = { 0 };

		buf_add(&out, "");
		paper_wrap(&out, row[i].text, row[i].indent, row[i].cols);
		if (strcmp(out.text, row[i].want) != 0)
			fail_msg("%s: \"%s\", not \"%s\"", row[i].why, out.text,
				row[i].want);
		buf_free(&out);
	}
}

static void cell_shows_where_it_is_cut(void **state)
{
	static const struct {
		const char *why, *text;
		int cols;
		const char *want;
	} row[] = {
		{ "room to spare", "abc", 5, "abc  " },
		{ "set to the right", "abc", -5, "  abc" },
		{ "fits exactly", "abcde", 5, "abcde" },
		{ "one too many", "abcdef", 5, "abcd\u2026" },
		{ "a number cut to the right side", "123456", -5, "1234\u2026" },
		{ "a wide character does not fit half", "\u6881\u6881\u6881", 4,
			"\u6881\u2026 " },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct buf out = { 0 };

		paper_cell(&out, row[i].text, row[i].cols);
		if (strcmp(out.text, row[i].want) != 0)
			fail_msg("%s: \"%s\", not \"%s\"", row[i].why, out.text,
				row[i].want);
		buf_free(&out);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ascii_keeps_columns_and_meaning),
		cmocka_unit_test(wrap_breaks_at_blanks),
		cmocka_unit_test(cell_shows_where_it_is_cut),
	};

	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
