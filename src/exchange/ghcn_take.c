#include "base/day.h"
#include "base/mem.h"
#include "base/words.h"
#include "ghcn_parts.h"

#include <ctype.h>
#include <stdarg.h>
#include <string.h>

enum {
	MISSING = -9999,
	DIGITS_MAX = 5,
};

void ghcn_problem(struct ghcn_taking *t, const char *fmt, ...)
{
	struct buf what = { 0 };
	char text[400];
	struct err whole;
	va_list args;

	if (t->out->n_problems++ >= PROBLEMS_MAX)
		return;
	va_start(args, fmt);
	words_vprint(text, sizeof text, fmt, args);
	va_end(args);
	buf_addf(&what, _("%s, line %lld: "), t->from->name, (long long)t->line);
	buf_add(&what, text);
	err_set(&whole, ERR_INPUT, "%s", what.text); /* no torn or control characters */
	sentences_add(&t->out->problems, whole.text);
	buf_free(&what);
}

bool ghcn_station(struct ghcn_taking *t, const char *text, size_t n,
	char out[static GHCN_STATION_BYTES])
{
	bool ok = n == GHCN_STATION_BYTES - 1;

	for (size_t i = 0; ok && i < n; i++)
		ok = isalnum((unsigned char)text[i]) || text[i] == '_' ||
		     text[i] == '-';
	if (!ok) {
		ghcn_problem(t,
			_("\"%.*s\" is no station of GHCN-Daily, which has 11 letters "
			  "and digits"),
			(int)(n < 40 ? n : 40), text);
		return false;
	}
	memcpy(out, text, n);
	out[n] = '\0';
	return true;
}

bool ghcn_is_wanted(const struct ghcn_taking *t, const char *station)
{
	return t->from->station == NULL || strcmp(t->from->station, station) == 0;
}

bool ghcn_element(const char *element, bool *is_max)
{
	*is_max = memcmp(element, "TMAX", 4) == 0;
	return *is_max || memcmp(element, "TMIN", 4) == 0;
}

bool ghcn_digits(const char *text, size_t n, int *out)
{
	*out = 0;
	for (size_t i = 0; i < n; i++) {
		if (!isdigit((unsigned char)text[i]))
			return false;
		*out = *out * 10 + (text[i] - '0');
	}
	return n > 0 && n < 9;
}

/* Blanks, a sign, digits. */
static bool whole_number(const char *text, size_t n, int32_t *out)
{
	size_t at = 0;
	int number;

	while (at < n && text[at] == ' ')
		at++;
	bool minus = at < n && text[at] == '-';
	at += minus;
	if (n - at > DIGITS_MAX || !ghcn_digits(text + at, n - at, &number))
		return false;
	*out = minus ? -number : number;
	return true;
}

/* False: the value does not count, which is said or noted. */
static bool passed(struct ghcn_taking *t, const struct ghcn_written *w, int32_t x10)
{
	if (w->quality != ' ' && (w->quality < 'A' || w->quality > 'Z')) {
		ghcn_problem(t,
			_("\"%c\" stands for the quality flag, which is a blank or a "
			  "capital; do the columns fit the layout?"),
			w->quality);
		return false;
	}
	if (x10 == MISSING)
		t->out->n_missing++;
	else if (w->quality != ' ')
		t->out->n_flagged[w->quality - 'A']++;
	return x10 != MISSING && w->quality == ' ';
}

void ghcn_take(struct ghcn_taking *t, struct ghcn_value *v, struct ghcn_written w,
	const char *date)
{
	if (!whole_number(w.value, w.n, &v->x10)) {
		ghcn_problem(t,
			_("%s: \"%.*s\" is no temperature in whole tenths of a degree "
			  "C, "
			  "such as 153 for 15.3; missing is -9999"),
			date, (int)(w.n < 40 ? w.n : 40), w.value);
		return;
	}
	if (!passed(t, &w, v->x10))
		return;
	if (v->day == DAY_NONE) {
		ghcn_problem(t,
			_("%s is no day of the calendar, yet has a temperature"), date);
		return;
	}
	if (v->day > t->from->today) {
		ghcn_problem(t, _("%s is later than today"), date);
		return;
	}
	v->line = t->line;
	t->items = mem_grow(t->items, &t->cap, t->n + 1, sizeof *t->items);
	t->items[t->n++] = *v;
}

bool ghcn_fits(const struct ghcn_taking *t, struct err *e)
{
	if (t->n <= GHCN_VALUES_MAX)
		return true;
	return err_set(e, ERR_INPUT,
		_("%s has more than %d temperatures; name the station whose days are "
		  "wanted"),
		t->from->name, (int)GHCN_VALUES_MAX);
}
