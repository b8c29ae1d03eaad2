/* flight_heat.c - degree-days beside the weeks of the chart and the half-catch days. */
#include "flight_parts.h"

#include <math.h>
#include <stdio.h>

/* The running sum at the end of each week. */
static void take_sum(
	void *arg, const struct dd_temps *t, double dd, const struct dd_sum *sum)
{
	struct flight_line *line = arg;
	int32_t week = (t->day - line->first_day) / 7;

	(void)dd;
	if (t->day < line->first_day || week >= (int32_t)line->n || sum->days == 0)
		return;
	line->dd[week] = sum->sum;
	line->dd_at_least[week] = sum->missing > 0;
}

static bool is_known(const struct heat_sum *sum)
{
	return sum->state == HEAT_SUM || sum->state == HEAT_AT_LEAST;
}

bool flight_fill_line_heat(struct flight_line *line, struct book *b,
	const struct log *l, const struct flight_ask *ask, int32_t end, struct err *e)
{
	struct heat_days days = { 0 };
	struct heat_sum sum;
	struct dd_rule rule;

	const struct heat_ask of = { .farm = ask->farm, .pest = ask->pest, .day = end };
	if (!heat_since(&sum, b, l, &of, e))
		return false;
	if (!is_known(&sum))
		return true;
	bool ok = heat_rule(log_pest(l, ask->pest), &rule, e) &&
		  heat_read_span(&days, b, l, &sum, e);
	if (ok) {
		const struct dd_span span = { days.items, days.n, sum.from, sum.to };
		dd_total(&rule, &span, take_sum, line);
	}
	heat_free(&days);
	return ok;
}

static void fill_half_catch(struct flight_view *v, const struct dd_rule *rule,
	const struct heat_days *days, int32_t first_day)
{
	struct dd_span span = { days->items, days->n, v->heat.from, v->heat.to };

	for (size_t k = 0; k < v->n_rows; k++) {
		span.last = first_day + (int32_t)floor(v->rows[k].flight.d50);
		if (span.last < span.first || span.last > v->heat.to)
			continue;
		struct dd_sum sum = dd_total(rule, &span, NULL, NULL);
		if (sum.days > 0)
			snprintf(v->rows[k].dd50, sizeof v->rows[k].dd50, "%.0f%s %c",
				sum.sum, sum.missing ? "+" : "", v->heat.unit);
	}
}

bool flight_fill_heat(struct flight_view *v, struct book *b, const struct log *l,
	const struct flight_season *s, struct err *e)
{
	struct heat_days days = { 0 };
	struct dd_rule rule;

	const struct heat_ask of = {
		.farm = v->ask.farm, .pest = v->ask.pest, .day = s->end
	};
	if (!heat_since(&v->heat, b, l, &of, e))
		return false;
	say_heat(&v->heat, v->heat_text, sizeof v->heat_text);
	if (!is_known(&v->heat))
		return true;
	bool ok = heat_rule(log_pest(l, v->ask.pest), &rule, e) &&
		  heat_read_span(&days, b, l, &v->heat, e);
	if (ok)
		fill_half_catch(v, &rule, &days, s->series.first_day);
	heat_free(&days);
	return ok && flight_fill_line_heat(&v->now, b, l, &v->ask, s->end, e);
}
