/* help_page.c - the keys of a page, each in a sentence, and what its marks mean. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/reader.h"
#include "screen/why_page.h"

#include <stdio.h>
#include <stdlib.h>

enum { INDENT = 12, LEAD = 32 };

static void say_key(const struct key_row *k, char out[static LEAD])
{
	if (k->alias.kind == INPUT_CHAR) {
		char alias[5];

		text_encode(k->alias.ch, alias);
		snprintf(out, LEAD, _("%s or %s"), k->key, alias);
	} else
		text_copy(out, LEAD, k->key);
}

static void draw_text(struct help_page *p, struct canvas *c, int first, int last)
{
	size_t n = 0, n_notes = 0;

	while (p->notes && p->notes[n_notes])
		n_notes++;
	struct paragraph *text = mem_new(p->keys.n + 2 * n_notes, sizeof *text);
	char(*lead)[LEAD] = mem_new(p->keys.n, sizeof *lead);

	for (; n < p->keys.n; n++) {
		say_key(&p->keys.rows[n], lead[n]);
		text[n] = (struct paragraph){ INK_PLAIN, INDENT, lead[n],
			_(p->keys.rows[n].help) };
	}
	for (size_t i = 0; i < n_notes; i++) {
		text[n++] = (struct paragraph){ INK_PLAIN, 0, NULL, "" };
		text[n++] = (struct paragraph){ INK_PLAIN, 0, NULL, _(p->notes[i]) };
	}
	size_t lines = reader_draw(c, first, last, &p->top, text, n);
	if (p->rows > 0 && lines > p->top + (size_t)p->rows)
		reader_more(c, last, lines - p->top - (size_t)p->rows);
	free(lead);
	free(text);
}

void help_page_draw(struct help_page *p, struct canvas *c)
{
	char title[96];
	struct frame f = {
		.title = title, .message = &p->message, .keys = help_page_keys()
	};

	snprintf(title, sizeof title, _("Keys  %s"), p->title);
	if (!frame_draw(c, &f))
		return;
	p->rows = f.last - f.first + 1;
	draw_text(p, c, f.first, f.last);
	canvas_cursor(c, f.first, 0);
}
