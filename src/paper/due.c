#include "paper/due.h"

#include "base/words.h"
#include "grid.h"
#include "paper/ascii.h"

enum { COL_TRAP, COL_BLOCK, COL_WHAT, COL_KIND, COL_DUE, COL_STATE, COL_COUNT };

struct cells {
	char due[DAY_TEXT_SIZE];
	const char *text[COL_COUNT];
};

static void cells_of(const struct due_item *item, struct cells *c)
{
	day_short(item->due, c->due, sizeof c->due);
	c->text[COL_TRAP] = item->label;
	c->text[COL_BLOCK] = item->block_name;
	c->text[COL_WHAT] = item->is_lure ? _("lure") : _("card");
	c->text[COL_KIND] = words_shipped(item->kind_name);
	c->text[COL_DUE] = c->due;
	c->text[COL_STATE] = item->state_text;
}

/* Some of its traps were visited in the present run, some were not. */
static bool is_under_way(const struct today_run *r)
{
	return r->open > 0 && r->open < r->traps;
}

static void add_run(const struct today_run *r, int cols, struct buf *out)
{
	struct buf text = { 0 };
	char next[DAY_TEXT_SIZE];

	day_short(r->next_run, next, sizeof next);
	buf_addf(&text, "%s: %s, ", r->name, r->traps_text);
	if (is_under_way(r))
		buf_addf(&text, _("%s, under way"), r->last_text);
	else if (r->due)
		buf_addf(&text, _("%s, due now (%s)"), r->last_text, next);
	else
		buf_addf(&text, _("next run %s"), next);
	paper_wrap(out, text.text, 2, cols);
	paper_wrap(out, r->barred, 4, cols);
	buf_free(&text);
}

static void add_runs(const struct due *d, int cols, struct buf *out)
{
	buf_addf(out, "\n%s\n", _("Runs"));
	for (size_t i = 0; i < d->today.n_runs; i++)
		add_run(&d->today.runs[i], cols, out);
	if (d->today.n_runs == 0)
		paper_wrap(out, _("no trap hangs"), 2, cols);
}

static void add_clocks(const struct due *d, int cols, struct buf *out)
{
	if (d->clocks.n == 0)
		return;
	buf_addf(out, "\n%s\n", _("Entry and picks"));
	for (size_t i = 0; i < d->clocks.n; i++)
		paper_wrap(out, d->clocks.items[i].text, 2, cols);
	paper_wrap(out, d->clocks.caution, 2, cols);
}

/* "2 lures CM 1 mg, 1 card delta liner; 1 lure not known" of a farm, 0: of all. */
static void add_kinds(
	const struct due *d, int64_t farm, const char *unknown, struct buf *text)
{
	const struct due_bring *brings = farm ? d->brings : d->totals;
	size_t n = farm ? d->n_brings : d->n_totals;
	const char *comma = "";

	for (size_t i = 0; i < n; i++) {
		const struct due_bring *b = &brings[i];

		if (b->farm != farm)
			continue;
		unsigned long many = (unsigned long)b->n;
		buf_addf(text,
			b->is_lure ? ngettext("%s%d lure %s", "%s%d lures %s", many)
				   : ngettext("%s%d card %s", "%s%d cards %s", many),
			comma, b->n, words_shipped(b->kind_name));
		comma = ", ";
	}
	if (!*comma)
		buf_add(text, *unknown ? _("nothing known") : _("nothing"));
	buf_add(text, unknown);
}

static void add_bring(
	const struct due *d, const struct today_run *r, int cols, struct buf *out)
{
	struct buf text = { 0 };

	buf_addf(
		&text, is_under_way(r) ? _("%s, rest of this run: ") : "%s: ", r->name);
	add_kinds(d, r->farm, r->unknown_text, &text);
	paper_wrap(out, text.text, 2, cols);
	buf_free(&text);
}

static void add_brings(const struct due *d, int cols, struct buf *out)
{
	struct buf text = { 0 };

	if (d->today.n_runs == 0)
		return;
	buf_addf(out, "\n%s\n", _("Bring on the next run"));
	for (size_t i = 0; i < d->today.n_runs; i++)
		add_bring(d, &d->today.runs[i], cols, out);
	if (d->today.n_runs < 2)
		return;
	buf_add(&text, _("all farms: "));
	add_kinds(d, 0, d->unknown_text, &text);
	paper_wrap(out, text.text, 2, cols);
	buf_free(&text);
}

static void add_shelf(const struct shelf *s, int cols, struct buf *out)
{
	struct buf text = { 0 };

	if (!s->is_kept)
		return;
	buf_addf(out, "\n%s\n", _("On the shelf"));
	for (size_t i = 0; i < s->n; i++) {
		const struct shelf_row *r = &s->items[i];

		if (r->left < 0)
			continue;
		buf_clear(&text);
		buf_addf(&text, r->is_lure ? _("lure %s: %s") : _("card %s: %s"),
			r->name, r->text);
		paper_wrap(out, text.text, 2, cols);
	}
	buf_free(&text);
}

static void add_items(const struct due *d, int cols, struct buf *out)
{
	struct grid g = { 0 };
	struct cells c;
	int64_t farm = 0;

	grid_column(&g, _("trap"), GRID_TEXT, 5);
	grid_column(&g, _("block"), GRID_TEXT, 5);
	grid_column(&g, "", GRID_MARK, 4);
	grid_column(&g, _("kind"), GRID_TEXT, 5);
	grid_column(&g, _("due"), GRID_MARK, 10);
	grid_column(&g, _("state"), GRID_TEXT, 5);
	for (size_t i = 0; i < d->n; i++) {
		cells_of(&d->items[i], &c);
		grid_note(&g, c.text);
	}
	grid_fit(&g, cols - 2);
	for (size_t i = 0; i < d->n; i++) {
		if (d->items[i].farm != farm) {
			buf_add(out, i ? "\n  " : "  ");
			paper_cell(out, d->items[i].farm_name, cols - 2);
			grid_end_line(out);
			buf_add(out, "  ");
			grid_line(&g, NULL, out);
		}
		farm = d->items[i].farm;
		cells_of(&d->items[i], &c);
		buf_add(out, "  ");
		grid_line(&g, c.text, out);
		paper_wrap(out, d->items[i].barred, 4, cols);
	}
}

static void add_all(
	const struct due *d, const struct shelf *shelf, int cols, struct buf *out)
{
	struct buf title = { 0 };

	buf_addf(&title, _("Due  %s"), d->today.title);
	paper_wrap(out, title.text, 0, cols);
	buf_free(&title);
	add_runs(d, cols, out);
	add_clocks(d, cols, out);
	add_brings(d, cols, out);
	buf_addf(out, "\n%s\n", _("Lures and cards"));
	if (d->n)
		add_items(d, cols, out);
	else
		paper_wrap(out,
			d->has_unknown ? _("none is known to be due by the next run")
				       : _("none is due by the next run"),
			2, cols);
	add_shelf(shelf, cols, out);
}

void paper_due(const struct due *d, const struct shelf *shelf, int cols, bool utf8,
	struct buf *out)
{
	struct buf text = { 0 };

	add_all(d, shelf, cols, &text);
	if (utf8)
		buf_add(out, text.text);
	else
		paper_ascii(text.text, out);
	buf_free(&text);
}
