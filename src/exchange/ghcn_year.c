#include "base/csv.h"
#include "base/day.h"
#include "base/words.h"
#include "ghcn_parts.h"

#include <string.h>

/* The fields of a line. */
enum { STATION, DATE, ELEMENT, VALUE, MEASURED, QUALITY, SOURCE, TIME, FIELDS };

static bool date_of(struct ghcn_taking *t, const struct csv_field *f, struct ymd *at)
{
	int date;

	if (f->n != 8 || !ghcn_digits(f->text, f->n, &date)) {
		ghcn_problem(t, _("field 2: \"%.40s\" is no date such as 20120503"),
			f->text);
		return false;
	}
	*at = (struct ymd){ date / 10000, date / 100 % 100, date % 100 };
	return true;
}

static void take_value(
	struct ghcn_taking *t, const struct csv_field *field, struct ghcn_value *v)
{
	const struct csv_field *quality = &field[QUALITY];
	struct ghcn_written w = { field[VALUE].text, field[VALUE].n,
		quality->n == 0 ? ' ' : quality->text[0] };
	struct ymd at;

	if (!date_of(t, &field[DATE], &at))
		return;
	if (quality->n > 1) {
		ghcn_problem(t,
			_("field 6: \"%.40s\" is no quality flag, which is empty or "
			  "one "
			  "capital"),
			quality->text);
		return;
	}
	v->day = day_from_ymd(at.year, at.month, at.day);
	if (at.year >= DAY_YEAR_MIN)
		ghcn_take(t, v, w, field[DATE].text);
	else
		t->out->n_early += strcmp(w.value, "-9999") != 0;
}

static void take_row(struct ghcn_taking *t, const struct csv *csv)
{
	const struct csv_field *field = csv->field;
	struct ghcn_value v = { 0 };

	if (csv->n_fields != FIELDS) {
		ghcn_problem(t,
			_("has %zu fields; a line of a by-year file has 8: station, "
			  "date, element, value, three flags, time"),
			csv->n_fields);
		return;
	}
	if (field[ELEMENT].n != 4) {
		ghcn_problem(t, _("field 3: \"%.40s\" is no element such as TMAX"),
			field[ELEMENT].text);
		return;
	}
	if (ghcn_station(t, field[STATION].text, field[STATION].n, v.station) &&
		ghcn_element(field[ELEMENT].text, &v.is_max) &&
		ghcn_is_wanted(t, v.station))
		take_value(t, field, &v);
}

/* A table with named columns has a unit of its own, which no one should guess. */
static bool has_header(const struct csv *csv)
{
	return csv->line == 1 && csv->n_fields > 1 &&
	       strcmp(csv->field[STATION].text, "STATION") == 0;
}

bool ghcn_read_year(const struct ghcn_from *from, struct ghcn *out, struct err *e)
{
	struct ghcn_taking t = { .from = from, .out = out };
	struct csv csv;
	enum csv_got got = CSV_END;
	bool ok = true;

	csv_open(&csv, from->file, from->name);
	while (ok && (got = csv_next(&csv, e)) == CSV_ROW) {
		t.line = csv.line;
		if (has_header(&csv))
			ok = err_set(e, ERR_INPUT,
				_("%s, line 1: a by-year file has no header row; a "
				  "file "
				  "that names its columns does not say its unit and is "
				  "not read as one"),
				from->name);
		else
			take_row(&t, &csv);
		ok = ok && ghcn_fits(&t, e);
	}
	csv_close(&csv);
	return ghcn_finish(&t, ok && got == CSV_END, e);
}
