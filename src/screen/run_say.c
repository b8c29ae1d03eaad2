#include "screen/run_say.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/frame.h"
#include "screen/prompt.h"
#include "screen/run_entry.h"
#include "screen/run_typing.h"

#include <stdio.h>
#include <string.h>

enum { STATUS_GAP = 3, DOT_COLS = 3 };

/* "Fri" of "Fri 22 May": enough for a day or two before the run. */
static void add_weekday(int32_t day, char out[static RUN_VISIT])
{
	char text[DAY_TEXT_SIZE];
	size_t n = strlen(out);

	day_short(day, text, sizeof text);
	snprintf(out + n, RUN_VISIT - n, " %.*s", (int)strcspn(text, " "), text);
}

void run_say_visit(const struct run_trap *t, int32_t day, char out[static RUN_VISIT])
{
	text_copy(out, RUN_VISIT, t->open ? "" : t->visit_text);
	if (!t->open && !run_entry_corrects(t, day))
		add_weekday(t->visit.day, out);
}

/* What was done there, and what of it stands in the row. */
static void say_done(const struct run_trap *t, char *out, size_t size)
{
	static const char *const done[OUTCOME_COUNT] = {
		[OUTCOME_HUNG] = N_("hung"),
		[OUTCOME_COUNTED] = N_("counted"),
		[OUTCOME_FLOOR] = N_("counted"),
		[OUTCOME_SKIPPED] = N_("skipped"),
		[OUTCOME_SPOILED] = N_("spoiled"),
		[OUTCOME_MISSING] = N_("missing"),
		[OUTCOME_PULLED] = N_("pulled"),
	};
	char day[DAY_TEXT_SIZE];

	day_short(t->visit.day, day, sizeof day);
	if (t->visit.count == COUNT_NONE)
		snprintf(out, size, _("%s on %s"), _(done[t->visit.outcome]), day);
	else
		snprintf(out, size, _("%s on %s (%s)"), _(done[t->visit.outcome]), day,
			t->visit_text);
}

void run_say_new(const struct run_page *p, const struct run_trap *t, struct message *m)
{
	char done[SAY_LINE], date[DAY_ISO_SIZE], said[sizeof m->text];

	text_copy(said, sizeof said, m->text);
	say_done(t, done, sizeof done);
	typing_short_date(t->visit.day, p->run->today, date);
	if (p->cols && p->cols < FRAME_WIDE)
		message_set(m, false,
			_("Trap %s: %s. This is a new visit; Esc and t %s correct that "
			  "one."),
			t->label, done, date);
	else
		message_set(m, false,
			_("Trap %s was %s. This is a new visit; Esc and t %s go to "
			  "that run to correct it.%s%s"),
			t->label, done, date, said[0] ? " " : "", said);
}

const char *run_say_open(const struct run_trap *t)
{
	return t->barred[0] ? t->barred : t->service;
}

void run_say_unchanged(const struct run_trap *t, struct message *m)
{
	char kept[sizeof m->text];
	bool looked = t->visit.outcome == OUTCOME_COUNTED ||
		      t->visit.outcome == OUTCOME_FLOOR;

	if (!looked || !(t->lure_due || t->card_due))
		return;
	text_copy(kept, sizeof kept, m->text);
	message_set(m, false,
		t->lure_due && t->card_due
			? _("%s  Not changed: %s; on it again * and + do.")
		: t->lure_due ? _("%s  Not changed: %s; on it again * does.")
			      : _("%s  Not changed: %s; on it again + does."),
		kept, t->service);
}

static void say_left(const struct run *r, char *out, size_t size)
{
	char lures[32] = "", cards[32] = "";

	if (r->lures_left > 0)
		snprintf(lures, sizeof lures,
			r->lures_left == 1 ? _("%d lure") : _("%d lures"),
			r->lures_left);
	if (r->cards_left > 0)
		snprintf(cards, sizeof cards,
			r->cards_left == 1 ? _("%d card") : _("%d cards"),
			r->cards_left);
	out[0] = '\0';
	if (lures[0] || cards[0])
		snprintf(out, size,
			r->done < (int)r->n ? _(" \u00b7 left to bring: %s%s%s")
					    : _(" \u00b7 not changed: %s%s%s"),
			lures, lures[0] && cards[0] ? ", " : "", cards);
}

void run_say_status(const struct run_page *p, int cols, char *out, size_t size)
{
	const struct run *r = p->run;
	char over[32] = "", left[128];

	say_left(r, left, sizeof left);
	if (r->over > 0)
		snprintf(over, sizeof over, _(" \u00b7 %d OVER"), r->over);
	snprintf(out, size, _("%d of %d done%s%s"), r->done, (int)r->n, over, left);
	if (text_cols(out) + text_cols(p->saved) + STATUS_GAP + 2 > cols)
		snprintf(out, size, _("%d of %d done%s"), r->done, (int)r->n, over);
}

/* Half an hour is a wrong hour: what does not fit whole is said in fewer words. */
static void say_barred(const struct run *r, int cols, char *out, size_t size)
{
	if (text_cols(r->barred_text) <= cols || r->barred_blocks == 0)
		text_copy(out, size, r->barred_text);
	else if (text_cols(r->barred_brief) <= cols)
		text_copy(out, size, r->barred_brief);
	else
		snprintf(out, size,
			ngettext("no entry to %d block: see its traps",
				"no entry to %d blocks: see their traps",
				(unsigned long)r->barred_blocks),
			r->barred_blocks);
}

/* Where nobody may go comes first: a narrow window cuts the end. */
void run_say_under(const struct run_page *p, int cols, char *out, size_t size)
{
	char today[DAY_TEXT_SIZE], barred[SAY_LINE * 2];
	size_t n = 0;

	say_barred(p->run, cols - 2, barred, sizeof barred);
	if (barred[0] &&
		text_cols(barred) + text_cols(p->run->last_text) + DOT_COLS > cols - 2)
		text_copy(out, size, barred);
	else if (barred[0])
		snprintf(out, size, "%s \u00b7 %s", barred, p->run->last_text);
	else
		snprintf(out, size,
			cols >= FRAME_WIDE ? _("scout %s \u00b7 %s") : "%s \u00b7 %s",
			p->scout[0] ? p->scout : "-", p->run->last_text);
	n = strlen(out);
	day_short(p->run->today, today, sizeof today);
	if (n < size && p->run->day != p->run->today)
		snprintf(
			out + n, size - n, _(" \u00b7 back entry, today is %s"), today);
}

/* The end of what is typed, behind its prompt, in one line, and behind it what the
 * last key said. Returns the column of the cursor. */
static int say_typed(const struct run_page *p, int cols, struct message *m)
{
	return message_typed(m, &p->message, typing_prompt(p->typing), p->line, cols);
}

static void say_barred_trap(const struct run_trap *t, struct message *m)
{
	if (t->service[0])
		message_set(m, false, _("Trap %s: %s (the label is the law); %s"),
			t->label, t->barred, t->service);
	else
		message_set(m, false, _("Trap %s: %s (the label is the law)"), t->label,
			t->barred);
}

/* What its row has no room for; where nobody may go in, the caution with it. */
static void say_picked(const struct run_page *p, struct message *m)
{
	const struct run_trap *t = &p->run->traps[p->picked];

	if (t->open && t->barred[0])
		say_barred_trap(t, m);
	else if (t->open && t->service[0])
		message_set(m, false, _("Trap %s: %s"), t->label, t->service);
	else if (!t->open && strcmp(t->rule_text, "-") == 0)
		message_set(m, false, _("Trap %s: %s, %s"), t->label, t->week_says,
			t->verdict_text);
	else if (!t->open && t->lacks[0])
		message_set(m, false, _("Trap %s: %s, threshold %s: %s: %s"), t->label,
			t->week_says, t->rule_text, t->verdict_text, t->lacks);
	else if (!t->open)
		message_set(m, false, _("Trap %s: %s, threshold %s: %s"), t->label,
			t->week_says, t->rule_text, t->verdict_text);
}

static bool bars_picked(const struct run_page *p)
{
	const struct run_trap *t =
		p->picked < p->run->n ? &p->run->traps[p->picked] : NULL;

	return t && t->open && t->barred[0] && !p->entry.touched;
}

struct key_rows run_line_keys(const struct run_page *p)
{
	return p->typing == TYPING_COUNT ? run_page_keys() : prompt_keys(PROMPT_LINE);
}

int run_say_message(const struct run_page *p, int cols, bool is_cut, struct message *m)
{
	struct message own = { 0 };

	*m = p->message;
	if (p->typing != TYPING_COUNT)
		return say_typed(p, cols, m);
	if (!is_cut && !m->text[0] && bars_picked(p))
		say_picked(p, m);
	if (!is_cut || m->is_fault || (m->text[0] && p->entry.touched))
		return 0;
	say_picked(p, &own);
	if (m->text[0] && own.text[0] && p->run->traps[p->picked].open)
		message_set(m, false, "%s  %s", p->message.text, own.text);
	else if (!m->text[0])
		*m = own;
	return 0;
}
