#include "screen/service_page.h"

#include "screen/samples.h"

enum { ITEMS = 5 };

static void fill_item(struct due_item *item, int i, int due, enum service_state state,
	const char *says)
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

static struct due sample_due(void)
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

static struct shelf sample_shelf(void)
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

static struct wish press(struct service_page *p, const char *keys)
{
	struct wish last = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		struct wish w = service_page_key(p, sample_key(*keys));
		if (w.want != WANT_NOTHING)
			last = w;
	}
	return last;
}

static void service_page_shows_what_is_due_what_to_bring_and_the_shelf(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "service-80x24", 24, 80, "~" },
		{ "service-120x30", 30, 120, "" },
		{ "service-40x16", 16, 40, "" },
		{ "service-40x16-end", 16, 40, "1" },
		{ "service-80x24-bring", 24, 80, "~~~~~~~" },
		{ "service-80x24-narrow", 24, 80, "/delta" },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = {
			.due = &d, .shelf = &s, .filter = "all farms"
		};

		canvas_size(&c, row[i].rows, row[i].cols);
		service_page_draw(&p, &c);
		press(&p, row[i].keys);
		service_page_draw(&p, &c);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		service_page_free(&p);
	}
	struct service_page p = { .due = &d, .shelf = &s, .filter = "all farms" };
	press(&p, "+");
	service_page_ask(&p, NULL);
	press(&p, "12");
	canvas_size(&c, 24, 80);
	service_page_draw(&p, &c);
	expect_golden("service-80x24-count", &c, true);
	canvas_free(&c);
	service_page_free(&p);
}

static void service_page_notes_a_new_lure_or_card_with_one_key(void **state)
{
	static const struct {
		const char *why, *keys;
		int trap, kind;
		int64_t id;
	} row[] = {
		{ "the lure that is due", "*", 10, 1, 41 },
		{ "the card that is due", "2+", 11, 0, 31 },
		{ "a lure where the card is due: the usual", "2*", 11, 1, 0 },
		{ "a card where the lure is due", "+", 10, 0, 0 },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = { .due = &d, .shelf = &s };
		struct wish w = press(&p, row[i].keys);
		if (w.want != WANT_CHANGED || w.trap != row[i].trap ||
			w.kind != row[i].kind || w.id != row[i].id || w.by != 0)
			fail_msg("%s", row[i].why);
		service_page_free(&p);
	}
}

static void service_page_asks_before_it_changes_todays_visit(void **state)
{
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct service_page p = { .due = &d, .shelf = &s };

	(void)state;
	press(&p, "*");
	service_page_ask(&p, "Trap 1 has a visit today (14)");
	assert_non_null(strstr(p.message.text, "* once more"));
	assert_int_equal(press(&p, "*").by, 1);
	press(&p, "*");
	service_page_ask(&p, "Trap 1 has a visit today (14)");
	assert_int_equal(press(&p, "2*").by, 0); /* another trap is asked anew */
	service_page_ask(&p, "Trap 2 has a visit today (14)");
	assert_int_equal(press(&p, "+").by, 0); /* so is the card */
	service_page_free(&p);
}

static void service_page_asks_for_the_moths_on_the_old_card(void **state)
{
	static const struct {
		const char *why, *keys;
		int32_t count;
		bool done;
	} row[] = {
		{ "a count", "12\n", 12, true },
		{ "none is a count", "0\n", 0, true },
		{ "not counted", "\n", COUNT_NONE, true },
		{ "erased", "12\b\b3\n", 3, true },
		{ "letters are none", "x4\n", 4, true },
		{ "the highest", "99999\n", 9999, true },
		{ "dropped", "12\x1b", COUNT_NONE, false },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = { .due = &d, .shelf = &s };
		press(&p, "2+");
		service_page_ask(&p, NULL);
		struct wish w = press(&p, row[i].keys);
		if ((w.want == WANT_CHANGED) != row[i].done ||
			(row[i].done && (w.by != 2 || w.visit.count != row[i].count ||
						w.kind != 0 || w.trap != 11)))
			fail_msg("%s: %d", row[i].why, (int)w.visit.count);
		assert_int_equal(p.ask, SERVICE_ASKS_NOTHING);
		service_page_free(&p);
	}
}

static void service_page_wishes_and_moves(void **state)
{
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct service_page p = { .due = &d, .shelf = &s, .rows = 20 };

	(void)state;
	assert_int_equal(press(&p, "2\n").trap, 11);
	assert_int_equal(press(&p, "d").want, WANT_DIARY);
	assert_int_equal(press(&p, "u").want, WANT_UNDO_CHANGED);
	assert_int_equal(press(&p, "?").want, WANT_HELP);
	assert_int_equal(press(&p, "\x1b").want, WANT_BACK);
	press(&p, "f");
	assert_true(p.next_farm);
	press(&p, "1"); /* the last row: the shelf */
	assert_int_equal(p.picked, ITEMS + 3 + 1);
	assert_int_equal(press(&p, "+*\n").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "Pick a lure or card"));
	press(&p, "7");
	assert_int_equal(p.picked, 0);
	expect_keys(service_page_keys());
	service_page_free(&p);
}

/* The next trap stands under the hand once one is done: a bounce must not do it too. */
static void service_page_reads_one_press_as_one(void **state)
{
	static const struct {
		const char *why, *keys;
		int64_t after; /* ms */
		enum want want;
	} row[] = {
		{ "a lure, too soon", "*", SERVICE_BOUNCE_MS - 1, WANT_NOTHING },
		{ "a card, too soon", "+", SERVICE_BOUNCE_MS - 1, WANT_NOTHING },
		{ "a lure, in time", "*", SERVICE_BOUNCE_MS, WANT_CHANGED },
		{ "a card, in time", "+", SERVICE_BOUNCE_MS, WANT_CHANGED },
		{ "held down, no press is new", "*****", SERVICE_BOUNCE_MS - 1,
			WANT_NOTHING },
		{ "other keys are free", "d", 0, WANT_DIARY },
		{ "and a hand that moved on is sure", "2*", 0, WANT_CHANGED },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = { .due = &d, .shelf = &s, .now_ms = 1000 };
		struct wish w = page_wish(WANT_NOTHING);

		assert_int_equal(press(&p, "*").want, WANT_CHANGED);
		service_page_changed(&p);
		SET(p.message.text, "Saved.");
		for (const char *k = row[i].keys; *k; k++) {
			char one[2] = { *k };
			p.now_ms += row[i].after;
			w = press(&p, one);
		}
		if (w.want != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)w.want);
		if (w.want == WANT_NOTHING)
			assert_string_equal(p.message.text, "Saved.");
		service_page_free(&p);
	}
}

/* "None" below "Bring" would read as: bring nothing. */
static void service_page_says_that_what_to_bring_is_narrowed(void **state)
{
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct service_page p = { .due = &d, .shelf = &s };
	struct canvas c = { 0 };

	(void)state;
	press(&p, "/kiln");
	canvas_size(&c, 24, 80);
	service_page_draw(&p, &c);
	expect_shows("the heading", &c, "Bring: only rows that contain it");
	expect_shows("no row", &c, "The rows of the bring list are hidden.");
	canvas_free(&c);
	service_page_free(&p);
}

static void draw_everywhere(struct service_page *p)
{
	struct canvas c = { 0 };

	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols++) {
			canvas_size(&c, rows, cols);
			service_page_draw(p, &c);
		}
	canvas_free(&c);
}

static void service_page_draws_at_every_size(void **state)
{
	struct due d = sample_due(), none = { 0 };
	struct shelf s = sample_shelf(), bare = { 0 };
	struct service_page p = { .due = &d, .shelf = &s, .filter = "all farms" };

	(void)state;
	draw_everywhere(&p);
	press(&p, "1");
	draw_everywhere(&p);
	press(&p, "7+");
	service_page_ask(&p, NULL);
	draw_everywhere(&p);
	for (size_t i = 0; i < d.n; i++) {
		struct due_item *item = &d.items[i];
		sample_long(item->farm_name, sizeof item->farm_name, 0);
		sample_long(item->kind_name, sizeof item->kind_name, 1);
		sample_long(item->label, sizeof item->label, 1);
	}
	service_page_show(&p, &d, &s);
	draw_everywhere(&p);
	press(&p, "/w");
	draw_everywhere(&p);
	press(&p, "#");
	draw_everywhere(&p);
	service_page_show(&p, &none, &bare);
	draw_everywhere(&p);
	press(&p, "2+*\n");
	service_page_free(&p);
	draw_everywhere(&p);
	service_page_free(&p);
}

static void service_page_narrows_all_its_lists(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t n, at;
		enum want want; /* of a last Esc */
	} row[] = {
		{ "all", "7", ITEMS + 5, 0, WANT_BACK },
		{ "a farm, and what to bring there", "/drum", 3, 3, WANT_NOTHING },
		{ "a kind, wherever it stands", "/delta", 5, 1, WANT_NOTHING },
		{ "digits are text", "/32", 1, 1, WANT_NOTHING },
		{ "down over what is hidden", "/drum~~", 3, ITEMS + 1, WANT_NOTHING },
		{ "nothing", "/zz", 0, SIZE_MAX, WANT_NOTHING },
		{ "all again", "/zz\x1b", ITEMS + 5, 0, WANT_BACK },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = { .due = &d, .shelf = &s, .rows = 20 };
		press(&p, row[i].keys);
		if (p.sift.n != row[i].n || p.picked != row[i].at)
			fail_msg("%s: %zu rows, %zu picked", row[i].why, p.sift.n,
				p.picked);
		if (press(&p, "\x1b").want != row[i].want)
			fail_msg("%s: not so on Esc", row[i].why);
		service_page_free(&p);
	}
}

static void service_page_changes_nothing_that_is_hidden(void **state)
{
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct service_page p = { .due = &d, .shelf = &s, .rows = 20 };

	(void)state;
	assert_int_equal(press(&p, "/zz\n").want, WANT_NOTHING);
	assert_int_equal(press(&p, "*").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "Pick a lure or card"));
	press(&p, "\x1b");
	assert_int_equal(press(&p, "/drum\n*").trap, 13);
	service_page_free(&p);
}

/* The list of what to bring is read off and packed: it is never cut. */
static void service_page_wraps_what_to_bring(void **state)
{
	static struct due_bring brings[] = {
		{ 5, true, 4, "CM 1 mg", 41 },
		{ 5, true, 5, "OFM standard", 42 },
		{ 5, false, 5, "small liner", 31 },
		{ 5, false, 5, "wing bottom", 32 },
	};
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "service-80x24-wrapped", 24, 80, "~~~~~" },
		{ "service-40x16-wrapped", 16, 40, "~~~~~" },
		{ "service-40x16-last", 16, 40, "1" },
	};
	struct due d = sample_due();
	struct shelf s = sample_shelf();
	struct canvas c = { 0 };

	(void)state;
	d.brings = brings;
	d.n_brings = sizeof brings / sizeof *brings;
	d.today.n_runs = 1;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct service_page p = { .due = &d, .shelf = &s };
		canvas_size(&c, row[i].rows, row[i].cols);
		service_page_draw(&p, &c);
		press(&p, row[i].keys);
		service_page_draw(&p, &c);
		expect_golden(row[i].name, &c, false);
		service_page_free(&p);
	}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			service_page_shows_what_is_due_what_to_bring_and_the_shelf),
		cmocka_unit_test(service_page_wraps_what_to_bring),
		cmocka_unit_test(service_page_notes_a_new_lure_or_card_with_one_key),
		cmocka_unit_test(service_page_asks_before_it_changes_todays_visit),
		cmocka_unit_test(service_page_asks_for_the_moths_on_the_old_card),
		cmocka_unit_test(service_page_wishes_and_moves),
		cmocka_unit_test(service_page_narrows_all_its_lists),
		cmocka_unit_test(service_page_changes_nothing_that_is_hidden),
		cmocka_unit_test(service_page_reads_one_press_as_one),
		cmocka_unit_test(service_page_says_that_what_to_bring_is_narrowed),
		cmocka_unit_test(service_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
