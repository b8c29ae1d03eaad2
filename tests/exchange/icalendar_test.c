/* The calendar as RFC 5545 asks; the parser is that of tests/e2e/formats.sh, another
 * one than what wrote it. */
#include "desk.h"

#include "exchange/icalendar.h"

static struct agenda_item item_of(const char *title, const char *details)
{
	struct agenda_item item = { .kind = AGENDA_RUN,
		.day = day_of("2026-07-21"),
		.from = { .minute = INSTANT_NONE },
		.until = { .minute = INSTANT_NONE } };

	text_copy(item.uid, sizeof item.uid, "00112233445566778899aabbccddeeff-run");
	text_copy(item.title, sizeof item.title, title);
	text_copy(item.details, sizeof item.details, details);
	return item;
}

static char *written(struct agenda_item *item)
{
	struct agenda a = { .items = item, .n = 1 };
	struct buf out = { 0 };
	struct err e = { 0 };

	assert_true(instant_read("2026-07-21T09:05+02:00", &a.now));
	assert_true(icalendar_write(&a, &out, &e));
	return out.text;
}

static void expect_line(const char *text, const char *line)
{
	char want[200];

	snprintf(want, sizeof want, "\r\n%s\r\n", line);
	if (!strstr(text, want))
		fail_msg("no line \"%s\" in\n%s", line, text);
}

static void an_all_day_event_has_a_date_and_takes_up_no_time(void **state)
{
	struct agenda_item item = item_of("Trap run: Quillback", "");
	char *text = written(&item);

	(void)state;
	assert_true(strncmp(text, "BEGIN:VCALENDAR\r\n", 17) == 0);
	expect_line(text, "VERSION:2.0");
	expect_line(text, "UID:00112233445566778899aabbccddeeff-run");
	expect_line(text, "DTSTAMP:20260721T070500Z");
	expect_line(text, "DTSTART;VALUE=DATE:20260721");
	expect_line(text, "SUMMARY:Trap run: Quillback");
	expect_line(text, "STATUS:CONFIRMED");
	expect_line(text, "TRANSP:TRANSPARENT");
	assert_null(strstr(text, "DTEND"));
	assert_null(strstr(text, "DESCRIPTION"));
	free(text);
}

static void hours_are_told_in_utc(void **state)
{
	struct agenda_item item = item_of("No entry: Pond block", "");
	char *text;

	(void)state;
	assert_true(instant_read("2026-07-20T23:30+02:00", &item.from));
	assert_true(instant_read("2026-07-22T01:15+02:00", &item.until));
	text = written(&item);
	expect_line(text, "DTSTART:20260720T213000Z");
	expect_line(text, "DTEND:20260721T231500Z");
	free(text);
}

static void a_later_file_has_a_higher_sequence(void **state)
{
	struct agenda_item item = item_of("x", "");
	char *text = written(&item);

	(void)state;
	expect_line(
		text, "SEQUENCE:29743625"); /* minutes from 1970 to 2026-07-21 07:05 */
	free(text);
}

static void what_is_off_is_called_off(void **state)
{
	struct agenda_item item = item_of("Lure due: trap 1", "");

	(void)state;
	item.is_off = true;
	char *text = written(&item);
	expect_line(text, "STATUS:CANCELLED");
	free(text);
}

/* Commas, semicolons, backslashes and line breaks are escaped; no line is longer than
 * 75 bytes. */
static void texts_are_escaped_and_folded(void **state)
{
	struct agenda_item item = item_of("a, b; c\\d",
		"one\ntwo, and a line that goes on for longer than seventy-five bytes so "
		"that it has to be folded somewhere \xc3\xa9\xc3\xa9\xc3\xa9\xc3\xa9");
	char *text = written(&item);

	(void)state;
	expect_line(text, "SUMMARY:a\\, b\\; c\\\\d");
	assert_non_null(strstr(text, "DESCRIPTION:one\\ntwo\\, and"));
	for (const char *line = text; *line; line = strstr(line, "\r\n") + 2)
		assert_true(strstr(line, "\r\n") - line <= 75);
	free(text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_all_day_event_has_a_date_and_takes_up_no_time),
		cmocka_unit_test(hours_are_told_in_utc),
		cmocka_unit_test(a_later_file_has_a_higher_sequence),
		cmocka_unit_test(what_is_off_is_called_off),
		cmocka_unit_test(texts_are_escaped_and_folded),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
