#include "base/column.h"
#include "base/csv.h"
#include "exchange/report_csv.h"

#include <math.h>
#include <stdio.h>

void hotspots_csv_head(struct buf *out)
{
	buf_add(out,
		"kind,name,traps,moths,nights,ratio,ratio_lo,ratio_hi,p_luck,p_shuffle,"
		"p_holm,p_bh,says\r\n");
}

static const char *word_of(enum hot_what what)
{
	static const char *const words[] = {
		[HOT_OF_BLOCK] = "block",
		[HOT_OF_NEAR] = "near",
		[HOT_OF_TRAP] = "trap",
		[HOT_OF_BORDER] = "border",
	};

	return words[what];
}

/* Four decimals where it is not whole, so that a chance of next to nothing is no 0; what
 * is not known or has no bound is empty. */
static void add_number(struct buf *out, double value)
{
	char text[VALUE_BYTES] = "";

	if (isfinite(value))
		snprintf(text, sizeof text, "%.*f", value == round(value) ? 0 : 4,
			value);
	csv_add(out, text, false);
}

static void add_name(
	struct buf *out, const char *kind, const char *farm, const char *name)
{
	struct buf whole = { 0 };

	buf_addf(&whole, "%s%s%s", farm, *farm ? ": " : "", name);
	csv_add(out, kind, true);
	csv_add(out, whole.text, false);
	buf_free(&whole);
}

static void add_row(struct buf *out, const char *farm, const struct hot_row *r)
{
	add_name(out, word_of(r->what), farm, r->name);
	add_number(out, r->split.n_in);
	add_number(out, (double)r->split.moths_in);
	add_number(out, (double)r->split.nights_in);
	add_number(out, r->ratio.at);
	add_number(out, r->ratio.lo);
	add_number(out, r->ratio.hi);
	add_number(out, r->p_luck);
	add_number(out, r->p_shuffle);
	add_number(out, r->p_holm);
	add_number(out, r->p_bh);
	csv_add(out, hot_grade_word(r->grade), false);
	csv_end_row(out);
}

/* The ratio is that of the catch 100 m farther away. */
static void add_source(struct buf *out, const char *farm, const struct hot_source *s)
{
	const struct gradient *g = &s->gradient;
	bool known = g->n > 0, fitted = known && g->is_fitted;

	add_name(out, "source", farm, s->name);
	add_number(out, known ? g->n : (double)NAN);
	add_number(out, known ? (double)g->moths : (double)NAN);
	add_number(out, (double)NAN);
	add_number(out, fitted ? exp(100 * g->b) : (double)NAN);
	add_number(out, fitted ? exp(100 * g->b_lo) : (double)NAN);
	add_number(out, fitted ? exp(100 * g->b_hi) : (double)NAN);
	add_number(out, (double)NAN);
	add_number(out, known ? g->p : (double)NAN);
	add_number(out, (double)NAN);
	add_number(out, (double)NAN);
	csv_add(out, gradient_word(g->say), false);
	csv_end_row(out);
}

void hotspots_csv(const struct hot_view *v, const char *farm, struct buf *out)
{
	for (size_t i = 0; i < v->n; i++)
		add_row(out, farm, &v->rows[i]);
	for (size_t i = 0; i < v->n_sources; i++)
		add_source(out, farm, &v->sources[i]);
}
