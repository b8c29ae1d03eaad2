/* session_free.c - what the pages hold is let go when they end. */
#include "session_book.h"

#include "book/backups.h"

#include <stdlib.h>

void session_free(struct session *s)
{
	today_free(&s->today.answer);
	today_page_free(&s->today.page);
	week_free(&s->week.answer);
	week_page_free(&s->week.page);
	why_free(&s->why.answer);
	run_free(&s->run.answer);
	flight_free(&s->flight.answer);
	hotspots_free(&s->hot.answer);
	hotspots_page_free(&s->hot.page);
	weather_list_free(&s->weather.answer);
	log_free(&s->log);
	log_free(&s->run.log);
	entry_list_free(&s->entry.answer);
	entry_choices_free(&s->form.choices);
	entry_page_free(&s->entry.page);
	book_backups_free(&s->backups.found);
	free(s->backups.lines);
	merging_open_free(&s->merge.matters);
	merging_free(&s->merge.answer);
	buf_free(&s->text.written);
	trap_diary_free(&s->diary.answer);
	diary_page_free(&s->diary.page);
	due_free(&s->service.due);
	shelf_free(&s->service.shelf);
	service_page_free(&s->service.page);
	threshold_list_free(&s->thresholds.answer);
	thresholds_page_free(&s->thresholds.page);
	alerts_free(&s->alerts.answer);
	alerts_free(&s->why.alerts);
	alerts_page_free(&s->alerts.page);
	pick_rows_free(&s->picks.answer);
	bars_free(&s->picks.bars);
	picks_page_free(&s->picks.page);
	papers_free(&s->printing.papers);
	book_close(s->book);
}
