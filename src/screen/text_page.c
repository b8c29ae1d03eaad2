#include "screen/text_page.h"

#include "base/mem.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdlib.h>
#include <string.h>

enum { TEXT_BACK = LIST_OTHERS, TEXT_HELP };
enum { LINES_MANY = 1 << 20 }; /* drawing keeps the top line in bounds */

static const struct key_row rows[] = {
	LIST_KEYS,
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, TEXT_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, TEXT_BACK, "Enter", NULL,
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, TEXT_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows text_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

struct wish text_page_key(struct text_page *p, struct input in)
{
	int action = keys_find(text_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(action, LINES_MANY, p->rows, &p->top))
		return page_wish(WANT_NOTHING);
	if (action == TEXT_BACK)
		return page_wish(WANT_BACK);
	if (action == TEXT_HELP)
		return page_wish(WANT_HELP);
	page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}

/* Cuts the copy into paragraphs at its newlines. */
static struct paragraph *cut(char *text, size_t *n)
{
	struct paragraph *all = NULL;
	size_t cap = 0;

	*n = 0;
	while (text) {
		char *end = strchr(text, '\n');

		if (end)
			*end++ = '\0';
		all = mem_grow(all, &cap, *n + 1, sizeof *all);
		all[(*n)++] = (struct paragraph){ INK_PLAIN, 0, NULL, text };
		text = end;
	}
	return all;
}

void text_page_draw(struct text_page *p, struct canvas *c)
{
	char *text = NULL;
	struct paragraph *all = NULL;
	size_t n = 0, lines = 0;
	struct frame f = {
		.title = p->title, .message = &p->message, .keys = text_page_keys()
	};

	if (!frame_draw(c, &f))
		return;
	p->rows = f.last - f.first + 1;
	text = mem_text(p->text ? p->text : "");
	all = cut(text, &n);
	lines = reader_draw(c, f.first, f.last, &p->top, all, n);
	free(all);
	free(text);
	canvas_cursor(c, f.first, 0);
	if (p->rows > 0 && lines > p->top + (size_t)p->rows)
		reader_more(c, f.last, lines - p->top - (size_t)p->rows);
}
