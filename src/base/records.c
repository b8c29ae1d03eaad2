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
