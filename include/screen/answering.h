/* answering.h - what was decided about an alert, typed in the message line: one digit
 * and a line, which may stay empty. */
#ifndef SCREEN_ANSWERING_H
#define SCREEN_ANSWERING_H

#include "answers/alerts.h"
#include "screen/line.h"

struct answering {
	enum { ANSWERING_OFF, ANSWERING_WHAT, ANSWERING_LINE } stage;
	enum decision decision;
	char text[NOTE_BYTES];
	size_t at;        /* bytes of it in front of the cursor */
	const char *name; /* of the alert; borrowed */
};

/* Begins with what the alert has already. */
void answering_start(struct answering *a, const struct alert *alert);
/* While it is on every key goes here. WANT_ANSWER: .by is the decision, .words.note the
 * line. Esc leaves the alert as it was. */
struct wish answering_key(struct answering *a, struct input in, struct message *m);
/* The message line while it is on. Returns the column of the cursor there. */
int answering_say(const struct answering *a, int cols, struct message *m);

#endif
