#include "contents.h"

#include "base/words.h"
#include "exchange/exchange.h"

enum { DATE_CHARS = 10, TIME_AT = 11, TIME_CHARS = 5 }; /* of "2026-07-21T07:42:..." */

static void add_count(struct buf *out, int64_t n, const char *one, const char *many)
{
	buf_add_thousands(out, n);
	buf_addf(out, " %s", ngettext(one, many, (unsigned long)n));
}

void contents_say(const struct book_contents *c, struct buf *out)
{
	char first[DAY_TEXT_SIZE], last[DAY_TEXT_SIZE];

	add_count(out, c->farms, N_("farm"), N_("farms"));
	buf_add(out, ", ");
	add_count(out, c->traps, N_("trap"), N_("traps"));
	buf_add(out, ", ");
	add_count(out, c->visits, N_("visit"), N_("visits"));
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
	if (!c->changed_at[0]) {
		buf_add(out, _("never changed"));
		return;
	}
	buf_addf(out, _("last changed %.*s %.*s UTC%s%s"), DATE_CHARS, c->changed_at,
		TIME_CHARS, c->changed_at + TIME_AT, c->changed_by[0] ? _(" by ") : "",
		c->changed_by);
}
