/* hotspots_map.c - the map of traps and sources in plain characters. */
#include "base/mem.h"
#include "base/plot.h"
#include "base/words.h"
#include "hotspots_parts.h"
#include "paper/ascii.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS = 26, ROWS_ROUND = 3 };

struct map {
	const struct hot_view *v;
	struct plot plot;
	char *cells; /* rows * cols */
};

static void put(struct map *m, struct point at, char mark)
{
	int row, col;

	if (plot_cell(&m->plot, at.x, at.y, &row, &col))
		m->cells[row * m->plot.cols + col] = mark;
}

static void put_dot(void *arg, int row, int col)
{
	struct map *m = arg;

	m->cells[row * m->plot.cols + col] = '.';
}

static void draw_source(struct map *m, const struct hot_source *s)
{
	for (size_t k = 0; k < s->n_outline; k++) {
		const struct point a = s->outline[k],
				   b = s->outline[(k + 1) % s->n_outline];

		plot_line(&m->plot, (const double[]){ a.x, a.y },
			(const double[]){ b.x, b.y }, put_dot, m);
	}
	put(m, s->at, s->letter);
}

/* Where several fall on one mark the highest class is drawn last. */
static void draw_traps(struct map *m)
{
	for (int rank = -2; rank <= 9; rank++)
		for (size_t i = 0; i < m->v->n_traps; i++) {
			const struct hot_trap *t = &m->v->traps[i];
			int own = t->is_alike ? t->digit : -2;

			if (t->has_position && own == rank)
				put(m, t->at,
					rank == -2   ? 'o'
					: rank == -1 ? '?'
						     : (char)('0' + rank));
		}
}

static void add_cells(const struct map *m, struct buf *out)
{
	for (int row = 0; row < m->plot.rows; row++) {
		const char *cells = m->cells + row * m->plot.cols;
		int n = m->plot.cols;

		while (n > 0 && cells[n - 1] == ' ')
			n--;
		buf_add_n(out, cells, (size_t)n);
		buf_add(out, "\n");
	}
}

static void add_scale(const struct plot *p, struct buf *out)
{
	buf_addf(out, "%s  |", _("^ north"));
	for (int i = 1; i < p->bar_cols; i++)
		buf_add(out, "-");
	if (p->bar_metres >= 1000)
		buf_addf(out, _("| %.0f km"), p->bar_metres / 1000);
	else
		buf_addf(out, _("| %.0f m"), p->bar_metres);
	buf_add(out, "\n");
}

static void add_legend(const struct map *m, int cols, struct buf *out)
{
	const struct hot_view *v = m->v;
	struct buf line = { 0 };

	if (v->letters)
		paper_wrap(out, v->letters, 0, cols);
	buf_addf(&line, "%s%s", v->classes ? v->classes : "",
		_("  ? not read  o not compared"));
	paper_wrap(out, line.text, 0, cols);
	buf_free(&line);
}

/* No higher than the farm needs at the scale that its width asks for. */
static struct plot fit(const struct map *m, int cols)
{
	const struct hot_points *all = &m->v->points;
	struct plot plot = plot_fit(all->x, all->y, all->n, ROWS, cols);
	double south = all->y[0], north = all->y[0];
	int rows;

	for (size_t i = 1; i < all->n; i++) {
		south = fmin(south, all->y[i]);
		north = fmax(north, all->y[i]);
	}
	rows = (int)ceil((north - south) / (2 * plot.metres)) + ROWS_ROUND;
	return rows < ROWS ? plot_fit(all->x, all->y, all->n, rows, cols) : plot;
}

static void draw(struct map *m, int cols, struct buf *out)
{
	m->plot = fit(m, cols);
	size_t n = (size_t)(m->plot.rows * m->plot.cols);
	m->cells = mem_new(n, 1);
	memset(m->cells, ' ', n);
	for (size_t i = 0; i < m->v->n_sources; i++)
		if (m->v->sources[i].is_on_map)
			draw_source(m, &m->v->sources[i]);
	draw_traps(m);
	add_cells(m, out);
	add_scale(&m->plot, out);
	free(m->cells);
}

void hotspots_map(const struct hot_view *v, int cols, struct buf *out)
{
	struct map m = { .v = v };

	if (v->n_traps == 0)
		return;
	buf_add(out, "\n");
	if (v->points.n > 0) {
		draw(&m, cols, out);
		add_legend(&m, cols, out);
	} else
		paper_wrap(out, v->no_map, 0, cols);
}
