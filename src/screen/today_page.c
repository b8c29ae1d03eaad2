#include "screen/today_page.h"

#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

enum {
	TODAY_OPEN = LIST_OTHERS,
	TODAY_WEEK,
	TODAY_FLIGHT,
	TODAY_WEATHER,
	TODAY_PRINT,
	TODAY_STAY,
	TODAY_HELP,
	TODAY_QUIT,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, TODAY_OPEN, "Enter", N_("run, or why"),
		N_("on a farm: its run; on a trap or block: what stands behind the "
		   "verdict; on what comes next: its flight") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'w' }, { INPUT_NONE, 0 }, TODAY_WEEK, "w", N_("week"),
		N_("the week's answers for all farms") },
	{ { INPUT_CHAR, 'f' }, { INPUT_CHAR, 'l' }, TODAY_FLIGHT, "f", N_("flight"),
		N_("the flight of the picked farm, block or trap: chart, biofix, what "
		   "comes next") },
	{ { INPUT_CHAR, 'm' }, { INPUT_NONE, 0 }, TODAY_WEATHER, "m", N_("weather"),
		N_("the temperatures of the picked farm's station") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, TODAY_PRINT, "p", N_("print"),
		N_("the weekly sheet of the picked farm, into a file") },
	{ { INPUT_CHAR, 'q' }, { INPUT_NONE, 0 }, TODAY_QUIT, "q", N_("quit"),
		N_("ends the program; everything is saved already") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, TODAY_STAY, "Esc", NULL,
		N_("stays here, on the first page") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, TODAY_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows today_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

/* With the farm of the picked one; nothing when there is none. */
static struct wish farm_wish(const struct today_page *p, enum want want)
{
	const struct today_run *run = today_picked_run(p);
	const struct today_line *line = today_picked_line(p);
	const struct today_next *next = today_picked_next(p);
	struct wish w = page_wish(run || line || next ? want : WANT_NOTHING);

	w.day = p->today->day;
	w.farm = run ? run->farm : line ? line->farm : next ? next->farm : 0;
	return w;
}

/* And with its block, pest and trap, as far as it has them. */
static struct wish picked_wish(const struct today_page *p, enum want want)
{
	const struct today_line *line = today_picked_line(p);
	const struct today_next *next = today_picked_next(p);
	struct wish w = farm_wish(p, want);

	if (line) {
		w.block = line->block;
		w.pest = line->pest;
		w.trap = line->trap;
	}
	if (next)
		w.pest = next->pest;
	return w;
}

static struct wish open_picked(const struct today_page *p)
{
	if (today_picked_line(p))
		return picked_wish(p, WANT_WHY);
	return picked_wish(p, today_picked_next(p) ? WANT_FLIGHT : WANT_RUN);
}

static bool needs_farm(int action)
{
	return action == TODAY_OPEN || action == TODAY_PRINT ||
	       action == TODAY_FLIGHT || action == TODAY_WEATHER;
}

struct wish today_page_key(struct today_page *p, struct input in)
{
	int action = keys_find(today_page_keys(), in);

	if (in.kind == INPUT_NONE || in.kind == INPUT_RESIZE || in.kind == INPUT_LEAVE)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (list_move(action, today_count(p->today), p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	if (p->today->n_runs == 0 && needs_farm(action)) {
		message_set(&p->message, false,
			_("No trap hangs yet: q leaves, then mothtally import traps "
			  "FILE."));
		return page_wish(WANT_NOTHING);
	}
	switch (action) {
	case TODAY_OPEN:
		return open_picked(p);
	case TODAY_WEEK:
		return page_wish(WANT_WEEK);
	case TODAY_FLIGHT:
		return picked_wish(p, WANT_FLIGHT);
	case TODAY_WEATHER:
		return farm_wish(p, WANT_WEATHER);
	case TODAY_PRINT:
		return farm_wish(p, WANT_SHEET);
	case TODAY_HELP:
		return page_wish(WANT_HELP);
	case TODAY_QUIT:
		return page_wish(WANT_QUIT);
	case TODAY_STAY:
		message_set(&p->message, false, _("This is the first page: q ends."));
		break;
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

static void draw_empty(struct canvas *c, int first, int last)
{
	const struct paragraph text[] = {
		{ INK_TITLE, 0, NULL, _("No trap hangs yet.") },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("Your farms, blocks and traps come in from one CSV file, a "
			  "row a trap. Leave with q, then type:") },
		{ INK_TITLE, 4, NULL, "mothtally import traps FILE" },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("To look around in an invented season first:") },
		{ INK_TITLE, 4, NULL, "mothtally demo" },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("The columns of the file stand in the manual: man 5 "
			  "mothtally.") },
	};
	size_t top = 0;

	reader_draw(c, first, last, &top, text, sizeof text / sizeof *text);
}

void today_page_draw(struct today_page *p, struct canvas *c)
{
	const struct today *t = p->today;
	struct message m = p->message;
	struct frame f = {
		.title = "mothtally", .message = &m, .keys = today_page_keys()
	};
	size_t n = today_count(t);

	f.right = c->cols >= FRAME_WIDE ? t->title : t->title_short;
	if (p->picked >= n)
		p->picked = n ? n - 1 : 0;
	if (!m.text[0])
		today_say_picked(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	if (n == 0)
		draw_empty(c, f.first, f.last);
	else
		today_draw_rows(p, c, &f);
}
