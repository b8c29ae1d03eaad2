/* The weekly sheet from a page: written beside where the program was started. */
#include "session_season.h"

#include "answers/sheet.h"
#include "base/text.h"
#include "base/words.h"
#include "paper/sheet.h"

#include <ctype.h>
#include <stdio.h>
#include <sys/stat.h>

enum { SHEETS_MAX = 100 }; /* of one farm and day */

/* "sheet-North_Side-2026-07-21.txt", or with -2, -3 .. behind it where a file of that
 * name is. What is no letter, digit or other character above ASCII becomes _, so that
 * the name is one on every disk. */
static void sheet_path(const char *farm, int32_t day, char *out, size_t size)
{
	char iso[DAY_ISO_SIZE], name[NAME_BYTES];
	struct stat there;

	text_copy(name, sizeof name, farm);
	for (char *p = name; *p; p++)
		if ((unsigned char)*p < 0x80 && !isalnum((unsigned char)*p))
			*p = '_';
	day_iso(day, iso);
	snprintf(out, size, "sheet-%s-%s.txt", name, iso);
	for (int n = 2; n < SHEETS_MAX && lstat(out, &there) == 0; n++)
		snprintf(out, size, "sheet-%s-%s-%d.txt", name, iso, n);
}

void session_sheet(struct session *s, int64_t farm)
{
	const char *cautions[8] = { NULL };
	const struct sheet_form form = { .paper = PAPER_A4,
		.utf8 = s->ctx->utf8,
		.caution_short = say_caution_short(),
		.cautions = cautions };
	struct sheet sheet = { 0 };
	struct buf text = { 0 };
	struct err e = { 0 };
	char path[NAME_BYTES + 40];
	const struct farm *f = log_farm(&s->log, farm);

	for (size_t i = 0; i + 1 < sizeof cautions / sizeof *cautions; i++)
		cautions[i] = say_caution(i);
	sheet_path(f ? f->name : "", s->day, path, sizeof path);
	bool ok = sheet_of(&s->log, s->book, farm, &sheet, &e);
	if (ok)
		paper_sheet(&sheet, &form, &text);
	if (ok && out_file(path, &text, &e))
		message_set(session_message(s), false, _("the weekly sheet is in %s"),
			path);
	else
		message_set(session_message(s), true, "%s", e.text);
	buf_free(&text);
	sheet_free(&sheet);
}
