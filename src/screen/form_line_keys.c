/* The key line of the form: what Enter does here and now, and how to choose. */
#include "base/words.h"
#include "form_parts.h"
#include "screen/prompt.h"

enum enter { ENTER_NEXT, ENTER_SAVE, ENTER_SURE, ENTER_LIST, ENTERS };

#define KEY(kind, ch, action, key, word)                                               \
	{                                                                              \
		{ kind, ch }, { INPUT_NONE, 0 }, action, key, word, ""                 \
	}
#define ENTER(word) KEY(INPUT_ENTER, 0, FORM_ENTER, "Enter", word)
#define PICK KEY(INPUT_CHAR, '+', FORM_TYPE, "+ -", NC_("key", "pick"))
#define TURN KEY(INPUT_RIGHT, 0, FORM_TYPE, "Left Right", NC_("key", "pick"))
#define ESC KEY(INPUT_ESC, 0, FORM_ESC, "Esc", N_("back"))
#define HELP KEY(INPUT_CHAR, '?', FORM_HELP, "?", N_("keys"))

enum { TEXT_KEYS = 3, CHOICE_KEYS = 4 };

static const struct key_row texts[ENTERS][TEXT_KEYS] = {
	[ENTER_NEXT] = { ENTER(N_("next")), ESC, HELP },
	[ENTER_SAVE] = { ENTER(N_("save")), ESC, HELP },
	[ENTER_SURE] = { ENTER(N_("save it")), ESC, HELP },
};
static const struct key_row choices[ENTERS][CHOICE_KEYS] = {
	[ENTER_NEXT] = { ENTER(N_("next")), PICK, ESC, HELP },
	[ENTER_SAVE] = { ENTER(N_("save")), PICK, ESC, HELP },
	[ENTER_SURE] = { ENTER(N_("save it")), PICK, ESC, HELP },
	[ENTER_LIST] = { ENTER(NC_("key", "list")), PICK, ESC, HELP },
};

/* Of a text that may be one of those that are known. */
static const struct key_row known[ENTERS][CHOICE_KEYS] = {
	[ENTER_NEXT] = { ENTER(N_("next")), TURN, ESC, HELP },
	[ENTER_SAVE] = { ENTER(N_("save")), TURN, ESC, HELP },
	[ENTER_SURE] = { ENTER(N_("save it")), TURN, ESC, HELP },
};

static bool has_known(const struct form_page *p)
{
	return !form_has(p, p->at)[0] && p->chooser.choices &&
	       p->chooser.choices->n > 0;
}

static enum enter enter_does(const struct form_page *p)
{
	if (p->doubted)
		return ENTER_SURE;
	if (form_only(p) && !form_has(p, p->at)[0] && form_column(p, p->at)->needed)
		return ENTER_LIST;
	return p->at + 1 < p->n ? ENTER_NEXT : ENTER_SAVE;
}

/* Behind what is typed ? goes into the field: the last of each table is left out. */
static struct key_rows of_field(
	const struct form_page *p, const struct key_row *rows, size_t n)
{
	return (struct key_rows){ rows, p->touched || p->chooser.open ? n - 1 : n };
}

struct key_rows form_line_keys(const struct form_page *p)
{
	if (p->offers)
		return form_offer_keys(p);
	if (p->elsewhere)
		return prompt_keys(PROMPT_OVER);
	if (p->asked)
		return prompt_keys(PROMPT_SAVE);
	if (p->chooser.open && form_only(p))
		return chooser_keys(&p->chooser);
	if (form_only(p))
		return of_field(p, choices[enter_does(p)], CHOICE_KEYS);
	if (has_known(p))
		return of_field(p, known[enter_does(p)], CHOICE_KEYS);
	return of_field(p, texts[enter_does(p)], TEXT_KEYS);
}
