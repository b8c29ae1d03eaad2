/* form_draw.c - the form on its canvas. */
#include "base/text.h"
#include "base/words.h"
#include "form_parts.h"
#include "screen/caution.h"
#include "screen/frame.h"
#include "screen/reader.h"

#include <stdio.h>
#include <string.h>

enum {
	LEFT = 3,         /* of the labels */
	VALUE_LEAST = 14, /* columns beside a label; else it stands above */
	VALUE_MOST = 48,
	LIST_ROWS = 5, /* that a list of choices would like */
	LIVE_MOST = 3, /* rows of what the record would do */
};

/* Where things stand. */
struct layout {
	int first, last; /* rows for fields */
	int value;       /* column of the values */
	int width;       /* of a value */
	int each;        /* rows a field takes */
};

static int label_cols(const struct form_page *p)
{
	int most = 0;

	for (size_t i = 0; i < p->n; i++) {
		int cols = text_cols(_(form_column(p, i)->label));

		if (cols > most)
			most = cols;
	}
	return most;
}

static struct layout layout_of(
	const struct form_page *p, const struct canvas *c, const struct frame *f)
{
	struct layout s = { f->first, f->last, LEFT + label_cols(p) + 2, 0, 1 };

	if (s.value + VALUE_LEAST >= c->cols) {
		s.value = LEFT + 2;
		s.each = 2;
	}
	s.width = c->cols - 1 - s.value;
	if (s.width > VALUE_MOST)
		s.width = VALUE_MOST;
	if (s.width < 1)
		s.width = 1;
	return s;
}

/* A field of a list stands in < >, any other in [ ]. */
static void draw_hand(
	const struct form_page *p, struct canvas *c, const struct layout *s, int row)
{
	bool only = form_only(p), typing = only && p->chooser.open;
	char text[ENTRY_TEXT];
	struct line l = form_line(p, text);
	struct line_box box = { row, s->value + 2, s->width - 4, INK_FIELD };
	int cursor = 0;

	text_copy(text, sizeof text, typing ? p->chooser.typed : form_has(p, p->at));
	if (typing)
		l.at = p->chooser.at;
	if (box.width < 1)
		box = (struct line_box){ row, s->value, s->width, INK_FIELD };
	canvas_text(c, row, s->value, s->width, INK_FIELD, only ? "<" : "[");
	cursor = line_draw(&l, c, box);
	if (box.col > s->value)
		canvas_text(
			c, row, box.col + box.width, 2, INK_FIELD, only ? " >" : " ]");
	canvas_cursor(c, row, cursor);
}

static void draw_field(const struct form_page *p, struct canvas *c,
	const struct layout *s, int row, size_t i)
{
	bool here = i == p->at;
	const char *was = p->was.text[p->fields[i]], *has = form_has(p, i);
	enum ink ink = here ? INK_TITLE : INK_QUIET;
	char mark = strcmp(was, has) != 0 ? '*' : ' ';

	canvas_textf(c, row, 0, LEFT, INK_PLAIN, "%c%c", mark, here ? '>' : ' ');
	canvas_text(c, row, LEFT, s->each == 2 ? c->cols - LEFT : s->value - LEFT - 1,
		ink, _(form_column(p, i)->label));
	if (s->each == 2)
		row++;
	if (row > s->last)
		return;
	if (here)
		draw_hand(p, c, s, row);
	else
		canvas_text(c, row, s->value + 2, s->width - 2 > 0 ? s->width - 2 : 1,
			INK_PLAIN, has);
}

/* Draws what the record would do in the last rows of the page; not of a choice that is
 * not made yet. */
static void draw_live(const struct form_page *p, struct canvas *c, struct layout *s)
{
	int need = 0, cols = c->cols - 2;

	for (int i = 0; i < 2 && !p->chooser.open; i++)
		if (p->live[i][0])
			need += (int)reader_lines(p->live[i], cols);
	if (need > LIVE_MOST)
		need = LIVE_MOST;
	if (need == 0 || s->last - s->first + 1 < need + 2 * s->each)
		return;
	s->last -= need;
	for (int i = 0, row = s->last + 1; i < 2; i++)
		if (p->live[i][0])
			row += reader_text(c,
				(struct reader_box){
					row, 1, cols, s->last + need - row + 1, 0 },
				i ? INK_UNSURE : INK_TITLE, p->live[i]);
}

/* Keeps the field in sight, and with an open list some rows below it. */
static size_t shown_of(struct form_page *p, const struct layout *s)
{
	int rows = s->last - s->first + 1, most = rows / s->each;
	size_t at = p->at, need = 0;

	if (most < 1)
		most = 1;
	page_scroll_near(p->n, most, &at, &p->top);
	if (p->chooser.open) {
		need = LIST_ROWS < rows - s->each ? LIST_ROWS : (size_t)most - 1;
		while (p->top < p->at &&
			(p->at - p->top + 1) * (size_t)s->each + need > (size_t)rows)
			p->top++;
	}
	return (size_t)most;
}

static void draw_fields(
	struct form_page *p, struct canvas *c, const struct frame *f, struct layout s)
{
	size_t most = 0;
	int row = s.first;

	caution_draw(c, s.first, &s.last, p->caution);
	draw_live(p, c, &s);
	most = shown_of(p, &s);
	for (size_t i = p->top; i < p->n && i < p->top + most; i++, row += s.each) {
		if (row > s.last)
			break;
		draw_field(p, c, &s, row, i);
		if (i == p->at && p->chooser.open) {
			chooser_draw(&p->chooser, c, row + s.each, s.last, s.value + 2);
			break;
		}
	}
	frame_more(c, f, p->top > 0, p->top + most < p->n);
}

/* What the field is and what would be right in it. */
static void say_hint(const struct form_page *p, struct message *m)
{
	const struct column *col = form_column(p, p->at);
	const char *help = col->form_help ? col->form_help : col->help;
	char right[RIGHT_BYTES];

	col->type->right(col, right);
	if (col->type == &value_day) {
		message_set(
			m, false, _("%s It takes 21, 0721 or 2026-07-21."), _(help));
		return;
	}
	if (p->chooser.open && p->chooser.picked < 0)
		message_set(m, false,
			_("Down picks one of these; Enter takes what is typed."));
	else if (p->chooser.open)
		message_set(m, false,
			_("Up and Down pick, Enter takes it, Esc leaves it."));
	else if (form_only(p) || col->type == &value_text || col->type == &value_area)
		message_set(m, false, "%s", _(help));
	else
		message_set(m, false, _("%s It takes %s."), _(help), right);
}

/* What is known of the value that is chosen. */
static const char *say_choice(const struct form_page *p)
{
	const struct entry_choice *one =
		chooser_find(&p->chooser, p->at < p->n ? form_has(p, p->at) : "");

	return one && !p->chooser.open ? one->help : "";
}

static void say_status(const struct form_page *p, char *out, size_t size)
{
	size_t changed = 0;

	for (size_t i = 0; i < p->n; i++)
		changed += strcmp(form_has(p, i), p->was.text[p->fields[i]]) != 0;
	if (changed)
		snprintf(
			out, size, _("%zu not saved: Esc, then Enter, saves"), changed);
	else if (p->typed && p->entry.id == 0)
		snprintf(out, size, _("not saved: Esc, then Enter, saves"));
	else
		snprintf(out, size, _("field %zu of %zu"), p->at + 1, p->n);
}

void form_page_draw(struct form_page *p, struct canvas *c)
{
	char title[SAY_LINE + 16], status[96] = "";
	struct message m = p->message;
	struct frame f = { .title = title,
		.status = status,
		.status_right = say_choice(p),
		.message = &m,
		.keys = form_line_keys(p) };

	if (!p->family || p->n == 0) {
		canvas_clear(c);
		return;
	}
	snprintf(title, sizeof title, _("Form  %s"), p->entry.name);
	say_status(p, status, sizeof status);
	if (text_cols(status) + text_cols(f.status_right) + 4 > c->cols)
		f.status_right = "";
	if (!m.text[0] && p->offers)
		form_say_offer(p, &m);
	else if (!m.text[0])
		say_hint(p, &m);
	if (frame_draw(c, &f))
		draw_fields(p, c, &f, layout_of(p, c, &f));
}
