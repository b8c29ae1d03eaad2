/* hotspots_samples.h - a Hot spots page filled by hand; counts and places are
 * invented. */
#ifndef TESTS_SCREEN_HOTSPOTS_SAMPLES_H
#define TESTS_SCREEN_HOTSPOTS_SAMPLES_H

#include "../hot_points.h"
#include "screen/hotspots_page.h"
#include "screen/samples.h"

#include <math.h>

enum { SAMPLE_SPOTS = 9, SAMPLE_SPOT_ROWS = 14 };

/* A trap of the sample: in two blocks, at x, y metres. */
static inline struct hot_trap sample_spot(int i, double x, double y, int moths)
{
	struct hot_trap t = { .trap = i,
		.block = i < 5 ? 1 : 2,
		.has_position = true,
		.is_alike = true,
		.at = { x, y },
		.digit = moths < 9 ? moths : 9,
		.catch = { moths, 70 },
		.is_border = i < 3 };

	snprintf(t.label, sizeof t.label, "%d", i + 1);
	snprintf(t.name, sizeof t.name, "trap %d, %s", i + 1,
		i < 5 ? "Hollow East" : "Ridge");
	snprintf(t.text, sizeof t.text, "%.1f", moths / 10.0);
	return t;
}

static inline void sample_spots(struct hot_view *v)
{
	static struct hot_trap traps[SAMPLE_SPOTS];
	static unsigned char near[SAMPLE_SPOTS] = { 1, 1, 1 };
	static const struct {
		double x, y;
		int moths;
	} at[SAMPLE_SPOTS] = { { -300, 120, 62 }, { -210, 140, 31 }, { -260, 20, 24 },
		{ -120, 60, 8 }, { -40, -40, 3 }, { 100, 30, 2 }, { 180, -60, 0 },
		{ 260, 90, 1 }, { 340, -120, 0 } };

	for (int i = 0; i < SAMPLE_SPOTS; i++)
		traps[i] = sample_spot(i, at[i].x, at[i].y, at[i].moths);
	traps[0].near = near;
	traps[6].digit = -1;
	traps[8].is_alike = false;
	v->traps = traps;
	v->n_traps = SAMPLE_SPOTS;
	v->band = 127;
	v->classes = "0 none  1 under 1 a week  5 under 5  9 20 and more";
}

static inline void sample_sources(struct hot_view *v)
{
	static struct hot_source sources[2];
	static char letters[] = "A Mill Lane (abandoned)";

	sources[0] = (struct hot_source){ .letter = 'A',
		.kind = SOURCE_ABANDONED,
		.has_point = true,
		.at = { -420, 60 },
		.outline = { { -500, 0 }, { -360, 10 }, { -350, 130 }, { -480, 140 } },
		.n_outline = 4,
		.gradient = { .say = GRADIENT_FALLS, .n = 9 } };
	SET(sources[0].name, "Mill Lane");
	SET(sources[0].says,
		"Catch halves about every 150 m going away from Mill Lane (likely 120 "
		"to 190 m).");
	SET(sources[0].numbers, "9 traps, 131 moths, 50 to 760 m away.");
	SET(sources[0].note, "A pattern is no proof that the moths come from there.");
	sources[1] = (struct hot_source){ .kind = SOURCE_BINS,
		.gradient = { .say = GRADIENT_DISTANCES } };
	SET(sources[1].name, "the yard");
	SET(sources[1].says,
		"the yard has no position: nothing can be said of distance.");
	v->sources = sources;
	v->n_sources = 2;
	v->letters = letters;
}

static inline struct hot_row sample_row(
	enum hot_what what, const char *name, const char *answer, const char *ratio)
{
	struct hot_row r = { .what = what, .trap = NO_TRAP, .gi_star = (double)NAN };

	SET(r.name, name);
	SET(r.grade_text, answer);
	SET(r.rate_text, "1.2");
	SET(r.ratio_text, ratio);
	SET(r.says, "Could be luck: 1.2 a trap and week, 0.9 elsewhere.");
	SET(r.numbers, "12 moths in 350 trap-nights of 5 traps against 9 moths in 210 "
		       "trap-nights of 3 traps.");
	return r;
}

static inline void sample_first_row(struct hot_row *r)
{
	r->block = 1;
	r->grade = HOT_CLEAR;
	r->tone = TONE_OVER;
	SET(r->rate_text, "9.3+");
	SET(r->says, "A clear hot spot: 4.5 times the rest (9.3 a trap and week, 2.1 "
		     "elsewhere).");
	SET(r->earlier, "hot in 3 of 4 seasons: 2023, 2024, 2026");
	SET(r->power, "With 3 traps here a threefold block would be shown about 1 time "
		      "in 3.");
	SET(r->next,
		"Sample fruit here: 300 from many trees. To confirm: test this one "
		"alone, once, in the next flight.");
}

static inline void sample_rows(struct hot_view *v)
{
	static struct hot_row rows[SAMPLE_SPOT_ROWS];

	rows[0] = sample_row(
		HOT_OF_BLOCK, "Hollow East", "clear hot spot", "4.5 (2.3 to 9.0)");
	sample_first_row(&rows[0]);
	rows[1] = sample_row(HOT_OF_BLOCK, "Ridge", "not higher", "0.2 (0.1 to 0.4)");
	rows[1].block = 2;
	rows[2] = sample_row(
		HOT_OF_BORDER, "border", "higher, not shown", "2.2 (0.7 to 6.9)");
	rows[2].tone = TONE_UNSURE;
	rows[3] = sample_row(HOT_OF_NEAR, "trap 1 and near", "watch", "-");
	rows[3].trap = 0;
	rows[3].tone = TONE_OVER;
	for (int i = 4; i < SAMPLE_SPOT_ROWS; i++) {
		char name[SAY_LINE];

		snprintf(name, sizeof name, "trap %d", i - 3);
		rows[i] = sample_row(
			HOT_OF_TRAP, name, "too little to tell", "1.1 (0.2 or more)");
		rows[i].trap = i - 4;
		rows[i].tone = TONE_QUIET;
	}
	v->rows = rows;
	v->n = SAMPLE_SPOT_ROWS;
}

/* Two blocks, nine traps, an abandoned orchard in the west. All of it is static. */
static inline void sample_hotspots(struct hot_view *v)
{
	static struct hot_alike alikes[1];

	*v = (struct hot_view){ .season = 2026, .alikes = alikes, .n_alikes = 1 };
	SET(alikes[0].text, "8 traps, CM 1 mg, conventional");
	SET(v->title, "Quillet \u00b7 CM \u00b7 season 2026");
	SET(v->window, "5 May to 20 Jul, 560 trap-nights, 131 moths");
	SET(v->says, "One block is a clear hot spot: Hollow East, 4.5 times the rest.");
	SET(v->left_out, "1 trap left out: another lure.");
	SET(v->clumping, "Moths are clumped: some traps catch far more than others.");
	sample_rows(v);
	sample_spots(v);
	sample_sources(v);
	hot_points_fill(v);
}

static inline void draw(struct hotspots_page *p, struct canvas *c, int rows, int cols)
{
	canvas_size(c, rows, cols);
	hotspots_page_draw(p, c);
}

/* As sample_key; < and > are the arrows left and right, \t Tab. */
static inline struct input key_of(char ch)
{
	switch (ch) {
	case '<':
		return (struct input){ INPUT_LEFT, 0 };
	case '>':
		return (struct input){ INPUT_RIGHT, 0 };
	case '\t':
		return (struct input){ INPUT_TAB, 0 };
	default:
		return sample_key(ch);
	}
}

static inline struct wish type(struct hotspots_page *p, const char *keys)
{
	struct wish w = page_wish(WANT_NOTHING);

	for (; *keys; keys++)
		w = hotspots_page_key(p, key_of(*keys));
	return w;
}

#endif
