#include "answers/alerts.h"

#include "alerts_parts.h"
#include "base/buf.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "entry_bar_parts.h"

#include <stdio.h>
#include <stdlib.h>

static const char *const decisions[DECISION_COUNT] = {
	[DECISION_LOOKED] = N_("looked"),
	[DECISION_TREATED] = N_("treated"),
	[DECISION_LEFT] = N_("left as it was"),
};

static int32_t last_closed(const struct diary *d, int32_t day)
{
	size_t n = d->n;

	while (n > 0 && d->items[n - 1].to > day)
		n--;
	return n > 0 ? d->items[n - 1].to : DAY_NONE;
}

/* The last clearing up to `day` of the trap, or of the block's traps of the pest. */
static int32_t last_cleared(
	const struct log *l, const struct verdict_row *row, int32_t day)
{
	int32_t last = DAY_NONE;

	if (row->trap != NO_TRAP)
		return last_closed(&l->diaries[row->trap], day);
	for (size_t i = 0; i < l->traps.n; i++) {
		const struct trap *t = &l->traps.items[i];
		int32_t closed;
		if (t->block != row->block || t->pest != row->pest)
			continue;
		closed = last_closed(&l->diaries[i], day);
		last = closed > last ? closed : last;
	}
	return last;
}

static void say_name(const struct log *l, const struct alert *a, int32_t read,
	char out[static SAY_LINE])
{
	const struct block *b = log_block(l, a->block);
	const struct pest *p = log_pest(l, a->pest);
	size_t trap = log_trap(l, a->trap);
	struct buf text = { 0 };

	if (b)
		bar_say_place(l, b, &text);
	buf_addf(&text, ", %s", p ? p->code : "");
	if (a->trap != 0)
		buf_addf(&text, _(", trap %s"),
			trap < l->traps.n ? l->traps.items[trap].label : "?");
	else if (read > 0)
		buf_addf(&text, _(", mean of %d"), (int)read);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

/* What a verdict of today would call missing was not missing on an earlier day. */
static bool waits_for_season(const struct judgement *j)
{
	return j->verdict == VERDICT_UNKNOWN &&
	       (j->lacking == LACKING_BIOFIX || j->lacking == LACKING_HEAT ||
		       j->lacking == LACKING_FLIGHT);
}

static void say_row(const struct log *l, const struct verdict_row *row, struct alert *a)
{
	bool over = row->judgement.verdict == VERDICT_OVER;
	char line[SAY_LINE];
	struct buf text = { 0 };

	say_verdict_line(l, row, line, sizeof line);
	if (over)
		say_amount(&row->judgement, a->amount);
	if (a->is_answered && waits_for_season(&row->judgement))
		buf_add(&text,
			_("the threshold looks at biofix, flight or degree-days; how "
			  "far they had come that day is not known now"));
	else if (row->rule == NO_RULE)
		buf_add(&text, _("no threshold holds for that day as they stand now"));
	else if (!over)
		buf_addf(&text, _("%s as counts and thresholds stand now: %s"),
			say_verdict(&row->judgement), line);
	else if (a->is_answered)
		buf_addf(&text, _("%s, as counts and thresholds stand now"), line);
	else
		buf_add(&text, line);
	text_copy(a->says, sizeof a->says, text.text);
	buf_free(&text);
}

static void say_decided(struct alert *a)
{
	char day[DAY_TEXT_SIZE];
	struct buf text = { 0 };

	day_short(a->answer.on, day, sizeof day);
	buf_addf(&text, "%s %s", _(decisions[a->answer.decision]), day);
	if (*a->answer.note)
		buf_addf(&text, ": %s", a->answer.note);
	text_copy(a->decided, sizeof a->decided, text.text);
	buf_free(&text);
}

static bool is_answer_to(const struct answer *x, const struct alert *a)
{
	return x->block == a->block && x->pest == a->pest && x->trap == a->trap &&
	       x->day == a->day;
}

static const struct answer *answer_to(const struct log *l, const struct alert *a)
{
	for (size_t i = 0; i < l->answers.n; i++)
		if (is_answer_to(&l->answers.items[i], a))
			return &l->answers.items[i];
	return NULL;
}

static int64_t trap_of(const struct log *l, const struct verdict_row *row)
{
	return row->trap == NO_TRAP ? 0 : l->traps.items[row->trap].id;
}

static void add_decided(
	struct buf *out, const char *says, enum decision decision, const char *day)
{
	if (decision == DECISION_TREATED)
		buf_addf(out, _("%s; treated %s"), says, day);
	else if (decision == DECISION_LOOKED)
		buf_addf(out, _("%s; looked %s"), says, day);
	else
		buf_addf(out, _("%s; left as it was %s"), says, day);
}

void alert_say_answered(
	const struct log *l, const struct verdict_row *row, char *out, size_t size)
{
	struct alert a = {
		.block = row->block, .pest = row->pest, .trap = trap_of(l, row)
	};
	char day[SAY_SHORT];
	struct buf text = { 0 };

	if (row->judgement.verdict != VERDICT_OVER || l->answers.n == 0)
		return;
	a.day = last_cleared(l, row, l->today);
	const struct answer *x = answer_to(l, &a);
	if (!x)
		return;
	say_day(x->on, day);
	add_decided(&text, out, x->decision, day);
	text_copy(out, size, text.text);
	buf_free(&text);
}

static struct alert *grow(struct alerts *out)
{
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	return &out->items[out->n++];
}

static bool is_listed(const struct alerts *out, const struct alert *a)
{
	for (size_t i = 0; i < out->n; i++)
		if (is_answer_to(&out->items[i].answer, a))
			return true;
	return false;
}

/* What is not over as things stand now ends a row of checks that were. */
static void set_before(
	const struct log *l, const struct verdict_row *row, struct alert *a)
{
	a->since = a->day;
	a->before = DAY_NONE;
	if (a->day != DAY_NONE && row->judgement.verdict == VERDICT_OVER)
		a->before = last_cleared(l, row, a->day - 1);
}

/* One that was OVER on a day, unless it was answered: then it comes with its answer. */
static void add_open(const struct log *l, const struct verdict_row *row, int32_t day,
	struct alerts *out)
{
	struct alert a = { .farm = row->farm,
		.block = row->block,
		.pest = row->pest,
		.trap = trap_of(l, row),
		.day = last_cleared(l, row, day),
		.checks = 1,
		.today = l->today,
		.answer = answer_blank,
		.tone = TONE_OVER };

	/* Told as over today already, if nothing was cleared since. */
	bool again = last_cleared(l, row, l->today) == a.day;
	if (answer_to(l, &a) || (again && is_listed(out, &a)))
		return;
	set_before(l, row, &a);
	a.answer.block = a.block;
	a.answer.pest = a.pest;
	a.answer.trap = a.trap;
	a.answer.day = a.day;
	a.answer.on = l->today;
	say_name(l, &a, row->judgement.read, a.name);
	say_row(l, row, &a);
	text_copy(a.decided, sizeof a.decided, _("open"));
	*grow(out) = a;
}

/* Whose alerts; 0: all. */
struct asked {
	int64_t farm, block;
};

/* Those that a day's verdicts call OVER. Of an earlier day only what was cleared on it,
 * since nothing else was new then. */
static void add_overs(const struct log *l, const struct asked *ask, int32_t day,
	bool by_clearing, struct alerts *out)
{
	struct verdict_rows v = { 0 };

	if (by_clearing)
		verdicts_cleared_on(l, ask->farm, ask->block, day, &v);
	else if (ask->block != 0)
		verdicts_of_block(l, ask->block, day, &v);
	else
		verdicts_of(l, ask->farm, 0, day, &v);
	for (size_t i = 0; i < v.n; i++)
		if (v.items[i].judgement.verdict == VERDICT_OVER &&
			(!by_clearing || last_cleared(l, &v.items[i], day) == day) &&
			verdicts_counts(&v, i))
			add_open(l, &v.items[i], day, out);
	free(v.items);
}

static bool is_cleared_on(const struct log *l, int64_t farm, int32_t day)
{
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].farm == farm &&
			last_closed(&l->diaries[i], day) == day)
			return true;
	return false;
}

/* What was over at an earlier clearing of the season stays open, whatever the next run
 * brought. */
static void add_earlier(
	const struct log *l, const struct farm *f, int64_t block, struct alerts *out)
{
	const struct asked ask = { f->id, block };
	int32_t start = day_season_start(l->today, f->season_start);

	for (int32_t day = l->today; day >= start; day--)
		if (is_cleared_on(l, f->id, day))
			add_overs(l, &ask, day, true, out);
}

static const struct verdict_row *row_of(
	const struct log *l, const struct answer *x, const struct verdict_rows *v)
{
	if (x->trap == 0)
		return verdicts_of_block_itself(v, x->block, x->pest);
	size_t trap = log_trap(l, x->trap);
	return trap < l->traps.n ? verdicts_worst_of_trap(v, (int)trap) : NULL;
}

static void add_answered(
	const struct log *l, const struct answer *x, int64_t farm, struct alerts *out)
{
	struct verdict_rows v = { 0 };
	struct alert a = { .farm = farm,
		.block = x->block,
		.pest = x->pest,
		.trap = x->trap,
		.day = x->day,
		.since = x->day,
		.checks = 1,
		.before = DAY_NONE,
		.today = l->today,
		.is_answered = true,
		.answer = *x,
		.tone = TONE_QUIET };

	verdicts_of(l, farm, x->pest, x->day, &v);
	const struct verdict_row *row = row_of(l, x, &v);
	say_name(l, &a, row ? row->judgement.read : 0, a.name);
	if (row) {
		set_before(l, row, &a);
		say_row(l, row, &a);
	}
	say_decided(&a);
	alert_say_after(l, x, a.after, sizeof a.after);
	free(v.items);
	*grow(out) = a;
}

static void add_answers(const struct log *l, int64_t farm, struct alerts *out)
{
	for (size_t i = 0; i < l->answers.n; i++) {
		const struct answer *x = &l->answers.items[i];
		const struct block *b = log_block(l, x->block);
		const struct farm *f = log_farm(l, b ? b->farm : 0);
		if (f && (farm == 0 || farm == f->id) && x->day <= l->today &&
			x->day >= day_season_start(l->today, f->season_start))
			add_answered(l, x, f->id, out);
	}
}

static int open_and_latest_first(const void *a, const void *b)
{
	const struct alert *x = a, *y = b;

	if (x->is_answered != y->is_answered)
		return x->is_answered - y->is_answered;
	if (x->day != y->day)
		return x->day > y->day ? -1 : 1;
	return x->block != y->block ? (x->block < y->block ? -1 : 1)
				    : (x->trap > y->trap) - (x->trap < y->trap);
}

static void sort(struct alerts *a)
{
	if (a->n > 1)
		qsort(a->items, a->n, sizeof *a->items, open_and_latest_first);
}

void alerts_of(const struct log *l, int64_t farm, struct alerts *out)
{
	const struct asked ask = { farm, 0 };

	out->n = 0;
	add_overs(l, &ask, l->today, false, out);
	for (size_t i = 0; i < l->farms.n; i++)
		if (farm == 0 || farm == l->farms.items[i].id)
			add_earlier(l, &l->farms.items[i], 0, out);
	add_answers(l, farm, out);
	alerts_join_spells(out);
	sort(out);
}

void alerts_of_block(const struct log *l, int64_t block, struct alerts *out)
{
	const struct block *b = log_block(l, block);
	const struct farm *f = log_farm(l, b ? b->farm : 0);
	const struct asked ask = { 0, block };

	out->n = 0;
	if (!f)
		return;
	add_overs(l, &ask, l->today, false, out);
	add_earlier(l, f, block, out);
	add_answers(l, f->id, out);
	alerts_join_spells(out);
	sort(out);
}

void alerts_answered(const struct log *l, int64_t farm, struct alerts *out)
{
	out->n = 0;
	add_answers(l, farm, out);
	sort(out);
}

void alerts_free(struct alerts *a)
{
	free(a->items);
	*a = (struct alerts){ 0 };
}
