/* log_disputes.c - visits that two scouts entered otherwise. */
#include "answers/say.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/matters.h"
#include "log_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

bool log_read_disputes(struct log *l, struct book *b, int64_t farm, struct err *e)
{
	struct rival_counts all = { 0 };
	int32_t ever = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	bool ok = book_rivals(b, farm, ever, l->today, &all, e);

	l->disputes.n = 0;
	for (size_t i = 0; i < all.n; i++) {
		const struct rival_count *r = &all.items[i];
		l->disputes.items = mem_grow(l->disputes.items, &l->disputes.cap,
			l->disputes.n + 1, sizeof *l->disputes.items);
		struct dispute *d = &l->disputes.items[l->disputes.n++];
		*d = (struct dispute){
			.trap = r->trap, .day = r->day, .said = r->visit
		};
		text_copy(d->by, sizeof d->by, r->by);
		text_copy(d->shown_by, sizeof d->shown_by, r->shown_by);
	}
	free(all.items);
	return ok;
}

static const char *who(const char *by)
{
	return *by ? by : _("somebody");
}

void log_say_dispute(
	const struct log *l, const struct visit *shown, char *out, size_t size)
{
	char ours[SAY_SHORT], theirs[SAY_SHORT];
	const struct dispute *first = NULL;
	int more = -1;

	text_copy(out, size, "");
	for (size_t i = 0; i < l->disputes.n; i++) {
		const struct dispute *d = &l->disputes.items[i];
		if (d->trap != shown->trap || d->day != shown->day)
			continue;
		first = first ? first : d;
		more++;
	}
	if (!first)
		return;
	say_visit(shown, ours);
	say_visit(&first->said, theirs);
	if (more > 0)
		snprintf(out, size,
			_("counted twice: %s by %s, %s by %s and %d more; not settled"),
			ours, who(first->shown_by), theirs, who(first->by), more);
	else
		snprintf(out, size, _("counted twice: %s by %s, %s by %s; not settled"),
			ours, who(first->shown_by), theirs, who(first->by));
}
