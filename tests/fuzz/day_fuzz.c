/* A text that reads as a date is that date written; one that reads as a day of the
 * year is one. Numbers likewise. */
#include "fuzz.h"

#include "base/day.h"
#include "base/text.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static void check_day(const char *text)
{
	int32_t day;
	char iso[DAY_ISO_SIZE], words[DAY_TEXT_SIZE];
	int year;

	if (!day_parse(text, &day))
		return;
	day_iso(day, iso);
	must(strcmp(iso, text) == 0);
	int week = day_week(day, &year);
	must(week >= 1 && week <= 53 && abs(year - day_to_ymd(day).year) <= 1);
	must(day_monday(day) + day_weekday(day) - 1 == day);
	must(day - day_season_start(day, 229) >= 0);
	must(day - day_season_start(day, 229) <= 366);
	day_long(day, words, sizeof words);
	day_short(day, words, sizeof words);
}

static void check_md(const char *text)
{
	int md;
	char again[24];

	if (!day_md_parse(text, &md))
		return;
	snprintf(again, sizeof again, "%02d-%02d", md / 100, md % 100);
	must(strcmp(again, text) == 0);
	must(day_from_ymd(2000, md / 100, md % 100) != DAY_NONE);
}

static void check_numbers(const char *text)
{
	int32_t whole, hundredths;

	if (text_int(text, 0, INT32_MAX, &whole))
		must(whole == strtoll(text, NULL, 10));
	if (text_x100(text, INT32_MAX, &hundredths))
		must(fabs(strtod(text, NULL) * 100 - hundredths) < 0.001);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	char *text = malloc(n + 1);

	must(text != NULL);
	memcpy(text, data, n);
	text[n] = '\0';
	check_day(text);
	check_md(text);
	check_numbers(text);
	free(text);
	return 0;
}
