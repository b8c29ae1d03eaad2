/* form_offer.c - after a new record the next one is offered. */
#include "base/words.h"
#include "form_parts.h"

static const struct key_row offer_rows[] = {
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, FORM_ENTER, "Enter", N_("save it"),
		"" },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, FORM_ESC, "Esc", N_("end"), "" },
	{ { INPUT_CHAR, '?' }, { INPUT_NONE, 0 }, FORM_HELP, "?", N_("keys"), "" },
	{ { INPUT_CHAR, '*' }, { INPUT_NONE, 0 }, FORM_TYPE, "*", N_("another block"),
		"" },
};

struct key_rows form_offer_keys(const struct form_page *p)
{
	size_t n = sizeof offer_rows / sizeof *offer_rows;

	return (struct key_rows){ offer_rows, p->can_block ? n : n - 1 };
}

void form_say_offer(const struct form_page *p, struct message *m)
{
	message_set(m, false,
		p->can_block
			? _("Enter saves %s as it stands, * begins another block, Esc "
			    "ends.")
			: _("Enter saves %s as it stands, Esc ends."),
		form_has(p, form_name_field(p)));
}

void form_page_offer(struct form_page *p, const struct entry *entry, const char *saved,
	bool can_block)
{
	form_take_entry(p, entry);
	p->offers = form_first_lacking(p) == p->n;
	p->can_block = can_block;
	p->offered_ms = p->now_ms;
	if (!p->offers)
		message_set(&p->message, false,
			_("Saved: %s. What the first trap is goes for the next too."),
			saved);
	else
		message_set(&p->message, false,
			can_block ? _("Saved: %s. Enter saves %s too, * begins another "
				      "block, Esc ends.")
				  : _("Saved: %s. Enter saves %s too, Esc ends."),
			saved, form_has(p, form_name_field(p)));
}

bool form_bounces(struct form_page *p, struct input in)
{
	int64_t since = p->now_ms - p->offered_ms;

	if (!p->offers || in.kind != INPUT_ENTER || since >= FORM_BOUNCE_MS)
		return false;
	p->offered_ms = p->now_ms;
	message_set(&p->message, false,
		_("%s is not saved: that Enter came with the one before. Enter saves "
		  "it, Esc ends."),
		form_has(p, form_name_field(p)));
	return true;
}
