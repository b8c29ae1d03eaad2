#include "answers/record.h"

#include "answers/answered.h"
#include "answers/entry_forms.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "entry_bar_parts.h"
#include "record_parts.h"

#include <stdlib.h>
#include <string.h>

static void add_time(struct instant t, struct buf *out)
{
	int32_t minute = instant_minute_of_day(t);

	buf_addf(out, "%02d:%02d", (int)minute / 60, (int)minute % 60);
}

/* Hours of the day on which it ended; the day as well when it began earlier. */
static void say_hours(const struct treatment *t, struct buf *out)
{
	char begun[DAY_TEXT_SIZE];

	if (t->from.minute != INSTANT_NONE && instant_day(t->from) != t->day) {
		instant_short(t->from, begun, sizeof begun);
		buf_addf(out, _(", from %s"), begun);
	} else if (t->from.minute != INSTANT_NONE) {
		buf_add(out, t->until.minute != INSTANT_NONE ? ", " : _(", from "));
		add_time(t->from, out);
	}
	if (t->until.minute != INSTANT_NONE) {
		buf_add(out,
			t->from.minute != INSTANT_NONE ? _(" to ") : _(", until "));
		add_time(t->until, out);
	} else if (t->from.minute == INSTANT_NONE) {
		buf_add(out, _(", hours not entered"));
	} else {
		buf_add(out, _(", end not entered"));
	}
}

static void say_when(const struct treatment *t, char out[static SAY_LINE])
{
	char day[DAY_TEXT_SIZE];
	struct buf text = { 0 };

	day_long(t->day, day, sizeof day);
	buf_add(&text, day);
	say_hours(t, &text);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

static void say_area(const struct treatment *t, char out[static SAY_LINE])
{
	char ha[SAY_SHORT];
	struct buf text = { 0 };

	buf_add(&text, "");
	if (t->area_x100 >= 0) {
		say_x100(t->area_x100, ha);
		buf_addf(&text, _("%s ha"), ha);
	}
	if (t->border)
		buf_addf(&text, "%s%s", text.n ? ", " : "", _("border only"));
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

/* What 7 CFR 110.3 asks for and is not there; the place is never missing. */
static void say_missing(struct record_row *row)
{
	const struct treatment *t = row->treatment;
	const struct {
		bool is_there;
		const char *name;
	} fields[] = {
		{ *t->product, N_("product") },
		{ *t->registration, N_("registration number") },
		{ *t->amount, N_("total amount") },
		{ *t->amount_unit, N_("unit of the amount") },
		{ t->area_x100 >= 0, N_("size of the area") },
		{ *row->crop, N_("crop") },
		{ *t->applicator, N_("applicator") },
		{ *t->certificate, N_("certificate number") },
	};
	struct buf text = { 0 };

	buf_add(&text, "");
	for (size_t i = 0; i < sizeof fields / sizeof *fields; i++)
		if (!fields[i].is_there)
			buf_addf(&text, "%s%s", text.n ? ", " : "", _(fields[i].name));
	text_copy(row->missing, sizeof row->missing, text.text);
	buf_free(&text);
}

static struct waiting entry_of(const struct treatment *t, const struct zone *z)
{
	struct instant end = t->until;

	if (end.minute == INSTANT_NONE)
		end = zone_local(z, t->day, MINUTES_A_DAY - 1);
	return waiting_entry(t, 1, z, end);
}

void record_say_entry(const struct treatment *t, const struct zone *z, struct buf *out)
{
	struct waiting w = entry_of(t, z);

	if (w.state == WAITING_BARRED)
		bar_say_until(t, &w, out);
	else if (w.state == WAITING_FREE)
		buf_add(out, _("re-entry when the application has ended"));
	else
		buf_add(out, _("re-entry interval not entered"));
}

void record_say_pick(const struct treatment *t, const struct zone *z, struct buf *out)
{
	struct pick_wait w = waiting_pick(t, 1, z, t->day);
	char day[DAY_TEXT_SIZE];

	if (t->phi_days < 0) {
		buf_add(out, _("preharvest interval not entered"));
	} else if (w.state == WAITING_FREE) {
		day_short(t->day, day, sizeof day);
		buf_addf(out, _("earliest pick %s (0 days)"), day);
	} else {
		bar_say_earliest(t, &w, out);
	}
}

static void fill_waiting(const struct zone *z, struct record_row *row)
{
	const struct treatment *t = row->treatment;
	struct waiting entry = entry_of(t, z);
	struct pick_wait pick = waiting_pick(t, 1, z, t->day);
	struct buf text = { 0 };

	row->entry_from = entry.until;
	if (entry.state == WAITING_FREE)
		row->entry_from = t->until;
	row->pick_from = DAY_NONE;
	if (t->phi_days >= 0 && t->rei_hours >= 0)
		row->pick_from = pick.state == WAITING_FREE ? t->day : pick.earliest;
	record_say_entry(t, z, &text);
	text_copy(row->entry, sizeof row->entry, text.text);
	buf_clear(&text);
	record_say_pick(t, z, &text);
	text_copy(row->pick, sizeof row->pick, text.text);
	buf_free(&text);
}

static void say_answered(const struct treatment *t, char out[static SAY_LINE])
{
	struct buf text = { 0 };

	bar_say_by(t, &text);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

static void add_row(const struct log *l, const struct treatment *t, struct record *out)
{
	const struct block *b = log_block(l, t->block);
	const struct farm *f = log_farm(l, b ? b->farm : 0);
	const struct pest *p = log_pest(l, t->pest);

	out->rows = mem_grow(out->rows, &out->cap, out->n + 1, sizeof *out->rows);
	struct record_row *row = &out->rows[out->n++];
	*row = (struct record_row){ .treatment = t };
	text_copy(row->farm, sizeof row->farm, f ? f->name : "");
	text_copy(row->block, sizeof row->block, b ? b->name : "");
	text_copy(row->crop, sizeof row->crop, b ? b->crop : "");
	text_copy(row->pest, sizeof row->pest, p ? p->code : "");
	say_when(t, row->when);
	say_area(t, row->area);
	say_missing(row);
	fill_waiting(&l->zone, row);
	if (t->id == TREATMENT_ANSWERED)
		say_answered(t, row->answered);
}

static int by_farm_day_block(const void *a, const void *b)
{
	const struct record_row *x = a, *y = b;
	int farms = strcmp(x->farm, y->farm);

	if (farms)
		return farms;
	if (x->treatment->day != y->treatment->day)
		return x->treatment->day < y->treatment->day ? -1 : 1;
	int blocks = strcmp(x->block, y->block);
	return blocks ? blocks
		      : (x->treatment->id > y->treatment->id) -
				(x->treatment->id < y->treatment->id);
}

static void say_date(int32_t day, struct buf *out)
{
	char text[SAY_SHORT];

	say_day(day, text);
	buf_addf(out, "%s %d", text, day_to_ymd(day).year);
}

void record_say_span(int32_t from, int32_t to, struct buf *out)
{
	say_date(from, out);
	buf_add(out, _(" to "));
	say_date(to, out);
}

static void clear_rows(struct record *r)
{
	for (size_t i = 0; i < r->n; i++)
		entry_changes_free(&r->rows[i].corrected);
	r->n = 0;
}

/* Beyond the span lie treatments that an answer within it tells of, and alerts that an
 * answer within it is to. */
static bool read_treatments(
	struct record *out, struct book *b, const struct record_ask *ask, struct err *e)
{
	enum { ALERT_BEFORE = 366 };

	return treatments_that_bar(b, ask->farm, ask->from - ALERT_BEFORE,
		ask->to + ANSWERED_DAYS_AFTER, &out->treatments, e);
}

static bool is_asked(const struct treatment *t, const struct record_ask *ask)
{
	return t->day >= ask->from && t->day <= ask->to &&
	       (ask->block == 0 || t->block == ask->block);
}

static bool read_corrections(struct record *r, struct book *b, struct err *e)
{
	struct manner manner;
	bool ok = manner_read(&manner, b, e);

	for (size_t i = 0; ok && i < r->n; i++)
		if (r->rows[i].treatment->id != TREATMENT_ANSWERED)
			ok = treatment_corrections_read(&r->rows[i].corrected, b,
				&manner, r->rows[i].treatment->id, e);
	return ok;
}

bool record_read(struct record *out, struct book *b, const struct log *l,
	const struct record_ask *ask, struct err *e)
{
	struct buf title = { 0 };

	clear_rows(out);
	out->from = ask->from;
	out->to = ask->to;
	record_say_span(ask->from, ask->to, &title);
	text_copy(out->title, sizeof out->title, title.text);
	buf_free(&title);
	if (!read_treatments(out, b, ask, e))
		return false;
	for (size_t i = 0; i < out->treatments.n; i++)
		if (is_asked(&out->treatments.items[i], ask))
			add_row(l, &out->treatments.items[i], out);
	if (out->n > 1)
		qsort(out->rows, out->n, sizeof *out->rows, by_farm_day_block);
	return read_corrections(out, b, e);
}

void record_free(struct record *r)
{
	clear_rows(r);
	free(r->treatments.items);
	free(r->rows);
	*r = (struct record){ 0 };
}

const char *record_says(size_t i)
{
	static const char *const says[] = {
		N_("The fields are those that 7 CFR 110.3, the US federal record of "
		   "restricted-use products, asks for: product and registration "
		   "number, total amount, place with the size of the area and the "
		   "crop, date, applicator with certificate number."),
		N_("States and other countries ask for more, such as other products, "
		   "wind and temperature, shorter terms: ask yours. Farm and block "
		   "tell the place only beside a map or list that says where they "
		   "are."),
		N_("What each treatment bars is said of it alone: of several on a "
		   "block the longest interval rules."),
	};

	return i < sizeof says / sizeof *says ? _(says[i]) : NULL;
}
