#include "screen/why_page.h"

#include "base/mem.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdlib.h>

enum {
	WHY_BACK = LIST_OTHERS,
	WHY_ENTER,
	WHY_FLIGHT,
	WHY_DIARY,
	WHY_ANSWER,
	WHY_UNDO,
	WHY_HELP
};

enum { ABOUT_A_TRAP = 4 }; /* keys that help pages do not have: the first ones */

static const struct key_row rows[] = {
	{ { INPUT_CHAR, 'a' }, { INPUT_NONE, 0 }, WHY_ANSWER, "a", N_("answer"),
		N_("what was decided about a catch that is over: 1 looked, 2 treated, "
		   "3 left as it was, then a line; again: corrects it") },
	{ { INPUT_CHAR, 'l' }, { INPUT_NONE, 0 }, WHY_FLIGHT, "l", N_("flight"),
		N_("the flight of this trap or block") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, WHY_DIARY, "d", N_("diary"),
		N_("every visit of this trap, to be read and corrected; of a block its "
		   "season: catches over, treatments, picks, checks") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, WHY_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
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
	return (struct key_rows){ rows + ABOUT_A_TRAP,
		sizeof rows / sizeof *rows - ABOUT_A_TRAP };
}

static struct wish read_key(struct why_page *p, struct key_rows keys, struct input in)
{
	int action = keys_find(keys, in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(action, LINES_MANY, p->rows, &p->top))
		return page_wish(WANT_NOTHING);
	if (action == WHY_BACK || action == WHY_ENTER)
		return page_wish(WANT_BACK);
	if (action == WHY_FLIGHT)
		return page_wish(WANT_FLIGHT);
	if (action == WHY_DIARY)
		return page_wish(WANT_DIARY);
	if (action == WHY_HELP)
		return page_wish(WANT_HELP);
	page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}

static void start_answer(struct why_page *p)
{
	if (p->alert)
		answering_start(&p->answering, p->alert);
	else
		message_set(&p->message, false,
			_("Nothing is over here, so there is nothing to answer."));
}

struct wish why_page_key(struct why_page *p, struct input in)
{
	int action = keys_find(why_page_keys(), in);

	if (p->answering.stage != ANSWERING_OFF && in.kind != INPUT_NONE &&
		in.kind != INPUT_RESIZE && in.kind != INPUT_LEAVE) {
		p->message = (struct message){ 0 };
		return answering_key(&p->answering, in, &p->message);
	}
	if (action == WHY_UNDO)
		return page_wish(WANT_UNDO_STEP);
	if (action != WHY_ANSWER)
		return read_key(p, why_page_keys(), in);
	p->message = (struct message){ 0 };
	start_answer(p);
	return page_wish(WANT_NOTHING);
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
	struct message m = p->message;
	struct frame f = { .title = p->why->title,
		.right = p->right,
		.message = &m,
		.keys = answering_keys(&p->answering, why_page_keys()) };
	int cursor = -1;

	if (p->answering.stage != ANSWERING_OFF)
		cursor = answering_say(&p->answering, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	text = paragraphs(p->why);
	p->rows = f.last - f.first + 1;
	lines = reader_draw(c, f.first, f.last, &p->top, text, p->why->n);
	free(text);
	canvas_cursor(c, f.first, 0);
	if (p->rows > 0 && lines > p->top + (size_t)p->rows)
		reader_more(c, f.last, lines - p->top - (size_t)p->rows);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
