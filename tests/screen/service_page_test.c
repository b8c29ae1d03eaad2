#include "screen/service_page.h"

#include "screen/service_samples.h"

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

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			service_page_shows_what_is_due_what_to_bring_and_the_shelf),
		cmocka_unit_test(service_page_notes_a_new_lure_or_card_with_one_key),
		cmocka_unit_test(service_page_asks_before_it_changes_todays_visit),
		cmocka_unit_test(service_page_asks_for_the_moths_on_the_old_card),
		cmocka_unit_test(service_page_wishes_and_moves),
		cmocka_unit_test(service_page_reads_one_press_as_one),
		cmocka_unit_test(service_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
