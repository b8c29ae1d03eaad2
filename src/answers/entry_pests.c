/* entry_pests.c - pests as rows, and how their degree-days are counted. */
#include "answers/entry_kinds.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_parts.h"
#include "season/biofix.h"

#include <math.h>
#include <string.h>

static const char *method_word(int i)
{
	return dd_method_word((enum dd_method)i);
}

static const char *cutoff_word(int i)
{
	return dd_cutoff_word((enum dd_cutoff)i);
}

#define AT(field) .at = offsetof(struct pest_row, field)

const struct column pest_columns[PEST_COLUMNS] = {
	{ .name = "code",
		AT(code),
		.type = &value_text,
		.hi = CODE_BYTES,
		.needed = true,
		.help = N_("The pest's abbreviation, such as CM."),
		.label = N_("code"),
		.list_cols = 8 },
	{ .name = "name",
		AT(name),
		.type = &value_text,
		.hi = NAME_BYTES,
		.shipped = true,
		.help = N_("Its common name."),
		.label = N_("name"),
		.list_cols = 24 },
	{ .name = "latin",
		AT(latin),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("Its scientific name."),
		.label = N_("scientific name"),
		.list_cols = 24 },
	{ .name = "unit",
		AT(heat.unit),
		.type = &value_word,
		.lo = 1,
		.hi = 2,
		.word = column_unit,
		.help = N_("Degrees of base, cap and sums; empty: no degree-days."),
		.label = N_("degrees"),
		.pick = PICK_WORD,
		.list_cols = 7 },
	{ .name = "base",
		AT(heat.base),
		.type = &value_number,
		.lo = HEAT_LEAST,
		.hi = HEAT_MOST,
		.help = N_("Temperature that degree-days are counted from."),
		.label = N_("base"),
		.list_cols = 6 },
	{ .name = "cap",
		AT(heat.cap),
		.type = &value_number,
		.lo = HEAT_LEAST,
		.hi = HEAT_MOST,
		.help = N_("Temperature that the cutoff goes by; empty: none."),
		.label = N_("cap") },
	{ .name = "method",
		AT(heat.method),
		.type = &value_word,
		.hi = DD_METHOD_COUNT - 1,
		.none = -1,
		.word = method_word,
		.help = N_("How a day's degree-days are counted."),
		.label = N_("method"),
		.pick = PICK_WORD },
	{ .name = "cutoff",
		AT(heat.cutoff),
		.type = &value_word,
		.hi = DD_CUTOFF_COUNT - 1,
		.none = -1,
		.word = cutoff_word,
		.help = N_("What heat above the cap does."),
		.label = N_("cutoff"),
		.pick = PICK_WORD },
	{ .name = "biofix_rule",
		AT(biofix_rule),
		.type = &value_text,
		.hi = BIOFIX_RULE_BYTES,
		.help = N_("Rule that its biofix is suggested by; empty: our own."),
		.label = N_("biofix rule"),
		.pick = PICK_BIOFIX_RULE },
	{ .name = "dd_source",
		AT(heat.source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.shipped = true,
		.help = N_("Who gives its base, cap, method and cutoff."),
		.label = N_("source of these") },
	{ .name = "source",
		AT(source),
		.type = &value_text,
		.hi = SOURCE_BYTES,
		.passing = true,
		.help = N_("May stand in a file; it is not kept.") },
	RETIRED_COLUMN,
};

/* All but the cap, which many rules go without. */
static const char *const needed[] = { "unit", "base", "method", "cutoff" };
enum { NEEDED = sizeof needed / sizeof *needed };

static bool has_heat(const struct hearing *h)
{
	bool any = row_has(h, "cap");

	for (size_t i = 0; i < NEEDED; i++)
		any = any || row_has(h, needed[i]);
	return any;
}

const char *heat_lacks(const struct hearing *h)
{
	for (size_t i = 0; has_heat(h) && i < NEEDED; i++)
		if (!row_has(h, needed[i]))
			return needed[i];
	return NULL;
}

/* The first value that stands beside an empty unit; NULL: none. */
static const char *without_unit(const struct heat_row *r)
{
	if (!isnan(r->base))
		return "base";
	if (!isnan(r->cap))
		return "cap";
	return r->method >= 0 ? "method" : r->cutoff >= 0 ? "cutoff" : NULL;
}

/* The first value that a unit lacks; NULL: none. */
static const char *lacking(const struct heat_row *r)
{
	if (isnan(r->base))
		return "base";
	return r->method < 0 ? "method" : r->cutoff < 0 ? "cutoff" : NULL;
}

static bool rule_good(struct hearing *h, const struct heat_row *r)
{
	const struct dd_rule rule = { .method = (enum dd_method)r->method,
		.cutoff = (enum dd_cutoff)r->cutoff,
		.base = r->base,
		.cap = r->cap };
	const char *fault = dd_rule_fault(&rule);

	if (fault)
		return row_bad(h, isnan(r->cap) ? "cutoff" : "cap",
			_("does not fit its row: %s"), fault);
	if (r->cap <= r->base)
		return row_bad(h, "cap",
			_("does not fit its row: the base must be lower than the cap"));
	return true;
}

static bool heat_over(struct hearing *h, const struct heat_row *r, struct heat *out)
{
	const char *column;

	if (row_has(h, "dd_source"))
		memcpy(out->source, r->source, sizeof out->source);
	if (!has_heat(h))
		return true;
	if (r->unit == 0 && (column = without_unit(r)))
		return row_bad(
			h, column, _("stands without a unit; write C or F under unit"));
	if (r->unit != 0 && (column = lacking(r)))
		return row_bad(h, column,
			_("a value is missing; a unit needs its base, method and "
			  "cutoff"));
	if (r->unit != 0 && !rule_good(h, r))
		return false;
	out->unit = column_unit(r->unit)[0];
	out->base = r->base;
	out->cap = r->cap;
	text_copy(
		out->method, sizeof out->method, r->unit ? method_word(r->method) : "");
	text_copy(
		out->cutoff, sizeof out->cutoff, r->unit ? cutoff_word(r->cutoff) : "");
	return true;
}

/* As far as a file can tell, which has four decimals. */
static bool same_degrees(double a, double b)
{
	return fabs(a - b) <= 0.000051 || (isnan(a) && isnan(b));
}

bool heat_same(const struct heat *a, const struct heat *b)
{
	if (a->unit != b->unit || strcmp(a->source, b->source) != 0)
		return false;
	return !a->unit ||
	       (same_degrees(a->base, b->base) && same_degrees(a->cap, b->cap) &&
		       strcmp(a->method, b->method) == 0 &&
		       strcmp(a->cutoff, b->cutoff) == 0);
}

static struct heat_row heat_row_of(const struct heat *h)
{
	struct heat_row r = { .unit = column_unit_of(h->unit),
		.base = h->unit ? h->base : (double)NAN,
		.cap = h->unit ? h->cap : (double)NAN,
		.method = -1,
		.cutoff = -1 };
	enum dd_method method;
	enum dd_cutoff cutoff;

	if (h->unit && dd_method_read(h->method, &method))
		r.method = (int)method;
	if (h->unit && dd_cutoff_read(h->cutoff, &cutoff))
		r.cutoff = (int)cutoff;
	text_copy(r.source, sizeof r.source, h->source);
	return r;
}

static bool biofix_rule_good(struct hearing *h, const char *word)
{
	struct buf there = { 0 };
	size_t n;

	if (!*word || biofix_rule_find(word))
		return true;
	const struct biofix_rule *rules = biofix_rules(&n);
	for (size_t i = 0; i < n; i++)
		buf_addf(&there, "%s%s", i ? ", " : "", rules[i].word);
	row_bad(h, "biofix_rule", _("is no rule; there are: %s"), there.text);
	buf_free(&there);
	return false;
}

struct pest_row pest_row_of(const struct pest *p)
{
	struct pest_row r = { .heat = heat_row_of(&p->heat), .retired = p->retired };

	text_copy(r.code, sizeof r.code, p->code);
	text_copy(r.name, sizeof r.name, p->name);
	text_copy(r.latin, sizeof r.latin, p->latin);
	text_copy(r.biofix_rule, sizeof r.biofix_rule, p->biofix_rule);
	return r;
}

bool pest_over(struct hearing *h, const struct pest_row *r, struct pest *p)
{
	memcpy(p->code, r->code, sizeof p->code);
	if (row_has(h, "name"))
		memcpy(p->name, r->name, sizeof p->name);
	if (row_has(h, "latin"))
		memcpy(p->latin, r->latin, sizeof p->latin);
	if (row_has(h, "biofix_rule"))
		memcpy(p->biofix_rule, r->biofix_rule, sizeof p->biofix_rule);
	if (row_has(h, "retired"))
		p->retired = r->retired == 1;
	return heat_over(h, &r->heat, &p->heat) && biofix_rule_good(h, p->biofix_rule);
}
