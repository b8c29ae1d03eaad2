/* diary_samples.h - a trap's diary filled by hand. */
#ifndef TESTS_SCREEN_DIARY_SAMPLES_H
#define TESTS_SCREEN_DIARY_SAMPLES_H

#include "screen/diary_page.h"
#include "screen/run_samples.h"

enum { SAMPLE_VISITS = 7 };

static inline struct diary_row *sample_diary_row(struct diary_row *rows, size_t i,
	int days_ago, int32_t count, const char *visit)
{
	struct diary_row *r = &rows[i];

	*r = (struct diary_row){ .lure_kind = SAMPLE_LURE, .card_kind = SAMPLE_CARD };
	r->visit = (struct visit){ .trap = 103,
		.day = sample_day() - days_ago,
		.outcome = OUTCOME_COUNTED,
		.count = count,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
	day_short(r->visit.day, r->day_text, sizeof r->day_text);
	SET(r->visit_text, visit);
	SET(r->words.scout, "JR");
	SET(r->lure_text, "14 d");
	SET(r->card_text, "7 d");
	return r;
}

/* 7 weeks up to Tue 21 July 2026: one corrected, one skipped, one a full card. */
static inline struct trap_diary sample_diary(void)
{
	static struct diary_row rows[SAMPLE_VISITS];
	static struct diary_old olds[2];
	static struct entry_choice lures[] = { { "CM 1 mg", "21 days" },
		{ "CM standard", "42 days" }, { "CM old", "42 days, put away" } };
	static struct entry_choice cards[] = { { "delta liner", "30 days" },
		{ "small liner", "30 days" } };
	static int64_t lure_ids[] = { SAMPLE_LURE, SAMPLE_LURE + 1, SAMPLE_LURE + 2 },
		       card_ids[] = { SAMPLE_CARD, SAMPLE_CARD + 1 };
	struct trap_diary d = { .trap = 103,
		.season = 2026,
		.today = sample_day(),
		.last = sample_day(),
		.first = day_from_ymd(2026, 1, 1),
		.blank = sample_trap(3, "Old Kiln", "CM"),
		.rows = rows,
		.n = SAMPLE_VISITS,
		.olds = olds,
		.n_olds = 2 };
	static const struct {
		int ago;
		int32_t count;
		const char *visit, *nights, *week;
	} visit[SAMPLE_VISITS] = {
		{ 0, 7, "7", "7 n", "7.0" },
		{ 7, 4, "4 cl", "7 n", "4.0" },
		{ 14, 30, "30+ c", "14 n", "15.0+" },
		{ 21, COUNT_NONE, "skipped, weather", "", "" },
		{ 28, 41, "41", "7 n", "41.0" },
		{ 35, 2, "2", "7 n", "2.0" },
		{ 42, COUNT_NONE, "hung", "", "" },
	};

	d.lures = (struct kind_choices){
		.names = { .items = lures, .n = 3, .only = true }, .ids = lure_ids
	};
	d.cards = (struct kind_choices){
		.names = { .items = cards, .n = 2, .only = true }, .ids = card_ids
	};
	SET(d.title, "Addermoor \u00b7 Old Kiln \u00b7 trap 3 \u00b7 CM");
	SET(d.brief, "trap 3 \u00b7 CM");
	SET(d.season_text, "season 2026");
	for (size_t i = 0; i < SAMPLE_VISITS; i++) {
		struct diary_row *r = sample_diary_row(
			rows, i, visit[i].ago, visit[i].count, visit[i].visit);
		SET(r->nights_text, visit[i].nights);
		SET(r->weekly_text, visit[i].week);
	}
	rows[1].visit.new_card = SAMPLE_CARD;
	rows[1].visit.new_lure = SAMPLE_LURE;
	SET(rows[1].kinds_text, "new lure CM 1 mg, new card delta liner");
	SET(rows[2].kinds_text, "new card delta liner");
	rows[2].visit.outcome = OUTCOME_FLOOR;
	rows[2].visit.new_card = SAMPLE_CARD;
	rows[3].visit.outcome = OUTCOME_SKIPPED;
	rows[3].visit.reason = REASON_WEATHER;
	rows[3].tone = TONE_UNSURE;
	rows[4].n_old = 1;
	SET(rows[4].words.note, "card hung loose");
	rows[6].visit.outcome = OUTCOME_HUNG;
	olds[0].day = rows[4].visit.day;
	SET(olds[0].day_text, "Tue 23 Jun");
	SET(olds[0].text, "was 14 from JR, changed Tue 14 Jul 19:12 by MB");
	olds[1].day = sample_day() - 30;
	SET(olds[1].day_text, "Sun 21 Jun");
	SET(olds[1].text, "was 9 from JR, taken out Mon 22 Jun 07:02 by JR");
	return d;
}

static inline struct diary_page sample_diary_page(void)
{
	return (struct diary_page){ .right = "Tue 21 Jul", .typed = { .scout = "MB" } };
}

/* Types the keys; returns the last wish that was one. */
static inline struct wish diary_press(struct diary_page *p, const char *keys)
{
	struct wish last = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		struct wish w = diary_page_key(
			p, *keys == '#' ? (struct input){ INPUT_DELETE, 0 }
					: sample_key(*keys));
		if (w.want != WANT_NOTHING)
			last = w;
	}
	return last;
}

static inline void diary_show(struct diary_page *p, const struct trap_diary *d)
{
	diary_page_free(p);
	*p = sample_diary_page();
	diary_page_show(p, d, &limits_usual, true);
}

#endif
