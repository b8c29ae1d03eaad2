/* why_none.c - why no threshold holds for a trap. */
#include "answers/trial.h"
#include "base/buf.h"
#include "base/text.h"
#include "base/words.h"
#include "why_parts.h"

/* "; the crop of North is not entered": of the fields that a threshold looks at the one
 * that is typed by hand. */
static void say_crop(const struct block *b, struct buf *out)
{
	if (*b->crop)
		buf_addf(out, _("; the crop of %s is %s"), b->name,
			words_shipped(b->crop));
	else
		buf_addf(out, _("; the crop of %s is not entered"), b->name);
}

void no_rule_says(const struct log *l, int trap, char *out, size_t size)
{
	const struct trap *t = &l->traps.items[trap];
	const struct block *b = log_block(l, t->block);
	struct buf text = { 0 };
	bool any = false, crop = false;

	buf_add(&text, _("no threshold set for this trap"));
	for (size_t i = 0; i < l->rules.n; i++) {
		const struct rule *r = &l->rules.items[i];
		char brief[SAY_SHORT], where[SAY_LINE];
		if (r->pest != t->pest)
			continue;
		say_rule_short(r, brief);
		say_where(l, r, where, sizeof where);
		buf_add(&text, any ? ", " : _("; yours for its pest hold elsewhere: "));
		buf_addf(&text, "%s (%s)", brief, where);
		any = true;
		crop = crop || r->crop[0];
	}
	if (crop && b)
		say_crop(b, &text);
	text_copy(out, size, text.text);
	buf_free(&text);
}
