/* flight_rows.c - the table of flights and the biofix, in words. */
#include "flight_parts.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static int32_t night(const struct flight_season *s, double nights)
{
	return s->series.first_day + (int32_t)floor(nights);
}

static const char *const flag_words[FLIGHT_FLAG_COUNT] = {
	N_("began before the first reading"),
	N_("still rising"),
	N_("not finished"),
	N_("a week not read at the peak"),
	N_("a week not read at its end"),
	N_("one-week spike"),
	N_("too few moths to call a flight"),
	N_("at least this many: a full card, or counts not settled"),
	N_("not the same traps in all weeks"),
};

static void say_flags(unsigned flags, char *out, size_t size)
{
	size_t n = 0;

	out[0] = '\0';
	for (int i = 0; i < FLIGHT_FLAG_COUNT; i++) {
		if (!(flags & 1u << i) || n >= size - 1)
			continue;
		n += (size_t)snprintf(
			out + n, size - n, "%s%s", n ? ", " : "", _(flag_words[i]));
	}
}

static void fill_row(const struct flight_season *s, const struct flight *f, size_t k,
	struct flight_row *row)
{
	*row = (struct flight_row){ .flight = *f,
		.first_day = s->series.first_day + 7 * f->first_week,
		.peak_day = s->series.first_day + 7 * f->peak_week,
		.day10 = night(s, f->d10),
		.day50 = night(s, f->d50),
		.day90 = night(s, f->d90) };
	snprintf(row->name, sizeof row->name, _("flight %d"), (int)k + 1);
	say_day(row->first_day, row->first);
	say_day(row->peak_day, row->peak);
	words_print(row->peak_rate, sizeof row->peak_rate, "%.1f", f->peak_rate);
	say_day(row->day10, row->d10);
	say_day(row->day50, row->d50);
	say_day(row->day90, row->d90);
	snprintf(row->moths, sizeof row->moths, "%.0f%s", f->moths,
		f->flags & FLIGHT_AT_LEAST ? "+" : "");
	say_flags(f->flags, row->flags, sizeof row->flags);
}

void flight_fill_rows(struct flight_view *v, const struct flight_season *s)
{
	v->n_rows = 0;
	for (size_t k = 0; k < v->found.n; k++) {
		const struct flight *f = &v->found.items[k];
		fill_row(s, f, k, &v->rows[v->n_rows++]);
		flight_add_mark(v, FLIGHT_PEAK, s->series.first_day + 7 * f->peak_week);
	}
}

static void say_set(struct flight_biofix *b, const struct biofix_date *set)
{
	char day[DAY_TEXT_SIZE];

	if (!set) {
		text_copy(b->set, sizeof b->set, _("biofix not set"));
		return;
	}
	const struct biofix_rule *rule = biofix_rule_find(set->rule);
	day_long(set->day, day, sizeof day);
	snprintf(b->set, sizeof b->set, _("biofix %s, %.80s"), day,
		rule         ? _(rule->said)
		: *set->rule ? set->rule
			     : _("by hand"));
}

static void say_interval(const struct biofix *s, char *out, size_t size)
{
	char after[DAY_TEXT_SIZE], by[DAY_TEXT_SIZE];

	day_short(s->by, by, sizeof by);
	if (s->after == DAY_NONE) {
		text_copy(out, size, by);
		return;
	}
	day_short(s->after, after, sizeof after);
	snprintf(out, size,
		s->or_earlier ? _("after %s, by %s, or earlier") : _("after %s, by %s"),
		after, by);
}

static void say_state(struct flight_biofix *b)
{
	char days[160];
	const char *said = _(b->rule->said);

	switch (b->suggestion.state) {
	case BIOFIX_DATED:
		say_interval(&b->suggestion, days, sizeof days);
		snprintf(
			b->suggested, sizeof b->suggested, _("%.120s: %s"), said, days);
		break;
	case BIOFIX_WAITS:
		snprintf(b->suggested, sizeof b->suggested,
			_("%.120s: caught at the last check, the next one decides"),
			said);
		break;
	case BIOFIX_READ_TOO_SELDOM:
		snprintf(b->suggested, sizeof b->suggested,
			_("%.120s: needs traps read more often; yours are read every %d "
			  "nights"),
			said, (int)b->suggestion.read_nights);
		break;
	default:
		snprintf(
			b->suggested, sizeof b->suggested, _("%.120s: none yet"), said);
	}
}

/* The least that no scout denies was taken of a visit that was put in twice. */
static void say_suggested(struct flight_biofix *b)
{
	size_t n;

	say_state(b);
	n = strlen(b->suggested);
	if (b->suggestion.is_disputed)
		snprintf(b->suggested + n, sizeof b->suggested - n, "; %s",
			_("visits put in twice are not settled, and may make it "
			  "earlier"));
}

static void say_earlier(struct flight_view *v, const struct log *l)
{
	size_t n = 0;
	char *out = v->biofix.earlier, day[SAY_SHORT];
	size_t size = sizeof v->biofix.earlier;

	out[0] = '\0';
	for (size_t i = l->biofixes.n; i > 0 && n < size - 1; i--) {
		const struct biofix_date *d = &l->biofixes.items[i - 1];
		if (d->farm != v->ask.farm || d->pest != v->ask.pest ||
			d->season >= v->ask.season)
			continue;
		say_day(d->day, day);
		n += (size_t)snprintf(
			out + n, size - n, "%s%d: %s", n ? ", " : "", d->season, day);
	}
}

void flight_fill_biofix(
	struct flight_view *v, const struct log *l, const struct flight_season *s)
{
	const struct pest *p = log_pest(l, v->ask.pest);
	const struct biofix_date *set =
		heat_biofix(l, v->ask.farm, v->ask.pest, v->ask.season);
	size_t n;

	v->biofix = (struct flight_biofix){ .is_set = set != NULL,
		.day = set ? set->day : DAY_NONE };
	v->biofix.rule = p ? biofix_rule_find(p->biofix_rule) : NULL;
	if (!v->biofix.rule)
		v->biofix.rule = biofix_rules(&n);
	if (v->ask.farm == 0) {
		text_copy(v->biofix.set, sizeof v->biofix.set,
			_("biofix is set for each farm: choose one"));
		return;
	}
	v->biofix.suggestion =
		biofix_suggest(v->biofix.rule, s->list, s->n, s->start, s->end);
	say_set(&v->biofix, set);
	say_suggested(&v->biofix);
	say_earlier(v, l);
	if (set)
		flight_add_mark(v, FLIGHT_BIOFIX, set->day);
}
