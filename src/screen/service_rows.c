/* service_rows.c - the rows of the service page: three lists, one below the other. */
#include "base/mem.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "service_parts.h"

#include <stdio.h>
#include <stdlib.h>

enum { DUE, FARM, TRAP, BLOCK, WHAT, KIND, STATE, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[DUE] = { N_("due"), .least = 6, .whole = COLUMN_NUMBER },
	[FARM] = { N_("farm"), .least = 6, .drop = 1 },
	[TRAP] = { N_("trap"), .least = 4, .whole = COLUMN_LABEL },
	[BLOCK] = { N_("block"), .least = 6, .drop = 2 },
	[WHAT] = { "", .least = 4, .whole = COLUMN_NUMBER },
	[KIND] = { N_("kind"), .least = 8, .drop = 3 },
	[STATE] = { N_("state"), .least = 9 },
};

enum { LEFT = 3, LEFT_NARROW = 2 };

static bool has(const void *page, size_t i, const char *text)
{
	const struct service_page *p = page;
	const struct due_item *item = i < p->due->n ? &p->due->items[i] : NULL;
	struct buf row = { 0 };
	bool found = false;

	if (item)
		return narrow_contains(item->farm_name, text) ||
		       narrow_contains(item->label, text) ||
		       narrow_contains(item->block_name, text) ||
		       narrow_contains(item->is_lure ? _("lure") : _("card"), text) ||
		       narrow_contains(words_shipped(item->kind_name), text) ||
		       narrow_contains(item->state_text, text);
	service_say_row(p, i, &row);
	found = narrow_contains(row.text, text);
	buf_free(&row);
	return found;
}

void service_find(struct service_page *p)
{
	if (!p->sift.is_found)
		p->lines.cols = 0;
	sift_find(&p->sift, service_count(p), has, p, &p->picked);
}

void service_page_show(
	struct service_page *p, const struct due *due, const struct shelf *shelf)
{
	p->due = due;
	p->shelf = shelf;
	p->is_measured = false;
	sift_forget(&p->sift);
	service_find(p);
}

void service_page_free(struct service_page *p)
{
	sift_free(&p->sift);
	free(p->lines.items);
	*p = (struct service_page){ 0 };
}

static int left_of(int cols)
{
	return cols < FRAME_WIDE ? LEFT_NARROW : LEFT;
}

/* Columns of a row that is no item. */
static int text_room(int cols)
{
	return cols - left_of(cols) - (cols < FRAME_WIDE ? 0 : 1);
}

static void add(struct service_lines *l, struct service_line line)
{
	l->items = mem_grow(l->items, &l->cap, l->n + 1, sizeof *l->items);
	l->items[l->n++] = line;
}

static int said_cols(int cols)
{
	return cols - 2;
}

static void add_text(struct service_lines *l, enum ink ink, const char *text)
{
	size_t parts = reader_lines(text, said_cols(l->cols));

	for (size_t k = 0; k < parts; k++)
		add(l, (struct service_line){ SIZE_MAX, k, text, ink });
}

/* What is to be brought is read off and packed: none of it may be cut. */
static void add_row(struct service_lines *l, const struct service_page *p, size_t i,
	struct buf *text)
{
	size_t parts = 1;

	if (i >= p->due->n) {
		service_say_row(p, i, text);
		parts = reader_lines(text->text, text_room(l->cols));
	}
	for (size_t k = 0; k < parts; k++)
		add(l, (struct service_line){ i, k, NULL, INK_PLAIN });
}

/* Those of rows first .. first + n - 1 that are shown; how many. */
static size_t add_rows(
	struct service_lines *l, const struct service_page *p, size_t first, size_t n)
{
	size_t from = sift_place(&p->sift, first), to = sift_place(&p->sift, first + n);
	struct buf text = { 0 };

	for (size_t k = from; k < to; k++)
		add_row(l, p, p->sift.rows[k], &text);
	buf_free(&text);
	return to - from;
}

static const char *none_is_due(const struct service_page *p)
{
	if (p->due->n > 0)
		return _("None contains it.");
	return p->due->has_unknown
		       ? _("No lure or card is known to be due by the next run.")
		       : _("No lure or card is due by the next run.");
}

static void lay_lines(const struct service_page *p, struct service_lines *l)
{
	size_t n = p->due->n, brings = service_brings(p);
	bool narrow = p->sift.narrow.text[0] != '\0';

	if (add_rows(l, p, 0, n) == 0)
		add_text(l, INK_PLAIN, none_is_due(p));
	add_text(l, INK_PLAIN, "");
	add_text(l, INK_TITLE,
		narrow ? _("Bring: only rows that contain it, Esc shows all")
		       : _("Bring"));
	if (add_rows(l, p, n, brings) == 0)
		add_text(l, INK_PLAIN,
			brings ? _("The rows of the bring list are hidden.")
			       : _("No trap hangs."));
	add_text(l, INK_PLAIN, "");
	add_text(l, INK_TITLE,
		narrow ? _("On the shelf: only rows that contain it")
		       : _("On the shelf"));
	if (!p->shelf || !p->shelf->is_kept)
		add_text(l, INK_QUIET,
			_("Nobody keeps count of it: a lure or card kind takes its "
			  "stock."));
	add_rows(l, p, n + brings, p->shelf ? p->shelf->n : 0);
}

/* Laid once for a width: they may be many, and every key draws them. */
static void lines_of(struct service_page *p, int cols)
{
	if (p->lines.cols == cols)
		return;
	p->lines.n = 0;
	p->lines.cols = cols;
	lay_lines(p, &p->lines);
}

static void measure(struct columns *s, const struct due *d)
{
	bool several = false;

	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < d->n; i++) {
		const struct due_item *item = &d->items[i];
		char due[DAY_TEXT_SIZE], state[SERVICE_TEXT];

		day_short(item->due, due, sizeof due);
		service_say_state(item, state);
		several = several || item->farm != d->items[0].farm;
		columns_want(s, DUE, due);
		columns_want(s, FARM, item->farm_name);
		columns_want(s, TRAP, item->label);
		columns_want(s, BLOCK, item->block_name);
		columns_want(s, WHAT, item->is_lure ? _("lure") : _("card"));
		columns_want(s, KIND, words_shipped(item->kind_name));
		columns_want(s, STATE, state);
	}
	for (size_t i = 0; i < COLUMNS && d->n > 0; i++)
		columns_want(s, i, _(column[i].head));
	if (!several)
		s->want[FARM] = 0;
}

static struct columns columns_of(struct service_page *p, int cols)
{
	struct columns s;

	if (!p->is_measured)
		measure(&p->columns, p->due);
	p->is_measured = true;
	s = p->columns;
	columns_fit(&s, left_of(cols), cols - 1);
	return s;
}

static void draw_item(const struct columns *s, struct canvas *c, int row,
	const struct due_item *item, enum ink ink)
{
	char due[DAY_TEXT_SIZE], state[SERVICE_TEXT];
	enum ink tone = ink == INK_PICKED ? ink : list_ink(item->tone);

	day_short(item->due, due, sizeof due);
	service_say_state(item, state);
	columns_cell(s, c, row, DUE, ink, due);
	columns_cell(s, c, row, FARM, ink, item->farm_name);
	columns_cell(s, c, row, TRAP, ink, item->label);
	columns_cell(s, c, row, BLOCK, ink, item->block_name);
	columns_cell(s, c, row, WHAT, ink, item->is_lure ? _("lure") : _("card"));
	columns_cell(s, c, row, KIND, ink, words_shipped(item->kind_name));
	columns_cell(s, c, row, STATE, tone, state);
}

static enum ink ink_of(const struct service_page *p, size_t i)
{
	size_t before = p->due->n + service_brings(p);

	return i < before ? INK_PLAIN : list_ink(p->shelf->items[i - before].tone);
}

static void draw_picked(struct canvas *c, int row, size_t part)
{
	canvas_text(c, row, 0, c->cols, INK_PICKED, "");
	if (part > 0)
		return;
	canvas_text(c, row, c->cols >= FRAME_WIDE ? 1 : 0, 1, INK_PICKED, ">");
	canvas_cursor(c, row, left_of(c->cols));
}

static void draw_row(const struct service_page *p, const struct columns *s,
	struct canvas *c, int row, const struct service_line *line)
{
	size_t i = line->row;
	bool picked = i == p->picked;
	struct buf text = { 0 };

	if (picked)
		draw_picked(c, row, line->part);
	if (i < p->due->n) {
		draw_item(
			s, c, row, &p->due->items[i], picked ? INK_PICKED : INK_PLAIN);
		return;
	}
	service_say_row(p, i, &text);
	reader_text(c,
		(struct reader_box){
			row, left_of(c->cols), text_room(c->cols), 1, line->part },
		picked ? INK_PICKED : ink_of(p, i), text.text);
	buf_free(&text);
}

/* All lines of the picked row show, its first before its last. */
static void scroll_to_picked(struct service_page *p, const struct service_lines *l)
{
	size_t first = 0, last;

	while (first < l->n && (l->items[first].row != p->picked || p->sift.n == 0))
		first++;
	if (first == l->n)
		first = 0;
	last = first;
	while (p->sift.n > 0 && last + 1 < l->n && l->items[last + 1].row == p->picked)
		last++;
	page_scroll_near(l->n, p->rows, &last, &p->top);
	page_scroll_near(l->n, p->rows, &first, &p->top);
}

void service_draw_rows(struct service_page *p, struct canvas *c, const struct frame *f)
{
	struct columns s = columns_of(p, c->cols);
	const struct service_lines *l = &p->lines;
	int first = f->first;

	lines_of(p, c->cols);
	if (f->last - first >= 3 && p->due->n > 0)
		columns_heads(&s, c, first++);
	p->rows = f->last - first + 1;
	scroll_to_picked(p, l);
	for (int i = 0; i < p->rows && p->top + (size_t)i < l->n; i++) {
		const struct service_line *line = &l->items[p->top + (size_t)i];

		if (line->row != SIZE_MAX)
			draw_row(p, &s, c, first + i, line);
		else
			reader_text(c,
				(struct reader_box){ first + i, 1, said_cols(c->cols),
					1, line->part },
				line->ink, line->text);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l->n);
}
