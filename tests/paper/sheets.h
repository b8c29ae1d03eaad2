/* sheets.h - an invented farm's sheet, of any number of traps, and its pages. */
#ifndef TESTS_PAPER_SHEETS_H
#define TESTS_PAPER_SHEETS_H

#include "base/mem.h"
#include "paper/sheet.h"

#include <stdio.h>
#include <stdlib.h>

static const char *const sheets_cautions[] = { "First caution of the test.",
	"Second caution of the test.", NULL };

static inline struct sheet_form sheets_form(enum paper paper, bool blank)
{
	return (struct sheet_form){ .paper = paper,
		.blank = blank,
		.utf8 = true,
		.caution_short = "Short caution of the test.",
		.cautions = sheets_cautions };
}

/* n traps T001.. in driving order; of each the last words are "end of T001". */
static inline struct sheet sheets_with(size_t n)
{
	struct sheet s = { .farm = "Quillet Farm",
		.day = "Tue 21 July 2026 \u00b7 week 30",
		.scout = "QX",
		.last_run = "last run Tue 14 Jul, 7 nights",
		.bring = "2 lures CM 1 mg",
		.visited = (int)n,
		.counted = (int)n,
		.moths = 3 * (int32_t)n };

	s.traps = mem_new(n, sizeof *s.traps);
	s.n = n;
	for (size_t i = 0; i < n; i++) {
		struct sheet_trap *t = &s.traps[i];

		*t = (struct sheet_trap){ .block = "Quarry Rows",
			.pest = "CM",
			.lure = "CM 1 mg",
			.last = { "2", "0", "-", "4" },
			.count = "3 c",
			.week = "3.0",
			.nights = "7",
			.rule = ">=5",
			.verdict = "under",
			.total = "9" };
		snprintf(t->label, sizeof t->label, "T%03d", (int)i + 1);
		snprintf(t->says, sizeof t->says, "end of T%03d", (int)i + 1);
		snprintf(t->service, sizeof t->service, "end of T%03d", (int)i + 1);
	}
	return s;
}

static inline char *sheets_print(const struct sheet *s, struct sheet_form form)
{
	struct buf out = { 0 };

	paper_sheet(s, &form, &out);
	return out.text;
}

#endif
