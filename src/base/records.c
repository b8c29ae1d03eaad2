#include "base/records.h"

const struct limits limits_usual = {
	.join_nights = 5,
	.long_nights = 10,
	.stale_nights = 10,
	.near_x100 = 70,
	.read_num = 2,
	.read_den = 3,
	.open_days = 2,
	.fill_days = 0,
	.skip_biofix_day = 0,
	.odd_count = 20,
	.odd_times = 5,
};

bool visit_same(const struct visit *a, const struct visit *b)
{
	return a->trap == b->trap && a->day == b->day && a->outcome == b->outcome &&
	       a->reason == b->reason && a->count == b->count &&
	       a->females == b->females && a->others == b->others &&
	       a->new_card == b->new_card && a->new_lure == b->new_lure &&
	       a->stirred == b->stirred;
}

bool visit_is_service(const struct visit *v)
{
	return v->outcome == OUTCOME_SKIPPED && v->reason == REASON_NONE &&
	       v->new_lure != 0;
}
