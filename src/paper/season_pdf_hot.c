/* season_pdf_hot.c - where it is hot: the answer, the catch of each trap, the
 * sources. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

#include <stdio.h>

enum { HOT_COLUMNS = 4 };

/* What stays together on a page. */
static const double least_h = 30;

/* Single traps and borders prove nothing, unless they stand out. */
static bool is_told(const struct hot_row *r)
{
	return r->what == HOT_OF_BLOCK || (r->what == HOT_OF_BORDER && r->block == 0) ||
	       r->grade >= HOT_WATCH;
}

bool season_is_compared(const struct hot_view *v)
{
	for (size_t i = 0; i < v->n; i++)
		if (is_told(&v->rows[i]) && v->rows[i].grade != HOT_TOO_LITTLE)
			return true;
	return false;
}

static void set_hot_rows(struct leaf *l, const struct hot_view *v)
{
	struct ruled r = { .points = leaf_small_bold.points };

	ruled_column(&r, _("where"), PDF_LEFT);
	ruled_column(&r, _("answer"), PDF_LEFT);
	ruled_column(&r, _("a week"), PDF_RIGHT);
	ruled_column(&r, _("times the rest"), PDF_LEFT);
	for (size_t i = 0; i < v->n; i++) {
		const struct hot_row *h = &v->rows[i];
		const char *cells[HOT_COLUMNS] = { h->name, h->grade_text, h->rate_text,
			h->ratio_text };
		if (is_told(h))
			ruled_note(&r, l->pdf, cells);
	}
	ruled_fit(&r, l);
	ruled_begin(&r, l, ruled_row_height(l));
	for (size_t i = 0; i < v->n; i++) {
		const struct hot_row *h = &v->rows[i];
		const char *cells[HOT_COLUMNS] = { h->name, h->grade_text, h->rate_text,
			h->ratio_text };
		if (!is_told(h))
			continue;
		leaf_need(l, ruled_height(&r, l, false, cells));
		ruled_row(&r, l, false, cells);
	}
	ruled_end(l);
}

/* What the map has as classes. */
static void set_catches(struct leaf *l, const struct hot_view *v)
{
	struct buf text = { 0 };

	for (size_t i = 0; i < v->n_traps; i++)
		buf_addf(&text, "%s%s %s", text.n ? ", " : _("Traps, moths a week: "),
			v->traps[i].label, v->traps[i].text);
	if (text.n)
		leaf_words(l, 0, &leaf_small, text.text);
	buf_free(&text);
}

void season_hot(struct leaf *l, const struct season_pest *s)
{
	const struct hot_view *v = &s->hot;
	char text[NAME_BYTES + CODE_BYTES + 32];

	snprintf(text, sizeof text, _("Where it is hot: %s"), s->name);
	leaf_heading(l, text, least_h);
	leaf_words(l, 0, &leaf_small, v->window);
	leaf_words(l, 0, &leaf_small, v->left_out);
	leaf_words(l, 0, &leaf_small_bold, v->says);
	set_hot_rows(l, v);
	leaf_gap(l, 1);
	for (size_t i = 0; i < v->n; i++)
		if (v->rows[i].what == HOT_OF_BLOCK && v->rows[i].grade >= HOT_WATCH)
			season_named(l, v->rows[i].name, v->rows[i].earlier);
	set_catches(l, v);
	if (!season_has_map(v))
		leaf_words(l, 0, &leaf_small, v->no_map);
	for (size_t i = 0; i < v->n_sources; i++)
		leaf_words(l, 0, &leaf_small, v->sources[i].says);
}
