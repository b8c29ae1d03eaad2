#include "screen/answering.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

static const char *const prompts[DECISION_COUNT] = {
	[DECISION_LOOKED] = N_("looked (Enter saves): "),
	[DECISION_TREATED] = N_("treated (Enter saves): "),
	[DECISION_LEFT] = N_("left as it was (Enter saves): "),
};

void answering_start(struct answering *a, const struct alert *alert)
{
	*a = (struct answering){ .stage = ANSWERING_WHAT, .name = alert->name };
	if (alert->is_answered)
		text_copy(a->text, sizeof a->text, alert->answer.note);
	a->at = strlen(a->text);
}

static struct wish keep(struct answering *a)
{
	struct wish w = page_wish(WANT_ANSWER);

	a->stage = ANSWERING_OFF;
	w.by = (int)a->decision;
	text_copy(w.words.note, sizeof w.words.note, a->text);
	text_trim(w.words.note);
	return w;
}

static void take_decision(struct answering *a, struct input in)
{
	if (in.kind != INPUT_CHAR || in.ch < '1' || in.ch >= '1' + DECISION_COUNT)
		return;
	a->decision = (enum decision)(in.ch - '1');
	a->stage = ANSWERING_LINE;
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
		message_set(m, false, _("1 looked, 2 treated, 3 left as it was: %s"),
			a->name);
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
