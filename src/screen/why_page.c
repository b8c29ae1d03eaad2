#include "screen/why_page.h"

#include "base/mem.h"
#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdlib.h>

enum { WHY_BACK = LIST_OTHERS, WHY_ENTER, WHY_FLIGHT, WHY_HELP };

/* The first one is not on help pages. */
static const struct key_row rows[] = {
	{ { INPUT_CHAR, 'l' }, { INPUT_NONE, 0 }, WHY_FLIGHT, "l", N_("flight"),
		N_("the flight of this trap or block") },
	LIST_KEYS,
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, WHY_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, WHY_ENTER, "Enter", NULL,
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, WHY_HELP, "?", N_("keys"),
		N_("this page") },
};

enum { LINES_MANY = 1 << 20 }; /* drawing keeps the top line in bounds */

struct key_rows why_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

struct key_rows help_page_keys(void)
{
	return (struct key_rows){ rows + 1, sizeof rows / sizeof *rows - 1 };
}

static struct wish read_key(struct why_page *p, struct key_rows keys, struct input in)
{
	int action = keys_find(keys, in);

	if (in.kind == INPUT_NONE || in.kind == INPUT_RESIZE || in.kind == INPUT_LEAVE)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(action, LINES_MANY, p->rows, &p->top))
		return page_wish(WANT_NOTHING);
	if (action == WHY_BACK || action == WHY_ENTER)
		return page_wish(WANT_BACK);
	if (action == WHY_FLIGHT)
		return page_wish(WANT_FLIGHT);
	if (action == WHY_HELP)
		return page_wish(WANT_HELP);
	page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}

struct wish why_page_key(struct why_page *p, struct input in)
{
	return read_key(p, why_page_keys(), in);
}

struct wish help_page_key(struct help_page *p, struct input in)
{
	struct why_page reading = { .top = p->top, .rows = p->rows };
	struct wish w = read_key(&reading, help_page_keys(), in);

	p->top = reading.top;
	p->message = reading.message;
	if (w.want != WANT_HELP)
		return w;
	message_set(&p->message, false, _("Esc goes back."));
	return page_wish(WANT_NOTHING);
}

static struct paragraph *paragraphs(const struct why *why)
{
	struct paragraph *text = mem_new(why->n, sizeof *text);

	for (size_t i = 0; i < why->n; i++)
		text[i] = (struct paragraph){ list_ink(why->lines[i].tone),
			why->lines[i].indent, NULL, why->lines[i].text };
	return text;
}

void why_page_draw(struct why_page *p, struct canvas *c)
{
	struct paragraph *text = NULL;
	size_t lines = 0;
	int first = 0, last = 0;

	if (!page_frame(c, p->why->title, p->right, &p->message, why_page_keys(),
		    &first, &last))
		return;
	text = paragraphs(p->why);
	p->rows = last - first + 1;
	lines = reader_draw(c, first, last, &p->top, text, p->why->n);
	free(text);
	canvas_cursor(c, first, 0);
	if (p->rows > 0 && lines > p->top + (size_t)p->rows)
		reader_more(c, last, lines - p->top - (size_t)p->rows);
}
