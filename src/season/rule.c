#include "season/rule.h"

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* "Apple" and "apple" are one crop. */
static bool same_crop(const char *a, const char *b)
{
	while (*a != '\0' && lower(*a) == lower(*b)) {
		a++;
		b++;
	}
	return lower(*a) == lower(*b);
}

static bool has_window(const struct rule *r)
{
	return r->from != 0 || r->to != 0;
}

static bool fits_where(const struct rule *r, const struct spot *s)
{
	const char *crop = s->crop == NULL ? "" : s->crop;

	return (r->pest == 0 || r->pest == s->pest) &&
	       (r->crop[0] == '\0' || same_crop(r->crop, crop)) &&
	       (r->condition == CONDITION_NONE || r->condition == s->condition) &&
	       (r->lure == 0 || r->lure == s->lure) &&
	       (r->place == PLACE_NONE || r->place == s->place) &&
	       (r->farm == 0 || r->farm == s->farm) &&
	       (r->block == 0 || r->block == s->block);
}

static enum fit fits_flight(const struct rule *r, const struct moment *m)
{
	if (r->flight == 0 || r->flight == m->flight)
		return FIT_YES;
	return m->flight == 0 ? FIT_MAYBE : FIT_NO;
}

static enum fit fits_dd(const struct rule *r, const struct moment *m)
{
	if (r->until_dd == 0)
		return FIT_YES;
	if (m->dd < 0)
		return FIT_MAYBE;
	if (m->dd >= r->until_dd)
		return FIT_NO;
	return m->dd_at_least ? FIT_MAYBE : FIT_YES;
}

enum fit rule_fits(const struct rule *r, const struct spot *s, const struct moment *m)
{
	enum fit flight = fits_flight(r, m), dd = fits_dd(r, m);

	if (!fits_where(r, s) || flight == FIT_NO || dd == FIT_NO)
		return FIT_NO;
	if (has_window(r) && !day_md_within(day_md(m->day), r->from, r->to))
		return FIT_NO;
	return flight == FIT_MAYBE || dd == FIT_MAYBE ? FIT_MAYBE : FIT_YES;
}

/* One field of two rules. */
struct field {
	bool a_sets, b_sets, same;
};

static struct field field_of(int64_t a, int64_t b)
{
	return (struct field){ a != 0, b != 0, a == b };
}

/* A rule for a block holds on that block's farm only, whether it says so or not. */
static int64_t farm_of(const struct rule *r, int64_t block, int64_t block_farm)
{
	if (r->farm == 0 && r->block != 0 && r->block == block)
		return block_farm;
	return r->farm;
}

bool rule_narrower(const struct rule *a, const struct rule *b, int64_t block_farm)
{
	const struct field fields[] = {
		{ a->crop[0] != '\0', b->crop[0] != '\0', same_crop(a->crop, b->crop) },
		field_of(a->condition, b->condition),
		field_of(a->lure, b->lure),
		field_of(a->place, b->place),
		field_of(farm_of(a, a->block, block_farm),
			farm_of(b, a->block, block_farm)),
		field_of(a->block, b->block),
		field_of(a->flight, b->flight),
		{ has_window(a), has_window(b), a->from == b->from && a->to == b->to },
		field_of(a->until_dd, b->until_dd),
	};
	bool more = false;

	for (size_t i = 0; i < sizeof fields / sizeof *fields; i++) {
		if (fields[i].b_sets && !fields[i].same)
			return false;
		more = more || (fields[i].a_sets && !fields[i].b_sets);
	}
	return more;
}

static bool replaced(const struct rule *rules, size_t n, size_t i, const struct spot *s,
	const struct moment *m)
{
	const struct rule *wide = &rules[i];

	for (size_t k = 0; k < n; k++) {
		const struct rule *r = &rules[k];
		if (k != i && r->pest == wide->pest && r->measure == wide->measure &&
			rule_fits(r, s, m) == FIT_YES &&
			rule_narrower(r, wide, r->block == s->block ? s->farm : 0))
			return true;
	}
	return false;
}

size_t rule_choose(const struct rule *rules, size_t n, const struct spot *s,
	const struct moment *m, size_t *out)
{
	size_t chosen = 0;

	for (size_t i = 0; i < n; i++)
		if (rule_fits(&rules[i], s, m) != FIT_NO &&
			!replaced(rules, n, i, s, m))
			out[chosen++] = i;
	return chosen;
}
