#include "season/degree_days.h"

#include <assert.h>
#include <math.h>

static const double pi = 3.14159265358979323846;

/* What a day's curve has above a level: heat, the mean over the day of the degrees
 * above; share, the part of the day. */
struct above {
	double heat, share;
};

/* The sine stands above t within the angle theta from its peak on either side; the
 * tangent of half of it is the root of over / under. Written with b - t and t - a,
 * which are exact near the ends, so that days of next to no range come out right. */
static struct above sine_above(double a, double b, double t)
{
	double over = b - t, under = t - a;
	double root = sqrt(over * under);
	double theta = 2 * atan(root / under);

	return (struct above){ (theta * (over - under) / 2 + root) / pi, theta / pi };
}

static struct above triangle_above(double a, double b, double t)
{
	double share = (b - t) / (b - a);

	return (struct above){ (b - t) * share / 2, share };
}

/* t >= b is asked first: a day that stands still at t has nothing above it. */
static struct above above(enum dd_method m, double a, double b, double t)
{
	if (t >= b)
		return (struct above){ 0, 0 };
	if (t <= a)
		return (struct above){ (a + b) / 2 - t, 1 };
	if (m == DD_SINE || m == DD_DOUBLE_SINE)
		return sine_above(a, b, t);
	return triangle_above(a, b, t);
}

/* A curve from a up to b, or that far up and down again: the mean is the same. */
static double curve(const struct dd_rule *r, double a, double b)
{
	double dd = above(r->method, a, b, r->base).heat;

	if (r->cutoff == DD_NO_CUTOFF)
		return fmax(0, dd);
	struct above cap = above(r->method, a, b, r->cap);
	if (r->cutoff == DD_HORIZONTAL)
		dd -= cap.heat;
	else if (r->cutoff == DD_INTERMEDIATE)
		dd -= 2 * cap.heat;
	else
		dd -= cap.heat + (r->cap - r->base) * cap.share;
	return fmax(0, dd);
}

static double average(const struct dd_rule *r, double a, double b)
{
	bool raised = r->method == DD_AVERAGE_RAISED || r->method == DD_AVERAGE_CLAMPED;

	if (raised)
		a = fmax(a, r->base);
	if (r->method == DD_AVERAGE_CLAMPED)
		a = fmin(a, r->cap);
	if (dd_uses_cap(r))
		b = fmin(b, r->cap);
	return fmax(0, (a + b) / 2 - r->base);
}

double dd_day(const struct dd_rule *r, double a, double b, double next_a)
{
	assert(a <= b);
	if (r->method <= DD_AVERAGE_CAPPED)
		return average(r, a, b);
	double day = curve(r, a, b);
	if (!dd_is_double(r->method) || isnan(next_a))
		return day;
	return (day + curve(r, fmin(next_a, b), fmax(next_a, b))) / 2;
}
