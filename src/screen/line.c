#include "screen/line.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

struct line line_open(char *text, size_t size, bool fresh)
{
	return (struct line){ text, size, strlen(text), fresh && text[0] };
}

/* Behind the character that begins at `at`, and behind the combining ones on it. */
static size_t next(const char *text, size_t at)
{
	uint32_t cp = 0;
	size_t n = text_decode(text + at, strlen(text + at), &cp);

	do {
		at += n;
		n = text_decode(text + at, strlen(text + at), &cp);
	} while (n > 0 && text_char_cols(cp) == 0);
	return at;
}

static size_t before(const char *text, size_t at)
{
	size_t from = 0, to = 0;

	while ((to = next(text, from)) < at)
		from = to;
	return from;
}

static void insert(struct line *l, uint32_t ch, struct message *m)
{
	char text[5];
	size_t n = text_encode(ch, text), all = l->fresh ? 0 : strlen(l->text);

	if (text_control(ch)) {
		message_set(m, true, _("That character cannot stand in a text."));
		return;
	}
	if (all + n >= l->size) {
		message_set(m, true, _("No more fits here."));
		return;
	}
	if (l->fresh)
		l->text[l->at = 0] = '\0';
	memmove(l->text + l->at + n, l->text + l->at, all - l->at + 1);
	memcpy(l->text + l->at, text, n);
	l->at += n;
}

static void erase(struct line *l, size_t from, size_t to)
{
	memmove(l->text + from, l->text + to, strlen(l->text + to) + 1);
	l->at = from;
}

static bool edit(struct line *l, enum input_kind kind)
{
	switch (kind) {
	case INPUT_LEFT:
		l->at = before(l->text, l->at);
		return true;
	case INPUT_RIGHT:
		l->at = next(l->text, l->at);
		return true;
	case INPUT_HOME:
		l->at = 0;
		return true;
	case INPUT_END:
		l->at = strlen(l->text);
		return true;
	case INPUT_BACKSPACE:
		erase(l, before(l->text, l->at), l->at);
		return true;
	case INPUT_DELETE:
		erase(l, l->at, next(l->text, l->at));
		return true;
	default:
		return false;
	}
}

bool line_key(struct line *l, struct input in, struct message *m)
{
	if (in.kind == INPUT_CHAR)
		insert(l, in.ch, m);
	else if (!edit(l, in.kind))
		return false;
	l->fresh = false;
	return true;
}

/* Columns of the text between two places. */
static int cols_between(const char *text, size_t from, size_t to)
{
	uint32_t cp = 0;
	int cols = 0;

	while (from < to) {
		from += text_decode(text + from, to - from, &cp);
		cols += text_char_cols(cp);
	}
	return cols;
}

/* The cursor needs a column behind the text; a < takes one in front. */
static size_t first_shown(const struct line *l, int width)
{
	size_t from = 0;

	if (cols_between(l->text, 0, l->at) < width)
		return 0;
	while (from < l->at && cols_between(l->text, from, l->at) > width - 2)
		from = next(l->text, from);
	return from;
}

int line_draw(const struct line *l, struct canvas *c, struct line_box box)
{
	size_t from = first_shown(l, box.width);
	int col = box.col, end = box.col + box.width;
	int cursor = cols_between(l->text, from, l->at);

	if (from > 0)
		col = canvas_text(c, box.row, col, 1, box.ink, "<");
	if (end > col)
		canvas_text(c, box.row, col, end - col, box.ink, l->text + from);
	if (text_cols(l->text + from) > end - col)
		canvas_text(c, box.row, end - 1, 1, box.ink, ">");
	return col + cursor < end ? col + cursor : end - 1;
}

void line_ask(const struct line *l, struct canvas *c, int row, const char *prompt)
{
	enum { LEAST = 8 };
	int at = 1 + text_cols(prompt);

	if (c->cols - at < LEAST)
		at = 1;
	else
		canvas_text(c, row, 1, 0, INK_TITLE, prompt);
	const struct line_box box = { row, at, c->cols - at, INK_FIELD };
	canvas_cursor(c, row, line_draw(l, c, box));
}
