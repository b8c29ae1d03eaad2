/* Where it is hot: the answer, the map, the sources. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

#include <stdio.h>

enum { HOT_COLUMNS = 4 };

/* What stays together on a page: the answer, and the map with it. */
static const double least_h = 40, with_map_h = 140;

/* Single traps and borders prove nothing, unless they stand out. */
static bool is_told(const struct hot_row *r)
{
	return r->what == HOT_OF_BLOCK || (r->what == HOT_OF_BORDER && r->block == 0) ||
	       r->grade >= HOT_WATCH;
}

static void set_hot_rows(struct leaf *l, const struct hot_view *v)
{
	struct ruled r = { 0 };

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
		leaf_need(l, ruled_row_height(l));
		ruled_row(&r, l, false, cells);
	}
	ruled_end(l);
}

void season_hot(
	struct leaf *l, const struct season_page *p, const struct season_pest *s)
{
	const struct hot_view *v = &s->hot;
	char text[NAME_BYTES + CODE_BYTES + 32];

	snprintf(text, sizeof text, _("Where it is hot: %s"), s->name);
	leaf_heading(l, text, season_has_map(v) ? with_map_h : least_h);
	leaf_words(l, 0, &leaf_plain, v->window);
	leaf_words(l, 0, &leaf_plain, v->left_out);
	leaf_words(l, 0, &leaf_bold, v->says);
	if (v->n > 0)
		set_hot_rows(l, v);
	leaf_gap(l, 1);
	for (size_t i = 0; i < v->n; i++)
		if (v->rows[i].what == HOT_OF_BLOCK && v->rows[i].grade >= HOT_HIGHER)
			season_named(l, v->rows[i].name, v->rows[i].earlier);
	season_map(l, p, s);
	for (size_t i = 0; i < v->n_sources; i++)
		leaf_words(l, 0, &leaf_plain, v->sources[i].says);
	leaf_words(l, 0, &leaf_small, season_hot_caution());
}
