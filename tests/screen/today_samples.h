/* today_samples.h - a Today page filled by hand. */
#ifndef TESTS_SCREEN_TODAY_SAMPLES_H
#define TESTS_SCREEN_TODAY_SAMPLES_H

#include "answers/today.h"
#include "screen/samples.h"

static inline struct today_run sample_today_run(const char *name, bool due)
{
	struct today_run r = {
		.farm = SAMPLE_FARM, .traps = 18, .open = 18, .due = due
	};

	SET(r.name, name);
	SET(r.traps_text, due ? "18 traps" : "12 traps");
	SET(r.last_text, "last run Tue 14 Jul, 7 days");
	SET(r.bring, due ? "bring 3 lures, 1 card" : "bring nothing");
	return r;
}

static inline struct today_line sample_today_line(
	enum verdict verdict, const char *where, const char *says)
{
	struct today_line l = { .farm = SAMPLE_FARM,
		.block = 7,
		.pest = 1,
		.trap = 3,
		.verdict = verdict };

	SET(l.farm_name, "Quillet");
	SET(l.block_name, "Hollow East");
	SET(l.pest_code, "CM");
	SET(l.where, where);
	SET(l.says, says);
	return l;
}

/* Two farms, one due; two verdicts over, one unknown. The lists are static. */
static inline struct today sample_today(void)
{
	static struct today_run runs[2];
	static struct today_line lines[3];
	struct today t = { .day = sample_day(),
		.runs = runs,
		.n_runs = 2,
		.lines = lines,
		.n_lines = 3,
		.n_over = 2,
		.n_under = 21,
		.n_near = 2 };

	runs[0] = sample_today_run("Quillet", true);
	runs[1] = sample_today_run("Sandholm", false);
	lines[0] =
		sample_today_line(VERDICT_OVER, "trap 3", "14.0 a week, threshold 5");
	lines[1] =
		sample_today_line(VERDICT_OVER, "mean of 4", "6.0 a week, threshold 5");
	lines[2] =
		sample_today_line(VERDICT_UNKNOWN, "trap 9", "not read for 15 nights");
	lines[2].trap = 9;
	SET(t.title, "Tue 21 July 2026 \u00b7 week 30");
	SET(t.title_short, "Tue 21 Jul");
	return t;
}

static inline struct today_next sample_next(int64_t pest, const char *code)
{
	struct today_next n = { .farm = SAMPLE_FARM + 2, .pest = pest };

	SET(n.name, "Fennick");
	SET(n.pest_code, code);
	SET(n.says,
		"egg hatch begins (generation 2) at 1100 F: about Thu 30 Jul (at the "
		"last week's pace)");
	return n;
}

static inline struct today_hot sample_hot(void)
{
	struct today_hot h = { .farm = SAMPLE_FARM, .block = 7, .pest = 1 };

	SET(h.name, "Quillet");
	SET(h.says, "Hollow East, CM: clear hot spot, 4.5 times the rest");
	return h;
}

/* The same day, a hot block, and what comes next for two pests. */
static inline struct today sample_today_next(void)
{
	static struct today_next nexts[2];
	static struct today_hot hot;
	struct today t = sample_today();

	hot = sample_hot();
	t.hots = &hot;
	t.n_hots = 1;

	nexts[0] = sample_next(1, "CM");
	nexts[1] = sample_next(2, "OFM");
	t.nexts = nexts;
	t.n_nexts = 2;
	return t;
}

static inline struct today sample_long_today(void)
{
	struct today t = sample_today_next();

	sample_long(t.hots[0].name, sizeof t.hots[0].name, 0);
	sample_long(t.hots[0].says, sizeof t.hots[0].says, 1);
	for (int i = 0; i < 2; i++) {
		sample_long(t.nexts[i].name, sizeof t.nexts[i].name, i);
		sample_long(t.nexts[i].says, sizeof t.nexts[i].says, i + 1);
		sample_long(t.runs[i].name, sizeof t.runs[i].name, i);
		sample_long(t.runs[i].last_text, sizeof t.runs[i].last_text, i);
		sample_long(t.runs[i].bring, sizeof t.runs[i].bring, i + 1);
	}
	for (int i = 0; i < 3; i++) {
		sample_long(t.lines[i].farm_name, sizeof t.lines[i].farm_name, i);
		sample_long(t.lines[i].block_name, sizeof t.lines[i].block_name, i + 1);
		sample_long(t.lines[i].where, sizeof t.lines[i].where, i);
		sample_long(t.lines[i].says, sizeof t.lines[i].says, i);
	}
	return t;
}

#endif
