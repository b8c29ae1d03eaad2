/* hotspots_say.c - a row in plain words: what it says, the numbers behind it, what to
 * do next. */
#include "hotspots_words.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void hot_add(char *out, size_t size, const char *sentence)
{
	size_t n = strlen(out);

	snprintf(out + n, size - n, "%s%s", n ? " " : "", sentence);
}

void hot_say_p(double p, char out[static SAY_SHORT])
{
	if (p < 0.0001)
		text_copy(out, SAY_SHORT, _("under 0.0001"));
	else
		words_print(out, SAY_SHORT, "%.*f", p < 0.01 ? 4 : p < 0.1 ? 3 : 2, p);
}

static double rest_rate(const struct hot_split *s)
{
	return 7.0 * (double)s->moths_out / (double)s->nights_out;
}

static bool is_higher(const struct hot_row *row)
{
	const struct hot_split *s = &row->split;

	return s->nights_out == 0 || row->rate.at > rest_rate(s);
}

/* Beyond ordinary differences between traps, but too little to be named. */
static bool is_slight(const struct hot_row *row)
{
	return row->grade == HOT_HIGHER && row->p_bh <= hot_constants.watch &&
	       row->ratio.at < hot_constants.ratio_named;
}

static const char *grade_text(const struct hot_row *row)
{
	switch (row->grade) {
	case HOT_LUCK:
		return is_higher(row) ? _("could be luck") : _("not higher");
	case HOT_HIGHER:
		return is_slight(row) ? _("higher, not twice") : _("higher, not shown");
	case HOT_WATCH:
		return _("watch");
	case HOT_CLEAR:
		return _("clear hot spot");
	default:
		return _("too little to tell");
	}
}

static enum tone tone_of(enum hot_grade g)
{
	static const enum tone of[HOT_GRADE_COUNT] = {
		[HOT_TOO_LITTLE] = TONE_QUIET,
		[HOT_LUCK] = TONE_PLAIN,
		[HOT_HIGHER] = TONE_UNSURE,
		[HOT_WATCH] = TONE_OVER,
		[HOT_CLEAR] = TONE_OVER,
	};

	return of[g];
}

/* Why a row cannot be told, the plainest reason first. */
static void say_too_little(const struct hot_row *row, char *out, size_t size)
{
	const struct hot_split *s = &row->split;
	int moths = (int)(s->moths_in + s->moths_out);

	if (s->n_out == 0)
		text_copy(out, size,
			_("Nothing to compare with: no like trap hangs elsewhere on "
			  "the farm."));
	else if (moths == 0)
		text_copy(out, size, _("Nothing caught, here or elsewhere."));
	else if (moths < hot_constants.moths)
		snprintf(out, size,
			ngettext("%d moth in all: too little to tell (%d are needed).",
				"%d moths in all: too little to tell (%d are needed).",
				(unsigned)moths),
			moths, hot_constants.moths);
	else if (row->what != HOT_OF_TRAP && s->n_in < hot_constants.traps_in)
		text_copy(out, size,
			_("One trap only: it cannot show whether it is the block or the "
			  "trap."));
	else
		snprintf(out, size,
			_("Too few traps to tell: %d here and %d to compare with."),
			s->n_in, s->n_out);
}

void hot_say_rates(const struct hot_row *row, char out[static SAY_LINE])
{
	words_print(out, SAY_LINE,
		row->what == HOT_OF_BORDER
			? _("%.1f a trap and week, %.1f in the interior")
			: _("%.1f a trap and week, %.1f elsewhere"),
		row->rate.at, rest_rate(&row->split));
}

/* "4.5 times the rest"; without a moth elsewhere there is no ratio. */
void hot_say_times(const struct hot_row *row, char out[static SAY_LINE])
{
	if (row->split.moths_out == 0)
		text_copy(out, SAY_LINE, _("all moths were caught here"));
	else
		words_print(out, SAY_LINE,
			row->what == HOT_OF_BORDER ? _("%.1f times the interior")
						   : _("%.1f times the rest"),
			row->ratio.at);
}

static const char *head_of(const struct hot_row *row)
{
	if (row->grade == HOT_HIGHER && row->what == HOT_OF_BORDER && row->block)
		return _("Higher, but one block alone has too few traps to prove it");
	if (is_slight(row))
		return _("Higher, but not twice as high, which would be worth naming");
	if (row->grade == HOT_HIGHER)
		return row->what == HOT_OF_TRAP
			       ? _("Higher, but one trap proves nothing")
			       : _("Higher, but not beyond ordinary differences between "
				   "traps");
	if (is_higher(row))
		return _("Could be luck");
	return row->what == HOT_OF_BORDER ? _("Not above the interior")
					  : _("Not above the rest");
}

static void say_graded(struct hot_row *row)
{
	char rates[SAY_LINE], times[SAY_LINE];

	hot_say_rates(row, rates);
	hot_say_times(row, times);
	if (row->grade == HOT_CLEAR)
		snprintf(row->says, sizeof row->says, _("A clear hot spot: %s (%s)."),
			times, rates);
	else if (row->grade == HOT_WATCH)
		snprintf(row->says, sizeof row->says, _("Watch: %s (%s)."), times,
			rates);
	else
		snprintf(row->says, sizeof row->says, "%s: %s.", head_of(row), rates);
}

/* Of a set of several, a trap that caught nearly all of it. */
static void say_one_trap(struct hot_row *row, const struct hot_set *set)
{
	char text[SAY_LINE];
	size_t top = 0;
	int64_t most = -1;

	for (size_t i = 0; i < set->n; i++)
		if (set->in[i] && set->catches[i].moths > most) {
			most = set->catches[i].moths;
			top = i;
		}
	if (row->split.n_in < 2 || row->grade < HOT_HIGHER ||
		10 * most < 8 * row->split.moths_in)
		return;
	snprintf(text, sizeof text, _("Trap %s alone caught %d of the %d."),
		set->log->traps.items[set->takes[top]->trap].label, (int)most,
		(int)row->split.moths_in);
	hot_add(row->says, sizeof row->says, text);
}

/* "at least 92 moths in 245 trap-nights of 3 traps" */
static void say_side(const struct hot_row *row, bool inside, char out[static SAY_LINE])
{
	const struct hot_split *s = &row->split;
	int64_t moths = inside ? s->moths_in : s->moths_out;
	int n = inside ? s->n_in : s->n_out;
	char caught[SAY_SHORT];

	snprintf(caught, sizeof caught,
		ngettext("%lld moth", "%lld moths", (unsigned long)moths),
		(long long)moths);
	snprintf(out, SAY_LINE,
		ngettext("%s%s in %lld trap-nights of %d trap",
			"%s%s in %lld trap-nights of %d traps", (unsigned)n),
		(inside ? row->at_least : row->rest_at_least) ? _("at least ") : "",
		caught, (long long)(inside ? s->nights_in : s->nights_out), n);
}

/* "4.6", "0.25", "no limit" */
static void say_limit(double ratio, char out[static SAY_SHORT])
{
	if (isinf(ratio))
		text_copy(out, SAY_SHORT, _("no limit"));
	else
		words_print(out, SAY_SHORT, "%.*f", ratio < 1 ? 2 : 1, ratio);
}

static void say_ratio(const struct hot_row *row, char *out, size_t size)
{
	const char *luck = row->ratio_is_exact ? _(", counting luck only") : "";
	char at[SAY_SHORT], lo[SAY_SHORT], hi[SAY_SHORT], text[SAY_LINE];

	say_limit(row->ratio.at, at);
	say_limit(row->ratio.lo, lo);
	say_limit(row->ratio.hi, hi);
	if (row->split.moths_out == 0)
		snprintf(text, sizeof text, _("Ratio %s or more%s."), lo, luck);
	else
		snprintf(text, sizeof text, _("Ratio %s (%s to %s%s)."), at, lo, hi,
			luck);
	hot_add(out, size, text);
}

static void say_tests(const struct hot_row *row, char *out, size_t size)
{
	char luck[SAY_SHORT], shuffled[SAY_SHORT], holm[SAY_SHORT], bh[SAY_SHORT];
	char text[SAY_LINE];

	if (isnan(row->p_luck))
		return;
	hot_say_p(row->p_luck, luck);
	say_ratio(row, out, size);
	snprintf(text, sizeof text, _("By luck alone p %s."), luck);
	hot_add(out, size, text);
	if (isnan(row->p_shuffle))
		return;
	hot_say_p(row->p_shuffle, shuffled);
	hot_say_p(row->p_holm, holm);
	hot_say_p(row->p_bh, bh);
	snprintf(text, sizeof text,
		_("Whole traps shuffled p %s; for all looked at together %s (Holm), %s "
		  "(Benjamini-Hochberg)."),
		shuffled, holm, bh);
	hot_add(out, size, text);
}

static void say_numbers(struct hot_row *row)
{
	char here[SAY_LINE], there[SAY_LINE];

	say_side(row, true, here);
	say_side(row, false, there);
	if (row->split.n_out == 0)
		snprintf(row->numbers, sizeof row->numbers, "%s.", here);
	else
		snprintf(row->numbers, sizeof row->numbers, _("%s against %s."), here,
			there);
	say_tests(row, row->numbers, sizeof row->numbers);
}

static const char *next_of_hot(void)
{
	return _(
		"Sample fruit here: 300 from many trees, most at the edge and in the "
		"rows that catch most. None in 300 still allows up to about 1 % (600: "
		"0.5 %). What follows is for your local adviser. To confirm: test this "
		"one alone, once, in the next flight.");
}

static const char *next_of(const struct hot_row *row)
{
	if (row->grade >= HOT_WATCH)
		return next_of_hot();
	if (row->what == HOT_OF_TRAP && row->grade == HOT_HIGHER)
		return _(
			"Hang another trap near it or move it, and test its block once, "
			"alone, in the next flight.");
	if (row->what != HOT_OF_BLOCK)
		return "";
	if (row->grade == HOT_HIGHER)
		return _("To confirm: test this block alone, once, in the next flight; "
			 "a trap or two more here would show more.");
	if (row->grade == HOT_TOO_LITTLE && row->split.n_in < hot_constants.traps_in)
		return _("Hang a second trap of the same lure here.");
	if (row->grade == HOT_TOO_LITTLE && row->split.n_out < hot_constants.traps_out)
		return _("Three traps of the same lure in other blocks would give "
			 "something to compare with.");
	return "";
}

/* What stands in the columns of a list. */
static void say_cells(struct hot_row *row)
{
	const struct range *r = &row->ratio;

	text_copy(row->rate_text, sizeof row->rate_text, "-");
	text_copy(row->ratio_text, sizeof row->ratio_text, "-");
	if (row->split.nights_in > 0)
		words_print(row->rate_text, sizeof row->rate_text, "%.1f%s",
			row->rate.at, row->at_least ? "+" : "");
	if (row->split.moths_out == 0 && row->split.moths_in > 0)
		text_copy(row->ratio_text, sizeof row->ratio_text, _("all here"));
	else if (row->split.moths_in == 0 && isfinite(r->at))
		text_copy(row->ratio_text, sizeof row->ratio_text, _("none here"));
	else if (!isfinite(r->at))
		return;
	else if (isfinite(r->hi))
		words_print(row->ratio_text, sizeof row->ratio_text,
			_("%.1f (%.1f to %.1f)"), r->at, r->lo, r->hi);
	else
		words_print(row->ratio_text, sizeof row->ratio_text,
			_("%.1f (%.1f or more)"), r->at, r->lo);
}

void hot_say_row(struct hot_row *row, const struct hot_set *set)
{
	say_cells(row);
	text_copy(row->grade_text, sizeof row->grade_text, grade_text(row));
	row->tone = tone_of(row->grade);
	if (row->grade == HOT_TOO_LITTLE)
		say_too_little(row, row->says, sizeof row->says);
	else
		say_graded(row);
	say_one_trap(row, set);
	say_numbers(row);
	text_copy(row->next, sizeof row->next, next_of(row));
}
