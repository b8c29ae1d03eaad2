/* season_map.c - the map of traps and sources to scale, north upwards. */
#include "season_parts.h"

#include "base/buf.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>

static const double least_span = 50, margin = 7, digit_size = 4;
static const double scale_h = 8, block_w = 34;

enum { MAP_LEAST = 2 }; /* traps: one alone is nowhere */

struct map {
	const struct hot_view *v;
	const struct season_chart *charts; /* of the pest: they name the blocks */
	size_t n_charts;
	double west, north, per_mm; /* metres at the corner; metres a mm */
	double most_h;              /* mm */
	struct pdf_box box;
};

/* The finest scale at which all points have room; the map is as low as it can be. */
static void lay_out(struct map *m, const struct leaf *l)
{
	const struct hot_points *all = &m->v->points;
	double west = all->x[0], east = west, south = all->y[0], north = south;

	for (size_t i = 1; i < all->n; i++) {
		west = fmin(west, all->x[i]);
		east = fmax(east, all->x[i]);
		south = fmin(south, all->y[i]);
		north = fmax(north, all->y[i]);
	}
	double wide = fmax(east - west, least_span),
	       high = fmax(north - south, least_span);
	m->per_mm =
		fmax(wide / (l->body.w - 2 * margin), high / (m->most_h - 2 * margin));
	m->box = (struct pdf_box){ l->body.x, 0, l->body.w,
		high / m->per_mm + 2 * margin };
	m->west = (west + east) / 2 - m->box.w / 2 * m->per_mm;
	m->north = (north + south) / 2 + m->box.h / 2 * m->per_mm;
}

static struct pdf_at place(const struct map *m, struct point at)
{
	return (struct pdf_at){ m->box.x + (at.x - m->west) / m->per_mm,
		m->box.y + (m->north - at.y) / m->per_mm };
}

static void set_mark(struct leaf *l, struct pdf_at at, const char *text, bool bold)
{
	const struct pdf_type type = {
		.points = 8.5, .bold = bold, .align = PDF_CENTRE, .middle = true
	};
	const struct pdf_box box = { at.x - digit_size / 2, at.y - digit_size / 2,
		digit_size, digit_size };

	pdf_fill(l->pdf,
		(struct pdf_box){ at.x - digit_size / 3, at.y - digit_size / 2.6,
			digit_size / 1.5, digit_size / 1.3 },
		PDF_WHITE);
	pdf_text(l->pdf, box, &type, text);
}

static void set_source(struct leaf *l, const struct map *m, const struct hot_source *s)
{
	const struct pdf_pen pen = { .width = 0.25 };
	struct pdf_at at[OUTLINE_MAX + 1];
	char letter[2] = { s->letter, '\0' };

	for (size_t k = 0; k < s->n_outline; k++)
		at[k] = place(m, s->outline[k]);
	if (s->n_outline > 0) {
		at[s->n_outline] = at[0];
		pdf_area(l->pdf, at, s->n_outline, PDF_HATCHED);
		pdf_lines(l->pdf, at, s->n_outline + 1, &pen);
	}
	set_mark(l, place(m, s->at), letter, true);
}

/* Where several fall on one mark the highest class is set last. */
static void set_traps(struct leaf *l, const struct map *m)
{
	char text[2] = "";

	for (int rank = -2; rank <= 9; rank++)
		for (size_t i = 0; i < m->v->n_traps; i++) {
			const struct hot_trap *t = &m->v->traps[i];
			if (!t->has_position || (t->is_alike ? t->digit : -2) != rank)
				continue;
			text[0] = rank == -2   ? 'o'
				  : rank == -1 ? '?'
					       : (char)('0' + rank);
			set_mark(l, place(m, t->at), text, true);
		}
}

/* Below the block's southernmost trap, amid all of them. */
static void set_block(struct leaf *l, const struct map *m, const struct season_chart *c)
{
	const struct pdf_type type = { .points = 6.5, .align = PDF_CENTRE };
	struct point at = { 0, 0 };
	int n = 0;

	for (size_t i = 0; i < m->v->n_traps; i++) {
		const struct hot_trap *t = &m->v->traps[i];
		if (!t->has_position || t->block != c->block)
			continue;
		at.y = n == 0 ? t->at.y : fmin(at.y, t->at.y);
		at.x += t->at.x;
		n++;
	}
	if (n == 0)
		return;
	at.x /= n;
	struct pdf_at below = place(m, at);
	pdf_text(l->pdf,
		(struct pdf_box){ below.x - block_w / 2, below.y + 1.6, block_w, 0 },
		&type, c->block_name);
}

/* 1, 2 or 5 times a power of ten, a quarter of the map at most. */
static double bar_metres(const struct map *m)
{
	double most = m->box.w * m->per_mm / 4;
	double power = pow(10, floor(log10(most)));

	return most >= 5 * power ? 5 * power : most >= 2 * power ? 2 * power : power;
}

static void set_scale(struct leaf *l, const struct map *m)
{
	const struct pdf_pen pen = { .width = 0.5 };
	double metres = bar_metres(m), w = metres / m->per_mm;
	struct pdf_at from = { l->body.x + 24, l->y + 3 };
	char text[SAY_SHORT];

	pdf_put_mark(l->pdf, (struct pdf_at){ l->body.x + 4, l->y + 3 }, PDF_UP, 3.4);
	pdf_text(l->pdf, (struct pdf_box){ l->body.x + 7, l->y + 1.4, 16, 0 },
		&leaf_small, _("north"));
	pdf_line(l->pdf, from, (struct pdf_at){ from.x + w, from.y }, &pen);
	for (int i = 0; i < 2; i++)
		pdf_line(l->pdf, (struct pdf_at){ from.x + w * i, from.y - 1.2 },
			(struct pdf_at){ from.x + w * i, from.y + 1.2 }, &pen);
	if (metres >= 1000)
		words_print(text, sizeof text, _("%.0f km"), metres / 1000);
	else
		words_print(text, sizeof text, _("%.0f m"), metres);
	pdf_text(l->pdf, (struct pdf_box){ from.x + w + 2, l->y + 1.4, 20, 0 },
		&leaf_small, text);
	l->y += scale_h - 2;
}

static void say_classes(const struct hot_view *v, struct buf *out)
{
	buf_addf(out, "%s%s", v->classes ? v->classes : "",
		_("  ? not read  o not compared"));
}

static const char *letters_of(const struct hot_view *v)
{
	return v->letters ? v->letters : "";
}

static void set_map(struct leaf *l, struct map *m)
{
	const struct pdf_pen pen = { .width = 0.25 };

	lay_out(m, l);
	m->box.y = l->y;
	pdf_frame(l->pdf, m->box, &pen);
	pdf_clip(l->pdf, m->box);
	for (size_t i = 0; i < m->v->n_sources; i++)
		if (m->v->sources[i].is_on_map)
			set_source(l, m, &m->v->sources[i]);
	for (size_t i = 0; i < m->n_charts; i++)
		set_block(l, m, &m->charts[i]);
	set_traps(l, m);
	pdf_unclip(l->pdf);
	l->y += m->box.h + 1;
	set_scale(l, m);
}

bool season_has_map(const struct hot_view *v)
{
	size_t n = 0;

	for (size_t i = 0; i < v->n_traps; i++)
		n += v->traps[i].has_position;
	return n >= MAP_LEAST;
}

double season_map_words(const struct leaf *l, const struct season_pest *s)
{
	struct buf text = { 0 };

	say_classes(&s->hot, &text);
	double h = pdf_text_height(l->pdf, l->body.w, &leaf_small, text.text);
	h += pdf_text_height(l->pdf, l->body.w, &leaf_small, letters_of(&s->hot));
	h += pdf_text_height(l->pdf, l->body.w, &leaf_small_bold, s->name);
	buf_free(&text);
	return h + scale_h + 1;
}

void season_map(struct leaf *l, const struct season_page *p,
	const struct season_pest *s, double most)
{
	struct map m = { .v = &s->hot,
		.charts = &p->charts[s->first],
		.n_charts = s->n,
		.most_h = most };
	struct buf text = { 0 };

	leaf_words(l, 0, &leaf_small_bold, s->name);
	set_map(l, &m);
	say_classes(&s->hot, &text);
	season_set(l, 0, &leaf_small, &text);
	buf_add(&text, letters_of(&s->hot));
	season_set(l, 0, &leaf_small, &text);
	buf_free(&text);
}
