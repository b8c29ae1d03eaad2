#include "base/column.h"
#include "base/csv.h"
#include "exchange/report_csv.h"

#include <math.h>
#include <stdio.h>

void flight_csv_head(struct buf *out)
{
	buf_add(out,
		"farm,block,flight,first,peak_week,peak_catch,d10,d50,d90,moths,flags"
		"\r\n");
}

static void add_day(struct buf *out, int32_t day)
{
	char text[DAY_ISO_SIZE];

	day_iso(day, text);
	csv_add(out, text, false);
}

/* Four decimals where it is not whole. */
static void add_number(struct buf *out, double value)
{
	char text[VALUE_BYTES];

	snprintf(text, sizeof text, "%.*f", fabs(value - round(value)) < 5e-5 ? 0 : 4,
		value);
	csv_add(out, text, false);
}

static void add_flags(struct buf *out, unsigned flags)
{
	struct buf words = { 0 };

	buf_add(&words, "");
	for (int i = 0; i < FLIGHT_FLAG_COUNT; i++)
		if (flags & 1u << i)
			buf_addf(&words, "%s%s", words.n ? "; " : "",
				flight_flag_word(i));
	csv_add(out, words.text, false);
	buf_free(&words);
}

void flight_csv(const struct log *l, const struct flight_view *v, struct buf *out)
{
	const struct farm *farm = log_farm(l, v->ask.farm);
	const struct block *block = log_block(l, v->ask.block);
	char number[16];

	for (size_t i = 0; i < v->n_rows; i++) {
		const struct flight_row *r = &v->rows[i];

		csv_add(out, farm ? farm->name : "", true);
		csv_add(out, block ? block->name : "", false);
		snprintf(number, sizeof number, "%d", (int)i + 1);
		csv_add(out, number, false);
		add_day(out, r->first_day);
		add_day(out, r->peak_day);
		add_number(out, r->flight.peak_rate);
		add_day(out, r->day10);
		add_day(out, r->day50);
		add_day(out, r->day90);
		add_number(out, r->flight.moths);
		add_flags(out, r->flight.flags);
		csv_end_row(out);
	}
}
