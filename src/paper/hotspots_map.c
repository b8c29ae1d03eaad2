/* The map of traps and sources in plain characters. */
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
	char *cells;       /* rows * cols */
	double *x, *y;     /* points in metres; owned */
	size_t n, n_traps; /* all; the first of them are of traps */
};

static void add_point(struct map *m, struct point at)
{
	m->x[m->n] = at.x;
	m->y[m->n++] = at.y;
}

/* A source far away is left off: the traps are what the map is for. */
static bool is_on_map(const struct map *m, const struct hot_source *s)
{
	return s->letter && s->has_point &&
	       plot_is_near(m->x, m->y, m->n_traps, s->at.x, s->at.y);
}

/* All that is to be on the map, traps first. */
static void collect(struct map *m)
{
	const struct hot_view *v = m->v;
	size_t most = v->n_traps + v->n_sources * (OUTLINE_MAX + 1);

	m->x = mem_new(most, sizeof *m->x);
	m->y = mem_new(most, sizeof *m->y);
	for (size_t i = 0; i < v->n_traps; i++)
		if (v->traps[i].has_position)
			add_point(m, v->traps[i].at);
	m->n_traps = m->n;
	for (size_t i = 0; m->n > 0 && i < v->n_sources; i++) {
		const struct hot_source *s = &v->sources[i];

		if (!is_on_map(m, s))
			continue;
		add_point(m, s->at);
		for (size_t k = 0; k < s->n_outline; k++)
			add_point(m, s->outline[k]);
	}
}

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

	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].letter && v->sources[i].has_point)
			buf_addf(&line, "%s%c %s (%s%s)", line.n ? "  " : "",
				v->sources[i].letter, v->sources[i].name,
				_(source_kind_word(v->sources[i].kind)),
				is_on_map(m, &v->sources[i]) ? "" : _(", off the map"));
	if (line.n)
		paper_wrap(out, line.text, 0, cols);
	buf_clear(&line);
	buf_addf(&line, "%s%s", v->classes ? v->classes : "",
		_("  ? not read  o not compared"));
	paper_wrap(out, line.text, 0, cols);
	buf_free(&line);
}

/* No higher than the farm needs at the scale that its width asks for. */
static struct plot fit(const struct map *m, int cols)
{
	struct plot plot = plot_fit(m->x, m->y, m->n, ROWS, cols);
	double south = m->y[0], north = m->y[0];
	int rows;

	for (size_t i = 1; i < m->n; i++) {
		south = fmin(south, m->y[i]);
		north = fmax(north, m->y[i]);
	}
	rows = (int)ceil((north - south) / (2 * plot.metres)) + ROWS_ROUND;
	return rows < ROWS ? plot_fit(m->x, m->y, m->n, rows, cols) : plot;
}

static void draw(struct map *m, int cols, struct buf *out)
{
	m->plot = fit(m, cols);
	size_t n = (size_t)(m->plot.rows * m->plot.cols);
	m->cells = mem_new(n, 1);
	memset(m->cells, ' ', n);
	for (size_t i = 0; i < m->v->n_sources; i++)
		if (is_on_map(m, &m->v->sources[i]))
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
	collect(&m);
	buf_add(out, "\n");
	if (m.n > 0) {
		draw(&m, cols, out);
		add_legend(&m, cols, out);
	} else
		paper_wrap(out, v->no_map, 0, cols);
	free(m.x);
	free(m.y);
}
