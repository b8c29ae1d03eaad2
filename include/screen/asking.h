/* asking.h - a key that costs something where it was meant for another page says first
 * what it would do. */
#ifndef SCREEN_ASKING_H
#define SCREEN_ASKING_H

#include "screen/prompt.h"

struct asking {
	struct wish wish; /* WANT_NOTHING: nothing is asked */
};

/* Asks: the message says what Enter will do. What the page wants meanwhile: nothing. */
struct wish asking_start(struct asking *a, struct wish w);
/* Ends what was asked. True if the key says yes to it: *w is what the page wants then.
 * Esc leaves it and is used up as well; any other key leaves it and is the page's. */
bool asking_key(struct asking *a, struct input in, struct message *m, struct wish *w);
/* The keys of the key line: what answers it, or else those of the page. */
struct key_rows asking_keys(const struct asking *a, struct key_rows page);

#endif
