#include "screen/sift.h"

#include "base/mem.h"
#include "screen/list.h"

#include <stdlib.h>
#include <string.h>

void sift_forget(struct sift *s)
{
	s->is_found = false;
}

/* The picked row stays picked; one that is out gives way, and comes back with the rows
 * when none was left. */
static void settle(struct sift *s, size_t *picked)
{
	size_t at = 0;

	if (s->n == 0) {
		s->was = *picked == SIZE_MAX ? s->was : *picked;
		*picked = s->all ? SIZE_MAX : 0;
		return;
	}
	at = sift_place(s, *picked == SIZE_MAX ? s->was : *picked);
	*picked = s->rows[at < s->n ? at : s->n - 1];
}

void sift_find(
	struct sift *s, size_t all, sift_has *has, const void *page, size_t *picked)
{
	if (!s->is_found || s->all != all) {
		s->rows = mem_grow(s->rows, &s->cap, all + 1, sizeof *s->rows);
		s->n = 0;
		for (size_t i = 0; i < all; i++)
			if (!s->narrow.text[0] || has(page, i, s->narrow.text))
				s->rows[s->n++] = i;
		s->all = all;
		s->is_found = true;
	}
	settle(s, picked);
}

void sift_end(struct sift *s)
{
	narrow_end(&s->narrow);
	s->is_found = false;
}

void sift_free(struct sift *s)
{
	free(s->rows);
	*s = (struct sift){ 0 };
}

bool sift_key(struct sift *s, struct input in, struct message *m)
{
	bool changed = false;

	if (in.kind == INPUT_ESC && s->narrow.text[0])
		s->narrow.typing = true;
	if (!narrow_key(&s->narrow, in, m, &changed))
		return false;
	s->is_found = s->is_found && !changed;
	return true;
}

bool sift_move(const struct sift *s, int action, int rows, size_t *picked)
{
	size_t at = sift_place(s, *picked);

	if (!list_move(action, s->n, rows, &at))
		return false;
	if (at < s->n)
		*picked = s->rows[at];
	return true;
}

size_t sift_place(const struct sift *s, size_t row)
{
	size_t from = 0, to = s->n;

	while (from < to) {
		size_t middle = from + (to - from) / 2;

		if (s->rows[middle] < row)
			from = middle + 1;
		else
			to = middle;
	}
	return from;
}

bool sift_shows(const struct sift *s, size_t row)
{
	size_t at = sift_place(s, row);

	return at < s->n && s->rows[at] == row;
}

int sift_say(const struct sift *s, struct message *m)
{
	return narrow_say(&s->narrow, s->n, s->all, m);
}

struct key_rows sift_keys(struct sift *s, struct key_rows page)
{
	return narrow_keys(&s->narrow, s->n, page);
}

void sift_title(const struct sift *s, char *title, size_t size)
{
	narrow_title(&s->narrow, s->n, s->all, title, size);
}
