/* entry_far.c - a position on a form that cannot be right is asked about, as in a
 * file. */
#include "answers/far.h"
#include "entry_family.h"

bool putting_far(struct putting *p, int64_t farm, struct position at, const char *what)
{
	const struct known *k = &p->shelves->known;
	struct far_farm traps = { 0 };
	struct buf text = { 0 };
	bool go_on = true;

	for (size_t i = 0; i < k->traps.n; i++) {
		const struct trap *t = &k->traps.items[i];
		if (t->farm == farm && t->has_position && t->id != p->id)
			far_add(&traps, t->lat, t->lon);
	}
	if (far_says(&traps, at, what, known_farm(k, farm), &text))
		go_on = putting_doubt(p, text.text);
	far_free(&traps);
	buf_free(&text);
	return go_on;
}
