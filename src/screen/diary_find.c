/* diary_find.c - which visits of the diary are shown while something is looked for. */
#include "diary_parts.h"

#include "base/words.h"

static bool has(const void *page, size_t i, const char *text)
{
	const struct diary_page *p = page;
	const struct diary_row *r = &p->diary->rows[i];

	return narrow_contains(r->day_text, text) ||
	       narrow_contains(r->visit_text, text) ||
	       narrow_contains(r->kinds_text, text) ||
	       narrow_contains(r->words.scout, text) ||
	       narrow_contains(r->words.note, text) ||
	       (r->n_old > 0 && narrow_contains(_("corrected"), text));
}

void diary_find(struct diary_page *p)
{
	if (p->mode == DIARY_LIST)
		sift_find(&p->sift, p->diary->n, has, p, &p->picked);
}

/* The day goes with the hand: it finds the visit again in a diary that is read anew. */
static void follow(struct diary_page *p)
{
	diary_find(p);
	if (p->picked < p->diary->n)
		p->day = p->diary->rows[p->picked].visit.day;
}

bool diary_narrows_or_moves(struct diary_page *p, int action, struct input in)
{
	diary_find(p);
	if (!sift_key(&p->sift, in, &p->message) &&
		!sift_move(&p->sift, action, p->rows, &p->picked)) {
		p->sift.narrow.typing = false;
		return false;
	}
	follow(p);
	return true;
}

void diary_page_free(struct diary_page *p)
{
	sift_free(&p->sift);
	*p = (struct diary_page){ 0 };
}
