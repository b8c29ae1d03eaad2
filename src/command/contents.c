#include "contents.h"

#include "answers/say.h"
#include "base/words.h"
#include "exchange/exchange.h"

static void add_count(struct buf *out, int64_t n, const char *one, const char *many)
{
	buf_add_thousands(out, n);
	buf_addf(out, " %s", ngettext(one, many, (unsigned long)n));
}

void contents_say(const struct book_contents *c, struct buf *out)
{
	char first[DAY_TEXT_SIZE], last[DAY_TEXT_SIZE];

	add_count(out, c->farms, NG_("farm", "farms"));
	buf_add(out, ", ");
	add_count(out, c->traps, NG_("trap", "traps"));
	buf_add(out, ", ");
	add_count(out, c->visits, NG_("visit", "visits"));
	if (c->first_visit == DAY_NONE)
		return;
	day_long(c->first_visit, first, sizeof first);
	day_long(c->last_visit, last, sizeof last);
	if (c->first_visit == c->last_visit)
		buf_addf(out, _(" on %s"), first);
	else
		buf_addf(out, _(" from %s to %s"), first, last);
}

void contents_say_change(const struct book_contents *c, struct buf *out)
{
	char when[SAY_SHORT];

	if (!c->changed_at[0]) {
		buf_add(out, _("never changed"));
		return;
	}
	say_time(c->changed_at, when);
	if (c->changed_by[0])
		buf_addf(out, _("last changed %s by %s"), when, c->changed_by);
	else
		buf_addf(out, _("last changed %s"), when);
}
