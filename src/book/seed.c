/* seed.c - the tables that come with the program, row by row. */
#include "shape.h"

#include "base/shipped.h"
#include "base/words.h"

#include <stdio.h>

bool seed_rows(const char *name, size_t columns,
	bool (*row)(void *arg, const struct csv *c, struct err *e), void *arg,
	struct err *e)
{
	const struct shipped *file = shipped_find(name);
	struct csv c;
	bool ok = true;

	if (!file || file->n == 0)
		return true;
	FILE *f = fmemopen((void *)(uintptr_t)file->text, file->n, "r");
	if (!f)
		return err_set(e, ERR_BOOK,
			_("the book is not made: %s cannot be read"), name);
	csv_open(&c, f, name);
	enum csv_got got = csv_next(&c, e); /* the names of the columns */
	while (ok && got == CSV_ROW && (got = csv_next(&c, e)) == CSV_ROW)
		ok = c.n_fields == columns
			     ? row(arg, &c, e)
			     : err_set(e, ERR_INPUT,
				       _("%s, line %d: %zu columns, not %zu"), c.name,
				       (int)c.line, c.n_fields, columns);
	csv_close(&c);
	fclose(f);
	return ok && got == CSV_END;
}
