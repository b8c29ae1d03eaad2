#include "screen/frame.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/reader.h"

#include <string.h>

enum { LEAST_COLS = 20, LEAST_ROWS = 4 };
enum { ROWS_UNDER = 12, ROWS_RULES = 10, ROWS_STATUS = 8, ROWS_KEYS = 6 };

/* Columns for the text at the left of a row, where the right one has room beside it. */
static int left_cols(const struct canvas *c, const char *right)
{
	int cols = right ? text_cols(right) : 0;

	return c->cols - 2 - (cols > 0 && cols + 12 <= c->cols ? cols + 2 : 0);
}

/* Left and right text in one row; the right one goes when there is no room. */
static void draw_both(
	struct canvas *c, int row, enum ink ink, const char *left, const char *right)
{
	int cols = left_cols(c, right);

	if (cols < c->cols - 2)
		canvas_text(c, row, cols + 3, 0, ink, right);
	canvas_text(c, row, 1, cols, ink, left);
}

/* Of a title of several parts, "Old Kiln · trap 7", the whole ones that fit. */
static size_t title_bytes(const char *title, int cols)
{
	size_t fit = text_fit(title, cols), n = fit;

	if (title[fit] == '\0')
		return fit;
	while (n > 0 && strncmp(title + n, ", ", 2) != 0 &&
		strncmp(title + n, " \u00b7 ", 4) != 0)
		n--;
	return n > 0 ? n : fit;
}

/* The title says what is shown, most right texts only the day: those give way. Alone it
 * may take the last column too. */
static void draw_title(struct canvas *c, const struct frame *f)
{
	int cols = left_cols(c, f->right);
	bool fits = text_cols(f->title) <= cols;

	if (cols < c->cols - 2 && (fits || f->keeps_right))
		canvas_text(c, 0, cols + 3, 0, INK_TITLE, f->right);
	else if (!fits)
		cols = c->cols - 1;
	canvas_textf(c, 0, 1, cols, INK_TITLE, "%.*s", (int)title_bytes(f->title, cols),
		f->title);
}

static int key_cols(const struct key_row *k)
{
	return text_cols(k->key) + 1 + text_cols(words_in(k->word));
}

/* The word goes where it would be cut. */
static int draw_key(struct canvas *c, int col, const struct key_row *k)
{
	bool fits = col + key_cols(k) <= c->cols;

	col = canvas_text(c, c->rows - 1, col, 0, INK_TITLE, k->key);
	if (!fits)
		return col + 2;
	return canvas_text(c, c->rows - 1, col + 1, 0, INK_QUIET, words_in(k->word)) +
	       2;
}

/* The last one of the table that has a word: help. Esc is the way out. */
static bool always_stands(struct key_rows keys, size_t i)
{
	if (keys.rows[i].in.kind == INPUT_ESC)
		return true;
	while (++i < keys.n)
		if (keys.rows[i].word)
			return false;
	return true;
}

/* As many as fit, in the order of the table; Esc and the last of it (help) always. */
static void draw_keys(struct canvas *c, struct key_rows keys)
{
	int col = 1, room = c->cols - 1;
	bool full = false;

	for (size_t i = 0; i < keys.n; i++)
		if (keys.rows[i].word && always_stands(keys, i))
			room -= key_cols(&keys.rows[i]) + 2;
	for (size_t i = 0; i < keys.n; i++) {
		const struct key_row *k = &keys.rows[i];
		bool always = always_stands(keys, i);

		if (!k->word)
			continue;
		full = full || (!always && key_cols(k) > room);
		if (full && !always)
			continue;
		if (!always)
			room -= key_cols(k) + 2;
		col = draw_key(c, col, k);
	}
}

static int message_rows(const struct canvas *c, const struct message *m)
{
	size_t need = m ? reader_lines(m->text, c->cols - 2) : 1;
	int most = c->rows / 4;

	return need < (size_t)most ? (int)need : most;
}

static void draw_head(struct canvas *c, struct frame *f)
{
	draw_title(c, f);
	f->first = 1;
	if (f->under && c->rows >= ROWS_UNDER)
		canvas_text(c, f->first++, 1, c->cols - 2, INK_PLAIN, f->under);
	if (c->rows >= ROWS_RULES)
		canvas_line(c, f->first++);
}

static void draw_foot(struct canvas *c, struct frame *f)
{
	const struct message *m = f->message;
	int rows = message_rows(c, m);

	f->last = c->rows - 1;
	if (c->rows >= ROWS_KEYS) {
		draw_keys(c, f->keys);
		f->last--;
	}
	f->last -= rows;
	f->message_row = f->last + 1;
	if (m)
		reader_text(c,
			(struct reader_box){ f->message_row, 1, c->cols - 2, rows, 0 },
			m->is_fault ? INK_FAULT : INK_TITLE, m->text);
	if (f->status && c->rows >= ROWS_STATUS)
		draw_both(c, f->last--, INK_PLAIN, f->status, f->status_right);
	if (c->rows >= ROWS_RULES)
		canvas_line(c, f->last--);
}

bool frame_draw(struct canvas *c, struct frame *f)
{
	canvas_clear(c);
	if (c->cols < LEAST_COLS || c->rows < LEAST_ROWS) {
		reader_text(c, (struct reader_box){ 0, 0, c->cols, c->rows, 0 },
			INK_PLAIN, _("The window is too small."));
		f->first = 0;
		f->last = -1;
		return false;
	}
	f->ruled = c->rows >= ROWS_RULES;
	draw_head(c, f);
	draw_foot(c, f);
	return true;
}

void frame_more(struct canvas *c, const struct frame *f, bool above, bool below)
{
	if (!f->ruled)
		return;
	if (above)
		reader_more(c, f->first - 2, 1);
	if (below)
		reader_more(c, f->last, 1);
}
