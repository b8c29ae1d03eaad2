#include "screen/prompt.h"

#include "base/words.h"

enum { PROMPT_KEY = 1 }; /* no key is looked up here: an action for the table's sake */

#define KEY(kind, ch, key, word)                                                       \
	{                                                                              \
		{ kind, ch }, { INPUT_NONE, 0 }, PROMPT_KEY, key, word, ""             \
	}
#define ENTER(word) KEY(INPUT_ENTER, 0, "Enter", word)
#define ESC(word) KEY(INPUT_ESC, 0, "Esc", word)

static const struct key_row look[] = {
	ENTER(NC_("key", "open")),
	KEY(INPUT_UP, 0, "Up Down", NC_("key", "pick")),
	ESC(N_("show all")),
};
static const struct key_row none_found[] = { ESC(N_("show all")) };
static const struct key_row line[] = { ENTER(N_("take")), ESC(N_("drop")) };
static const struct key_row biofix[] = {
	ENTER(N_("take")),
	KEY(INPUT_CHAR, '-', "-", N_("take out")),
	ESC(N_("leave it")),
};
static const struct key_row yes[] = { ENTER(N_("yes")), ESC(N_("leave it")) };
static const struct key_row save[] = { ENTER(N_("save it")), ESC(N_("drop")) };
static const struct key_row over[] = { ENTER(N_("put yours in")),
	ESC(N_("show theirs")) };
static const struct key_row answer[] = {
	KEY(INPUT_CHAR, 0, "1-3", N_("decide")),
	KEY(INPUT_CHAR, '-', "- +", NC_("key", "day")),
	ESC(N_("leave it")),
};

#define ROWS(table)                                                                    \
	{                                                                              \
		table, sizeof table / sizeof *table                                    \
	}

struct key_rows prompt_keys(enum prompt prompt)
{
	static const struct key_rows all[PROMPT_COUNT] = {
		[PROMPT_LOOK] = ROWS(look),
		[PROMPT_NONE_FOUND] = ROWS(none_found),
		[PROMPT_LINE] = ROWS(line),
		[PROMPT_BIOFIX] = ROWS(biofix),
		[PROMPT_YES] = ROWS(yes),
		[PROMPT_SAVE] = ROWS(save),
		[PROMPT_OVER] = ROWS(over),
		[PROMPT_ANSWER] = ROWS(answer),
	};

	return all[prompt];
}
