/* answering.h - what was decided about an alert, typed in the message line: one digit
 * and a line, which may stay empty; before the digit - and + move the day of it. */
#ifndef SCREEN_ANSWERING_H
#define SCREEN_ANSWERING_H

#include "answers/alerts.h"
#include "screen/line.h"
#include "screen/prompt.h"

struct answering {
	enum { ANSWERING_OFF, ANSWERING_WHAT, ANSWERING_LINE } stage;
	enum decision decision;
	struct alert alert; /* as it was when this began; the list may be read anew */
	int32_t on;         /* the day of the decision */
	bool moved;         /* it was moved by hand */
	char text[NOTE_BYTES];
	size_t at; /* bytes of it in front of the cursor */
};

/* True if `a` is the alert that is answered. */
bool answering_is_of(const struct answering *s, const struct alert *a);
/* Begins with what the alert has already. */
void answering_start(struct answering *a, const struct alert *alert);
/* While it is on every key goes here. WANT_ANSWER: .by is the decision, .day its day,
 * from the alert's to today, .words.note the line. Esc leaves the alert as it was. */
struct wish answering_key(struct answering *a, struct input in, struct message *m);
/* The message line while it is on. Returns the column of the cursor there. */
int answering_say(const struct answering *a, int cols, struct message *m);
/* The keys of the key line: what answers, or else those of the page. */
struct key_rows answering_keys(const struct answering *a, struct key_rows page);

#endif
