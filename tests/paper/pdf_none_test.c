#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Stands before those of the archive: a build without Cairo and Pango. */
#include "../../src/paper/pdf_none.c"

#include "lines.h"
#include "sheets.h"

static void a_build_without_cairo_says_so_in_one_sentence(void **state)
{
	struct sheet s = sheets_with(2);
	struct sheet_set set = { .items = &s, .n = 1 };
	const struct sheet_form form = sheets_form(PAPER_A4, false);
	struct buf out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_false(pdf_built_in());
	assert_false(paper_sheets_pdf(&set, &form, &out, &e));
	assert_int_equal(e.kind, ERR_USAGE);
	assert_non_null(strstr(e.text, "writes text only"));
	assert_int_equal(out.n, 0);
	assert_int_equal(set.without_font, 0);
	free(s.traps);
}

static void a_build_without_cairo_still_sets_text(void **state)
{
	struct sheet s = sheets_with(2);
	char *text = sheets_print(&s, sheets_form(PAPER_A4, true));

	(void)state;
	assert_non_null(strstr(text, "T002 Quarry Rows CM"));
	free(text);
	free(s.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_build_without_cairo_says_so_in_one_sentence),
		cmocka_unit_test(a_build_without_cairo_still_sets_text),
	};
	return cmocka_run_group_tests(tests, lines_setup, NULL);
}
