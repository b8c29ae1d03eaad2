/* today_none.c - traps that catch, and of whose catch nothing is said. */
#include "base/buf.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"
#include "today_parts.h"

enum { NAMED_MOST = 3 }; /* blocks; the others are counted */

static bool is_unjudged(const struct verdict_rows *v, size_t i)
{
	const struct verdict_row *row = &v->items[i];

	return verdicts_has_none(v, i) && row->weekly.moths > 0 &&
	       weekly_x10(&row->weekly) > 0;
}

static bool is_same(const struct verdict_row *a, const struct verdict_row *b)
{
	return a->block == b->block && a->pest == b->pest;
}

/* How many of the block and pest of row i there are; 0: told with an earlier row. */
static int in_block(const struct verdict_rows *v, size_t i)
{
	int n = 0;

	for (size_t k = 0; k < v->n; k++) {
		if (!is_same(&v->items[k], &v->items[i]) || !is_unjudged(v, k))
			continue;
		if (k < i)
			return 0;
		n++;
	}
	return n;
}

static void add_block(
	const struct log *l, const struct verdict_row *row, int n, struct buf *out)
{
	const struct block *b = log_block(l, row->block);
	const struct pest *p = log_pest(l, row->pest);

	buf_add(out, out->n ? ", " : "");
	if (b)
		bar_say_place(l, b, out);
	buf_addf(out, " %s (%d)", p ? p->code : "", n);
}

void today_say_no_threshold(
	const struct log *l, const struct verdict_rows *v, char *out, size_t size)
{
	struct buf names = { 0 }, text = { 0 };
	int all = 0, blocks = 0;

	for (size_t i = 0; l->rules.n > 0 && i < v->n; i++) {
		int n = is_unjudged(v, i) ? in_block(v, i) : 0;
		all += n;
		blocks += n > 0;
		if (n > 0 && blocks <= NAMED_MOST)
			add_block(l, &v->items[i], n, &names);
	}
	text_copy(out, size, "");
	if (all == 0)
		return;
	buf_addf(&text,
		ngettext("no threshold for %d trap that catches: %s",
			"no threshold for %d traps that catch: %s", (unsigned long)all),
		all, names.text);
	if (blocks > NAMED_MOST)
		buf_addf(&text,
			ngettext(" and %d more block", " and %d more blocks",
				(unsigned long)(blocks - NAMED_MOST)),
			blocks - NAMED_MOST);
	text_copy(out, size, text.text);
	buf_free(&names);
	buf_free(&text);
}
