/* weather_draw.c - the Weather page on its canvas. */
#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/prompt.h"
#include "screen/reader.h"
#include "weather_parts.h"

#include <stdio.h>
#include <string.h>

enum { DAY, MIN, MAX, DD, SUM, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[DAY] = { N_("day"), .whole = COLUMN_NUMBER },
	[MIN] = { N_("minimum"), .least = 8, .whole = COLUMN_NUMBER, .right = true },
	[MAX] = { N_("maximum"), .least = 8, .whole = COLUMN_NUMBER, .right = true },
	[DD] = { N_("dd"), .drop = 2, .whole = COLUMN_NUMBER, .right = true },
	[SUM] = { N_("sum"), .drop = 1, .whole = COLUMN_NUMBER, .right = true },
};

enum { LEFT = 3, NUMBER_COLS = 6, FIELD_COLS = NUMBER_COLS + 4 };

static void fit(struct columns *s, const struct weather_list *l, int cols)
{
	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < l->n; i++) {
		columns_want(s, DAY, l->rows[i].day_text);
		columns_want(s, DD, l->rows[i].dd);
		columns_want(s, SUM, l->rows[i].sum);
	}
	for (size_t i = 0; i < COLUMNS; i++)
		if (i <= MAX || s->want[i] > 0)
			columns_want(s, i, _(column[i].head));
	s->want[MIN] = s->want[MAX] = FIELD_COLS;
	columns_fit(s, LEFT, cols - 1);
}

static void draw_sums(const struct columns *s, struct canvas *c, int row, enum ink ink,
	const struct weather_row *r)
{
	columns_cell(s, c, row, DD, ink, r->dd);
	columns_cell(s, c, row, SUM, ink, r->sum);
}

/* Numbers stand where they stand in a field: two columns from its end. */
static void draw_number(
	const struct columns *s, struct canvas *c, int row, size_t i, const char *text)
{
	canvas_text(c, row, s->at[i], 2 - s->width[i], INK_PLAIN, text);
}

static void draw_other(
	const struct columns *s, struct canvas *c, int row, const struct weather_row *r)
{
	char min[SAY_SHORT], max[SAY_SHORT];

	weather_text(r->min, min);
	weather_text(r->max, max);
	columns_cell(s, c, row, DAY, INK_PLAIN, r->day_text);
	if (min[0] || max[0]) {
		draw_number(s, c, row, MIN, min[0] ? min : "-");
		draw_number(s, c, row, MAX, max[0] ? max : "-");
	} else
		canvas_text(c, row, s->at[MIN] + 2, 0, INK_UNSURE, r->text);
	draw_sums(s, c, row, INK_PLAIN, r);
}

struct field {
	size_t column;
	const char *typed;
	double has;   /* in the book */
	bool is_here; /* the hand */
};

/* A field with what is typed, else what the book has; the cursor behind it. */
static void draw_field(
	const struct columns *s, struct canvas *c, int row, const struct field *f)
{
	size_t i = f->column;
	char text[SAY_SHORT];
	int at = s->at[i], width = s->width[i] > 4 ? s->width[i] : 4;

	weather_text(f->has, text);
	if (f->typed[0])
		text_copy(text, sizeof text, f->typed);
	words_from_point(text);
	canvas_textf(c, row, at, width, f->is_here ? INK_FIELD : INK_PICKED,
		"[ %*.*s ]", width - 4, width - 4, text);
	if (f->is_here)
		canvas_cursor(c, row, at + width - 2);
}

static void draw_picked(const struct weather_page *p, const struct columns *s,
	struct canvas *c, int row)
{
	const struct weather_row *r = weather_picked(p);

	canvas_text(c, row, 0, c->cols, INK_PICKED, " >");
	columns_cell(s, c, row, DAY, INK_PICKED, r->day_text);
	draw_field(s, c, row, &(struct field){ MIN, p->min, r->min, !p->on_max });
	draw_field(s, c, row, &(struct field){ MAX, p->max, r->max, p->on_max });
	draw_sums(s, c, row, INK_PICKED, r);
}

static void draw_none(
	const struct weather_page *p, struct canvas *c, int first, int last)
{
	const struct paragraph text[] = {
		{ INK_TITLE, 0, NULL,
			p->list->station.id ? _("No day of this season yet.")
					    : _("No weather station yet.") },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("Degree-days need the minimum and maximum of every day. n "
			  "names a station; its days are typed here, or come in from a "
			  "file: leave, then type") },
		{ INK_TITLE, 4, NULL, "mothtally import weather FILE" },
	};
	size_t top = 0;

	reader_draw(c, first, last, &top, text, sizeof text / sizeof *text);
	canvas_cursor(c, first, 0);
}

void weather_draw_list(struct weather_page *p, struct canvas *c, const struct frame *f)
{
	const struct weather_list *l = p->list;
	int first = f->first, rows = 0;
	struct columns s;

	if (l->n == 0 || l->station.id == 0) {
		draw_none(p, c, first, f->last);
		return;
	}
	fit(&s, l, c->cols);
	if (f->last - first >= 3)
		columns_heads(&s, c, first++);
	rows = f->last - first + 1;
	p->rows = rows < 1 ? 1 : (size_t)rows;
	page_scroll_near(l->n, rows, &p->picked, &p->top);
	for (int i = 0; i < rows && p->top + (size_t)i < l->n; i++) {
		size_t at = p->top + (size_t)i;

		if (at == p->picked)
			draw_picked(p, &s, c, first + i);
		else
			draw_other(&s, c, first + i, &l->rows[at]);
	}
	frame_more(c, f, p->top > 0, p->top + p->rows < l->n);
}

/* The end of a name behind its prompt; returns the column of the cursor. */
static int say_name(const struct weather_page *p, int cols, struct message *m)
{
	return message_typed(
		m, &p->message, _("name of the new station: "), p->line, cols);
}

static void say_missing(const struct weather_list *l, char *out, size_t size)
{
	out[0] = '\0';
	if (l->missing > 0)
		snprintf(out, size,
			l->missing == 1 ? _("%d day missing") : _("%d days missing"),
			l->missing);
}

/* Both in one row where they fit; else degree-days go to the message line. */
static void say_status(
	const struct weather_list *l, int cols, const char *missing, struct frame *f)
{
	bool fits = text_cols(l->heat) + text_cols(missing) + 4 <= cols;

	f->status = fits ? l->heat : missing;
	f->status_right = fits ? missing : NULL;
}

void weather_page_draw(struct weather_page *p, struct canvas *c)
{
	char missing[48], unit[32];
	struct message m = p->message;
	struct frame f = { .message = &m,
		.keys = p->naming ? prompt_keys(PROMPT_LINE) : weather_page_keys() };
	int cursor = 0;

	if (!p->list) {
		canvas_clear(c);
		return;
	}
	f.title = p->list->title;
	snprintf(unit, sizeof unit, _("degrees %c"), p->list->unit);
	f.right = p->list->station.id ? unit : NULL;
	f.keeps_right = true;
	f.under = p->list->farms[0] ? p->list->farms : NULL;
	say_missing(p->list, missing, sizeof missing);
	say_status(p->list, c->cols, missing, &f);
	if (p->naming)
		cursor = say_name(p, c->cols, &m);
	else if (f.status == missing && !m.text[0])
		message_set(&m, false, "%s", p->list->heat);
	if (!frame_draw(c, &f))
		return;
	weather_draw_list(p, c, &f);
	if (p->naming)
		canvas_cursor(c, f.message_row, cursor);
}
