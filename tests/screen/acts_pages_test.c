#include "answers/entry.h"
#include "screen/alerts_page.h"
#include "screen/picks_page.h"
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

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(alerts_are_answered_with_a_digit_and_a_line),
		cmocka_unit_test(picks_page_keys_are_of_the_picked_block),
		cmocka_unit_test(acts_pages_draw_at_every_size),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
