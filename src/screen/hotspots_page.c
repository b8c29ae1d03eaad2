#include "screen/hotspots_page.h"

#include "answers/entry.h"
#include "base/words.h"
#include "hotspots_parts.h"
#include "screen/list.h"

#include <stdio.h>

enum {
	SPOTS_OPEN = LIST_OTHERS,
	SPOTS_LEFT,
	SPOTS_RIGHT,
	SPOTS_NEXT_TRAP,
	SPOTS_MAP,
	SPOTS_SOURCES,
	SPOTS_BOOK,
	SPOTS_NARROW,
	SPOTS_BACK,
	SPOTS_FARM_NEXT,
	SPOTS_FARM_BACK,
	SPOTS_PEST_NEXT,
	SPOTS_PEST_BACK,
	SPOTS_SEASON_BACK,
	SPOTS_SEASON_NEXT,
	SPOTS_FLIGHT_NEXT,
	SPOTS_FLIGHT_BACK,
	SPOTS_ALIKE_NEXT,
	SPOTS_ALIKE_BACK,
	SPOTS_HELP,
};

enum { LINES_MANY = 1 << 20 }; /* drawing keeps the top line in bounds */

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, SPOTS_OPEN, "Enter", N_("numbers"),
		N_("the numbers behind the picked answer, and what would confirm it; "
		   "on the map behind the picked trap") },
	{ { INPUT_CHAR, 'm' }, { INPUT_NONE, 0 }, SPOTS_MAP, "m", N_("map"),
		N_("the map of the traps; again the list") },
	{ { INPUT_CHAR, 's' }, { INPUT_NONE, 0 }, SPOTS_SOURCES, "s", N_("sources"),
		N_("whether the catch falls away from a source; again the list") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, SPOTS_BACK, "Esc", N_("back"),
		N_("to the list; from there to the page before") },
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, SPOTS_FARM_NEXT, "f", N_("farm"),
		N_("the next farm") },
	{ { INPUT_CHAR, 'F' }, { INPUT_NONE, 0 }, SPOTS_FARM_BACK, "F", NULL,
		N_("the farm before") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, SPOTS_PEST_NEXT, "p", N_("pest"),
		N_("the next pest") },
	{ { INPUT_CHAR, 'P' }, { INPUT_NONE, 0 }, SPOTS_PEST_BACK, "P", NULL,
		N_("the pest before") },
	{ { INPUT_CHAR, 'y' }, { INPUT_NONE, 0 }, SPOTS_SEASON_BACK, "y", N_("year"),
		N_("the season before") },
	{ { INPUT_CHAR, 'Y' }, { INPUT_NONE, 0 }, SPOTS_SEASON_NEXT, "Y", NULL,
		N_("the season after") },
	{ { INPUT_CHAR, 'l' }, { INPUT_NONE, 0 }, SPOTS_FLIGHT_NEXT, "l", N_("flight"),
		N_("the next flight alone; after the last one the whole season") },
	{ { INPUT_CHAR, 'L' }, { INPUT_NONE, 0 }, SPOTS_FLIGHT_BACK, "L", NULL,
		N_("the flight before") },
	{ { INPUT_CHAR, 'c' }, { INPUT_NONE, 0 }, SPOTS_ALIKE_NEXT, "c",
		N_("like traps"),
		N_("the next group of like traps: one lure, one condition") },
	{ { INPUT_CHAR, 'C' }, { INPUT_NONE, 0 }, SPOTS_ALIKE_BACK, "C", NULL,
		N_("the group before") },
	{ { INPUT_CHAR, 'b' }, { INPUT_NONE, 0 }, SPOTS_BOOK, "b", N_("book"),
		N_("the book's list of sources of this farm, to put one in or correct "
		   "it") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, SPOTS_NARROW, "/", N_("look for"),
		N_("only rows of the list that contain what is typed next; Esc ends "
		   "it") },
	LIST_KEYS,
	{ { INPUT_LEFT, 0 }, { INPUT_CHAR, '4' }, SPOTS_LEFT, "Left", NULL,
		N_("on the map to the next trap in the west; else back to the "
		   "list") },
	{ { INPUT_RIGHT, 0 }, { INPUT_CHAR, '6' }, SPOTS_RIGHT, "Right", NULL,
		N_("on the map to the next trap in the east; in the list the numbers "
		   "behind") },
	{ { INPUT_TAB, 0 }, { INPUT_NONE, 0 }, SPOTS_NEXT_TRAP, "Tab", NULL,
		N_("on the map to the next trap in driving order") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, SPOTS_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows hotspots_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *hotspots_page_notes(void)
{
	static const char *const notes[] = {
		N_("Blocks come first, the hottest on top, then borders, "
		   "neighbourhoods and single traps. a week: moths per trap; times the "
		   "rest: the ratio to all other like traps, of a border to the "
		   "interior, and the limits between which it likely lies."),
		N_("A hot spot is a place to look at, not a reason to treat: sample "
		   "the fruit there. Not shown does not mean not there."),
		N_("On the map a digit is a trap, by the class of its catch; ? was not "
		   "read, o is not compared; a letter is a source, dots its outline. "
		   "The picked trap is reversed, those near it are underlined; where "
		   "two fall on one mark the higher shows."),
		N_("Traps that differ in lure or condition do not compare: c shows the "
		   "other groups."),
		NULL,
	};

	return notes;
}

/* A step to another farm, pest, season, flight or group; false: the action is none. */
static bool turn(struct hotspots_page *p, int action)
{
	switch (action) {
	case SPOTS_FARM_NEXT:
	case SPOTS_FARM_BACK:
		p->turn_farm = action == SPOTS_FARM_NEXT ? 1 : -1;
		break;
	case SPOTS_PEST_NEXT:
	case SPOTS_PEST_BACK:
		p->turn_pest = action == SPOTS_PEST_NEXT ? 1 : -1;
		break;
	case SPOTS_SEASON_NEXT:
	case SPOTS_SEASON_BACK:
		p->turn_season = action == SPOTS_SEASON_NEXT ? 1 : -1;
		break;
	case SPOTS_FLIGHT_NEXT:
	case SPOTS_FLIGHT_BACK:
		p->turn_flight = action == SPOTS_FLIGHT_NEXT ? 1 : -1;
		break;
	case SPOTS_ALIKE_NEXT:
	case SPOTS_ALIKE_BACK:
		p->turn_alike = action == SPOTS_ALIKE_NEXT ? 1 : -1;
		break;
	default:
		return false;
	}
	return true;
}

static void show(struct hotspots_page *p, enum hotspots_show what)
{
	p->show = what;
	p->text_top = 0;
}

/* Of the row about the picked trap: it and those near it, else it alone. */
static void pick_row_of_trap(struct hotspots_page *p)
{
	const struct hot_view *v = p->view;

	for (size_t i = 0; i < v->n; i++)
		if (v->rows[i].trap == v->traps[p->trap].trap &&
			(v->rows[i].what == HOT_OF_NEAR ||
				v->rows[i].what == HOT_OF_TRAP)) {
			hotspots_page_pick(p, i);
			show(p, HOTSPOTS_NUMBERS);
			return;
		}
	message_set(&p->message, false, _("This trap is not compared: %s"),
		v->left_out[0] ? v->left_out : v->says);
}

static void open_numbers(struct hotspots_page *p)
{
	if (p->show == HOTSPOTS_MAP)
		pick_row_of_trap(p);
	else if (p->show != HOTSPOTS_LIST)
		show(p, HOTSPOTS_LIST);
	else if (p->picked < p->view->n)
		show(p, HOTSPOTS_NUMBERS);
	else
		message_set(&p->message, false, "%s",
			p->view->n ? _("Nothing is picked: Esc shows all again.")
				   : p->view->says);
}

static void toggle_map(struct hotspots_page *p)
{
	if (p->show == HOTSPOTS_MAP)
		show(p, HOTSPOTS_LIST);
	else if (hotspots_pick_trap(p))
		show(p, HOTSPOTS_MAP);
	else
		message_set(&p->message, false, _("No map: %s"),
			p->view->no_map[0] ? p->view->no_map
					   : _("no trap has a position."));
}

static struct wish go_back(struct hotspots_page *p)
{
	if (p->show == HOTSPOTS_LIST)
		return page_wish(WANT_BACK);
	show(p, HOTSPOTS_LIST);
	return page_wish(WANT_NOTHING);
}

static void go_sideways(struct hotspots_page *p, int by)
{
	if (p->show == HOTSPOTS_MAP)
		hotspots_move(p, by, 0);
	else if (p->show == HOTSPOTS_LIST && by > 0)
		open_numbers(p);
	else
		show(p, HOTSPOTS_LIST);
}

static bool moves(struct hotspots_page *p, int action)
{
	if (action < LIST_UP || action >= LIST_OTHERS)
		return false;
	if (p->show == HOTSPOTS_MAP) {
		if (action == LIST_UP || action == LIST_DOWN)
			hotspots_move(p, 0, action == LIST_UP ? 1 : -1);
		return true;
	}
	if (p->show == HOTSPOTS_LIST)
		return sift_move(&p->sift, action, p->rows, &p->picked);
	return list_move(action, LINES_MANY, p->rows, &p->text_top);
}

static struct wish open_sources_of_book(const struct hotspots_page *p)
{
	struct wish w = page_wish(WANT_ENTRIES);

	w.kind = ENTRY_SOURCES;
	w.farm = p->view->farm;
	return w;
}

static struct wish act(struct hotspots_page *p, int action, struct input in)
{
	switch (action) {
	case SPOTS_OPEN:
		open_numbers(p);
		break;
	case SPOTS_MAP:
		toggle_map(p);
		break;
	case SPOTS_SOURCES:
		show(p, p->show == HOTSPOTS_SOURCES ? HOTSPOTS_LIST : HOTSPOTS_SOURCES);
		break;
	case SPOTS_LEFT:
	case SPOTS_RIGHT:
		go_sideways(p, action == SPOTS_RIGHT ? 1 : -1);
		break;
	case SPOTS_NEXT_TRAP:
		hotspots_next_trap(p);
		break;
	case SPOTS_NARROW:
		show(p, HOTSPOTS_LIST);
		narrow_start(&p->sift.narrow);
		break;
	case SPOTS_BOOK:
		return open_sources_of_book(p);
	case SPOTS_BACK:
		return go_back(p);
	case SPOTS_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

/* On the list; what is read beside it is left first. */
static bool narrows(struct hotspots_page *p, struct input in)
{
	hotspots_find(p);
	if (p->show != HOTSPOTS_LIST || !sift_key(&p->sift, in, &p->message))
		return false;
	hotspots_find(p);
	return true;
}

struct wish hotspots_page_key(struct hotspots_page *p, struct input in)
{
	int action = keys_find(hotspots_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (narrows(p, in) || moves(p, action))
		return page_wish(WANT_NOTHING);
	p->sift.narrow.typing = false;
	if (turn(p, action))
		return page_wish(WANT_NOTHING);
	return act(p, action, in);
}

/* Which traps, and which window; on a narrow page the window alone. */
static void say_under(const struct hot_view *v, int cols, char *out, size_t size)
{
	char text[2 * SAY_LINE + 8];

	if (v->n_alikes > 0 && cols >= FRAME_WIDE)
		snprintf(text, sizeof text, "%s \u00b7 %s", v->alikes[v->alike].text,
			v->window);
	else
		snprintf(text, sizeof text, "%s", v->window);
	snprintf(out, size, "%.*s", (int)reader_cut(text, cols - 2), text);
}

static void say_status(
	const struct hotspots_page *p, int cols, char *status, size_t size)
{
	snprintf(status, size, "%s",
		cols >= FRAME_WIDE ? _("a week: moths per trap \u00b7 in brackets: the "
				       "likely limits of the ratio")
				   : _("a week: moths per trap"));
	if (p->view->n == 0)
		status[0] = '\0';
}

static void draw_shown(struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	switch (p->show) {
	case HOTSPOTS_LIST:
		hotspots_list_draw(p, c, f);
		break;
	case HOTSPOTS_NUMBERS:
		hotspots_numbers_draw(p, c, f);
		break;
	case HOTSPOTS_MAP:
		hotspots_map_draw(p, c, f);
		break;
	case HOTSPOTS_SOURCES:
		hotspots_sources_draw(p, c, f);
		break;
	}
}

/* What was picked may be gone from a view that was read anew. */
static void keep_in_bounds(struct hotspots_page *p)
{
	hotspots_find(p);
	if ((p->show == HOTSPOTS_MAP && !hotspots_pick_trap(p)) ||
		(p->show == HOTSPOTS_NUMBERS && p->sift.n == 0))
		show(p, HOTSPOTS_LIST);
}

/* Whether a key leads from what is shown back to the list. */
static bool leads_to_list(const struct hotspots_page *p, int action)
{
	if (action == SPOTS_OPEN)
		return p->show == HOTSPOTS_NUMBERS || p->show == HOTSPOTS_SOURCES;
	return (action == SPOTS_MAP && p->show == HOTSPOTS_MAP) ||
	       (action == SPOTS_SOURCES && p->show == HOTSPOTS_SOURCES);
}

/* The page's keys in the words of what is shown. */
static struct key_rows keys_now(struct hotspots_page *p, struct key_row *now)
{
	size_t n = sizeof rows / sizeof *rows;

	for (size_t i = 0; i < n; i++) {
		now[i] = rows[i];
		if (leads_to_list(p, rows[i].action))
			now[i].word = NC_("key", "list");
	}
	struct key_rows keys = { now, n };
	return p->show == HOTSPOTS_LIST ? sift_keys(&p->sift, keys) : keys;
}

void hotspots_page_draw(struct hotspots_page *p, struct canvas *c)
{
	char title[SAY_LINE + 64], under[2 * SAY_LINE + 8], status[SPOTS_STATUS] = "";
	struct key_row now[sizeof rows / sizeof *rows];
	int cursor = -1;
	struct message m = p->message;
	struct frame f = { .title = title,
		.right = c->cols >= FRAME_WIDE ? p->right : NULL,
		.under = under,
		.status = status,
		.message = &m,
		.keys = keys_now(p, now) };

	keep_in_bounds(p);
	snprintf(title, sizeof title,
		c->cols >= FRAME_WIDE ? _("Hot spots  %s") : _("Hot  %s"),
		p->view->title);
	sift_title(&p->sift, title, sizeof title);
	say_under(p->view, c->cols, under, sizeof under);
	if (p->show == HOTSPOTS_LIST && !m.text[0])
		cursor = sift_say(&p->sift, &m);
	if (p->show == HOTSPOTS_MAP)
		hotspots_map_say(p, c->cols, status, &m);
	else if (p->show == HOTSPOTS_LIST)
		say_status(p, c->cols, status, sizeof status);
	if (!frame_draw(c, &f))
		return;
	draw_shown(p, c, &f);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
