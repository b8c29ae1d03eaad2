/* The lists of the Service page: narrowed, wrapped. */
#include "screen/service_page.h"

#include "screen/service_samples.h"

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

/* A lure that nobody noted may be due. */
static void service_page_takes_no_unknown_lure_for_a_fine_one(void **state)
{
	static const char *const says[] = {
		"No lure or card is known to be due by the next run.",
		"Addermoor, this run: 2 lures CM 1 mg, 1 card delta liner; 1 lure not",
		"Drumsorrel, Mon 27 Jul: nothing known; 1 lure not known",
		"all farms: nothing known; 2 lures not known",
	};
	struct due d = sample_due();
	struct service_page p = { .due = &d };
	struct canvas c = { 0 };

	(void)state;
	d.n = d.n_totals = 0;
	d.n_brings = 2;
	d.has_unknown = true;
	for (size_t i = 0; i < d.today.n_runs; i++)
		SET(d.today.runs[i].unknown_text, "; 1 lure not known");
	SET(d.unknown_text, "; 2 lures not known");
	canvas_size(&c, 24, 80);
	service_page_draw(&p, &c);
	for (size_t i = 0; i < sizeof says / sizeof *says; i++)
		expect_shows("unknown", &c, says[i]);
	canvas_free(&c);
	service_page_free(&p);
}

static void service_page_wraps_its_sentences(void **state)
{
	struct due d = sample_due();
	struct service_page p = { .due = &d };
	struct canvas c = { 0 };

	(void)state;
	canvas_size(&c, 20, 40);
	press(&p, "/all farms");
	service_page_draw(&p, &c);
	expect_shows("a heading", &c,
		"\n Bring: only rows that contain it, Esc\n shows all\n");
	expect_shows("the last one", &c,
		"\n Nobody keeps count of it: a lure or\n card kind takes its stock.\n");
	canvas_free(&c);
	service_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(service_page_wraps_what_to_bring),
		cmocka_unit_test(service_page_narrows_all_its_lists),
		cmocka_unit_test(service_page_wraps_its_sentences),
		cmocka_unit_test(service_page_takes_no_unknown_lure_for_a_fine_one),
		cmocka_unit_test(service_page_changes_nothing_that_is_hidden),
		cmocka_unit_test(service_page_says_that_what_to_bring_is_narrowed),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
