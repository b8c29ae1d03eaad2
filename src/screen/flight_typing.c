/* flight_typing.c - the biofix date that is typed on the Flight page. */
#include "flight_parts.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

/* The last day that the suggestion leaves open; DAY_NONE: nothing is offered. */
static int32_t offered(const struct flight_view *v)
{
	const struct biofix *s = &v->biofix.suggestion;

	return s->state == BIOFIX_DATED ? s->by : DAY_NONE;
}

static void say_offer(struct flight_page *p)
{
	char day[DAY_TEXT_SIZE];

	if (offered(p->view) == DAY_NONE) {
		message_set(&p->message, false,
			_("month-day, as 05-09; - takes it out; Esc leaves it"));
		return;
	}
	day_short(offered(p->view), day, sizeof day);
	message_set(&p->message, false,
		_("Enter takes %s, when it was seen (it may have been earlier); or "
		  "month-day, as 05-09; - takes it out"),
		day);
}

void flight_typing_start(struct flight_page *p)
{
	if (p->view->ask.farm == 0) {
		message_set(&p->message, true,
			_("A biofix belongs to one farm: f picks it first."));
		return;
	}
	p->typing = true;
	p->line[0] = '\0';
	say_offer(p);
}

static void add_char(struct flight_page *p, uint32_t ch)
{
	size_t at = strlen(p->line);

	if (ch != '-' && (ch < '0' || ch > '9'))
		message_set(&p->message, true,
			_("Only digits and - here: Enter ends it, Esc drops it."));
	else if (at + 1 >= DAY_ISO_SIZE)
		message_set(&p->message, true, _("No more fits here."));
	else {
		p->line[at] = (char)ch;
		p->line[at + 1] = '\0';
		message_set(&p->message, false, _("Enter ends it, Esc drops it."));
	}
}

/* "5-9" or "05-09" in the year that is nearer to the middle of the season; DAY_NONE. */
static int32_t month_day(const char *text, const struct flight_view *v)
{
	int32_t middle = v->now.first_day + 7 * (int32_t)v->now.n / 2;
	const char *dash = strchr(text, '-');
	int32_t month = 0, day = 0, one = 0, two = 0;
	char head[3] = "";

	if (!dash || dash == text || dash - text > 2)
		return DAY_NONE;
	memcpy(head, text, (size_t)(dash - text));
	if (!text_int(head, 1, 12, &month) || !text_int(dash + 1, 1, 31, &day))
		return DAY_NONE;
	one = day_from_ymd(v->ask.season, month, day);
	two = day_from_ymd(v->ask.season + 1, month, day);
	if (v->now.n == 0 || two == DAY_NONE)
		return one;
	return one == DAY_NONE || two - middle < middle - one ? two : one;
}

/* A date of the season, in full or without its year. */
static bool read_date(struct flight_page *p, int32_t *day)
{
	int season = p->view->ask.season, year = 0;

	if (!day_parse(p->line, day))
		*day = month_day(p->line, p->view);
	if (*day == DAY_NONE) {
		message_set(&p->message, true,
			_("%s is no date: write %d-05-09, or 05-09."), p->line, season);
		return false;
	}
	year = day_to_ymd(*day).year;
	if (year == season || year == season + 1)
		return true;
	message_set(&p->message, true, _("%s is not in the season of %d."), p->line,
		season);
	return false;
}

static bool read_line(struct flight_page *p, int32_t *day)
{
	*day = DAY_NONE;
	if (p->line[0] == '\0') {
		*day = offered(p->view);
		if (*day == DAY_NONE)
			message_set(&p->message, true,
				_("Nothing is suggested yet: type the date."));
		return *day != DAY_NONE;
	}
	if (strcmp(p->line, "-") != 0)
		return read_date(p, day);
	if (!p->view->biofix.is_set)
		message_set(&p->message, true, _("There is no biofix to take out."));
	return p->view->biofix.is_set;
}

static struct wish take_line(struct flight_page *p)
{
	struct wish w = page_wish(WANT_BIOFIX);

	if (!read_line(p, &w.day))
		return page_wish(WANT_NOTHING);
	w.farm = p->view->ask.farm;
	w.pest = p->view->ask.pest;
	p->typing = false;
	return w;
}

struct wish flight_typing_key(struct flight_page *p, struct input in)
{
	size_t n = strlen(p->line);

	if (in.kind == INPUT_CHAR)
		add_char(p, in.ch);
	else if ((in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE) && n > 0)
		p->line[n - 1] = '\0';
	else if (in.kind == INPUT_ENTER)
		return take_line(p);
	else if (in.kind == INPUT_ESC) {
		p->typing = false;
		message_set(&p->message, false, _("Left as it was."));
	} else
		say_offer(p);
	return page_wish(WANT_NOTHING);
}

int flight_typing_say(const struct flight_page *p, struct message *m)
{
	const char *prompt = _("biofix: ");

	message_set(m, p->message.is_fault, "%s%s%s%s", prompt, p->line,
		p->message.text[0] ? "  " : "", p->message.text);
	return 1 + text_cols(prompt) + text_cols(p->line);
}
