#include "exchange/taking.h"

enum { PIECE_BYTES = 1 << 16 };

bool giving_row(struct giving *g, const void *row)
{
	char value[VALUE_BYTES];

	for (size_t i = 0; i < g->kind->n_columns; i++) {
		const struct column *c = &g->kind->columns[i];
		if (c->passing)
			continue;
		csv_add(&g->text, c->type->write(c, (const char *)row + c->at, value),
			i == 0);
	}
	csv_end_row(&g->text);
	return g->text.n < PIECE_BYTES || g->put(g->arg, &g->text, g->e);
}

bool exchange_export(struct book *b, const struct kind *kind,
	bool (*put)(void *arg, struct buf *text, struct err *e), void *arg,
	struct err *e)
{
	struct giving g = { .book = b, .kind = kind, .put = put, .arg = arg, .e = e };

	for (size_t i = 0; i < kind->n_columns; i++)
		if (!kind->columns[i].passing)
			csv_add(&g.text, kind->columns[i].name, i == 0);
	csv_end_row(&g.text);
	bool ok = kind->give(&g, e) && put(arg, &g.text, e);
	buf_free(&g.text);
	return ok;
}
