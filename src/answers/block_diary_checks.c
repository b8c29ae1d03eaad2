/* block_diary_checks.c - fruit checks and dispensers in the diary of a block. */
#include "block_diary_parts.h"

#include "answers/checks.h"
#include "base/words.h"
#include "entry_bar_parts.h"

static const char *const places[TREE_COUNT] = {
	[TREE_ANY] = "",
	[TREE_TOP] = N_(", top of the trees"),
	[TREE_MIDDLE] = N_(", middle of the trees"),
	[TREE_LOW] = N_(", low in the trees"),
	[TREE_GROUND] = N_(", on the ground"),
};

static void say_hurt(const struct fruit_check *c, struct buf *out)
{
	if (c->stung >= 0)
		buf_addf(
			out, _("%d stung, %d entered"), (int)c->stung, (int)c->entered);
	else
		buf_addf(out, _("%d hurt"), (int)c->entered);
}

static void say_share(const struct fruit_check *c, struct buf *out)
{
	struct buf share = { 0 };

	check_say_share(c, &share);
	if (share.n > 0)
		buf_addf(out, ": %s", share.text);
	buf_free(&share);
}

void block_page_check(struct block_page *p, const struct fruit_check *c)
{
	const struct pest *pest = log_pest(p->log, c->pest);
	struct buf text = { 0 };

	buf_addf(&text,
		c->part == PART_SHOOTS ? _("shoot check%s%s: %d looked at, ")
				       : _("fruit check%s%s: %d looked at, "),
		pest ? ", " : "", pest ? pest->code : "", (int)c->looked_at);
	say_hurt(c, &text);
	buf_add(&text, *places[c->where] ? _(places[c->where]) : "");
	say_share(c, &text);
	if (*c->note)
		buf_addf(&text, "; %s", c->note);
	block_page_add(p, c->day, TONE_PLAIN, &text);
	buf_free(&text);
}

static void say_dispensers(const struct block_page *p, const struct disruption *d,
	bool up, struct buf *out)
{
	const struct pest *pest = log_pest(p->log, d->pest);
	char per_ha[SAY_SHORT];

	buf_add(out, up ? _("dispensers up") : _("dispensers down"));
	if (up && d->up < p->from) {
		buf_add(out, _(" since "));
		bar_say_day(d->up, p->from, out);
	}
	if (pest)
		buf_addf(out, ", %s", pest->code);
	if (*d->type)
		buf_addf(out, ", %s", d->type);
	if (d->per_ha_x100 >= 0 && up) {
		say_x100(d->per_ha_x100, per_ha);
		buf_addf(out, _(", %s per ha"), per_ha);
	}
	if (*d->note && up)
		buf_addf(out, "; %s", d->note);
}

void block_page_dispensers(struct block_page *p, const struct disruption *d)
{
	struct buf text = { 0 };

	say_dispensers(p, d, true, &text);
	block_page_add(p, d->up < p->from ? p->from : d->up, TONE_PLAIN, &text);
	if (d->down != DAY_NONE) {
		say_dispensers(p, d, false, &text);
		block_page_add(p, d->down, TONE_PLAIN, &text);
	}
	buf_free(&text);
}
