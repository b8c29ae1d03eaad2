#include "session.h"

#include "base/text.h"
#include "base/words.h"

#include <ctype.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FILES_MAX = 100 }; /* of one stem */

bool session_may_print(struct session *s)
{
	struct printing *p = &s->printing;
	struct err e = { 0 };

	if (p->job.lp) {
		message_set(session_message(s), true,
			_("lp has not taken the page before this one yet; press the key "
			  "again in a moment"));
		return false;
	}
	p->outcome = p->begun = (struct message){ 0 };
	if (papers_settle(&p->papers, s->book, &e))
		return true;
	message_set(session_message(s), true, "%s", e.text);
	return false;
}

void session_name_print(
	struct session *s, const char *what, const char *farm, const char *when)
{
	struct printing *p = &s->printing;
	char name[NAME_BYTES];

	text_copy(name, sizeof name, farm);
	for (char *c = name; *c; c++)
		if ((unsigned char)*c < 0x80 && !isalnum((unsigned char)*c))
			*c = '_';
	snprintf(p->stem, sizeof p->stem, "%s-%s-%s", what, name, when);
}

/* With -2, -3 .. behind the stem where a file of that name is. */
static void name_file(const struct printing *p, char *out, size_t size)
{
	const char *end = p->papers.is_pdf ? "pdf" : "txt";
	struct stat there;

	snprintf(out, size, "%s.%s", p->stem, end);
	for (int n = 2; n < FILES_MAX && lstat(out, &there) == 0; n++)
		snprintf(out, size, "%s-%d.%s", p->stem, n, end);
}

/* `why`: that it was not printed, as the sentence's begin. */
static void write_instead(struct printing *p, const char *why)
{
	char path[sizeof p->stem + 16];
	struct err e = { 0 };

	name_file(p, path, sizeof path);
	if (!out_file(path, &p->papers.bytes, &e))
		message_set(&p->outcome, true, "%s", e.text);
	else
		message_set(&p->outcome, true,
			p->what == PRINTED_SEASON ? _("%s: the season page is in %s")
						  : _("%s: the weekly sheet is in %s"),
			why, path);
}

static void say_begun(struct session *s)
{
	struct printing *p = &s->printing;

	message_set(&p->begun, false, "%s",
		p->what == PRINTED_SEASON
			? _("the season page is on its way to the printer")
			: _("the weekly sheet is on its way to the printer"));
	*session_message(s) = p->begun;
}

void session_print(struct session *s, bool made, const struct err *e)
{
	struct printing *p = &s->printing;
	struct err fault = { 0 };

	p->job.without_terminal = true;
	if (!made)
		message_set(&p->outcome, true, "%s", e->text);
	else if (printer_send(&p->job, &p->papers, NULL, &fault))
		say_begun(s);
	else
		write_instead(p, fault.kind == ERR_NOT_FOUND
					 ? _("not printed, as there is no lp here")
					 : _("not printed, as lp did not start"));
	session_look_at_printer(s);
}

static void say_took(struct printing *p, const char *says)
{
	if (*says)
		message_set(&p->outcome, false,
			p->what == PRINTED_SEASON
				? _("the printer has the season page: %s")
				: _("the printer has the weekly sheet: %s"),
			says);
	else
		message_set(&p->outcome, false, "%s",
			p->what == PRINTED_SEASON
				? _("the printer has the season page")
				: _("the printer has the weekly sheet"));
}

static void end_printing(struct printing *p, enum printer_state state, const char *says)
{
	char why[PRINTER_SAYS_BYTES];

	if (state == PRINTER_TOOK) {
		say_took(p, says);
		return;
	}
	snprintf(why, sizeof why, _("not printed (%.100s)"),
		*says ? says : _("lp does not say why"));
	write_instead(p, why);
}

void session_look_at_printer(struct session *s)
{
	struct printing *p = &s->printing;
	struct message *shown = session_message(s);
	char says[PRINTER_SAYS_BYTES];

	if (p->job.lp) {
		enum printer_state state = printer_look(&p->job, false, says);

		if (state != PRINTER_BUSY)
			end_printing(p, state, says);
	}
	/* What the page says itself, or asks, goes first. */
	if (!p->outcome.text[0] ||
		(shown->text[0] && strcmp(shown->text, p->begun.text) != 0))
		return;
	*shown = p->outcome;
	p->outcome = p->begun = (struct message){ 0 };
}

int session_hush(void)
{
	int nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
	int kept = nowhere < 0 ? -1 : fcntl(STDERR_FILENO, F_DUPFD_CLOEXEC, 3);

	if (kept >= 0)
		dup2(nowhere, STDERR_FILENO);
	if (nowhere >= 0)
		close(nowhere);
	return kept;
}

void session_unhush(int kept)
{
	if (kept < 0)
		return;
	dup2(kept, STDERR_FILENO);
	close(kept);
}
