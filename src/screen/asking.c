#include "screen/asking.h"

#include "base/words.h"

struct wish asking_start(struct asking *a, struct wish w)
{
	a->wish = w;
	return page_wish(WANT_NOTHING);
}

bool asking_key(struct asking *a, struct input in, struct message *m, struct wish *w)
{
	struct wish asked = a->wish;

	a->wish = page_wish(WANT_NOTHING);
	if (asked.want == WANT_NOTHING ||
		(in.kind != INPUT_ENTER && in.kind != INPUT_ESC))
		return false;
	*w = in.kind == INPUT_ENTER ? asked : page_wish(WANT_NOTHING);
	if (in.kind == INPUT_ESC)
		message_set(m, false, _("Left as it was."));
	return true;
}

struct key_rows asking_keys(const struct asking *a, struct key_rows page)
{
	return a->wish.want != WANT_NOTHING ? prompt_keys(PROMPT_YES) : page;
}
