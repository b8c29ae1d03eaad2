/* hotspots_map.c - the map: traps as digits, sources as letters, outlines as dots. */
#include "hotspots_parts.h"

#include "base/plot.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { LEFT = 1, ROWS_LEAST = 4, COLS_LEAST = 8, MEANING_FROM = 14 };

struct map {
	const struct hotspots_page *p;
	struct canvas *c;
	struct plot plot;
	int row; /* of the window: the map's first */
};

static const struct hot_trap *trap_of(const struct hotspots_page *p, size_t i)
{
	return &p->view->traps[i];
}

bool hotspots_pick_trap(struct hotspots_page *p)
{
	const struct hot_view *v = p->view;

	if (p->trap < v->n_traps && v->traps[p->trap].has_position)
		return true;
	for (p->trap = 0; p->trap < v->n_traps; p->trap++)
		if (v->traps[p->trap].has_position)
			return true;
	p->trap = 0;
	return false;
}

/* How far a step that way is, sideways counted twice; INFINITY: not that way. */
static double step_to(
	const struct hot_trap *from, const struct hot_trap *to, int x, int y)
{
	double east = to->at.x - from->at.x, north = to->at.y - from->at.y;
	double ahead = x ? x * east : y * north, aside = fabs(x ? north : east);

	return ahead > 0 ? ahead + 2 * aside : (double)INFINITY;
}

void hotspots_move(struct hotspots_page *p, int x, int y)
{
	const struct hot_view *v = p->view;
	double best = (double)INFINITY;
	size_t to = p->trap;

	for (size_t i = 0; i < v->n_traps; i++) {
		double step = (double)INFINITY;

		if (v->traps[i].has_position)
			step = step_to(trap_of(p, p->trap), &v->traps[i], x, y);
		if (step < best) {
			best = step;
			to = i;
		}
	}
	p->trap = to;
}

void hotspots_next_trap(struct hotspots_page *p)
{
	size_t n = p->view->n_traps;

	for (size_t k = 1; p->show == HOTSPOTS_MAP && k <= n; k++)
		if (trap_of(p, (p->trap + k) % n)->has_position) {
			p->trap = (p->trap + k) % n;
			return;
		}
}

static void put(const struct map *m, struct point at, enum ink ink, const char *mark)
{
	int row, col;

	if (plot_cell(&m->plot, at.x, at.y, &row, &col))
		canvas_text(m->c, m->row + row, LEFT + col, 1, ink, mark);
}

static void put_dot(void *arg, int row, int col)
{
	const struct map *m = arg;

	canvas_text(m->c, m->row + row, LEFT + col, 1, INK_QUIET, "\u00b7");
}

static void draw_outline(struct map *m, const struct hot_source *s)
{
	for (size_t k = 0; k < s->n_outline; k++) {
		const struct point a = s->outline[k],
				   b = s->outline[(k + 1) % s->n_outline];

		plot_line(&m->plot, (const double[]){ a.x, a.y },
			(const double[]){ b.x, b.y }, put_dot, m);
	}
}

static void draw_sources(struct map *m)
{
	const struct hot_view *v = m->p->view;

	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].is_on_map)
			draw_outline(m, &v->sources[i]);
	for (size_t i = 0; i < v->n_sources; i++)
		if (v->sources[i].is_on_map)
			put(m, v->sources[i].at, INK_TITLE,
				(const char[]){ v->sources[i].letter, '\0' });
}

/* The higher a trap ranks, the later it is drawn over others in its cell. */
static int rank_of(const struct hot_trap *t)
{
	return !t->is_alike ? -2 : t->digit;
}

static void draw_trap(const struct map *m, size_t i)
{
	const struct hot_trap *t = trap_of(m->p, i),
			      *picked = trap_of(m->p, m->p->trap);
	char mark[2] = "o";
	bool is_near = picked->near && picked->near[i];

	if (t->is_alike)
		mark[0] = t->digit < 0 ? '?' : (char)('0' + t->digit);
	put(m, t->at,
		i == m->p->trap ? INK_PICKED
		: is_near       ? INK_UNSURE
				: INK_PLAIN,
		mark);
}

static void draw_traps(const struct map *m)
{
	const struct hot_view *v = m->p->view;
	int row, col;

	for (int rank = -2; rank <= 9; rank++)
		for (size_t i = 0; i < v->n_traps; i++)
			if (v->traps[i].has_position && rank_of(&v->traps[i]) == rank)
				draw_trap(m, i);
	draw_trap(m, m->p->trap);
	if (plot_cell(&m->plot, trap_of(m->p, m->p->trap)->at.x,
		    trap_of(m->p, m->p->trap)->at.y, &row, &col))
		canvas_cursor(m->c, m->row + row, LEFT + col);
}

/* "^ N" and a bar of a round length. */
static void draw_scale(const struct map *m, int row)
{
	struct buf bar = { 0 };

	buf_add(&bar, "|");
	for (int i = 1; i < m->plot.bar_cols; i++)
		buf_add(&bar, "-");
	if (m->plot.bar_metres >= 1000)
		buf_addf(&bar, _("| %.0f km"), m->plot.bar_metres / 1000);
	else
		buf_addf(&bar, _("| %.0f m"), m->plot.bar_metres);
	canvas_textf(m->c, row, LEFT, 0, INK_PLAIN, _("^ north   %s"), bar.text);
	buf_free(&bar);
}

/* What the digits mean, and the signs that are on the map. */
static void name_classes(struct prose *to, const struct hot_view *v)
{
	bool unread = false, unlike = false;
	struct buf b = { 0 };

	for (size_t i = 0; i < v->n_traps; i++) {
		unlike |= v->traps[i].has_position && !v->traps[i].is_alike;
		unread |= v->traps[i].has_position && v->traps[i].is_alike &&
			  v->traps[i].digit < 0;
	}
	buf_addf(&b, "%s%s%s", v->classes ? v->classes : "",
		unread ? _("  ? not read") : "", unlike ? _("  o not compared") : "");
	prose_take(to, INK_QUIET, 0, &b);
}

static int lines_of(const struct prose *text, int cols)
{
	size_t lines = 0;

	for (size_t i = 0; i < text->n; i++)
		lines += reader_lines(text->items[i].text, cols - 2);
	return (int)lines;
}

/* Below the map, as far as a third of the room allows. */
static int legend_rows(struct prose *legend, const struct map *m, int room)
{
	int most = room / 3, cols = m->c->cols;

	if (m->p->view->letters)
		prose_add(legend, INK_PLAIN, 0, m->p->view->letters);
	if (lines_of(legend, cols) > most)
		prose_free(legend);
	if (room >= MEANING_FROM) {
		size_t before = legend->n;

		name_classes(legend, m->p->view);
		if (lines_of(legend, cols) > most && legend->n > before)
			free((char *)(uintptr_t)legend->items[--legend->n].text);
	}
	return lines_of(legend, cols);
}

void hotspots_map_draw(struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	struct map m = { .p = p, .c = c, .row = f->first };
	const struct hot_points *all = &p->view->points;
	struct prose legend = { 0 };
	int room = f->last - f->first + 1, below = 0, has_scale = room > ROWS_LEAST;
	size_t top = 0;

	if (room < ROWS_LEAST - 1 || c->cols < COLS_LEAST)
		return;
	below = legend_rows(&legend, &m, room);
	m.plot =
		plot_fit(all->x, all->y, all->n, room - below - has_scale, c->cols - 2);
	draw_sources(&m);
	draw_traps(&m);
	if (has_scale)
		draw_scale(&m, f->last - below);
	reader_draw(c, f->last - below + 1, f->last, &top, legend.items, legend.n);
	prose_free(&legend);
}

static void list_near(const struct hotspots_page *p, struct buf *out)
{
	const struct hot_trap *t = trap_of(p, p->trap);

	for (size_t i = 0; t->near && i < p->view->n_traps; i++)
		if (t->near[i] && i != p->trap)
			buf_addf(out, "%s%s", out->n ? ", " : "", trap_of(p, i)->label);
}

static void say_catch(
	const struct hot_trap *t, int cols, char status[static SPOTS_STATUS])
{
	const char *border = t->is_border ? _(", border") : "";

	if (t->digit < 0)
		snprintf(status, SPOTS_STATUS, _("%s%s: not read"), t->name, border);
	else if (cols >= FRAME_WIDE)
		snprintf(status, SPOTS_STATUS,
			_("%s%s: %s a week, %lld moths in %lld nights"), t->name,
			border, t->text, (long long)t->catch.moths,
			(long long)t->catch.nights);
	else
		snprintf(status, SPOTS_STATUS, _("%s: %s a week, %lld in %lld nights"),
			t->label, t->text, (long long)t->catch.moths,
			(long long)t->catch.nights);
}

void hotspots_map_say(const struct hotspots_page *p, int cols,
	char status[static SPOTS_STATUS], struct message *m)
{
	const struct hot_trap *t = trap_of(p, p->trap);
	struct buf near = { 0 };

	say_catch(t, cols, status);
	list_near(p, &near);
	if (!m->text[0] && !t->is_alike)
		message_set(m, false,
			_("It is not compared: another lure or condition, or read for "
			  "too few nights."));
	else if (!m->text[0] && near.n)
		message_set(m, false, _("near it, within %.0f m: %s"), p->view->band,
			near.text);
	buf_free(&near);
}
