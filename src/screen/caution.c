#include "screen/caution.h"

#include "screen/reader.h"

enum { ROWS_LEAST = 4 };

void caution_draw(struct canvas *c, int first, int *last, const char *text)
{
	int rows = *last - first + 1, cols = c->cols - 2;

	if (!text || !text[0] || rows < ROWS_LEAST)
		return;
	int need = (int)reader_lines(text, cols);
	if (need > rows / 3)
		need = 1;
	*last -= need;
	if (need > 1)
		reader_text(c, (struct reader_box){ *last + 1, 1, cols, need, 0 },
			INK_QUIET, text);
	else
		canvas_textf(c, *last + 1, 1, cols, INK_QUIET, "%.*s",
			(int)reader_cut(text, cols), text);
}
