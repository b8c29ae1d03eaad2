#include "screen/today_page.h"

#include "base/words.h"
#include "screen/list.h"
#include "screen/reader.h"
#include "today_parts.h"

enum {
	TODAY_OPEN = LIST_OTHERS,
	TODAY_WEEK,
	TODAY_FLIGHT,
	TODAY_SPOTS,
	TODAY_WEATHER,
	TODAY_PRINT,
	TODAY_CARRY,
	TODAY_BOOK,
	TODAY_SERVICE,
	TODAY_ALERTS,
	TODAY_PICKS,
	TODAY_UNDO,
	TODAY_NARROW,
	TODAY_STAY,
	TODAY_HELP,
	TODAY_QUIT,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, TODAY_OPEN, "Enter", N_("run"),
		N_("on a farm: its run; on a trap or block: what stands behind the "
		   "verdict; on a hot block: the numbers behind it; on what comes next: "
		   "its flight") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'w' }, { INPUT_NONE, 0 }, TODAY_WEEK, "w", N_("week"),
		N_("the week's answers for all farms") },
	{ { INPUT_CHAR, 'a' }, { INPUT_NONE, 0 }, TODAY_ALERTS, "a", N_("alerts"),
		N_("catches over the threshold, what was decided about them, and what "
		   "the catch did after") },
	{ { INPUT_CHAR, 'k' }, { INPUT_NONE, 0 }, TODAY_PICKS, "k", N_("picks"),
		N_("planned and done picks beside the treatments before them; where "
		   "entry or a pick is barred, and until when") },
	{ { INPUT_CHAR, 'h' }, { INPUT_NONE, 0 }, TODAY_SPOTS, "h", N_("hot"),
		N_("hot spots: which block or edge of the picked farm is hot, on a "
		   "map") },
	{ { INPUT_CHAR, 's' }, { INPUT_NONE, 0 }, TODAY_SERVICE, "s", N_("service"),
		N_("lures and cards that are due, what to bring, the shelf") },
	{ { INPUT_CHAR, 'b' }, { INPUT_NONE, 0 }, TODAY_BOOK, "b", N_("book"),
		N_("farms, blocks, traps, kinds, thresholds, settings: what the log is "
		   "kept of") },
	{ { INPUT_CHAR, 'q' }, { INPUT_NONE, 0 }, TODAY_QUIT, "q", N_("quit"),
		N_("ends the program; everything is saved already") },
	{ { INPUT_CHAR, 'l' }, { INPUT_CHAR, 'f' }, TODAY_FLIGHT, "l", N_("flight"),
		N_("the flight of the picked farm, block or trap, and what comes next") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, TODAY_PRINT, "p", N_("print"),
		N_("asks; Enter then sends the weekly sheet of the picked farm to the "
		   "printer, into a file where there is none") },
	{ { INPUT_CHAR, 'P' }, { INPUT_NONE, 0 }, TODAY_CARRY, "P", NULL,
		N_("the same to carry round the traps and write on") },
	{ { INPUT_CHAR, 'm' }, { INPUT_NONE, 0 }, TODAY_WEATHER, "m", N_("weather"),
		N_("the temperatures of the picked farm's station") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, TODAY_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, TODAY_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, TODAY_STAY, "Esc", NULL,
		N_("ends looking for something; stays here, on the first page") },
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
	const struct today_hot *hot = today_picked_hot(p);
	const struct today_next *next = today_picked_next(p);
	struct wish w = page_wish(run || line || hot || next ? want : WANT_NOTHING);

	w.day = p->today->day;
	w.farm = run ? run->farm : line ? line->farm : 0;
	w.farm = hot ? hot->farm : next ? next->farm : w.farm;
	return w;
}

/* Of the picked one; "" when there is none. */
static const char *farm_name(const struct today_page *p)
{
	const struct today_run *run = today_picked_run(p);
	const struct today_line *line = today_picked_line(p);
	const struct today_hot *hot = today_picked_hot(p);
	const struct today_next *next = today_picked_next(p);

	if (run || line)
		return run ? run->name : line->farm_name;
	return hot ? hot->name : next ? next->name : "";
}

/* p turns the pest on other pages: nothing is printed, or put into a file, unasked. */
static struct wish ask_to_print(struct today_page *p, bool to_carry)
{
	struct wish w = farm_wish(p, WANT_SHEET);

	w.by = to_carry;
	message_set(&p->message, false,
		to_carry ? _("Enter prints the sheet to carry round %s, Esc leaves it.")
			 : _("Enter prints the weekly sheet of %s, Esc leaves it."),
		farm_name(p));
	return asking_start(&p->asking, w);
}

/* And with its block, pest and trap, as far as it has them. */
static struct wish picked_wish(const struct today_page *p, enum want want)
{
	const struct today_line *line = today_picked_line(p);
	const struct today_hot *hot = today_picked_hot(p);
	const struct today_next *next = today_picked_next(p);
	struct wish w = farm_wish(p, want);

	if (line) {
		w.block = line->block;
		w.pest = line->pest;
		w.trap = line->trap;
	}
	if (hot) {
		w.block = hot->block;
		w.pest = hot->pest;
	}
	if (next)
		w.pest = next->pest;
	return w;
}

static struct wish open_picked(const struct today_page *p)
{
	if (today_picked_line(p))
		return picked_wish(p, WANT_WHY);
	if (today_picked_hot(p))
		return picked_wish(p, WANT_HOTSPOTS);
	return picked_wish(p, today_picked_next(p) ? WANT_FLIGHT : WANT_RUN);
}

static bool needs_farm(int action)
{
	return action == TODAY_OPEN || action == TODAY_PRINT || action == TODAY_CARRY ||
	       action == TODAY_FLIGHT || action == TODAY_SPOTS ||
	       action == TODAY_WEATHER;
}

/* What is typed to look for something, and moving among what is found. */
static bool narrows_or_moves(struct today_page *p, int action, struct input in)
{
	today_find(p);
	if (sift_key(&p->sift, in, &p->message)) {
		today_find(p);
		return true;
	}
	if (sift_move(&p->sift, action, p->rows, &p->picked))
		return true;
	p->sift.narrow.typing = false;
	return false;
}

/* Nothing is picked: the book has no trap, or none is shown. */
static struct wish without_farm(struct today_page *p, int action)
{
	if (p->today->n_runs > 0)
		message_set(&p->message, false,
			_("Nothing is picked: Esc shows all again."));
	else if (action == TODAY_OPEN)
		return page_wish(WANT_START);
	else
		message_set(&p->message, false,
			_("No trap hangs yet: Enter begins, b opens the book."));
	return page_wish(WANT_NOTHING);
}

static struct wish act(struct today_page *p, int action, struct input in)
{
	switch (action) {
	case TODAY_OPEN:
		return open_picked(p);
	case TODAY_WEEK:
		return page_wish(WANT_WEEK);
	case TODAY_ALERTS:
		return page_wish(WANT_ALERTS);
	case TODAY_PICKS:
		return page_wish(WANT_PICKS);
	case TODAY_SERVICE:
		return page_wish(WANT_SERVICE);
	case TODAY_FLIGHT:
		return picked_wish(p, WANT_FLIGHT);
	case TODAY_SPOTS:
		return picked_wish(p, WANT_HOTSPOTS);
	case TODAY_WEATHER:
		return farm_wish(p, WANT_WEATHER);
	case TODAY_PRINT:
		return ask_to_print(p, false);
	case TODAY_CARRY:
		return ask_to_print(p, true);
	case TODAY_BOOK:
		return page_wish(WANT_BOOK);
	case TODAY_UNDO:
		return page_wish(WANT_UNDO_STEP);
	case TODAY_NARROW:
		narrow_start(&p->sift.narrow);
		break;
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

struct wish today_page_key(struct today_page *p, struct input in)
{
	int action = keys_find(today_page_keys(), in);
	struct wish w = page_wish(WANT_NOTHING);

	if (!input_is_key(in))
		return w;
	p->message = (struct message){ 0 };
	if (asking_key(&p->asking, in, &p->message, &w))
		return w;
	if (narrows_or_moves(p, action, in))
		return page_wish(WANT_NOTHING);
	if (needs_farm(action) && (p->today->n_runs == 0 || p->sift.n == 0))
		return without_farm(p, action);
	return act(p, action, in);
}

static void draw_empty(struct canvas *c, int first, int last)
{
	const struct paragraph text[] = {
		{ INK_TITLE, 0, NULL, _("No trap hangs yet.") },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL,
			_("Enter: type in your farm and its traps, take in a file of "
			  "them, or look around in an invented season. Traps that were "
			  "taken down are hung again from their list.") },
		{ INK_PLAIN, 0, NULL, "" },
		{ INK_PLAIN, 0, NULL, _("b: all that the book holds.") },
	};
	size_t top = 0;

	reader_draw(c, first, last, &top, text, sizeof text / sizeof *text);
	canvas_cursor(c, first, 0);
}

void today_page_draw(struct today_page *p, struct canvas *c)
{
	const struct today *t = p->today;
	char title[64] = "mothtally";
	struct message m = p->message;
	struct frame f = { .title = title,
		.message = &m,
		.keys = asking_keys(
			&p->asking, sift_keys(&p->sift, today_page_keys())) };
	int cursor = -1;

	f.right = c->cols >= FRAME_WIDE ? t->title : t->title_short;
	today_find(p);
	sift_title(&p->sift, title, sizeof title);
	if (!m.text[0])
		cursor = sift_say(&p->sift, &m);
	if (!m.text[0])
		today_say_picked(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	if (today_count(t) == 0)
		draw_empty(c, f.first, f.last);
	else
		today_draw_rows(p, c, &f);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
