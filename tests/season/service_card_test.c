/* A card as it stands, against a walk through all visits that takes them one by one. */
#include "season/service.h"

#include "season/logs.h"

enum { VISITS = 24, RUNS = 3000, KINDS = 4 };

static struct card_kind card_items[KINDS];
static const struct card_kinds cards = { card_items, KINDS, KINDS };

static int set_up(void **state)
{
	(void)state;
	for (int i = 0; i < KINDS; i++)
		card_items[i] = (struct card_kind){ .id = i + 1,
			.life_days = 7 + 21 * i,
			.stir_at = 20 + i,
			.change_at = 30 + i,
			.floor_at = 50 + i };
	return 0;
}

/* The last of these ids is of a kind that the list does not have. */
static void draw_visits(uint32_t *seed, struct visit *v)
{
	for (int i = 0, day = 0; i < VISITS; i++) {
		day += 1 + draw(seed, 9);
		v[i] = (struct visit){ .day = day,
			.outcome = (enum outcome)draw(seed, OUTCOME_COUNT),
			.count = draw(seed, 3) ? draw(seed, 30) : COUNT_NONE,
			.others = draw(seed, 4) - 1,
			.females = COUNT_NONE,
			.stirred = draw(seed, 4) == 0,
			.new_card = draw(seed, 4) ? 0 : 1 + draw(seed, KINDS + 1) };
		if (v[i].outcome == OUTCOME_HUNG && draw(seed, 4))
			v[i].new_card = 1 + draw(seed, KINDS + 1);
		if (v[i].outcome == OUTCOME_SPOILED && draw(seed, 2))
			v[i].reason = REASON_CARD_LOST;
	}
}

static const struct card_kind *kind_of(int64_t id)
{
	return id >= 1 && id <= KINDS ? &card_items[id - 1] : NULL;
}

static int32_t moths_of(const struct visit *v)
{
	bool looked = v->outcome != OUTCOME_HUNG && v->outcome != OUTCOME_SKIPPED;
	int32_t own = v->count > 0 ? v->count : 0,
		others = v->others > 0 ? v->others : 0;

	return looked ? own + others : 0;
}

/* What the header says, visit by visit: kind, since, moths, the day it was found gone
 * or was full. */
struct walked {
	int64_t kind;
	int32_t since, moths, gone, full;
	bool stirred;
};

static struct walked walk_anew(int64_t kind, int32_t since, int32_t gone)
{
	return (struct walked){
		.kind = kind, .since = since, .gone = gone, .full = DAY_NONE
	};
}

static void walk_take(struct walked *w, const struct visit *v)
{
	if (v->new_card) {
		*w = walk_anew(v->new_card, v->day, DAY_NONE);
		return;
	}
	if (v->outcome == OUTCOME_MISSING)
		*w = walk_anew(0, DAY_NONE, DAY_NONE);
	else if (v->outcome == OUTCOME_SPOILED && v->reason == REASON_CARD_LOST)
		*w = walk_anew(w->kind, DAY_NONE, v->day);
	w->moths += moths_of(v);
	const struct card_kind *kind = kind_of(w->kind);
	if (!kind || w->since == DAY_NONE)
		return;
	if (w->full == DAY_NONE && w->moths >= kind->change_at)
		w->full = v->day;
	w->stirred |= v->stirred && w->moths >= kind->stir_at;
}

static int32_t walk_due(const struct walked *w)
{
	const struct card_kind *kind = kind_of(w->kind);

	if (w->since == DAY_NONE || !kind)
		return w->gone;
	int32_t by_age = w->since + kind->life_days;
	return w->full != DAY_NONE && w->full < by_age ? w->full : by_age;
}

static void assert_stands(const struct diary *d, const struct walked *w, int32_t day)
{
	struct card_state got = service_card(d, &cards, day, DAY_NONE);
	int32_t moths = w->since == DAY_NONE ? 0 : w->moths;

	if (diary_stand(d, day).standing != STANDING_HANGS)
		return;
	if (got.kind != w->kind || got.since != w->since || got.moths != moths ||
		got.due != walk_due(w) || got.stirred_since_mark != w->stirred)
		fail_msg(
			"day %d: kind %d since %d, %d moths, due %d, not kind %d since "
			"%d, %d moths, due %d",
			day, (int)got.kind, got.since, got.moths, got.due, (int)w->kind,
			w->since, moths, walk_due(w));
}

static void service_card_is_what_a_walk_through_all_visits_finds(void **state)
{
	struct visit v[VISITS];
	uint32_t seed = 1;

	(void)state;
	for (int run = 0; run < RUNS; run++) {
		struct walked w = walk_anew(0, DAY_NONE, DAY_NONE);
		struct diary d = { 0 };
		draw_visits(&seed, v);
		diary_read(&d, v, VISITS);
		for (int i = 0; i < VISITS; i++) {
			walk_take(&w, &v[i]);
			assert_stands(&d, &w, v[i].day);
		}
		diary_free(&d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(service_card_is_what_a_walk_through_all_visits_finds),
	};

	return cmocka_run_group_tests(tests, set_up, NULL);
}
