#include "answers/log.h"

#include "base/mem.h"
#include "base/words.h"
#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"
#include "book/weather.h"
#include "log_parts.h"
#include "season_state.h"

#include <stdlib.h>
#include <string.h>

enum {
	DAYS_BEFORE_SEASON = 42, /* hung or counted shortly before its first day */
	DAYS_LOOKED_BACK = 400,  /* for traps that hang over from an earlier season */
	RUN_GAP_DAYS = 4, /* a run a day late doesn't make the next one due sooner */
};

static int32_t first_day_of(const struct log *l)
{
	int32_t first = day_season_start(l->today, 101);

	for (size_t i = 0; i < l->farms.n; i++) {
		int32_t start =
			day_season_start(l->today, l->farms.items[i].season_start);
		if (i == 0 || start < first)
			first = start;
	}
	return first - DAYS_BEFORE_SEASON;
}

static bool read_lists(struct log *l, struct book *b, int64_t farm, struct err *e)
{
	return book_limits(b, &l->limits, e) && book_farms(b, &l->farms, e) &&
	       book_blocks(b, farm, &l->blocks, e) &&
	       book_traps(b, farm, &l->traps, e) && book_pests(b, &l->pests, e) &&
	       book_lures(b, &l->lures, e) && book_cards(b, &l->cards, e) &&
	       book_rules(b, &l->rules, e) && book_stations(b, &l->stations, e) &&
	       book_biofixes(b, &l->biofixes, e);
}

/* Index of the first visit of a trap id >= id; visits are sorted by trap. */
static size_t first_visit_of(const struct visits *v, int64_t id)
{
	size_t lo = 0, hi = v->n;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		if (v->items[mid].trap < id)
			lo = mid + 1;
		else
			hi = mid;
	}
	return lo;
}

static int by_trap_and_day(const void *a, const void *b)
{
	const struct visit *x = a, *y = b;

	if (x->trap != y->trap)
		return x->trap < y->trap ? -1 : 1;
	return (x->day > y->day) - (x->day < y->day);
}

/* True if the trap's part of the visits does not begin with its hanging: how it came to
 * hang lies before what was read. */
static bool begins_before(const struct log *l, int64_t trap)
{
	size_t at = first_visit_of(&l->visits, trap);

	return at == l->visits.n || l->visits.items[at].trap != trap ||
	       l->visits.items[at].outcome != OUTCOME_HUNG;
}

static bool any_begins_before(const struct log *l)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (begins_before(l, l->traps.items[i].id))
			return true;
	return false;
}

/* Of a trap's earlier visits (n, by day) those since its last hanging, if it hangs
 * after them. */
static void take_series(const struct visit *v, size_t n, struct visits *out)
{
	struct diary d = { 0 };
	size_t first = n;

	diary_read(&d, v, n);
	if (n > 0 && diary_stand(&d, v[n - 1].day).standing == STANDING_HANGS)
		for (first = n - 1; first > 0 && v[first].outcome != OUTCOME_HUNG;)
			first--;
	for (; first < n; first++) {
		out->items =
			mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
		out->items[out->n++] = v[first];
	}
	diary_free(&d);
}

/* A trap that was hung in an earlier season and still hangs is read from its hanging
 * on: what it caught and when its lure was put in stand there. */
static bool read_earlier_series(
	struct log *l, struct book *b, int64_t farm, int32_t from, struct err *e)
{
	struct visits earlier = { 0 }, kept = { 0 };
	bool ok = !any_begins_before(l) ||
		  book_visits(b, farm, from - DAYS_LOOKED_BACK, from - 1, &earlier, e);

	for (size_t i = 0, end; ok && i < earlier.n; i = end) {
		int64_t trap = earlier.items[i].trap;
		for (end = i; end < earlier.n && earlier.items[end].trap == trap;)
			end++;
		if (begins_before(l, trap))
			take_series(&earlier.items[i], end - i, &kept);
	}
	l->visits.items = mem_grow(l->visits.items, &l->visits.cap,
		l->visits.n + kept.n, sizeof *l->visits.items);
	for (size_t i = 0; i < kept.n; i++)
		l->visits.items[l->visits.n++] = kept.items[i];
	if (kept.n > 0)
		qsort(l->visits.items, l->visits.n, sizeof *l->visits.items,
			by_trap_and_day);
	free(earlier.items);
	free(kept.items);
	return ok;
}

static bool read_season(struct log *l, struct book *b, int64_t farm, struct err *e)
{
	l->first_day = first_day_of(l);
	return log_read_acts(l, b, farm, e) && log_read_disputes(l, b, farm, e) &&
	       book_visits(b, farm, l->first_day, l->today, &l->visits, e) &&
	       read_earlier_series(l, b, farm, l->first_day, e);
}

static void free_diaries(struct log *l, size_t n)
{
	for (size_t i = 0; l->diaries && i < n; i++)
		diary_free(&l->diaries[i]);
	free(l->diaries);
	free(l->lure_states);
	free(l->card_states);
	l->diaries = NULL;
	l->lure_states = NULL;
	l->card_states = NULL;
}

static void read_diary(struct log *l, size_t trap)
{
	int64_t id = l->traps.items[trap].id;
	size_t at = first_visit_of(&l->visits, id);
	size_t end = first_visit_of(&l->visits, id + 1);
	const struct visit *first = l->visits.n ? &l->visits.items[at] : NULL;

	diary_read(&l->diaries[trap], first, end - at);
	l->lure_states[trap] =
		service_lure(&l->diaries[trap], &l->lures, l->today, DAY_NONE);
	l->card_states[trap] =
		service_card(&l->diaries[trap], &l->cards, l->today, DAY_NONE);
}

bool log_read(struct log *l, struct book *b, int64_t farm, int32_t today, struct err *e)
{
	free_diaries(l, l->traps.n);
	l->traps.n = 0;
	log_clear_places(l);
	l->today = today;
	if (!read_lists(l, b, farm, e) || !read_season(l, b, farm, e)) {
		l->traps.n = 0;
		return false;
	}
	log_set_places(l);
	l->diaries = mem_new(l->traps.n, sizeof *l->diaries);
	l->lure_states = mem_new(l->traps.n, sizeof *l->lure_states);
	l->card_states = mem_new(l->traps.n, sizeof *l->card_states);
	for (size_t i = 0; i < l->traps.n; i++)
		read_diary(l, i);
	return season_states_read(l, b, e);
}

void log_free(struct log *l)
{
	free_diaries(l, l->traps.n);
	free(l->farms.items);
	free(l->blocks.items);
	free(l->traps.items);
	free(l->pests.items);
	free(l->lures.items);
	free(l->cards.items);
	free(l->rules.items);
	season_states_clear(&l->seasons);
	free(l->seasons.items);
	free(l->stations.items);
	free(l->biofixes.items);
	free(l->treatments.items);
	free(l->picks.items);
	free(l->disruptions.items);
	free(l->answers.items);
	free(l->visits.items);
	free(l->disputes.items);
	log_free_places(l);
	*l = (struct log){ 0 };
}

bool log_hangs(const struct log *l, size_t trap)
{
	return diary_stand(&l->diaries[trap], l->today).standing == STANDING_HANGS;
}

bool log_in_season(const struct log *l, size_t trap)
{
	const struct diary *d = &l->diaries[trap];
	const struct farm *f = log_farm(l, l->traps.items[trap].farm);
	int32_t start = day_season_start(l->today, f ? f->season_start : 101);

	return log_hangs(l, trap) ||
	       (d->n_visits > 0 && d->visits[d->n_visits - 1].day >= start);
}

/* Latest visit day of the farm up to `upto`, of hangings only or of all others. */
static int32_t latest_visit(const struct log *l, int64_t farm, int32_t upto, bool hung)
{
	int32_t latest = DAY_NONE;

	for (size_t i = 0; i < l->traps.n; i++) {
		const struct diary *d = &l->diaries[i];
		if (l->traps.items[i].farm != farm)
			continue;
		for (size_t k = d->n_visits; k > 0; k--) {
			const struct visit *v = &d->visits[k - 1];
			if (v->day <= latest)
				break;
			if (v->day <= upto && v->outcome != OUTCOME_SKIPPED &&
				(v->outcome == OUTCOME_HUNG) == hung) {
				latest = v->day;
				break;
			}
		}
	}
	return latest;
}

int32_t log_last_run(const struct log *l, int64_t farm, int32_t upto)
{
	return latest_visit(l, farm, upto, false);
}

const struct visit *log_run_visit(const struct log *l, size_t trap)
{
	const struct diary *d = &l->diaries[trap];

	for (size_t n = d->n_visits; n > 0; n--) {
		const struct visit *v = &d->visits[n - 1];
		if (v->day < l->today - l->limits.open_days)
			return NULL;
		if (visit_is_service(v))
			continue;
		return v->outcome != OUTCOME_SKIPPED || v->day == l->today ? v : NULL;
	}
	return NULL;
}

bool log_visited_in_run(const struct log *l, size_t trap)
{
	return log_run_visit(l, trap) != NULL;
}

int log_open_traps(const struct log *l, int64_t farm)
{
	int open = 0;

	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm && log_hangs(l, i) &&
			!log_visited_in_run(l, i))
			open++;
	return open;
}

int32_t log_run_after(const struct farm *f, int32_t last)
{
	if (!f || f->run_weekday == 0)
		return last + 7;
	int32_t day = last + RUN_GAP_DAYS;
	while (day_weekday(day) != f->run_weekday)
		day++;
	return day;
}

int32_t log_next_run(const struct log *l, int64_t farm)
{
	const struct farm *f = log_farm(l, farm);
	int32_t upto = l->today;

	if (log_open_traps(l, farm) > 0)
		upto -= l->limits.open_days + 1;
	int32_t last = log_last_run(l, farm, upto);
	if (last == DAY_NONE)
		last = latest_visit(l, farm, l->today, true);
	return last == DAY_NONE ? l->today : log_run_after(f, last);
}
