/* seasons.h - season pages filled by hand for the tests of paper; all is invented. */
#ifndef TESTS_PAPER_SEASONS_H
#define TESTS_PAPER_SEASONS_H

#include "base/day.h"
#include "base/mem.h"
#include "base/text.h"
#include "paper/season.h"

#include <stdio.h>
#include <stdlib.h>

/* As long as a name can be. */
#define SEASONS_LONG "Quarry Rows beyond the second windbreak, east"

enum { SEASONS_WEEKS = 12 };

/* Week 3 nobody looked, in week 4 a card was full, in week 6 nothing was caught. */
static const double seasons_rates[SEASONS_WEEKS] = { 0.5, 2, 7, -1, 30, 12, 0, 1, 4, 9,
	3, -1 };

static inline void seasons_line(struct flight_line *l, int season, double times)
{
	*l = (struct flight_line){ .season = season,
		.first_day = day_from_ymd(season, 5, 5),
		.n = SEASONS_WEEKS };
	for (size_t k = 0; k < SEASONS_WEEKS; k++) {
		l->rate[k] = seasons_rates[k] < 0 ? -1 : seasons_rates[k] * times;
		l->dd[k] = -1;
	}
	l->at_least[4] = true;
}

static inline void seasons_flight(struct flight_view *v)
{
	seasons_line(&v->now, 2026, 1);
	seasons_line(&v->earlier[0], 2025, 0.5);
	v->n_earlier = 1;
	v->threshold = -1;
	v->n_rows = 1;
	v->rows[0] = (struct flight_row){ .peak_day = day_from_ymd(2026, 6, 2),
		.name = "flight 1",
		.first = "5 May",
		.peak = "2 Jun",
		.peak_rate = "30.0",
		.d10 = "20 May",
		.d50 = "4 Jun",
		.d90 = "9 Jun",
		.moths = "211+",
		.dd50 = "312 F",
		.flags = "at least this many: a full card, or counts not settled" };
	v->biofix = (struct flight_biofix){ .is_set = true,
		.day = day_from_ymd(2026, 5, 12),
		.set = "biofix Tue 12 May 2026, by hand",
		.suggestion = { .state = BIOFIX_DATED,
			.after = day_from_ymd(2026, 5, 5),
			.by = day_from_ymd(2026, 5, 12) } };
}

static inline void seasons_dots(struct season_chart *c)
{
	c->dots = mem_new(SEASONS_WEEKS, sizeof *c->dots);
	for (size_t k = 0; k < SEASONS_WEEKS; k++) {
		int32_t day = c->first_day + 7 * (int32_t)k;
		if (seasons_rates[k] < 0)
			continue;
		c->dots[c->n_dots++] = (struct season_dot){ .from = day,
			.day = day + 7,
			.rate = seasons_rates[k] * 3,
			.at_least = k == 4,
			.text = "90.0+" };
	}
}

static inline void seasons_chart(struct season_chart *c, int i)
{
	int32_t may = day_from_ymd(2026, 5, 5);

	c->block = i + 1;
	c->pest = 1;
	c->first_day = may;
	snprintf(c->block_name, sizeof c->block_name, "%02u %.44s", (unsigned)i % 100,
		SEASONS_LONG);
	text_copy(c->pest_code, sizeof c->pest_code, "CM");
	text_copy(c->about, sizeof c->about, "apple, 4.2 ha, conventional, 1 trap");
	seasons_flight(&c->flight);
	seasons_dots(c);
	c->limits = mem_new(1, sizeof *c->limits);
	c->limits[c->n_limits++] = (struct season_limit){
		.from = may, .to = may + 70, .rate = 5, .text = ">=5", .source = 1
	};
	c->marks = mem_new(2, sizeof *c->marks);
	c->marks[c->n_marks++] = (struct season_mark){ SEASON_LURE, may + 21, 1 };
	c->marks[c->n_marks++] = (struct season_mark){ SEASON_BORDER, may + 30, 1 };
	c->alerts = mem_new(2, sizeof *c->alerts);
	c->alerts[c->n_alerts++] = (struct season_alert){
		.day = may + 35, .day_text = "Tue 9 Jun", .text = "trap 7: 30.0+ (>=5)"
	};
	c->alerts[c->n_alerts++] = (struct season_alert){ .day = may + 35,
		.day_text = "Tue 9 Jun",
		.text = "trap 8: 12.0 (>=5)",
		.is_answered = true,
		.decided = "looked Wed 10 Jun: fruit clean",
		.after = "before 12.0 a week, after 3.5" };
	text_copy(c->lures, sizeof c->lures, "26 May (1 trap)");
	text_copy(c->moths, sizeof c->moths, "211+");
	text_copy(c->mean, sizeof c->mean, "30.0+, 2 Jun");
	text_copy(c->highest, sizeof c->highest, "90.0+, trap 7");
	text_copy(c->over, sizeof c->over, "2");
	text_copy(c->answered, sizeof c->answered, "1");
	text_copy(c->open, sizeof c->open, "1");
	text_copy(c->treated, sizeof c->treated, "3");
	text_copy(c->damage, sizeof c->damage, "4 of 150");
}

/* A farm with n blocks; n 0: nothing was ever read there. */
static inline struct season_page seasons_with(int n)
{
	struct season_page p = { .farm = "Quarry Farm",
		.season = 2026,
		.day = day_from_ymd(2026, 7, 21),
		.span = "1 Jan 2026 to 21 Jul 2026",
		.from = DAY_NONE,
		.to = DAY_NONE,
		.now_to = DAY_NONE };

	if (n == 0) {
		text_copy(p.says, sizeof p.says, "No trap was read.");
		return p;
	}
	p.from = day_from_ymd(2026, 5, 5);
	p.to = p.now_to = p.from + 7 * SEASONS_WEEKS;
	p.charts = mem_new((size_t)n, sizeof *p.charts);
	for (int i = 0; i < n; i++)
		seasons_chart(&p.charts[p.n_charts++], i);
	p.pests = mem_new(1, sizeof *p.pests);
	p.n_pests = 1;
	p.pests[0].n = (size_t)n;
	text_copy(p.pests[0].name, sizeof p.pests[0].name, "codling moth (CM)");
	text_copy(
		p.pests[0].hot.says, sizeof p.pests[0].hot.says, "Nothing to compare.");
	seasons_flight(&p.pests[0].all);
	p.acts = mem_new(1, sizeof *p.acts);
	p.acts[p.n_acts++] = (struct season_act){ .day_text = "Thu 4 Jun",
		.block_name = SEASONS_LONG,
		.text = "border treated, CM: label A" };
	p.sources = mem_new(1, sizeof *p.sources);
	text_copy(p.sources[p.n_sources++].text, sizeof p.sources->text,
		"CM, apple: at least 5 a week. Source: invented for the test");
	return p;
}

/* As most blocks are called. */
static inline void seasons_name_briefly(struct season_page *p)
{
	for (size_t i = 0; i < p->n_charts; i++)
		snprintf(p->charts[i].block_name, sizeof p->charts[i].block_name,
			"Block %02u", (unsigned)i % 100);
}

static inline void seasons_free(struct season_page *p)
{
	for (size_t i = 0; i < p->n_charts; i++) {
		free(p->charts[i].dots);
		free(p->charts[i].limits);
		free(p->charts[i].marks);
		free(p->charts[i].alerts);
	}
	free(p->charts);
	free(p->pests);
	free(p->acts);
	free(p->sources);
}

static inline struct season_form seasons_form(enum paper paper)
{
	static const char *const cautions[] = { "First caution.", "Second caution.",
		NULL };

	return (struct season_form){ .paper = paper,
		.caution_short = "Caution in short.",
		.cautions = cautions,
		.notice = "all of it invented" };
}

#endif
