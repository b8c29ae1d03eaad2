#include "screen/page.h"

#include "base/text.h"
#include "base/words.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static bool is_key(struct input key, struct input in)
{
	if (key.kind != in.kind || key.kind == INPUT_NONE)
		return false;
	if (key.kind != INPUT_CHAR)
		return true;
	return key.ch ? key.ch == in.ch : in.ch >= '0' && in.ch <= '9';
}

int keys_find(struct key_rows keys, struct input in)
{
	for (size_t i = 0; i < keys.n; i++)
		if (is_key(keys.rows[i].in, in) || is_key(keys.rows[i].alias, in))
			return keys.rows[i].action;
	return 0;
}

void message_set(struct message *m, bool is_fault, const char *fmt, ...)
{
	char text[1024];
	va_list args;

	va_start(args, fmt);
	words_vprint(text, sizeof text, fmt, args);
	va_end(args);
	m->is_fault = is_fault;
	text_shorten_paths(text, sizeof m->text);
	text_copy(m->text, sizeof m->text, text);
}

int message_typed(struct message *m, const struct message *said, const char *prompt,
	const char *text, int cols)
{
	int room = cols - 3 - text_cols(prompt);
	uint32_t cp = 0;

	while (*text && text_cols(text) > (room > 0 ? room : 0))
		text += text_decode(text, strlen(text), &cp);
	message_set(m, said->is_fault, "%s%s%s%s", prompt, text,
		said->text[0] ? "  " : "", said->text);
	return 1 + text_cols(prompt) + text_cols(text);
}

struct wish page_wish(enum want want)
{
	return (struct wish){ .want = want, .trap = -1, .day = DAY_NONE };
}

void page_no_key(struct message *m, struct input in)
{
	char key[5] = "";

	if (in.kind == INPUT_DELETE)
		message_set(m, false, _("Delete does nothing here: ? shows the keys"));
	if (in.kind != INPUT_CHAR)
		return;
	text_encode(in.ch, key);
	message_set(m, false, _("%s does nothing here: ? shows the keys"), key);
}

void page_scroll(size_t n, int rows, size_t *picked, size_t *top)
{
	size_t room = rows < 1 ? 1 : (size_t)rows;

	if (*picked >= n)
		*picked = n ? n - 1 : 0;
	if (*top + room > n)
		*top = n > room ? n - room : 0;
	if (*picked < *top)
		*top = *picked;
	if (*picked >= *top + room)
		*top = *picked - room + 1;
}

void page_scroll_near(size_t n, int rows, size_t *picked, size_t *top)
{
	page_scroll(n, rows, picked, top);
	if (rows < 3)
		return;
	if (*picked == *top && *top > 0)
		--*top;
	else if (*picked + 1 == *top + (size_t)rows && *picked + 1 < n)
		++*top;
}
