/* What the tests of the Service page show. */
#ifndef TESTS_SCREEN_SERVICE_SAMPLES_H
#define TESTS_SCREEN_SERVICE_SAMPLES_H

#include "screen/samples.h"

#include "screen/service_page.h"

enum { ITEMS = 5 };

static inline void fill_item(struct due_item *item, int i, int due,
	enum service_state state, const char *says)
{
	*item = (struct due_item){ .farm = i < 3 ? 5 : 6,
		.trap = 10 + i,
		.is_lure = i % 2 == 0,
		.kind = i % 2 == 0 ? 41 : 31,
		.due = sample_day() + due,
		.state = state,
		.tone = state == SERVICE_OVERDUE ? TONE_UNSURE : TONE_PLAIN };
	SET(item->farm_name, i < 3 ? "Addermoor" : "Drumsorrel");
	SET(item->block_name, i < 3 ? "Old Kiln" : "Hollow East");
	snprintf(item->label, sizeof item->label, "%d", i + 1);
	SET(item->kind_name, i % 2 == 0 ? "CM 1 mg" : "delta liner");
	SET(item->state_text, says);
}

static inline struct due sample_due(void)
{
	static struct due_item items[ITEMS];
	static struct today_run runs[2];
	static struct due_bring brings[3], totals[2];
	struct due d = { .items = items,
		.n = ITEMS,
		.brings = brings,
		.n_brings = 3,
		.totals = totals,
		.n_totals = 2 };

	fill_item(&items[0], 0, -3, SERVICE_OVERDUE, "3 d overdue");
	fill_item(&items[1], 1, 0, SERVICE_DUE, "32 moths on it");
	fill_item(&items[2], 2, 0, SERVICE_DUE, "due today");
	fill_item(&items[3], 3, 5, SERVICE_NEXT_RUN, "by next run");
	fill_item(&items[4], 4, 12, SERVICE_NEXT_RUN, "change on next run");
	for (int i = 0; i < 2; i++) {
		runs[i] = (struct today_run){
			.farm = 5 + i, .next_run = sample_day() + 6 * i, .due = i == 0
		};
		SET(runs[i].name, i ? "Drumsorrel" : "Addermoor");
	}
	brings[0] = (struct due_bring){ 5, true, 2, "CM 1 mg", 41 };
	brings[1] = (struct due_bring){ 5, false, 1, "delta liner", 31 };
	brings[2] = (struct due_bring){ 6, true, 1, "CM 1 mg", 41 };
	totals[0] = (struct due_bring){ 0, true, 3, "CM 1 mg", 41 };
	totals[1] = (struct due_bring){ 0, false, 1, "delta liner", 31 };
	d.today.day = sample_day();
	d.today.runs = runs;
	d.today.n_runs = 2;
	SET(d.today.title, "Tue 21 July 2026 \u00b7 week 30");
	SET(d.today.title_short, "Tue 21 Jul");
	return d;
}

static inline struct shelf sample_shelf(void)
{
	static struct shelf_row rows[2];

	rows[0] = (struct shelf_row){ .is_lure = true, .left = 2, .tone = TONE_UNSURE };
	SET(rows[0].name, "CM 1 mg");
	SET(rows[0].text, "2 left, 3 to bring: 1 too few");
	rows[1] = (struct shelf_row){ .left = 40 };
	SET(rows[1].name, "delta liner");
	SET(rows[1].text, "40 left, 1 to bring, reorder at 20");
	return (struct shelf){ .items = rows, .n = 2, .is_kept = true };
}

static inline struct wish press(struct service_page *p, const char *keys)
{
	struct wish last = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		struct wish w = service_page_key(p, sample_key(*keys));
		if (w.want != WANT_NOTHING)
			last = w;
	}
	return last;
}

#endif
