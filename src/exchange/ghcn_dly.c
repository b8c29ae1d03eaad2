#include "base/day.h"
#include "base/words.h"
#include "ghcn_parts.h"

#include <errno.h>
#include <string.h>

/* Columns as the readme counts them, from 1, are one more than these. */
enum {
	YEAR = 11,
	MONTH = 15,
	ELEMENT = 17,
	VALUES = 21,
	VALUE_WIDTH = 5,
	QUALITY = 6, /* after the value's first character */
	GROUP_WIDTH = 8,
	DAYS = 31,
	LINE_WIDTH = VALUES + DAYS * GROUP_WIDTH,
	/* the blanks at a line's end may have been taken off, no digit */
	LINE_WIDTH_MIN = LINE_WIDTH - 3,
	LINE_ROOM = LINE_WIDTH + 1, /* and a carriage return */
};

struct line {
	char text[LINE_ROOM];
	size_t n; /* of the file's line; as many as fit are in text */
};

/* Reads a line of any length; false at the end. */
static bool next_line(FILE *file, struct line *l)
{
	int c;

	l->n = 0;
	while ((c = getc_unlocked(file)) != EOF && c != '\n') {
		if (l->n < LINE_ROOM)
			l->text[l->n] = (char)c;
		l->n++;
	}
	if (c == EOF && l->n == 0)
		return false;
	if (l->n > 0 && l->n <= LINE_ROOM && l->text[l->n - 1] == '\r')
		l->n--;
	return true;
}

static void take_month(struct ghcn_taking *t, const struct line *l,
	struct ghcn_value *v, struct ymd at)
{
	for (int i = 0; i < DAYS; i++) {
		const char *group = l->text + VALUES + i * GROUP_WIDTH;
		struct ghcn_written w = { group, VALUE_WIDTH, group[QUALITY] };
		char date[32];
		snprintf(date, sizeof date, "%04d-%02d-%02d", at.year, at.month, i + 1);
		v->day = day_from_ymd(at.year, at.month, i + 1);
		if (at.year >= DAY_YEAR_MIN)
			ghcn_take(t, v, w, date);
		else
			t->out->n_early += memcmp(w.value, "-9999", 5) != 0;
	}
}

static bool month_of(struct ghcn_taking *t, const struct line *l, struct ymd *at)
{
	bool ok = ghcn_digits(l->text + YEAR, MONTH - YEAR, &at->year) &&
		  ghcn_digits(l->text + MONTH, ELEMENT - MONTH, &at->month) &&
		  at->year <= DAY_YEAR_MAX && at->month >= 1 && at->month <= 12;

	if (!ok)
		ghcn_problem(t, _("columns 12-17: \"%.6s\" is no year and month"),
			l->text + YEAR);
	return ok;
}

static void take_line(struct ghcn_taking *t, struct line *l)
{
	struct ghcn_value v = { 0 };
	struct ymd at = { 0 };

	if (l->n == 0)
		return;
	if (l->n < LINE_WIDTH_MIN || l->n > LINE_WIDTH) {
		ghcn_problem(t,
			_("has %zu characters; a line of a .dly file has 269, one "
			  "month "
			  "of one element"),
			l->n);
		return;
	}
	memset(l->text + l->n, ' ', LINE_ROOM - l->n);
	if (ghcn_station(t, l->text, YEAR, v.station) && month_of(t, l, &at) &&
		ghcn_element(l->text + ELEMENT, &v.is_max) &&
		ghcn_is_wanted(t, v.station))
		take_month(t, l, &v, at);
}

bool ghcn_read_dly(const struct ghcn_from *from, struct ghcn *out, struct err *e)
{
	struct ghcn_taking t = { .from = from, .out = out };
	struct line line;
	bool ok = true;

	errno = 0;
	while (ok && next_line(from->file, &line)) {
		t.line++;
		take_line(&t, &line);
		ok = ghcn_fits(&t, e);
	}
	if (ferror(from->file))
		ok = err_set(e, ERR_BOOK, _("%s, line %lld: cannot be read: %s"),
			from->name, (long long)t.line, strerror(errno));
	return ghcn_finish(&t, ok, e);
}
