#include "screen/flight_page.h"

#include "base/words.h"
#include "flight_parts.h"
#include "screen/frame.h"
#include "screen/list.h"

enum {
	FLIGHT_FARM_NEXT = LIST_OTHERS,
	FLIGHT_FARM_BACK,
	FLIGHT_BLOCK_NEXT,
	FLIGHT_BLOCK_BACK,
	FLIGHT_TRAP_NEXT,
	FLIGHT_TRAP_BACK,
	FLIGHT_PEST_NEXT,
	FLIGHT_PEST_BACK,
	FLIGHT_SEASON_BACK,
	FLIGHT_SEASON_NEXT,
	FLIGHT_SEVERAL,
	FLIGHT_RULER,
	FLIGHT_SET_BIOFIX,
	FLIGHT_SPOTS,
	FLIGHT_WEATHER,
	FLIGHT_PRINT,
	FLIGHT_BACK,
	FLIGHT_HELP,
};

enum { LINES_MANY = 1 << 20 }; /* drawing keeps the top line in bounds */

static const struct key_row rows[] = {
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, FLIGHT_FARM_NEXT, "f", N_("farm"),
		N_("the next farm; after the last one all farms") },
	{ { INPUT_CHAR, 'F' }, { INPUT_NONE, 0 }, FLIGHT_FARM_BACK, "F", NULL,
		N_("the farm before") },
	{ { INPUT_CHAR, 'k' }, { INPUT_NONE, 0 }, FLIGHT_BLOCK_NEXT, "k", N_("block"),
		N_("the next block of the farm; after the last one all of them") },
	{ { INPUT_CHAR, 'K' }, { INPUT_NONE, 0 }, FLIGHT_BLOCK_BACK, "K", NULL,
		N_("the block before") },
	{ { INPUT_CHAR, 't' }, { INPUT_NONE, 0 }, FLIGHT_TRAP_NEXT, "t", N_("trap"),
		N_("the next trap; after the last one all of them") },
	{ { INPUT_CHAR, 'T' }, { INPUT_NONE, 0 }, FLIGHT_TRAP_BACK, "T", NULL,
		N_("the trap before") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, FLIGHT_PEST_NEXT, "p", N_("pest"),
		N_("the next pest") },
	{ { INPUT_CHAR, 'P' }, { INPUT_NONE, 0 }, FLIGHT_PEST_BACK, "P", NULL,
		N_("the pest before") },
	{ { INPUT_CHAR, 'y' }, { INPUT_LEFT, 0 }, FLIGHT_SEASON_BACK, "y", N_("year"),
		N_("the season before; the left arrow does the same") },
	{ { INPUT_CHAR, 'Y' }, { INPUT_RIGHT, 0 }, FLIGHT_SEASON_NEXT, "Y", NULL,
		N_("the season after; the right arrow does the same") },
	{ { INPUT_CHAR, 'b' }, { INPUT_NONE, 0 }, FLIGHT_SET_BIOFIX, "b", N_("biofix"),
		N_("sets the biofix of this farm and pest, or takes it out") },
	{ { INPUT_CHAR, 'v' }, { INPUT_NONE, 0 }, FLIGHT_SEVERAL, "v", N_("seasons"),
		N_("all earlier seasons under the chart; again only the last one") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, FLIGHT_RULER, "d", N_("degree-days"),
		N_("the chart along degree-days; again along weeks") },
	{ { INPUT_CHAR, 'h' }, { INPUT_NONE, 0 }, FLIGHT_SPOTS, "h", N_("hot spots"),
		N_("which block or edge of the farm is hot, on a map") },
	{ { INPUT_CHAR, 'm' }, { INPUT_NONE, 0 }, FLIGHT_WEATHER, "m", N_("weather"),
		N_("the temperatures of the farm's station") },
	{ { INPUT_CHAR, 's' }, { INPUT_NONE, 0 }, FLIGHT_PRINT, "s", N_("season page"),
		N_("asks; Enter then sends the farm's season on paper, all pests and "
		   "blocks, to the printer, into a file where there is none") },
	LIST_KEYS,
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, FLIGHT_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, FLIGHT_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows flight_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *flight_page_notes(void)
{
	static const char *const notes[] = {
		N_("The chart shows moths per trap and week. _ was counted and none, a "
		   "dot at the foot is a week nobody looked at, + on top of a bar says "
		   "that a card was full: at least so many. The dashes are your "
		   "threshold, with its number at the left."),
		N_("Under the chart: B biofix, P peak of a flight, L lure changed, T "
		   "treatment; * where several fall into one week."),
		N_("Then the months, degree-days since the biofix at their start (dd), "
		   "and earlier seasons in one row each, on the scale of the chart: a "
		   "full block is its top."),
		N_("A biofix from weekly visits lies between two visits: what is "
		   "suggested is the day by which it was seen, and it may have been "
		   "earlier."),
		NULL,
	};

	return notes;
}

/* A step to another farm, block, trap, pest or season; false: the action is none. */
static bool turn(struct flight_page *p, int action)
{
	switch (action) {
	case FLIGHT_FARM_NEXT:
	case FLIGHT_FARM_BACK:
		p->turn_farm = action == FLIGHT_FARM_NEXT ? 1 : -1;
		break;
	case FLIGHT_BLOCK_NEXT:
	case FLIGHT_BLOCK_BACK:
		p->turn_block = action == FLIGHT_BLOCK_NEXT ? 1 : -1;
		break;
	case FLIGHT_TRAP_NEXT:
	case FLIGHT_TRAP_BACK:
		p->turn_trap = action == FLIGHT_TRAP_NEXT ? 1 : -1;
		break;
	case FLIGHT_PEST_NEXT:
	case FLIGHT_PEST_BACK:
		p->turn_pest = action == FLIGHT_PEST_NEXT ? 1 : -1;
		break;
	case FLIGHT_SEASON_NEXT:
	case FLIGHT_SEASON_BACK:
		p->turn_season = action == FLIGHT_SEASON_NEXT ? 1 : -1;
		break;
	default:
		return false;
	}
	p->top = 0;
	return true;
}

static void change_ruler(struct flight_page *p)
{
	if (p->ruler == RULER_HEAT)
		p->ruler = RULER_WEEKS;
	else if (flight_has_heat(p->view))
		p->ruler = RULER_HEAT;
	else
		message_set(&p->message, true, _("No degree-days are known here. %s"),
			p->view->heat_text);
}

static void change_several(struct flight_page *p)
{
	p->several = !p->several;
	if (p->view->n_earlier == 0)
		message_set(&p->message, false, _("No earlier season is in the book."));
}

static struct wish flight_wish(const struct flight_page *p, enum want want)
{
	struct wish w = page_wish(want);

	w.farm = p->view->ask.farm;
	w.block = p->view->ask.block;
	w.pest = p->view->ask.pest;
	w.trap = p->view->ask.trap;
	return w;
}

/* Of a farm's season; all farms together have none in common. */
static struct wish ask_to_print(struct flight_page *p)
{
	struct wish w = flight_wish(p, WANT_SEASON);

	w.id = p->view->ask.season;
	if (w.farm) {
		message_set(&p->message, false,
			_("Enter prints the page of this farm's season %d, Esc leaves "
			  "it."),
			p->view->ask.season);
		return asking_start(&p->asking, w);
	}
	message_set(&p->message, false,
		_("A season page is of one farm: f shows the next one, then s prints."));
	return page_wish(WANT_NOTHING);
}

static struct wish act(struct flight_page *p, int action, struct input in)
{
	switch (action) {
	case FLIGHT_SEVERAL:
		change_several(p);
		break;
	case FLIGHT_RULER:
		change_ruler(p);
		break;
	case FLIGHT_SET_BIOFIX:
		flight_typing_start(p);
		break;
	case FLIGHT_WEATHER:
		return flight_wish(p, WANT_WEATHER);
	case FLIGHT_SPOTS:
		return flight_wish(p, WANT_HOTSPOTS);
	case FLIGHT_PRINT:
		return ask_to_print(p);
	case FLIGHT_BACK:
		return page_wish(WANT_BACK);
	case FLIGHT_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

struct wish flight_page_key(struct flight_page *p, struct input in)
{
	int action = keys_find(flight_page_keys(), in);
	struct wish w = page_wish(WANT_NOTHING);

	if (!input_is_key(in))
		return w;
	p->message = (struct message){ 0 };
	if (asking_key(&p->asking, in, &p->message, &w))
		return w;
	if (p->typing)
		return flight_typing_key(p, in);
	if (list_move(action, LINES_MANY, (int)p->rows, &p->top) || turn(p, action))
		return page_wish(WANT_NOTHING);
	return act(p, action, in);
}

void flight_page_draw(struct flight_page *p, struct canvas *c)
{
	struct message m = p->message;
	struct frame f = { .title = p->view->title,
		.right = p->view->right,
		.keeps_right = true,
		.status = c->cols >= FRAME_WIDE ? _("moths per trap and week")
						: _("moths a trap and week"),
		.status_right = _("B biofix  P peak  L lure  T treatment"),
		.message = &m,
		.keys = p->typing ? prompt_keys(PROMPT_BIOFIX)
				  : asking_keys(&p->asking, flight_page_keys()) };
	int cursor = 0, first = 0;

	if (p->typing)
		cursor = flight_typing_say(p, &m);
	if (!frame_draw(c, &f))
		return;
	first = flight_chart_draw(p, c, f.first, f.last);
	frame_more(c, &f, false, flight_text_draw(p, c, first, f.last));
	canvas_cursor(c, p->typing ? f.message_row : first, p->typing ? cursor : 0);
}
