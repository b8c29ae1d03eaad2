/* proof_examples.c - worked examples and rules that guides print beside the shipped
 * thresholds. */
#include "base/words.h"
#include "proof_parts.h"

#include <stdio.h>

#define WSU_CM                                                                         \
	"Washington State University Tree Fruit. Monitoring and identification "       \
	"(codling "                                                                    \
	"moth). Brunner 1993, rev. 2018. "                                             \
	"treefruit.wsu.edu/monitoring-and-identification"

const struct published published_examples[] = {
	{ "X1", WSU_CM, N_("2 and then 2 or more in the same trap: over"), DERIVED },
	{ "X2",
		"Poland, state plant-protection signalling service, codling moth "
		"notice, 21 May 2024. sygnalizacja.agrofagi.com.pl",
		N_("two orchards past 5 a day over 3-4 days: over; the third, first "
		   "to catch, stayed very low: not"),
		NO_COUNTS },
	{ "X3",
		"Purdue, Facts for Fancy Fruit. Codling moth (9 May biofix). "
		"fff.hort.purdue.edu/article/codling-moth",
		N_("one moth one week, three more over the weekend: enough under a "
		   "rule of 3-5 in all, its low end"),
		BARE },
	{ "X4",
		"Rutgers Cooperative Extension. Fruit IPM Report, 17 July 2012. "
		"jerseyfruitagupdates.blogspot.com",
		N_("a couple of farms over 20 a trap, most 0-1, too few to act; "
		   "judged here by the 6-8 of the same service"),
		DERIVED },
	{ "P10", "University of Kentucky, Oriental fruit moth page. weather.uky.edu",
		N_("a mean of 7 a trap in a week"), BARE },
	{ "P49", "West Virginia University, Orchard Monitor, 23 July 2007",
		N_("Oriental fruit moth, third brood: 10 a trap in a week"),
		BARE | UNSAID },
	{ "P30", WSU_CM "; Adams et al. 2017, J. Econ. Entomol. 110(4), line-trapping",
		N_("thresholds are read trap by trap: a mean may hide a hot one"),
		DERIVED | NO_COUNTS },
	{ "P39",
		"Slow-the-Spread trapping manual 2010 and trapper manual (US federal "
		"moth survey), gmsts.org",
		N_("every trap is accounted for: one not checked is no zero"),
		DERIVED | NO_COUNTS },
	{ "P11",
		"NIAB, UK. Monitoring (codling moth). niab.com/monitoring-codling-moth",
		N_("5 a trap in a week from May to July, 3 in August and September"),
		BARE },
	{ "S30",
		"Burks, Higbee and Beck 2020, J. Econ. Entomol., doi "
		"10.1093/jee/toz363 "
		"(analysis code)",
		N_("count / days in the interval x 7"), DERIVED | NO_COUNTS },
	{ "S31",
		"Kentucky Pest News, 27 June 2017. kentuckypestnews.wordpress.com "
		"(trap counts, for interval arithmetic only)",
		N_("17 in the 14 days from 10 to 23 June; 6, then 50 in weeks"),
		DERIVED },
	{ "P45", "Utah Pests News, winter 2008-09, tree fruit monitoring report",
		N_("2.5 and 2.1 a night (conventional), 0.29 and 0.12 (disrupted)"),
		DERIVED },
	{ "P04", "WSU Areawide IPM Update 2:6, 1 May 1997. tfrec.wsu.edu",
		N_("1 mg septum: 3 weeks in spring, 2 weeks in summer"),
		DERIVED | SUMMER },
	{ "P03",
		"Utah State / Intermountain tree fruit guide, pheromone and sticky "
		"traps. intermountainfruit.org/ipm-methods/traps",
		N_("regular lure 30 days, long-life lure 60 days"), DERIVED },
	{ "P09",
		"Grey v red septa for codling moth, J. Entomol. Soc. BC (Knight). "
		"journal.entsocbc.ca article 541 (abstract)",
		N_("grey septum loaded at 50 mg: 16 weeks"), DERIVED },
	{ "P01", WSU_CM "; WSU Pest Management Transition newsletter 2:4, 15 June 2009",
		N_("change the card after 30 moths in all"), BARE | NO_COUNTS },
	{ "P08",
		"Pheromone trap density and maintenance for standard codling moth "
		"monitoring, Can. Entomol. (abstract)",
		N_("small sticky surface: catch falls off after 20-30 moths"),
		BARE | NO_COUNTS },
	{ "card", "", N_("stir the glue from 20 moths; a count is a floor from 50"),
		PRACTICE },
	{ .id = NULL },
};

static const struct ruling rulings[] = {
	{ "X1", MEASURE_TRAP_WEEK, SPAN_NUMBER, 2, AT_LEAST, 200, "uuuooo",
		{ "7 nights: 2 1", "7 nights: 1 2", "7 nights: 3 0", "7 nights: 2 2",
			"7 nights: 2 5", "7 nights: 4 3" } },
	{ "X1", MEASURE_TRAP_WEEK, SPAN_NUMBER, 2, MORE_THAN, 200, "u",
		{ "7 nights: 2 2" } },
	{ "X2", MEASURE_TRAP_NIGHT, SPAN_NUMBER, 3, AT_LEAST, 500, "ou",
		{ "1 night: 0 0 1 4 6 7", "1 night: 1 0 1 0 1 0" } },
	{ "X2", MEASURE_TRAP_NIGHT, SPAN_NUMBER, 4, AT_LEAST, 500, "ou",
		{ "1 night: 0 0 4 5 5 7", "1 night: 1 0 1 0 1 0" } },
	{ "X3", MEASURE_TRAP_TOTAL, SPAN_HUNG, 0, AT_LEAST, 300, "uo",
		{ "7 nights: 1", "7 nights: 1 3" } },
	{ "X4", MEASURE_TRAP_WEEK, SPAN_NUMBER, 1, AT_LEAST, 600, "ouu",
		{ "7 nights: 21", "7 nights: 1", "7 nights: 0" } },
	{ "X4", MEASURE_TRAP_WEEK, SPAN_NUMBER, 1, AT_LEAST, 800, "ouu",
		{ "7 nights: 21", "7 nights: 1", "7 nights: 0" } },
	{ "P10", MEASURE_BLOCK_WEEK, SPAN_NUMBER, 1, AT_LEAST, 700, "uoo",
		{ "7 nights: 7 | 7 | 6", "7 nights: 8 | 7 | 6",
			"7 nights: 7 | 7 | 8" } },
	{ "P49", MEASURE_TRAP_WEEK, SPAN_NUMBER, 1, AT_LEAST, 1000, "uoo",
		{ "7 nights: 9", "7 nights: 10", "7 nights: 11" } },
	{ "P49", MEASURE_BLOCK_WEEK, SPAN_NUMBER, 1, AT_LEAST, 1000, "uoo",
		{ "7 nights: 10 | 10 | 9", "7 nights: 9 | 10 | 11",
			"7 nights: 10 | 10 | 11" } },
	{ "P30", MEASURE_BLOCK_WEEK, SPAN_NUMBER, 1, AT_LEAST, 500, "u",
		{ "7 nights: 0 | 1 | 0 | 2 | 17" } },
	{ "P30", MEASURE_TRAP_WEEK, SPAN_NUMBER, 1, AT_LEAST, 500, "uo",
		{ "7 nights: 2", "7 nights: 17" } },
	{ "P39", MEASURE_TRAP_WEEK, SPAN_NUMBER, 2, AT_LEAST, 200, "ou?",
		{ "7 nights: 2 2", "7 nights: 2 1 2", "7 nights: 2 - 2" } },
	{ "P39", MEASURE_TRAP_WEEK, SPAN_NUMBER, 1, AT_LEAST, 500, "u?",
		{ "7 nights: 4", "7 nights: 4 -" } },
};

void proof_examples(struct proof *p)
{
	proof_add_rulings(p, rulings, sizeof rulings / sizeof *rulings);
}

/* The same catch before and after the end of July, under two rules with windows. */
static const struct {
	int month, day;
	int32_t count;
	char want;
} dated[] = {
	{ 7, 31, 4, 'u' },
	{ 7, 31, 5, 'o' },
	{ 8, 1, 2, 'u' },
	{ 8, 1, 3, 'o' },
	{ 8, 1, 4, 'o' },
	{ 9, 30, 3, 'o' },
};

static enum verdict judge_dated(int32_t day, int32_t count)
{
	static const struct rule rules[] = {
		{ .span = 1, .from = 501, .to = 731, .value_x100 = 500 },
		{ .span = 1, .from = 801, .to = 930, .value_x100 = 300 },
	};
	const struct visit visits[] = {
		{ .day = day - 7, .outcome = OUTCOME_HUNG, .count = COUNT_NONE },
		{ .day = day, .outcome = OUTCOME_COUNTED, .count = count },
	};
	struct moment m = { .day = day,
		.biofix = DAY_NONE,
		.flight_start = DAY_NONE,
		.dd = -1,
		.treated = DAY_NONE };
	struct spot spot = { .crop = "apple" };
	struct diary d = { 0 };
	enum verdict worst = VERDICT_NONE;
	size_t chosen[2];

	diary_read(&d, visits, 2);
	size_t n = rule_choose(rules, 2, &spot, &m, chosen);
	for (size_t i = 0; i < n; i++) {
		struct subject s = { .diary = &d };
		struct judgement j =
			judge_trap(&rules[chosen[i]], FIT_YES, &s, &m, &limits_usual);
		worst = verdict_worse(worst, j.verdict);
	}
	diary_free(&d);
	return worst;
}

void proof_seasons(struct proof *p)
{
	for (size_t i = 0; i < sizeof dated / sizeof *dated; i++) {
		struct proof_case *c = proof_add(p, "P11");
		int32_t day = day_from_ymd(2026, dated[i].month, dated[i].day);
		char iso[DAY_ISO_SIZE], counts[48];

		day_iso(day, iso);
		snprintf(c->rule, sizeof c->rule, "%s 1 >= 5 / >= 3",
			_(measure_word(MEASURE_TRAP_WEEK)));
		snprintf(counts, sizeof counts, "7 nights: %d (%s)",
			(int)dated[i].count, iso);
		proof_say_input(c, counts);
		proof_note_verdict(c, dated[i].want, judge_dated(day, dated[i].count));
	}
}
