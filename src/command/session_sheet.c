/* session_sheet.c - the weekly sheet from a page. */
#include "session_season.h"

#include "answers/sheet.h"
#include "base/words.h"
#include "paper/pdf.h"
#include "paper/sheet.h"

#include <stdio.h>

/* A PDF if this build and the machine's fonts can, else text. */
static void set_sheet(
	struct session *s, const struct sheet *sheet, const struct sheet_form *form)
{
	struct papers *p = &s->printing.papers;
	struct sheet_set set = { .items = sheet, .n = 1, .day = s->day };
	int kept = session_hush();

	buf_clear(&p->bytes);
	p->is_pdf = pdf_built_in() && paper_sheets_pdf(&set, form, &p->bytes, NULL);
	session_unhush(kept);
	if (!p->is_pdf)
		paper_sheet(sheet, form, &p->bytes);
}

void session_sheet(struct session *s, int64_t farm, bool blank)
{
	struct papers *p = &s->printing.papers;
	const char *cautions[PAPERS_CAUTIONS];
	struct sheet_form form = { .blank = blank,
		.utf8 = s->ctx->utf8,
		.caution_short = say_caution_short(),
		.cautions = papers_cautions(cautions),
		.notice = s->notice };
	struct sheet sheet = { 0 };
	struct err e = { 0 };
	char day[DAY_ISO_SIZE];

	if (!session_may_print(s))
		return;
	form.paper = p->size;
	s->printing.what = PRINTED_SHEET;
	bool ok = sheet_of(&s->log, s->book, farm, &sheet, &e);
	if (ok)
		set_sheet(s, &sheet, &form);
	day_iso(s->day, day);
	session_name_print(s, blank ? "carry" : "sheet", sheet.farm, day);
	snprintf(p->title, sizeof p->title, _("Scouting sheet: %s"), sheet.farm);
	session_print(s, ok, &e);
	sheet_free(&sheet);
}
