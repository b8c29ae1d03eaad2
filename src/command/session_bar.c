/* session_bar.c - what is said of a block that somebody went into. */
#include "session_book.h"

#include "base/text.h"
#include "base/words.h"

void session_tell_bar(struct session *s, int64_t trap)
{
	struct message *m = session_message(s);
	char bar[SAY_LINE], said[sizeof m->text];

	entry_trap_bar(&s->log, trap, bar, sizeof bar);
	if (!bar[0] || m->is_fault)
		return;
	text_copy(said, sizeof said, m->text);
	message_set(m, false, _("Its block: %s. %s"), bar, said);
}
