/* Settings out of the environment, and how days are written. */
#include "answers/fixture.h"
#include "answers/say.h"
#include "answers/settings.h"

static void expect_setting(struct book *b, const char *name, const char *want)
{
	char value[NOTE_BYTES];
	struct err e = { 0 };

	must(book_setting(b, name, value, sizeof value, &e), &e);
	assert_string_equal(value, want);
}

static void settings_are_laid_over_those_of_the_book_and_not_stored(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct limits limits;

	(void)state;
	fixture_open(&f);
	must(book_put_setting(f.book, "scout", "MB", &e), &e);
	must(book_put_setting(f.book, "stale_nights", "12", &e), &e);
	must(settings_apply(f.book, "scout=JR;;long_nights=11;near_x100=80;", &e), &e);
	expect_setting(f.book, "scout", "JR");
	must(book_limits(f.book, &limits, &e), &e);
	assert_int_equal(limits.long_nights, 11);
	assert_int_equal(limits.near_x100, 80);
	assert_int_equal(limits.stale_nights, 12);
	must(settings_apply(f.book, "scout=", &e), &e);
	expect_setting(f.book, "scout", "");
	book_lay_over(f.book, "");
	expect_setting(f.book, "scout", "MB");
	expect_setting(f.book, "long_nights", "");
	expect_setting(f.book, "cout", "");
	fixture_close(&f);
}

static void settings_that_a_file_would_not_bring_in_are_refused(void **state)
{
	static const struct {
		const char *over, *says;
	} row[] = {
		{ "scout", "wants name=value" },
		{ "scout=JR;colour=red", "\"colour\" is no setting" },
		{ "date_style=iso", "it takes one of: day-month, month-day" },
		{ "week_start=Sunday!", "it takes one of: monday, sunday" },
		{ "near_x100=101", "it goes from 0 to 100" },
		{ "near_x100=-1", "it goes from 0 to 100" },
		{ "near_x100=", "it goes from 0 to 100" },
		{ "scout=somebody with a very long name", "is too long" },
		{ "read_num=4;read_den=3", "MOTHTALLY_SETTINGS:" },
		{ "join_nights=31", "MOTHTALLY_SETTINGS:" },
		{ "scout=\xff", "no valid text" },
	};
	struct fixture f;

	(void)state;
	fixture_open(&f);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };
		if (settings_apply(f.book, row[i].over, &e) || e.kind != ERR_USAGE ||
			!strstr(e.text, row[i].says))
			fail_msg("%s: %s", row[i].over, e.text);
		expect_setting(f.book, "scout", "");
	}
	struct err e = { 0 };
	must(settings_apply(f.book, "near_x100=100;read_num=3;read_den=3", &e), &e);
	fixture_close(&f);
}

static void settings_say_how_days_are_written_and_weeks_begin(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	char text[DAY_TEXT_SIZE], brief[SAY_SHORT];
	int32_t sunday = day_of("2026-07-19");

	(void)state;
	fixture_open(&f);
	must(settings_apply(f.book, NULL, &e), &e);
	say_day_title(sunday, text, sizeof text);
	assert_string_equal(text, "Sun 19 July 2026 \302\267 week 29");
	must(settings_apply(f.book, "date_style=month-day;week_start=sunday", &e), &e);
	say_day_title(sunday, text, sizeof text);
	assert_string_equal(text, "Sun July 19, 2026 \302\267 week 29");
	say_day_title(sunday - 1, text, sizeof text);
	assert_string_equal(text, "Sat July 18, 2026 \302\267 week 28");
	say_day(sunday, brief);
	assert_string_equal(brief, "Jul 19");
	book_lay_over(f.book, "");
	must(book_put_setting(f.book, "date_style", "month-day", &e), &e);
	must(settings_apply(f.book, "", &e), &e);
	say_day(sunday, brief);
	assert_string_equal(brief, "Jul 19");
	must(settings_apply(f.book, "date_style=day-month", &e), &e);
	say_day(sunday, brief);
	assert_string_equal(brief, "19 Jul");
	day_set_style((struct day_style){ 0 });
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			settings_are_laid_over_those_of_the_book_and_not_stored),
		cmocka_unit_test(settings_that_a_file_would_not_bring_in_are_refused),
		cmocka_unit_test(settings_say_how_days_are_written_and_weeks_begin),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
