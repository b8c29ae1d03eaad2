/* chooser.h - a value chosen from a list: turned through, or narrowed by typing. */
#ifndef SCREEN_CHOOSER_H
#define SCREEN_CHOOSER_H

#include "answers/entry.h"
#include "screen/line.h"

struct chooser {
	const struct entry_choices *choices; /* borrowed; NULL: none */
	bool open;                           /* the list is shown */
	char typed[ENTRY_CELL];              /* what narrows it */
	size_t at;
	int picked; /* among those that match; -1: what is typed as it is */
};

/* Those that match what is typed: first those that begin with it, then those that
 * contain it. NULL beyond the last. */
const struct entry_choice *chooser_match(const struct chooser *s, size_t k);
size_t chooser_matches(const struct chooser *s);
/* The one that is picked; NULL: none. */
const struct entry_choice *chooser_picked(const struct chooser *s);

/* The choice after (by 1) or before (-1) the one of this text; wraps; `empty`: an empty
 * one is among them. "" when there is none. */
const char *chooser_turn(const struct chooser *s, const char *text, int by, bool empty);
/* The choice of this very text, in either case of letters; NULL: none. */
const struct entry_choice *chooser_find(const struct chooser *s, const char *text);

/* For the key line of a page that shows a list alone: Enter, what picks now, Esc; Esc
 * alone where nothing matches. */
struct key_rows chooser_keys(const struct chooser *s);
/* Says that nothing is called what is typed, if that is so. */
void chooser_say_none(const struct chooser *s, struct message *m);

/* Opens the list, narrowed by a first character (0: none). */
void chooser_open(struct chooser *s, uint32_t ch, struct message *m);
void chooser_close(struct chooser *s);
/* A key while the list is open: Up, Down, Left, Right pick, before anything is typed
 * + and - too; characters narrow. False: it is for the page (Enter, Tab, Esc). */
bool chooser_key(struct chooser *s, struct input in, struct message *m);

/* The list in rows first..last from column col on. */
void chooser_draw(
	const struct chooser *s, struct canvas *c, int first, int last, int col);

#endif
