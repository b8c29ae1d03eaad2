#include "base/day.h"

#include "base/words.h"

#include <stdio.h>

enum {
	DAYS_400_YEARS = 146097,
	DAYS_TO_EPOCH = 719468, /* from 0000-03-01 to 1970-01-01 */
};

static struct day_style style;

void day_set_style(struct day_style s)
{
	style = s;
}

/* The calendar year counted from March: the leap day comes last, so that the days
 * before a month follow one straight line, (153 m + 2) / 5. Any year from 0. */
static int32_t count_days(int year, int month, int day)
{
	int y = month > 2 ? year : year - 1;
	int m = month > 2 ? month - 3 : month + 9;

	return 365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + day - 1 -
	       DAYS_TO_EPOCH;
}

static int month_days(int year, int month)
{
	static const int days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
	bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);

	return month == 2 && leap ? 29 : days[month - 1];
}

int32_t day_from_ymd(int year, int month, int day)
{
	if (year < DAY_YEAR_MIN || year > DAY_YEAR_MAX || month < 1 || month > 12)
		return DAY_NONE;
	if (day < 1 || day > month_days(year, month))
		return DAY_NONE;
	return count_days(year, month, day);
}

struct ymd day_to_ymd(int32_t day)
{
	if (day == DAY_NONE)
		return (struct ymd){ 0, 0, 0 };
	int64_t n = (int64_t)day + DAYS_TO_EPOCH;
	int64_t era = (n >= 0 ? n : n - DAYS_400_YEARS + 1) / DAYS_400_YEARS;
	int of_era = (int)(n - era * DAYS_400_YEARS);
	int y = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
	int of_year = of_era - (365 * y + y / 4 - y / 100);
	int m = (5 * of_year + 2) / 153;

	return (struct ymd){
		.year = (int)(era * 400) + y + (m > 9),
		.month = m < 10 ? m + 3 : m - 9,
		.day = of_year - (153 * m + 2) / 5 + 1,
	};
}

/* n digits at s, -1 if one of them is none; reads no further than a NUL. */
static int digits(const char *s, int n)
{
	int value = 0;

	for (int i = 0; i < n; i++) {
		if (s[i] < '0' || s[i] > '9')
			return -1;
		value = value * 10 + (s[i] - '0');
	}
	return value;
}

/* The three numbers of YYYY-MM-DD, of whatever size. */
static bool read_ymd(const char *text, struct ymd *out)
{
	out->year = digits(text, 4);
	if (out->year < 0 || text[4] != '-')
		return false;
	out->month = digits(text + 5, 2);
	if (out->month < 0 || text[7] != '-')
		return false;
	out->day = digits(text + 8, 2);
	return out->day >= 0 && text[10] == '\0';
}

bool day_parse(const char *text, int32_t *day)
{
	struct ymd d;

	if (!read_ymd(text, &d))
		return false;
	int32_t got = day_from_ymd(d.year, d.month, d.day);
	if (got != DAY_NONE)
		*day = got;
	return got != DAY_NONE;
}

const char *day_fault(const char *text)
{
	struct ymd d;
	int32_t day;

	if (day_parse(text, &day))
		return NULL;
	if (!read_ymd(text, &d) || d.month < 1 || d.month > 12 || d.day < 1 ||
		d.day > month_days(d.year, d.month) ||
		(d.year >= DAY_YEAR_MIN && d.year <= DAY_YEAR_MAX))
		return _("not a date such as 2026-07-21");
	return _("the year must be 1900 to 2199");
}

static char *put(char *out, int value, int n)
{
	for (int i = n - 1; i >= 0; i--, value /= 10)
		out[i] = (char)('0' + value % 10);
	return out + n;
}

void day_iso(int32_t day, char out[static DAY_ISO_SIZE])
{
	struct ymd d = day_to_ymd(day);

	out[0] = '\0';
	if (day == DAY_NONE || d.year < 0 || d.year > 9999)
		return;
	out = put(out, d.year, 4);
	*out++ = '-';
	out = put(out, d.month, 2);
	*out++ = '-';
	*put(out, d.day, 2) = '\0';
}

int day_weekday(int32_t day)
{
	int from_thursday = day % 7; /* 1970-01-01 was a Thursday */

	if (day == DAY_NONE)
		return 0;
	return (from_thursday + 7 + 3) % 7 + 1;
}

int32_t day_monday(int32_t day)
{
	return day == DAY_NONE ? DAY_NONE : day - (day_weekday(day) - 1);
}

int32_t day_week_start(int32_t day)
{
	if (day == DAY_NONE || !style.sunday_first)
		return day_monday(day);
	return day - day_weekday(day) % 7;
}

/* A week belongs to the year that the middle of its seven days lies in. */
int day_week(int32_t day, int *year)
{
	int32_t middle = day == DAY_NONE ? DAY_NONE : day_week_start(day) + 3;
	int y = day_to_ymd(middle).year;

	if (year)
		*year = y;
	if (day == DAY_NONE)
		return 0;
	return (middle - count_days(y, 1, 1)) / 7 + 1;
}

int day_md(int32_t day)
{
	struct ymd d = day_to_ymd(day);

	return d.month * 100 + d.day;
}

bool day_md_parse(const char *text, int *md)
{
	int month = digits(text, 2);

	if (month < 1 || month > 12 || text[2] != '-')
		return false;
	int day = digits(text + 3, 2);
	if (day < 1 || text[5] || day > month_days(2000, month))
		return false;
	*md = month * 100 + day;
	return true;
}

bool day_md_within(int md, int from, int to)
{
	if (from == 0 && to == 0)
		return true;
	if (md == 0)
		return false;
	return from <= to ? md >= from && md <= to : md >= from || md <= to;
}

static int32_t start_in(int year, int md)
{
	int month = md < 101 ? 1 : md / 100, day = md < 101 ? 1 : md % 100;
	int last = month_days(year, month);

	return count_days(year, month, day < last ? day : last);
}

int32_t day_season_start(int32_t day, int start_md)
{
	if (day == DAY_NONE)
		return DAY_NONE;
	int year = day_to_ymd(day).year;
	int32_t start = start_in(year, start_md);

	return start <= day ? start : start_in(year - 1, start_md);
}

int32_t day_season_end(int32_t day, int start_md)
{
	enum { INTO_NEXT = 366 };

	if (day == DAY_NONE)
		return DAY_NONE;
	return day_season_start(day_season_start(day, start_md) + INTO_NEXT, start_md) -
	       1;
}

static const char *weekday_word(int32_t day)
{
	static const char *const words[] = { N_("Mon"), N_("Tue"), N_("Wed"), N_("Thu"),
		N_("Fri"), N_("Sat"), N_("Sun") };

	return _(words[day_weekday(day) - 1]);
}

void day_long(int32_t day, char *out, size_t size)
{
	static const char *const months[] = { N_("January"), N_("February"),
		N_("March"), N_("April"), N_("May"), N_("June"), N_("July"),
		N_("August"), N_("September"), N_("October"), N_("November"),
		N_("December") };
	struct ymd d = day_to_ymd(day);

	out[0] = '\0';
	if (day == DAY_NONE)
		return;
	if (style.month_first)
		snprintf(out, size, C_("Tue July 21, 2026", "%s %s %d, %d"),
			weekday_word(day), _(months[d.month - 1]), d.day, d.year);
	else
		snprintf(out, size, C_("Tue 21 July 2026", "%s %d %s %d"),
			weekday_word(day), d.day, _(months[d.month - 1]), d.year);
}

const char *day_month_short(int month)
{
	static const char *const months[] = { NC_("month", "Jan"), NC_("month", "Feb"),
		NC_("month", "Mar"), NC_("month", "Apr"), NC_("month", "May"),
		NC_("month", "Jun"), NC_("month", "Jul"), NC_("month", "Aug"),
		NC_("month", "Sep"), NC_("month", "Oct"), NC_("month", "Nov"),
		NC_("month", "Dec") };

	return words_in(months[month - 1]);
}

void day_short(int32_t day, char *out, size_t size)
{
	struct ymd d = day_to_ymd(day);

	out[0] = '\0';
	if (day == DAY_NONE)
		return;
	if (style.month_first)
		snprintf(out, size, C_("Tue Jul 21", "%s %s %d"), weekday_word(day),
			day_month_short(d.month), d.day);
	else
		snprintf(out, size, C_("Tue 21 Jul", "%s %d %s"), weekday_word(day),
			d.day, day_month_short(d.month));
}
