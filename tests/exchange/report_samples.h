/* The log whose answers are written as CSV. */
#ifndef TESTS_EXCHANGE_REPORT_SAMPLES_H
#define TESTS_EXCHANGE_REPORT_SAMPLES_H

#include "answers/log.h"

static inline struct log sample_log(void)
{
	static struct farm farms[] = { { .id = 1, .name = "Quillet, Upper" } };
	static struct block blocks[] = { { .id = 1, .farm = 1, .name = "=Rows" } };
	static struct trap traps[] = {
		{ .id = 1, .farm = 1, .block = 1, .label = "4" }
	};
	static struct pest pests[] = { { .id = 1, .code = "CM" } };
	static struct rule rules[] = {
		{ .measure = MEASURE_TRAP_WEEK,
			.span = 2,
			.comparator = AT_LEAST,
			.value_x100 = 250,
			.source = "own" },
		{ .measure = MEASURE_BLOCK_TOTAL,
			.span_kind = SPAN_TREATMENT,
			.comparator = MORE_THAN,
			.value_x100 = 1000 },
		{ .measure = MEASURE_NONE, .source = "timing" },
	};

	return (struct log){
		.farms = { farms, 1, 1 },
		.blocks = { blocks, 1, 1 },
		.traps = { traps, 1, 1 },
		.pests = { pests, 1, 1 },
		.rules = { rules, 3, 3 },
	};
}

#endif
