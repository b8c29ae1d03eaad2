/* hotspots_whole.c - the page as a whole in words: window, what was left out, what is
 * missing, how it all looks, what a test could show. */
#include "hotspots_words.h"

#include "base/text.h"
#include "base/words.h"
#include "say_parts.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void hot_say_window(struct hot_view *v, const struct hot_field *f, size_t group)
{
	int32_t first = DAY_NONE, last = DAY_NONE;
	int64_t moths = 0, nights = 0;
	bool at_least = false;
	char from[SAY_SHORT], to[SAY_SHORT], caught[SAY_SHORT];

	for (size_t i = 0; i < f->n; i++) {
		const struct hot_take *t = &f->takes[i];
		if (t->group != (int)group)
			continue;
		first = first == DAY_NONE || t->first < first ? t->first : first;
		last = t->last > last ? t->last : last;
		moths += t->catch.moths;
		nights += t->catch.nights;
		at_least |= t->at_least;
	}
	if (nights == 0)
		return;
	say_day(first, from);
	say_day(last, to);
	snprintf(caught, sizeof caught,
		ngettext("%lld moth", "%lld moths", (unsigned long)moths),
		(long long)moths);
	snprintf(v->window, sizeof v->window, _("%s to %s, %lld trap-nights, %s%s"),
		from, to, (long long)nights, at_least ? _("at least ") : "", caught);
}

/* How many are not compared, by the first reason that holds. */
struct left {
	int unread, brief, lure, condition, beyond;
};

static struct left count_left(const struct hot_field *f, size_t group)
{
	const struct hot_alike *a = &f->alikes[group];
	struct left left = { 0 };

	for (size_t i = 0; i < f->n; i++) {
		const struct hot_take *t = &f->takes[i];
		if (t->group == (int)group)
			continue;
		if (i >= HOT_TRAPS_MAX)
			left.beyond++;
		else if (t->catch.nights == 0)
			left.unread++;
		else if (t->lure != a->lure)
			left.lure++;
		else if (t->condition != a->condition)
			left.condition++;
		else
			left.brief++;
	}
	return left;
}

static void add_reason(char *out, size_t size, int n, const char *what)
{
	char text[SAY_LINE];

	if (n == 0)
		return;
	snprintf(text, sizeof text, "%d %s", n, what);
	say_add(out, size, text);
}

static int count_outside(const struct log *l, const struct hot_field *f, size_t group)
{
	int n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += f->takes[i].group == (int)group &&
		     l->traps.items[f->takes[i].trap].place == PLACE_OUTSIDE;
	return n;
}

static void add_outside(struct hot_view *v, int n)
{
	char text[SAY_LINE];

	if (n == 0)
		return;
	snprintf(text, sizeof text,
		ngettext("%d trap that hangs outside its block is not counted to it.",
			"%d traps that hang outside their block are not counted to it.",
			(unsigned)n),
		n);
	hot_add(v->left_out, sizeof v->left_out, text);
}

static void add_disputed(struct hot_view *v, const struct hot_field *f)
{
	char text[SAY_LINE];
	int n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += f->takes[i].n_disputed;
	if (n == 0)
		return;
	snprintf(text, sizeof text,
		ngettext("%d visit that was put in twice is not counted until it is "
			 "settled.",
			"%d visits that were put in twice are not counted until they "
			"are settled.",
			(unsigned)n),
		n);
	hot_add(v->left_out, sizeof v->left_out, text);
}

void hot_say_left_out(struct hot_view *v, const struct log *l,
	const struct hot_field *f, size_t group)
{
	struct left left = { 0 };
	if (group < f->n_alikes)
		left = count_left(f, group);
	int all = left.unread + left.brief + left.lure + left.condition + left.beyond;
	char why[SAY_LINE] = "";

	add_reason(why, sizeof why, left.lure, _("with another lure"));
	add_reason(
		why, sizeof why, left.condition, _("in blocks of another condition"));
	add_reason(why, sizeof why, left.brief, _("read for less than half the time"));
	add_reason(why, sizeof why, left.unread, _("not read at all"));
	add_reason(why, sizeof why, left.beyond, _("more than can be compared"));
	if (all > 0)
		snprintf(v->left_out, sizeof v->left_out,
			ngettext("%d trap left out: %s.", "%d traps left out: %s.",
				(unsigned)all),
			all, why);
	add_outside(v, count_outside(l, f, group));
	add_disputed(v, f);
}

static void add_hot_of(struct hot_view *v, const struct hot_rows *rows, size_t group)
{
	char text[2 * SAY_LINE + SAY_SHORT * 2];

	for (size_t i = 0; i < rows->n; i++) {
		const struct hot_row *row = &rows->items[i];
		snprintf(text, sizeof text, _("Another group (%s) has %s: %s."),
			v->alikes[group].text, row->name, row->grade_text);
		if (row->grade >= HOT_WATCH &&
			strlen(v->left_out) + strlen(text) < sizeof v->left_out - 1)
			hot_add(v->left_out, sizeof v->left_out, text);
	}
}

/* What is hot by another group of like traps must not go untold. */
void hot_say_others(struct hot_view *v, const struct log *l, const struct hot_field *f)
{
	for (size_t g = 0; g < v->n_alikes; g++) {
		struct hot_rows rows = { 0 };
		struct hot_set set;

		if (g == v->alike)
			continue;
		hot_set_of(&set, l, f, g, HOT_IN_BLOCKS);
		hot_add_blocks(&rows, &set, HOT_WATCH);
		add_hot_of(v, &rows, g);
		hot_set_free(&set);
		free(rows.items);
	}
}

/* Too small a number of traps or moths for any answer. */
static bool all_too_little(const struct hot_view *v)
{
	for (size_t i = 0; i < v->n; i++)
		if (v->rows[i].what == HOT_OF_BLOCK &&
			v->rows[i].grade != HOT_TOO_LITTLE)
			return false;
	return true;
}

static void say_hot_row(const struct hot_row *row, char *out, size_t size)
{
	char times[SAY_LINE], rates[SAY_LINE];

	hot_say_times(row, times);
	hot_say_rates(row, rates);
	if (row->grade == HOT_CLEAR)
		snprintf(out, size, _("%s is a clear hot spot: %s (%s)."), row->name,
			times, rates);
	else
		snprintf(out, size, _("Watch %s: %s (%s)."), row->name, times, rates);
}

/* Blocks and border; neighbourhoods only when no block says it. As many as fit. */
static void say_hot(struct hot_view *v)
{
	char text[3 * SAY_LINE + SAY_LINE];

	for (size_t i = 0; i < v->n; i++) {
		const struct hot_row *row = &v->rows[i];
		if (row->what == HOT_OF_TRAP || row->grade < HOT_WATCH ||
			(row->what == HOT_OF_NEAR && v->says[0]))
			continue;
		say_hot_row(row, text, sizeof text);
		if (strlen(v->says) + strlen(text) < sizeof v->says - 1)
			hot_add(v->says, sizeof v->says, text);
	}
}

static void say_cool(struct hot_view *v)
{
	const struct hot_row *first = v->n > 0 ? &v->rows[0] : NULL;

	if (!first)
		text_copy(v->says, sizeof v->says,
			_("No trap of this pest was read in this time."));
	else if (all_too_little(v) && first->split.n_out > 0)
		text_copy(v->says, sizeof v->says, first->says);
	else if (all_too_little(v))
		text_copy(v->says, sizeof v->says,
			_("Nothing to compare: all like traps are in one block."));
	else if (first->grade == HOT_HIGHER)
		snprintf(v->says, sizeof v->says,
			_("No block is shown to catch twice the rest; %s is higher. "
			  "Not shown is not the same as not there."),
			first->name);
	else
		text_copy(v->says, sizeof v->says,
			_("No block stands out. Not shown is not the same as not "
			  "there."));
}

/* All moths in one trap: said before anything else. */
static void say_one_trap(struct hot_view *v, const struct hot_set *set)
{
	char text[SAY_LINE];
	int64_t moths = 0;
	size_t top = 0;

	for (size_t i = 0; i < set->n; i++) {
		moths += set->catches[i].moths;
		if (set->catches[i].moths > set->catches[top].moths)
			top = i;
	}
	if (set->n < 2 || moths < 2 || set->catches[top].moths < moths)
		return;
	snprintf(text, sizeof text,
		_("All %lld moths were in trap %s: one trap cannot show whether it is "
		  "the place or the trap."),
		(long long)moths, set->log->traps.items[set->takes[top]->trap].label);
	hot_add(v->says, sizeof v->says, text);
}

void hot_say_all(struct hot_view *v, const struct hot_set *set)
{
	say_one_trap(v, set);
	say_hot(v);
	if (!v->says[0])
		say_cool(v);
	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].gradient.say == GRADIENT_FALLS &&
			v->sources[i].has_point &&
			strlen(v->says) + strlen(v->sources[i].says) <
				sizeof v->says - 1)
			hot_add(v->says, sizeof v->says, v->sources[i].says);
}

void hot_say_clumping(struct hot_view *v, const struct hot_set *set)
{
	struct hot_clumping c = hot_clumping_of(set->catches, set->n, HOT_SEED);
	char p[SAY_SHORT];

	if (!c.is_enough)
		return;
	hot_say_p(c.p, p);
	words_print(v->clumping, sizeof v->clumping,
		c.is_clumped
			? _("Clumped: counts differ %.1f times as much as luck makes "
			    "them (p %s).")
			: _("No sign of clumping: counts differ %.1f times as much as "
			    "luck makes them (p %s)."),
		c.phi, p);
}

static bool at_one_point(const struct hot_set *located)
{
	for (size_t i = 1; i < located->n; i++)
		if (ground_distance(
			    hot_position(located, 0), hot_position(located, i)) > 1)
			return false;
	return located->n > 1;
}

void hot_say_missing(struct hot_view *v, const struct hot_set *located)
{
	char text[SAY_LINE];
	int without = 0, with = 0;

	for (size_t i = 0; i < v->n_traps; i++) {
		with += v->traps[i].has_position;
		without += !v->traps[i].has_position;
	}
	if (with == 0 && without > 0) {
		text_copy(v->no_map, sizeof v->no_map,
			_("No map: no trap has a position."));
		text_copy(v->missing, sizeof v->missing,
			_("Without positions: no map, no neighbourhoods, no distances "
			  "to sources."));
		return;
	}
	if (without > 0) {
		snprintf(text, sizeof text,
			ngettext("%d trap has no position and is left out of map and "
				 "distances.",
				"%d traps have no position and are left out of map and "
				"distances.",
				(unsigned)without),
			without);
		hot_add(v->missing, sizeof v->missing, text);
	}
	if (at_one_point(located))
		hot_add(v->missing, sizeof v->missing,
			_("All traps are at one point: nothing can be said of places "
			  "and distances."));
	else if (located->n < (size_t)hot_constants.near_traps && v->n_traps > 0) {
		snprintf(text, sizeof text,
			_("Neighbourhoods are tested from %d like traps with a position; "
			  "here %d."),
			hot_constants.near_traps, (int)located->n);
		hot_add(v->missing, sizeof v->missing, text);
	}
}
