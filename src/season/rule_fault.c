/* rule_fault.c - what is wrong with a threshold. */
#include "base/words.h"
#include "season/rule.h"

enum {
	WEEKS_MAX = 8,
	VALUE_MAX_X100 = 99999999,
	FLIGHT_MAX = 9,
};

static const char *span_fault(const struct rule *r)
{
	bool number = r->span_kind == SPAN_NUMBER;

	switch (r->measure) {
	case MEASURE_TRAP_WEEK:
	case MEASURE_BLOCK_WEEK:
		if (!number || r->span < 1 || r->span > WEEKS_MAX)
			return _("the span of a weekly measure is a number of weeks, 1 "
				 "to 8");
		return NULL;
	case MEASURE_TRAP_NIGHT:
	case MEASURE_BLOCK_NIGHT:
		if (!number || r->span < 1 || r->span > NIGHTS_MAX)
			return _("the span of a nightly measure is a number of nights, "
				 "1 to 366");
		return NULL;
	case MEASURE_TRAP_TOTAL:
	case MEASURE_BLOCK_TOTAL:
		if (number && (r->span < 1 || r->span > NIGHTS_MAX))
			return _("the span of a total is 1 to 366 nights, or hung, "
				 "biofix, flight or treatment");
		return NULL;
	default:
		return NULL;
	}
}

static const char *value_fault(const struct rule *r)
{
	if (r->measure == MEASURE_NONE)
		return NULL;
	if (r->value_x100 < 0 || r->value_x100 > VALUE_MAX_X100)
		return _("a threshold's value is a number from 0 to 999999.99");
	if (r->value_x100 == 0 && r->comparator == AT_LEAST)
		return _("at least 0 is true of every catch; more than 0 means any "
			 "moth");
	return NULL;
}

static bool is_day_of_year(int md)
{
	static const int days[] = { 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
	int month = md / 100, day = md % 100;

	return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1];
}

static const char *when_fault(const struct rule *r)
{
	if (r->flight < 0 || r->flight > FLIGHT_MAX)
		return _("a flight is a number from 1 to 9, or left empty");
	if (r->until_dd < 0)
		return _("the degree-days that end a threshold are more than 0, or "
			 "left empty");
	if ((r->from == 0) != (r->to == 0))
		return _("a window needs both its first and its last day, or neither");
	if (r->from != 0 && (!is_day_of_year(r->from) || !is_day_of_year(r->to)))
		return _("a window's days are month and day, such as 05-01");
	return NULL;
}

const char *rule_fault(const struct rule *r)
{
	if (r->pest <= 0)
		return _("a threshold needs a pest");
	const char *fault = when_fault(r);
	if (fault == NULL)
		fault = span_fault(r);
	return fault != NULL ? fault : value_fault(r);
}
