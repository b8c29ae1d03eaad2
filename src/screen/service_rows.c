/* The rows of the service page: three lists, one below the other. */
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
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

static size_t n_brings(const struct service_page *p)
{
	size_t runs = p->due->today.n_runs;

	return runs > 1 ? runs + 1 : runs;
}

size_t service_count(const struct service_page *p)
{
	return p->due->n + n_brings(p) + (p->shelf ? p->shelf->n : 0);
}

const struct due_item *service_picked_item(const struct service_page *p)
{
	return p->picked < p->due->n ? &p->due->items[p->picked] : NULL;
}

/* "3 lures CM 1 mg, 1 card delta" of a farm, 0: of all. */
static void say_kinds(const struct due *d, int64_t farm, struct buf *out)
{
	const struct due_bring *b = farm ? d->brings : d->totals;
	size_t n = farm ? d->n_brings : d->n_totals;
	const char *comma = "";

	for (size_t i = 0; i < n; i++) {
		unsigned long many = (unsigned long)b[i].n;
		if (b[i].farm != farm)
			continue;
		buf_addf(out,
			b[i].is_lure ? ngettext("%s%d lure %s", "%s%d lures %s", many)
				     : ngettext("%s%d card %s", "%s%d cards %s", many),
			comma, b[i].n, words_shipped(b[i].kind_name));
		comma = ", ";
	}
	if (!*comma)
		buf_add(out, _("nothing"));
}

static void say_bring_row(const struct service_page *p, size_t i, struct buf *out)
{
	const struct due *d = p->due;
	char day[DAY_TEXT_SIZE];

	if (i == d->today.n_runs) {
		buf_addf(out, "%s: ", _("all farms"));
		say_kinds(d, 0, out);
		return;
	}
	const struct today_run *r = &d->today.runs[i];
	day_short(r->next_run, day, sizeof day);
	buf_addf(out, "%s, %s: ", r->name,
		r->due || r->next_run <= d->today.day ? _("this run") : day);
	say_kinds(d, r->farm, out);
}

static void say_shelf_row(const struct shelf_row *r, struct buf *out)
{
	buf_addf(out, r->is_lure ? _("lure %s: %s") : _("card %s: %s"), r->name,
		r->text);
}

/* Row i that is no item. */
static void say_row(const struct service_page *p, size_t i, struct buf *out)
{
	size_t at = i - p->due->n;

	buf_clear(out);
	if (at < n_brings(p))
		say_bring_row(p, at, out);
	else
		say_shelf_row(&p->shelf->items[at - n_brings(p)], out);
}

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
	say_row(p, i, &row);
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

/* "no entry till Wed 06:00, 3 d overdue": who changes it goes into the block. */
static void say_state(const struct due_item *item, char out[static SERVICE_TEXT])
{
	snprintf(out, SERVICE_TEXT, "%s%s%s", item->barred, item->barred[0] ? ", " : "",
		item->state_text);
}

void service_say_picked(const struct service_page *p, char out[static SERVICE_TEXT])
{
	const struct due_item *item = service_picked_item(p);
	struct buf text = { 0 };
	char state[SERVICE_TEXT];

	text_copy(out, SERVICE_TEXT, "");
	if (item)
		say_state(item, state);
	if (item)
		snprintf(out, SERVICE_TEXT, _("%s, %s, trap %s: %s %s, %s"),
			item->farm_name, item->block_name, item->label,
			item->is_lure ? _("lure") : _("card"),
			words_shipped(item->kind_name), state);
	else if (p->picked < service_count(p)) {
		say_row(p, p->picked, &text);
		text_copy(out, SERVICE_TEXT, text.text);
	}
	buf_free(&text);
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

static void add_text(struct service_lines *l, enum ink ink, const char *text)
{
	add(l, (struct service_line){ SIZE_MAX, 0, text, ink });
}

/* What is to be brought is read off and packed: none of it may be cut. */
static void add_row(struct service_lines *l, const struct service_page *p, size_t i,
	struct buf *text)
{
	size_t parts = 1;

	if (i >= p->due->n) {
		say_row(p, i, text);
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

static void lay_lines(const struct service_page *p, struct service_lines *l)
{
	size_t n = p->due->n, brings = n_brings(p);
	bool narrow = p->sift.narrow.text[0] != '\0';

	if (add_rows(l, p, 0, n) == 0)
		add_text(l, INK_PLAIN,
			n ? _("None contains it.")
			  : _("No lure or card is due by the next run."));
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
		say_state(item, state);
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
	say_state(item, state);
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
	size_t before = p->due->n + n_brings(p);

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
	say_row(p, i, &text);
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
			canvas_text(c, first + i, 1, 0, line->ink, line->text);
	}
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < l->n);
}
