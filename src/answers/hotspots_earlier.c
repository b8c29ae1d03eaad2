/* hotspots_earlier.c - the same blocks in earlier seasons and in the flights of this
 * one: what was hot before is the best guess at what is hot now. */
#include "hotspots_words.h"

#include "base/mem.h"
#include "base/words.h"
#include "say_parts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Per block of the log: how often it could be told, and when it was hot. */
struct past {
	int told, hot;
	char when[SAY_LINE];
	/* Looked at alone, once, in the flight after the first in which it was hot; no
	 * correction for many is due then. 0: there is no such flight yet. */
	int asked_in;
	bool is_on; /* that flight is not over */
	double p, ratio;
};

/* What a window says of a block. */
struct told {
	enum hot_grade grade;
	double p, ratio; /* p NAN: not tested */
};

/* Of all groups that the block is in the one with the highest grade. */
static void tell_blocks(const struct log *l, const struct hot_season *s,
	const struct hot_ask *ask, struct hot_window w, struct told *told)
{
	struct hot_rows rows = { 0 };
	struct hot_field field;

	hot_field_take(&field, l, s, ask, w);
	for (size_t g = 0; g < field.n_alikes; g++) {
		struct hot_set set;
		hot_set_of(&set, l, &field, g, HOT_IN_BLOCKS);
		hot_add_blocks(&rows, &set, HOT_TOO_LITTLE);
		hot_set_free(&set);
	}
	for (size_t i = 0; i < l->blocks.n; i++) {
		told[i] = (struct told){ HOT_TOO_LITTLE, NAN, NAN };
		for (size_t r = 0; r < rows.n; r++) {
			const struct hot_row *row = &rows.items[r];
			if (row->block == l->blocks.items[i].id &&
				row->grade > told[i].grade)
				told[i] = (struct told){ row->grade, row->p_shuffle,
					row->ratio.at };
		}
	}
	free(rows.items);
	hot_field_free(&field);
}

static void note(struct past *past, const struct told *told, int number)
{
	char text[SAY_SHORT];

	snprintf(text, sizeof text, "%d", number);
	past->told += told->grade != HOT_TOO_LITTLE;
	if (told->grade < HOT_WATCH)
		return;
	past->hot++;
	say_add(past->when, sizeof past->when, text);
}

static bool is_on(const struct flight *f)
{
	return f->flags & (FLIGHT_STILL_RISING | FLIGHT_NOT_FINISHED);
}

static void look_at_flights(const struct log *l, const struct hot_ask *ask,
	const struct hot_season *now, struct past *past)
{
	struct told *told = mem_new(l->blocks.n, sizeof *told);

	for (int k = 1; k <= (int)now->found.n; k++) {
		tell_blocks(l, now, ask, hot_window_of(now, k), told);
		for (size_t i = 0; i < l->blocks.n; i++) {
			if (past[i].hot > 0 && !past[i].asked_in) {
				past[i].asked_in = k;
				past[i].is_on = is_on(&now->found.items[k - 1]);
				past[i].p = told[i].p;
				past[i].ratio = told[i].ratio;
			}
			note(&past[i], &told[i], k);
		}
	}
	free(told);
}

static bool look_at_season(struct book *b, const struct log *l,
	const struct hot_ask *ask, struct past *past, struct err *e)
{
	struct told *told = mem_new(l->blocks.n, sizeof *told);
	struct hot_season s;
	bool ok = hot_season_read(&s, b, l, ask, e);

	if (ok && s.series.n > 0) {
		tell_blocks(l, &s, ask, hot_window_of(&s, 0), told);
		for (size_t i = 0; i < l->blocks.n; i++)
			note(&past[i], &told[i], s.year);
	}
	hot_season_free(&s);
	free(told);
	return ok;
}

/* This season and those before it, the oldest first. */
static bool look_at_seasons(struct book *b, const struct log *l,
	const struct hot_ask *ask, int year, struct past *past, struct err *e)
{
	for (int k = ask->earlier ? ask->earlier : HOT_LATE_SEASONS; k >= 0; k--) {
		const struct hot_ask then = {
			.farm = ask->farm, .pest = ask->pest, .season = year - k
		};
		if (!look_at_season(b, l, &then, past, e))
			return false;
	}
	return true;
}

static void add_part(struct hot_row *row, const char *text)
{
	size_t n = strlen(row->earlier);

	snprintf(
		row->earlier + n, sizeof row->earlier - n, "%s%s", n ? "; " : "", text);
}

static void say_seasons(struct hot_row *row, const struct past *p)
{
	if (p->told > 1 && p->hot > 0)
		snprintf(row->earlier, sizeof row->earlier,
			_("hot in %d of %d seasons: %s"), p->hot, p->told, p->when);
	else if (p->told > 1)
		snprintf(row->earlier, sizeof row->earlier,
			_("hot in none of %d seasons"), p->told);
}

static void say_flights(struct hot_row *row, const struct past *p)
{
	char text[SAY_LINE];

	if (p->told < 2) /* it says what the season says */
		return;
	if (p->hot > 0)
		snprintf(text, sizeof text,
			ngettext("in %d of %d flights of this season (flight %s)",
				"in %d of %d flights of this season (flights %s)",
				(unsigned)p->hot),
			p->hot, p->told, p->when);
	else
		snprintf(text, sizeof text, _("in none of %d flights of this season"),
			p->told);
	if (row->earlier[0])
		add_part(row, text);
	else
		snprintf(row->earlier, sizeof row->earlier, _("hot %s"), text);
}

static void say_confirmed(struct hot_row *row, const struct past *p)
{
	char text[SAY_LINE], chance[SAY_SHORT];

	if (!p->asked_in || isnan(p->p))
		return;
	hot_say_p(p->p, chance);
	if (p->p <= hot_constants.luck && p->ratio >= hot_constants.ratio_named)
		snprintf(text, sizeof text, _("confirmed in flight %d (alone p %s)"),
			p->asked_in, chance);
	else
		snprintf(text, sizeof text,
			_("not confirmed in flight %d%s (alone p %s)"), p->asked_in,
			p->is_on ? _(" so far") : "", chance);
	add_part(row, text);
}

static void say_rows(struct hot_view *v, const struct log *l,
	const struct past *seasons, const struct past *flights)
{
	for (size_t r = 0; r < v->n; r++)
		for (size_t i = 0; i < l->blocks.n; i++) {
			struct hot_row *row = &v->rows[r];
			if (row->what != HOT_OF_BLOCK ||
				row->block != l->blocks.items[i].id)
				continue;
			say_seasons(row, &seasons[i]);
			say_flights(row, &flights[i]);
			say_confirmed(row, &flights[i]);
		}
}

bool hot_fill_earlier(struct hot_view *v, struct book *b, const struct log *l,
	const struct hot_ask *ask, const struct hot_season *now, struct err *e)
{
	struct past *seasons = mem_new(l->blocks.n, sizeof *seasons);
	struct past *flights = mem_new(l->blocks.n, sizeof *flights);
	bool ok = look_at_seasons(b, l, ask, now->year, seasons, e);

	if (ok) {
		look_at_flights(l, ask, now, flights);
		say_rows(v, l, seasons, flights);
	}
	free(seasons);
	free(flights);
	return ok;
}
