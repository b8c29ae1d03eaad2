#include "answers/dd_table.h"

#include "answers/heat.h"
#include "base/mem.h"
#include "base/words.h"
#include "book/rules.h"
#include "book/weather.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static void add_line(
	void *arg, const struct dd_temps *used, double dd, const struct dd_sum *sum)
{
	struct dd_table *t = arg;

	t->lines = mem_grow(t->lines, &t->cap, t->n + 1, sizeof *t->lines);
	t->lines[t->n++] = (struct dd_line){ .day = used->day,
		.min = (double)NAN,
		.max = (double)NAN,
		.filled = used->filled,
		.used_min = used->min,
		.used_max = used->max,
		.dd = dd,
		.sum = sum->sum,
		.missing = sum->missing };
}

/* Puts what was read beside what is used. */
static void add_read(struct dd_table *t, const struct heat_days *read)
{
	for (size_t i = 0; i < read->n; i++) {
		const struct dd_temps *d = &read->items[i];
		int64_t at = (int64_t)d->day - t->ask.from;

		if (at < 0 || at >= (int64_t)t->n)
			continue;
		t->lines[at].min = d->min;
		t->lines[at].max = d->max;
	}
}

/* A gap at either end is filled by days outside, and a double method needs tomorrow. */
static bool read_lines(
	struct dd_table *t, struct book *b, int32_t fill_days, struct err *e)
{
	const struct dd_ask *ask = &t->ask;
	struct heat_days read = { 0 }, used = { 0 };
	int32_t from = ask->from - fill_days, to = ask->to + fill_days + 1;
	int32_t last = to > ask->today ? ask->today : to;
	struct heat_want want = { ask->station.id, from, last, ask->unit, 0 };

	bool ok = heat_read(&read, b, &want, e);
	want.fill_days = fill_days;
	ok = ok && heat_read(&used, b, &want, e);
	if (ok) {
		struct dd_span span = { used.items, used.n, ask->from, ask->to };
		t->total = dd_total(&ask->rule, &span, add_line, t);
		add_read(t, &read);
	}
	heat_free(&read);
	heat_free(&used);
	return ok;
}

static void say_rule_text(struct dd_table *t)
{
	const struct dd_rule *r = &t->ask.rule;
	char cap[48] = "";

	if (dd_uses_cap(r))
		words_print(cap, sizeof cap, _("cap %.5g %c, "), r->cap, t->ask.unit);
	snprintf(t->rule_text, sizeof t->rule_text,
		_("base %.5g %c, %smethod %s, cutoff %s"), r->base, t->ask.unit, cap,
		_(dd_method_word(r->method)), _(dd_cutoff_word(r->cutoff)));
}

static bool settle_days(struct dd_table *t, struct book *b, struct err *e)
{
	char from[DAY_ISO_SIZE], to[DAY_ISO_SIZE];
	struct dd_ask *ask = &t->ask;
	int32_t first, last;

	if (!book_weather_reach(b, ask->station.id, &first, &last, e))
		return false;
	if (ask->to == DAY_NONE)
		ask->to = last < ask->today ? last : ask->today;
	if (first == DAY_NONE || first > ask->to) {
		day_iso(ask->to, to);
		return err_set(e, ERR_NOT_FOUND,
			*to ? _("%s has no weather up to %s; import it, or type it in")
			    : _("%s has no weather yet; import it, or type it in%s"),
			ask->station.name, to);
	}
	if (ask->from <= ask->to)
		return true;
	day_iso(ask->from, from);
	day_iso(ask->to, to);
	return err_set(e, ERR_INPUT,
		_("the first day, %s, lies after the last one, %s"), from, to);
}

bool dd_table_read(
	struct dd_table *t, struct book *b, const struct dd_ask *ask, struct err *e)
{
	struct limits limits;

	t->ask = *ask;
	t->n = 0;
	say_rule_text(t);
	return settle_days(t, b, e) && book_limits(b, &limits, e) &&
	       read_lines(t, b, limits.fill_days, e);
}

void dd_table_free(struct dd_table *t)
{
	free(t->lines);
	*t = (struct dd_table){ 0 };
}
