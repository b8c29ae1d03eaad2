/* prompt.h - the key line while the message line asks something or is typed into: most
 * of the page's own keys do something else then. Under PROMPT_YES any key but these two
 * leaves the question and is the page's. */
#ifndef SCREEN_PROMPT_H
#define SCREEN_PROMPT_H

#include "screen/page.h"

enum prompt {
	PROMPT_LOOK,       /* letters narrow a list */
	PROMPT_NONE_FOUND, /* they left nothing of it */
	PROMPT_LINE,       /* a text, a number or a date */
	PROMPT_BIOFIX,     /* a date, or - to take out the one there is */
	PROMPT_YES,        /* Enter does what the message line names */
	PROMPT_SAVE,       /* what was typed is not saved */
	PROMPT_OVER,       /* somebody else changed the record meanwhile */
	PROMPT_ANSWER,     /* what was decided about an alert, and on which day */
	PROMPT_COUNT
};

/* What answers it; for the key line alone, without sentences for a help page. */
struct key_rows prompt_keys(enum prompt prompt);

#endif
