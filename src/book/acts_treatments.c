/* acts_treatments.c - treatments. A moment stands in the book in UTC, as SQLite writes
 * it, beside what local clocks were ahead of it. */
#include "book/acts.h"

#include "acts_parts.h"
#include "visit.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

enum {
	AREA_MAX = 100000000,
	REI_MAX = 8784,
	PHI_MAX = 366,
	EAST_MAX = 840,
	UTC_LENGTH = 17, /* 2026-08-20T17:30Z */
	CLOCK_LENGTH = UTC_LENGTH - 1,
};

/* "": it is not known. */
static void write_utc(struct instant t, char out[static INSTANT_SIZE])
{
	t.east = 0;
	instant_write(t, out);
	if (*out)
		memcpy(out + CLOCK_LENGTH, "Z", 2);
}

static bool read_utc(const char *text, struct instant *out)
{
	char full[INSTANT_SIZE];

	*out = treatment_blank.until;
	if (*text == '\0')
		return true;
	if (strlen(text) != UTC_LENGTH || text[CLOCK_LENGTH] != 'Z')
		return false;
	snprintf(full, sizeof full, "%.*s+00:00", (int)CLOCK_LENGTH, text);
	return instant_read(full, out);
}

/* The offset and the moment, two columns: both are there or neither. */
static struct instant read_moment(struct query *q)
{
	int32_t east = query_get_within(q, -EAST_MAX, EAST_MAX);
	struct instant t;

	query_require(q, read_utc(query_get_text(q), &t));
	t.east = east;
	return t;
}

static bool begins_in_time(const struct treatment *t)
{
	if (t->from.minute == INSTANT_NONE)
		return true;
	return t->until.minute == INSTANT_NONE ? instant_day(t->from) <= t->day
					       : t->from.minute <= t->until.minute;
}

/* One that ended on another day than its own would bar too short, and unsaid. */
static void read_hours(struct query *q, struct treatment *t)
{
	t->until = read_moment(q);
	query_require(
		q, t->until.minute == INSTANT_NONE || instant_day(t->until) == t->day);
	t->from = read_moment(q);
	query_require(q, begins_in_time(t));
}

static void read_treatment(struct query *q, struct treatment *t)
{
	*t = treatment_blank;
	acts_get_place(q, &t->id, &t->block);
	t->pest = query_get(q);
	t->day = acts_get_day(q);
	query_get_copy(q, t->job, sizeof t->job);
	t->border = query_get_within(q, 0, 1) != 0;
	read_hours(q, t);
	query_get_copy(q, t->product, sizeof t->product);
	query_get_copy(q, t->registration, sizeof t->registration);
	query_get_copy(q, t->amount, sizeof t->amount);
	query_get_copy(q, t->amount_unit, sizeof t->amount_unit);
	t->area_x100 = query_get_count(q);
	query_require(q, t->area_x100 <= AREA_MAX);
	t->rei_hours = query_get_count(q);
	query_require(q, t->rei_hours <= REI_MAX);
	t->phi_days = query_get_count(q);
	query_require(q, t->phi_days <= PHI_MAX);
	query_get_copy(q, t->applicator, sizeof t->applicator);
	query_get_copy(q, t->certificate, sizeof t->certificate);
	query_get_copy(q, t->note, sizeof t->note);
}

bool book_treatments(struct book *b, int64_t farm, int32_t from, int32_t to,
	struct treatments *out, struct err *e)
{
	struct query q;

	out->n = 0;
	query_start(&q, b,
		"SELECT x.id, k.id, x.block, x.pest, x.day, x.job, x.border, "
		"x.ended_east, x.ended_at, x.started_east, x.started_at, x.product, "
		"x.registration, x.amount, x.unit, x.area_x100, x.rei_hours, "
		"x.phi_days, x.applicator, x.certificate, x.note FROM treatment x LEFT "
		"JOIN block k ON k.id = x.block WHERE (" ACTS_IN_SPAN
		" OR date(x.ended_at, x.ended_east || ' minutes') <> x.day) "
		"AND " ACTS_OF_FARM " ORDER BY x.block, x.day, x.id");
	acts_ask(&q, farm, from, to);
	q.table = "treatment";
	while (query_row(&q)) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		read_treatment(&q, &out->items[out->n++]);
	}
	return query_end(&q, N_("the treatments cannot be read"), e);
}

static bool texts_good(const struct treatment *t, struct err *e)
{
	return store_text_good(t->job, N_("the job"), e) &&
	       store_text_good(t->product, N_("the product"), e) &&
	       store_text_good(t->registration, N_("the registration number"), e) &&
	       store_text_good(t->amount, N_("the amount"), e) &&
	       store_text_good(t->amount_unit, N_("the unit of the amount"), e) &&
	       store_text_good(t->applicator, N_("the applicator"), e) &&
	       store_text_good(t->certificate, N_("the certificate number"), e) &&
	       store_text_good(t->note, N_("the note"), e);
}

static bool moment_good(struct instant t, const char *what, struct err *e)
{
	char utc[INSTANT_SIZE];

	write_utc(t, utc);
	if (t.minute == INSTANT_NONE || *utc)
		return store_range_good(t.east, -EAST_MAX, EAST_MAX,
			N_("what local clocks are ahead of UTC, in minutes,"), e);
	return err_set(e, ERR_INPUT,
		_("%s: its hours lie on no day from 1900-01-01 to 2199-12-31"),
		_(what));
}

/* The days of waiting are counted from the day on which it ended. */
static bool hours_good(const struct treatment *t, const char *what, struct err *e)
{
	bool begun = t->from.minute != INSTANT_NONE;
	bool ended = t->until.minute != INSTANT_NONE;
	char ours[DAY_ISO_SIZE], theirs[DAY_ISO_SIZE];

	if (!moment_good(t->from, what, e) || !moment_good(t->until, what, e))
		return false;
	if (begun && (ended ? t->until.minute < t->from.minute
			    : instant_day(t->from) > t->day))
		return err_set(
			e, ERR_INPUT, _("%s: it ends before it begins"), _(what));
	if (!ended || instant_day(t->until) == t->day)
		return true;
	day_iso(t->day, ours);
	day_iso(instant_day(t->until), theirs);
	return err_set(e, ERR_INPUT,
		_("%s: its date is %s, but it ended on %s; the date is the day on "
		  "which it ended"),
		_(what), ours, theirs);
}

static bool treatment_good(const struct treatment *t, const char *what, struct err *e)
{
	return acts_day_good(t->day, what, e) && texts_good(t, e) &&
	       hours_good(t, what, e) &&
	       store_range_good(t->area_x100, -1, AREA_MAX,
		       N_("the area in hundredths of a hectare"), e) &&
	       store_range_good(t->rei_hours, -1, REI_MAX,
		       N_("the re-entry interval in hours"), e) &&
	       store_range_good(t->phi_days, -1, PHI_MAX,
		       N_("the preharvest interval in days"), e);
}

static void bind_moment(
	struct query *q, struct instant t, const char utc[static INSTANT_SIZE])
{
	query_word(q, utc);
	if (t.minute == INSTANT_NONE)
		query_id(q, 0);
	else
		query_int(q, t.east);
}

static void bind_label(struct query *q, const struct treatment *t)
{
	query_text(q, t->product);
	query_text(q, t->registration);
	query_text(q, t->amount);
	query_text(q, t->amount_unit);
	query_count(q, t->area_x100);
	query_count(q, t->rei_hours);
	query_count(q, t->phi_days);
	query_text(q, t->applicator);
	query_text(q, t->certificate);
	query_text(q, t->note);
}

bool book_put_treatment(struct book *b, struct treatment *t, struct err *e)
{
	const char *what = N_("the treatment is not saved");
	char from[INSTANT_SIZE], until[INSTANT_SIZE];
	struct query q;

	if (!treatment_good(t, what, e) || !store_begin(b, what, e))
		return false;
	write_utc(t->from, from);
	write_utc(t->until, until);
	query_start(&q, b,
		t->id ? "UPDATE treatment SET block = ?1, pest = ?2, day = ?3, job = "
			"?4, border = ?5, started_at = ?6, started_east = ?7, ended_at "
			"= ?8, ended_east = ?9, product = ?10, registration = ?11, "
			"amount = ?12, unit = ?13, area_x100 = ?14, rei_hours = ?15, "
			"phi_days = ?16, applicator = ?17, certificate = ?18, note = "
			"?19, changed_at = ?20, changed_by = ?21 WHERE id = ?22"
		      : "INSERT INTO treatment (block, pest, day, job, border, "
			"started_at, started_east, ended_at, ended_east, product, "
			"registration, amount, unit, area_x100, rei_hours, phi_days, "
			"applicator, certificate, note, changed_at, changed_by, uid) "
			"VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, "
			"?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22)");
	query_int(&q, t->block);
	query_id(&q, t->pest);
	query_day(&q, t->day);
	query_word(&q, t->job);
	query_int(&q, t->border);
	bind_moment(&q, t->from, from);
	bind_moment(&q, t->until, until);
	bind_label(&q, t);
	return store_put(&q, &t->id, "", what, e);
}
