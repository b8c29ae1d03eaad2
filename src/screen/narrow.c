#include "screen/narrow.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>
#include <wctype.h>

bool narrow_begins(const char *text, const char *part)
{
	uint32_t a = 0, b = 0;
	size_t n = 0, of = 0;

	while ((n = text_decode(part, strnlen(part, 4), &b)) > 0) {
		of = text_decode(text, strnlen(text, 4), &a);
		if (of == 0 || towlower((wint_t)a) != towlower((wint_t)b))
			return false;
		text += of;
		part += n;
	}
	return true;
}

bool narrow_contains(const char *text, const char *part)
{
	uint32_t cp = 0;

	while (!narrow_begins(text, part)) {
		if (*text == '\0')
			return false;
		text += text_decode(text, strnlen(text, 4), &cp);
	}
	return true;
}

void narrow_start(struct narrow *n)
{
	n->typing = true;
	n->at = strlen(n->text);
}

void narrow_end(struct narrow *n)
{
	*n = (struct narrow){ 0 };
}

bool narrow_key(struct narrow *n, struct input in, struct message *m, bool *changed)
{
	struct line l = { n->text, sizeof n->text, n->at, false };
	char was[sizeof n->text];

	*changed = false;
	if (!n->typing || in.kind == INPUT_HOME || in.kind == INPUT_END)
		return false;
	if (in.kind == INPUT_ESC) {
		*changed = n->text[0] != '\0';
		narrow_end(n);
		return true;
	}
	text_copy(was, sizeof was, n->text);
	if (!line_key(&l, in, m))
		return false;
	n->at = l.at;
	*changed = strcmp(was, n->text) != 0;
	return true;
}

int narrow_say(const struct narrow *n, size_t shown, size_t all, struct message *m)
{
	const char *prompt = _("look for: ");
	char before[sizeof n->text];

	if (!n->typing && n->text[0])
		message_set(m, false, _("only with \"%s\": %zu of %zu, Esc shows all"),
			n->text, shown, all);
	if (!n->typing)
		return -1;
	message_set(m, false, _("%s%s  (%zu of %zu)"), prompt, n->text, shown, all);
	snprintf(before, sizeof before, "%.*s", (int)n->at, n->text);
	return 1 + text_cols(prompt) + text_cols(before);
}

struct key_rows narrow_keys(struct narrow *n, size_t shown, struct key_rows page)
{
	if (n->typing)
		return prompt_keys(shown > 0 ? PROMPT_LOOK : PROMPT_NONE_FOUND);
	if (!n->text[0] || page.n > NARROW_KEYS)
		return page;
	for (size_t i = 0; i < page.n; i++) {
		n->keys[i] = page.rows[i];
		if (page.rows[i].in.kind == INPUT_ESC)
			n->keys[i].word = N_("show all");
	}
	return (struct key_rows){ n->keys, page.n };
}

void narrow_title(
	const struct narrow *n, size_t shown, size_t all, char *title, size_t size)
{
	size_t at = strlen(title);

	if (n->text[0])
		snprintf(title + at, size - at, _(" \u00b7 %zu of %zu"), shown, all);
}
