#include "answers/entry.h"
#include "screen/alerts_page.h"
#include "screen/picks_page.h"
#include "screen/run_say.h"
#include "screen/samples.h"

#include <cmocka.h>

static struct input key_of(char c)
{
	if (c == '\n')
		return (struct input){ INPUT_ENTER, 0 };
	if (c == '\x1b')
		return (struct input){ INPUT_ESC, 0 };
	if (c == '~')
		return (struct input){ INPUT_DOWN, 0 };
	return (struct input){ INPUT_CHAR, (uint32_t)c };
}

/* One open alert, one that was answered. */
static struct alerts sample_alerts(void)
{
	static struct alert items[2];

	items[0] = (struct alert){
		.farm = 1, .block = 7, .pest = 2, .trap = 9, .day = sample_day()
	};
	items[1] = items[0];
	items[1].trap = 10;
	items[1].is_answered = true;
	items[1].answer.decision = DECISION_LEFT;
	SET(items[0].name, "Old Kiln, CM, trap 3");
	SET(items[1].name, "Old Kiln, CM, trap 4");
	SET(items[1].answer.note, "cold week");
	return (struct alerts){ .items = items, .n = 2 };
}

static void alerts_are_answered_with_a_digit_and_a_line(void **state)
{
	static const struct {
		const char *keys, *note, *why;
		enum want want;
		int by;
	} row[] = {
		{ "a1\n", "", "an empty line will do", WANT_ANSWER, DECISION_LOOKED },
		{ "a2ab\n", "ab", "the line is kept", WANT_ANSWER, DECISION_TREATED },
		{ "a3a\n", "a", "a letter is no key there", WANT_ANSWER,
			DECISION_LEFT },
		{ "~a1\n", "cold week", "a correction keeps the line", WANT_ANSWER,
			DECISION_LOOKED },
		{ "a4\n", "", "there are three", WANT_NOTHING, 0 },
		{ "a0", "", "and none before the first", WANT_NOTHING, 0 },
		{ "a2x\x1b", "", "Esc leaves it open", WANT_NOTHING, 0 },
		{ "\n", "", "Enter alone asks why", WANT_WHY, 0 },
		{ "d", "", "its block's season", WANT_DIARY, 0 },
		{ "u", "", "taken back", WANT_UNDO_STEP, 0 },
		{ "\x1b", "", "back", WANT_BACK, 0 },
	};
	const struct alerts alerts = sample_alerts();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct alerts_page p = { 0 };
		struct wish w = page_wish(WANT_NOTHING);

		alerts_page_show(&p, &alerts, true);
		for (const char *k = row[i].keys; *k; k++)
			w = alerts_page_key(&p, key_of(*k));
		if (w.want != row[i].want || w.by != row[i].by ||
			strcmp(w.words.note, row[i].note) != 0)
			fail_msg("%s: %d %d %s", row[i].why, (int)w.want, w.by,
				w.words.note);
		alerts_page_free(&p);
	}
}

static void alerts_key_line_is_that_of_what_is_asked(void **state)
{
	static const struct {
		const char *why, *keys, *line;
	} row[] = {
		{ "nothing", "", " Enter why  a answer" },
		{ "what was decided", "a", " 1-3 decide  - + day  Esc leave it\n" },
		{ "its line", "a1", " Enter save it  Esc drop\n" },
		{ "letters", "/o", " Enter open  Up Down pick  Esc show all\n" },
	};
	const struct alerts alerts = sample_alerts();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct alerts_page p = { .caution = "" };
		struct canvas c = { 0 };

		alerts_page_show(&p, &alerts, true);
		for (const char *k = row[i].keys; *k; k++)
			alerts_page_key(&p, key_of(*k));
		canvas_size(&c, 16, 40);
		alerts_page_draw(&p, &c);
		expect_shows(row[i].why, &c, row[i].line);
		canvas_free(&c);
		alerts_page_free(&p);
	}
}

/* An alert of Monday, asked on Thursday; the second was answered on Tuesday as left. */
static void a_decision_is_of_today_unless_its_day_is_moved(void **state)
{
	enum { MONDAY, TUESDAY, WEDNESDAY, THURSDAY };
	static const struct {
		const char *keys, *why;
		int day;
	} row[] = {
		{ "a1\n", "today", THURSDAY },
		{ "a-1\n", "the day before", WEDNESDAY },
		{ "a--+1\n", "and one on", WEDNESDAY },
		{ "a---1\n", "the day of the catch", MONDAY },
		{ "a----1\n", "not before it", MONDAY },
		{ "a+1\n", "nor after today", THURSDAY },
		{ "~a3\n", "a correction of the line keeps its day", TUESDAY },
		{ "~a1\n", "another decision is of today", THURSDAY },
		{ "~a+1\n", "unless it was moved", WEDNESDAY },
	};
	struct alerts alerts = sample_alerts();

	(void)state;
	for (size_t i = 0; i < alerts.n; i++)
		alerts.items[i].today = sample_day() + THURSDAY;
	alerts.items[1].answer.on = sample_day() + TUESDAY;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct alerts_page p = { 0 };
		struct wish w = page_wish(WANT_NOTHING);

		alerts_page_show(&p, &alerts, true);
		for (const char *k = row[i].keys; *k; k++)
			w = alerts_page_key(&p, key_of(*k));
		if (w.want != WANT_ANSWER || w.day != sample_day() + row[i].day)
			fail_msg("%s: %d", row[i].why, (int)(w.day - sample_day()));
		alerts_page_free(&p);
	}
}

/* Another program's catch may push it down, or what was over may be no more. */
static void an_answer_finds_its_alert_in_a_list_that_is_read_anew(void **state)
{
	struct alerts alerts = sample_alerts();
	struct alert anew[2] = { alerts.items[1], alerts.items[0] };
	const struct alerts moved = { .items = anew, .n = 2 },
			    gone = { .items = anew, .n = 1 };
	struct alerts_page p = { 0 };

	(void)state;
	alerts_page_show(&p, &alerts, true);
	alerts_page_key(&p, key_of('a'));
	alerts_page_show(&p, &moved, false);
	alerts_page_key(&p, key_of('1'));
	struct wish w = alerts_page_key(&p, key_of('\n'));
	assert_int_equal(w.want, WANT_ANSWER);
	assert_int_equal(w.id, 1);
	alerts_page_show(&p, &alerts, true);
	alerts_page_key(&p, key_of('a'));
	alerts_page_show(&p, &gone, false);
	alerts_page_key(&p, key_of('1'));
	w = alerts_page_key(&p, key_of('\n'));
	assert_int_equal(w.want, WANT_ANSWER);
	assert_int_equal(w.id, -1);
	alerts_page_free(&p);
}

static void picks_page_keys_are_of_the_picked_block(void **state)
{
	static struct pick_row items[2];
	static struct bar bar = { .farm = 1, .block = 5 };
	const struct pick_rows picks = { .items = items, .n = 2 };
	const struct bars bars = { .items = &bar, .n = 1 };
	static const struct {
		const char *keys;
		enum want want;
		int kind;
		int64_t id, block;
	} row[] = {
		{ "n", WANT_FORM, ENTRY_PICKS, 0, 5 },
		{ "~\n", WANT_FORM, ENTRY_PICKS, 31, 7 },
		{ "~~\n", WANT_FORM, ENTRY_PICKS, 0, 8 },
		{ "~t", WANT_ENTRIES, ENTRY_TREATMENTS, 0, 7 },
		{ "~r", WANT_ENTRIES, ENTRY_CHECKS, 0, 7 },
		{ "~d", WANT_DIARY, 0, 0, 7 },
		{ "z", WANT_NOTHING, 0, 0, 0 },
	};

	(void)state;
	items[0] = (struct pick_row){ .id = 31, .farm = 1, .block = 7 };
	items[1] = (struct pick_row){ .farm = 1, .block = 8 };
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct picks_page p = { 0 };
		struct wish w = page_wish(WANT_NOTHING);

		picks_page_show(&p, &picks, &bars, true);
		for (const char *k = row[i].keys; *k; k++)
			w = picks_page_key(&p, key_of(*k));
		assert_int_equal(w.want, row[i].want);
		assert_int_equal(w.kind, row[i].kind);
		assert_int_equal(w.id, row[i].id);
		assert_int_equal(w.block, row[i].block);
		picks_page_free(&p);
	}
}

static void alerts_narrow_to_what_is_typed(void **state)
{
	static const struct {
		const char *keys, *why;
		size_t n;
		enum want want;
		int64_t id;
	} row[] = {
		{ "/trap 4\n", "Enter is for the one that is left", 1, WANT_WHY, 1 },
		{ "/old\x1b~\n", "Esc shows all again", 2, WANT_WHY, 1 },
		{ "/old~\n", "down while it is typed", 2, WANT_WHY, 1 },
		{ "/zz\n", "nothing to be answered", 0, WANT_NOTHING, 0 },
		{ "/zz\na", "nor by its key", 0, WANT_NOTHING, 0 },
		{ "/trap 4\na1\n", "the answer is to the one shown", 1, WANT_ANSWER,
			1 },
		{ "/zz\x1b\x1b", "Esc once more goes back", 2, WANT_BACK, 0 },
	};
	const struct alerts alerts = sample_alerts();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct alerts_page p = { 0 };
		struct wish w = page_wish(WANT_NOTHING);

		alerts_page_show(&p, &alerts, true);
		for (const char *k = row[i].keys; *k; k++)
			w = alerts_page_key(&p, key_of(*k));
		if (w.want != row[i].want || w.id != row[i].id ||
			p.list.sift.n != row[i].n)
			fail_msg("%s: %d %d, %zu rows", row[i].why, (int)w.want,
				(int)w.id, p.list.sift.n);
		alerts_page_free(&p);
	}
}

static void narrowed_alerts_do_not_read_as_none(void **state)
{
	const struct alerts alerts = sample_alerts();
	struct alerts_page p = { 0 };
	struct canvas c = { 0 };

	(void)state;
	alerts_page_show(&p, &alerts, true);
	for (const char *k = "/zz\n\n"; *k; k++)
		alerts_page_key(&p, key_of(*k));
	canvas_size(&c, 24, 80);
	alerts_page_draw(&p, &c);
	expect_shows("Enter", &c, "Nothing is picked: Esc shows all again.");
	expect_shows("how many", &c, "of all: 1 open, 1 answered");
	canvas_free(&c);
	alerts_page_free(&p);
}

static void picks_narrow_and_say_how_many(void **state)
{
	static struct pick_row items[2];
	static struct bar bar = { .farm = 1, .block = 5 };
	const struct pick_rows picks = { .items = items, .n = 2 };
	const struct bars bars = { .items = &bar, .n = 1 };
	struct picks_page p = { 0 };
	struct canvas c = { 0 };

	(void)state;
	items[0] = (struct pick_row){ .id = 31, .farm = 1, .block = 7 };
	items[1] = (struct pick_row){ .farm = 1, .block = 8 };
	SET(items[0].says, "allowed from now on");
	SET(items[1].says, "not before Thursday");
	picks_page_show(&p, &picks, &bars, true);
	for (const char *k = "/thurs"; *k; k++)
		picks_page_key(&p, key_of(*k));
	canvas_size(&c, 24, 80);
	picks_page_draw(&p, &c);
	expect_shows("the title", &c, "Picks \u00b7 1 of 3");
	expect_shows("what is typed", &c, "look for: thurs  (1 of 3)");
	assert_int_equal(c.cursor_row, 22);
	assert_int_equal(picks_page_key(&p, key_of('\n')).block, 8);
	for (const char *k = "/zz"; *k; k++)
		picks_page_key(&p, key_of(*k));
	picks_page_draw(&p, &c);
	expect_shows("nothing", &c, "Nothing contains it: Esc shows all.");
	assert_int_equal(picks_page_key(&p, key_of('\n')).want, WANT_NOTHING);
	assert_int_equal(picks_page_key(&p, key_of('d')).want, WANT_NOTHING);
	canvas_free(&c);
	picks_page_free(&p);
}

static void acts_pages_draw_at_every_size(void **state)
{
	const struct alerts alerts = sample_alerts();
	const struct pick_rows none = { 0 };
	const struct bars free_ones = { 0 };
	struct alerts_page a = { .caution = "The label is the law, and so on." };
	struct picks_page k = { .caution = a.caution };
	struct canvas c = { 0 };

	(void)state;
	alerts_page_show(&a, &alerts, true);
	alerts_page_key(&a, key_of('a'));
	alerts_page_key(&a, key_of('1'));
	picks_page_show(&k, &none, &free_ones, true);
	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols += 3) {
			canvas_size(&c, rows, cols);
			alerts_page_draw(&a, &c);
			picks_page_draw(&k, &c);
		}
	canvas_free(&c);
	alerts_page_free(&a);
	picks_page_free(&k);
}

/* "until Wed 22 Jul 2" would read as two o'clock. */
static void the_hour_until_which_a_run_is_barred_is_never_cut(void **state)
{
	static const char full[] = "no entry: Low Pears until Wed 22 Jul 20:00",
			  brief[] = "Low Pears: no entry till Wed 20:00",
			  least[] = "no entry to 1 block: see its traps";
	struct run r = { .barred_blocks = 1 };
	struct run_page p = { .run = &r };

	(void)state;
	SET(r.barred_text, full);
	SET(r.barred_brief, brief);
	for (int cols = 10; cols <= 120; cols++) {
		char out[SAY_LINE * 3];
		run_say_under(&p, cols, out, sizeof out);
		const char *want = cols - 2 >= (int)strlen(full)    ? full
				   : cols - 2 >= (int)strlen(brief) ? brief
								    : least;
		if (strncmp(out, want, strlen(want)) != 0)
			fail_msg("%d columns: %s", cols, out);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(alerts_are_answered_with_a_digit_and_a_line),
		cmocka_unit_test(alerts_key_line_is_that_of_what_is_asked),
		cmocka_unit_test(a_decision_is_of_today_unless_its_day_is_moved),
		cmocka_unit_test(an_answer_finds_its_alert_in_a_list_that_is_read_anew),
		cmocka_unit_test(picks_page_keys_are_of_the_picked_block),
		cmocka_unit_test(alerts_narrow_to_what_is_typed),
		cmocka_unit_test(narrowed_alerts_do_not_read_as_none),
		cmocka_unit_test(picks_narrow_and_say_how_many),
		cmocka_unit_test(acts_pages_draw_at_every_size),
		cmocka_unit_test(the_hour_until_which_a_run_is_barred_is_never_cut),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
