#include "book/uid.h"

#include "row.h"

#include <assert.h>

bool book_uid(struct book *b, const char *kind, int64_t id, char out[static UID_TEXT],
	struct err *e)
{
	const struct row_kind *k = row_kind(kind);
	struct query q;

	assert(k);
	bool found = row_seek(&q, b, k, "lower(hex(uid))", id);
	if (found)
		query_get_copy(&q, out, UID_TEXT);
	return row_read(&q, k, found, e);
}
