/* hotspots_gradient.c - a source and the catch around it, in words. */
#include "hotspots_words.h"

#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>

/* Two figures are all that such a number carries: 148.9 is 150. */
static double round_metres(double m)
{
	double step = m < 100 ? 5 : m < 1000 ? 10 : 100;

	return m < 10 ? round(m) : step * round(m / step);
}

static void say_falls(struct hot_source *s)
{
	const struct gradient *g = &s->gradient;
	char limits[SAY_LINE];

	if (isinf(g->halving.hi))
		snprintf(limits, sizeof limits, _("%.0f m or more"),
			round_metres(g->halving.lo));
	else
		snprintf(limits, sizeof limits, _("%.0f to %.0f m"),
			round_metres(g->halving.lo), round_metres(g->halving.hi));
	snprintf(s->says, sizeof s->says,
		_("Catch halves about every %.0f m going away from %s (likely %s)."),
		round_metres(g->halving.at), s->name, limits);
}

static void say_missing(struct hot_source *s)
{
	const struct gradient *g = &s->gradient;
	const struct gradient_constants *c = &gradient_constants;

	switch (g->say) {
	case GRADIENT_TRAPS:
		snprintf(s->says, sizeof s->says,
			_("Too few traps to tell whether catch falls away from %s: %d of "
			  "at least %d like traps with a position."),
			s->name, g->n, c->traps);
		break;
	case GRADIENT_DISTANCES:
		snprintf(s->says, sizeof s->says,
			_("Distances to %s differ too little to tell: at least %d are "
			  "needed, the farthest %.0f times the nearest."),
			s->name, c->distances, c->far_near);
		break;
	case GRADIENT_MOTHS:
		snprintf(s->says, sizeof s->says,
			_("Too few moths to tell whether catch falls away from %s: %lld "
			  "of at least %d."),
			s->name, (long long)g->moths, c->moths);
		break;
	default:
		break;
	}
}

/* After the name of the source. */
static const char *rest_of(enum gradient_say say)
{
	switch (say) {
	case GRADIENT_FALLS_SOMEHOW:
		return _(
			"catch falls going away from it, but how fast cannot be said.");
	case GRADIENT_NEAREST:
		return _(
			"all moths were in the traps nearest to it; how far it reaches "
			"cannot be said.");
	case GRADIENT_NO_CHANGE:
		return _("no clear change of the catch with distance.");
	case GRADIENT_DISAGREE:
		return _(
			"no claim: the size of the catches and their order do not agree "
			"on a fall with distance.");
	case GRADIENT_ONE_TRAP:
		return _("no claim: without the one trap that caught most, nothing is "
			 "left of a fall with distance.");
	default:
		return NULL;
	}
}

/* Edge and distance go together; border traps alone tell them apart a little. */
static void say_facing(struct hot_source *s, const struct hot_view *v)
{
	char text[SAY_LINE];
	struct hot_split f;

	if (!hot_facing(v, s, &f)) {
		hot_add(s->numbers, sizeof s->numbers,
			_("Edge and distance go together: compare edge traps that face "
			  "it with other edge traps."));
		return;
	}
	words_print(text, sizeof text,
		_("Border traps on its side of their block: %.1f a week (%d); other "
		  "border traps: %.1f (%d)."),
		7.0 * (double)f.moths_in / (double)f.nights_in, f.n_in,
		7.0 * (double)f.moths_out / (double)f.nights_out, f.n_out);
	hot_add(s->numbers, sizeof s->numbers, text);
}

static void say_numbers(struct hot_source *s, const struct hot_view *v)
{
	const struct gradient *g = &s->gradient;
	char p[SAY_SHORT], text[SAY_LINE];

	snprintf(s->numbers, sizeof s->numbers,
		ngettext("%d trap, %lld moths, %.0f to %.0f m away.",
			"%d traps, %lld moths, %.0f to %.0f m away.", (unsigned)g->n),
		g->n, (long long)g->moths, g->nearest, g->farthest);
	if (!g->is_fitted || isnan(g->rho))
		return;
	hot_say_p(g->p, p);
	words_print(text, sizeof text,
		_("Order of catch and distance: rho %.2f, p %s."),
		text_hundredths(g->rho), p);
	hot_add(s->numbers, sizeof s->numbers, text);
	if (g->say != GRADIENT_FALLS)
		return;
	snprintf(text, sizeof text, _("Over 100 m the catch falls by %.0f %%."),
		-100 * expm1(100 * g->b));
	hot_add(s->numbers, sizeof s->numbers, text);
	say_facing(s, v);
}

void hot_say_gradient(struct hot_source *s, const struct hot_view *v)
{
	const char *rest = rest_of(s->gradient.say);

	if (s->gradient.say == GRADIENT_FALLS)
		say_falls(s);
	else if (rest)
		snprintf(s->says, sizeof s->says, "%s: %s", s->name, rest);
	else
		say_missing(s);
	if (s->gradient.n > 0)
		say_numbers(s, v);
}
