/* json.c - json_object() for the triggers that keep the history. SQLite's own does
 * the same, but before 3.41 it is not held safe in a schema that is not trusted, and
 * a book that comes from somebody else is not. */
#include "store.h"

#include "base/buf.h"

static void add_text(struct buf *out, const unsigned char *text)
{
	buf_add(out, "\"");
	for (; text && *text; text++) {
		if (*text < 0x20)
			buf_addf(out, "\\u%04x", *text);
		else if (*text == '"' || *text == '\\')
			buf_addf(out, "\\%c", *text);
		else
			buf_add_n(out, (const char *)text, 1);
	}
	buf_add(out, "\"");
}

static void add_value(struct buf *out, sqlite3_value *value)
{
	switch (sqlite3_value_type(value)) {
	case SQLITE_INTEGER:
		buf_addf(out, "%lld", (long long)sqlite3_value_int64(value));
		break;
	case SQLITE_FLOAT:
		buf_addf(out, "%.17g", sqlite3_value_double(value));
		break;
	case SQLITE_TEXT:
		add_text(out, sqlite3_value_text(value));
		break;
	default:
		buf_add(out, "null");
	}
}

static void object(sqlite3_context *context, int n, sqlite3_value **values)
{
	struct buf out = { 0 };

	buf_add(&out, "{");
	for (int i = 0; i + 1 < n; i += 2) {
		buf_add(&out, i ? "," : "");
		add_text(&out, sqlite3_value_text(values[i]));
		buf_add(&out, ":");
		add_value(&out, values[i + 1]);
	}
	buf_add(&out, "}");
	sqlite3_result_text(context, out.text, -1, SQLITE_TRANSIENT);
	buf_free(&out);
}

int store_add_json(sqlite3 *db)
{
	return sqlite3_create_function_v2(db, "json_object", -1,
		SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS, NULL, object,
		NULL, NULL, NULL);
}
