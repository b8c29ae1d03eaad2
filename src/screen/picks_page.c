#include "screen/picks_page.h"

#include "answers/entry.h"
#include "base/words.h"
#include "screen/caution.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "screen/reader.h"

#include <stdio.h>

enum {
	PICKS_OPEN = LIST_OTHERS,
	PICKS_NEW,
	PICKS_TREATMENTS,
	PICKS_CHECKS,
	PICKS_DIARY,
	PICKS_RECORD,
	PICKS_UNDO,
	PICKS_NARROW,
	PICKS_BACK,
	PICKS_HELP,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, PICKS_OPEN, "Enter",
		NC_("key", "open"),
		N_("opens the picked pick to be read or changed; on a block without "
		   "one: a new pick of it") },
	{ { INPUT_CHAR, 'n' }, { INPUT_CHAR, '0' }, PICKS_NEW, "n", N_("new"),
		N_("a new pick, of the picked block") },
	LIST_KEYS,
	{ { INPUT_CHAR, 't' }, { INPUT_NONE, 0 }, PICKS_TREATMENTS, "t",
		N_("treatments"),
		N_("the treatments of the picked block, to be read, added or "
		   "corrected; without a picked row all of them") },
	{ { INPUT_CHAR, 'r' }, { INPUT_NONE, 0 }, PICKS_CHECKS, "r", N_("fruit checks"),
		N_("the fruit checks of the picked block") },
	{ { INPUT_CHAR, 'd' }, { INPUT_NONE, 0 }, PICKS_DIARY, "d", N_("diary"),
		N_("the season of the picked block: catches over, treatments, picks, "
		   "checks") },
	{ { INPUT_CHAR, 'R' }, { INPUT_NONE, 0 }, PICKS_RECORD, "R", N_("record"),
		N_("the record of this season's treatments, of all farms") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, PICKS_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, PICKS_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, PICKS_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, PICKS_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows picks_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

/* What the picked row is of. */
struct about {
	int64_t id, farm, block;
};

static struct about about_of(const struct picks_page *p, size_t i)
{
	size_t bars = p->bars ? p->bars->n : 0;

	if (i < bars)
		return (struct about){ 0, p->bars->items[i].farm,
			p->bars->items[i].block };
	if (!p->picks || i - bars >= p->picks->n)
		return (struct about){ 0, 0, 0 };
	const struct pick_row *r = &p->picks->items[i - bars];
	return (struct about){ r->id, r->farm, r->block };
}

static struct wish wish_of(const struct picks_page *p, enum want want, int kind)
{
	struct about a = about_of(p, p->list.picked);
	struct wish w = page_wish(want);

	w.kind = kind;
	w.farm = a.farm;
	w.block = a.block;
	return w;
}

static struct wish open_picked(struct picks_page *p)
{
	struct wish w = wish_of(p, WANT_FORM, ENTRY_PICKS);

	w.id = about_of(p, p->list.picked).id;
	if (p->list.picked != SIZE_MAX)
		return w;
	message_set(&p->message, false, _("No block is picked."));
	return page_wish(WANT_NOTHING);
}

static struct wish diary(struct picks_page *p)
{
	struct wish w = wish_of(p, WANT_DIARY, 0);

	if (w.block)
		return w;
	message_set(&p->message, false, _("No block is picked."));
	return page_wish(WANT_NOTHING);
}

static struct wish act(struct picks_page *p, int action, struct input in)
{
	switch (action) {
	case PICKS_OPEN:
		return open_picked(p);
	case PICKS_NEW:
		return wish_of(p, WANT_FORM, ENTRY_PICKS);
	case PICKS_TREATMENTS:
		return wish_of(p, WANT_ENTRIES, ENTRY_TREATMENTS);
	case PICKS_CHECKS:
		return wish_of(p, WANT_ENTRIES, ENTRY_CHECKS);
	case PICKS_DIARY:
		return diary(p);
	case PICKS_RECORD:
		return page_wish(WANT_RECORD);
	case PICKS_UNDO:
		return page_wish(WANT_UNDO_STEP);
	case PICKS_NARROW:
		narrow_start(&p->list.sift.narrow);
		break;
	case PICKS_BACK:
		return page_wish(WANT_BACK);
	case PICKS_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

struct wish picks_page_key(struct picks_page *p, struct input in)
{
	int action = keys_find(picks_page_keys(), in);

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (told_key(&p->list, action, in, &p->message)) {
		p->picked_id = about_of(p, p->list.picked).id;
		return page_wish(WANT_NOTHING);
	}
	return act(p, action, in);
}

static void add_bar(struct told *list, const struct bar *b)
{
	struct told_row *r = told_add(list);

	snprintf(r->head, sizeof r->head, _("Entry  %s"), b->place);
	r->tone = TONE_UNSURE;
	r->sentence[0] = b->text;
	r->sentence[1] = b->by;
}

static void add_pick(struct told *list, const struct pick_row *row)
{
	struct told_row *r = told_add(list);

	if (row->id == 0)
		snprintf(r->head, sizeof r->head, _("No pick  %s"), row->place);
	else
		snprintf(r->head, sizeof r->head, "%s  %s  %s", row->day_text,
			row->place, row->is_done ? _("picked") : _("planned"));
	r->tone = row->tone;
	r->sentence[0] = row->says;
	r->sentence[1] = row->by;
}

/* The picked pick stays picked. */
static void find_picked(struct picks_page *p)
{
	for (size_t i = 0; i < p->list.n && p->picked_id; i++)
		if (about_of(p, i).id == p->picked_id)
			p->list.picked = i;
}

void picks_page_show(struct picks_page *p, const struct pick_rows *picks,
	const struct bars *bars, bool first)
{
	p->picks = picks;
	p->bars = bars;
	told_clear(&p->list);
	for (size_t i = 0; i < bars->n; i++)
		add_bar(&p->list, &bars->items[i]);
	for (size_t i = 0; i < picks->n; i++)
		add_pick(&p->list, &picks->items[i]);
	if (first) {
		told_start(&p->list);
		p->picked_id = 0;
	}
	find_picked(p);
	told_find(&p->list);
}

void picks_page_free(struct picks_page *p)
{
	told_free(&p->list);
}

static void say_status(const struct picks_page *p, char *out, size_t size)
{
	size_t early = 0, open = 0;

	for (size_t i = 0; i < p->picks->n; i++) {
		early += p->picks->items[i].id && p->picks->items[i].tone == TONE_OVER;
		open += p->picks->items[i].id && p->picks->items[i].tone == TONE_UNSURE;
	}
	snprintf(out, size,
		p->list.sift.narrow.text[0] ? _("of all: %zu too early, %zu in doubt")
					    : _("%zu too early, %zu in doubt"),
		early, open);
}

void picks_page_draw(struct picks_page *p, struct canvas *c)
{
	char title[64], status[128];
	struct message m = p->message;
	struct frame f = { .title = title,
		.right = p->right,
		.status = status,
		.message = &m,
		.keys = sift_keys(&p->list.sift, picks_page_keys()) };
	bool above = false, below = false;
	int cursor = -1;

	snprintf(title, sizeof title, "%s", _("Picks"));
	sift_title(&p->list.sift, title, sizeof title);
	say_status(p, status, sizeof status);
	if (!m.text[0])
		cursor = sift_say(&p->list.sift, &m);
	if (!frame_draw(c, &f))
		return;
	int last = f.last;
	caution_draw(c, f.first, &last, p->caution);
	if (p->list.n == 0)
		reader_text(c,
			(struct reader_box){
				f.first, 1, c->cols - 2, last - f.first + 1, 0 },
			INK_PLAIN,
			_("No pick is entered and nothing bars one: n makes the "
			  "first."));
	below = told_draw(&p->list, c, f.first, last, &above);
	if (p->list.n == 0)
		canvas_cursor(c, f.first, 0);
	frame_more(c, &f, above, below);
	if (cursor >= 0)
		canvas_cursor(c, f.message_row, cursor);
}
