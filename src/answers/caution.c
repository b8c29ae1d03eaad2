/* caution.c - the cautions: in one place, so that page, paper and help say the same. */
#include "answers/say.h"

#include "base/words.h"

static const char *const cautions[] = {
	N_("This log shows what was counted and how it compares with numbers that its "
	   "user entered. It tells nobody to treat anything."),
	N_("Thresholds and timing are local: ask your extension service before you "
	   "rely on any. A count says little about one trap on one night, and no catch "
	   "does not mean no moths."),
	N_("The product label is the law. Treatments are for licensed people to decide "
	   "on and to carry out, by the label and the rules of the place."),
	N_("Stay out of a treated block until its re-entry interval is over, and wait "
	   "the whole preharvest interval before any pick."),
};

const char *say_caution(size_t i)
{
	return i < sizeof cautions / sizeof *cautions ? _(cautions[i]) : NULL;
}

const char *say_caution_short(void)
{
	return _("Counts and your own thresholds, no advice. The label is the law; ask "
		 "your extension service.");
}

const char *say_caution_acts(void)
{
	return _("The label is the law, and the log knows only what was entered. Stay "
		 "out until the re-entry interval is over; wait the whole preharvest "
		 "interval before any pick.");
}
