/* entry_draw.c - the list of records on its canvas. */
#include "base/text.h"
#include "base/words.h"
#include "entry_parts.h"
#include "screen/caution.h"
#include "screen/frame.h"
#include "screen/reader.h"

#include <stdio.h>
#include <string.h>

enum { LEFT = 3, LEAST = 8, NOTE_LEAST = 12, PESTS_ROWS = 6 };

/* A cell that says the same in every row is left out. */
static bool is_plain(const struct entry_page *p, const struct column *col)
{
	return (col->pick == PICK_FARM && p->list->ask.farm) ||
	       (col->pick == PICK_PEST && p->list->ask.pest);
}

static bool is_number(const struct column *col)
{
	return col->type == &value_int || col->type == &value_x100 ||
	       col->type == &value_area || col->type == &value_number;
}

/* From the right: first what a record may go without, then the note, then the farm. */
static int drop_of(size_t i, const struct column *col)
{
	if (!col->needed)
		return ENTRY_COLUMNS - (int)i;
	return col->pick == PICK_FARM ? ENTRY_COLUMNS + 2 : 0;
}

static void fill_column(struct entry_page *p, size_t i, const struct column *col)
{
	bool is_short = col->list_cols <= COLUMN_LABEL;

	p->column[i] = (struct list_column){ .head = col->label ? col->label : "",
		.least = is_short ? 0 : LEAST,
		.whole = is_short ? col->list_cols : 0,
		.drop = drop_of(i, col),
		.right = is_number(col) };
}

/* Of a setting its name and value are read; its range is said of the picked one. */
static void fill_settings(struct entry_page *p)
{
	enum { NAME, VALUE, RANGE, NAME_LEAST = 24 };

	p->column[NAME].least = NAME_LEAST;
	p->column[VALUE].drop = 0;
	p->column[VALUE].whole = COLUMN_LABEL;
	p->column[RANGE].drop = 1;
}

void entries_fill_columns(struct entry_page *p)
{
	size_t n = entries_cells(p->family), i = 0;

	p->columns = (struct columns){ .col = p->column, .n = n + 1 };
	p->column[n] = (struct list_column){
		.head = "", .least = NOTE_LEAST, .drop = ENTRY_COLUMNS + 1
	};
	for (size_t k = 0; k < p->family->n_columns && i < n; k++)
		if (p->family->columns[k].list_cols > 0)
			fill_column(p, i++, &p->family->columns[k]);
	if (p->list->ask.kind == ENTRY_SETTINGS)
		fill_settings(p);
	for (size_t r = 0; r < p->list->n; r++) {
		for (i = 0; i < n; i++)
			columns_want(&p->columns, i, p->list->rows[r].cells[i]);
		columns_want(&p->columns, n, p->list->rows[r].note);
	}
	i = 0;
	for (size_t k = 0; k < p->family->n_columns && i < n; k++) {
		if (p->family->columns[k].list_cols <= 0)
			continue;
		if (is_plain(p, &p->family->columns[k]))
			p->columns.want[i] = 0;
		else if (p->columns.want[i] > 0)
			columns_want(&p->columns, i, _(p->column[i].head));
		i++;
	}
}

static void draw_row(const struct entry_page *p, const struct columns *s,
	struct canvas *c, int row, size_t at)
{
	const struct entry_row *r = &p->list->rows[p->shown[at]];
	enum ink ink = list_ink(r->is_retired ? TONE_QUIET : r->tone);
	enum ink note = r->is_retired ? INK_QUIET : INK_PLAIN;

	if (at == p->picked) {
		ink = note = INK_PICKED;
		canvas_text(c, row, 0, c->cols, ink, " >");
		canvas_cursor(c, row, 1);
	}
	for (size_t i = 0; i + 1 < s->n; i++)
		columns_cell(s, c, row, i, ink, r->cells[i]);
	columns_cell(s, c, row, s->n - 1, note, r->note);
}

static void draw_none(const struct entry_page *p, struct canvas *c, int row, int last)
{
	const char *text = p->narrow.text[0] ? _("Nothing contains it: Esc shows all.")
			   : p->family->can_add ? _("None yet: n makes the first.")
						: _("None.");

	reader_text(c,
		(struct reader_box){ row, LEFT, c->cols - LEFT - 1, last - row + 1, 0 },
		INK_PLAIN, text);
	canvas_cursor(c, row, 0);
}

/* The pests, in the last rows of the list. */
static void draw_pests(
	const struct entry_page *p, struct canvas *c, int first, int last)
{
	int rows = (int)chooser_matches(&p->chooser) + 1, from = 0;

	if (rows > PESTS_ROWS)
		rows = PESTS_ROWS;
	from = last - rows + 1 > first ? last - rows + 1 : first;
	canvas_textf(c, from, 0, c->cols, INK_TITLE, "   %s %s",
		_("The new trap is for:"), p->chooser.typed);
	canvas_cursor(c, from,
		LEFT + text_cols(_("The new trap is for:")) + 1 +
			text_cols(p->chooser.typed));
	for (int row = from + 1; row <= last; row++)
		canvas_text(c, row, 0, c->cols, INK_PLAIN, "");
	chooser_draw(&p->chooser, c, from + 1, last, LEFT);
}

static void draw_rows(struct entry_page *p, struct canvas *c, const struct frame *f)
{
	struct columns s = p->columns;
	int first = f->first, last = f->last;

	columns_fit(&s, LEFT, c->cols - 1);
	caution_draw(c, first, &last, p->caution);
	if (last - first >= 3)
		columns_heads(&s, c, first++);
	p->rows = last - first + 1;
	page_scroll_near(p->n_shown, p->rows, &p->picked, &p->top);
	if (p->n_shown == 0)
		draw_none(p, c, first, last);
	for (int i = 0; i < p->rows && p->top + (size_t)i < p->n_shown; i++)
		draw_row(p, &s, c, first + i, p->top + (size_t)i);
	frame_more(c, f, p->top > 0, p->top + (size_t)p->rows < p->n_shown);
	if (p->replacing)
		draw_pests(p, c, first, last);
}

static void say_status(const struct entry_page *p, char *out, size_t size)
{
	size_t n = p->n_shown;

	if (p->list->n_hidden > 0 && p->family->can_move)
		snprintf(out, size, _("%zu shown, %d pulled: a shows them"), n,
			p->list->n_hidden);
	else if (p->list->n_hidden > 0)
		snprintf(out, size, _("%zu shown, %d put away: a shows them"), n,
			p->list->n_hidden);
	else
		snprintf(out, size, _("%zu in all"), p->list->n);
}

/* What the picked row has no room for. */
static void say_picked(const struct entry_page *p, int cols, struct message *m)
{
	const struct entry_row *r = entries_picked(p);
	struct columns s = p->columns;
	char text[SAY_LINE];

	columns_fit(&s, LEFT, cols - 1);
	if (!r || !s.dropped)
		return;
	entries_say_row(r, entries_cells(p->family), text, sizeof text);
	message_set(m, false, "%s%s%s", text, r->note[0] ? ": " : "", r->note);
}

static struct key_rows keys_now(struct entry_page *p)
{
	if (p->replacing)
		return chooser_keys(&p->chooser);
	return asking_keys(
		&p->asking, narrow_keys(&p->narrow, p->n_shown, entry_page_keys(p)));
}

void entry_page_draw(struct entry_page *p, struct canvas *c)
{
	char title[sizeof p->list->title + 64], status[64];
	int cursor = -1;
	struct message m = p->message;
	struct frame f = {
		.title = title, .status = status, .message = &m, .keys = keys_now(p)
	};

	if (!p->list) {
		canvas_clear(c);
		return;
	}
	snprintf(title, sizeof title, "%s", p->list->title);
	narrow_title(&p->narrow, p->n_shown, p->list->n, title, sizeof title);
	say_status(p, status, sizeof status);
	if (!m.text[0])
		cursor = narrow_say(&p->narrow, p->n_shown, p->list->n, &m);
	if (!m.text[0])
		say_picked(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	draw_rows(p, c, &f);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
