#include "screen/told.h"

#include "base/mem.h"
#include "base/words.h"
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
	sift_forget(&t->sift);
}

void told_free(struct told *t)
{
	free(t->rows);
	sift_free(&t->sift);
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

static bool has(const void *list, size_t i, const char *text)
{
	const struct told *t = list;
	const struct told_row *r = &t->rows[i];
	bool found = narrow_contains(r->head, text);

	for (int k = 0; k < TOLD_SENTENCES && !found; k++)
		found = is_said(r, k) && narrow_contains(r->sentence[k], text);
	return found;
}

void told_find(struct told *t)
{
	sift_find(&t->sift, t->n, has, t, &t->picked);
}

void told_start(struct told *t)
{
	sift_end(&t->sift);
	t->picked = t->top = 0;
}

bool told_key(struct told *t, int action, struct input in, struct message *m)
{
	told_find(t);
	if (sift_key(&t->sift, in, m)) {
		told_find(t);
		return true;
	}
	if (sift_move(&t->sift, action, t->shown, &t->picked))
		return true;
	t->sift.narrow.typing = false;
	return false;
}

static const struct told_row *row_at(const struct told *t, size_t place)
{
	return &t->rows[t->sift.rows[place]];
}

/* The picked row is whole, if there is room for it. Of a long way down to it no more is
 * measured than fits. */
static void scroll(struct told *t, int cols, int rows)
{
	size_t at = sift_place(&t->sift, t->picked), from = at;
	int room = rows;

	if (t->top > at)
		t->top = at;
	if (at >= t->sift.n)
		return;
	room -= lines_of(row_at(t, at), cols);
	while (from > t->top && room >= lines_of(row_at(t, from - 1), cols))
		room -= lines_of(row_at(t, --from), cols);
	t->top = from;
}

static int draw_row(
	const struct told *t, struct canvas *c, int row, int last, size_t place)
{
	const struct told_row *r = row_at(t, place);
	bool here = t->sift.rows[place] == t->picked;
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

	told_find(t);
	scroll(t, c->cols, last - first + 1);
	*above = t->top > 0;
	for (i = t->top; i < t->sift.n && row <= last; i++)
		row = draw_row(t, c, row, last, i);
	if (t->sift.n == 0 && t->n > 0) {
		canvas_text(c, first, 1, 0, INK_PLAIN,
			_("Nothing contains it: Esc shows all."));
		canvas_cursor(c, first, 0);
	}
	t->shown = i > t->top ? (int)(i - t->top) : 1;
	return i < t->sift.n;
}
