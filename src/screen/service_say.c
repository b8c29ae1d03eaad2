/* service_say.c - the rows of the service page in words. */
#include "base/text.h"
#include "base/words.h"
#include "service_parts.h"

#include <stdio.h>

size_t service_brings(const struct service_page *p)
{
	size_t runs = p->due->today.n_runs;

	return runs > 1 ? runs + 1 : runs;
}

size_t service_count(const struct service_page *p)
{
	return p->due->n + service_brings(p) + (p->shelf ? p->shelf->n : 0);
}

const struct due_item *service_picked_item(const struct service_page *p)
{
	return p->picked < p->due->n ? &p->due->items[p->picked] : NULL;
}

/* "3 lures CM 1 mg, 1 card delta; 1 lure not known" of a farm, 0: of all. */
static void say_kinds(
	const struct due *d, int64_t farm, const char *unknown, struct buf *out)
{
	const struct due_bring *b = farm ? d->brings : d->totals;
	size_t n = farm ? d->n_brings : d->n_totals;
	const char *comma = "";

	for (size_t i = 0; i < n; i++) {
		unsigned long many = (unsigned long)b[i].n;
		if (b[i].farm != farm)
			continue;
		buf_addf(out,
			b[i].is_lure ? ngettext("%s%d lure %s", "%s%d lures %s", many)
				     : ngettext("%s%d card %s", "%s%d cards %s", many),
			comma, b[i].n, words_shipped(b[i].kind_name));
		comma = ", ";
	}
	if (!*comma)
		buf_add(out, *unknown ? _("nothing known") : _("nothing"));
	buf_add(out, unknown);
}

static void say_bring_row(const struct service_page *p, size_t i, struct buf *out)
{
	const struct due *d = p->due;
	char day[DAY_TEXT_SIZE];

	if (i == d->today.n_runs) {
		buf_addf(out, "%s: ", _("all farms"));
		say_kinds(d, 0, d->unknown_text, out);
		return;
	}
	const struct today_run *r = &d->today.runs[i];
	day_short(r->next_run, day, sizeof day);
	buf_addf(out, "%s, %s: ", r->name,
		r->due || r->next_run <= d->today.day ? _("this run") : day);
	say_kinds(d, r->farm, r->unknown_text, out);
}

static void say_shelf_row(const struct shelf_row *r, struct buf *out)
{
	buf_addf(out, r->is_lure ? _("lure %s: %s") : _("card %s: %s"), r->name,
		r->text);
}

void service_say_row(const struct service_page *p, size_t i, struct buf *out)
{
	size_t at = i - p->due->n;

	buf_clear(out);
	if (at < service_brings(p))
		say_bring_row(p, at, out);
	else
		say_shelf_row(&p->shelf->items[at - service_brings(p)], out);
}

void service_say_state(const struct due_item *item, char out[static SERVICE_TEXT])
{
	snprintf(out, SERVICE_TEXT, "%s%s%s", item->barred, item->barred[0] ? ", " : "",
		item->state_text);
}

void service_say_picked(const struct service_page *p, char out[static SERVICE_TEXT])
{
	const struct due_item *item = service_picked_item(p);
	struct buf text = { 0 };
	char state[SERVICE_TEXT];

	text_copy(out, SERVICE_TEXT, "");
	if (item)
		service_say_state(item, state);
	if (item)
		snprintf(out, SERVICE_TEXT, _("%s, %s, trap %s: %s %s, %s"),
			item->farm_name, item->block_name, item->label,
			item->is_lure ? _("lure") : _("card"),
			words_shipped(item->kind_name), state);
	else if (p->picked < service_count(p)) {
		service_say_row(p, p->picked, &text);
		text_copy(out, SERVICE_TEXT, text.text);
	}
	buf_free(&text);
}
