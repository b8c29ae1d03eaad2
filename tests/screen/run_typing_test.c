#include "screen/run_typing.h"

#include "screen/run_samples.h"

static void typing_takes_dates_of_the_past(void **state)
{
	static const struct {
		const char *why, *keys;
		int year, month, day; /* 0: refused */
	} row[] = {
		{ "in full", "t2026-07-14\n", 2026, 7, 14 },
		{ "today", "t2026-07-21\n", 2026, 7, 21 },
		{ "tomorrow", "t2026-07-22\n", 0, 0, 0 },
		{ "month and day", "t07-14\n", 2026, 7, 14 },
		{ "without the zero", "t7-14\n", 2026, 7, 14 },
		{ "month and day of the year before", "t12-30\n\n", 2025, 12, 30 },
		{ "the day alone", "t14\n", 2026, 7, 14 },
		{ "the day alone, of the month before", "t30\n", 2026, 6, 30 },
		{ "no such day in either month", "t31\n", 0, 0, 0 },
		{ "no such month", "t13-01\n", 0, 0, 0 },
		{ "no date", "t7-\n", 0, 0, 0 },
		{ "digits run together", "t0714\n", 2026, 7, 14 },
		{ "run together, of no such month", "t1314\n", 0, 0, 0 },
		{ "three digits", "t714\n", 0, 0, 0 },
		{ "nothing", "t\n", 0, 0, 0 },
		{ "dropped", "t14\x1b\n", 0, 0, 0 },
		{ "corrected in the line", "t15\b4\n", 2026, 7, 14 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w = type(&p, &r, row[i].keys);
		int32_t want = row[i].year ? day_from_ymd(row[i].year, row[i].month,
						     row[i].day)
					   : DAY_NONE;

		if (w.want != (row[i].year ? WANT_RUN_DAY : WANT_NOTHING) ||
			w.day != want)
			fail_msg("%s: want %d, \"%s\"", row[i].why, (int)w.want,
				p.message.text);
		free(r.traps);
	}
}

static void typing_says_what_is_wrong_with_a_date(void **state)
{
	struct run r = sample_open_run(2);
	struct run_page p = page_of(&r);

	(void)state;
	type(&p, &r, "t2026-07-22\n");
	assert_string_equal(
		p.message.text, "2026-07-22 lies ahead: today is 2026-07-21.");
	type(&p, &r, "\x1bt13-1\n");
	assert_string_equal(
		p.message.text, "13-1 is no date: write 2026-07-21, or 07-21, or 21.");
	free(r.traps);
}

static void typing_says_which_date_it_took(void **state)
{
	static const struct {
		const char *why, *keys, *says;
		enum want want;
	} row[] = {
		{ "the day alone, of the month before", "t30\n",
			"This is the run of Tue 30 June 2026.", WANT_RUN_DAY },
		{ "60 days back", "t05-22\n", "This is the run of Fri 22 May 2026.",
			WANT_RUN_DAY },
		{ "61 days back", "t05-21\n",
			"Run of Thu 21 May 2026, 61 days back? Enter once more goes "
			"there.",
			WANT_NOTHING },
		{ "Enter once more", "t05-21\n\n",
			"This is the run of Thu 21 May 2026.", WANT_RUN_DAY },
		{ "the next one instead", "t05-21\n07-14\n",
			"This is the run of Tue 14 July 2026.", WANT_RUN_DAY },
		{ "another one far back is asked about too", "t05-21\n05-20\n",
			"Run of Wed 20 May 2026, 62 days back? Enter once more goes "
			"there.",
			WANT_NOTHING },
		{ "Backspace edits it", "t05-21\n\b2\n",
			"This is the run of Fri 22 May 2026.", WANT_RUN_DAY },
		{ "Esc forgets it", "t05-21\n\x1bt05-21\n",
			"Run of Thu 21 May 2026, 61 days back? Enter once more goes "
			"there.",
			WANT_NOTHING },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct wish w = type(&p, &r, row[i].keys);

		if (w.want != row[i].want || strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: want %d \"%s\"", row[i].why, (int)w.want,
				p.message.text);
		free(r.traps);
	}
}

static void typing_replaces_what_is_there_but_adds_to_a_note(void **state)
{
	static const struct {
		const char *why, *keys, *line, *says;
	} row[] = {
		{ "initials there", "i", "JR",
			"Typing replaces it, Backspace edits it." },
		{ "replaced", "iKO", "KO", "" },
		{ "edited", "i\bK", "JK", "" },
		{ "a note there", ".", "wet", "What you type is added to it." },
		{ "added to", ". card", "wet card", "" },
		{ "females there", "f", "3",
			"Typing replaces it, Backspace edits it." },
		{ "females replaced", "f12", "12", "" },
		{ "a letter replaces no digits", "fx", "3",
			"Only digits here: Enter ends it, Esc drops it." },
		{ "other moths edited", "o\b", "", "" },
		{ "a wrong date is replaced", "t99\n14", "14", "" },
		{ "or edited", "t99\n\b", "9", "" },
		{ "a date ahead is replaced", "t2026-07-22\n2", "2", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(2);
		struct run_page p = page_of(&r);
		struct visit v = sample_count(&r.traps[0], 7);

		v.females = 3;
		v.others = 4;
		sample_visit(&r.traps[0], v);
		SET(r.traps[0].words.note, "wet");
		SET(p.scout, "JR");
		run_page_pick(&p, 101);
		type(&p, &r, row[i].keys);
		if (strcmp(p.line, row[i].line) != 0 ||
			strcmp(p.message.text, row[i].says) != 0)
			fail_msg("%s: \"%s\" \"%s\"", row[i].why, p.line,
				p.message.text);
		free(r.traps);
	}
}

static void typing_takes_no_more_than_fits(void **state)
{
	static const struct {
		const char *why, *start, *text, *says;
		size_t bytes;
	} row[] = {
		{ "a note", ".", "moth ", "No more fits here.", NOTE_BYTES - 1 },
		{ "initials", "i", "KO", "No more fits here.", SCOUT_BYTES - 1 },
		{ "females", "f", "1", "No more fits here.", 4 },
		{ "a date", "t", "1", "No more fits here.", 10 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct run r = sample_open_run(1);
		struct run_page p = page_of(&r);

		type(&p, &r, row[i].start);
		for (int n = 0; n < NOTE_BYTES; n++)
			type(&p, &r, row[i].text);
		if (strcmp(p.message.text, row[i].says) != 0 ||
			strlen(p.line) != row[i].bytes)
			fail_msg("%s: %zu bytes, \"%s\"", row[i].why, strlen(p.line),
				p.message.text);
		free(r.traps);
	}
}

static void typing_erases_whole_characters(void **state)
{
	struct run r = sample_open_run(1);
	struct run_page p = page_of(&r);

	(void)state;
	type(&p, &r, ".a");
	run_page_key(&p, (struct input){ INPUT_CHAR, 0x6843 });
	run_page_key(&p, (struct input){ INPUT_CHAR, 'e' });
	run_page_key(&p, (struct input){ INPUT_CHAR, 0x301 });
	assert_string_equal(p.line, "a\u6843e\u0301");
	type(&p, &r, "\b");
	assert_string_equal(p.line, "a\u6843");
	type(&p, &r, "\b");
	assert_string_equal(p.line, "a");
	type(&p, &r, "\b\b\b");
	assert_string_equal(p.line, "");
	free(r.traps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(typing_takes_dates_of_the_past),
		cmocka_unit_test(typing_says_what_is_wrong_with_a_date),
		cmocka_unit_test(typing_says_which_date_it_took),
		cmocka_unit_test(typing_replaces_what_is_there_but_adds_to_a_note),
		cmocka_unit_test(typing_takes_no_more_than_fits),
		cmocka_unit_test(typing_erases_whole_characters),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
