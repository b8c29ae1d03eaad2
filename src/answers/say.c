#include "answers/say.h"

#include "base/text.h"
#include "base/words.h"
#include "say_parts.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

void say_add(char *out, size_t size, const char *text)
{
	size_t n = strlen(out);

	snprintf(out + n, size - n, "%s%s", n ? ", " : "", text);
}

void say_weekly(const struct weekly *w, char out[static SAY_SHORT])
{
	int32_t x10 = weekly_x10(w);
	bool week_or_less = w->to != DAY_NONE && w->to - w->from <= 7;

	if (x10 < 0 && w->moths > 0 && week_or_less)
		words_print(out, SAY_SHORT, "%.1f+", (double)w->moths);
	else if (x10 < 0)
		snprintf(out, SAY_SHORT, "-");
	else
		words_print(out, SAY_SHORT, "%.1f%s%s", (double)x10 / 10,
			w->at_least ? "+" : "", w->is_disputed ? "?" : "");
}

/* Its word, unless a number or a dash says it. */
static const char *visit_head(const struct visit *v)
{
	if (v->outcome == OUTCOME_COUNTED || v->outcome == OUTCOME_FLOOR)
		return "";
	return v->outcome == OUTCOME_SKIPPED ? "-" : _(outcome_word(v->outcome));
}

/* Whether a count of it is a lower bound. */
static bool is_least(enum outcome o)
{
	return o == OUTCOME_FLOOR || o == OUTCOME_SPOILED;
}

void say_visit(const struct visit *v, char out[static SAY_SHORT])
{
	char count[16] = "";
	bool hung = v->outcome == OUTCOME_HUNG;
	bool card = v->new_card != 0 && !hung, lure = v->new_lure != 0 && !hung;

	if (v->count != COUNT_NONE)
		snprintf(count, sizeof count, "%s%d%s", *visit_head(v) ? " " : "",
			(int)v->count, is_least(v->outcome) ? "+" : "");
	snprintf(out, SAY_SHORT, "%s%s%s%s%s%s", visit_head(v), count,
		card || lure || v->stirred ? " " : "", card ? C_("mark", "c") : "",
		lure ? C_("mark", "l") : "", v->stirred ? C_("mark", "s") : "");
}

void say_x100(int32_t x100, char out[static SAY_SHORT])
{
	if (x100 % 100 == 0)
		snprintf(out, SAY_SHORT, "%d", (int)(x100 / 100));
	else if (x100 % 10 == 0)
		words_print(out, SAY_SHORT, "%.1f", x100 / 100.0);
	else
		words_print(out, SAY_SHORT, "%.2f", x100 / 100.0);
}

/* "lure 3 d late", "lure due 27 Jul" when it will not last until the run after. */
static void say_due(const char *lure_or_card, enum service_state state, int32_t due,
	int32_t overdue_days, char out[static SAY_LINE])
{
	char day[SAY_SHORT];

	if (state == SERVICE_OVERDUE && overdue_days > 0)
		snprintf(out, SAY_LINE, _("%s %d d late"), lure_or_card,
			(int)overdue_days);
	else if (state == SERVICE_NEXT_RUN && due != DAY_NONE) {
		say_day(due, day);
		snprintf(out, SAY_LINE, _("%s due %s"), lure_or_card, day);
	} else
		snprintf(out, SAY_LINE, _("%s due"), lure_or_card);
}

void say_service(const struct lure_state *lure, const struct card_state *card,
	char *out, size_t size)
{
	char text[SAY_LINE];

	text_copy(out, size, "");
	if (lure->state >= SERVICE_NEXT_RUN) {
		say_due(_("lure"), lure->state, lure->due, lure->overdue_days, text);
		say_add(out, size, text);
	} else if (lure->kind == 0)
		say_add(out, size, _("lure not known"));
	if (card->mark == CARD_FLOOR)
		say_add(out, size, _("card full"));
	else if (card->mark == CARD_CHANGE)
		say_add(out, size, _("card due"));
	else if (card->state >= SERVICE_NEXT_RUN) {
		say_due(_("card"), card->state, card->due, card->overdue_days, text);
		say_add(out, size, text);
	} else if (card->mark == CARD_STIR && !card->stirred_since_mark)
		say_add(out, size, _("stir glue"));
}

void say_bring(const struct brings *b, char *out, size_t size)
{
	int lures = 0, cards = 0;
	char text[48];

	for (size_t i = 0; i < b->n; i++)
		*(b->items[i].is_lure ? &lures : &cards) += (int)b->items[i].n;
	text_copy(out, size, "");
	if (lures > 0) {
		snprintf(text, sizeof text,
			ngettext("%d lure", "%d lures", (unsigned)lures), lures);
		say_add(out, size, text);
	}
	if (cards > 0) {
		snprintf(text, sizeof text,
			ngettext("%d card", "%d cards", (unsigned)cards), cards);
		say_add(out, size, text);
	}
	if (lures + cards == 0)
		text_copy(
			out, size, b->unknown > 0 ? _("nothing known") : _("nothing"));
}

void say_day_title(int32_t day, char *out, size_t size)
{
	char text[DAY_TEXT_SIZE];

	day_long(day, text, sizeof text);
	snprintf(out, size, _("%s \302\267 week %d"), text, day_week(day, NULL));
}

void say_day(int32_t day, char out[static SAY_SHORT])
{
	char text[DAY_TEXT_SIZE] = "";

	if (day != DAY_NONE)
		day_short(day, text, sizeof text);
	const char *space = strchr(text, ' ');
	text_copy(out, SAY_SHORT, space ? space + 1 : text);
}

static bool read_utc(const char *utc, time_t *out)
{
	char iso[DAY_ISO_SIZE];
	int32_t day;
	int hours, minutes;

	text_copy(iso, sizeof iso, utc);
	if (!day_parse(iso, &day) ||
		sscanf(utc + DAY_ISO_SIZE - 1, "T%2d:%2d", &hours, &minutes) != 2)
		return false;
	*out = (time_t)day * 24 * 60 * 60 + (time_t)hours * 60 * 60 + minutes * 60;
	return true;
}

void say_time(const char *utc, char out[static SAY_SHORT])
{
	char day[SAY_SHORT], text[DAY_TEXT_SIZE];
	struct tm tm;
	time_t at;

	text_copy(out, SAY_SHORT, utc);
	if (!read_utc(utc, &at) || !localtime_r(&at, &tm))
		return;
	say_day(day_from_ymd(tm.tm_year + 1900, tm.tm_mon + 1, tm.tm_mday), day);
	snprintf(text, sizeof text, "%s %d %02d:%02d", day, tm.tm_year + 1900,
		tm.tm_hour, tm.tm_min);
	text_copy(out, SAY_SHORT, text);
}
