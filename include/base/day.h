/* day.h - calendar days. A day is a count of days since 1970-01-01 (proleptic
 * Gregorian), so that nights between two visits are a subtraction. No time zones:
 * a visit's date is the date on the scout's calendar. What is asked of DAY_NONE is 0,
 * DAY_NONE or an empty text. */
#ifndef BASE_DAY_H
#define BASE_DAY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
	DAY_NONE = INT32_MIN, /* no day is known */
	DAY_YEAR_MIN = 1900,
	DAY_YEAR_MAX = 2199,
	DAY_ISO_SIZE = 11, /* "2026-07-21" and its NUL */
	DAY_TEXT_SIZE = 64,
};

struct ymd {
	int year, month, day; /* 1900..2199, 1..12, 1..31 */
};

/* DAY_NONE unless the three make a date within the years above. */
int32_t day_from_ymd(int year, int month, int day);
struct ymd day_to_ymd(int32_t day);

/* Exactly YYYY-MM-DD (ISO 8601), nothing before or after. False: not a date. */
bool day_parse(const char *text, int32_t *day);
/* "14", "7-14", "07-14" or "0714": the latest such day that is not after today, of this
 * month or the last one, of this year or the last one. DAY_NONE: neither has it (a "31"
 * in July is a slip, and no day of May), or it is a whole date. */
int32_t day_typed(const char *text, int32_t today);
/* The same where it may lie ahead: the latest that is not over half a month, or half a
 * year, after today. */
int32_t day_typed_ahead(const char *text, int32_t today);
/* Why day_parse refuses the text, as the end of a sentence about it; NULL: it does
 * not. */
const char *day_fault(const char *text);
/* Writes YYYY-MM-DD; DAY_NONE gives an empty text. */
void day_iso(int32_t day, char out[static DAY_ISO_SIZE]);

/* 1 Monday .. 7 Sunday. */
int day_weekday(int32_t day);
/* The Monday of the day's ISO 8601 week. */
int32_t day_monday(int32_t day);

/* How days are written and where weeks begin: as the grower has it, for the whole
 * process, like a locale. Set once, when the book is open and before anything is shown;
 * until then as all zero. Files, the book and the season never look at it. */
struct day_style {
	bool month_first;  /* "Tue Jul 21"; else "Tue 21 Jul" */
	bool sunday_first; /* weeks begin on Sunday; else on Monday */
};
void day_set_style(struct day_style style);

/* The first day of the day's week. */
int32_t day_week_start(int32_t day);
/* Week 1..53; *year (may be NULL) is the year that the week belongs to: the one that
 * has four or more of its days. For weeks from Monday that is ISO 8601. */
int day_week(int32_t day, int *year);

/* A day of any year: month * 100 + day, 101..1231; 0 = none. */
int day_md(int32_t day);
/* Exactly MM-DD; 02-29 is allowed. False: not a day of the year. */
bool day_md_parse(const char *text, int *md);
/* True if md lies in from..to, both included; the window wraps the new year when
 * from > to. from = to = 0 is the whole year. */
bool day_md_within(int md, int from, int to);

/* First day of the season that `day` falls in, for a season that starts each
 * year at start_md (101 or 0 = calendar year; 0229 counts as 0228 in other years). */
int32_t day_season_start(int32_t day, int start_md);
/* Its last day: the one before the next season starts. */
int32_t day_season_end(int32_t day, int start_md);

/* "Tue 21 July 2026" and "Tue 21 Jul", or "Tue July 21, 2026" and "Tue Jul 21"; words
 * through gettext. size: DAY_TEXT_SIZE. */
void day_long(int32_t day, char *out, size_t size);
void day_short(int32_t day, char *out, size_t size);
/* "Jul"; month: 1..12. */
const char *day_month_short(int month);

#endif
