#include "season/sustained.h"

#include "rounds_parts.h"

bool flight_sustained(const struct diary *const *diaries, size_t n, int32_t first,
	int32_t last, struct sustained *out)
{
	struct rounds r = { 0 };
	size_t next;

	rounds_read(&r, diaries, n, first, last, ROUND_SPILL_DAYS);
	size_t i = rounds_sustained(&r, 1, &next);
	bool found = i < r.n;
	if (found) {
		struct nights_between w =
			rounds_when(&r, diaries, i, rounds_reach(&r, i, 1));
		*out = (struct sustained){ w.after, w.by, w.or_earlier };
	}
	rounds_free(&r);
	return found;
}

int32_t flight_season_end(
	const struct diary *const *diaries, size_t n, int32_t peak, int32_t last)
{
	struct rounds r = { 0 };
	int32_t end = DAY_NONE;
	bool zero_before = false;

	rounds_read(&r, diaries, n, peak + 1, last, ROUND_SPILL_DAYS);
	for (size_t i = 0; i < r.n; i++) {
		bool zero = r.items[i].read > 0 && r.items[i].moths == 0;
		if (r.items[i].moths > 0)
			end = DAY_NONE;
		else if (zero && zero_before && end == DAY_NONE)
			end = r.items[i - 1].end;
		zero_before = zero;
	}
	rounds_free(&r);
	return end;
}
