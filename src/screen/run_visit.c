/* run_visit.c - what is typed on the Run page as a visit: may it be kept, what does it
 * say. */
#include "base/text.h"
#include "base/words.h"
#include "screen/run_entry.h"

#include <stdio.h>
#include <string.h>

static int32_t number(const char *digits)
{
	int32_t n = COUNT_NONE;

	text_int(digits, 0, COUNT_MAX, &n);
	return n;
}

/* The meaning of judge_odd_count, which stands in a layer that pages do not reach. */
static int32_t odd_against(
	const struct run_entry *e, const struct run_trap *t, const struct limits *l)
{
	int32_t highest = 0, count = number(e->digits);

	for (size_t i = 0; i < t->n_last_count; i++)
		if (t->last_count[i] > highest)
			highest = t->last_count[i];
	if (t->n_last_count == 0 || count < l->odd_count ||
		count <= (int64_t)highest * l->odd_times)
		return COUNT_NONE;
	return highest;
}

static bool is_odd(struct run_entry *e, const struct run_trap *t,
	const struct limits *l, struct message *m)
{
	int32_t highest = odd_against(e, t, l);

	if (e->asked || e->old_digits || highest == COUNT_NONE)
		return false;
	e->asked = true;
	message_set(m, false,
		_("%s moths? The highest of the last four counts was %d. Enter "
		  "once more keeps it."),
		e->digits, (int)highest);
	return true;
}

/* More than the card holds, as a plain count: some of them were likely guessed. */
static bool is_past_full(
	struct run_entry *e, const struct run_trap *t, struct message *m)
{
	if (e->asked || e->old_digits || e->outcome != OUTCOME_COUNTED ||
		t->card_full_at <= 0 || number(e->digits) <= t->card_full_at)
		return false;
	e->asked = true;
	message_set(m, false,
		_("%s on a card that is full at %d: + says at least, Enter again if "
		  "it was counted."),
		e->digits, (int)t->card_full_at);
	return true;
}

static bool counts(const struct run_entry *e)
{
	return outcome_facts[e->outcome].count != COUNT_NEVER;
}

bool run_entry_ready(struct run_entry *e, const struct run_trap *t,
	const struct limits *l, struct message *m)
{
	int32_t count = counts(e) ? number(e->digits) : COUNT_NONE;

	if (outcome_facts[e->outcome].count == COUNT_MUST && count == COUNT_NONE) {
		message_set(m, true,
			_("Type the count too (0 for none), or - to skip the trap."));
		return false;
	}
	if (count != COUNT_NONE && number(e->females) > count) {
		message_set(m, true,
			_("%s females of %s moths cannot be: f corrects it."),
			e->females, e->digits);
		return false;
	}
	return count == COUNT_NONE || (!is_odd(e, t, l, m) && !is_past_full(e, t, m));
}

bool run_entry_goes_in(const struct run_entry *e, const struct run_trap *t)
{
	bool was_out = t->open || t->visit.outcome == OUTCOME_SKIPPED;

	return t->entry != WAITING_FREE && was_out && e->outcome != OUTCOME_SKIPPED;
}

void run_entry_ask(struct run_entry *e, const struct run_trap *t, struct message *m)
{
	e->asked_entry = true;
	message_set(m, false,
		_("%s: %s. Enter once more keeps what is typed, and the trap's note "
		  "says so; e passes over the block."),
		t->block, t->barred);
}

static const char *outcome_text(const struct run_entry *e)
{
	if (e->outcome == OUTCOME_SKIPPED)
		return _("skip");
	if (e->outcome == OUTCOME_COUNTED || e->outcome == OUTCOME_FLOOR)
		return "";
	return _(outcome_word(e->outcome));
}

static void add(char *out, const char *gap, const char *text, const char *more)
{
	size_t n = strlen(out);

	if (text[0] || more[0])
		snprintf(out + n, RUN_ENTRY_TEXT - n, "%s%s%s", n ? gap : "", text,
			more);
}

static void add_flags(const struct run_entry *e, char *out)
{
	char flags[SAY_SHORT];

	snprintf(flags, sizeof flags, "%s%s%s", e->new_card ? C_("mark", "c") : "",
		e->new_lure ? C_("mark", "l") : "", e->stirred ? C_("mark", "s") : "");
	add(out, " ", flags, "");
	if (counts(e) && e->females[0])
		add(out, " ", "f", e->females);
	if (counts(e) && e->others[0])
		add(out, " ", "o", e->others);
}

void run_entry_text(const struct run_entry *e, char out[static RUN_ENTRY_TEXT])
{
	/* Of a spoiled one the message line says it: here its count must be whole. */
	const char *reason =
		e->outcome == OUTCOME_SPOILED ? "" : reason_word(e->reason);
	bool floor = e->outcome == OUTCOME_FLOOR || e->outcome == OUTCOME_SPOILED;

	out[0] = '\0';
	add(out, " ", outcome_text(e), "");
	add(out, " ", reason[0] ? _(reason) : "", "");
	if (counts(e))
		add(out, " ", e->digits, floor && e->digits[0] ? "+" : "");
	if (e->outcome != OUTCOME_SKIPPED && e->outcome != OUTCOME_MISSING)
		add_flags(e, out);
	if (e->note[0])
		add(out, " ", "n", "");
}

static int64_t kind_of(bool is_new, int64_t was, int64_t usual)
{
	if (!is_new)
		return 0;
	return was ? was : usual;
}

/* The lure changed that day stands in the same visit. Skipped, it needs a reason: else
 * it would be nothing but that lure again, and the trap open. */
static void add_serviced(const struct run_trap *t, struct visit *v)
{
	if (v->outcome != OUTCOME_MISSING)
		v->new_lure = t->serviced.new_lure;
	if (v->outcome == OUTCOME_SKIPPED && v->reason == REASON_NONE)
		v->reason = REASON_OTHER;
}

struct visit run_entry_visit(
	const struct run_entry *e, const struct run_trap *t, int32_t day)
{
	const struct visit *was = t->open ? NULL : &t->visit;
	bool looked = e->outcome != OUTCOME_SKIPPED && e->outcome != OUTCOME_MISSING;
	/* A lure changed between two runs stays one when its note is corrected. */
	bool service = was && visit_is_service(was) && e->outcome == OUTCOME_SKIPPED;
	struct visit v = { .trap = t->trap,
		.day = day,
		.outcome = e->outcome,
		.reason = e->reason,
		.count = counts(e) ? number(e->digits) : COUNT_NONE,
		.females = counts(e) ? number(e->females) : COUNT_NONE,
		.others = counts(e) ? number(e->others) : COUNT_NONE,
		.stirred = looked && e->stirred };

	v.new_card =
		kind_of(looked && e->new_card, was ? was->new_card : 0, t->card_kind);
	v.new_lure = kind_of((looked || service) && e->new_lure,
		was ? was->new_lure : 0, t->lure_kind);
	if (t->is_serviced && t->serviced.day == day)
		add_serviced(t, &v);
	return v;
}
