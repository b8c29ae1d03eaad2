#include "screen/chooser.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/narrow.h"

#include <string.h>

enum { CHOOSER_TAKE = 1, CHOOSER_PICK, CHOOSER_DROP }; /* for the key line alone */

static const struct key_row line_keys[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, CHOOSER_TAKE, "Enter", N_("take"),
		"" },
	{ { INPUT_CHAR, '+' }, { INPUT_CHAR, '-' }, CHOOSER_PICK, "+ -",
		NC_("key", "pick"), "" },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, CHOOSER_DROP, "Esc", N_("drop"), "" },
};

/* Behind letters + and - are letters too. */
static const struct key_row typed_keys[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, CHOOSER_TAKE, "Enter", N_("take"),
		"" },
	{ { INPUT_UP, 0 }, { INPUT_NONE, 0 }, CHOOSER_PICK, "Up Down",
		NC_("key", "pick"), "" },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, CHOOSER_DROP, "Esc", N_("drop"), "" },
};

static size_t count(const struct chooser *s)
{
	return s->choices ? s->choices->n : 0;
}

const struct entry_choice *chooser_match(const struct chooser *s, size_t k)
{
	for (int pass = 0; pass < 2; pass++)
		for (size_t i = 0; i < count(s); i++) {
			const struct entry_choice *c = &s->choices->items[i];
			bool begins = narrow_begins(c->text, s->typed);

			if (pass == 0 ? !begins
				      : begins || !narrow_contains(c->text, s->typed))
				continue;
			if (k-- == 0)
				return c;
		}
	return NULL;
}

size_t chooser_matches(const struct chooser *s)
{
	size_t n = 0;

	for (size_t i = 0; i < count(s); i++)
		n += narrow_contains(s->choices->items[i].text, s->typed);
	return n;
}

struct key_rows chooser_keys(const struct chooser *s)
{
	const size_t n = sizeof line_keys / sizeof *line_keys;

	if (chooser_matches(s) == 0)
		return (struct key_rows){ line_keys + n - 1, 1 };
	return (struct key_rows){ s->typed[0] ? typed_keys : line_keys, n };
}

const struct entry_choice *chooser_picked(const struct chooser *s)
{
	return s->open && s->picked >= 0 ? chooser_match(s, (size_t)s->picked) : NULL;
}

static bool is_same(const char *a, const char *b)
{
	return narrow_begins(a, b) && narrow_begins(b, a);
}

const struct entry_choice *chooser_find(const struct chooser *s, const char *text)
{
	for (size_t i = 0; i < count(s); i++)
		if (is_same(s->choices->items[i].text, text))
			return &s->choices->items[i];
	return NULL;
}

const char *chooser_turn(const struct chooser *s, const char *text, int by, bool empty)
{
	const struct entry_choice *now = chooser_find(s, text);
	size_t n = count(s), all = n + empty, at = n;

	if (n == 0)
		return "";
	if (now)
		at = (size_t)(now - s->choices->items);
	else if (!empty)
		at = by > 0 ? n - 1 : 0;
	at = by > 0 ? (at + 1) % all : (at + all - 1) % all;
	return at < n ? s->choices->items[at].text : "";
}

void chooser_open(struct chooser *s, uint32_t ch, struct message *m)
{
	s->open = true;
	s->typed[0] = '\0';
	s->at = 0;
	s->picked = 0;
	if (ch)
		chooser_key(s, (struct input){ INPUT_CHAR, ch }, m);
}

void chooser_close(struct chooser *s)
{
	s->open = false;
	s->typed[0] = '\0';
	s->at = 0;
	s->picked = 0;
}

static void pick(struct chooser *s, int by)
{
	int n = (int)chooser_matches(s), least = s->choices->only ? 0 : -1;

	s->picked += by;
	if (s->picked >= n)
		s->picked = n - 1;
	if (s->picked < least)
		s->picked = least;
}

/* Which way a key picks: before anything narrows the list the number pad's signs do. */
static int picks(const struct chooser *s, struct input in)
{
	bool bare = s->choices->only && s->typed[0] == '\0' && in.kind == INPUT_CHAR;

	if (in.kind == INPUT_UP || in.kind == INPUT_LEFT || (bare && in.ch == '-'))
		return -1;
	if (in.kind == INPUT_DOWN || in.kind == INPUT_RIGHT || (bare && in.ch == '+'))
		return 1;
	return 0;
}

/* Said as it is typed, and not only when it is to be taken. */
void chooser_say_none(const struct chooser *s, struct message *m)
{
	if (s->choices->only && chooser_matches(s) == 0)
		message_set(m, true,
			_("Nothing here is called \"%s\": Backspace shows more, Esc "
			  "leaves it as it was."),
			s->typed);
}

bool chooser_key(struct chooser *s, struct input in, struct message *m)
{
	struct line l = { s->typed, sizeof s->typed, s->at, false };

	if (picks(s, in))
		pick(s, picks(s, in));
	else if (!line_key(&l, in, m))
		return false;
	else {
		s->at = l.at;
		s->picked = s->choices->only ? 0 : -1;
		chooser_say_none(s, m);
	}
	return true;
}

void chooser_draw(
	const struct chooser *s, struct canvas *c, int first, int last, int col)
{
	int rows = last - first + 1, at = s->picked < 0 ? 0 : s->picked;
	int top = at >= rows ? at - rows + 1 : 0, cols = 0;
	const struct entry_choice *one = NULL;

	if (rows < 1)
		return;
	for (int i = 0; i < rows && (one = chooser_match(s, (size_t)(top + i))); i++)
		if (text_cols(one->text) > cols)
			cols = text_cols(one->text);
	for (int i = 0; i < rows && (one = chooser_match(s, (size_t)(top + i))); i++) {
		enum ink ink = top + i == s->picked ? INK_PICKED : INK_PLAIN;

		canvas_text(c, first + i, 0, c->cols, INK_PLAIN, "");
		if (ink == INK_PICKED && col >= 2)
			canvas_text(c, first + i, col - 2, 1, ink, ">");
		canvas_textf(c, first + i, col, c->cols - col - 1, ink, "%s%*s  %s",
			one->text, cols - text_cols(one->text), "", one->help);
	}
}
