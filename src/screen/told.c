#include "screen/told.h"

#include "base/mem.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdlib.h>

enum { LEFT = 3, INDENT = 5 };

struct told_row *told_add(struct told *t)
{
	t->rows = mem_grow(t->rows, &t->cap, t->n + 1, sizeof *t->rows);
	t->rows[t->n] = (struct told_row){ .tone = TONE_PLAIN };
	return &t->rows[t->n++];
}

void told_clear(struct told *t)
{
	t->n = 0;
}

void told_free(struct told *t)
{
	free(t->rows);
	*t = (struct told){ 0 };
}

static bool is_said(const struct told_row *r, int i)
{
	return r->sentence[i] && r->sentence[i][0];
}

static int lines_of(const struct told_row *r, int cols)
{
	size_t n = reader_lines(r->head, cols - LEFT - 1);

	for (int i = 0; i < TOLD_SENTENCES; i++)
		if (is_said(r, i))
			n += reader_lines(r->sentence[i], cols - INDENT - 1);
	return (int)n;
}

/* The picked row is whole, if there is room for it. */
static void scroll(struct told *t, int cols, int rows)
{
	int need = 0;

	if (t->picked >= t->n)
		t->picked = t->n ? t->n - 1 : 0;
	if (t->top > t->picked)
		t->top = t->picked;
	for (size_t i = t->top; i <= t->picked && i < t->n; i++)
		need += lines_of(&t->rows[i], cols);
	while (need > rows && t->top < t->picked)
		need -= lines_of(&t->rows[t->top++], cols);
}

static int draw_row(const struct told *t, struct canvas *c, int row, int last, size_t i)
{
	const struct told_row *r = &t->rows[i];
	bool here = i == t->picked;
	enum ink ink = here ? INK_PICKED : list_ink(r->tone);
	struct reader_box box = { row, LEFT, c->cols - LEFT - 1, last - row + 1, 0 };

	if (here) {
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	row += reader_text(c, box, ink, r->head);
	for (int k = 0; k < TOLD_SENTENCES && row <= last; k++)
		if (is_said(r, k)) {
			box = (struct reader_box){ row, INDENT, c->cols - INDENT - 1,
				last - row + 1, 0 };
			row += reader_text(c, box, INK_PLAIN, r->sentence[k]);
		}
	return row;
}

bool told_draw(struct told *t, struct canvas *c, int first, int last, bool *above)
{
	size_t i = 0;
	int row = first;

	scroll(t, c->cols, last - first + 1);
	*above = t->top > 0;
	for (i = t->top; i < t->n && row <= last; i++)
		row = draw_row(t, c, row, last, i);
	t->shown = i > t->top ? (int)(i - t->top) : 1;
	return i < t->n;
}
