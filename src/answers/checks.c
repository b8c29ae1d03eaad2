#include "answers/checks.h"

#include "base/mem.h"
#include "base/words.h"
#include "book/acts.h"
#include "season/fruit.h"

#include <stdlib.h>

void check_say_share(const struct fruit_check *c, struct buf *out)
{
	int32_t hurt = fruit_hurt(c);

	if (hurt < 0 || c->looked_at < 1)
		return;
	if (hurt == 0) {
		words_addf(out, _("none of %d still means up to %.1f %%"),
			(int)c->looked_at, fruit_clean_hi(c->looked_at));
		return;
	}
	struct fruit_share s = fruit_share(hurt, c->looked_at);
	words_addf(out, _("%.1f %%, can be %.1f to %.1f %%"), s.at, s.lo, s.hi);
}

static void add_line(struct why *w, enum tone tone, int indent, const char *text)
{
	w->lines = mem_grow(w->lines, &w->cap, w->n + 1, sizeof *w->lines);
	w->lines[w->n++] = (struct why_line){ tone, indent, mem_text(text) };
}

static void add_check(struct why *w, const struct fruit_check *c)
{
	char day[DAY_TEXT_SIZE];
	struct buf text = { 0 };

	day_short(c->day, day, sizeof day);
	buf_addf(&text,
		c->part == PART_SHOOTS ? _("%s, shoots: %d hurt of %d; ")
				       : _("%s, fruit: %d hurt of %d; "),
		day, (int)fruit_hurt(c), (int)c->looked_at);
	check_say_share(c, &text);
	if (*c->note)
		buf_addf(&text, "; %s", c->note);
	add_line(w, TONE_PLAIN, 2, text.text);
	buf_free(&text);
}

bool why_read_checks(const struct log *l, struct book *b, int64_t block, int64_t pest,
	struct why *out, struct err *e)
{
	const struct block *k = log_block(l, block);
	const struct farm *f = log_farm(l, k ? k->farm : 0);
	struct fruit_checks all = { 0 };
	bool any = false;

	if (!f)
		return true;
	bool ok = book_fruit_checks(b, f->id,
		day_season_start(l->today, f->season_start), l->today, &all, e);
	for (size_t i = all.n; ok && i-- > 0;) {
		const struct fruit_check *c = &all.items[i];
		if (c->block != block || (c->pest && c->pest != pest))
			continue;
		if (!any)
			add_line(out, TONE_TITLE, 0, _("Fruit checks of the block"));
		any = true;
		add_check(out, c);
	}
	free(all.items);
	return ok;
}
