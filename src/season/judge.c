#include "season/judge.h"

#include "judge_parts.h"

/* One week, or one span of nights, over the traps that a rule holds for. */
struct tally {
	struct bounds of_read, of_all; /* sums; of_all: the lower bounds of all traps */
	int32_t read;
	enum lacking lacking; /* of the traps read: why the bounds are not exact */
	struct part unread;   /* the first trap that was not read */
	struct part sum; /* nights (most), moths (all), from and to of those read */
	int32_t highest_x10;
	bool highest_open;
	bool hot_unread; /* a trap left out is over by itself already */
};

struct court {
	const struct rule *rule;
	const struct limits *limits;
	int32_t traps, weeks;
	bool block;
	struct tally tally[SPAN_WEEKS_MAX];
};

static bool is_weekly(enum measure m)
{
	return m == MEASURE_TRAP_WEEK || m == MEASURE_BLOCK_WEEK;
}

static bool is_nightly(enum measure m)
{
	return m == MEASURE_TRAP_NIGHT || m == MEASURE_BLOCK_NIGHT;
}

/* The evidence: what was counted, over which nights. */
static void tally_evidence(struct tally *t, const struct part *p)
{
	t->sum.moths += p->moths;
	t->sum.is_disputed = t->sum.is_disputed || p->is_disputed;
	if (p->nights > t->sum.nights)
		t->sum.nights = p->nights;
	if (p->long_nights > t->sum.long_nights)
		t->sum.long_nights = p->long_nights;
	if (p->from != DAY_NONE && (t->sum.from == DAY_NONE || p->from < t->sum.from))
		t->sum.from = p->from;
	if (p->to != DAY_NONE && p->to > t->sum.to)
		t->sum.to = p->to;
}

static void tally_read(struct tally *t, const struct part *p)
{
	int32_t x10 = ratio_x10(p->value.lo);

	t->of_read = bounds_add(t->of_read, p->value);
	t->read++;
	if (p->lacking != LACKING_NOTHING && t->lacking != LACKING_FLOOR)
		t->lacking = p->lacking;
	if (x10 >= t->highest_x10) {
		t->highest_open =
			p->value.open || (x10 == t->highest_x10 && t->highest_open);
		t->highest_x10 = x10;
	}
}

static bool passes(const struct rule *r, struct ratio x)
{
	int cmp = ratio_cmp(x, ratio_of(r->value_x100 < 0 ? 0 : r->value_x100, 100));

	return r->comparator == AT_LEAST ? cmp >= 0 : cmp > 0;
}

static void tally_add(struct tally *t, const struct part *p, const struct court *c)
{
	struct bounds least = { .lo = p->value.lo, .hi = p->value.lo };

	t->of_all = bounds_add(t->of_all, least);
	if (part_read(p) || !c->block)
		tally_evidence(t, p);
	if (part_read(p))
		tally_read(t, p);
	else if (t->unread.lacking == LACKING_NOTHING)
		t->unread = *p;
	t->hot_unread =
		t->hot_unread || (!part_read(p) && passes(c->rule, p->value.lo));
}

static bool enough_read(const struct court *c, const struct tally *t)
{
	return t->read > 0 && (int64_t)t->read * c->limits->read_den >=
				      (int64_t)c->traps * c->limits->read_num;
}

/* What is compared: the mean of the traps read, or what all have at least. */
static struct bounds value_of(
	const struct court *c, const struct tally *t, enum lacking *lacking)
{
	struct bounds all = bounds_over(t->of_all, c->traps);
	bool enough = enough_read(c, t);
	struct bounds mean = enough ? bounds_over(t->of_read, t->read) : all;

	*lacking = t->lacking;
	if (enough && t->hot_unread && !passes(c->rule, all.lo)) {
		*lacking = LACKING_TRAPS;
		mean.open = true;
		return mean;
	}
	if (enough && (passes(c->rule, mean.lo) || !passes(c->rule, all.lo)))
		return mean;
	*lacking = c->block ? LACKING_TRAPS : t->unread.lacking;
	all.hi = all.lo;
	all.open = true;
	return all;
}

static enum verdict verdict_of(const struct rule *r, struct bounds b)
{
	if (passes(r, b.lo))
		return VERDICT_OVER;
	return b.open || passes(r, b.hi) ? VERDICT_UNKNOWN : VERDICT_UNDER;
}

/* Near the threshold from below; a threshold of "more than 0" has no near. */
static bool reaches_near(const struct court *c, struct bounds b)
{
	struct ratio near =
		ratio_of((int64_t)c->rule->value_x100 * c->limits->near_x100, 10000);

	return c->rule->value_x100 > 0 &&
	       (b.open || passes(c->rule, b.hi) || ratio_cmp(b.hi, near) >= 0);
}

/* Each week must pass: one that fails decides, else one that is not known. */
static void decide(struct court *c, struct judgement *j)
{
	bool near = true, running = true;

	j->verdict = VERDICT_OVER;
	for (int32_t i = 0; i < c->weeks; i++) {
		enum lacking lacking;
		struct bounds b = value_of(c, &c->tally[i], &lacking);
		enum verdict v = verdict_of(c->rule, b);

		if (i == 0)
			j->value = b;
		near = near && reaches_near(c, b);
		running = running && v == VERDICT_OVER;
		j->weeks_over += running;
		if (v == VERDICT_UNKNOWN && j->lacking == LACKING_NOTHING) {
			j->lacking = lacking;
			j->unread = c->tally[i].unread.unread;
			j->unread_nights = c->tally[i].unread.unread_nights;
		}
		if (v == VERDICT_UNDER ||
			(v == VERDICT_UNKNOWN && j->verdict != VERDICT_UNDER))
			j->verdict = v;
	}
	if (j->verdict == VERDICT_UNDER && near)
		j->verdict = VERDICT_NEAR;
	if (j->verdict != VERDICT_UNKNOWN) {
		j->lacking = LACKING_NOTHING;
		j->unread = UNREAD_NO;
		j->unread_nights = 0;
	}
}

static void doubts_of_trap(struct judgement *j, const struct subject *s)
{
	if (s->lure != NULL && s->lure->overdue_days > 0) {
		j->doubts |= DOUBT_LURE;
		if (s->lure->overdue_days > j->lure_overdue_days)
			j->lure_overdue_days = s->lure->overdue_days;
	}
	if (s->card == NULL)
		return;
	if (s->card->moths > j->card_moths)
		j->card_moths = s->card->moths;
	if (s->card->mark >= CARD_CHANGE)
		j->doubts |= DOUBT_CARD;
	else if (s->card->state == SERVICE_OVERDUE)
		j->doubts |= DOUBT_CARD_AGE;
}

/* The evidence of all weeks together; moths and nights of a trap's or block's span. */
static void gather(struct court *c, struct judgement *j)
{
	const struct part *latest = &c->tally[0].sum;

	j->read = c->tally[0].read;
	j->traps = c->traps;
	j->moths = latest->moths;
	j->nights = latest->nights;
	j->from = latest->from;
	j->to = latest->to;
	j->highest_x10 =
		c->rule->measure == MEASURE_BLOCK_WEEK ? c->tally[0].highest_x10 : -1;
	j->highest_open = c->tally[0].highest_open;
	j->weeks = c->weeks;
	for (int32_t i = 0; i < c->weeks; i++) {
		const struct tally *t = &c->tally[i];
		j->week[i] = (struct seen){ t->sum.moths, t->sum.nights, t->sum.from,
			t->sum.to, t->read };
		if (t->sum.from != DAY_NONE &&
			(j->from == DAY_NONE || t->sum.from < j->from))
			j->from = t->sum.from;
		if (t->sum.to > j->to)
			j->to = t->sum.to;
		if (t->sum.long_nights > j->long_nights)
			j->long_nights = t->sum.long_nights;
		if (c->block && t->read < c->traps)
			j->doubts |= DOUBT_UNREAD;
		if (t->sum.is_disputed)
			j->doubts |= DOUBT_COUNTS;
	}
	if (j->long_nights > 0)
		j->doubts |= DOUBT_LONG;
}

static void hear(struct court *c, struct judgement *j, const struct subject *s,
	const struct moment *m)
{
	struct part parts[SPAN_WEEKS_MAX];
	bool changed = false, read = false;

	if (is_weekly(c->rule->measure)) {
		part_weeks(s->diary, c->weeks, m->day, c->limits, parts);
	} else {
		parts[0] = part_nights(c->rule, s->diary, m, c->limits);
		if (is_nightly(c->rule->measure))
			parts[0].value = bounds_over(
				parts[0].value, part_span(c->rule, NIGHTS_MAX));
	}
	for (int32_t i = 0; i < c->weeks; i++) {
		tally_add(&c->tally[i], &parts[i], c);
		changed = changed || part_read(&parts[i]) != part_read(&parts[0]);
		read = read || part_read(&parts[i]);
	}
	if (c->block && changed)
		j->doubts |= DOUBT_TRAPS;
	if (read) /* a lure casts no doubt on what was not counted */
		doubts_of_trap(j, s);
}

static struct court court_of(const struct rule *r, size_t n, const struct limits *l)
{
	struct court c = { .rule = r, .limits = l, .traps = (int32_t)n };
	const struct tally none = {
		.of_read = bounds_exact(0, 1),
		.of_all = bounds_exact(0, 1),
		.sum = { .from = DAY_NONE, .to = DAY_NONE },
		.highest_x10 = -1,
	};

	c.block = measure_of_block(r->measure);
	c.weeks = is_weekly(r->measure) ? part_span(r, SPAN_WEEKS_MAX) : 1;
	for (int32_t i = 0; i < c.weeks; i++)
		c.tally[i] = none;
	return c;
}

/* Whether the rule holds, or since when it sums up, is not known. */
static enum lacking waits_for(
	const struct rule *r, enum fit fit, const struct moment *m)
{
	if (fit != FIT_MAYBE)
		return part_waits(r, m);
	if (m->biofix == DAY_NONE)
		return LACKING_BIOFIX;
	return r->flight != 0 && m->flight == 0 ? LACKING_FLIGHT : LACKING_HEAT;
}

static struct judgement judge(const struct rule *r, enum fit fit,
	const struct subject *traps, size_t n, const struct moment *m,
	const struct limits *l)
{
	struct judgement j = {
		.value = bounds_from(0, 1),
		.from = DAY_NONE,
		.to = DAY_NONE,
		.traps = (int32_t)n,
		.highest_x10 = -1,
	};
	enum lacking waits = waits_for(r, fit, m);

	if (r->measure == MEASURE_NONE || fit == FIT_NO || n == 0)
		return j;
	if (part_waits(r, m) == LACKING_NOTHING) {
		struct court c = court_of(r, n, l);
		for (size_t i = 0; i < n; i++)
			hear(&c, &j, &traps[i], m);
		gather(&c, &j);
		decide(&c, &j);
	}
	if (waits != LACKING_NOTHING) {
		j.verdict = VERDICT_UNKNOWN;
		j.lacking = waits;
		j.unread = UNREAD_NO;
	}
	j.questionable = (j.verdict == VERDICT_UNDER || j.verdict == VERDICT_NEAR) &&
			 (j.doubts & (DOUBT_LURE | DOUBT_CARD | DOUBT_COUNTS)) != 0;
	return j;
}

struct judgement judge_trap(const struct rule *r, enum fit fit,
	const struct subject *trap, const struct moment *m, const struct limits *l)
{
	return judge(r, fit, trap, 1, m, l);
}

struct judgement judge_block(const struct rule *r, enum fit fit,
	const struct subject *traps, size_t n, const struct moment *m,
	const struct limits *l)
{
	return judge(r, fit, traps, n, m, l);
}

enum verdict verdict_worse(enum verdict a, enum verdict b)
{
	return a > b ? a : b;
}

bool judge_odd_count(
	int32_t count, const int32_t *earlier, size_t n, const struct limits *l)
{
	int32_t highest = COUNT_NONE;

	for (size_t i = 0; i < n; i++)
		if (earlier[i] > highest)
			highest = earlier[i];
	return highest >= 0 && count >= l->odd_count &&
	       count > (int64_t)highest * l->odd_times;
}
