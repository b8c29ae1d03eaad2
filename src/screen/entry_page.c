#include "screen/entry_page.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

size_t entries_cells(const struct entry_family *f)
{
	size_t n = 0;

	for (size_t i = 0; i < f->n_columns; i++)
		n += f->columns[i].list_cols > 0;
	return n < ENTRY_CELLS_MAX ? n : ENTRY_CELLS_MAX;
}

const struct entry_row *entries_picked(const struct entry_page *p)
{
	return p->picked < p->n_shown ? &p->list->rows[p->shown[p->picked]] : NULL;
}

void entries_say_row(const struct entry_row *r, size_t cells, char *out, size_t size)
{
	size_t at = 0;

	out[0] = '\0';
	for (size_t i = 0; i < cells && at < size; i++)
		if (r->cells[i][0])
			at += (size_t)snprintf(out + at, size - at, "%s%s",
				at ? ", " : "", r->cells[i]);
}

static void keep_picked(struct entry_page *p)
{
	const struct entry_row *r = entries_picked(p);

	p->picked_id = r ? r->id : 0;
}

static bool is_wanted(const struct entry_page *p, const struct entry_row *r)
{
	if (!p->narrow.text[0] || narrow_contains(r->note, p->narrow.text))
		return true;
	for (size_t i = 0; i < entries_cells(p->family); i++)
		if (narrow_contains(r->cells[i], p->narrow.text))
			return true;
	return false;
}

void entry_page_pick(struct entry_page *p, int64_t id)
{
	for (size_t i = 0; i < p->n_shown; i++)
		if (p->list->rows[p->shown[i]].id == id) {
			p->picked = i;
			p->picked_id = id;
		}
}

/* The picked record stays picked if it is still there, else the row it stood in; and it
 * is picked again when it comes back before the hand has moved on. */
static void narrow_rows(struct entry_page *p)
{
	int64_t id = p->picked_id;

	p->shown = mem_grow(p->shown, &p->cap_shown, p->list->n + 1, sizeof *p->shown);
	p->n_shown = 0;
	for (size_t i = 0; i < p->list->n; i++)
		if (is_wanted(p, &p->list->rows[i]))
			p->shown[p->n_shown++] = i;
	if (p->picked >= p->n_shown)
		p->picked = p->n_shown ? p->n_shown - 1 : 0;
	entry_page_pick(p, id);
}

void entry_page_show(struct entry_page *p, const struct entry_family *family,
	const struct entry_list *list, bool first)
{
	p->family = family;
	p->list = list;
	if (first) {
		narrow_end(&p->narrow);
		p->picked = p->top = 0;
		p->picked_id = 0;
	}
	p->sure = 0;
	p->replacing = false;
	if (p->asking.wish.want != WANT_NOTHING)
		p->message = (struct message){ 0 };
	p->asking = (struct asking){ 0 };
	entries_fill_keys(p);
	entries_fill_columns(p);
	narrow_rows(p);
}

void entry_page_ask(struct entry_page *p, const struct entry_choices *pests)
{
	p->replacing = true;
	p->chooser = (struct chooser){ .choices = pests };
	chooser_open(&p->chooser, 0, &p->message);
}

void entry_page_free(struct entry_page *p)
{
	free(p->shown);
	*p = (struct entry_page){ 0 };
}

static const char *none(const struct entry_page *p)
{
	if (p->narrow.text[0])
		return _("Nothing is picked: Esc shows all again.");
	return p->family->can_add ? _("There is none: n makes one.")
				  : _("There is none.");
}

/* About the picked record. */
static struct wish about(struct entry_page *p, enum want want)
{
	const struct entry_row *r = entries_picked(p);
	struct wish w = page_wish(want);

	if (!r) {
		message_set(&p->message, false, "%s", none(p));
		return page_wish(WANT_NOTHING);
	}
	w.kind = (int)p->list->ask.kind;
	w.id = r->id;
	return w;
}

static struct wish about_by(struct entry_page *p, enum want want, int by)
{
	struct wish w = about(p, want);

	w.by = by;
	return w;
}

static struct wish diary(struct entry_page *p)
{
	struct wish w = about(p, WANT_DIARY);

	w.visit.trap = w.id;
	return w;
}

static struct wish begin_new(const struct entry_page *p)
{
	struct wish w = page_wish(WANT_FORM);

	w.kind = (int)p->list->ask.kind;
	return w;
}

static struct wish retire(struct entry_page *p)
{
	const struct entry_row *r = entries_picked(p);

	return about_by(p, WANT_RETIRE, r && !r->is_retired);
}

static struct wish remove_picked(struct entry_page *p, int64_t sure)
{
	struct wish w = about(p, WANT_REMOVE);

	w.by = w.id != 0 && w.id == sure;
	return w;
}

void entry_page_ask_removal(struct entry_page *p)
{
	const struct entry_row *r = entries_picked(p);
	char name[SAY_LINE];

	if (!r)
		return;
	p->sure = r->id;
	entries_say_row(r, entries_cells(p->family), name, sizeof name);
	message_set(&p->message, false,
		p->family->can_retire
			? _("Delete again takes it out: %s. x puts it away.")
			: _("Delete again takes it out: %s."),
		name);
}

/* o is other moths on the Run page and h shows hot spots elsewhere: no trap is hung or
 * comes down unasked. */
static struct wish ask_to(struct entry_page *p, enum want want)
{
	struct wish w = about(p, want);
	const struct entry_row *r = entries_picked(p);
	char name[SAY_LINE];

	if (!r)
		return w;
	entries_say_row(r, entries_cells(p->family), name, sizeof name);
	message_set(&p->message, false,
		want == WANT_HANG ? _("Enter hangs it today, Esc leaves it: %s.")
				  : _("Enter takes it down today, Esc leaves it: %s."),
		name);
	return asking_start(&p->asking, w);
}

static struct wish leave(struct entry_page *p)
{
	if (!p->narrow.text[0])
		return page_wish(WANT_BACK);
	narrow_end(&p->narrow);
	narrow_rows(p);
	return page_wish(WANT_NOTHING);
}

/* What is wished whatever row is picked; WANT_NOTHING: another action. */
static enum want want_of_all(int action)
{
	switch (action) {
	case ENTRIES_ALL:
		return WANT_ENTRY_ALL;
	case ENTRIES_FARM:
		return WANT_ENTRY_FARM;
	case ENTRIES_PEST:
		return WANT_ENTRY_PEST;
	case ENTRIES_UNDO:
		return WANT_UNDO_STEP;
	case ENTRIES_HELP:
		return WANT_HELP;
	default:
		return WANT_NOTHING;
	}
}

static struct wish act(struct entry_page *p, int action, int64_t sure, struct input in)
{
	enum want of_all = want_of_all(action);

	if (of_all != WANT_NOTHING)
		return page_wish(of_all);
	switch (action) {
	case ENTRIES_OPEN:
		return about(p, WANT_FORM);
	case ENTRIES_NEW:
		return begin_new(p);
	case ENTRIES_NARROW:
		narrow_start(&p->narrow);
		break;
	case ENTRIES_RETIRE:
		return retire(p);
	case ENTRIES_REMOVE:
		return remove_picked(p, sure);
	case ENTRIES_MOVE_DOWN:
		return about_by(p, WANT_MOVE, 1);
	case ENTRIES_MOVE_UP:
		return about_by(p, WANT_MOVE, -1);
	case ENTRIES_HANG:
		return ask_to(p, WANT_HANG);
	case ENTRIES_PULL:
		return ask_to(p, WANT_PULL);
	case ENTRIES_REPLACE:
		return about(p, WANT_REPLACE);
	case ENTRIES_DIARY:
		return diary(p);
	case ENTRIES_CHANGES:
		return about(p, WANT_CHANGES);
	case ENTRIES_BACK:
		return leave(p);
	default:
		page_no_key(&p->message, in);
	}
	return page_wish(WANT_NOTHING);
}

/* Which pest a trap is replaced for. */
static struct wish replace_key(struct entry_page *p, struct input in)
{
	const struct entry_choice *one = NULL;
	struct wish w = page_wish(WANT_NOTHING);

	if (in.kind == INPUT_ESC) {
		p->replacing = false;
		message_set(&p->message, false, _("Left as it was."));
	} else if (in.kind == INPUT_ENTER) {
		one = chooser_picked(&p->chooser);
		chooser_say_none(&p->chooser, &p->message);
		if (!one)
			return w;
		w = about(p, WANT_REPLACE);
		text_copy(w.words.note, sizeof w.words.note, one->text);
		p->replacing = false;
	} else
		chooser_key(&p->chooser, in, &p->message);
	return w;
}

struct wish entry_page_key(struct entry_page *p, struct input in)
{
	int action = keys_find(entry_page_keys(p), in);
	int64_t sure = p->sure;
	bool changed = false;
	struct wish w = page_wish(WANT_NOTHING);

	if (!input_is_key(in))
		return w;
	p->message = (struct message){ 0 };
	p->sure = 0;
	if (asking_key(&p->asking, in, &p->message, &w))
		return w;
	if (p->replacing)
		return replace_key(p, in);
	if (narrow_key(&p->narrow, in, &p->message, &changed)) {
		if (changed)
			narrow_rows(p);
		return page_wish(WANT_NOTHING);
	}
	if (list_move(action, p->n_shown, p->rows, &p->picked)) {
		keep_picked(p);
		return page_wish(WANT_NOTHING);
	}
	p->narrow.typing = false;
	return act(p, action, sure, in);
}
