/* hotspots_list.c - the list of the Hot spots page. */
#include "hotspots_parts.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"

enum { NAME, ANSWER, RATE, RATIO, COLUMNS };
enum { LEFT = 3, ROWS_LEAST = 3, TEXT_LEAST = 2, GAP_FROM = 12 };
enum { PART_COLS = 11, PART_FROM = 40 };

static const struct list_column column[COLUMNS] = {
	[NAME] = { N_("where"), .least = 12 },
	[ANSWER] = { N_("answer"), .least = 14, .whole = 24 },
	[RATE] = { N_("a week"), .drop = 2, .whole = COLUMN_NUMBER, .right = true },
	[RATIO] = { N_("times the rest"), .drop = 1, .whole = COLUMN_NUMBER },
};

static void cells_of(const struct hot_row *r, const char *cell[static COLUMNS])
{
	cell[NAME] = r->name;
	cell[ANSWER] = r->grade_text;
	cell[RATE] = r->rate_text;
	cell[RATIO] = r->ratio_text;
}

static void fit(struct columns *s, const struct hot_view *v, int cols)
{
	const char *cell[COLUMNS];

	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t k = 0; k < COLUMNS; k++)
		columns_want(s, k, _(column[k].head));
	for (size_t i = 0; i < v->n; i++) {
		cells_of(&v->rows[i], cell);
		for (size_t k = 0; k < COLUMNS; k++)
			columns_want(s, k, cell[k]);
	}
	columns_fit(s, LEFT, cols - 1);
}

static bool has(const void *page, size_t i, const char *text)
{
	const struct hotspots_page *p = page;
	const char *cell[COLUMNS];

	cells_of(&p->view->rows[i], cell);
	for (size_t k = 0; k < COLUMNS; k++)
		if (narrow_contains(cell[k], text))
			return true;
	return narrow_contains(p->view->rows[i].says, text);
}

void hotspots_find(struct hotspots_page *p)
{
	sift_find(&p->sift, p->view->n, has, p, &p->picked);
}

void hotspots_page_show(struct hotspots_page *p, const struct hot_view *view)
{
	p->view = view;
	sift_forget(&p->sift);
	hotspots_find(p);
}

void hotspots_page_pick(struct hotspots_page *p, size_t row)
{
	p->picked = row;
	if (!sift_shows(&p->sift, row))
		sift_end(&p->sift);
	hotspots_find(p);
}

void hotspots_page_free(struct hotspots_page *p)
{
	sift_free(&p->sift);
	*p = (struct hotspots_page){ 0 };
}

static void draw_row(const struct columns *s, struct canvas *c, int row,
	const struct hot_row *r, bool is_picked)
{
	const char *cell[COLUMNS];

	cells_of(r, cell);
	if (is_picked) {
		canvas_text(c, row, 1, 0, INK_TITLE, ">");
		canvas_cursor(c, row, 1);
	}
	for (size_t k = 0; k < COLUMNS; k++)
		if (k != ANSWER)
			columns_cell(s, c, row, k, is_picked ? INK_TITLE : INK_PLAIN,
				cell[k]);
	if (s->width[ANSWER] > 0) /* no longer than the words: it may be reversed */
		canvas_textf(c, row, s->at[ANSWER], 0, list_ink(r->tone), "%.*s",
			(int)text_fit(r->grade_text, s->width[ANSWER]), r->grade_text);
}

/* Sources that the catch falls away from. */
static void add_falling(struct prose *to, const struct hot_view *v)
{
	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].gradient.say <= GRADIENT_FALLS_SOMEHOW)
			prose_add(to, INK_PLAIN, 2, v->sources[i].says);
}

/* Below the list: the picked row, sources, what was left out. The answer as a whole
 * would say the first row's and the sources' sentences again. */
static void draw_text(const struct hotspots_page *p, struct canvas *c,
	const struct frame *f, int first)
{
	const struct hot_row *r = &p->view->rows[p->picked];
	struct prose text = { 0 };
	struct buf b = { 0 };
	size_t top = 0, rows = f->last < first ? 0 : (size_t)(f->last - first + 1);

	buf_addf(&b, "%s: %s", r->name, r->says);
	prose_take(&text, INK_TITLE, 0, &b);
	prose_add(&text, INK_PLAIN, 2, r->earlier);
	add_falling(&text, p->view);
	prose_add(&text, INK_PLAIN, 2, r->next);
	if (rows > GAP_FROM)
		prose_gap(&text);
	hotspots_add_rest(&text, p->view);
	frame_more(c, f, false,
		reader_draw(c, first, f->last, &top, text.items, text.n) > rows);
	prose_free(&text);
}

static void draw_empty(struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	struct prose text = { 0 };

	if (p->view->n > 0)
		prose_add(
			&text, INK_PLAIN, 0, _("Nothing contains it: Esc shows all."));
	else {
		prose_add(&text, INK_PLAIN, 0, p->view->says);
		hotspots_add_rest(&text, p->view);
	}
	p->rows = f->last - f->first + 1;
	reader_draw(c, f->first, f->last, &p->text_top, text.items, text.n);
	prose_free(&text);
	canvas_cursor(c, f->first, 0);
}

/* Rows of the list without its heads; the sentence wants some below. */
static int list_rows(size_t n, int room)
{
	int most = room - 1 - TEXT_LEAST, half = room / 2;

	if (most > half && half >= ROWS_LEAST)
		most = half;
	if (most < 1)
		most = room > 1 ? room - 1 : room;
	return n < (size_t)most ? (int)n : most;
}

/* "1-8 of 31", where there is room. */
static void say_part(const struct hotspots_page *p, struct canvas *c, int row)
{
	size_t last = p->top + (size_t)p->rows, n = p->sift.n;

	if (n > (size_t)p->rows && c->cols >= PART_FROM)
		canvas_textf(c, row, c->cols - 1 - PART_COLS, -PART_COLS, INK_QUIET,
			_("%zu-%zu of %zu"), p->top + 1, last < n ? last : n, n);
}

void hotspots_list_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	const struct hot_view *v = p->view;
	int room = f->last - f->first + 1, row = f->first;
	size_t n = p->sift.n, at = sift_place(&p->sift, p->picked);
	struct columns s;

	if (n == 0) {
		draw_empty(p, c, f);
		return;
	}
	if (room < 1)
		return;
	p->rows = list_rows(n, room);
	page_scroll_near(n, p->rows, &at, &p->top);
	fit(&s, v, c->cols);
	if (room > 1) {
		columns_heads(&s, c, row);
		say_part(p, c, row++);
	}
	for (size_t i = p->top; i < n && i < p->top + (size_t)p->rows; i++)
		draw_row(&s, c, row++, &v->rows[p->sift.rows[i]], i == at);
	if (room >= GAP_FROM)
		canvas_line(c, row++);
	draw_text(p, c, f, row);
}
