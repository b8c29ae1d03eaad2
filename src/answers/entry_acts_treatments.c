/* entry_acts_treatments.c - treatments as rows. Every number about a product is the
 * user's, off its label. */
#include "base/day.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_acts_parts.h"

enum { AREA_X100_MAX = 100000000, REI_HOURS_MAX = 8784, PHI_DAYS_MAX = 366 };

#define AT(field) .at = offsetof(struct treatment_row, field)

const struct column treatment_columns[TREATMENT_COLUMNS] = {
	FARM_COLUMN,
	{ NAME_COLUMN("block", block, NOTE_BYTES,
		  N_("Block of the farm; the book must have it.")),
		.needed = true,
		.form_help =
			N_("Block of the farm; of a new one several, with commas."),
		.label = N_("block"), .pick = PICK_BLOCK, .list_cols = 16 },
	{ NAME_COLUMN("pest", pest, CODE_BYTES,
		  N_("Code of the pest it was against; empty: all.")),
		.label = N_("pest"), .pick = PICK_PEST },
	{ .name = "date",
		AT(day),
		.type = &value_day,
		.needed = true,
		.help = N_("The day on which it ended; the days until a pick are "
			   "counted from it."),
		.label = N_("date"),
		.list_cols = 10 },
	{ .name = "started_at",
		AT(from),
		.type = &value_moment,
		.help = N_("When it began; empty: not entered."),
		.label = N_("began at") },
	{ .name = "ended_at",
		AT(until),
		.type = &value_moment,
		.help = N_("When it ended; empty: not entered, and people are kept out "
			   "from the end of that day on."),
		.label = N_("ended at") },
	{ .name = "border",
		AT(border),
		.type = &value_word,
		.hi = 1,
		.none = -1,
		.word = column_yes_no,
		.help = N_("Whether it was only on the outer rows; empty: no. Totals "
			   "since a treatment then restart at border traps alone."),
		.label = N_("border only"),
		.pick = PICK_WORD },
	{ NAME_COLUMN(
		  "product", product, NAME_BYTES, N_("Product, as its label has it.")),
		.label = N_("product"), .list_cols = 20 },
	{ NAME_COLUMN("registration", registration, NAME_BYTES,
		  N_("Its registration number.")),
		.label = N_("registration number") },
	{ NAME_COLUMN("amount", amount, NAME_BYTES,
		  N_("How much of the product in all, as you would write it.")),
		.label = N_("amount in all") },
	{ NAME_COLUMN("amount_unit", amount_unit, NAME_BYTES,
		  N_("The unit of the amount: l, kg.")),
		.label = N_("its unit") },
	{ .name = "area_ha",
		AT(area_x100),
		.type = &value_area,
		.hi = AREA_X100_MAX,
		.none = -1,
		.help = N_("Area treated, in hectares; empty: not entered."),
		.form_help = N_("Area treated with the unit: 5 ha, 12.5 acres; empty: "
				"not entered."),
		.label = N_("area") },
	{ NAME_COLUMN("applicator", applicator, NAME_BYTES,
		  N_("Who applied it, or supervised.")),
		.form_help = N_("Who applied it, or supervised; Right shows who did "
				"before."),
		.label = N_("applicator"), .pick = PICK_APPLICATOR },
	{ NAME_COLUMN("certificate", certificate, NAME_BYTES,
		  N_("Number of that person's certificate.")),
		.form_help = N_("Number of that person's certificate; Right shows "
				"what it was before."),
		.label = N_("certificate number"), .pick = PICK_CERTIFICATE },
	{ .name = "rei_hours",
		AT(rei_hours),
		.type = &value_int,
		.hi = REI_HOURS_MAX,
		.none = -1,
		.help = N_("Re-entry interval in hours, from its label; empty: not "
			   "entered, never 0."),
		.label = N_("re-entry, hours"),
		.list_cols = 5 },
	{ .name = "phi_days",
		AT(phi_days),
		.type = &value_int,
		.hi = PHI_DAYS_MAX,
		.none = -1,
		.help = N_("Preharvest interval in days, from its label; empty: not "
			   "entered, never 0."),
		.label = N_("preharvest, days"),
		.list_cols = 5 },
	{ NAME_COLUMN("job", job, NAME_BYTES,
		  N_("The same for all rows of one tank mix, or of one round over "
		     "several blocks; empty: it stands alone.")),
		.label = N_("job") },
	NOTE_COLUMN,
};

static struct typed_moment typed(struct instant t)
{
	if (t.minute == INSTANT_NONE)
		return (struct typed_moment){ .kind = MOMENT_NONE };
	return (struct typed_moment){ .kind = MOMENT_FULL, .at = t };
}

struct treatment_row treatment_row_of(const struct known *k, const struct treatment *t)
{
	struct treatment_row r = { .day = t->day,
		.from = typed(t->from),
		.until = typed(t->until),
		.border = t->border,
		.area_x100 = t->area_x100,
		.rei_hours = t->rei_hours,
		.phi_days = t->phi_days };

	act_names(k, t->block, r.farm, r.block);
	text_copy(r.pest, sizeof r.pest, known_pest(k, t->pest));
	text_copy(r.product, sizeof r.product, t->product);
	text_copy(r.registration, sizeof r.registration, t->registration);
	text_copy(r.amount, sizeof r.amount, t->amount);
	text_copy(r.amount_unit, sizeof r.amount_unit, t->amount_unit);
	text_copy(r.applicator, sizeof r.applicator, t->applicator);
	text_copy(r.certificate, sizeof r.certificate, t->certificate);
	text_copy(r.job, sizeof r.job, t->job);
	text_copy(r.note, sizeof r.note, t->note);
	return r;
}

static struct instant moment_of(
	const struct hearing *h, const struct typed_moment *m, int32_t day)
{
	static const struct zone utc = { .n = 0 };
	const struct zone *z = h->zone ? h->zone : &utc;

	if (m->kind == MOMENT_FULL)
		return m->at;
	if (m->kind == MOMENT_LOCAL)
		return zone_local(z, m->day, m->minute_of_day);
	if (m->kind == MOMENT_HOUR)
		return zone_local(z, day, m->minute_of_day);
	return treatment_blank.until;
}

/* Where the file lacks a column, what the book has in it stays. */
static bool times_over(
	struct hearing *h, const struct treatment_row *r, struct treatment *out)
{
	char ended[DAY_ISO_SIZE];

	if (row_has(h, "ended_at"))
		out->until = moment_of(h, &r->until, r->day);
	if (row_has(h, "started_at"))
		out->from = moment_of(h, &r->from, r->day);
	bool begun = out->from.minute != INSTANT_NONE;
	bool done = out->until.minute != INSTANT_NONE;
	if (begun && done && r->from.kind == MOMENT_HOUR &&
		out->from.minute > out->until.minute)
		out->from = moment_of(h, &r->from, r->day - 1);
	if (done && instant_day(out->until) != r->day) {
		day_iso(instant_day(out->until), ended);
		return row_bad(h, "date",
			_("is not the day on which it ended, %s; the date is that "
			  "day"),
			ended);
	}
	if (begun && (done ? out->from.minute > out->until.minute
			   : instant_day(out->from) > r->day))
		return row_bad(h, "started_at", _("lies after its end"));
	return true;
}

static void label_over(
	const struct hearing *h, const struct treatment_row *r, struct treatment *out)
{
	if (row_has(h, "product"))
		text_copy(out->product, sizeof out->product, r->product);
	if (row_has(h, "registration"))
		text_copy(out->registration, sizeof out->registration, r->registration);
	if (row_has(h, "amount"))
		text_copy(out->amount, sizeof out->amount, r->amount);
	if (row_has(h, "amount_unit"))
		text_copy(out->amount_unit, sizeof out->amount_unit, r->amount_unit);
	if (row_has(h, "applicator"))
		text_copy(out->applicator, sizeof out->applicator, r->applicator);
	if (row_has(h, "certificate"))
		text_copy(out->certificate, sizeof out->certificate, r->certificate);
	if (row_has(h, "job"))
		text_copy(out->job, sizeof out->job, r->job);
	if (row_has(h, "note"))
		text_copy(out->note, sizeof out->note, r->note);
}

bool treatment_over(struct hearing *h, const struct known *k,
	const struct treatment_row *r, struct treatment *out)
{
	if (!act_place(h, k, r->farm, r->block, &out->block) ||
		!act_pest(h, k, r->pest, &out->pest) || !times_over(h, r, out))
		return false;
	out->day = r->day;
	if (row_has(h, "border"))
		out->border = r->border == 1;
	if (row_has(h, "area_ha"))
		out->area_x100 = r->area_x100;
	if (row_has(h, "rei_hours"))
		out->rei_hours = r->rei_hours;
	if (row_has(h, "phi_days"))
		out->phi_days = r->phi_days;
	label_over(h, r, out);
	return true;
}
