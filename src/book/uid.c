#include "book/uid.h"

#include "row.h"

#include "base/words.h"

#include <assert.h>

bool book_uid(struct book *b, const char *kind, int64_t id, char out[static UID_TEXT],
	struct err *e)
{
	const struct row_kind *k = row_kind(kind);
	struct query q;
	char sql[128];

	assert(k);
	sqlite3_snprintf(sizeof sql, sql,
		"SELECT lower(hex(uid)) FROM \"%w\" WHERE id = ?1", k->table);
	query_start_once(&q, b, sql);
	query_int(&q, id);
	bool found = query_row(&q);
	if (found)
		query_get_copy(&q, out, UID_TEXT);
	if (!query_end(&q, N_("the book cannot be read"), e))
		return false;
	return found || err_set(e, ERR_NOT_FOUND,
				_("the %s is not in the book any more"), _(k->word));
}
