#include "screen/list.h"

#include "base/text.h"
#include "base/words.h"

static size_t up(size_t at, size_t by)
{
	return at > by ? at - by : 0;
}

bool list_move(int action, size_t n, int rows, size_t *picked)
{
	size_t page = rows > 1 ? (size_t)rows : 1, last = n ? n - 1 : 0;
	size_t down = *picked + (action == LIST_PAGE_DOWN ? page : 1);

	switch (action) {
	case LIST_UP:
		*picked = up(*picked, 1);
		return true;
	case LIST_PAGE_UP:
		*picked = up(*picked, page);
		return true;
	case LIST_DOWN:
	case LIST_PAGE_DOWN:
		*picked = down < last ? down : last;
		return true;
	case LIST_HOME:
		*picked = 0;
		return true;
	case LIST_END:
		*picked = last;
		return true;
	default:
		return false;
	}
}

void columns_want(struct columns *s, size_t i, const char *text)
{
	int cols = text_cols(text);

	if (cols > s->want[i])
		s->want[i] = cols;
}

static int least_of(const struct columns *s, size_t i)
{
	int want = s->want[i], least = s->col[i].least, whole = s->col[i].whole;

	if (want == 0)
		return 0;
	if (whole && want <= whole)
		return want > least ? want : least;
	if (whole > least)
		least = whole;
	return want < least ? want : least;
}

/* Terminal columns of all, with one blank between two. */
static int total(const struct columns *s)
{
	int sum = 0;

	for (size_t i = 0; i < s->n; i++)
		sum += s->width[i] ? s->width[i] + 1 : 0;
	return sum ? sum - 1 : 0;
}

static bool drop_one(struct columns *s)
{
	size_t lowest = s->n;

	for (size_t i = 0; i < s->n; i++)
		if (s->width[i] && s->col[i].drop &&
			(lowest == s->n || s->col[i].drop < s->col[lowest].drop))
			lowest = i;
	if (lowest == s->n)
		return false;
	s->width[lowest] = 0;
	return true;
}

static void widen(struct columns *s, int room)
{
	for (size_t i = 0; i < s->n; i++) {
		int more = s->want[i] - s->width[i];

		if (s->width[i] == 0 || more <= 0)
			continue;
		if (more > room)
			more = room;
		s->width[i] += more;
		room -= more;
	}
}

/* Two blanks between columns where there is room for that and it is wanted. */
static void place(struct columns *s, int from, int room)
{
	int kept = 0, at = from;

	for (size_t i = 0; i < s->n; i++)
		kept += s->width[i] > 0;
	for (size_t i = 0; i < s->n; i++) {
		s->at[i] = at;
		if (s->width[i])
			at += s->width[i] + (room >= kept - 1 && !s->tight ? 2 : 1);
	}
}

void columns_fit(struct columns *s, int from, int to)
{
	int room = to - from;

	for (size_t i = 0; i < s->n; i++)
		s->width[i] = least_of(s, i);
	while (total(s) > room && drop_one(s))
		;
	if (total(s) < room)
		widen(s, room - total(s));
	place(s, from, room - total(s));
	s->dropped = false;
	for (size_t i = 0; i < s->n; i++)
		s->dropped = s->dropped || s->width[i] < s->want[i];
}

void columns_cell(const struct columns *s, struct canvas *c, int row, size_t i,
	enum ink ink, const char *text)
{
	int width = s->width[i];

	if (width > 0)
		canvas_text(
			c, row, s->at[i], s->col[i].right ? -width : width, ink, text);
}

void columns_heads(const struct columns *s, struct canvas *c, int row)
{
	for (size_t i = 0; i < s->n; i++)
		if (s->col[i].head[0])
			columns_cell(s, c, row, i, INK_QUIET, words_in(s->col[i].head));
}

enum ink list_ink(enum tone tone)
{
	static const enum ink ink[] = {
		[TONE_PLAIN] = INK_PLAIN,
		[TONE_TITLE] = INK_TITLE,
		[TONE_OVER] = INK_OVER,
		[TONE_UNSURE] = INK_UNSURE,
		[TONE_QUIET] = INK_QUIET,
	};

	return ink[tone];
}
