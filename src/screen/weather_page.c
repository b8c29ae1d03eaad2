#include "screen/weather_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"
#include "weather_parts.h"

#include <string.h>

enum {
	WEATHER_CHAR = LIST_OTHERS,
	WEATHER_ENTER,
	WEATHER_ERASE,
	WEATHER_OTHER_FIELD,
	WEATHER_NEW,
	WEATHER_STATION,
	WEATHER_UNIT,
	WEATHER_FARM,
	WEATHER_BACK,
	WEATHER_HELP,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, WEATHER_ENTER, "Enter",
		N_("next, save"),
		N_("to the maximum; from there saves the day and goes to the next "
		   "missing one; leaves a missing day that has nothing typed") },
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, WEATHER_CHAR, "0-9", N_("degrees"),
		N_("the temperature, first the minimum, then the maximum") },
	{ { INPUT_CHAR, '.' }, { INPUT_CHAR, ',' }, WEATHER_CHAR, ".", NULL,
		N_("the decimal point") },
	{ { INPUT_CHAR, '-' }, { INPUT_NONE, 0 }, WEATHER_CHAR, "-", N_("frost"),
		N_("below zero, before the digits") },
	{ { INPUT_BACKSPACE, 0 }, { INPUT_DELETE, 0 }, WEATHER_ERASE, "Backspace", NULL,
		N_("takes back what was typed last") },
	{ { INPUT_TAB, 0 }, { INPUT_NONE, 0 }, WEATHER_OTHER_FIELD, "Tab", NULL,
		N_("to the other field of the day") },
	{ { INPUT_UP, 0 }, { INPUT_NONE, 0 }, LIST_UP, "Up", NULL, N_("one row up") },
	{ { INPUT_DOWN, 0 }, { INPUT_NONE, 0 }, LIST_DOWN, "Down", NULL,
		N_("one row down") },
	{ { INPUT_PAGE_UP, 0 }, { INPUT_NONE, 0 }, LIST_PAGE_UP, "PgUp", NULL,
		N_("one page up") },
	{ { INPUT_PAGE_DOWN, 0 }, { INPUT_NONE, 0 }, LIST_PAGE_DOWN, "PgDn", NULL,
		N_("one page down") },
	{ { INPUT_HOME, 0 }, { INPUT_NONE, 0 }, LIST_HOME, "Home", NULL,
		N_("to the first row") },
	{ { INPUT_END, 0 }, { INPUT_NONE, 0 }, LIST_END, "End", NULL,
		N_("to the last row") },
	{ { INPUT_CHAR, 'n' }, { INPUT_NONE, 0 }, WEATHER_NEW, "n", N_("new station"),
		N_("a new station, by its name") },
	{ { INPUT_CHAR, 's' }, { INPUT_NONE, 0 }, WEATHER_STATION, "s", N_("station"),
		N_("the next station") },
	{ { INPUT_CHAR, 'c' }, { INPUT_NONE, 0 }, WEATHER_UNIT, "c", N_("C or F"),
		N_("types and shows degrees F instead of C, or C instead of F") },
	{ { INPUT_CHAR, 'o' }, { INPUT_NONE, 0 }, WEATHER_FARM, "o", N_("farm's"),
		N_("asks; o again has this farm go by this station") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, WEATHER_BACK, "Esc", N_("back"),
		N_("drops what is typed; with nothing typed, to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, WEATHER_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows weather_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *weather_page_notes(void)
{
	static const char *const notes[] = {
		N_("A missing day is never 0: sums of degree-days (dd) say how many "
		   "days are missing and are at least so high."),
		N_("A day without its minimum or maximum counts as missing, and what "
		   "was typed of it is kept."),
		NULL,
	};

	return notes;
}

const struct weather_row *weather_picked(const struct weather_page *p)
{
	if (!p->list || p->list->station.id == 0 || p->picked >= p->list->n)
		return NULL;
	return &p->list->rows[p->picked];
}

void weather_pick(struct weather_page *p, size_t i)
{
	p->picked = i;
	p->picked_day = i < p->list->n ? p->list->rows[i].day : DAY_NONE;
}

bool weather_pick_missing(struct weather_page *p)
{
	size_t i = p->picked + 1;

	while (i < p->list->n && p->list->rows[i].is_read)
		i++;
	if (i < p->list->n) {
		weather_pick(p, i);
		return true;
	}
	message_set(&p->message, false, _("No day is missing below this one."));
	return false;
}

/* Moving away would drop what is typed: true, and says what to do with it. */
static bool holds_back(struct weather_page *p)
{
	if (weather_has_typed(p))
		message_set(&p->message, false,
			_("Not saved yet: Enter saves it, Esc drops it."));
	return weather_has_typed(p);
}

static struct wish leave(struct weather_page *p)
{
	if (!weather_has_typed(p))
		return page_wish(WANT_BACK);
	weather_drop(p);
	message_set(&p->message, false, _("Dropped what was typed."));
	return page_wish(WANT_NOTHING);
}

static void start_naming(struct weather_page *p)
{
	if (holds_back(p))
		return;
	p->naming = true;
	p->line[0] = '\0';
}

/* Keys that need no day. */
static bool act(struct weather_page *p, int action, struct wish *w)
{
	switch (action) {
	case WEATHER_NEW:
		start_naming(p);
		return true;
	case WEATHER_STATION:
		p->turn_station = !holds_back(p);
		return true;
	case WEATHER_UNIT:
		p->turn_unit = !holds_back(p);
		return true;
	case WEATHER_BACK:
		*w = leave(p);
		return true;
	case WEATHER_HELP:
		*w = page_wish(WANT_HELP);
		return true;
	default:
		return false;
	}
}

/* o is other moths on the Run page: all sums of a farm change with its station. */
static void ask_for_farm(struct weather_page *p)
{
	p->use_for_farm = p->asked_farm;
	if (!p->asked_farm)
		message_set(&p->message, false,
			_("o again: the farm's degree-days go by this station from "
			  "now on."));
	p->asked_farm = !p->asked_farm;
}

static struct wish act_on_day(struct weather_page *p, int action, struct input in)
{
	size_t to = p->picked;

	switch (action) {
	case WEATHER_CHAR:
		weather_type(p, in.ch);
		break;
	case WEATHER_ENTER:
		return weather_enter(p);
	case WEATHER_ERASE:
		weather_erase(p);
		break;
	case WEATHER_OTHER_FIELD:
		p->on_max = !p->on_max;
		break;
	case WEATHER_FARM:
		ask_for_farm(p);
		break;
	default:
		if (holds_back(p) || !list_move(action, p->list->n, (int)p->rows, &to))
			break;
		weather_drop(p);
		weather_pick(p, to);
	}
	return page_wish(WANT_NOTHING);
}

struct wish weather_page_key(struct weather_page *p, struct input in)
{
	int action = keys_find(weather_page_keys(), in);
	struct wish w = page_wish(WANT_NOTHING);

	if (!input_is_key(in))
		return w;
	p->message = (struct message){ 0 };
	p->asked_farm = p->asked_farm && action == WEATHER_FARM;
	if (p->naming)
		return weather_naming_key(p, in);
	if (act(p, action, &w))
		return w;
	if (action == 0)
		page_no_key(&p->message, in);
	else if (weather_picked(p))
		return act_on_day(p, action, in);
	else
		message_set(&p->message, true, _("n names a station first."));
	return w;
}

void weather_page_show(
	struct weather_page *p, const struct weather_list *list, bool first)
{
	size_t at = 0;
	bool is_there = false;

	p->list = list;
	for (size_t i = 0; i < list->n && !is_there && !first; i++)
		if (list->rows[i].day == p->picked_day) {
			at = i;
			is_there = true;
		}
	while (first && at < list->n && list->rows[at].is_read)
		at++;
	if (!is_there)
		weather_drop(p);
	weather_pick(p, at < list->n ? at : 0);
}

void weather_page_saved(struct weather_page *p, const struct weather_list *list)
{
	const struct weather_row *r = NULL;

	weather_drop(p);
	weather_page_show(p, list, false);
	r = weather_picked(p);
	if (!r)
		return;
	message_set(&p->message, false,
		weather_pick_missing(p)
			? _("Saved: %s  %s")
			: _("Saved: %s  %s. No day is missing below it."),
		r->day_text, r->text);
}

void weather_page_not_saved(struct weather_page *p, const char *why)
{
	message_set(&p->message, true, _("NOT SAVED: %s"), why);
}
