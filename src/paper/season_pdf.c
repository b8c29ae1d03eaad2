/* season_pdf.c - the season page as a PDF: a first page that stands alone, then block
 * by block, where it is hot, where the numbers come from. */
#include "ruled.h"
#include "season_parts.h"
#include "season_words.h"

#include "base/words.h"

enum { SOURCES_LAST = 3 }; /* that stay with the cautions */

static const double day_w = 18;

void season_set(struct leaf *l, double x, const struct pdf_type *type, struct buf *text)
{
	leaf_words(l, x, type, text->text);
	buf_clear(text);
}

void season_named(struct leaf *l, const char *name, const char *text)
{
	struct buf line = { 0 };

	if (!*text)
		return;
	buf_addf(&line, "%s: %s", name, text);
	leaf_words(l, 0, &leaf_small, line.text);
	buf_free(&line);
}

/* What is said of all blocks together. */
static void set_pest(struct leaf *l, const struct season_pest *s)
{
	const double lines = s->n > 1 ? (double)(s->all.n_rows + 5) : 2;

	leaf_heading(l, s->name, lines * ruled_row_height(l));
	season_named(l, _("suggested"), s->all.biofix.suggested);
	season_named(l, _("earlier seasons"), s->all.biofix.earlier);
	if (s->n <= 1)
		return;
	leaf_words(l, 0, &leaf_small_bold, _("All blocks together"));
	season_flights(l, &s->all);
}

/* The first page does not tell at its foot what the marks mean. */
static void set_charts(struct leaf *l, const struct season_page *p)
{
	if (p->n_charts > 0 && l->page == 1)
		leaf_need(l, pdf_page(l->pdf).h);
	for (size_t i = 0; i < p->n_charts; i++)
		season_chart_part(l, p, &p->charts[i]);
}

static void set_act(struct leaf *l, const struct season_act *a)
{
	const struct pdf_type type = { .points = leaf_small_bold.points,
		.bold = a->tone == TONE_OVER };
	struct buf text = { 0 };

	season_say_act(a, &text);
	leaf_need(l, pdf_text_height(l->pdf, l->body.w - day_w, &type, text.text));
	pdf_text(l->pdf, (struct pdf_box){ l->body.x, l->y, day_w, 0 }, &type,
		a->day_text);
	season_set(l, day_w, &type, &text);
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

static double cautions_height(const struct leaf *l, const struct season_form *form)
{
	double h = 0;

	for (const char *const *c = form->cautions; *c; c++)
		h += pdf_text_height(l->pdf, l->body.w, &leaf_small, *c) + 1;
	return h;
}

static double source_height(const struct leaf *l, const struct season_page *p, size_t i)
{
	struct buf text = { 0 };

	season_say_source(p, i, &text);
	double h = pdf_text_height(l->pdf, l->body.w, &leaf_small, text.text) + 1;
	buf_free(&text);
	return h;
}

/* The last of them stay with the cautions, which have no page of their own then. */
static void keep_together(struct leaf *l, const struct season_page *p, size_t i,
	const struct season_form *form)
{
	double h = cautions_height(l, form) + 2 * ruled_row_height(l);

	if (i + SOURCES_LAST != p->n_sources)
		return;
	for (; i < p->n_sources; i++)
		h += source_height(l, p, i);
	leaf_need(l, h);
}

static void set_sources(
	struct leaf *l, const struct season_page *p, const struct season_form *form)
{
	struct buf text = { 0 };

	if (p->n_sources == 0)
		return;
	leaf_heading(l, _("Sources"), 12);
	leaf_words(l, 0, &leaf_small, season_as_of_now());
	for (size_t i = 0; i < p->n_sources; i++) {
		keep_together(l, p, i, form);
		season_say_source(p, i, &text);
		season_set(l, 0, &leaf_small, &text);
	}
	buf_free(&text);
}

/* Together on one page. */
static void set_cautions(struct leaf *l, const struct season_form *form)
{
	leaf_heading(l, _("Cautions"), cautions_height(l, form));
	for (const char *const *c = form->cautions; *c; c++)
		leaf_words(l, 0, &leaf_small, *c);
}

/* What the marks mean. */
static const char legend[] = N_(
	"Bars: mean of the block's traps, moths a trap and week; open at the top with "
	"+: at least (a full card, counts not settled); thick foot: counted; ?: nobody "
	"looked. Dots: single traps, triangles at least; over the top: higher than the "
	"chart, with the number where there is room. Dashed: last season, a ring over "
	"the top. Level lines: thresholds, of a single trap solid, of the block's mean "
	"broken. "
	"Dotted upright: biofix; thick above it: the days that the traps put it in. "
	"P\u00a0peak of a flight, L\u00a0lure changed, T\u00a0treated, Tb\u00a0border "
	"alone treated, H\u00a0picked.");

static void set_hot(struct leaf *l, const struct season_page *p)
{
	bool is_any = false;

	for (size_t i = 0; i < p->n_pests; i++) {
		if (!season_is_compared(&p->pests[i].hot))
			continue;
		season_hot(l, &p->pests[i]);
		is_any = true;
	}
	if (is_any)
		leaf_words(l, 0, &leaf_small, season_hot_caution());
}

static void draw_farm(
	struct pdf *pdf, const struct season_page *p, const struct season_form *form)
{
	struct buf title = { 0 }, below = { 0 };
	struct leaf l;

	season_say_title(p, &title);
	season_say_days(p, form, &below);
	const struct leaf_form leaf = { .title = title.text,
		.below = below.text,
		.legend = p->from != DAY_NONE ? _(legend) : "",
		.caution = form->caution_short };
	struct leaf_form no_plots = leaf;

	no_plots.legend = "";
	leaf_begin(&l, pdf, &no_plots);
	season_glance(&l, p);
	set_acts(&l, p);
	l.form = &leaf;
	for (size_t i = 0; i < p->n_pests; i++)
		set_pest(&l, &p->pests[i]);
	set_charts(&l, p);
	l.form = &no_plots;
	set_hot(&l, p);
	set_sources(&l, p, form);
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
