/* Alerts and their answers, picks, and a block's season on one page. */
#include "session_act.h"

#include "answers/record.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "session_book.h"

#include <stdio.h>

bool session_read_alerts(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	alerts_of(&s->log, 0, &s->alerts);
	s->alerts_page.right = s->today.title_short;
	s->alerts_page.caution = say_caution_short();
	alerts_page_show(&s->alerts_page, &s->alerts, s->acts_anew);
	s->acts_anew = false;
	return true;
}

void session_alerts(struct session *s, const struct wish *w)
{
	(void)w;
	s->acts_anew = true;
	session_open(s, PAGE_ALERTS);
}

const struct alert *session_why_alert(struct session *s)
{
	const struct log *l = s->why_of_run ? &s->run_log : &s->log;
	bool trap = s->why_trap >= 0 && (size_t)s->why_trap < l->traps.n;
	const struct trap *t = trap ? &l->traps.items[s->why_trap] : NULL;

	alerts_of(l, s->why_of_run ? s->run_farm : 0, &s->why_alerts);
	for (size_t i = 0; i < s->why_alerts.n; i++) {
		const struct alert *a = &s->why_alerts.items[i];
		bool here = t ? a->trap == t->id
			      : a->trap == 0 && a->block == s->why_block &&
					    a->pest == s->why_pest;
		if (here)
			return a;
	}
	return NULL;
}

/* The treatment that was decided on is put in next. */
static void offer_treatment(struct session *s, const struct alert *a)
{
	struct wish w = page_wish(WANT_FORM);

	w.kind = ENTRY_TREATMENTS;
	w.farm = a->farm;
	w.block = a->block;
	w.pest = a->pest;
	session_form(s, &w);
	if (s->stack[s->depth] == PAGE_FORM)
		message_set(session_message(s), false,
			_("Answered: treated. Now what was applied, off its label; Esc "
			  "leaves it for later."));
}

static bool put_answer(
	struct session *s, const struct alert *at, const struct wish *w, struct err *e)
{
	struct answer a = at->answer;

	if (!at->is_answered || (int)a.decision != w->by)
		a.on = s->day > a.day ? s->day : a.day;
	a.decision = (enum decision)w->by;
	text_copy(a.note, sizeof a.note, w->words.note);
	session_before_change(s);
	return book_put_answer(s->book, &a, e);
}

void session_answer(struct session *s, const struct wish *w)
{
	static const char *const said[DECISION_COUNT] = {
		[DECISION_LOOKED] = N_("Answered: looked. u takes it back."),
		[DECISION_TREATED] = N_("Answered: treated. u takes it back."),
		[DECISION_LEFT] = N_("Answered: left as it was. u takes it back."),
	};
	bool on_why = s->stack[s->depth] == PAGE_WHY;
	const struct alert *at =
		on_why ? s->why_page.alert : &s->alerts.items[(size_t)w->id];
	const struct alert was = *at;
	struct err e = { 0 };

	s->acts_anew = false;
	if (!put_answer(s, &was, w, &e) || !session_read(s, &e)) {
		message_set(session_message(s), true, "%s", e.text);
		return;
	}
	message_set(session_message(s), false, "%s", _(said[w->by]));
	if (w->by == DECISION_TREATED && !was.is_answered)
		offer_treatment(s, &was);
}

bool session_read_picks(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	pick_rows_of(&s->log, 0, &s->picks);
	bars_of(&s->log, 0, &s->bars);
	s->picks_page.right = s->today.title_short;
	s->picks_page.caution = say_caution_acts();
	picks_page_show(&s->picks_page, &s->picks, &s->bars, s->acts_anew);
	s->acts_anew = false;
	return true;
}

void session_picks(struct session *s, const struct wish *w)
{
	(void)w;
	s->acts_anew = true;
	session_open(s, PAGE_PICKS);
}

static bool write_diary(struct session *s, int64_t block, struct err *e)
{
	struct block_diary d = { 0 };
	const struct block *b = log_block(&s->log, block);
	const struct farm *f = log_farm(&s->log, b ? b->farm : 0);

	if (!f)
		return err_set(
			e, ERR_NOT_FOUND, _("the block is not in the book any more"));
	const struct record_ask ask = { .farm = f->id,
		.block = block,
		.from = day_season_start(s->day, f->season_start),
		.to = s->day };
	bool ok = block_diary_read(&d, s->book, &s->log, &ask, e);
	buf_clear(&s->text);
	for (size_t i = 0; ok && i < d.n; i++)
		buf_addf(&s->text, "%s  %s\n", d.lines[i].day_text, d.lines[i].text);
	if (ok && d.n == 0)
		buf_addf(&s->text, "%s\n",
			_("Nothing is entered of it in this season."));
	buf_addf(&s->text, "\n%s", say_caution_acts());
	s->text_page = (struct text_page){ .text = s->text.text };
	snprintf(s->text_page.title, sizeof s->text_page.title, "%s", d.title);
	block_diary_free(&d);
	return ok;
}

void session_block_diary(struct session *s, int64_t block)
{
	struct err e = { 0 };

	if (session_read_log(s, &e) && write_diary(s, block, &e))
		session_open(s, PAGE_TEXT);
	else
		message_set(session_message(s), true, "%s", e.text);
}
