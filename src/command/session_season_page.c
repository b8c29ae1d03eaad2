/* session_season_page.c - the season page of a farm from the Flight page. */
#include "session_season.h"

#include "answers/season_page.h"
#include "base/words.h"
#include "command/clock.h"
#include "paper/ascii.h"
#include "paper/pdf.h"
#include "paper/season.h"

#include <stdio.h>

static const int text_cols_of_paper = 78;

/* A past season is told as the book stood on its last day, from a log of its own. */
static bool read_page(struct session *s, int64_t farm, int season,
	struct season_page *out, struct err *e)
{
	int32_t day = season_page_last_day(&s->log, farm, season);
	struct log past = { 0 };

	if (day >= s->log.today)
		return season_page_read(out, s->book, &s->log, farm, e);
	clock_stand(day, s->ctx->minute, &past.now, &past.zone);
	bool ok = log_read(&past, s->book, 0, day, e) &&
		  season_page_read(out, s->book, &past, farm, e);
	log_free(&past);
	return ok;
}

static void set_text(struct session *s, const struct season_page *page,
	const struct season_form *form)
{
	struct papers *p = &s->printing.papers;
	struct buf text = { 0 };

	paper_season(page, form, text_cols_of_paper, &text);
	if (s->ctx->utf8)
		buf_add(&p->bytes, text.text);
	else
		paper_ascii(text.text, &p->bytes);
	buf_free(&text);
}

/* A PDF if this build and the machine's fonts can, else text. */
static void set_page(struct session *s, const struct season_page *page)
{
	struct papers *p = &s->printing.papers;
	const char *cautions[PAPERS_CAUTIONS];
	const struct season_form form = { .paper = p->size,
		.caution_short = say_caution_short(),
		.cautions = papers_cautions(cautions),
		.notice = s->notice };
	struct season_set set = { .items = page, .n = 1, .day = s->day };
	int kept = session_hush();

	buf_clear(&p->bytes);
	p->is_pdf = pdf_built_in() && paper_seasons_pdf(&set, &form, &p->bytes, NULL);
	session_unhush(kept);
	if (!p->is_pdf)
		set_text(s, page, &form);
}

void session_season_page(struct session *s, const struct wish *w)
{
	struct papers *p = &s->printing.papers;
	struct season_page page = { 0 };
	struct err e = { 0 };
	char year[16];

	if (!session_may_print(s))
		return;
	s->printing.what = PRINTED_SEASON;
	bool ok = read_page(s, w->farm, (int)w->id, &page, &e);
	if (ok)
		set_page(s, &page);
	snprintf(year, sizeof year, "%d", page.season);
	session_name_print(s, "season", page.farm, year);
	snprintf(p->title, sizeof p->title, _("Season page: %s"), page.farm);
	session_print(s, ok, &e);
	season_page_free(&page);
}
