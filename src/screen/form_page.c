#include "screen/form_page.h"

#include "base/text.h"
#include "base/words.h"
#include "form_parts.h"

#include <string.h>

static const struct key_row rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, FORM_ENTER, "Enter", N_("next, save"),
		N_("to the next field, on the last one saves the record; on a choice "
		   "that must be made shows the list") },
	{ { INPUT_UP, 0 }, { INPUT_CHAR, '/' }, FORM_UP, "Up", NULL,
		N_("to the field above; from the first one to the last; / as long as "
		   "nothing is typed into the field") },
	{ { INPUT_DOWN, 0 }, { INPUT_NONE, 0 }, FORM_DOWN, "Down", NULL,
		N_("to the field below") },
	{ { INPUT_TAB, 0 }, { INPUT_NONE, 0 }, FORM_DOWN, "Tab", NULL,
		N_("to the field below") },
	{ { INPUT_PAGE_UP, 0 }, { INPUT_NONE, 0 }, FORM_FIRST, "PgUp", NULL,
		N_("to the first field") },
	{ { INPUT_PAGE_DOWN, 0 }, { INPUT_NONE, 0 }, FORM_LAST, "PgDn", NULL,
		N_("to the last field") },
	{ { INPUT_LEFT, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "Left", NULL,
		N_("in a text one letter back; among choices the one before") },
	{ { INPUT_RIGHT, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "Right", NULL,
		N_("in a text one letter on; among choices the next one") },
	{ { INPUT_CHAR, '+' }, { INPUT_CHAR, '-' }, FORM_TYPE, "+", NULL,
		N_("the next choice, the one before; in a text itself") },
	{ { INPUT_HOME, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "Home", NULL,
		N_("to the start of the text") },
	{ { INPUT_END, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "End", NULL,
		N_("to the end of the text") },
	{ { INPUT_BACKSPACE, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "Backspace", NULL,
		N_("takes out the letter before the cursor; empties a choice") },
	{ { INPUT_DELETE, 0 }, { INPUT_NONE, 0 }, FORM_TYPE, "Delete", NULL,
		N_("takes out the letter under the cursor; empties a choice") },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, FORM_ESC, "Esc", N_("back"),
		N_("with nothing changed to the page before; else asks: Esc again "
		   "drops what is typed, Enter saves it from any field") },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, FORM_HELP, "?", N_("keys"),
		N_("this page, as long as nothing is typed into the field") },
};

struct key_rows form_page_keys(void)
{
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

const char *const *form_page_notes(void)
{
	static const char *const notes[] = {
		N_("A field in < > is chosen from a list: turn it, or type letters and "
		   "only what contains them is left; Enter takes the picked one."),
		N_("In front of a field * marks what is changed and not saved yet."),
		N_("A short value is replaced by what is typed; Left or Backspace "
		   "first edits it instead."),
		N_("After a trap was saved the next one is offered: Enter saves it as "
		   "it stands, * begins another block, Esc ends, until something is "
		   "typed."),
		NULL,
	};

	return notes;
}

const struct column *form_column(const struct form_page *p, size_t i)
{
	return &p->family->columns[p->fields[i]];
}

char *form_text(struct form_page *p, size_t i)
{
	return p->entry.text[p->fields[i]];
}

const char *form_has(const struct form_page *p, size_t i)
{
	return p->entry.text[p->fields[i]];
}

int form_page_field(const struct form_page *p)
{
	return p->at < p->n ? p->fields[p->at] : -1;
}

int form_page_left(const struct form_page *p)
{
	return p->left < p->n ? p->fields[p->left] : -1;
}

bool form_page_changed(const struct form_page *p)
{
	if (p->chooser.open || (p->typed && p->entry.id == 0))
		return true;
	for (size_t i = 0; i < p->n; i++)
		if (strcmp(form_has(p, i), p->was.text[p->fields[i]]) != 0)
			return true;
	return false;
}

/* The hand comes to a field. */
static void go_to(struct form_page *p, size_t at)
{
	p->at = at;
	p->cursor = strlen(form_has(p, at));
	p->touched = p->turned = false;
	p->chooser = (struct chooser){ 0 };
}

size_t form_name_field(const struct form_page *p)
{
	for (size_t i = 0; i < p->n; i++)
		if (form_column(p, i)->needed && form_column(p, i)->pick == PICK_NONE)
			return i;
	return 0;
}

size_t form_first_lacking(const struct form_page *p)
{
	size_t i = 0;

	while (i < p->n && (!form_column(p, i)->needed || form_has(p, i)[0]))
		i++;
	return i;
}

static size_t first_field(const struct form_page *p)
{
	if (p->entry.id)
		return 0;
	return form_first_lacking(p) < p->n ? form_first_lacking(p)
					    : form_name_field(p);
}

void form_take_entry(struct form_page *p, const struct entry *entry)
{
	p->entry = p->was = *entry;
	p->asked = p->elsewhere = p->offers = p->doubted = p->typed = false;
	p->how = 0;
	p->top = 0;
	p->left = p->n;
	go_to(p, first_field(p));
}

void form_page_show(struct form_page *p, const struct entry_family *family,
	const struct entry *entry)
{
	p->family = family;
	p->n = 0;
	for (size_t i = 0; i < family->n_columns && i < ENTRY_FIELDS_MAX; i++)
		if (family->columns[i].label)
			p->fields[p->n++] = (int)i;
	form_take_entry(p, entry);
}

void form_page_choose(struct form_page *p, const struct entry_choices *choices)
{
	bool open = p->chooser.open;

	p->chooser.choices = choices;
	p->chooser.open = open && choices && choices->n > 0;
}

void form_page_refuse(struct form_page *p, const struct entry_fault *fault)
{
	bool goes_back = p->by_enter && p->left < p->n;

	/* The hand is elsewhere by then: it says which field it speaks of. */
	if (goes_back || p->left >= p->n)
		message_set(&p->message, true, "%s", fault->text);
	else
		message_set(&p->message, true, "%s: %s",
			_(form_column(p, p->left)->label), fault->text);
	if (goes_back)
		go_to(p, p->left);
}

void form_page_ask(struct form_page *p, const char *question)
{
	p->asked = true;
	message_set(&p->message, false, "%s", question);
}

void form_page_not_saved(struct form_page *p, const struct entry_fault *fault)
{
	p->elsewhere = fault->is_elsewhere;
	p->doubted = fault->is_doubt;
	message_set(&p->message, true, "%s%s", fault->text,
		fault->is_elsewhere
			? _(". Enter again puts yours in, Esc shows theirs.")
		: fault->is_doubt ? _(". Enter again saves it all the same.")
				  : "");
	for (size_t i = 0; i < p->n; i++)
		if (p->fields[i] == fault->field)
			go_to(p, i);
}

static struct wish put(struct form_page *p, int how)
{
	struct wish w = page_wish(WANT_PUT);

	p->asked = p->elsewhere = p->offers = p->doubted = false;
	p->how = how;
	w.kind = (int)p->entry.kind;
	w.id = p->entry.id;
	w.by = how;
	return w;
}

static struct wish move(struct form_page *p, size_t to, bool by_enter)
{
	if (!form_take(p))
		return page_wish(WANT_NOTHING);
	p->left = p->at;
	p->by_enter = by_enter;
	go_to(p, to);
	return page_wish(WANT_FORM_FIELD);
}

/* Enter on a choice that must be made shows what there is. */
static bool shows_list(struct form_page *p)
{
	if (!form_only(p) || p->chooser.open || form_has(p, p->at)[0] ||
		!form_column(p, p->at)->needed)
		return false;
	chooser_open(&p->chooser, 0, &p->message);
	return true;
}

static struct wish enter(struct form_page *p)
{
	if (shows_list(p))
		return page_wish(WANT_NOTHING);
	if (p->at + 1 < p->n)
		return move(p, p->at + 1, true);
	if (!form_take(p))
		return page_wish(WANT_NOTHING);
	if (p->entry.id && !form_page_changed(p))
		return page_wish(WANT_BACK);
	return put(p, 0);
}

/* A new record that only wants saving: it is not dropped unasked. */
static bool is_ready(const struct form_page *p)
{
	return p->entry.id == 0 && form_first_lacking(p) == p->n;
}

static struct wish leave(struct form_page *p)
{
	if (p->chooser.open && form_only(p)) {
		chooser_close(&p->chooser);
		message_set(&p->message, false, _("Left as it was."));
		return page_wish(WANT_NOTHING);
	}
	chooser_close(&p->chooser);
	if (!form_page_changed(p) && !is_ready(p))
		return page_wish(WANT_BACK);
	p->asked = true;
	message_set(&p->message, false,
		_("Not saved: Esc again drops it, Enter saves it."));
	return page_wish(WANT_NOTHING);
}

static struct wish act(struct form_page *p, struct input in)
{
	switch (keys_find(form_page_keys(), in)) {
	case FORM_ENTER:
		return enter(p);
	case FORM_DOWN:
		return move(p, (p->at + 1) % p->n, false);
	case FORM_UP:
		return move(p, (p->at + p->n - 1) % p->n, false);
	case FORM_FIRST:
		return move(p, 0, false);
	case FORM_LAST:
		return move(p, p->n - 1, false);
	case FORM_ESC:
		return leave(p);
	default:
		return page_wish(WANT_NOTHING);
	}
}

/* While a question stands in the message line, Enter and Esc answer it. True: they did,
 * or * did; any other key goes on as if it had not been asked. */
static bool answers(struct form_page *p, struct input in, struct wish *w)
{
	bool elsewhere = p->elsewhere, offers = p->offers, asked = p->asked;
	bool doubted = p->doubted;
	int how = p->how;
	bool yes = in.kind == INPUT_ENTER, no = in.kind == INPUT_ESC;

	p->asked = p->elsewhere = p->doubted = false;
	p->how = 0;
	if (offers && p->can_block && in.kind == INPUT_CHAR && in.ch == '*')
		*w = page_wish(WANT_PUT_BLOCK);
	else if ((elsewhere || doubted) && yes)
		*w = put(p, how | (elsewhere ? ENTRY_OVER : ENTRY_SURE));
	else if ((offers || asked) && yes)
		*w = put(p, 0);
	else if (elsewhere && no)
		*w = page_wish(WANT_THEIRS);
	else if ((offers || asked) && no)
		*w = page_wish(WANT_BACK);
	else
		return false;
	return true;
}

/* A sign that no value begins with, before anything is typed: / is on the number pad,
 * which with its lock on has Enter to go on and no arrow to go back. */
static bool is_bare(const struct form_page *p, struct input in, uint32_t ch)
{
	return in.kind == INPUT_CHAR && in.ch == ch && !p->touched && !p->chooser.open;
}

struct wish form_page_key(struct form_page *p, struct input in)
{
	struct wish w = page_wish(WANT_NOTHING);

	if (!input_is_key(in))
		return w;
	p->message = (struct message){ 0 };
	if (form_bounces(p, in) || answers(p, in, &w))
		return w;
	if (p->n == 0)
		return page_wish(in.kind == INPUT_ESC ? WANT_BACK : WANT_NOTHING);
	if (is_bare(p, in, '?'))
		return page_wish(WANT_HELP);
	if (is_bare(p, in, '/') || !form_typing_key(p, in))
		return act(p, in);
	/* An offer stands until something is typed: looking at it ends nothing. */
	p->offers = p->offers && !form_page_changed(p);
	return w;
}
