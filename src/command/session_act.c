/* session_act.c - alerts and their answers, picks, and a block's season on one page. */
#include "session_act.h"

#include "answers/answered.h"
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
	alerts_of(&s->log, 0, &s->alerts.answer);
	s->alerts.page.right = s->today.answer.title_short;
	s->alerts.page.caution = say_caution_short();
	alerts_page_show(&s->alerts.page, &s->alerts.answer, s->acts_anew);
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
	const struct log *l = s->why.of_run ? &s->run.log : &s->log;
	size_t at = log_trap(l, s->why.trap);
	const struct trap *t = at < l->traps.n ? &l->traps.items[at] : NULL;
	const struct alert *latest = NULL;

	alerts_of_block(l, t ? t->block : s->why.block, &s->why.alerts);
	for (size_t i = 0; i < s->why.alerts.n; i++) {
		const struct alert *a = &s->why.alerts.items[i];
		bool here = t ? a->trap == t->id
			      : a->trap == 0 && a->block == s->why.block &&
					    a->pest == s->why.pest;
		if (here && (!latest || a->day > latest->day))
			latest = a;
	}
	return latest;
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
	if (session_shown(s) == PAGE_FORM)
		message_set(session_message(s), false,
			_("Answered: treated. Now what was applied, off its label; Esc "
			  "leaves it for later."));
}

static bool put_answer(
	struct session *s, const struct alert *at, const struct wish *w, struct err *e)
{
	struct answer a = at->answer;

	a.on = w->day;
	a.decision = (enum decision)w->by;
	text_copy(a.note, sizeof a.note, w->words.note);
	session_before_change(s);
	return book_put_answer(s->book, &a, e);
}

/* The alert as it is now; NULL: it is no alert any more. */
static const struct alert *answered(const struct session *s, const struct wish *w)
{
	const struct why_page *p = &s->why.page;

	if (session_shown(s) != PAGE_WHY)
		return w->id >= 0 ? &s->alerts.answer.items[w->id] : NULL;
	return p->alert && answering_is_of(&p->answering, p->alert) ? p->alert : NULL;
}

/* Of a treatment that nobody entered no interval is known. */
static bool only_answered(const struct session *s, int64_t block, int32_t day)
{
	for (size_t i = 0; i < s->log.treatments.n; i++) {
		const struct treatment *t = &s->log.treatments.items[i];
		if (t->id == TREATMENT_ANSWERED && t->block == block && t->day == day)
			return true;
	}
	return false;
}

void session_answer(struct session *s, const struct wish *w)
{
	static const char *const said[DECISION_COUNT] = {
		[DECISION_LOOKED] = N_("Answered: looked. u takes it back."),
		[DECISION_TREATED] = N_("Answered: treated. u takes it back."),
		[DECISION_LEFT] = N_("Answered: left as it was. u takes it back."),
	};
	const struct alert *at = answered(s, w);
	struct err e = { 0 };

	if (!at) {
		message_set(session_message(s), true,
			_("It is not over any more: somebody changed the book "
			  "meanwhile."));
		return;
	}
	const struct alert was = *at;
	s->acts_anew = false;
	if (!put_answer(s, &was, w, &e) || !session_read(s, &e)) {
		message_set(session_message(s), true, "%s", e.text);
		return;
	}
	bool waits = w->by == DECISION_TREATED && only_answered(s, was.block, w->day);
	message_set(session_message(s), false, "%s",
		!session_has_changed(s) ? _("It stood so already.")
		: waits ? _("Answered. Till the treatment is entered entry and picks "
			    "are not known. u undoes.")
			: _(said[w->by]));
	if (w->by == DECISION_TREATED && !was.is_answered)
		offer_treatment(s, &was);
}

bool session_read_picks(struct session *s, struct err *e)
{
	if (!session_read_log(s, e))
		return false;
	pick_rows_of(&s->log, 0, &s->picks.answer);
	bars_of(&s->log, 0, &s->picks.bars);
	s->picks.page.right = s->today.answer.title_short;
	s->picks.page.caution = say_caution_acts();
	picks_page_show(&s->picks.page, &s->picks.answer, &s->picks.bars, s->acts_anew);
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
		.to = day_season_end(s->day, f->season_start) }; /* picks ahead */
	bool ok = block_diary_read(&d, s->book, &s->log, &ask, e);
	buf_clear(&s->text.written);
	buf_addf(&s->text.written, "%s\n", d.span);
	for (size_t i = 0; ok && i < d.n; i++)
		buf_addf(&s->text.written, "%s  %s\n", d.lines[i].day_text,
			d.lines[i].text);
	if (ok && d.n == 0)
		buf_addf(&s->text.written, "%s\n",
			_("Nothing is entered of it in this season."));
	else if (ok)
		buf_addf(&s->text.written, "\n%s\n", d.says);
	buf_addf(&s->text.written, "\n%s", say_caution_acts());
	s->text.page = (struct text_page){ .text = s->text.written.text };
	snprintf(s->text.page.title, sizeof s->text.page.title, "%s \302\267 %s",
		f->name, b->name);
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
