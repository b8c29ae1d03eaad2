/* form_typing.c - what is typed into the field under the hand: a text, or a choice. */
#include "base/text.h"
#include "base/words.h"
#include "form_parts.h"

#include <string.h>

bool form_only(const struct form_page *p)
{
	return p->chooser.choices && p->chooser.choices->only;
}

enum { SHORT_BYTES = 16 }; /* of a value that is no sentence yet: 5, JR, day-month */

/* A short value is replaced by what is typed; a long text is added to. */
static bool is_fresh(const struct form_page *p)
{
	const struct column *c = form_column(p, p->at);

	return !p->touched && (c->type != &value_text || c->hi <= NAME_BYTES ||
				      strlen(form_has(p, p->at)) < SHORT_BYTES);
}

static size_t size_of(const struct column *c)
{
	if (c->type != &value_text)
		return VALUE_BYTES;
	return c->hi < ENTRY_TEXT ? (size_t)c->hi : ENTRY_TEXT;
}

struct line form_line(const struct form_page *p, char *text)
{
	return (struct line){ text, size_of(form_column(p, p->at)), p->cursor,
		is_fresh(p) && text[0] };
}

static void set_text(struct form_page *p, const char *text)
{
	char *field = form_text(p, p->at);

	text_copy(field, size_of(form_column(p, p->at)), text);
	p->cursor = strlen(field);
	p->touched = p->typed = true;
}

static void turn(struct form_page *p, int by)
{
	bool empty = !form_column(p, p->at)->needed;

	set_text(p, chooser_turn(&p->chooser, form_text(p, p->at), by, empty));
	p->turned = true;
}

/* Which way a key turns: a sign of the number pad does it as the arrows do. */
static int turns(struct input in)
{
	if (in.kind == INPUT_RIGHT || (in.kind == INPUT_CHAR && in.ch == '+'))
		return 1;
	if (in.kind == INPUT_LEFT || (in.kind == INPUT_CHAR && in.ch == '-'))
		return -1;
	return 0;
}

bool form_take(struct form_page *p)
{
	const struct entry_choice *one = chooser_picked(&p->chooser);

	if (!p->chooser.open)
		return true;
	if (one)
		set_text(p, one->text);
	else if (form_only(p)) {
		chooser_say_none(&p->chooser, &p->message);
		return false;
	}
	chooser_close(&p->chooser);
	return true;
}

static bool choice_key(struct form_page *p, struct input in)
{
	bool erases = in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE;

	if (p->chooser.open && erases && p->chooser.typed[0] == '\0')
		chooser_close(&p->chooser);
	else if (p->chooser.open)
		return chooser_key(&p->chooser, in, &p->message);
	else if (turns(in))
		turn(p, turns(in));
	else if (in.kind == INPUT_CHAR)
		chooser_open(&p->chooser, in.ch, &p->message);
	else if (erases && !form_column(p, p->at)->needed)
		set_text(p, "");
	else
		return in.kind == INPUT_HOME || in.kind == INPUT_END || erases;
	return true;
}

/* Typing shows the choices that it may become; none is picked until Down is pressed. */
static void narrow(struct form_page *p)
{
	struct chooser *s = &p->chooser;
	const char *text = form_text(p, p->at);

	chooser_close(s);
	s->picked = -1;
	text_copy(s->typed, sizeof s->typed, text);
	s->open = s->choices && text[0] && chooser_matches(s) > 0 &&
		  !chooser_find(s, text);
}

/* Whether a key changes a text, and not only where the hand stands in it. */
static bool types(struct input in)
{
	return in.kind == INPUT_CHAR || in.kind == INPUT_BACKSPACE ||
	       in.kind == INPUT_DELETE;
}

static bool text_key(struct form_page *p, struct input in)
{
	char *text = form_text(p, p->at);
	struct line l = form_line(p, text);
	bool has = p->chooser.choices && p->chooser.choices->n > 0;
	bool arrow = in.kind == INPUT_LEFT || in.kind == INPUT_RIGHT;

	if (has && arrow && !p->chooser.open && (text[0] == '\0' || p->turned)) {
		turn(p, turns(in));
		return true;
	}
	if (p->chooser.open && (in.kind == INPUT_UP || in.kind == INPUT_DOWN))
		return chooser_key(&p->chooser, in, &p->message);
	if (!line_key(&l, in, &p->message))
		return false;
	p->cursor = l.at;
	p->touched = true;
	p->turned = false;
	if (types(in)) {
		p->typed = true;
		narrow(p);
	}
	return true;
}

bool form_typing_key(struct form_page *p, struct input in)
{
	return form_only(p) ? choice_key(p, in) : text_key(p, in);
}
