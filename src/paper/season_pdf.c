/* The season page as a PDF: at a glance, pest by pest, where it is hot, what was done,
 * where the numbers come from. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

static const double day_w = 22, apart_w = 12, above_name = 1;

void season_set(struct leaf *l, double x, const struct pdf_type *type, struct buf *text)
{
	leaf_words(l, x, type, text->text);
	buf_clear(text);
}

static bool is_number(size_t column)
{
	return column == 2 || column == 3 || column == 4 || column >= 6;
}

static double width(const struct ruled *r)
{
	double w = -r->gap;

	for (size_t i = 0; i < r->n; i++)
		w += r->column[i].w + r->gap;
	return w;
}

/* True if the blocks' names stand above their rows, since beside them there is no
 * room. */
static bool lay_out_glance(
	struct ruled *r, const struct leaf *l, const struct season_page *p)
{
	const char *cells[SEASON_GLANCE];

	season_glance_cells(NULL, cells);
	for (size_t i = 0; i < SEASON_GLANCE; i++)
		ruled_column(r, cells[i], is_number(i) ? PDF_RIGHT : PDF_LEFT);
	for (size_t i = 0; i < p->n_charts; i++) {
		season_glance_cells(&p->charts[i], cells);
		ruled_note(r, l->pdf, cells);
	}
	bool is_apart = width(r) > l->body.w;
	if (is_apart)
		r->column[0].w = apart_w;
	ruled_fit(r, l);
	return is_apart;
}

static void set_glance(struct leaf *l, const struct season_page *p)
{
	const char *cells[SEASON_GLANCE];
	struct ruled r = { 0 };
	bool is_apart = lay_out_glance(&r, l, p);

	ruled_begin(&r, l, 2 * ruled_row_height(l));
	for (size_t i = 0; i < p->n_charts; i++) {
		bool is_over = p->charts[i].n_alerts > 0;
		season_glance_cells(&p->charts[i], cells);
		leaf_need(l, (is_apart ? 2.5 : 1) * ruled_row_height(l));
		if (is_apart) {
			leaf_gap(l, above_name);
			leaf_words(l, 0, is_over ? &leaf_bold : &leaf_plain, cells[0]);
		}
		if (is_apart)
			cells[0] = "";
		ruled_row(&r, l, is_over, cells);
	}
	ruled_end(l);
}

static void set_head(struct leaf *l, const struct season_page *p)
{
	struct buf text = { 0 };

	leaf_words(l, 0, &leaf_bold, p->says);
	if (p->n_charts > 0)
		set_glance(l, p);
	leaf_gap(l, 1);
	for (size_t i = 0; i < p->n_pests; i++) {
		season_say_hot(&p->pests[i], &text);
		season_set(l, 0, &leaf_plain, &text);
	}
	leaf_words(l, 0, &leaf_plain, p->bare ? p->bare : "");
	buf_free(&text);
}

void season_named(struct leaf *l, const char *name, const char *text)
{
	struct buf line = { 0 };

	if (!*text)
		return;
	buf_addf(&line, "%s: %s", name, text);
	leaf_words(l, 0, &leaf_plain, line.text);
	buf_free(&line);
}

static void set_pest(
	struct leaf *l, const struct season_page *p, const struct season_pest *s)
{
	leaf_heading(l, s->name, season_plot_height);
	leaf_words(l, 0, &leaf_plain, s->all.biofix.set);
	season_named(l, _("suggested"), s->all.biofix.suggested);
	season_named(l, _("earlier seasons"), s->all.biofix.earlier);
	if (s->all.heat.state != HEAT_NO_BIOFIX)
		season_named(l, _("since biofix"), s->all.heat_text);
	if (s->n > 1) {
		leaf_words(l, 0, &leaf_bold, _("All blocks together"));
		season_flights(l, &s->all);
	}
	for (size_t i = 0; i < s->n; i++)
		season_chart_part(l, p, &p->charts[s->first + i]);
}

static void set_act(struct leaf *l, const struct season_act *a)
{
	const struct pdf_type *type = a->tone == TONE_OVER ? &leaf_bold : &leaf_plain;
	struct buf text = { 0 };

	season_say_act(a, &text);
	leaf_need(l, pdf_text_height(l->pdf, l->body.w - day_w, type, text.text));
	pdf_text(l->pdf, (struct pdf_box){ l->body.x, l->y, day_w, 0 }, type,
		a->day_text);
	season_set(l, day_w, type, &text);
	buf_free(&text);
}

static void set_acts(struct leaf *l, const struct season_page *p)
{
	leaf_heading(l, _("What was done"), 8);
	for (size_t i = 0; i < p->n_acts; i++)
		set_act(l, &p->acts[i]);
	if (p->n_acts == 0)
		leaf_words(l, 0, &leaf_plain, season_no_acts());
}

static void set_sources(struct leaf *l, const struct season_page *p)
{
	struct buf text = { 0 };

	if (p->n_sources == 0)
		return;
	leaf_heading(l, _("Sources"), 12);
	leaf_words(l, 0, &leaf_small, season_as_of_now());
	for (size_t i = 0; i < p->n_sources; i++) {
		season_say_source(p, i, &text);
		season_set(l, 0, &leaf_small, &text);
	}
	buf_free(&text);
}

/* Together on one page. */
static void set_cautions(struct leaf *l, const struct season_form *form)
{
	const char *const *c;
	double h = 0;

	for (c = form->cautions; *c; c++)
		h += pdf_text_height(l->pdf, l->body.w, &leaf_plain, *c) + 1;
	leaf_heading(l, _("Cautions"), h);
	for (c = form->cautions; *c; c++)
		leaf_words(l, 0, &leaf_plain, *c);
}

/* What the marks mean, at the foot of each page. */
static const char legend[] = N_(
	"Bars: mean of the block's traps, moths a trap and week; open at the top with +: at "
	"least (a full card); thick foot: counted; ?: nobody looked. Dots: single traps, "
	"triangles at least, with a number: higher than the chart. Dashed: last season. "
	"Level lines: thresholds, of a single trap solid, of the block's mean broken. "
	"Dotted upright: biofix; thick above it: the days that the traps put it in. P "
	"peak of a flight, L lure changed, T treated, Tb border alone treated, H picked.");

static void draw_farm(
	struct pdf *pdf, const struct season_page *p, const struct season_form *form)
{
	struct buf title = { 0 }, below = { 0 };
	struct leaf l;

	season_say_title(p, &title);
	season_say_days(p, form, &below);
	const struct leaf_form leaf = { .title = title.text,
		.below = below.text,
		.legend = p->n_charts > 0 ? _(legend) : "",
		.caution = form->caution_short };
	leaf_begin(&l, pdf, &leaf);
	set_head(&l, p);
	for (size_t i = 0; i < p->n_pests; i++)
		set_pest(&l, p, &p->pests[i]);
	for (size_t i = 0; i < p->n_pests; i++)
		season_hot(&l, p, &p->pests[i]);
	set_acts(&l, p);
	set_sources(&l, p);
	set_cautions(&l, form);
	buf_free(&title);
	buf_free(&below);
}

/* What is drawn, and how. */
struct drawing {
	const struct season_set *set;
	const struct season_form *form;
};

static void draw(struct pdf *pdf, const void *what)
{
	const struct drawing *d = what;

	for (size_t i = 0; i < d->set->n; i++)
		draw_farm(pdf, &d->set->items[i], d->form);
}

bool paper_seasons_pdf(struct season_set *set, const struct season_form *form,
	struct buf *out, struct err *e)
{
	const struct drawing drawing = { set, form };
	struct buf title = { 0 };

	if (set->n == 1)
		season_say_title(set->items, &title);
	else
		buf_add(&title, _("Season pages"));
	struct pdf_job job = { .title = title.text,
		.author = "",
		.day = set->day,
		.paper = form->paper,
		.draw = draw,
		.what = &drawing };
	bool ok = pdf_make(&job, out, e);
	set->without_font = job.without_font;
	buf_free(&title);
	return ok;
}
