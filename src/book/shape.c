/* shape.c - is the book's shape the one that we gave it? A trigger of somebody else
 * runs whenever a count is saved, and could take it away again. */
#include "shape.h"
#include "query.h"

#include "base/mem.h"
#include "base/shipped.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

/* One thing of a schema. The texts are SQLite's, until the next one. */
struct thing {
	const char *type, *name, *of, *sql;
};

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/* Past blanks and comments. */
static const char *skip(const char *s)
{
	for (;;) {
		while (is_blank(*s))
			s++;
		if (strncmp(s, "--", 2) != 0)
			return s;
		s += strcspn(s, "\n");
	}
}

/* The end of the word, quoted text or sign at s. */
static const char *piece_end(const char *s)
{
	if (*s == '\'' || *s == '"') {
		const char *end = strchr(s + 1, *s);
		return end ? end + 1 : s + strlen(s);
	}
	const char *end = s;
	while (*end && !is_blank(*end) && !strchr("'\"(),", *end) &&
		strncmp(end, "--", 2) != 0)
		end++;
	return end == s ? s + 1 : end;
}

/* The same, piece by piece. */
static bool same_sql(const char *a, const char *b)
{
	for (a = skip(a), b = skip(b); *a && *b; a = skip(a), b = skip(b)) {
		size_t n = (size_t)(piece_end(a) - a);
		if (n != (size_t)(piece_end(b) - b) || memcmp(a, b, n) != 0)
			return false;
		a += n;
		b += n;
	}
	return *a == *b;
}

static bool next_thing(struct query *q, struct thing *out)
{
	*out = (struct thing){ "", "", "", "" };
	if (!query_row(q))
		return false;
	out->type = query_get_text(q);
	out->name = query_get_text(q);
	out->of = query_get_text(q);
	out->sql = query_get_text(q);
	return true;
}

static bool same_thing(const struct thing *a, const struct thing *b)
{
	return strcmp(a->type, b->type) == 0 && strcmp(a->name, b->name) == 0 &&
	       strcmp(a->of, b->of) == 0 && same_sql(a->sql, b->sql);
}

static void ask(struct query *q, struct book *b)
{
	query_start(q, b,
		"SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE NOT "
		"(type = 'table' AND name IN ('sqlite_stat1', 'sqlite_stat4', "
		"'sqlite_sequence')) ORDER BY name, type, tbl_name");
}

static const char *type_word(const char *type)
{
	if (strcmp(type, "trigger") == 0)
		return _("trigger");
	if (strcmp(type, "index") == 0)
		return _("index");
	return strcmp(type, "view") == 0 ? _("view") : _("table");
}

/* Where the two first part: one has a thing that the other lacks, or has otherwise. */
static void write_fault(
	const struct thing *theirs, const struct thing *ours, char *out, size_t size)
{
	int order = !*theirs->name ? 1
		    : !*ours->name ? -1
				   : strcmp(theirs->name, ours->name);

	if (order > 0)
		snprintf(out, size,
			_("this book has been changed by another program: %s %s is "
			  "missing"),
			type_word(ours->type), ours->name);
	else
		snprintf(out, size,
			_("this book has been changed by another program: %s %s is not "
			  "ours"),
			type_word(theirs->type), theirs->name);
}

static bool compare(struct book *b, struct book *model, char *out, size_t size,
	const char *what, struct err *e)
{
	struct thing theirs, ours;
	struct query q, m;
	bool more;

	ask(&q, b);
	ask(&m, model);
	do {
		more = next_thing(&q, &theirs);
		more = next_thing(&m, &ours) || more;
	} while (more && same_thing(&theirs, &ours));
	if (more)
		write_fault(&theirs, &ours, out, size);
	bool ok = query_end(&q, what, e);
	return query_end(&m, what, e) && ok;
}

bool store_shape_fault(struct book *b, char *out, size_t size, struct err *e)
{
	const char *what = N_("the shape of the book cannot be looked at");
	const struct shipped *schema = shipped_find("schema.sql");
	struct book *model = mem_new(1, sizeof *model);

	*out = '\0';
	model->path = mem_text(b->path); /* which complaints name */
	model->in_memory = true;
	bool ok = store_connect(model, ":memory:", 0, e) &&
		  (!schema || store_exec(model, schema->text, what, e)) &&
		  compare(b, model, out, size, what, e);
	book_close(model);
	return ok;
}

bool store_shape_is_ours(struct book *b, const struct upgrades *u, struct err *e)
{
	char fault[256];

	if (u->version != STORE_VERSION)
		return true;
	if (!store_shape_fault(b, fault, sizeof fault, e))
		return false;
	return *fault == '\0' ||
	       err_set(e, ERR_BOOK, _("%s; it is left as it is (%s)"), fault, b->path);
}
