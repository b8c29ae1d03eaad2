#include "screen/service_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/list.h"
#include "service_parts.h"

#include <stdio.h>
#include <string.h>

enum {
	SERVICE_DIARY = LIST_OTHERS,
	SERVICE_LURE,
	SERVICE_CARD,
	SERVICE_FARM,
	SERVICE_UNDO,
	SERVICE_NARROW,
	SERVICE_BACK,
	SERVICE_HELP,
	SERVICE_ACTIONS
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_CHAR, 'd' }, SERVICE_DIARY, "Enter", N_("diary"),
		N_("the diary of the picked trap") },
	LIST_KEYS,
	{ { INPUT_CHAR, '*' }, { INPUT_NONE, 0 }, SERVICE_LURE, "*", N_("new lure"),
		N_("the picked trap got a new lure today, outside a run: the count "
		   "stays open, the lure's age begins anew") },
	{ { INPUT_CHAR, '+' }, { INPUT_NONE, 0 }, SERVICE_CARD, "+", N_("new card"),
		N_("it got a new card today: asks for the moths on the old one") },
	{ { INPUT_CHAR, 'f' }, { INPUT_NONE, 0 }, SERVICE_FARM, "f", N_("farm"),
		N_("the next farm only; after the last one all farms") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, SERVICE_UNDO, "u", N_("undo"),
		N_("takes back the latest change made on this page") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, SERVICE_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, SERVICE_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, SERVICE_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows service_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *service_page_notes(void)
{
	static const char *const notes[] = {
		N_("A lure is due when its life is used up, a card at the end of its "
		   "life or when it holds too many moths to grip more, whichever "
		   "comes first."),
		N_("Who changes a card without counting what is on it loses that "
		   "catch: Enter without a number says so, and the week is unknown."),
		N_("On the shelf: what was counted there, less what visits have put "
		   "in since."),
		NULL,
	};

	return notes;
}

void service_page_ask(struct service_page *p, const char *text)
{
	p->ask = text ? SERVICE_ASKS_VISIT : SERVICE_ASKS_COUNT;
	p->digits[0] = '\0';
	if (text)
		message_set(&p->message, false,
			p->ask_lure ? _("%s: * once more says that its lure was new "
					"then.")
				    : _("%s: + once more says that its card was new "
					"then."),
			text);
}

static struct wish changed_wish(
	const struct service_page *p, const struct due_item *item, bool lure, int by)
{
	struct wish w = page_wish(WANT_CHANGED);

	w.trap = item->trap;
	w.farm = item->farm;
	w.day = p->due->today.day;
	w.by = by;
	w.visit.count = COUNT_NONE;
	/* The kind that is due there; of the other one the loop knows the usual
	 * kind. */
	w.kind = lure;
	w.id = item->is_lure == lure ? item->kind : 0;
	return w;
}

static struct wish change(struct service_page *p, bool lure)
{
	const struct due_item *item = service_picked_item(p);
	bool again = p->ask == SERVICE_ASKS_VISIT && p->ask_lure == lure;

	p->ask = SERVICE_ASKS_NOTHING;
	p->ask_lure = lure;
	if (item)
		return changed_wish(p, item, lure, again ? 1 : 0);
	message_set(&p->message, false, _("Pick a lure or card that is due."));
	return page_wish(WANT_NOTHING);
}

static struct wish new_lure(struct service_page *p)
{
	return change(p, true);
}

static struct wish new_card(struct service_page *p)
{
	return change(p, false);
}

static struct wish diary(struct service_page *p)
{
	const struct due_item *item = service_picked_item(p);
	struct wish w = page_wish(WANT_DIARY);

	if (item) {
		w.trap = item->trap;
		return w;
	}
	message_set(&p->message, false, _("Pick a lure or card that is due."));
	return page_wish(WANT_NOTHING);
}

static struct wish next_farm(struct service_page *p)
{
	p->next_farm = true;
	return page_wish(WANT_NOTHING);
}

static struct wish undo(struct service_page *p)
{
	(void)p;
	return page_wish(WANT_UNDO_CHANGED);
}

static struct wish look_for(struct service_page *p)
{
	narrow_start(&p->sift.narrow);
	return page_wish(WANT_NOTHING);
}

static struct wish leave(struct service_page *p)
{
	(void)p;
	return page_wish(WANT_BACK);
}

static struct wish help(struct service_page *p)
{
	(void)p;
	return page_wish(WANT_HELP);
}

static struct wish (*const deeds[SERVICE_ACTIONS])(struct service_page *p) = {
	[SERVICE_DIARY] = diary,
	[SERVICE_LURE] = new_lure,
	[SERVICE_CARD] = new_card,
	[SERVICE_FARM] = next_farm,
	[SERVICE_UNDO] = undo,
	[SERVICE_NARROW] = look_for,
	[SERVICE_BACK] = leave,
	[SERVICE_HELP] = help,
};

static void type_digit(struct service_page *p, uint32_t ch)
{
	enum { DIGITS = 4 };
	size_t n = strlen(p->digits);

	if (ch < '0' || ch > '9')
		message_set(&p->message, true,
			_("Only digits here: Enter ends it, Esc drops it."));
	else if (n == DIGITS)
		message_set(&p->message, true,
			_("A count has at most 4 digits, up to 9999."));
	else {
		p->digits[n] = (char)ch;
		p->digits[n + 1] = '\0';
	}
}

static struct wish count_key(struct service_page *p, struct input in)
{
	const struct due_item *item = service_picked_item(p);
	size_t n = strlen(p->digits);

	if (in.kind == INPUT_CHAR)
		type_digit(p, in.ch);
	else if ((in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE) && n > 0)
		p->digits[n - 1] = '\0';
	else if (in.kind == INPUT_ESC || !item) {
		p->ask = SERVICE_ASKS_NOTHING;
		message_set(&p->message, false, _("Left as it was."));
	} else if (in.kind == INPUT_ENTER) {
		struct wish w = changed_wish(p, item, false, 2);
		text_int(p->digits, 0, COUNT_MAX, &w.visit.count);
		p->ask = SERVICE_ASKS_NOTHING;
		return w;
	}
	return page_wish(WANT_NOTHING);
}

static bool narrows(struct service_page *p, struct input in)
{
	if (!sift_key(&p->sift, in, &p->message))
		return false;
	service_find(p);
	return true;
}

void service_page_changed(struct service_page *p)
{
	p->changed_ms = p->now_ms;
}

static bool bounces(struct service_page *p, int action)
{
	bool changes = action == SERVICE_LURE || action == SERVICE_CARD;

	bool soon = changes && p->ask == SERVICE_ASKS_NOTHING && p->changed_ms != 0 &&
		    p->now_ms - p->changed_ms < SERVICE_BOUNCE_MS;

	p->changed_ms = soon ? p->now_ms : 0;
	return soon;
}

struct wish service_page_key(struct service_page *p, struct input in)
{
	int action = keys_find(service_page_keys(), in);

	if (!input_is_key(in) || !p->due || bounces(p, action))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	service_find(p);
	if (p->ask == SERVICE_ASKS_COUNT)
		return count_key(p, in);
	if (narrows(p, in))
		return page_wish(WANT_NOTHING);
	if (action != SERVICE_LURE && action != SERVICE_CARD)
		p->ask = SERVICE_ASKS_NOTHING;
	if (sift_move(&p->sift, action, p->rows, &p->picked))
		return page_wish(WANT_NOTHING);
	p->sift.narrow.typing = false;
	if (action)
		return deeds[action](p);
	page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}

/* Returns the column of the cursor in it; -1: none. */
static int fill_message(const struct service_page *p, struct message *m)
{
	const char *prompt = _("moths on the old card (Enter alone: not counted): ");
	char text[SERVICE_TEXT];
	int cursor = -1;

	*m = p->message;
	if (p->ask == SERVICE_ASKS_COUNT) {
		message_set(m, p->message.is_fault, "%s%s%s%s", prompt, p->digits,
			p->message.text[0] ? "  " : "", p->message.text);
		return 1 + text_cols(prompt) + text_cols(p->digits);
	}
	if (!m->text[0])
		cursor = sift_say(&p->sift, m);
	if (!m->text[0]) {
		service_say_picked(p, text);
		message_set(m, false, "%s", text);
	}
	return cursor;
}

static struct key_rows keys_now(struct service_page *p)
{
	if (p->ask == SERVICE_ASKS_COUNT)
		return prompt_keys(PROMPT_LINE);
	return sift_keys(&p->sift, service_page_keys());
}

void service_page_draw(struct service_page *p, struct canvas *c)
{
	char title[NAME_BYTES + 64];
	struct message m;
	struct frame f = { .title = title, .message = &m, .keys = keys_now(p) };

	if (!p->due) {
		canvas_clear(c);
		return;
	}
	snprintf(title, sizeof title, _("Service  %.60s"), p->filter ? p->filter : "");
	f.right = c->cols >= FRAME_WIDE && !p->sift.narrow.text[0]
			  ? p->due->today.title
			  : p->due->today.title_short;
	service_find(p);
	sift_title(&p->sift, title, sizeof title);
	int cursor = fill_message(p, &m);
	if (!frame_draw(c, &f))
		return;
	service_draw_rows(p, c, &f);
	if (cursor >= 0)
		canvas_cursor(
			c, f.message_row, cursor < c->cols - 1 ? cursor : c->cols - 1);
}
