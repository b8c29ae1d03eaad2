/* hotspots_text.c - texts of the Hot spots page: the numbers behind a row, the
 * sources. */
#include "hotspots_parts.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/list.h"

#include <math.h>

static void read_prose(struct hotspots_page *p, struct canvas *c, const struct frame *f,
	struct prose *text)
{
	size_t rows = f->last < f->first ? 0 : (size_t)(f->last - f->first + 1);
	size_t lines =
		reader_draw(c, f->first, f->last, &p->text_top, text->items, text->n);

	p->rows = (int)rows;
	frame_more(c, f, p->text_top > 0, lines > p->text_top + rows);
	canvas_cursor(c, f->first, 0);
	prose_free(text);
}

void hotspots_add_rest(struct prose *to, const struct hot_view *v)
{
	prose_add(to, INK_UNSURE, 0, v->left_out);
	prose_add(to, INK_PLAIN, 0, v->clumping);
	prose_add(to, INK_UNSURE, 0, v->missing);
}

static bool is_of_block(const struct hot_trap *t, const struct hot_row *r)
{
	return (r->block == 0 || t->block == r->block) && !t->is_outside;
}

/* True if trap k is among those that the row is about. */
static bool is_behind(const struct hot_view *v, const struct hot_row *r, size_t k)
{
	const struct hot_trap *t = &v->traps[k];

	if (!t->is_alike)
		return false;
	if (r->what == HOT_OF_BLOCK)
		return is_of_block(t, r);
	if (r->what == HOT_OF_BORDER)
		return is_of_block(t, r) && t->is_border;
	if (t->trap == r->trap)
		return true;
	for (size_t i = 0; r->what == HOT_OF_NEAR && i < v->n_traps; i++)
		if (v->traps[i].trap == r->trap)
			return v->traps[i].near && v->traps[i].near[k];
	return false;
}

/* Of neighbourhoods: a figure that is widely used stands beside the test. */
static void add_gi_star(struct prose *to, const struct hot_row *r)
{
	struct buf b = { 0 };

	if (isnan(r->gi_star))
		return;
	words_addf(&b, _("Gi* of Getis and Ord: %.2f."), text_hundredths(r->gi_star));
	prose_take(to, INK_PLAIN, 2, &b);
}

static void add_trap(struct prose *to, const struct hot_trap *t)
{
	struct buf b = { 0 };

	buf_addf(&b, _("%s%s: %lld moths in %lld nights, %s a week"), t->name,
		t->is_border ? _(", border") : "", (long long)t->catch.moths,
		(long long)t->catch.nights, t->text);
	prose_take(to, INK_PLAIN, 2, &b);
}

static void add_traps(
	struct prose *to, const struct hot_view *v, const struct hot_row *r)
{
	prose_gap(to);
	prose_add(to, INK_TITLE, 0, _("Its traps"));
	for (size_t k = 0; k < v->n_traps; k++)
		if (is_behind(v, r, k))
			add_trap(to, &v->traps[k]);
}

void hotspots_numbers_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	const struct hot_view *v = p->view;
	const struct hot_row *r = &v->rows[p->picked];
	struct prose text = { 0 };
	struct buf b = { 0 };

	buf_addf(&b, "%s: %s", r->name, r->grade_text);
	prose_take(&text, INK_TITLE, 0, &b);
	prose_add(&text, INK_PLAIN, 0, r->says);
	prose_add(&text, INK_PLAIN, 0, r->earlier);
	prose_gap(&text);
	prose_add(&text, INK_TITLE, 0, _("Behind it"));
	prose_add(&text, INK_PLAIN, 2, r->numbers);
	add_gi_star(&text, r);
	prose_add(&text, INK_PLAIN, 2, r->power);
	if (r->next[0]) {
		prose_gap(&text);
		prose_add(&text, INK_TITLE, 0, _("What next"));
		prose_add(&text, INK_PLAIN, 2, r->next);
	}
	add_traps(&text, v, r);
	prose_gap(&text);
	prose_add(&text, INK_PLAIN, 0, v->says);
	hotspots_add_rest(&text, v);
	prose_add(&text, INK_PLAIN, 0,
		_("A hot spot says where to look, not what to do: ask the extension "
		  "service; the product label is the law."));
	read_prose(p, c, f, &text);
}

static void add_source(struct prose *to, const struct hot_source *s)
{
	struct buf b = { 0 };

	if (s->letter)
		buf_addf(&b, "%c  ", s->letter);
	buf_addf(&b, "%s (%s)", s->name, _(source_kind_word(s->kind)));
	prose_take(to, INK_TITLE, 0, &b);
	prose_add(to, INK_PLAIN, 2, s->says);
	prose_add(to, INK_PLAIN, 2, s->numbers);
	prose_add(to, INK_QUIET, 2, s->note);
	prose_gap(to);
}

void hotspots_sources_draw(
	struct hotspots_page *p, struct canvas *c, const struct frame *f)
{
	const struct hot_view *v = p->view;
	struct prose text = { 0 };

	for (size_t i = 0; i < v->n_sources; i++)
		add_source(&text, &v->sources[i]);
	if (v->n_sources == 0) {
		prose_add(&text, INK_TITLE, 0,
			_("No source of this farm is in the book."));
		prose_add(&text, INK_PLAIN, 0,
			_("An abandoned orchard, wild trees, a pile of bins: put in "
			  "those near this farm, with or without a position. b opens "
			  "their list, which the Book page has under sources; n there "
			  "is a new one. Or read a file of places in:"));
		prose_add(&text, INK_TITLE, 4, "mothtally import places FILE");
		prose_gap(&text);
	} else {
		prose_add(&text, INK_QUIET, 0,
			_("b opens their list in the book, to put one in or correct "
			  "it."));
	}
	prose_add(&text, INK_UNSURE, 0, v->missing);
	read_prose(p, c, f, &text);
}
