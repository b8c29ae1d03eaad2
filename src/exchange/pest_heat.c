#include "pest_heat.h"

#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"
#include "season/biofix.h"

#include <math.h>
#include <string.h>

const char *column_method(int i)
{
	return dd_method_word((enum dd_method)i);
}

const char *column_cutoff(int i)
{
	return dd_cutoff_word((enum dd_cutoff)i);
}

/* All but the cap, which many rules go without. */
static const char *const needed[] = { "unit", "base", "method", "cutoff" };
enum { NEEDED = sizeof needed / sizeof *needed };

static bool has_heat(const struct taking *t)
{
	bool any = taking_has(t, "cap");

	for (size_t i = 0; i < NEEDED; i++)
		any = any || taking_has(t, needed[i]);
	return any;
}

bool heat_columns_good(const struct taking *t, struct err *e)
{
	if (!has_heat(t))
		return true;
	for (size_t i = 0; i < NEEDED; i++)
		if (!taking_has(t, needed[i]))
			return err_set(e, ERR_INPUT,
				_("%s, line %lld: the column %s is missing; unit, "
				  "base, method and cutoff go together"),
				t->from->name, (long long)t->csv.line, needed[i]);
	return true;
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

static bool rule_good(struct taking *t, const struct heat_row *r)
{
	const struct dd_rule rule = { .method = (enum dd_method)r->method,
		.cutoff = (enum dd_cutoff)r->cutoff,
		.base = r->base,
		.cap = r->cap };
	const char *fault = dd_rule_fault(&rule);

	if (fault)
		return !taking_bad(t, isnan(r->cap) ? "cutoff" : "cap",
			_("does not fit its row: %s"), fault);
	if (r->cap <= r->base)
		return !taking_bad(t, "cap",
			_("does not fit its row: the base must be lower than the cap"));
	return true;
}

bool heat_over(struct taking *t, const struct heat_row *r, struct heat *h)
{
	const char *column;

	if (taking_has(t, "dd_source"))
		memcpy(h->source, r->source, sizeof h->source);
	if (!has_heat(t))
		return true;
	if (r->unit == 0 && (column = without_unit(r)))
		return !taking_bad(
			t, column, _("stands without a unit; write C or F under unit"));
	if (r->unit != 0 && (column = lacking(r)))
		return !taking_bad(t, column,
			_("a value is missing; a unit needs its base, method and "
			  "cutoff"));
	if (r->unit != 0 && !rule_good(t, r))
		return false;
	h->unit = column_unit(r->unit)[0];
	h->base = r->base;
	h->cap = r->cap;
	text_copy(h->method, sizeof h->method, r->unit ? column_method(r->method) : "");
	text_copy(h->cutoff, sizeof h->cutoff, r->unit ? column_cutoff(r->cutoff) : "");
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

struct heat_row heat_row_of(const struct heat *h)
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

bool biofix_rule_good(struct taking *t, const char *word)
{
	struct buf there = { 0 };
	size_t n;

	if (!*word || biofix_rule_find(word))
		return true;
	const struct biofix_rule *rules = biofix_rules(&n);
	for (size_t i = 0; i < n; i++)
		buf_addf(&there, "%s%s", i ? ", " : "", rules[i].word);
	taking_bad(t, "biofix_rule", _("is no rule; there are: %s"), there.text);
	buf_free(&there);
	return false;
}
