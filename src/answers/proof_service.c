/* proof_service.c - weekly rates, lure lives and card loads that are printed or follow
 * from it. */
#include "base/words.h"
#include "proof_parts.h"

#include <stdio.h>

static const struct {
	const char *id;
	int32_t moths, nights;
	const char *want; /* a week */
} rates[] = {
	{ "S30", 12, 10, "8.4" },
	{ "S31", 17, 14, "8.5" },
	{ "S31", 6, 7, "6.0" },
	{ "S31", 50, 7, "50.0" },
	{ "P45", 250, 100, "17.5" },
	{ "P45", 210, 100, "14.7" },
	{ "P45", 29, 100, "2.0" },
	{ "P45", 12, 100, "0.8" },
};

/* "8.4", or "unknown". */
static void note_week(struct proof_case *c, const char *want, const struct weekly *w)
{
	int32_t x10 = weekly_x10(w);
	char ours[16];

	snprintf(ours, sizeof ours, "%d.%d", (int)(x10 / 10), (int)(x10 % 10));
	snprintf(c->rule, sizeof c->rule, "%s", _("moths a trap a week"));
	proof_note(c, want, x10 < 0 ? _("unknown") : ours);
}

static void prove_rates(struct proof *p)
{
	for (size_t i = 0; i < sizeof rates / sizeof *rates; i++) {
		struct proof_case *c = proof_add(p, rates[i].id);
		const struct visit visits[] = {
			{ .outcome = OUTCOME_HUNG, .count = COUNT_NONE },
			{ .day = rates[i].nights,
				.outcome = OUTCOME_COUNTED,
				.count = rates[i].moths },
		};
		struct diary d = { 0 };

		diary_read(&d, visits, 2);
		struct weekly w = weekly_catch(&d, rates[i].nights, &limits_usual);
		note_week(c, rates[i].want, &w);
		diary_free(&d);
		snprintf(c->input, sizeof c->input, _("%d nights: %d"),
			(int)rates[i].nights, (int)rates[i].moths);
	}
}

/* The weekly catch as it stood after each visit of "4, skipped, 9". */
static void prove_missed_week(struct proof *p)
{
	const struct visit visits[] = {
		{ .outcome = OUTCOME_HUNG, .count = COUNT_NONE },
		{ .day = 7, .outcome = OUTCOME_COUNTED, .count = 4 },
		{ .day = 14, .outcome = OUTCOME_SKIPPED, .count = COUNT_NONE },
		{ .day = 21, .outcome = OUTCOME_COUNTED, .count = 9 },
	};
	static const struct {
		const char *input;
		const char *want;
	} weeks[] = { { "7 nights: 4", "4.0" }, { "7 nights: 4 -", N_("unknown") },
		{ "7 nights: 4 - 9", "4.5" } };
	struct diary d = { 0 };

	diary_read(&d, visits, 4);
	for (int32_t i = 0; i < 3; i++) {
		struct proof_case *c = proof_add(p, "P39");
		struct weekly w = weekly_catch(&d, 7 * (i + 1), &limits_usual);

		note_week(c, _(weeks[i].want), &w);
		proof_say_input(c, weeks[i].input);
	}
	diary_free(&d);
}

static const struct {
	const char *id;
	struct lure_kind kind;
	const char *hung, *want;
} lures[] = {
	{ "P04", { .life_days = 21, .hot_days = 14, .hot_from = 601, .hot_to = 831 },
		"2026-05-01", "2026-05-22" },
	{ "P04", { .life_days = 21, .hot_days = 14, .hot_from = 601, .hot_to = 831 },
		"2026-07-01", "2026-07-15" },
	{ "P03", { .life_days = 30 }, "2026-05-01", "2026-05-31" },
	{ "P03", { .life_days = 60 }, "2026-05-01", "2026-06-30" },
	{ "P09", { .life_days = 112 }, "2026-05-01", "2026-08-21" },
};

static void prove_lures(struct proof *p)
{
	for (size_t i = 0; i < sizeof lures / sizeof *lures; i++) {
		struct proof_case *c = proof_add(p, lures[i].id);
		int32_t hung = DAY_NONE;
		char ours[DAY_ISO_SIZE] = "";

		if (day_parse(lures[i].hung, &hung))
			day_iso(service_lure_due(&lures[i].kind, hung), ours);
		snprintf(c->rule, sizeof c->rule, "%s", _("lure life: day it is due"));
		snprintf(c->input, sizeof c->input, "%s %s", _("hung"), lures[i].hung);
		proof_note(c, lures[i].want, ours);
	}
}

static const char *const mark_words[] = { N_("clean"), N_("stir"), N_("change"),
	N_("floor") };

static const struct {
	const char *id;
	struct card_kind kind;
	int32_t counts[3];
	enum card_mark want;
} loads[] = {
	{ "P01", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 8, 11, 13 },
		CARD_CHANGE },
	{ "P01", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 8, 11, 10 },
		CARD_STIR },
	{ "P01", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 8, 11, 11 },
		CARD_CHANGE },
	{ "P08", { .stir_at = 15, .change_at = 20, .floor_at = 30 }, { 10, 9, 0 },
		CARD_STIR },
	{ "P08", { .stir_at = 15, .change_at = 20, .floor_at = 30 }, { 10, 10, 0 },
		CARD_CHANGE },
	{ "P08", { .stir_at = 15, .change_at = 20, .floor_at = 30 }, { 10, 10, 10 },
		CARD_FLOOR },
	{ "card", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 10, 9, 0 },
		CARD_CLEAN },
	{ "card", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 10, 10, 0 },
		CARD_STIR },
	{ "card", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 20, 20, 9 },
		CARD_CHANGE },
	{ "card", { .stir_at = 20, .change_at = 30, .floor_at = 50 }, { 20, 20, 10 },
		CARD_FLOOR },
};

static enum card_mark mark_of_load(struct card_kind kind, const int32_t counts[3])
{
	struct visit visits[4] = {
		{ .outcome = OUTCOME_HUNG, .count = COUNT_NONE, .new_card = 1 }
	};
	struct diary d = { 0 };

	kind.id = 1;
	kind.life_days = 60;
	for (int32_t i = 0; i < 3; i++)
		visits[i + 1] = (struct visit){ .day = 7 * (i + 1),
			.outcome = OUTCOME_COUNTED,
			.count = counts[i] };
	struct card_kinds kinds = { .items = &kind, .n = 1, .cap = 1 };
	diary_read(&d, visits, 4);
	struct card_state s = service_card(&d, &kinds, 21, DAY_NONE);
	diary_free(&d);
	return s.mark;
}

static void prove_cards(struct proof *p)
{
	for (size_t i = 0; i < sizeof loads / sizeof *loads; i++) {
		struct proof_case *c = proof_add(p, loads[i].id);
		const int32_t *n = loads[i].counts;
		char counts[48];

		snprintf(c->rule, sizeof c->rule, "%s", _("card load"));
		snprintf(counts, sizeof counts, "7 nights: %d %d %d", (int)n[0],
			(int)n[1], (int)n[2]);
		proof_say_input(c, counts);
		proof_note(c, _(mark_words[loads[i].want]),
			_(mark_words[mark_of_load(loads[i].kind, n)]));
	}
}

void proof_service(struct proof *p)
{
	prove_rates(p);
	prove_missed_week(p);
	prove_lures(p);
	prove_cards(p);
}
