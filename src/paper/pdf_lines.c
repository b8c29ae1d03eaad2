/* pdf_lines.c - lines, areas and marks. */
#include "pdf_parts.h"

#include <math.h>

static const double tint = 0.9;
static const double hatch_step = 1.4, hatch_width = 0.2; /* mm */
static const double spot_step = 1.2, spot_radius = 0.2;
static const double mark_line = 0.3;

static void set_grey(struct pdf *p, double grey)
{
	cairo_set_source_rgb(p->cairo, grey, grey, grey);
}

/* Dashes are longer than the pen is wide, so that round ends keep them apart. */
static void take_pen(struct pdf *p, const struct pdf_pen *pen)
{
	static const struct {
		double mm[4];
		int n;
	} dashes[] = {
		[PDF_SOLID] = { { 0 }, 0 },
		[PDF_DASHED] = { { 2, 1.2 }, 2 },
		[PDF_DOTTED] = { { 0.4, 0.8 }, 2 },
		[PDF_DASH_DOT] = { { 2.4, 0.8, 0.4, 0.8 }, 4 },
	};
	double units[4];

	for (int i = 0; i < dashes[pen->dash].n; i++)
		units[i] = pdf_units(dashes[pen->dash].mm[i]);
	cairo_set_dash(p->cairo, units, dashes[pen->dash].n, 0);
	cairo_set_line_width(p->cairo, pdf_units(pen->width));
	cairo_set_line_join(p->cairo, CAIRO_LINE_JOIN_ROUND);
	set_grey(p, pen->grey);
}

static void go_along(struct pdf *p, const struct pdf_at *points, size_t n)
{
	for (size_t i = 0; i < n; i++)
		cairo_line_to(p->cairo, pdf_units(points[i].x), pdf_units(points[i].y));
}

static void go_round(struct pdf *p, struct pdf_box box)
{
	cairo_rectangle(p->cairo, pdf_units(box.x), pdf_units(box.y), pdf_units(box.w),
		pdf_units(box.h));
}

void pdf_lines(
	struct pdf *p, const struct pdf_at *points, size_t n, const struct pdf_pen *pen)
{
	if (n < 2)
		return;
	take_pen(p, pen);
	go_along(p, points, n);
	cairo_stroke(p->cairo);
}

void pdf_line(
	struct pdf *p, struct pdf_at from, struct pdf_at to, const struct pdf_pen *pen)
{
	const struct pdf_at ends[] = { from, to };

	pdf_lines(p, ends, 2, pen);
}

void pdf_frame(struct pdf *p, struct pdf_box box, const struct pdf_pen *pen)
{
	take_pen(p, pen);
	go_round(p, box);
	cairo_stroke(p->cairo);
}

/* What Cairo's path goes round, in its units. */
static struct pdf_box path_extent(struct pdf *p)
{
	double x1, y1, x2, y2;

	cairo_path_extents(p->cairo, &x1, &y1, &x2, &y2);
	return (struct pdf_box){ x1, y1, x2 - x1, y2 - y1 };
}

/* Lines at 45 degrees over all of `b`, on a raster that is the page's, so that areas
 * side by side go on in each other. `rise` -1: upwards to the right; 1: downwards. */
static void hatch(struct pdf *p, struct pdf_box b, double rise)
{
	double step = pdf_units(hatch_step);
	double foot = rise < 0 ? b.y + b.h : b.y;
	double off = -rise * foot;
	double first = floor((b.x - b.h + off) / step) * step - off;

	for (double x = first; x < b.x + b.w; x += step) {
		cairo_move_to(p->cairo, x, foot);
		cairo_line_to(p->cairo, x + b.h, foot + rise * b.h);
	}
	cairo_set_dash(p->cairo, NULL, 0, 0);
	cairo_set_line_width(p->cairo, pdf_units(hatch_width));
	cairo_stroke(p->cairo);
}

static void spot(struct pdf *p, struct pdf_box b)
{
	double step = pdf_units(spot_step), r = pdf_units(spot_radius);

	for (double y = floor(b.y / step) * step; y < b.y + b.h + step; y += step)
		for (double x = floor(b.x / step) * step; x < b.x + b.w + step;
			x += step) {
			cairo_new_sub_path(p->cairo);
			cairo_arc(p->cairo, x, y, r, 0, 2 * G_PI);
		}
	cairo_fill(p->cairo);
}

/* Fills Cairo's path with lines or dots, and forgets it. */
static void fill_with_lines(struct pdf *p, enum pdf_fill fill)
{
	struct pdf_box extent = path_extent(p);

	cairo_save(p->cairo);
	cairo_clip(p->cairo);
	set_grey(p, 0);
	if (fill == PDF_SPOTTED)
		spot(p, extent);
	else
		hatch(p, extent, -1);
	if (fill == PDF_CROSSED)
		hatch(p, extent, 1);
	cairo_restore(p->cairo);
}

static void fill_path(struct pdf *p, enum pdf_fill fill)
{
	if (fill != PDF_BLACK && fill != PDF_WHITE && fill != PDF_TINT) {
		fill_with_lines(p, fill);
		return;
	}
	set_grey(p, fill == PDF_BLACK ? 0 : fill == PDF_WHITE ? 1 : tint);
	cairo_fill(p->cairo);
}

void pdf_fill(struct pdf *p, struct pdf_box box, enum pdf_fill fill)
{
	go_round(p, box);
	fill_path(p, fill);
}

void pdf_area(struct pdf *p, const struct pdf_at *points, size_t n, enum pdf_fill fill)
{
	if (n < 3)
		return;
	go_along(p, points, n);
	cairo_close_path(p->cairo);
	fill_path(p, fill);
}

/* Corners from the middle, in halves of the size. */
static const struct shape {
	bool is_open;
	int n; /* corners; 0: a circle */
	struct pdf_at corner[4];
} shapes[] = {
	[PDF_DOT] = { false, 0, { { 0, 0 } } },
	[PDF_RING] = { true, 0, { { 0, 0 } } },
	[PDF_BLOCK] = { false, 4, { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } } },
	[PDF_SQUARE] = { true, 4, { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } } },
	[PDF_UP] = { false, 3, { { 0, -1 }, { 1, 1 }, { -1, 1 } } },
	[PDF_UP_OPEN] = { true, 3, { { 0, -1 }, { 1, 1 }, { -1, 1 } } },
	[PDF_DOWN] = { false, 3, { { 0, 1 }, { 1, -1 }, { -1, -1 } } },
	[PDF_DOWN_OPEN] = { true, 3, { { 0, 1 }, { 1, -1 }, { -1, -1 } } },
	[PDF_DIAMOND] = { false, 4, { { 0, -1 }, { 1, 0 }, { 0, 1 }, { -1, 0 } } },
};

/* Two lines through the middle, as long as twice their arm. */
static void cross(struct pdf *p, struct pdf_at at, double half,
	const struct pdf_at arms[static 2])
{
	static const struct pdf_pen pen = { .width = 0.4 };

	for (int i = 0; i < 2; i++) {
		double x = arms[i].x * half, y = arms[i].y * half;

		pdf_line(p, (struct pdf_at){ at.x - x, at.y - y },
			(struct pdf_at){ at.x + x, at.y + y }, &pen);
	}
}

void pdf_put_mark(struct pdf *p, struct pdf_at at, enum pdf_mark mark, double size)
{
	static const struct pdf_at upright[] = { { 0, 1 }, { 1, 0 } };
	static const struct pdf_at slanting[] = { { 1, 1 }, { 1, -1 } };

	if (mark == PDF_PLUS || mark == PDF_TIMES) {
		cross(p, at, size / 2, mark == PDF_PLUS ? upright : slanting);
		return;
	}
	const struct shape *s = &shapes[mark];

	cairo_new_path(p->cairo);
	for (int i = 0; i < s->n; i++)
		cairo_line_to(p->cairo, pdf_units(at.x + s->corner[i].x * size / 2),
			pdf_units(at.y + s->corner[i].y * size / 2));
	if (s->n == 0)
		cairo_arc(p->cairo, pdf_units(at.x), pdf_units(at.y),
			pdf_units(size / 2), 0, 2 * G_PI);
	cairo_close_path(p->cairo);
	set_grey(p, s->is_open ? 1 : 0);
	cairo_fill_preserve(p->cairo);
	set_grey(p, 0);
	cairo_set_dash(p->cairo, NULL, 0, 0);
	cairo_set_line_width(p->cairo, pdf_units(mark_line));
	cairo_stroke(p->cairo);
}

void pdf_clip(struct pdf *p, struct pdf_box box)
{
	cairo_save(p->cairo);
	go_round(p, box);
	cairo_clip(p->cairo);
}

void pdf_unclip(struct pdf *p)
{
	cairo_restore(p->cairo);
}
