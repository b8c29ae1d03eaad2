#include "screen/start_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/prompt.h"
#include "screen/reader.h"

#include <stdio.h>
#include <string.h>

enum {
	START_PICKED = 1,
	START_UP,
	START_DOWN,
	START_TYPE,
	START_FILE,
	START_DEMO,
	START_BACK,
	START_QUIT,
	START_HELP,
};

enum { WAYS = 3 };

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, START_PICKED, "Enter", N_("go on"),
		N_("takes the picked way") },
	{ { INPUT_CHAR, '1' }, { INPUT_NONE, 0 }, START_TYPE, "1", N_("type in"),
		N_("a form for the first farm, then its block, then the traps") },
	{ { INPUT_CHAR, '2' }, { INPUT_NONE, 0 }, START_FILE, "2", N_("file"),
		N_("takes in a CSV file of farms, blocks and traps, a row a trap") },
	{ { INPUT_CHAR, '3' }, { INPUT_NONE, 0 }, START_DEMO, "3", N_("demo"),
		N_("the pages on an invented season; q there comes back here") },
	{ { INPUT_UP, 0 }, { INPUT_NONE, 0 }, START_UP, "Up", NULL, N_("one way up") },
	{ { INPUT_DOWN, 0 }, { INPUT_NONE, 0 }, START_DOWN, "Down", NULL,
		N_("one way down") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, START_BACK, "Esc", NULL,
		N_("to Today, once there is a book") },
	{ { INPUT_CHAR, 'q' }, { INPUT_NONE, 0 }, START_QUIT, "q", N_("quit"),
		N_("ends the program; no book is made") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, START_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows start_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

static struct wish take_way(struct start_page *p, size_t way)
{
	static const enum want want[WAYS] = { WANT_START_TYPING, WANT_NOTHING,
		WANT_START_DEMO };

	p->picked = way;
	p->asking = way == 1;
	p->cursor = strlen(p->path);
	return page_wish(want[way]);
}

static struct wish path_key(struct start_page *p, struct input in)
{
	struct line l = { p->path, sizeof p->path, p->cursor, false };
	struct wish w = page_wish(WANT_NOTHING);

	if (in.kind == INPUT_ESC) {
		p->asking = false;
		message_set(&p->message, false, _("Left as it was."));
	} else if (in.kind == INPUT_ENTER && p->path[0]) {
		p->asking = false;
		w.want = WANT_START_FILE;
		text_copy(w.words.note, sizeof w.words.note, p->path);
	} else if (in.kind == INPUT_ENTER || !line_key(&l, in, &p->message))
		message_set(&p->message, false,
			_("A path such as traps.csv; Esc leaves it."));
	else
		p->cursor = l.at;
	return w;
}

static struct wish act(struct start_page *p, int action, struct input in)
{
	switch (action) {
	case START_PICKED:
		return take_way(p, p->picked);
	case START_TYPE:
		return take_way(p, 0);
	case START_FILE:
		return take_way(p, 1);
	case START_DEMO:
		return take_way(p, 2);
	case START_UP:
		p->picked -= p->picked > 0;
		break;
	case START_DOWN:
		p->picked += p->picked + 1 < WAYS;
		break;
	case START_BACK:
		return page_wish(WANT_BACK);
	case START_QUIT:
		return page_wish(WANT_QUIT);
	case START_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

struct wish start_page_key(struct start_page *p, struct input in)
{
	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (p->asking)
		return path_key(p, in);
	return act(p, keys_find(start_page_keys(), in), in);
}

static const char *way_text(const struct start_page *p, size_t i)
{
	switch (i) {
	case 0:
		return p->begun ? _("Go on typing in: blocks and traps.")
				: _("Type in your first farm, its blocks and traps.");
	case 1:
		return _("Take in a file of traps (CSV, a row a trap).");
	default:
		return _("Look around in an invented season.");
	}
}

/* The two lines on top go first where there is no room, then what stands below. */
static int draw_head(struct canvas *c, int first, int last)
{
	static const char *const about[] = {
		N_("A log of what your pheromone traps catch: each week a number per "
		   "trap."),
		N_("It holds every count against your own thresholds, and keeps it."),
	};
	int cols = c->cols - 2, need = 1;

	for (int i = 0; i < 2; i++)
		need += (int)reader_lines(_(about[i]), cols);
	if (last - first + 1 < need + 2 * WAYS)
		return first;
	for (int i = 0; i < 2; i++)
		first += reader_text(c,
			(struct reader_box){ first, 1, cols, last - first + 1, 0 },
			INK_PLAIN, _(about[i]));
	return first + 1;
}

static int draw_way(
	const struct start_page *p, struct canvas *c, int first, int last, size_t i)
{
	bool here = i == p->picked;
	enum ink ink = here ? INK_PICKED : INK_PLAIN;

	if (here) {
		canvas_text(c, first, 0, c->cols, ink, " >");
		canvas_cursor(c, first, 1);
	}
	canvas_textf(c, first, 3, 0, ink, "%zu", i + 1);
	return first + reader_text(c,
			       (struct reader_box){
				       first, 6, c->cols - 7, last - first + 1, 0 },
			       ink, way_text(p, i));
}

static int all_rows(const struct start_page *p, const struct canvas *c)
{
	size_t n = 0;

	for (size_t i = 0; i < WAYS; i++)
		n += reader_lines(way_text(p, i), c->cols - 7);
	return (int)n;
}

/* The picked way is always in sight. */
static void draw_ways(
	const struct start_page *p, struct canvas *c, const struct frame *f)
{
	char text[1200];
	int row = draw_head(c, f->first, f->last);
	size_t first = all_rows(p, c) > f->last - row + 1 ? p->picked : 0;

	for (size_t i = first; i < WAYS && row <= f->last; i++)
		row = draw_way(p, c, row, f->last, i);
	if (!p->book || row >= f->last)
		return;
	snprintf(text, sizeof text,
		_("The book will be %s; it is made when something is saved."), p->book);
	reader_text(c, (struct reader_box){ row + 1, 1, c->cols - 2, f->last - row, 0 },
		INK_QUIET, text);
}

/* The end of the path behind its prompt; returns the column of the cursor. */
static void draw_path(const struct start_page *p, struct canvas *c, int row)
{
	char path[sizeof p->path];
	struct line l = { path, sizeof path, p->cursor, false };

	text_copy(path, sizeof path, p->path);
	line_ask(&l, c, row, _("file of traps: "));
}

void start_page_draw(struct start_page *p, struct canvas *c)
{
	struct message m = p->message;
	struct frame f = { .title = "mothtally",
		.message = &m,
		.keys = p->asking ? prompt_keys(PROMPT_LINE) : start_page_keys() };

	if (p->asking && !m.text[0])
		f.status = _("Enter takes it in, Esc leaves it.");
	if (!frame_draw(c, &f))
		return;
	draw_ways(p, c, &f);
	if (p->asking)
		draw_path(p, c, f.message_row);
}
