#include "season/judging.h"

static void nights_and_totals_end_where_the_trap_was_cleared(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked;
		enum measure measure;
		int span;
		int32_t value_x100;
		enum verdict want;
		enum lacking lacking;
	} row[] = {
		{ "5, 5, 5 on three nights", "0h 1c5 2c5 3c5", 3, MEASURE_TRAP_NIGHT, 3,
			500, VERDICT_OVER, 0 },
		{ "5, 5, 4", "0h 1c5 2c5 3c4", 3, MEASURE_TRAP_NIGHT, 3, 500,
			VERDICT_NEAR, 0 },
		{ "open nights after the last visit are not looked at",
			"0h 1c5 2c5 3c5", 9, MEASURE_TRAP_NIGHT, 3, 500, VERDICT_OVER,
			0 },
		{ "unless it was skipped", "0h 1c5 2c5 3c5 6s", 6, MEASURE_TRAP_NIGHT,
			3, 500, VERDICT_UNKNOWN, LACKING_READING },
		{ "two nights of three hung", "0h 1c5 2c5", 2, MEASURE_TRAP_NIGHT, 3,
			500, VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "two nights of three hung, enough caught", "0h 1c5 2c10", 2,
			MEASURE_TRAP_NIGHT, 3, 500, VERDICT_OVER, 0 },
		{ "a straddling week cannot be split", "0h 7c20", 7, MEASURE_TRAP_NIGHT,
			3, 500, VERDICT_UNKNOWN, LACKING_SPLIT },
		{ "but it can be too few", "0h 7c10", 7, MEASURE_TRAP_NIGHT, 3, 500,
			VERDICT_UNDER, 0 },
		{ "a straddling zero is zero", "0h 7c0 8c5 9c10", 9, MEASURE_TRAP_NIGHT,
			3, 500, VERDICT_OVER, 0 },
		{ "8 + 6 in 14 nights", "0h 7c8 14c6", 14, MEASURE_TRAP_TOTAL, 14, 1400,
			VERDICT_OVER, 0 },
		{ "8 + 5 in 14 nights", "0h 7c8 14c5", 14, MEASURE_TRAP_TOTAL, 14, 1400,
			VERDICT_NEAR, 0 },
		{ "a floor in it", "0h 7f8 14c5", 14, MEASURE_TRAP_TOTAL, 14, 1400,
			VERDICT_UNKNOWN, LACKING_FLOOR },
		{ "a spoiled one in it", "0h 7x 14c5", 14, MEASURE_TRAP_TOTAL, 14, 1400,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "spoiled with enough on it", "0h 7x9 14c5", 14, MEASURE_TRAP_TOTAL,
			14, 1400, VERDICT_OVER, 0 },
		{ "nights on which none hung", "0h 7p8 10h 14c5", 14,
			MEASURE_TRAP_TOTAL, 14, 1400, VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "gone", "0h 7c8 14m", 14, MEASURE_TRAP_TOTAL, 14, 1400,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "never hung", "", 14, MEASURE_TRAP_TOTAL, 14, 1400, VERDICT_UNKNOWN,
			LACKING_READING },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 1,
			.measure = row[i].measure,
			.span = row[i].span,
			.value_x100 = row[i].value_x100 };
		struct judgement j = judge_at(&r, row[i].visits, bare, row[i].asked);
		expect(row[i].why, &j, row[i].want, row[i].lacking);
	}
}

static void running_totals_start_on_their_day(void **state)
{
	static const struct {
		const char *why, *visits;
		int asked;
		enum span_kind kind;
		int start; /* biofix, flight or treatment; -1: none */
		enum verdict want;
		enum lacking lacking;
	} row[] = {
		{ "since hung: 3 + 4 + 3", "0h 7c3 14c4 21c3", 21, SPAN_HUNG, -1,
			VERDICT_OVER, 0 },
		{ "since hung: 3 + 4 + 2", "0h 7c3 14c4 21c2", 21, SPAN_HUNG, -1,
			VERDICT_NEAR, 0 },
		{ "hung anew: the earlier series does not count", "0h 7p9 21h 28c4", 28,
			SPAN_HUNG, -1, VERDICT_UNDER, 0 },
		{ "hung and not visited", "0h", 3, SPAN_HUNG, -1, VERDICT_UNKNOWN,
			LACKING_READING },
		{ "since biofix, on a visit", "0h 7c9 14c4 21c6", 21, SPAN_BIOFIX, 7,
			VERDICT_OVER, 0 },
		{ "since biofix, on a visit, one less", "0h 7c9 14c4 21c5", 21,
			SPAN_BIOFIX, 7, VERDICT_NEAR, 0 },
		{ "since biofix within an interval", "0h 7c9 14c4", 14, SPAN_BIOFIX, 3,
			VERDICT_UNKNOWN, LACKING_SPLIT },
		{ "within an interval, enough after it", "0h 7c9 14c10", 14,
			SPAN_BIOFIX, 3, VERDICT_OVER, 0 },
		{ "biofix not set", "0h 7c9 14c10", 14, SPAN_BIOFIX, -1,
			VERDICT_UNKNOWN, LACKING_BIOFIX },
		{ "biofix before the trap hung", "7h 14c4", 14, SPAN_BIOFIX, 0,
			VERDICT_UNKNOWN, LACKING_WEEKS },
		{ "biofix after the last visit", "0h 7c9", 9, SPAN_BIOFIX, 8,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "flight started", "0h 7c9 14c10", 14, SPAN_FLIGHT, 7, VERDICT_OVER,
			0 },
		{ "flight not known, nor biofix", "0h 7c9", 7, SPAN_FLIGHT, -1,
			VERDICT_UNKNOWN, LACKING_BIOFIX },
		{ "not treated: since hung", "0h 7c9 14c1", 14, SPAN_TREATMENT, -1,
			VERDICT_OVER, 0 },
		{ "a treatment starts the total anew", "0h 7c9 14c1", 14,
			SPAN_TREATMENT, 7, VERDICT_UNDER, 0 },
		{ "and it can fill again", "0h 7c9 14c1 21c9", 21, SPAN_TREATMENT, 7,
			VERDICT_OVER, 0 },
		{ "treated within an interval", "0h 7c9 14c12", 14, SPAN_TREATMENT, 10,
			VERDICT_UNKNOWN, LACKING_SPLIT },
		{ "treated before it hung", "7h 14c10", 14, SPAN_TREATMENT, 2,
			VERDICT_OVER, 0 },
		{ "treated in the gap before it was hung anew", "0h 7p9 21h 28c4", 28,
			SPAN_TREATMENT, 10, VERDICT_UNDER, 0 },
		{ "treated, and not read since", "0h 7c9", 10, SPAN_TREATMENT, 8,
			VERDICT_UNKNOWN, LACKING_READING },
		{ "skipped, but enough before", "0h 7c10 14s", 14, SPAN_HUNG, -1,
			VERDICT_OVER, 0 },
		{ "skipped, not enough before", "0h 7c9 14s", 14, SPAN_HUNG, -1,
			VERDICT_UNKNOWN, LACKING_READING },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 1,
			.measure = MEASURE_TRAP_TOTAL,
			.span_kind = row[i].kind,
			.value_x100 = 1000 };
		struct moment m = bare;
		int32_t start = row[i].start < 0 ? DAY_NONE : log_day(row[i].start);
		m.biofix = row[i].kind == SPAN_BIOFIX ? start : DAY_NONE;
		m.flight_start = row[i].kind == SPAN_FLIGHT ? start : DAY_NONE;
		m.treated = row[i].kind == SPAN_TREATMENT ? start : DAY_NONE;
		struct judgement j = judge_at(&r, row[i].visits, m, row[i].asked);
		expect(row[i].why, &j, row[i].want, row[i].lacking);
	}
}

static void a_flight_waits_for_itself_once_biofix_is_set(void **state)
{
	struct rule r = { .pest = 1,
		.measure = MEASURE_TRAP_TOTAL,
		.span_kind = SPAN_FLIGHT,
		.value_x100 = 1000 };
	struct moment m = bare;
	(void)state;
	m.biofix = log_day(0);
	struct judgement j = judge_at(&r, "0h 7c99", m, 7);
	expect("flight not known", &j, VERDICT_UNKNOWN, LACKING_FLIGHT);
	m.flight_start = log_day(9);
	j = judge_at(&r, "0h 7c99", m, 7);
	expect("it begins later", &j, VERDICT_UNKNOWN, LACKING_FLIGHT);
	m.flight_start = log_day(0);
	j = judge_at(&r, "0h 7c99", m, 7);
	expect("it has begun", &j, VERDICT_OVER, LACKING_NOTHING);
}

/* The grower is told what to enter, which is not the same thing each time. */
static void a_rule_that_may_hold_says_what_it_waits_for(void **state)
{
	static const struct {
		const char *why;
		int biofix, rule_flight, until_dd, flight;
		enum lacking want;
	} row[] = {
		{ "no biofix yet", -1, 2, 0, 0, LACKING_BIOFIX },
		{ "flight not known", 0, 2, 0, 0, LACKING_FLIGHT },
		{ "flight known, degree-days not", 0, 2, 250, 2, LACKING_HEAT },
		{ "any flight, degree-days not known", 0, 0, 250, 0, LACKING_HEAT },
		{ "neither known: the flight first", 0, 2, 250, 0, LACKING_FLIGHT },
	};
	struct log log;
	(void)state;
	log_read(&log, "0h 7c99");
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 1,
			.flight = row[i].rule_flight,
			.until_dd = row[i].until_dd,
			.span = 1,
			.value_x100 = 1000 };
		struct subject s = { .diary = &log.diary };
		struct moment m = bare;
		m.day = log_day(7);
		m.flight = row[i].flight;
		if (row[i].biofix >= 0)
			m.biofix = log_day(row[i].biofix);
		struct judgement j = judge_trap(&r, FIT_MAYBE, &s, &m, &limits_usual);
		expect(row[i].why, &j, VERDICT_UNKNOWN, row[i].want);
	}
	log_free(&log);
}

/* A treated trap was not hung on the day of the treatment. */
static void a_total_not_read_since_it_began_says_so(void **state)
{
	static const struct {
		const char *why, *visits;
		int treated;
		enum unread want;
		int nights;
	} row[] = {
		{ "treated on the last visit, which is before it", "0h 7c9", 7,
			UNREAD_SINCE, 3 },
		{ "treated today", "0h 7c9", 10, UNREAD_SINCE, 0 },
		{ "hung on the day of the treatment", "8h", 8, UNREAD_NOT_YET, 2 },
		{ "hung after it", "9h", 8, UNREAD_NOT_YET, 1 },
	};
	(void)state;
	for (size_t i = 0; i < COUNT_OF(row); i++) {
		struct rule r = { .pest = 1,
			.measure = MEASURE_TRAP_TOTAL,
			.span_kind = SPAN_TREATMENT,
			.value_x100 = 1000 };
		struct moment m = bare;
		m.treated = log_day(row[i].treated);
		struct judgement j = judge_at(&r, row[i].visits, m, 10);
		expect(row[i].why, &j, VERDICT_UNKNOWN, LACKING_READING);
		if (j.unread != row[i].want || j.unread_nights != row[i].nights)
			fail_msg("%s: %d, %d nights", row[i].why, (int)j.unread,
				(int)j.unread_nights);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nights_and_totals_end_where_the_trap_was_cleared),
		cmocka_unit_test(running_totals_start_on_their_day),
		cmocka_unit_test(a_flight_waits_for_itself_once_biofix_is_set),
		cmocka_unit_test(a_rule_that_may_hold_says_what_it_waits_for),
		cmocka_unit_test(a_total_not_read_since_it_began_says_so),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
