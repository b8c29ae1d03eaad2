#include "screen/alerts_page.h"

#include "base/words.h"
#include "screen/caution.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdio.h>

enum {
	ALERTS_WHY = LIST_OTHERS,
	ALERTS_ANSWER,
	ALERTS_DIARY,
	ALERTS_UNDO,
	ALERTS_NARROW,
	ALERTS_BACK,
	ALERTS_HELP,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, ALERTS_WHY, "Enter", N_("why"),
		N_("what stands behind the verdict: visits, nights, rule, source, "
		   "doubts") },
	{ { INPUT_CHAR, 'a' }, { INPUT_NONE, 0 }, ALERTS_ANSWER, "a", N_("answer"),
		N_("what was decided: - and + move its day, 1 looked, 2 treated, 3 "
		   "left as it was, then a line; on one that is answered: corrects "
		   "it") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, ALERTS_DIARY, "d", N_("diary"),
		N_("the season of its block: catches over, treatments, picks, checks") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, ALERTS_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, ALERTS_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, ALERTS_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, ALERTS_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows alerts_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

static const struct alert *picked(const struct alerts_page *p)
{
	return p->alerts && p->list.picked < p->alerts->n
		       ? &p->alerts->items[p->list.picked]
		       : NULL;
}

static struct wish about(const struct alerts_page *p, enum want want)
{
	const struct alert *a = picked(p);
	struct wish w = page_wish(want);

	w.farm = a->farm;
	w.block = a->block;
	w.pest = a->pest;
	w.visit.trap = want == WANT_WHY ? a->trap : 0;
	w.id = (int64_t)p->list.picked;
	return w;
}

static struct wish act(struct alerts_page *p, int action, struct input in)
{
	bool needs = action == ALERTS_WHY || action == ALERTS_ANSWER ||
		     action == ALERTS_DIARY;

	if (needs && !picked(p)) {
		message_set(&p->message, false, "%s",
			p->list.n ? _("Nothing is picked: Esc shows all again.")
				  : _("Nothing was over in this season."));
		return page_wish(WANT_NOTHING);
	}
	switch (action) {
	case ALERTS_WHY:
		return about(p, WANT_WHY);
	case ALERTS_ANSWER:
		answering_start(&p->answering, picked(p));
		break;
	case ALERTS_DIARY:
		return about(p, WANT_DIARY);
	case ALERTS_UNDO:
		return page_wish(WANT_UNDO_STEP);
	case ALERTS_NARROW:
		narrow_start(&p->list.sift.narrow);
		break;
	case ALERTS_BACK:
		return page_wish(WANT_BACK);
	case ALERTS_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

/* The list may have been read anew since the answer was begun. */
static struct wish answer_key(struct alerts_page *p, struct input in)
{
	struct wish w = answering_key(&p->answering, in, &p->message);

	w.id = -1;
	for (size_t i = 0; i < p->alerts->n; i++)
		if (answering_is_of(&p->answering, &p->alerts->items[i]))
			w.id = (int64_t)i;
	return w;
}

struct wish alerts_page_key(struct alerts_page *p, struct input in)
{
	int action = keys_find(alerts_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (p->answering.stage != ANSWERING_OFF)
		return answer_key(p, in);
	if (told_key(&p->list, action, in, &p->message))
		return page_wish(WANT_NOTHING);
	return act(p, action, in);
}

static void add(struct told *list, const struct alert *a)
{
	struct told_row *r = told_add(list);
	char day[DAY_TEXT_SIZE] = "";

	if (a->day != DAY_NONE)
		day_short(a->day, day, sizeof day);
	snprintf(r->head, sizeof r->head, "%s  %s%s%s", day, a->name,
		a->is_answered ? "" : "  ", a->is_answered ? "" : _("OPEN"));
	r->tone = a->tone;
	r->sentence[0] = a->says;
	r->sentence[1] = a->is_answered ? a->decided : NULL;
	r->sentence[2] = a->after;
}

void alerts_page_show(struct alerts_page *p, const struct alerts *alerts, bool first)
{
	p->alerts = alerts;
	told_clear(&p->list);
	for (size_t i = 0; i < alerts->n; i++)
		add(&p->list, &alerts->items[i]);
	if (first) {
		told_start(&p->list);
		p->answering.stage = ANSWERING_OFF;
	}
	told_find(&p->list);
}

void alerts_page_free(struct alerts_page *p)
{
	told_free(&p->list);
}

static size_t open_ones(const struct alerts *a)
{
	size_t n = 0;

	while (n < a->n && !a->items[n].is_answered)
		n++;
	return n;
}

void alerts_page_draw(struct alerts_page *p, struct canvas *c)
{
	char title[64], status[96];
	struct message m = p->message;
	struct frame f = { .title = title,
		.right = p->right,
		.status = status,
		.message = &m,
		.keys = answering_keys(
			&p->answering, sift_keys(&p->list.sift, alerts_page_keys())) };
	size_t open = open_ones(p->alerts);
	int cursor = -1;
	bool above = false, below = false;

	snprintf(title, sizeof title, "%s", _("Alerts"));
	sift_title(&p->list.sift, title, sizeof title);
	snprintf(status, sizeof status,
		p->list.sift.narrow.text[0] ? _("of all: %zu open, %zu answered")
					    : _("%zu open, %zu answered"),
		open, p->alerts->n - open);
	if (p->answering.stage != ANSWERING_OFF)
		cursor = answering_say(&p->answering, c->cols, &m);
	else if (!m.text[0])
		cursor = sift_say(&p->list.sift, &m);
	if (!frame_draw(c, &f))
		return;
	int last = f.last;
	caution_draw(c, f.first, &last, p->caution);
	if (p->list.n == 0)
		reader_text(c,
			(struct reader_box){
				f.first, 1, c->cols - 2, last - f.first + 1, 0 },
			INK_PLAIN, _("Nothing was over in this season."));
	below = told_draw(&p->list, c, f.first, last, &above);
	if (p->list.n == 0)
		canvas_cursor(c, f.first, 0);
	frame_more(c, &f, above, below);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
