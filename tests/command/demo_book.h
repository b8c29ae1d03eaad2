/* demo_book.h - a book in the test's own folder, made of files of the demo. */
#ifndef TESTS_COMMAND_DEMO_BOOK_H
#define TESTS_COMMAND_DEMO_BOOK_H

#include "base/shipped.h"
#include "program.h"

/* Group set-up: imports the n files, each a kind and the name of its file, into
 * d.db. */
static inline int program_fill(void **state, const char *const (*files)[2], size_t n)
{
	struct ran r = { 0 };
	int failed = program_setup(state);

	for (size_t i = 0; failed == 0 && i < n; i++) {
		char name[40], line[80];

		snprintf(name, sizeof name, "demo/%s.csv", files[i][1]);
		program_write("in.csv", shipped_find(name)->text);
		snprintf(line, sizeof line,
			"--book d.db --today 2026-07-21 import %s in.csv", files[i][0]);
		program_run(&r, line);
		failed = r.status;
		if (failed)
			fprintf(stderr, "%s: %s", name, r.err.text);
	}
	program_forget(&r);
	return failed;
}

#endif
