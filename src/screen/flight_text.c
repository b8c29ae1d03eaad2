/* flight_text.c - what stands below the chart: biofix, flights, what comes next. */
#include "flight_parts.h"

#include "base/words.h"
#include "prose.h"
#include "screen/list.h"

#include <string.h>

static void add_labelled(
	struct prose *to, enum ink ink, const char *label, const char *text)
{
	struct buf b = { 0 };

	if (text[0])
		buf_addf(&b, "%s %s", label, text);
	prose_take(to, ink, 2, &b);
}

static void add_biofix(struct prose *to, const struct flight_view *v)
{
	const struct flight_biofix *f = &v->biofix;

	if (v->ask.farm == 0) {
		prose_add(to, INK_PLAIN, 0,
			_("Biofix and degree-days are a farm's: f picks one."));
		return;
	}
	prose_add(to, f->is_set ? INK_TITLE : INK_UNSURE, 0, f->set);
	add_labelled(to, INK_PLAIN, _("suggested:"), f->suggested);
	add_labelled(to, INK_PLAIN, _("earlier seasons:"), f->earlier);
	if (v->heat.state != HEAT_NO_BIOFIX) /* that is said already */
		prose_add(to, v->heat.state == HEAT_SUM ? INK_PLAIN : INK_UNSURE, 0,
			v->heat_text);
}

/* The rule, the visits and the source that the suggestion rests on. */
static void add_evidence(struct prose *to, const struct flight_biofix *f)
{
	const struct biofix *s = &f->suggestion;
	struct buf b = { 0 };

	if (!f->suggested[0] || !f->rule)
		return;
	prose_add(to, INK_TITLE, 0, _("Behind the suggested biofix"));
	buf_addf(&b, _("rule: %s"), _(f->rule->said));
	if (f->rule->where[0])
		buf_addf(&b, " (%s)", _(f->rule->where));
	prose_take(to, INK_PLAIN, 2, &b);
	if (s->n_seen + s->n_unlisted > 0)
		buf_addf(&b, _("visits that it rests on: %zu. "),
			s->n_seen + s->n_unlisted);
	if (s->read_nights > 0)
		buf_addf(
			&b, _("Nights between two readings: %d."), (int)s->read_nights);
	prose_take(to, INK_PLAIN, 2, &b);
	if (s->or_earlier)
		prose_add(to, INK_UNSURE, 2,
			_("The flight may have begun before anyone could see it."));
	add_labelled(to, INK_QUIET, _("source:"), f->rule->source);
}

enum { NAME, FIRST, PEAK, RATE, D10, D50, D90, MOTHS, HEAT, COLUMNS };

static const struct list_column column[COLUMNS] = {
	[NAME] = { N_("flights"), .least = 7, .whole = COLUMN_NUMBER },
	[FIRST] = { N_("first"), .drop = 6, .whole = COLUMN_NUMBER },
	[PEAK] = { N_("peak week"), .whole = COLUMN_NUMBER },
	[RATE] = { N_("a week"), .drop = 4, .whole = COLUMN_NUMBER, .right = true },
	[D10] = { N_("10 %"), .drop = 1, .whole = COLUMN_NUMBER },
	[D50] = { N_("50 %"), .whole = COLUMN_NUMBER },
	[D90] = { N_("90 %"), .drop = 2, .whole = COLUMN_NUMBER },
	[MOTHS] = { N_("moths"), .drop = 3, .whole = COLUMN_NUMBER, .right = true },
	[HEAT] = { N_("at 50 %"), .drop = 5, .whole = COLUMN_NUMBER, .right = true },
};

static void cells_of(const struct flight_row *r, const char *cell[static COLUMNS])
{
	cell[NAME] = r->name;
	cell[FIRST] = r->first;
	cell[PEAK] = r->peak;
	cell[RATE] = r->peak_rate;
	cell[D10] = r->d10;
	cell[D50] = r->d50;
	cell[D90] = r->d90;
	cell[MOTHS] = r->moths;
	cell[HEAT] = r->dd50;
}

static void add_cells(struct prose *to, const struct columns *s, enum ink ink,
	const char *const cell[static COLUMNS])
{
	struct buf b = { 0 };
	int at = 0;

	for (size_t i = 0; i < COLUMNS; i++) {
		int width = s->width[i];

		if (width == 0)
			continue;
		buf_add_field(&b, "", s->at[i] - at);
		buf_add_field(&b, cell[i], s->col[i].right ? -width : width);
		at = s->at[i] + width;
	}
	while (b.n > 0 && b.text[b.n - 1] == ' ')
		b.text[--b.n] = '\0';
	prose_take(to, ink, 0, &b);
}

static void fit(struct columns *s, const struct flight_view *v, int cols)
{
	const char *cell[COLUMNS];

	*s = (struct columns){ .col = column, .n = COLUMNS };
	for (size_t i = 0; i < v->n_rows; i++) {
		cells_of(&v->rows[i], cell);
		for (size_t k = 0; k < COLUMNS; k++)
			columns_want(s, k, cell[k]);
	}
	for (size_t k = 0; k < COLUMNS; k++)
		if (s->want[k] > 0)
			columns_want(s, k, _(column[k].head));
	columns_fit(s, 0, cols - 2);
}

static void add_flights(struct prose *to, const struct flight_view *v, int cols)
{
	const char *cell[COLUMNS];
	struct columns s;

	if (v->n_rows == 0)
		return;
	fit(&s, v, cols);
	for (size_t i = 0; i < COLUMNS; i++)
		cell[i] = _(column[i].head);
	add_cells(to, &s, INK_TITLE, cell);
	for (size_t i = 0; i < v->n_rows; i++) {
		cells_of(&v->rows[i], cell);
		add_cells(to, &s, INK_PLAIN, cell);
		prose_add(to, INK_UNSURE, 2, v->rows[i].flags);
	}
}

/* Events that have passed, or have not. A source is said once, after the last of the
 * events in a row that have it. */
static void add_events(
	struct prose *to, const struct events *ev, bool passed, const char *head)
{
	const struct event *last = NULL;

	for (size_t i = 0; i < ev->n; i++) {
		const struct event *e = &ev->items[i];
		struct buf b = { 0 };

		if (e->passed != passed)
			continue;
		if (!last)
			prose_add(to, INK_TITLE, 0, head);
		else if (strcmp(last->source, e->source) != 0)
			prose_add(to, INK_QUIET, 4, last->source);
		buf_addf(&b, "%s, %s: %s", e->text, e->at, e->when);
		prose_take(to, passed ? INK_QUIET : INK_PLAIN, 2, &b);
		last = e;
	}
	if (last)
		prose_add(to, INK_QUIET, 4, last->source);
}

static void add_next(struct prose *to, const struct flight_view *v)
{
	add_events(to, &v->events, false, _("What comes next"));
	add_events(to, &v->events, true, _("Passed"));
	prose_add(to, INK_PLAIN, 0, v->events.none);
	if (v->events.n > 0)
		prose_add(to, INK_PLAIN, 0,
			_("These are published for their own places. Timing is local: "
			  "ask the extension service; the product label is the law."));
}

/* Marks of a week, a bit each. */
static unsigned marks_of(const struct flight_view *v, int week)
{
	unsigned bits = 0;

	for (size_t i = 0; i < v->n_marks; i++)
		if (v->marks[i].week == week)
			bits |= 1U << v->marks[i].kind;
	return bits;
}

/* Weeks with several marks: a narrow chart has room for one letter. */
static void add_marks(struct prose *to, const struct flight_view *v)
{
	static const char *const word[] = { N_("biofix"), N_("peak"), N_("lure change"),
		N_("treatment") };

	for (int week = 0; week < FLIGHT_WEEKS_MAX; week++) {
		unsigned bits = marks_of(v, week);
		char day[DAY_TEXT_SIZE];
		struct buf b = { 0 };

		if ((bits & (bits - 1)) == 0)
			continue;
		day_short(v->now.first_day + 7 * week, day, sizeof day);
		buf_addf(&b, _("* week from %s:"), day);
		for (unsigned kind = 0; kind < sizeof word / sizeof *word; kind++)
			if (bits & 1U << kind)
				buf_addf(&b, " %s,", _(word[kind]));
		b.text[b.n - 1] = '\0';
		prose_take(to, INK_QUIET, 0, &b);
	}
}

bool flight_text_draw(struct flight_page *p, struct canvas *c, int first, int last)
{
	const struct flight_view *v = p->view;
	struct prose text = { 0 };
	size_t lines = 0;

	p->rows = last < first ? 0 : (size_t)(last - first + 1);
	prose_add(&text, INK_UNSURE, 0, v->says);
	add_biofix(&text, v);
	add_flights(&text, v, c->cols);
	add_next(&text, v);
	add_evidence(&text, &v->biofix);
	add_marks(&text, v);
	lines = reader_draw(c, first, last, &p->top, text.items, text.n);
	prose_free(&text);
	return lines > p->top + p->rows;
}
