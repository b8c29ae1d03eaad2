#include "screen/diary_page.h"

#include "base/text.h"
#include "base/words.h"
#include "diary_parts.h"
#include "screen/list.h"

#include <stdio.h>

enum {
	DIARY_OPEN = LIST_OTHERS,
	DIARY_ADD,
	DIARY_OTHER,
	DIARY_REMOVE,
	DIARY_OLD,
	DIARY_UNDO,
	DIARY_SEASON,
	DIARY_NARROW,
	DIARY_BACK,
	DIARY_HELP,
	DIARY_ACTIONS
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, DIARY_OPEN, "Enter", N_("correct"),
		N_("opens the picked visit: the keys of the Run page correct it; Enter "
		   "keeps it, Esc leaves it as it was") },
	LIST_KEYS,
	{ { INPUT_CHAR, 'n' }, { INPUT_NONE, 0 }, DIARY_ADD, "n", N_("new"),
		N_("a visit on a past day that is not here yet: asks for the day") },
	{ { INPUT_CHAR, 'k' }, { INPUT_NONE, 0 }, DIARY_OTHER, "k", N_("kind"),
		N_("which lure and which card the picked visit put in, where another "
		   "kind was noted: Up and Down pick, Enter takes it") },
	{ { INPUT_DELETE, 0 }, { INPUT_CHAR, 'x' }, DIARY_REMOVE, "Del", N_("take out"),
		N_("takes the picked visit out, once it is pressed again; what it was "
		   "stays readable") },
	{ { INPUT_CHAR, 'c' }, { INPUT_NONE, 0 }, DIARY_OLD, "c", N_("changes"),
		N_("what stood there before it was changed or taken out, when and by "
		   "whom; again goes back") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, DIARY_UNDO, "u", N_("undo"),
		N_("takes back the latest change of this trap's season that you made; "
		   "again: the one before") },
	{ { INPUT_CHAR, 'y' }, { INPUT_NONE, 0 }, DIARY_SEASON, "y", N_("season"),
		N_("the season before with visits; after the first one the present") },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, DIARY_NARROW, "/", N_("look for"),
		N_("only visits that contain what is typed next; Esc ends it") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, DIARY_BACK, "Esc", N_("back"),
		N_("drops what is typed, else to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, DIARY_HELP, "?", N_("keys"),
		N_("this page") },
};

struct key_rows diary_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *diary_page_notes(void)
{
	static const char *const notes[] = {
		N_("An open visit stands between [ and ]: digits type the count, + "
		   "after them at least so many (the card was full), + alone a new "
		   "card, * a new lure, / spoiled, - skipped, . a note, all as in a "
		   "run; Enter keeps it. An odd count is asked about there too."),
		N_("visit: 14 counted, 14+ at least; c new card, l new lure, s glue "
		   "stirred. nights: since the trap was cleared before; a week: the "
		   "catch of those nights per seven."),
		N_("lure, card: how long those had hung that made the catch, in days."),
		N_("k: a lure or card that was another kind; what it was stays "
		   "readable."),
		N_("corrected: something else stood there before; c shows it."),
		NULL,
	};

	return notes;
}

static const struct diary_row *picked_row(const struct diary_page *p)
{
	return p->diary && p->picked < p->diary->n ? &p->diary->rows[p->picked] : NULL;
}

void diary_page_pick(struct diary_page *p, int32_t day)
{
	size_t i = 0, n = p->diary->n;

	while (i < n && p->diary->rows[i].visit.day > day)
		i++;
	p->picked = i < n ? i : n ? n - 1 : 0;
	p->day = n ? p->diary->rows[p->picked].visit.day : DAY_NONE;
}

/* The open visit beside what the book has now: a change from elsewhere is said. */
static void renew(struct diary_page *p)
{
	const struct run_trap was = p->trap;

	diary_renew(p);
	const struct diary_row *row = diary_row_at(p, p->picked);
	if (was.open == p->trap.open &&
		(was.open || visit_same(&was.visit, &p->trap.visit)))
		return;
	if (row)
		message_set(&p->message, false,
			_("It got %s meanwhile: Enter puts yours in its place, Esc "
			  "leaves it."),
			row->visit_text);
	else
		message_set(&p->message, false,
			_("It was taken out meanwhile: Enter puts yours in, Esc leaves "
			  "it out."));
}

void diary_page_show(struct diary_page *p, const struct trap_diary *d,
	const struct limits *limits, bool first)
{
	p->diary = d;
	p->typed.limits = limits;
	p->asked = false;
	if (first) {
		p->mode = DIARY_LIST;
		p->is_new = false;
		p->top = p->old_top = 0;
		p->day = d->last;
		p->saved[0] = '\0';
		sift_end(&p->sift);
	}
	sift_forget(&p->sift);
	if (p->mode == DIARY_VISIT)
		renew(p);
	else if (p->mode == DIARY_KIND)
		diary_kind_renew(p);
	else
		diary_page_pick(p, p->day);
	diary_find(p);
}

/* ", new card, lure taken out": what the marks of a visit lost and got. */
static void say_marks(
	const struct visit *was, const struct visit *is, char *out, size_t size)
{
	const char *card = "", *lure = "";

	if (!was->new_card != !is->new_card)
		card = is->new_card ? _(", new card") : _(", no new card any more");
	if (!was->new_lure != !is->new_lure)
		lure = is->new_lure ? _(", new lure") : _(", no new lure any more");
	snprintf(out, size, "%s%s", card, lure);
}

void diary_page_saved(
	struct diary_page *p, const struct trap_diary *d, const char *clock)
{
	char marks[SAY_LINE] = "", kinds[SAY_LINE] = "";

	p->diary = d;
	sift_forget(&p->sift);
	diary_close(p);
	message_set(&p->message, false, _("saved %s"), clock);
	text_copy(p->saved, sizeof p->saved, p->message.text);
	const struct diary_row *row = picked_row(p);
	if (!row)
		return;
	if (p->before.trap) {
		say_marks(&p->before, &row->visit, marks, sizeof marks);
		diary_page_say_kinds(p, &p->before, &row->visit, kinds);
	}
	message_set(&p->message, false, _("Kept: %s, %s%s%s%s%s%s"), row->day_text,
		row->visit_text, row->weekly_text[0] ? ", " : "", row->weekly_text,
		row->weekly_text[0] ? _(" a week") : "", marks, kinds);
}

void diary_page_not_saved(struct diary_page *p, const char *why)
{
	if (p->mode == DIARY_LIST)
		return; /* what was picked is shut, and why is said */
	run_page_not_saved(&p->typed, why);
	p->message = p->typed.message;
}

static void say_none_picked(struct diary_page *p)
{
	message_set(&p->message, false, "%s",
		p->diary->n ? _("No visit is picked.")
			    : _("No visit in this season: n adds one."));
}

static struct wish open_picked(struct diary_page *p)
{
	if (picked_row(p)) {
		p->day = picked_row(p)->visit.day;
		diary_open(p, false);
	} else
		say_none_picked(p);
	return page_wish(WANT_NOTHING);
}

static struct wish add(struct diary_page *p)
{
	diary_ask_day(p);
	return page_wish(WANT_NOTHING);
}

static struct wish take_out(struct diary_page *p)
{
	const struct diary_row *row = picked_row(p);
	struct wish w = page_wish(WANT_REMOVE_VISIT);

	if (!row) {
		say_none_picked(p);
		return page_wish(WANT_NOTHING);
	}
	if (!p->asked) {
		p->asked = true;
		message_set(&p->message, false,
			_("Take out the visit of %s (%s)? Del once more does it."),
			row->day_text, row->visit_text);
		return page_wish(WANT_NOTHING);
	}
	w.visit = row->visit;
	w.day = row->visit.day;
	return w;
}

static struct wish other_kind(struct diary_page *p)
{
	if (picked_row(p)) {
		p->day = picked_row(p)->visit.day;
		diary_kind_open(p);
	} else
		say_none_picked(p);
	return page_wish(WANT_NOTHING);
}

static struct wish read_changes(struct diary_page *p)
{
	p->mode = p->mode == DIARY_CHANGES ? DIARY_LIST : DIARY_CHANGES;
	p->old_top = 0;
	return page_wish(WANT_NOTHING);
}

static struct wish undo(struct diary_page *p)
{
	(void)p;
	return page_wish(WANT_UNDO_PAST);
}

static struct wish turn(struct diary_page *p)
{
	p->turn_season = true;
	return page_wish(WANT_NOTHING);
}

static struct wish look_for(struct diary_page *p)
{
	narrow_start(&p->sift.narrow);
	return page_wish(WANT_NOTHING);
}

static struct wish leave(struct diary_page *p)
{
	if (p->mode == DIARY_CHANGES)
		return read_changes(p);
	return page_wish(WANT_BACK);
}

static struct wish help(struct diary_page *p)
{
	(void)p;
	return page_wish(WANT_HELP);
}

static struct wish (*const deeds[DIARY_ACTIONS])(struct diary_page *p) = {
	[DIARY_OPEN] = open_picked,
	[DIARY_ADD] = add,
	[DIARY_OTHER] = other_kind,
	[DIARY_REMOVE] = take_out,
	[DIARY_OLD] = read_changes,
	[DIARY_UNDO] = undo,
	[DIARY_SEASON] = turn,
	[DIARY_NARROW] = look_for,
	[DIARY_BACK] = leave,
	[DIARY_HELP] = help,
};

/* What is read there is only left. */
static bool works_on_changes(int action)
{
	return action == DIARY_OLD || action == DIARY_BACK || action == DIARY_HELP;
}

static struct wish list_key(struct diary_page *p, struct input in)
{
	enum { LINES_MANY = 1 << 20 }; /* drawing keeps the top line in bounds */
	int action = keys_find(diary_page_keys(), in);
	bool reading = p->mode == DIARY_CHANGES, asked = p->asked;

	p->asked = false;
	if (reading ? list_move(action, LINES_MANY, p->rows, &p->old_top)
		    : diary_narrows_or_moves(p, action, in))
		return page_wish(WANT_NOTHING);
	p->asked = asked && action == DIARY_REMOVE;
	if (reading && !works_on_changes(action))
		message_set(&p->message, false, _("c or Esc goes back to the visits."));
	else if (action)
		return deeds[action](p);
	else
		page_no_key(&p->message, in);
	return page_wish(WANT_NOTHING);
}

struct wish diary_page_key(struct diary_page *p, struct input in)
{
	if (!input_is_key(in) || !p->diary)
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	if (p->mode == DIARY_VISIT)
		return diary_visit_key(p, in);
	if (p->mode == DIARY_KIND)
		return diary_kind_key(p, in);
	if (p->mode == DIARY_DAY) {
		diary_day_key(p, in);
		return page_wish(WANT_NOTHING);
	}
	return list_key(p, in);
}
