#include "screen/merge_page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/line.h"
#include "screen/list.h"
#include "screen/prompt.h"

#include <stdlib.h>
#include <string.h>

enum {
	MERGE_ENTER = LIST_OTHERS,
	MERGE_FILE,
	MERGE_ANSWER,
	MERGE_OTHER,
	MERGE_UNDO,
	MERGE_BACK,
	MERGE_HELP,
};

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, MERGE_ENTER, "Enter",
		NC_("key", "open"),
		N_("opens the picked matter; shown what another book brings: merges "
		   "it") },
	{ { INPUT_CHAR, 'f' }, { INPUT_CHAR, '+' }, MERGE_FILE, "f", N_("other book"),
		N_("asks for the file of another book and shows what it would bring; "
		   "nothing is changed by that. + then takes the next book found "
		   "beside this one or on a stick") },
	LIST_KEYS,
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, MERGE_ANSWER, "1-6", NULL,
		N_("in an open matter: takes the answer with that number") },
	{ { INPUT_CHAR, 'c' }, { INPUT_CHAR, '*' }, MERGE_OTHER, "c", N_("other count"),
		N_("in an open matter of counts: types the count that holds, if it is "
		   "none of those") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, MERGE_UNDO, "u", N_("undo merge"),
		N_("asks; u again goes back to the book as it was before the latest "
		   "merge, as long as nothing was changed since") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, MERGE_BACK, "Esc", N_("back"),
		N_("to the list, from there to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, MERGE_HELP, "?", N_("keys"),
		N_("this page") },
};

/* What works on the list, and on the empty one, for the key line. */
static const struct key_row list_rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, MERGE_ENTER, "Enter",
		NC_("key", "open"), N_("opens the picked matter") },
	{ { INPUT_CHAR, 'f' }, { INPUT_CHAR, '+' }, MERGE_FILE, "f", N_("other book"),
		N_("asks for the file of another book") },
	{ { INPUT_CHAR, 'u' }, { INPUT_NONE, 0 }, MERGE_UNDO, "u", N_("undo merge"),
		N_("goes back to before the latest merge") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, MERGE_BACK, "Esc", N_("back"),
		N_("to the page before") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, MERGE_HELP, "?", N_("keys"),
		N_("this page") },
};

/* And while the path of another book is typed; the first where there is a choice. */
static const struct key_row path_rows[] = {
	{ { INPUT_CHAR, '+' }, { INPUT_NONE, 0 }, MERGE_FILE, "+", N_("next found"),
		N_("the next book found") },
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, MERGE_ENTER, "Enter", N_("look"),
		N_("shows what the book would bring") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, MERGE_BACK, "Esc", N_("leave it"),
		N_("to the list; nothing is merged") },
};

/* What works while another book is shown. */
static const struct key_row shown_rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, MERGE_ENTER, "Enter", N_("merge"),
		N_("merges the book that is shown") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, MERGE_BACK, "Esc", N_("leave it"),
		N_("to the list; nothing is merged") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, MERGE_HELP, "?", N_("keys"),
		N_("this page") },
};

/* And while a matter is open. */
static const struct key_row matter_rows[] = {
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, MERGE_ANSWER, "1-6", N_("settle"),
		N_("takes the answer with that number") },
	{ { INPUT_CHAR, 'c' }, { INPUT_CHAR, '*' }, MERGE_OTHER, "c", N_("other count"),
		N_("types the count that holds") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, MERGE_BACK, "Esc", N_("leave it"),
		N_("to the list; it stays open") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, MERGE_HELP, "?", N_("keys"),
		N_("this page") },
};

static size_t n_open(const struct merge_page *p)
{
	return p->open ? p->open->n : 0;
}

struct key_rows merge_page_keys_now(const struct merge_page *p)
{
	if (p->stage == MERGE_SHOWN)
		return (struct key_rows){ shown_rows,
			sizeof shown_rows / sizeof *shown_rows };
	if (p->stage == MERGE_COUNT)
		return prompt_keys(PROMPT_LINE);
	if (p->stage == MERGE_MATTER)
		return (struct key_rows){ matter_rows,
			sizeof matter_rows / sizeof *matter_rows };
	size_t skip = p->stage == MERGE_PATH ? p->n_found < 2 : n_open(p) == 0;
	if (p->stage == MERGE_PATH)
		return (struct key_rows){ path_rows + skip,
			sizeof path_rows / sizeof *path_rows - skip };
	/* With nothing to open, Enter asks for a file as f does. */
	return (struct key_rows){ list_rows + skip,
		sizeof list_rows / sizeof *list_rows - skip };
}

struct key_rows merge_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

static const struct open_matter *picked(const struct merge_page *p)
{
	return p->picked < n_open(p) ? &p->open->items[p->picked] : NULL;
}

/* Which of the books found the path names, from 1 on; 0: none, it was typed. */
size_t merge_page_found(const struct merge_page *p)
{
	for (size_t i = 0; i < p->n_found; i++)
		if (strcmp(p->found[i], p->path) == 0)
			return i + 1;
	return 0;
}

static void take_found(struct merge_page *p, size_t i)
{
	text_copy(p->path, sizeof p->path, p->found[i % p->n_found]);
	p->cursor = strlen(p->path);
}

static struct wish ask_path(struct merge_page *p)
{
	p->stage = MERGE_PATH;
	p->cursor = strlen(p->path);
	p->fresh = true;
	if (!p->path[0] && p->n_found > 0)
		take_found(p, 0);
	return page_wish(WANT_NOTHING);
}

static struct wish with_path(const struct merge_page *p, enum want want)
{
	struct wish w = page_wish(want);

	text_copy(w.words.note, sizeof w.words.note, p->path);
	return w;
}

static struct wish path_key(struct merge_page *p, struct input in)
{
	bool found = p->fresh && merge_page_found(p);
	struct line l = { p->path, sizeof p->path, p->cursor, found };

	if (in.kind == INPUT_ESC) {
		p->stage = MERGE_LIST;
		message_set(&p->message, false, _("Left as it was."));
		return page_wish(WANT_NOTHING);
	}
	if (in.kind == INPUT_ENTER && p->path[0]) {
		p->stage = MERGE_LIST;
		p->read = 0;
		return with_path(p, WANT_MERGE_LOOK);
	}
	if (in.kind == INPUT_CHAR && in.ch == '+' && p->n_found > 0 &&
		(p->fresh || merge_page_found(p)))
		take_found(p, merge_page_found(p));
	else if (in.kind == INPUT_ENTER || !line_key(&l, in, &p->message))
		message_set(&p->message, false,
			_("A path such as /media/stick/book.db; Esc leaves it."));
	else {
		p->cursor = l.at;
		p->fresh = false;
	}
	return page_wish(WANT_NOTHING);
}

static struct wish settle(const struct merge_page *p, int choice, int count)
{
	struct wish w = page_wish(WANT_SETTLE);

	w.id = (int64_t)p->picked;
	w.kind = choice;
	w.by = count;
	return w;
}

static struct wish count_key(struct merge_page *p, struct input in)
{
	struct line l = { p->count, 5, p->cursor, false };
	bool digit = in.kind == INPUT_CHAR && in.ch >= '0' && in.ch <= '9';

	if (in.kind == INPUT_ESC) {
		p->stage = MERGE_MATTER;
		return page_wish(WANT_NOTHING);
	}
	if (in.kind == INPUT_ENTER && p->count[0]) {
		p->stage = MERGE_LIST;
		return settle(p, -1, (int)strtol(p->count, NULL, 10));
	}
	if ((in.kind == INPUT_CHAR && !digit) || !line_key(&l, in, &p->message))
		message_set(&p->message, false,
			_("A count from 0 to 9999; Esc leaves it."));
	else
		p->cursor = l.at;
	return page_wish(WANT_NOTHING);
}

static struct wish answer(struct merge_page *p, struct input in)
{
	const struct open_matter *m = picked(p);
	int choice = (int)in.ch - '1';

	if (m && choice >= 0 && choice < m->n_choices) {
		p->stage = MERGE_LIST;
		return settle(p, choice, -1);
	}
	message_set(&p->message, false, _("There is no answer %c."), (char)in.ch);
	return page_wish(WANT_NOTHING);
}

static struct wish other_count(struct merge_page *p)
{
	const struct open_matter *m = picked(p);

	if (p->stage == MERGE_MATTER && m && m->takes_count) {
		p->stage = MERGE_COUNT;
		p->count[0] = '\0';
		p->cursor = 0;
	} else
		message_set(
			&p->message, false, _("That is for an open matter of counts."));
	return page_wish(WANT_NOTHING);
}

static struct wish enter(struct merge_page *p)
{
	if (p->stage == MERGE_SHOWN) {
		p->stage = MERGE_LIST;
		if (!p->look || p->look->nothing_new)
			return page_wish(WANT_NOTHING);
		return with_path(p, WANT_MERGE);
	}
	if (p->stage == MERGE_MATTER)
		message_set(&p->message, false, _("Take an answer by its number."));
	else if (picked(p)) {
		p->stage = MERGE_MATTER;
		p->read = 0;
	} else
		return ask_path(p);
	return page_wish(WANT_NOTHING);
}

static struct wish undo(struct merge_page *p, bool sure)
{
	struct wish w = page_wish(WANT_MERGE_UNDO);

	p->stage = MERGE_LIST;
	w.by = sure;
	return w;
}

static struct wish back(struct merge_page *p)
{
	if (p->stage == MERGE_LIST)
		return page_wish(WANT_BACK);
	if (p->stage == MERGE_SHOWN)
		message_set(&p->message, false, _("Nothing was merged."));
	p->stage = MERGE_LIST;
	return page_wish(WANT_NOTHING);
}

static struct wish act(struct merge_page *p, int action, bool sure, struct input in)
{
	switch (action) {
	case MERGE_ENTER:
		return enter(p);
	case MERGE_FILE:
		return ask_path(p);
	case MERGE_OTHER:
		return other_count(p);
	case MERGE_UNDO:
		return undo(p, sure);
	case MERGE_BACK:
		return back(p);
	case MERGE_HELP:
		return page_wish(WANT_HELP);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

/* What is read is moved through with the keys of a list. */
static bool move(struct merge_page *p, int action)
{
	size_t lines = p->read + 1000; /* drawing keeps it in bounds */

	if (p->stage == MERGE_LIST)
		return list_move(action, n_open(p), p->rows, &p->picked);
	return list_move(action, lines, p->rows, &p->read);
}

struct wish merge_page_key(struct merge_page *p, struct input in)
{
	bool sure = p->sure;

	if (!input_is_key(in))
		return page_wish(WANT_NOTHING);
	p->message = (struct message){ 0 };
	p->sure = false;
	if (p->stage == MERGE_PATH)
		return path_key(p, in);
	if (p->stage == MERGE_COUNT)
		return count_key(p, in);
	if (p->stage == MERGE_MATTER && in.kind == INPUT_CHAR && in.ch >= '0' &&
		in.ch <= '9')
		return answer(p, in);
	int action = keys_find(merge_page_keys(), in);
	if (move(p, action))
		return page_wish(WANT_NOTHING);
	return act(p, action, sure, in);
}
