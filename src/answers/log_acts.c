/* log_acts.c - what was done in the blocks, as far as the log reaches. */
#include "answers/answered.h"
#include "base/day.h"
#include "book/acts.h"
#include "log_parts.h"

bool log_read_acts(struct log *l, struct book *b, int64_t farm, struct err *e)
{
	int32_t first = l->first_day, ever = day_from_ymd(DAY_YEAR_MIN, 1, 1);
	int32_t last = day_from_ymd(DAY_YEAR_MAX, 12, 31);
	int32_t from = l->today - LOG_ACT_DAYS;

	from = first < from ? first : from;
	return treatments_that_bar(b, farm, from, last, &l->treatments, e) &&
	       book_picks(b, farm, from, last, &l->picks, e) &&
	       book_disruptions(b, farm, ever, last, &l->disruptions, e) &&
	       book_answers(b, farm, first, l->today, &l->answers, e);
}
