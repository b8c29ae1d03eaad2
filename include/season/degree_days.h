/* degree_days.h - degree-days of a day and their sums.
 * a = minimum, b = maximum of the day, base < cap, all in one unit (degrees C or F);
 * the result is in degree-days of that unit, never negative. A sum in C times 1.8 is
 * the sum in F; no 32 is added.
 *
 * Sources of the methods (as remembered, not read): Arnold 1960, Proc. Am. Soc. Hort.
 * Sci. 76:682-692; Baskerville & Emin 1969, Ecology 50:514-517; Allen 1976, Environ.
 * Entomol. 5:388-396; Sevacherian et al. 1977, J. Econ. Entomol. 70:399-402; McMaster &
 * Wilhelm 1997, Agric. For. Meteorol. 87:291-300 (the averages). */
#ifndef SEASON_DEGREE_DAYS_H
#define SEASON_DEGREE_DAYS_H

#include "base/day.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum dd_method {
	DD_AVERAGE,         /* max(0, mean - base) */
	DD_AVERAGE_RAISED,  /* minimum raised to the base first */
	DD_AVERAGE_CLAMPED, /* and both lowered to the cap */
	DD_AVERAGE_CAPPED,  /* the first, with the maximum alone lowered to the cap */
	/* Straight lines or sines from the minimum to the maximum and back; double: the
	 * way back goes to tomorrow's minimum. */
	DD_TRIANGLE,
	DD_DOUBLE_TRIANGLE,
	DD_SINE,
	DD_DOUBLE_SINE,
	DD_METHOD_COUNT
};

/* What heat above the cap does: with sines and triangles only; averages have
 * DD_NO_CUTOFF, and those that look at a cap say above what they do with it. */
enum dd_cutoff {
	DD_NO_CUTOFF,    /* counts on */
	DD_HORIZONTAL,   /* counts as at the cap */
	DD_INTERMEDIATE, /* takes away as much as it is above; a day is never below 0 */
	DD_VERTICAL,     /* counts nothing while above */
	DD_CUTOFF_COUNT
};

struct dd_rule {
	enum dd_method method;
	enum dd_cutoff cutoff;
	double base, cap; /* cap is only looked at where dd_uses_cap says so */
};

/* Words of files and command line: "average", "average-raised", "average-clamped",
 * "average-capped", "triangle", "double-triangle", "sine", "double-sine"; "none",
 * "horizontal", "intermediate", "vertical". */
const char *dd_method_word(enum dd_method m);
const char *dd_cutoff_word(enum dd_cutoff c);
bool dd_method_read(const char *word, enum dd_method *out);
bool dd_cutoff_read(const char *word, enum dd_cutoff *out);

/* True if the rule needs tomorrow's minimum. */
bool dd_is_double(enum dd_method m);
/* True if the rule looks at its cap. */
bool dd_uses_cap(const struct dd_rule *r);
/* One sentence that is wrong with the rule, or NULL: base not below cap, a cutoff with
 * an average, a number out of -60..150 or none at all. Given through _(). */
const char *dd_rule_fault(const struct dd_rule *r);

/* One day. a <= b. next_a: tomorrow's minimum for the double methods; NAN when it is
 * not known, then the single method stands in. It may lie above b. With double methods
 * the floor of DD_INTERMEDIATE holds for each half of the day. A day that stands
 * exactly at the cap is not above it; DD_VERTICAL jumps there. */
double dd_day(const struct dd_rule *r, double a, double b, double next_a);

/* One day's temperatures, in the unit of the rule; NAN = not known. A day with one of
 * them unknown or with its minimum above its maximum is a missing day. */
struct dd_temps {
	int32_t day;
	double min, max;
	bool filled; /* put in from neighbours, not measured */
};

struct dd_sum {
	double sum;      /* lower bound when days are missing */
	int32_t days;    /* with a degree-day value */
	int32_t missing; /* without */
	int32_t filled;
	int32_t single_days; /* of a double method: fell back to the single one */
};

/* Temperatures sorted by day, at most one entry a day (days that are not there are
 * missing), and the days that are summed, both included. An entry after `last` may
 * still give the tomorrow of a double method. */
struct dd_span {
	const struct dd_temps *temps; /* borrowed */
	size_t n;
	int32_t first, last; /* nothing is summed if either is DAY_NONE */
};

/* Is told every day of a span in turn: its temperatures (NAN where there are none), its
 * degree-days (NAN when missing) and the sum so far. */
typedef void dd_each(
	void *arg, const struct dd_temps *t, double dd, const struct dd_sum *sum);

/* each may be NULL. */
struct dd_sum dd_total(
	const struct dd_rule *r, const struct dd_span *span, dd_each *each, void *arg);

/* First day of the span on which the running sum is at or above target; DAY_NONE if
 * none. *missing (may be NULL): days missing up to then, that day included (all of them
 * if none), so that the day may be earlier in truth. */
int32_t dd_reaches(const struct dd_rule *r, const struct dd_span *span, double target,
	int32_t *missing);

/* Fills gaps of at most max_days missing days in a row by the mean of the known day
 * before and the one after, and marks them; what a day has of its own stays, and a day
 * that would then have its minimum above its maximum stays missing. out gets the days
 * of temps and the filled ones; it has room for every day from the first of temps to
 * the last. Returns how many days were filled. */
size_t dd_fill(const struct dd_temps *temps, size_t n, int32_t max_days,
	struct dd_temps *out, size_t *n_out);

#endif
