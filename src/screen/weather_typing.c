/* weather_typing.c - temperatures and station names that are typed. */
#include "base/text.h"
#include "base/words.h"
#include "weather_parts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { DIGITS_MOST = 3, DECIMALS_MOST = 2 };
enum { ODD_C = 15, ODD_F = 27 }; /* between the means of two days running */

static char *field_of(struct weather_page *p)
{
	return p->on_max ? p->max : p->min;
}

bool weather_has_typed(const struct weather_page *p)
{
	return p->min[0] || p->max[0];
}

void weather_drop(struct weather_page *p)
{
	p->min[0] = p->max[0] = '\0';
	p->on_max = p->asked = false;
}

/* NULL if ch may follow what is in the field; else why not. */
static const char *refusal(const char *field, uint32_t ch)
{
	const char *point = strchr(field, '.');
	size_t whole = strcspn(field + (field[0] == '-'), ".");

	if (ch == '-')
		return field[0] ? _("- comes first, for frost.") : NULL;
	if (ch == '.')
		return point ? _("There is a decimal point already.") : NULL;
	if (point && strlen(point + 1) >= DECIMALS_MOST)
		return _("Two decimals are enough.");
	if (!point && whole >= DIGITS_MOST)
		return _("A temperature has up to 3 digits before the point.");
	return NULL;
}

void weather_type(struct weather_page *p, uint32_t ch)
{
	char *field = field_of(p);
	size_t at = strlen(field);
	const char *why = NULL;

	if (ch == ',')
		ch = '.';
	why = refusal(field, ch);
	p->asked = false;
	if (why) {
		message_set(&p->message, true, "%s", why);
		return;
	}
	field[at] = (char)ch;
	field[at + 1] = '\0';
}

void weather_erase(struct weather_page *p)
{
	char *field = field_of(p);
	size_t n = strlen(field);

	p->asked = false;
	if (n > 0)
		field[n - 1] = '\0';
	else if (p->on_max)
		p->on_max = false;
}

void weather_text(double degrees, char out[static SAY_SHORT])
{
	if (isnan(degrees))
		out[0] = '\0';
	else
		words_print(out, SAY_SHORT, "%.1f", degrees);
}

/* Nothing, or a number; false, with a sentence, for a lone - or point. */
static bool is_number(struct weather_page *p, const char *typed)
{
	if (!typed[0] || strpbrk(typed, "0123456789"))
		return true;
	message_set(&p->message, true, _("%s is no temperature."), typed);
	return false;
}

/* What is typed, else what the book has. */
static double read_field(const char *typed, double has)
{
	return typed[0] ? strtod(typed, NULL) : has;
}

static double mean_of(const struct weather_row *r)
{
	return (r->min + r->max) / 2;
}

/* The next or last day, if its temperatures are known and far from these. */
static bool is_far(const struct weather_page *p, size_t i, double mean)
{
	double odd = p->list->unit == 'F' ? ODD_F : ODD_C;

	return i < p->list->n && p->list->rows[i].is_read &&
	       fabs(mean_of(&p->list->rows[i]) - mean) >= odd;
}

static const char *oddity(const struct weather_page *p, double min, double max)
{
	if (isnan(min) || isnan(max))
		return NULL;
	if (min == max)
		return _("The same twice: Enter again if it is so.");
	if (is_far(p, p->picked + 1, (min + max) / 2) ||
		is_far(p, p->picked - 1, (min + max) / 2))
		return _("Far from the day beside it: Enter again if it is so.");
	return NULL;
}

/* Both as they would be saved; false, with a sentence, if they cannot be. */
static bool read_pair(struct weather_page *p, double *min, double *max)
{
	const struct weather_row *r = weather_picked(p);

	*min = read_field(p->min, r->min);
	*max = read_field(p->max, r->max);
	if (!is_number(p, p->min) || !is_number(p, p->max))
		return false;
	if (*min > *max) {
		message_set(&p->message, true,
			_("The minimum %.1f is above the maximum %.1f: Tab goes to the "
			  "other field."),
			*min, *max);
		return false;
	}
	return true;
}

static struct wish save(struct weather_page *p)
{
	struct wish w = page_wish(WANT_SAVE_WEATHER);
	const char *odd = NULL;
	double min = NAN, max = NAN;

	if (!read_pair(p, &min, &max))
		return page_wish(WANT_NOTHING);
	odd = oddity(p, min, max);
	if (odd && !p->asked) {
		p->asked = true;
		message_set(&p->message, false, "%s", odd);
		return page_wish(WANT_NOTHING);
	}
	w.day = weather_picked(p)->day;
	w.weather = (struct weather_day){ .station = p->list->station.id,
		.day = w.day,
		.min = min,
		.max = max,
		.unit = p->list->unit };
	return w;
}

struct wish weather_enter(struct weather_page *p)
{
	const struct weather_row *r = weather_picked(p);

	if (!is_number(p, p->on_max ? p->max : p->min))
		return page_wish(WANT_NOTHING);
	if (!p->on_max && (p->min[0] || p->max[0] || !isnan(r->min))) {
		p->on_max = true;
		return page_wish(WANT_NOTHING);
	}
	if (weather_has_typed(p))
		return save(p);
	weather_drop(p);
	weather_pick_missing(p);
	return page_wish(WANT_NOTHING);
}

static void add_to_name(struct weather_page *p, uint32_t ch)
{
	size_t at = strlen(p->line), n = 0;
	char text[5];

	n = text_encode(ch, text);
	if (text_control(ch))
		return;
	if (at + n >= sizeof p->line)
		message_set(&p->message, true, _("No more fits here."));
	else
		memcpy(p->line + at, text, n + 1);
}

static struct wish take_name(struct weather_page *p)
{
	struct wish w = page_wish(WANT_NEW_STATION);

	text_trim(p->line);
	if (!p->line[0]) {
		message_set(
			&p->message, true, _("A station needs a name; Esc leaves it."));
		return page_wish(WANT_NOTHING);
	}
	text_copy(w.words.note, sizeof w.words.note, p->line);
	p->naming = false;
	return w;
}

struct wish weather_naming_key(struct weather_page *p, struct input in)
{
	if (in.kind == INPUT_CHAR)
		add_to_name(p, in.ch);
	else if (in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE)
		text_erase_last(p->line);
	else if (in.kind == INPUT_ENTER)
		return take_name(p);
	else if (in.kind == INPUT_ESC) {
		p->naming = false;
		message_set(&p->message, false, _("Left as it was."));
	} else
		message_set(
			&p->message, false, _("Enter ends the line, Esc drops it."));
	return page_wish(WANT_NOTHING);
}
