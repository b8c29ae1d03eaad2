/* create.c - a new book: its shape and the shipped pests, lures and cards. */
#include "file.h"
#include "query.h"
#include "shape.h"

#include "base/csv.h"
#include "base/mem.h"
#include "base/shipped.h"
#include "base/text.h"
#include "base/words.h"
#include "book/places.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static bool cell_number(const struct csv *c, size_t column, int32_t *out, struct err *e)
{
	const char *text = c->field[column].text;

	*out = 0;
	if (*text == '\0' || text_int(text, 1, 9999, out))
		return true;
	return err_set(e, ERR_INPUT, _("%s, line %d: %s is no number from 1 to 9999"),
		c->name, (int)c->line, text);
}

static bool cell_md(const struct csv *c, size_t column, int *out, struct err *e)
{
	const char *text = c->field[column].text;

	*out = 0;
	if (*text == '\0' || day_md_parse(text, out))
		return true;
	return err_set(e, ERR_INPUT, _("%s, line %d: %s is no day such as 06-30"),
		c->name, (int)c->line, text);
}

static bool seed_pest(void *book, const struct csv *c, struct err *e)
{
	struct book *b = book;
	struct pest p = { 0 };

	text_copy(p.code, sizeof p.code, c->field[0].text);
	text_copy(p.name, sizeof p.name, c->field[1].text);
	text_copy(p.latin, sizeof p.latin, c->field[2].text);
	return store_seed_heat(p.code, &p.heat, e) && book_put_pest(b, &p, e);
}

static bool find_pest(struct book *b, const char *code, int64_t *id, struct err *e)
{
	struct query q;
	bool found = *code == '\0';

	*id = 0;
	query_start(&q, b, "SELECT id FROM pest WHERE code = ?1");
	query_text(&q, code);
	if (query_row(&q)) {
		*id = query_get(&q);
		found = true;
	}
	if (!query_end(&q, N_("the book is not made"), e))
		return false;
	return found || err_set(e, ERR_INPUT, _("lures.csv: no pest %s"), code);
}

static bool seed_lure(void *book, const struct csv *c, struct err *e)
{
	struct book *b = book;
	struct lure_kind k = { 0 };

	text_copy(k.name, sizeof k.name, c->field[0].text);
	text_copy(k.source, sizeof k.source, c->field[6].text);
	return find_pest(b, c->field[1].text, &k.pest, e) &&
	       cell_number(c, 2, &k.life_days, e) &&
	       cell_number(c, 3, &k.hot_days, e) && cell_md(c, 4, &k.hot_from, e) &&
	       cell_md(c, 5, &k.hot_to, e) && book_put_lure(b, &k, e);
}

static bool seed_card(void *book, const struct csv *c, struct err *e)
{
	struct book *b = book;
	struct card_kind k = { 0 };

	text_copy(k.name, sizeof k.name, c->field[0].text);
	text_copy(k.source, sizeof k.source, c->field[5].text);
	return cell_number(c, 1, &k.life_days, e) && cell_number(c, 2, &k.stir_at, e) &&
	       cell_number(c, 3, &k.change_at, e) &&
	       cell_number(c, 4, &k.floor_at, e) && book_put_card(b, &k, e);
}

struct seed {
	const char *file;
	size_t columns;
	bool (*row)(void *book, const struct csv *c, struct err *e);
};

static bool seed_all(struct book *b, struct err *e)
{
	static const struct seed seeds[] = {
		{ "pests.csv", 4, seed_pest },
		{ "lures.csv", 7, seed_lure },
		{ "cards.csv", 6, seed_card },
	};
	bool ok = true;

	for (size_t i = 0; ok && i < sizeof seeds / sizeof *seeds; i++)
		ok = seed_rows(seeds[i].file, seeds[i].columns, seeds[i].row, b, e);
	return ok;
}

bool store_shape(struct book *b, struct err *e)
{
	const struct shipped *schema = shipped_find("schema.sql");
	const char *what = N_("the book is not made");

	if (!schema)
		return err_set(
			e, ERR_BOOK, _("%s: schema.sql is not shipped"), _(what));
	/* An import trap by trap writes all over the table: larger pages split less. */
	if (!store_exec(b, "PRAGMA page_size = 8192", what, e) || !book_begin(b, e))
		return false;
	bool ok = store_exec(b, schema->text, what, e) && seed_all(b, e) &&
		  store_exec(b, "DELETE FROM history", what, e); /* no steps */
	b->grouped = false;
	return store_end(b, ok, what, e);
}

/* Complaints name the book and not the part. */
static bool shape_file(
	const char *part, const char *path, const char *who, struct err *e)
{
	struct book *b = mem_new(1, sizeof *b);

	b->path = mem_text(path);
	book_set_who(b, who);
	bool ok = store_connect(b, part, 0, e) && store_shape(b, e);
	book_close(b);
	return ok;
}

bool store_create(const char *path, const char *who, struct err *e)
{
	const char *what = N_("the book is not made");
	char part[STORE_PATH_BYTES];
	bool taken = false;

	if (!file_folders(path, what, e) ||
		!file_part(path, part, sizeof part, what, e))
		return false;
	bool ok = shape_file(part, path, who, e) &&
		  file_publish(part, path, &taken, what, e);
	if (!ok)
		unlink(part);
	if (taken && e)
		*e = (struct err){ 0 };
	return ok || taken; /* by another program, in this moment: then open that one */
}
