#include "screen/thresholds_page.h"

#include "answers/entry.h"
#include "base/words.h"
#include "screen/list.h"
#include "thresholds_parts.h"

enum {
	RULES_FORM = LIST_OTHERS,
	RULES_TAKE,
	RULES_NEW,
	RULES_LIST,
	RULES_UNDO,
	RULES_NARROW,
	RULES_PEST,
	RULES_OTHER,
	RULES_OWN,
	RULES_PUBLISHED,
	RULES_BACK,
	RULES_HELP,
	RULES_ACTIONS
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, RULES_FORM, "Enter", N_("change"),
		N_("opens the picked one of yours as a form") },
	LIST_KEYS,
	{ { INPUT_CHAR, 't' }, { INPUT_CHAR, '+' }, RULES_TAKE, "t", N_("take"),
		N_("takes the picked published one: a copy with its source is yours "
		   "then, to be changed as you like") },
	{ { INPUT_CHAR, 'n' }, { INPUT_NONE, 0 }, RULES_NEW, "n", N_("new"),
		N_("a threshold of your own number, typed into a form") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, RULES_UNDO, "u", N_("undo"),
		N_("takes back the latest change since the pages were opened; one made "
		   "on another page is named first, u again takes it back") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, RULES_NARROW, "/", N_("look for"),
		N_("only rows that contain what is typed next; Esc ends it") },
	{ { INPUT_CHAR, 'p' }, { INPUT_NONE, 0 }, RULES_PEST, "p", N_("pest"),
		N_("the next pest only, those with traps first; after the last one all "
		   "pests") },
	{ { INPUT_CHAR, 'b' }, { INPUT_NONE, 0 }, RULES_LIST, "b", NULL,
		N_("the book's list of yours, to take one out or see what was "
		   "changed") },
	{ { INPUT_TAB, 0 }, { INPUT_NONE, 0 }, RULES_OTHER, "Tab", N_("other list"),
		N_("from yours to the published ones and back") },
	{ { INPUT_LEFT, 0 }, { INPUT_CHAR, '4' }, RULES_OWN, "Left", NULL,
		N_("to yours") },
	{ { INPUT_RIGHT, 0 }, { INPUT_CHAR, '6' }, RULES_PUBLISHED, "Right", NULL,
		N_("to the published ones") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, RULES_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, RULES_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows thresholds_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *thresholds_page_notes(void)
{
	static const char *const notes[] = {
		N_("None of the published ones applies before you take it. They were "
		   "written for other orchards: ask the local extension service for "
		   "yours."),
		N_(">=5 is at least 5 a week in any trap that it holds for, >5 more "
		   "than 5; 2w two weeks running; /night a night; total in all."),
		N_("yours: taken as it is; changed: taken and then changed; never: "
		   "nothing in the book is what it asks for; replaced: another of "
		   "yours, which says more of where or when, is judged in its place "
		   "where both hold."),
		N_("The season's line counts each week of each trap (block rules: of "
		   "each block) that this one alone would have judged so far."),
		NULL,
	};

	return notes;
}

size_t thresholds_count(const struct thresholds_page *p)
{
	return p->list->n_own + p->list->published.n;
}

const struct own_row *thresholds_own(const struct thresholds_page *p, size_t i)
{
	return i < p->list->n_own ? &p->list->own[i] : NULL;
}

const struct published_row *thresholds_published(
	const struct thresholds_page *p, size_t i)
{
	size_t at = i - p->list->n_own;

	return i >= p->list->n_own && at < p->list->published.n
		       ? &p->list->published.items[at]
		       : NULL;
}

const struct rule *thresholds_page_picked(const struct thresholds_page *p)
{
	const struct own_row *own = thresholds_own(p, p->picked);
	const struct published_row *published = thresholds_published(p, p->picked);

	return own ? &own->rule : published ? &published->rule : NULL;
}

void thresholds_find(struct thresholds_page *p)
{
	size_t was = p->picked;

	sift_find(&p->sift, thresholds_count(p), thresholds_has, p, &p->picked);
	if (p->picked != was)
		p->trial = NULL;
}

size_t thresholds_shown_own(const struct thresholds_page *p)
{
	return sift_place(&p->sift, p->list->n_own);
}

void thresholds_page_show(struct thresholds_page *p, const struct threshold_list *list)
{
	p->list = list;
	p->trial = NULL;
	p->is_measured = false;
	sift_forget(&p->sift);
	thresholds_find(p);
}

void thresholds_page_free(struct thresholds_page *p)
{
	sift_free(&p->sift);
	*p = (struct thresholds_page){ 0 };
}

static void pick(struct thresholds_page *p, size_t i)
{
	if (i != p->picked)
		p->trial = NULL;
	p->picked = i;
	if (!sift_shows(&p->sift, i))
		sift_end(&p->sift);
	thresholds_find(p);
}

void thresholds_page_pick(struct thresholds_page *p, int64_t id)
{
	for (size_t i = 0; i < p->list->n_own; i++)
		if (p->list->own[i].rule.id == id)
			pick(p, i);
}

static struct wish open_form(struct thresholds_page *p)
{
	const struct own_row *own = thresholds_own(p, p->picked);
	struct wish w = page_wish(WANT_FORM);

	if (!own) {
		message_set(&p->message, false,
			p->picked == SIZE_MAX
				? _("None is picked.")
				: _("t takes this one first; then it is yours to "
				    "change."));
		return page_wish(WANT_NOTHING);
	}
	w.kind = ENTRY_THRESHOLDS;
	w.id = own->rule.id;
	w.pest = own->rule.pest;
	return w;
}

static struct wish take(struct thresholds_page *p)
{
	const struct published_row *row = thresholds_published(p, p->picked);
	struct wish w = page_wish(WANT_TAKE_RULE);

	if (!row) {
		message_set(&p->message, false,
			_("Pick a published one (Tab); this one is yours."));
		return page_wish(WANT_NOTHING);
	}
	if (row->is_taken) {
		thresholds_page_pick(p, row->own);
		message_set(&p->message, false,
			_("You have it as it is: here it stands among yours."));
		return page_wish(WANT_NOTHING);
	}
	if (row->changed && !p->asked) {
		p->asked = true;
		message_set(&p->message, false,
			_("You took it and changed it. t once more takes it again, "
			  "beside yours."));
		return page_wish(WANT_NOTHING);
	}
	p->asked = false;
	w.id = (int64_t)(p->picked - p->list->n_own);
	return w;
}

static struct wish entry_wish(const struct thresholds_page *p, enum want want)
{
	struct wish w = page_wish(want);

	w.kind = ENTRY_THRESHOLDS;
	w.pest = p->list->pest;
	return w;
}

static struct wish new_one(struct thresholds_page *p)
{
	return entry_wish(p, WANT_FORM);
}

static struct wish as_list(struct thresholds_page *p)
{
	return entry_wish(p, WANT_ENTRIES);
}

static struct wish next_pest(struct thresholds_page *p)
{
	p->next_pest = true;
	return page_wish(WANT_NOTHING);
}

/* At the same height where there is a row. */
static struct wish cross(struct thresholds_page *p, bool to_own)
{
	size_t own = thresholds_shown_own(p), published = p->sift.n - own;
	size_t at = sift_place(&p->sift, p->picked);
	bool is_own = at < own;

	if (to_own == is_own || (to_own ? own : published) == 0)
		return page_wish(WANT_NOTHING);
	if (to_own)
		at = at - own < own ? at - own : own - 1;
	else
		at = own + (at < published ? at : published - 1);
	pick(p, p->sift.rows[at]);
	return page_wish(WANT_NOTHING);
}

static struct wish to_own(struct thresholds_page *p)
{
	return cross(p, true);
}

static struct wish to_published(struct thresholds_page *p)
{
	return cross(p, false);
}

static struct wish to_other(struct thresholds_page *p)
{
	return cross(p, p->picked >= p->list->n_own);
}

static struct wish undo(struct thresholds_page *p)
{
	(void)p;
	return page_wish(WANT_UNDO_STEP);
}

static struct wish look_for(struct thresholds_page *p)
{
	narrow_start(&p->sift.narrow);
	return page_wish(WANT_NOTHING);
}

static struct wish leave(struct thresholds_page *p)
{
	(void)p;
	return page_wish(WANT_BACK);
}

static struct wish help(struct thresholds_page *p)
{
	(void)p;
	return page_wish(WANT_HELP);
}

static struct wish (*const deeds[RULES_ACTIONS])(struct thresholds_page *p) = {
	[RULES_FORM] = open_form,
	[RULES_TAKE] = take,
	[RULES_NEW] = new_one,
	[RULES_LIST] = as_list,
	[RULES_UNDO] = undo,
	[RULES_NARROW] = look_for,
	[RULES_PEST] = next_pest,
	[RULES_OTHER] = to_other,
	[RULES_OWN] = to_own,
	[RULES_PUBLISHED] = to_published,
	[RULES_BACK] = leave,
	[RULES_HELP] = help,
};

static bool narrows(struct thresholds_page *p, struct input in)
{
	if (!sift_key(&p->sift, in, &p->message))
		return false;
	thresholds_find(p);
	return true;
}

static bool moves(struct thresholds_page *p, int action)
{
	size_t was = p->picked;

	if (!sift_move(&p->sift, action, p->rows, &p->picked))
		return false;
	if (p->picked != was)
		p->trial = NULL;
	return true;
}

struct wish thresholds_page_key(struct thresholds_page *p, struct input in)
{
	int action = keys_find(thresholds_page_keys(), in);

	if (!input_is_key(in) || !p->list)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (action != RULES_TAKE)
		p->asked = false;
	thresholds_find(p);
	if (narrows(p, in) || moves(p, action))
		return page_wish(WANT_NOTHING);
	p->sift.narrow.typing = false;
	if (action)
		return deeds[action](p);
	page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}
