#include "screen/page.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"

#include <stdarg.h>
#include <stdio.h>

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
	text_copy(m->text, sizeof m->text, text);
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

bool page_frame(struct canvas *c, const char *title, const char *right,
	const struct message *m, struct key_rows keys, int *first, int *last)
{
	struct frame f = { .title = title, .right = right, .message = m, .keys = keys };
	bool drawn = frame_draw(c, &f);

	*first = f.first;
	*last = f.last;
	return drawn;
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
