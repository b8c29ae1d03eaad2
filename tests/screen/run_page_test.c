#include "screen/run_page.h"
#include "screen/run_say.h"

#include "screen/run_samples.h"

static void run_page_shows_the_run(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys;
	} row[] = {
		{ "run-80x24", 24, 80, "14" },
		{ "run-80x24-floor", 24, 80, "14+" },
		{ "run-80x24-correct", 24, 80, "^^6" },
		{ "run-120x30", 30, 120, "14" },
		{ "run-60x20", 20, 60, "14" },
		{ "run-40x16", 16, 40, "14" },
		{ "run-40x16-skip", 16, 40, "-" },
		{ "run-30x4", 4, 30, "14" },
		{ "run-80x24-note", 24, 80, "14.leaves in the tr" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_run();
		struct run_page p = page_of(&r);

		SET(p.scout, "JR");
		SET(p.saved, "saved 07:42:11");
		type(&p, &r, row[i].keys);
		draw(&p, &c, row[i].rows, row[i].cols);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		free(r.traps);
	}
	canvas_free(&c);
}

static void run_page_enters_40_traps_from_the_number_pad(void **state)
{
	struct run r = sample_open_run(40);
	struct run_page p = page_of(&r);
	char keys[8];

	(void)state;
	for (int i = 0; i < 40; i++) {
		assert_int_equal(p.picked, i);
		snprintf(keys, sizeof keys, "%d\n", i % 20);
		assert_int_equal(type(&p, &r, keys).want, WANT_SAVE);
		assert_string_equal(p.saved, "saved 07:42:11");
		assert_int_equal(r.done, i + 1);
	}
	for (int i = 0; i < 40; i++)
		assert_int_equal(r.traps[i].visit.count, i % 20);
	assert_string_equal(p.message.text,
		"Trap 40 kept: 19  OVER  All are done: Enter goes back.");
	assert_int_equal(type(&p, &r, "\n").want, WANT_BACK);
	free(r.traps);
}

static void run_page_goes_on_at_the_first_open_trap(void **state)
{
	struct run r = sample_run();
	struct run_page p = page_of(&r);

	(void)state;
	assert_int_equal(p.picked, 2);
	type(&p, &r, "~4\n");
	assert_int_equal(p.picked, 4);
	type(&p, &r, "~~~-\n"); /* the last one: on to the first open one */
	assert_int_equal(p.picked, 2);
	type(&p, &r, "^^\n"); /* a trap that is done: on to the next open one */
	assert_int_equal(p.picked, 2);
	free(r.traps);
}

static void run_page_says_when_all_is_done_before_it_leaves(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = { .limits = &limits_usual };

	(void)state;
	sample_visit(&r.traps[0], sample_count(&r.traps[0], 1));
	sample_visit(&r.traps[1], sample_count(&r.traps[1], 1));
	run_page_show(&p, &r, true);
	assert_int_equal(type(&p, &r, "\n").want, WANT_NOTHING);
	assert_string_equal(p.message.text,
		"All 2 traps are done: Enter goes back; an arrow key picks one to "
		"correct.");
	assert_int_equal(type(&p, &r, "~\n").want, WANT_NOTHING);
	assert_int_equal(type(&p, &r, "\n").want, WANT_BACK);
	free(r.traps);
}

static void run_page_keeps_what_could_not_be_saved(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };

	(void)state;
	for (const char *key = "14+\n"; *key; key++)
		run_page_key(&p, sample_key(*key));
	run_page_not_saved(&p, "the disk is full");
	assert_true(p.message.is_fault);
	draw(&p, &c, 24, 80);
	expect_shows(
		"the message", &c, "NOT SAVED, Enter tries again: the disk is full");
	expect_shows("the entry", &c, "[ 14+ c ]");
	assert_int_equal(p.picked, 0);
	assert_string_equal(p.saved, "");
	run_page_key(&p, sample_key('5')); /* the scout types on: must not bend it */
	expect_shows("still the entry", (draw(&p, &c, 24, 80), &c), "[ 14+ c ]");
	assert_int_equal(type(&p, &r, "\n").visit.count, 14);
	assert_int_equal(p.picked, 1);
	canvas_free(&c);
	free(r.traps);
}

static void run_page_shows_every_long_message_whole_on_80(void **state)
{
	static const char *const keys[] = { "1", "\n", "-", "31\n" };
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		char *last = NULL;

		r.traps[0].hangs = i > 1;
		type(&p, &r, keys[i]);
		draw(&p, &c, 24, 80);
		last = strrchr(p.message.text, ' ');
		expect_shows("the end of the message", &c, last ? last + 1 : "");
		free(r.traps);
	}
	canvas_free(&c);
}

static void run_page_cuts_service_between_words(void **state)
{
	static const char both[] = "lure 12 d late, card 12 d late";
	static const struct {
		const char *why, *keys;
		int cols;
		const char *row, *message;
	} row[] = {
		{ "beside a trap not picked there is room", "", 80,
			"       lure 12 d late, card 12 d late\n", "" },
		{ "beside the field one part", "~", 70, "]            lure 12 d late\n",
			"\n Trap 2: lure 12 d late, card 12 d late\n" },
		{ "whole where the columns move together", "~", 76,
			"[    ]  lure 12 d late, card 12 d late\n", "" },
		{ "one part on a narrow page", "", 40, "lure 12 d late\n", "" },
		{ "all of it in the message", "~", 40, "",
			"\n Trap 2: lure 12 d late, card 12 d late\n" },
		{ "and behind what was kept", "3\n", 40, "",
			"\n Trap 1 kept: 3  under  Trap 2: lure 12\n d late, card 12 d "
			"late\n" },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);

		SET(r.traps[1].service, both);
		r.traps[1].lure_due = r.traps[1].card_due = true;
		type(&p, &r, row[i].keys);
		draw(&p, &c, 16, row[i].cols);
		expect_shows(row[i].why, &c, row[i].row);
		expect_shows(row[i].why, &c, row[i].message);
		free(r.traps);
	}
	canvas_free(&c);
}

static void run_page_says_what_was_kept_on_a_narrow_page_too(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };

	(void)state;
	type(&p, &r, "14+\n");
	draw(&p, &c, 16, 40);
	expect_shows("with its verdict", &c, "\n Trap 1 kept: 14+ c  OVER\n");
	type(&p, &r, "3\n");
	draw(&p, &c, 16, 40);
	expect_shows("and that it was the last", &c,
		"\n Trap 2 kept: 3  under  All are done:\n Enter goes back.\n");
	type(&p, &r, "7");
	draw(&p, &c, 16, 40);
	expect_shows("what is not kept", &c,
		"\n All 2 traps are done and unchanged: an\n arrow key picks one to "
		"correct.\n");
	canvas_free(&c);
	free(r.traps);
}

static void run_page_wants_what_the_keys_say(void **state)
{
	static const struct {
		const char *why, *keys;
		enum want want;
	} row[] = {
		{ "undo", "u", WANT_UNDO },
		{ "the week", "w", WANT_WEEK },
		{ "why", "y", WANT_WHY },
		{ "its diary", "d", WANT_DIARY },
		{ "help", "?", WANT_HELP },
		{ "help in the middle", "14?", WANT_HELP },
		{ "back", "\x1b", WANT_BACK },
		{ "first drop, then back", "14\x1b\x1b", WANT_BACK },
		{ "first leave the note, then drop", ".a\x1b\x1b", WANT_BACK },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w = type(&p, &r, row[i].keys);

		if (w.want != row[i].want)
			fail_msg("%s: %d", row[i].why, (int)w.want);
		if (w.want == WANT_WHY || w.want == WANT_DIARY)
			assert_int_equal(w.visit.trap, 101);
		assert_int_equal(w.trap, -1);
		free(r.traps);
	}
}

static void run_page_finds_its_trap_in_a_new_run(void **state)
{
	struct run r = sample_open_run(3);
	struct run_page p = page_of(&r);

	(void)state;
	type(&p, &r, "~5");
	assert_int_equal(p.picked_trap, 102);
	r.traps++; /* the first trap is gone */
	r.n--;
	run_page_show(&p, &r, false);
	assert_int_equal(p.picked, 0);
	assert_string_equal(p.entry.digits, "5");
	r.traps[0].trap = 999; /* and now the picked one */
	run_page_show(&p, &r, false);
	assert_false(p.entry.touched);
	free(r.traps - 1);
}

static void run_page_without_traps_stands(void **state)
{
	struct run r = sample_open_run(0);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };

	(void)state;
	assert_int_equal(type(&p, &r, "1\n+-/*c.fgi~y").want, WANT_NOTHING);
	assert_string_equal(p.message.text, "No trap hangs on this farm.");
	draw(&p, &c, 24, 80);
	expect_shows("a run without traps", &c, "0 of 0 done");
	expect_hides("heads over no rows", &c, "verdict");
	assert_int_equal(type(&p, &r, "t14\n").want, WANT_RUN_DAY);
	assert_int_equal(type(&p, &r, "\x1b").want, WANT_BACK);
	canvas_free(&c);
	free(r.traps);
}

static void run_page_leaves_the_cursor_behind_the_digits(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);
	struct canvas c = { 0 };

	(void)state;
	type(&p, &r, "14");
	draw(&p, &c, 24, 80);
	assert_int_equal(c.cursor_row, 4);
	assert_int_equal(c.cells[4 * 80 + c.cursor_col - 1].ch[0], '4');
	type(&p, &r, ".wet");
	draw(&p, &c, 24, 80);
	assert_int_equal(c.cursor_row, 22);
	assert_int_equal(c.cells[22 * 80 + c.cursor_col - 1].ch[0], 't');
	canvas_free(&c);
	free(r.traps);
}

static void run_page_keys_are_each_named_once(void **state)
{
	(void)state;
	expect_keys(run_page_keys());
}

static void draw_all_sizes(struct run *r, const char *keys)
{
	struct canvas c = { 0 };
	struct run_page p = page_of(r);

	sample_long(p.scout, sizeof p.scout, 1);
	for (; *keys; keys++)
		run_page_key(&p, sample_key(*keys));
	for (int rows = 1; rows <= 40; rows++)
		for (int cols = 1; cols <= 120; cols++)
			draw(&p, &c, rows, cols);
	canvas_free(&c);
}

static void run_page_draws_at_every_size(void **state)
{
	struct run empty = sample_open_run(0), full = sample_run(),
		   wide = sample_long_run();

	(void)state;
	draw_all_sizes(&empty, "");
	draw_all_sizes(&full, "9999+*gf12\no34\n");
	draw_all_sizes(&wide, "9999+*gf12\no34\n");
	draw_all_sizes(&wide, ".a note that is much longer than the narrow pages are");
	draw_all_sizes(&wide, "^^5");
	free(empty.traps);
	free(full.traps);
	free(wide.traps);
}

/* When all is done nothing is left to bring. */
static void run_page_says_what_was_not_changed_once_all_is_done(void **state)
{
	static const struct {
		const char *why, *want;
		int done;
	} row[] = {
		{ "one is open", "left to bring: 1 lure, 2 cards", 7 },
		{ "none is", "not changed: 1 lure, 2 cards", 8 },
	};
	struct run r = { .n = 8, .lures_left = 1, .cards_left = 2 };
	struct run_page p = { .run = &r };
	char out[256];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		r.done = row[i].done;
		run_say_status(&p, 120, out, sizeof out);
		if (!strstr(out, row[i].want))
			fail_msg("%s: %s", row[i].why, out);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(run_page_shows_the_run),
		cmocka_unit_test(run_page_enters_40_traps_from_the_number_pad),
		cmocka_unit_test(run_page_goes_on_at_the_first_open_trap),
		cmocka_unit_test(run_page_says_when_all_is_done_before_it_leaves),
		cmocka_unit_test(run_page_keeps_what_could_not_be_saved),
		cmocka_unit_test(run_page_shows_every_long_message_whole_on_80),
		cmocka_unit_test(run_page_cuts_service_between_words),
		cmocka_unit_test(run_page_says_what_was_not_changed_once_all_is_done),
		cmocka_unit_test(run_page_says_what_was_kept_on_a_narrow_page_too),
		cmocka_unit_test(run_page_wants_what_the_keys_say),
		cmocka_unit_test(run_page_finds_its_trap_in_a_new_run),
		cmocka_unit_test(run_page_without_traps_stands),
		cmocka_unit_test(run_page_leaves_the_cursor_behind_the_digits),
		cmocka_unit_test(run_page_keys_are_each_named_once),
		cmocka_unit_test(run_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
