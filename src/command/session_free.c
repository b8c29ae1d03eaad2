/* What the pages hold is let go when they end. */
#include "session_book.h"

#include "book/backups.h"

#include <stdlib.h>

void session_free(struct session *s)
{
	today_free(&s->today);
	today_page_free(&s->today_page);
	week_free(&s->week);
	week_page_free(&s->week_page);
	why_free(&s->why);
	run_free(&s->run);
	flight_free(&s->flight);
	hotspots_free(&s->hotspots);
	hotspots_page_free(&s->hotspots_page);
	weather_list_free(&s->weather);
	log_free(&s->log);
	log_free(&s->run_log);
	entry_list_free(&s->entries);
	entry_choices_free(&s->choices);
	entry_page_free(&s->entry_page);
	book_backups_free(&s->backups);
	free(s->backup_lines);
	merging_open_free(&s->open_matters);
	merging_free(&s->merging);
	buf_free(&s->text);
	trap_diary_free(&s->diary);
	diary_page_free(&s->diary_page);
	due_free(&s->due);
	shelf_free(&s->shelf);
	service_page_free(&s->service_page);
	threshold_list_free(&s->thresholds);
	thresholds_page_free(&s->thresholds_page);
	alerts_free(&s->alerts);
	alerts_free(&s->why_alerts);
	alerts_page_free(&s->alerts_page);
	pick_rows_free(&s->picks);
	bars_free(&s->bars);
	picks_page_free(&s->picks_page);
	papers_free(&s->printing.papers);
	book_close(s->book);
}
