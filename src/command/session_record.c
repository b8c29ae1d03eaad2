/* session_record.c - the record of treatments, on the Text page. */
#include "session_act.h"

#include "base/words.h"
#include "report.h"

#include <stdio.h>

static bool write_record(struct session *s, struct err *e)
{
	struct report r = { .book = s->book,
		.log = s->log }; /* both stay the session's */
	const struct record_ask ask = report_season_of(&s->log, 0, s->day);

	buf_clear(&s->text.written);
	return report_record(&r, &ask, out_cols() - 2, &s->text.written, e);
}

void session_record(struct session *s, const struct wish *w)
{
	struct err e = { 0 };

	(void)w;
	if (!session_read_log(s, &e) || !write_record(s, &e)) {
		message_set(session_message(s), true, "%s", e.text);
		return;
	}
	s->text.page = (struct text_page){ .text = s->text.written.text };
	snprintf(s->text.page.title, sizeof s->text.page.title, "%s", _("Record"));
	session_open(s, PAGE_TEXT);
}
