#include "screen/answering.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

static const char *const prompts[DECISION_COUNT] = {
	[DECISION_LOOKED] = N_("looked (Enter saves): "),
	[DECISION_TREATED] = N_("treated (Enter saves): "),
	[DECISION_LEFT] = N_("left as it was (Enter saves): "),
};

bool answering_is_of(const struct answering *s, const struct alert *a)
{
	const struct alert *of = &s->alert;

	return a->block == of->block && a->pest == of->pest && a->trap == of->trap &&
	       a->day == of->day;
}

void answering_start(struct answering *a, const struct alert *alert)
{
	*a = (struct answering){ .stage = ANSWERING_WHAT,
		.alert = *alert,
		.on = alert->is_answered ? alert->answer.on : alert->today };
	if (alert->is_answered)
		text_copy(a->text, sizeof a->text, alert->answer.note);
	a->at = strlen(a->text);
}

static struct wish keep(struct answering *a)
{
	struct wish w = page_wish(WANT_ANSWER);

	a->stage = ANSWERING_OFF;
	w.by = (int)a->decision;
	w.day = a->on;
	text_copy(w.words.note, sizeof w.words.note, a->text);
	text_trim(w.words.note);
	return w;
}

/* Decided before it is entered, but not before the catch. */
static void move_day(struct answering *a, int by)
{
	int32_t on = a->on + by;

	if (on < a->alert.day || on > a->alert.today)
		return;
	a->on = on;
	a->moved = true;
}

/* Another decision than the one before is one of today. */
static void take_decision(struct answering *a, struct input in)
{
	const struct alert *alert = &a->alert;

	if (in.kind == INPUT_CHAR && (in.ch == '-' || in.ch == '+'))
		move_day(a, in.ch == '+' ? 1 : -1);
	if (in.kind != INPUT_CHAR || in.ch < '1' || in.ch >= '1' + DECISION_COUNT)
		return;
	a->decision = (enum decision)(in.ch - '1');
	a->stage = ANSWERING_LINE;
	if (!a->moved && alert->is_answered && alert->answer.decision != a->decision)
		a->on = alert->today;
	if (a->on < alert->day)
		a->on = alert->day;
}

struct wish answering_key(struct answering *a, struct input in, struct message *m)
{
	struct line l = { a->text, sizeof a->text, a->at, false };

	if (in.kind == INPUT_ESC) {
		a->stage = ANSWERING_OFF;
		message_set(m, false, _("Left as it was."));
	} else if (a->stage == ANSWERING_WHAT) {
		take_decision(a, in);
	} else if (in.kind == INPUT_ENTER) {
		return keep(a);
	} else if (line_key(&l, in, m)) {
		a->at = l.at;
	}
	return page_wish(WANT_NOTHING);
}

int answering_say(const struct answering *a, int cols, struct message *m)
{
	const char *tail = a->text;
	uint32_t cp = 0;

	if (a->stage == ANSWERING_WHAT) {
		char day[DAY_TEXT_SIZE];
		day_short(a->on, day, sizeof day);
		message_set(m, false,
			_("1 looked, 2 treated, 3 left as it was, on %s (- the day "
			  "before): %s"),
			day, a->alert.name);
		return 1;
	}
	const char *prompt = _(prompts[a->decision]);
	int room = cols - 3 - text_cols(prompt);
	while (*tail && text_cols(tail) > (room > 0 ? room : 0) &&
		tail < a->text + a->at)
		tail += text_decode(tail, strlen(tail), &cp);
	message_set(m, m->is_fault, "%s%s%s%s", prompt, tail, m->text[0] ? "  " : "",
		m->text);
	char before[NOTE_BYTES];
	text_copy(before, sizeof before, tail);
	before[a->text + a->at - tail] = '\0';
	return 1 + text_cols(prompt) + text_cols(before);
}

struct key_rows answering_keys(const struct answering *a, struct key_rows page)
{
	if (a->stage == ANSWERING_OFF)
		return page;
	return prompt_keys(a->stage == ANSWERING_WHAT ? PROMPT_ANSWER : PROMPT_SAVE);
}
