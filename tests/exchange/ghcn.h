/* ghcn.h - files of GHCN-Daily for tests, and what comes of reading them. The stations
 * and their weather are invented. */
#ifndef TESTS_EXCHANGE_GHCN_H
#define TESTS_EXCHANGE_GHCN_H

#include "exchange/ghcn.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define COUNT_OF(array) (sizeof(array) / sizeof *(array))

typedef bool ghcn_reader(const struct ghcn_from *from, struct ghcn *out, struct err *e);

/* Adds a line of a .dly file: `head` is "XX000000001 201205 TMAX", and `days` is
 * "1=153 2=-88X 30=-9999", a value and its quality flag; all others are missing. */
static inline void add_dly(struct buf *out, const char *head, const char *days)
{
	char value[32][9] = { "" };

	for (const char *at = days; *at != '\0';) {
		char *end, quality = ' ';
		long day = strtol(at, &end, 10), tenths = strtol(end + 1, &end, 10);
		assert_in_range(day, 1, 31);
		if (*end != ' ' && *end != '\0')
			quality = *end++;
		snprintf(
			value[day], sizeof value[day], "%5d %c0", (int)tenths, quality);
		at = end + (*end == ' ');
	}
	buf_addf(out, "%.11s%.6s%.4s", head, head + 12, head + 19);
	for (int i = 1; i <= 31; i++)
		buf_add(out, value[i][0] != '\0' ? value[i] : "-9999   ");
	buf_add(out, "\n");
}

/* Reads the bytes as the file "w"; today is 21 July 2026. */
static inline bool read_bytes(ghcn_reader *reader, const char *bytes, size_t n,
	const char *station, struct ghcn *out)
{
	struct ghcn_from from = {
		.name = "w", .station = station, .today = day_from_ymd(2026, 7, 21)
	};
	struct err e = { 0 };

	*out = (struct ghcn){ 0 };
	from.file = n > 0 ? fmemopen((void *)(uintptr_t)bytes, n, "r")
			  : fopen("/dev/null", "r");
	assert_non_null(from.file);
	bool ok = reader(&from, out, &e);
	fclose(from.file);
	assert_true(ok == (e.kind == ERR_NONE));
	if (!ok && out->n_problems == 0)
		sentences_add(&out->problems, e.text);
	return ok;
}

/* What was read: "XX000000001 2012-05-03 4.4/15.6; ..." with - for missing, or the
 * problems with "; " between. The caller frees it. */
static inline char *reading(ghcn_reader *reader, const char *text, const char *station)
{
	struct ghcn g;
	struct buf out = { 0 };
	bool ok = read_bytes(reader, text, strlen(text), station, &g);

	buf_add(&out, "");
	for (size_t i = 0; ok && i < g.n; i++) {
		char iso[DAY_ISO_SIZE];
		day_iso(g.items[i].day, iso);
		buf_addf(&out, "%s%s %s ", i == 0 ? "" : "; ", g.items[i].station, iso);
		if (isnan(g.items[i].min))
			buf_add(&out, "-/");
		else
			buf_addf(&out, "%.1f/", g.items[i].min);
		if (isnan(g.items[i].max))
			buf_add(&out, "-");
		else
			buf_addf(&out, "%.1f", g.items[i].max);
	}
	for (size_t i = 0; i < g.problems.n; i++)
		buf_addf(&out, "%s%s", i == 0 ? "" : "; ", g.problems.items[i]);
	if (!ok)
		assert_int_equal(g.n, 0);
	ghcn_free(&g);
	return out.text;
}

static inline void expect_reading(ghcn_reader *reader, const char *why,
	const char *text, const char *station, const char *want)
{
	char *got = reading(reader, text, station);

	if (strcmp(got, want) != 0)
		fail_msg("%s:\n%s\nnot\n%s", why, got, want);
	free(got);
}

#endif
