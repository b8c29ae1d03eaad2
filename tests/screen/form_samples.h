/* form_samples.h - a form, and keys typed into it. */
#ifndef TESTS_SCREEN_FORM_SAMPLES_H
#define TESTS_SCREEN_FORM_SAMPLES_H

#include "screen/entry_samples.h"
#include "screen/form_page.h"

/* Shared by the tests: forms are too large to be copied about. */
static struct form_page form;

/* The loop's part: the pest is chosen from a list, the lure may be. */
static inline struct wish type(const char *keys)
{
	static struct entry_choices only, may;
	struct wish w = page_wish(WANT_NOTHING);

	only = sample_choices(true);
	for (; *keys; keys++) {
		w = form_page_key(&form, entry_key_of(*keys));
		if (w.want != WANT_FORM_FIELD)
			continue;
		may = sample_choices(false);
		form_page_choose(&form, form_page_field(&form) == SAMPLE_PEST   ? &only
					: form_page_field(&form) == SAMPLE_LURE ? &may
										: NULL);
	}
	return w;
}

static inline void open_form(const struct entry *r)
{
	static struct entry_choices only;

	only = sample_choices(true);
	form = (struct form_page){ 0 };
	form_page_show(&form, sample_family(), r);
	form_page_choose(&form, form_page_field(&form) == SAMPLE_PEST ? &only : NULL);
}

#endif
