/* week_samples.h - a Week page filled by hand. */
#ifndef TESTS_SCREEN_WEEK_SAMPLES_H
#define TESTS_SCREEN_WEEK_SAMPLES_H

#include "answers/week.h"
#include "screen/samples.h"

enum { SAMPLE_WEEKS = 14, SAMPLE_ROWS = 7 };

/* A flight line as text: digits 0-9 catches (0 a counted none), + at least 8, - not
 * read, blank not hung. */
static inline void sample_marks(const char *text, struct mark *out)
{
	for (size_t i = 0; i < SAMPLE_WEEKS; i++) {
		char ch = text[i];

		out[i] = (struct mark){ MARK_CATCH, (ch - '0') * 10 };
		if (ch == '0')
			out[i] = (struct mark){ MARK_ZERO, 0 };
		else if (ch == '+')
			out[i] = (struct mark){ MARK_FLOOR, 80 };
		else if (ch == '-')
			out[i] = (struct mark){ MARK_NOT_READ, 0 };
		else if (ch == ' ')
			out[i] = (struct mark){ MARK_NOTHING, 0 };
	}
}

struct sample_week_row {
	enum week_level level;
	const char *name, *pest, *caught, *high, *nights, *rule, *verdict;
	enum verdict is;
	enum tone tone;
	const char *says, *marks;
};

static inline void sample_week_row(
	struct week_row *r, const struct sample_week_row *s, struct mark *marks)
{
	*r = (struct week_row){ .level = s->level,
		.farm = SAMPLE_FARM,
		.block = 7,
		.pest = s->pest[0] == 'C' ? 1
			: s->pest[0]      ? 2
					  : 0,
		.trap = NO_TRAP,
		.tone = s->tone,
		.verdict = s->is };
	SET(r->name, s->name);
	SET(r->pest_code, s->pest);
	SET(r->catch_text, s->caught);
	SET(r->highest_text, s->high);
	SET(r->nights_text, s->nights);
	SET(r->rule_text, s->rule);
	SET(r->verdict_text, s->verdict);
	SET(r->says, s->says);
	if (!s->marks)
		return;
	sample_marks(s->marks, marks);
	r->line = marks;
}

/* One farm: a block that is over by one trap, a block that is under. Static lists. */
static inline struct week sample_week(void)
{
	static const struct sample_week_row sample[SAMPLE_ROWS] = {
		{ WEEK_FARM, "Quillet", "", "", "", "", "", "OVER", VERDICT_OVER,
			TONE_OVER, "", NULL },
		{ WEEK_BLOCK, "Hollow East", "CM", "4.0", "9.0", "2 of 3", ">=5",
			"OVER", VERDICT_OVER, TONE_OVER, "1 trap not read",
			"  001352001344" },
		{ WEEK_TRAP, "1", "CM", "9.0", "", "7", ">=5", "OVER", VERDICT_OVER,
			TONE_OVER, "", "  00248+010369" },
		{ WEEK_TRAP, "2", "CM", "1.0", "", "7", ">=5", "under?", VERDICT_UNDER,
			TONE_UNSURE, "lure 14 d overdue", "  000100001111" },
		{ WEEK_TRAP, "3", "CM", "-", "", "15", ">=5", "unknown",
			VERDICT_UNKNOWN, TONE_UNSURE, "not read for 15 nights",
			"  00132-0012--" },
		{ WEEK_BLOCK, "Ridge Pears", "OFM", "2.0", "2.0", "1 of 1", ">=7",
			"under", VERDICT_UNDER, TONE_PLAIN, "",
			"0123210123210"
			"2" },
		{ WEEK_TRAP, "4", "OFM", "2.0", "", "7", "-", "-", VERDICT_NONE,
			TONE_QUIET, "",
			"0123210123210"
			"2" },
	};
	static struct week_row rows[SAMPLE_ROWS];
	static struct mark marks[SAMPLE_ROWS][SAMPLE_WEEKS];
	struct week w = { .day = sample_day(),
		.rows = rows,
		.n = SAMPLE_ROWS,
		.n_weeks = SAMPLE_WEEKS,
		.n_over = 1,
		.n_unknown = 1,
		.n_under = 2,
		.n_none = 1 };

	for (size_t i = 0; i < SAMPLE_ROWS; i++)
		sample_week_row(&rows[i], &sample[i], marks[i]);
	rows[2].is_border = true;
	rows[2].trap = 11;
	rows[3].trap = 12;
	rows[3].is_doubted = true;
	rows[4].trap = 13;
	rows[5].block = rows[6].block = 8;
	rows[5].is_disrupted = rows[6].is_disrupted = true;
	rows[6].trap = 14;
	SET(w.title_day, "Tue 21 July 2026 \u00b7 week 30");
	SET(w.title_short, "Tue 21 Jul");
	return w;
}

static inline struct week sample_long_week(void)
{
	struct week w = sample_week();

	for (int i = 0; i < (int)w.n; i++) {
		sample_long(w.rows[i].name, sizeof w.rows[i].name, i);
		sample_long(w.rows[i].pest_code, sizeof w.rows[i].pest_code, i);
		sample_long(w.rows[i].says, sizeof w.rows[i].says, i);
		sample_long(w.rows[i].verdict_text, sizeof w.rows[i].verdict_text, i);
	}
	return w;
}

#endif
