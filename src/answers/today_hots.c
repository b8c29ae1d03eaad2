/* today_hots.c - the hot blocks of all farms, a line each. */
#include "answers/hot_lines.h"
#include "answers/today.h"

#include "base/mem.h"
#include "base/text.h"

static void add_hot(
	const struct farm *f, const struct hot_line *line, struct today *out)
{
	out->hots =
		mem_grow(out->hots, &out->cap_hots, out->n_hots + 1, sizeof *out->hots);
	struct today_hot *hot = &out->hots[out->n_hots++];

	*hot = (struct today_hot){
		.farm = f->id, .block = line->block, .pest = line->pest
	};
	text_copy(hot->name, sizeof hot->name, f->name);
	text_copy(hot->says, sizeof hot->says, line->text);
}

bool today_read_hots(
	const struct log *l, struct book *b, struct today *out, struct err *e)
{
	struct hot_lines lines = { 0 };
	bool ok = true;

	out->n_hots = 0;
	for (size_t i = 0; ok && i < l->farms.n; i++) {
		ok = hot_lines_read(&lines, b, l, l->farms.items[i].id, e);
		for (size_t k = 0; ok && k < lines.n; k++)
			add_hot(&l->farms.items[i], &lines.items[k], out);
	}
	hot_lines_free(&lines);
	return ok;
}
