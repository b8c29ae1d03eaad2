#include "screen/week_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/week_rows.h"

#include <stdio.h>
#include <string.h>

enum {
	WEEK_WHY = LIST_OTHERS,
	WEEK_NEXT_FARM,
	WEEK_NEXT_PEST,
	WEEK_ONLY_OPEN,
	WEEK_NARROW,
	WEEK_RUN,
	WEEK_FLIGHT,
	WEEK_DIARY,
	WEEK_SPOTS,
	WEEK_BACK,
	WEEK_HELP,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, WEEK_WHY, "Enter", N_("why"),
		N_("what stands behind the verdict: visits, nights, rule, source, "
		   "doubts; on a farm: that farm only, again all") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, WEEK_NEXT_FARM, "f", N_("farm"),
		N_("the next farm only; after the last one all farms") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, WEEK_NEXT_PEST, "p", N_("pest"),
		N_("the next pest only; after the last one all pests") },
	{ { INPUT_CHAR, 'v' }, { INPUT_NONE, 0 }, WEEK_ONLY_OPEN, "v", N_("attention"),
		N_("only what is over, unknown, near or in doubt (near?, under?); again "
		   "shows all") },
	{ { INPUT_CHAR, 'l' }, { INPUT_NONE, 0 }, WEEK_FLIGHT, "l", N_("flight"),
		N_("the flight of the picked farm, block or trap, and what comes next") },
	{ { INPUT_CHAR, 'h' }, { INPUT_NONE, 0 }, WEEK_SPOTS, "h", N_("hot spots"),
		N_("which block or edge of the picked farm is hot, on a map") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, WEEK_DIARY, "d", N_("diary"),
		N_("every visit of the picked trap, to be read and corrected; of a "
		   "block its season: catches over, treatments, picks, checks") },
	{ { INPUT_CHAR, 'r' }, { INPUT_NONE, 0 }, WEEK_RUN, "r", N_("run"),
		N_("the run of the picked farm") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, WEEK_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, WEEK_NARROW, "/", N_("look for"),
		N_("only farms, blocks and traps that contain what is typed next; Esc "
		   "ends it") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, WEEK_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows week_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *week_page_notes(void)
{
	static const char *const notes[] = {
		N_("Beside a name: b is a border trap, d a block under mating "
		   "disruption."),
		N_("catch: of a trap a week, of a block the mean over the traps that "
		   "were read; high: the block's highest trap; read: how many "
		   "nights the catch took, or how many of the traps were read."),
		N_("Flight line: one mark a week, the latest at the right; the highest "
		   "counted week of a pest on this page is a full block. _ was "
		   "counted and none, + a full card (at least), a dot was not read, "
		   "a blank did not hang."),
		N_("under? and near?: an old lure or a full card may hide more."),
		NULL,
	};

	return notes;
}

static const struct week_row *picked_row(struct week_page *p)
{
	week_find(p);
	return p->picked < p->sift.n ? &p->week->rows[p->sift.rows[p->picked]] : NULL;
}

static struct wish row_wish(struct week_page *p, enum want want)
{
	const struct week_row *r = picked_row(p);
	struct wish w = page_wish(want);

	if (!r) {
		message_set(&p->message, false, "%s",
			p->sift.narrow.text[0]
				? _("Nothing is picked: Esc shows all again.")
				: week_says_none(p));
		return page_wish(WANT_NOTHING);
	}
	w.farm = r->farm;
	w.block = r->block;
	w.pest = r->pest;
	w.trap = r->trap;
	w.day = p->week->day;
	return w;
}

/* What stands behind a block's or trap's verdict; a farm has none of its own. */
static struct wish open_picked(struct week_page *p)
{
	const struct week_row *r = picked_row(p);

	if (!r || r->level != WEEK_FARM)
		return row_wish(p, WANT_WHY);
	p->one_farm = r->farm;
	return page_wish(WANT_NOTHING);
}

/* The picked row stays picked when others come or go, else the one before it. */
static void keep_picked(struct week_page *p, const struct week_row *r)
{
	sift_forget(&p->sift);
	week_find(p);
	if (!r || p->sift.n == 0)
		return;
	size_t row = (size_t)(r - p->week->rows), at = sift_place(&p->sift, row);
	p->picked = at > 0 && !sift_shows(&p->sift, row) ? at - 1 : at;
}

static void only_open(struct week_page *p)
{
	const struct week_row *r = picked_row(p);

	p->only_open = !p->only_open;
	keep_picked(p, r);
	message_set(&p->message, false,
		p->only_open
			? _("Only what is over, unknown, near or in doubt: v shows all.")
			: _("All traps."));
}

static bool narrows(struct week_page *p, struct input in)
{
	const struct week_row *r = picked_row(p);

	if (!sift_key(&p->sift, in, &p->message))
		return false;
	if (!p->sift.is_found)
		keep_picked(p, r);
	return true;
}

struct wish week_page_key(struct week_page *p, struct input in)
{
	int action = keys_find(week_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (narrows(p, in) || list_move(action, p->sift.n, p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	p->sift.narrow.typing = false;
	switch (action) {
	case WEEK_NARROW:
		narrow_start(&p->sift.narrow);
		break;
	case WEEK_WHY:
		return open_picked(p);
	case WEEK_RUN:
		return row_wish(p, WANT_RUN);
	case WEEK_FLIGHT:
		return row_wish(p, WANT_FLIGHT);
	case WEEK_DIARY:
		return row_wish(p, WANT_DIARY);
	case WEEK_SPOTS:
		return row_wish(p, WANT_HOTSPOTS);
	case WEEK_NEXT_FARM:
		p->next_farm = true;
		break;
	case WEEK_NEXT_PEST:
		p->next_pest = true;
		break;
	case WEEK_ONLY_OPEN:
		only_open(p);
		break;
	case WEEK_BACK:
		return page_wish(WANT_BACK);
	case WEEK_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

/* It counts the traps of all rows, those that narrowing hides too. */
static void say_status(const struct week_page *p, int cols, char *out, size_t size)
{
	const struct week *w = p->week;
	char none[48] = "", few[32] = "", all[SAY_LINE];
	bool wide = cols >= FRAME_WIDE;

	if (!wide && p->sift.narrow.text[0]) {
		snprintf(out, size, _("of all: %d OVER %d unknown"), w->n_over,
			w->n_unknown);
		return;
	}
	if (w->n_doubted > 0)
		snprintf(few, sizeof few, wide ? _(" \u00b7 %d in doubt") : _(" %d?"),
			w->n_doubted);
	if (w->n_none > 0 && wide)
		snprintf(none, sizeof none, _(" \u00b7 %d without threshold"),
			w->n_none);
	snprintf(all, sizeof all,
		wide ? _("%d OVER \u00b7 %d unknown \u00b7 %d near \u00b7 %d "
			 "under%s%s")
		     : _("%d OVER %d unknown %d near %d under%s%s"),
		w->n_over, w->n_unknown, w->n_near, w->n_under, few, none);
	snprintf(out, size, p->sift.narrow.text[0] ? _("of all: %s") : "%s", all);
}

/* What is missing there, and on a narrow page what its row has no room for. */
static void say_picked(struct week_page *p, int cols, struct message *m)
{
	const struct week_row *r = picked_row(p);

	if (r && cols < FRAME_WIDE && r->level != WEEK_FARM && !r->rule_text[0])
		message_set(m, false, _("%s: %s a week (%s)%s%s"), r->name,
			r->catch_text, r->nights_text, r->says[0] ? ", " : "", r->says);
	else if (r && cols < FRAME_WIDE && r->level != WEEK_FARM)
		message_set(m, false, _("%s: %s a week (%s), threshold %s%s%s"),
			r->name, r->catch_text, r->nights_text, r->rule_text,
			r->says[0] ? ": " : "", r->says);
	else if (r && r->says[0])
		message_set(m, false, "%s: %s", r->name, r->says);
}

/* In full where it has room there. */
static const char *day_beside(const struct week_page *p, const char *title, int cols)
{
	const char *day = p->week->title_day;
	bool fits = text_cols(title) + text_cols(day) + 4 <= cols;

	return cols >= FRAME_WIDE && fits && !p->sift.narrow.text[0]
		       ? day
		       : p->week->title_short;
}

void week_page_draw(struct week_page *p, struct canvas *c)
{
	char title[160], status[256];
	struct message m = p->message;
	struct frame f = { .title = title,
		.status = status,
		.message = &m,
		.keys = sift_keys(&p->sift, week_page_keys()) };
	int cursor = -1;

	snprintf(title, sizeof title, _("Week  %s"), p->filter ? p->filter : "");
	week_find(p);
	sift_title(&p->sift, title, sizeof title);
	f.right = day_beside(p, title, c->cols);
	say_status(p, c->cols, status, sizeof status);
	if (!m.text[0])
		cursor = sift_say(&p->sift, &m);
	if (!m.text[0])
		say_picked(p, c->cols, &m);
	if (!frame_draw(c, &f))
		return;
	week_draw_rows(p, c, f.first, f.last);
	frame_more(c, &f, p->top > 0, p->top + (size_t)p->rows < p->sift.n);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
