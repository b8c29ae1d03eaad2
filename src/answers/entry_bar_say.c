/* entry_bar_say.c - re-entry and picks in words. */
#include "entry_bar_parts.h"

#include "answers/answered.h"
#include "answers/say.h"
#include "base/words.h"

#include <string.h>

void bar_say_day(int32_t day, int32_t beside, struct buf *out)
{
	char text[DAY_TEXT_SIZE];

	day_short(day, text, sizeof text);
	buf_add(out, text);
	if (day_to_ymd(day).year != day_to_ymd(beside).year)
		buf_addf(out, " %d", day_to_ymd(day).year);
}

void bar_say_instant(struct instant t, int32_t beside, struct buf *out)
{
	int32_t minute = instant_minute_of_day(t);

	bar_say_day(instant_day(t), beside, out);
	buf_addf(out, " %02d:%02d", (int)minute / 60, (int)minute % 60);
}

void bar_say_place(const struct log *l, const struct block *b, struct buf *out)
{
	const struct farm *f = log_farm(l, b->farm);

	buf_add(out, b->name);
	for (size_t i = 0; i < l->blocks.n; i++)
		if (l->blocks.items[i].farm != b->farm &&
			strcmp(l->blocks.items[i].name, b->name) == 0) {
			buf_addf(out, " (%s)", f ? f->name : "");
			return;
		}
}

void bar_say_name(const struct treatment *t, struct buf *out)
{
	char day[SAY_SHORT];

	say_day(t->day, day);
	if (*t->product)
		buf_addf(out, "%s, %s", t->product, day);
	else
		buf_addf(out, _("the treatment of %s"), day);
}

static void say_answered(const struct treatment *t, struct buf *out)
{
	char day[SAY_SHORT];

	say_day(t->day, day);
	buf_addf(out, _("answered as treated %s, no treatment entered"), day);
}

void bar_say_by(const struct treatment *t, struct buf *out)
{
	char day[SAY_SHORT];

	if (t->id == TREATMENT_ANSWERED) {
		say_answered(t, out);
		return;
	}
	say_day(t->day, day);
	buf_addf(out, t->border ? _("border treated %s: %s") : _("treated %s: %s"), day,
		*t->product ? t->product : _("product not entered"));
	if (*t->applicator)
		buf_addf(out, _(", by %s"), t->applicator);
}

void bar_say_lacking(const struct treatment *t, bool rei, bool phi, struct buf *out)
{
	if (t->id == TREATMENT_ANSWERED) {
		say_answered(t, out);
		return;
	}
	rei = rei && t->rei_hours < 0;
	phi = phi && t->phi_days < 0;
	buf_add(out, rei && phi ? _("no re-entry and no preharvest interval entered "
				    "for ")
		     : rei      ? _("no re-entry interval entered for ")
				: _("no preharvest interval entered for "));
	bar_say_name(t, out);
}

void bar_say_until(const struct treatment *t, const struct waiting *w, struct buf *out)
{
	const struct treatment *by = &t[w->treatment];
	char day[SAY_SHORT];

	buf_add(out, _("no entry until "));
	bar_say_instant(w->until, by->day, out);
	if (by->until.minute == INSTANT_NONE) {
		say_day(by->day, day);
		buf_addf(out, _(" (counted from the end of %s)"), day);
	}
	if (w->unknown >= 0) {
		buf_add(out, _(", then not known: "));
		bar_say_lacking(&t[w->unknown], true, false, out);
	}
}

void bar_say_reason(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	const struct treatment *by = &t[w->treatment];
	char text[SAY_SHORT];

	if (w->by_reentry) {
		buf_add(out, _("no entry until "));
		bar_say_instant(w->from, by->day, out);
		return;
	}
	say_day(by->day, text);
	buf_addf(out,
		ngettext("%d day after %s", "%d days after %s",
			(unsigned long)by->phi_days),
		(int)by->phi_days, text);
}

/* ": no preharvest interval entered for ..." */
static void say_unknown(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	if (w->unknown < 0)
		return;
	buf_add(out, ": ");
	bar_say_lacking(&t[w->unknown], true, true, out);
}

static void say_then(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	if (w->unknown < 0)
		return;
	buf_add(out, _("; then not known"));
	say_unknown(t, w, out);
}

struct pick_words {
	struct buf day, reason;
};

static struct pick_words words_of(const struct treatment *t, const struct pick_wait *w)
{
	struct pick_words p = { 0 };

	bar_say_day(w->earliest, t[w->treatment].day, &p.day);
	bar_say_reason(t, w, &p.reason);
	return p;
}

static void forget_words(struct pick_words *p)
{
	buf_free(&p->day);
	buf_free(&p->reason);
}

static void say_allowed(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	if (w->treatment < 0) {
		buf_add(out, _("nothing in the log bars it"));
		return;
	}
	struct pick_words p = words_of(t, w);
	buf_addf(out, _("not barred from %s on (%s)"), p.day.text, p.reason.text);
	forget_words(&p);
}

static void say_too_early(const struct treatment *t, const struct pick_wait *w,
	bool is_done, struct buf *out)
{
	struct pick_words p = words_of(t, w);

	if (w->unknown >= 0)
		buf_addf(out,
			is_done ? _("too early: barred until %s (%s), then not known")
				: _("too early: not before %s (%s), then not known"),
			p.day.text, p.reason.text);
	else
		buf_addf(out,
			is_done ? _("too early: earliest pick was %s (%s)")
				: _("too early: earliest pick %s (%s)"),
			p.day.text, p.reason.text);
	forget_words(&p);
	say_unknown(t, w, out);
}

static void say_earliest(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	struct pick_words p = words_of(t, w);

	buf_addf(out,
		w->unknown < 0 ? _("earliest pick %s (%s)")
			       : _("pick not known, not before %s (%s)"),
		p.day.text, p.reason.text);
	forget_words(&p);
	say_unknown(t, w, out);
}

/* "Sun 23 Aug 10:30"; the caller frees it. */
static struct buf hour_of(const struct treatment *t, const struct pick_wait *w)
{
	struct buf at = { 0 };

	bar_say_instant(w->from, t[w->treatment].day, &at);
	return at;
}

static void say_not_known(const char *words, const struct treatment *t,
	const struct pick_wait *w, struct buf *out)
{
	buf_add(out, words);
	say_unknown(t, w, out);
}

void bar_say_pick(const struct treatment *t, const struct pick_wait *w, bool is_done,
	struct buf *out)
{
	if (w->state == WAITING_FREE) {
		say_allowed(t, w, out);
	} else if (w->state == WAITING_BARRED) {
		say_too_early(t, w, is_done, out);
	} else if (w->state == WAITING_FROM) {
		struct buf at = hour_of(t, w);
		buf_addf(out, _("only from %s on, when the re-entry interval is over"),
			at.text);
		buf_free(&at);
		say_then(t, w, out);
	} else {
		say_not_known(_("not known"), t, w, out);
	}
}

void bar_say_earliest(
	const struct treatment *t, const struct pick_wait *w, struct buf *out)
{
	if (w->state == WAITING_BARRED) {
		say_earliest(t, w, out);
	} else if (w->state == WAITING_FROM) {
		struct buf at = hour_of(t, w);
		buf_addf(out, _("earliest pick from %s on (re-entry interval)"),
			at.text);
		buf_free(&at);
		say_then(t, w, out);
	} else {
		say_not_known(_("earliest pick not known"), t, w, out);
	}
}
