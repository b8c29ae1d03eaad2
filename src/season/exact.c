#include "season/exact.h"

#include <assert.h>

/* Fractions that no longer fit are rounded to a binary one with this many places. */
enum { WIDE_BITS = 30 };

static int64_t gcd(int64_t a, int64_t b)
{
	while (b != 0) {
		int64_t rest = a % b;
		a = b;
		b = rest;
	}
	return a;
}

struct ratio ratio_of(int64_t num, int64_t den)
{
	assert(num >= 0 && den > 0);
	int64_t g = gcd(num, den);
	return (struct ratio){ .num = num / g, .den = den / g };
}

/* Compares whole parts, then the turned-over rests, as in Euclid's algorithm: no
 * product is formed, so nothing can overflow. */
int ratio_cmp(struct ratio a, struct ratio b)
{
	for (int sign = 1;; sign = -sign) {
		int64_t whole_a = a.num / a.den, whole_b = b.num / b.den;
		int64_t rest_a = a.num % a.den, rest_b = b.num % b.den;
		if (whole_a != whole_b)
			return whole_a < whole_b ? -sign : sign;
		if (rest_a == 0 || rest_b == 0)
			return rest_a == rest_b ? 0 : rest_a == 0 ? -sign : sign;
		a = (struct ratio){ a.den, rest_a };
		b = (struct ratio){ b.den, rest_b };
	}
}

struct bounds bounds_exact(int64_t num, int64_t den)
{
	return bounds_between(num, num, den);
}

struct bounds bounds_between(int64_t lo, int64_t hi, int64_t den)
{
	assert(lo <= hi);
	return (struct bounds){ .lo = ratio_of(lo, den), .hi = ratio_of(hi, den) };
}

struct bounds bounds_from(int64_t lo, int64_t den)
{
	struct ratio r = ratio_of(lo, den);
	return (struct bounds){ .lo = r, .hi = r, .open = true };
}

/* r rounded down or up to a fraction with a small denominator, by long division. */
static struct ratio widen(struct ratio r, bool up)
{
	int64_t whole = r.num / r.den;
	uint64_t rest = (uint64_t)(r.num % r.den), den = (uint64_t)r.den;
	int bits = WIDE_BITS;

	while (bits > 0 && whole >> (61 - bits) != 0)
		bits--;
	int64_t num = whole;
	for (int i = 0; i < bits; i++) {
		rest *= 2;
		num = num * 2 + (rest >= den);
		rest = rest >= den ? rest - den : rest;
	}
	return (struct ratio){ num + (up && rest != 0), (int64_t)1 << bits };
}

static bool sum_fits(struct ratio a, struct ratio b, struct ratio *out)
{
	int64_t g = gcd(a.den, b.den), left, right, num, den;

	if (__builtin_mul_overflow(a.num, b.den / g, &left) ||
		__builtin_mul_overflow(b.num, a.den / g, &right) ||
		__builtin_add_overflow(left, right, &num) ||
		__builtin_mul_overflow(a.den, b.den / g, &den))
		return false;
	*out = ratio_of(num, den);
	return true;
}

static bool ratio_sum(struct ratio a, struct ratio b, bool up, struct ratio *out)
{
	return sum_fits(a, b, out) || sum_fits(widen(a, up), widen(b, up), out);
}

struct bounds bounds_add(struct bounds a, struct bounds b)
{
	struct bounds sum = { .open = a.open || b.open };

	if (!ratio_sum(a.lo, b.lo, false, &sum.lo))
		sum.lo = ratio_cmp(a.lo, b.lo) < 0 ? b.lo : a.lo;
	sum.hi = sum.lo;
	if (!sum.open && !ratio_sum(a.hi, b.hi, true, &sum.hi))
		sum.open = true;
	return sum;
}

static struct ratio ratio_over(struct ratio r, int32_t n, bool up)
{
	int64_t g = gcd(r.num, n), den;

	if (g > 1 && !__builtin_mul_overflow(r.den, n / g, &den))
		return (struct ratio){ r.num / g, den };
	if (__builtin_mul_overflow(r.den, (int64_t)n, &den)) {
		r = widen(r, up);
		den = r.den * n;
	}
	return ratio_of(r.num, den);
}

struct bounds bounds_over(struct bounds a, int32_t n)
{
	assert(n > 0);
	return (struct bounds){ .lo = ratio_over(a.lo, n, false),
		.hi = ratio_over(a.hi, n, true),
		.open = a.open };
}

int32_t ratio_x10(struct ratio r)
{
	while (r.den > INT64_MAX / 64) {
		r.num /= 2;
		r.den /= 2;
	}
	int64_t whole = r.num / r.den, rest = r.num % r.den;
	if (whole >= INT32_MAX / 10)
		return INT32_MAX;
	return (int32_t)(whole * 10 + (rest * 20 + r.den) / (2 * r.den));
}
