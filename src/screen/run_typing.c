#include "screen/run_typing.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/run_entry.h"

#include <stdio.h>
#include <string.h>

enum { DATE_FAR_DAYS = 60 };

static const struct {
	const char *prompt; /* N_() */
	const char *only;   /* the characters it takes; NULL: any */
	size_t bytes;       /* with the NUL */
} lines[] = {
	[TYPING_COUNT] = { "", "", 1 },
	[TYPING_FEMALES] = { N_("females: "), "0123456789", 5 },
	[TYPING_OTHERS] = { N_("other moths: "), "0123456789", 5 },
	[TYPING_NOTE] = { N_("note: "), NULL, NOTE_BYTES },
	[TYPING_DATE] = { N_("date of the run: "), "0123456789-", 11 },
	[TYPING_SCOUT] = { N_("scout: "), NULL, SCOUT_BYTES },
};

const char *typing_prompt(enum typing typing)
{
	return _(lines[typing].prompt);
}

static void stop(struct run_page *p)
{
	p->typing = TYPING_COUNT;
	p->line[0] = '\0';
	p->fresh = p->asked_date = false;
}

void typing_start(struct run_page *p, enum typing typing, const struct run_trap *t)
{
	struct run_entry *e = &p->entry;
	const char *there = typing == TYPING_NOTE      ? e->note
			    : typing == TYPING_SCOUT   ? p->scout
			    : typing == TYPING_FEMALES ? e->females
			    : typing == TYPING_OTHERS  ? e->others
						       : "";

	if (t && !e->touched)
		*e = run_entry_start(t);
	p->typing = typing;
	text_copy(p->line, sizeof p->line, there);
	p->fresh = there[0] && typing != TYPING_NOTE;
	p->asked_date = false;
	if (p->fresh)
		message_set(&p->message, false,
			_("Typing replaces it, Backspace edits it."));
	else if (there[0])
		message_set(&p->message, false, _("What you type is added to it."));
}

static void add_char(struct run_page *p, uint32_t ch)
{
	const char *only = lines[p->typing].only;
	size_t at = p->fresh ? 0 : strlen(p->line), n = 0;
	char text[5];

	n = text_encode(ch, text);
	if (text_control(ch) || (only && (ch > 0x7F || !strchr(only, (int)ch))))
		message_set(&p->message, true,
			_("Only digits here: Enter ends it, Esc drops it."));
	else if (at + n >= lines[p->typing].bytes)
		message_set(&p->message, true, _("No more fits here."));
	else {
		memcpy(p->line + at, text, n + 1);
		p->fresh = false;
	}
}

static void erase_char(struct run_page *p)
{
	text_erase_last(p->line);
	p->fresh = false;
}

bool typing_date(const char *text, int32_t today, int32_t *day, struct message *m)
{
	char iso[DAY_ISO_SIZE];

	if (!day_parse(text, day))
		*day = day_typed(text, today);
	day_iso(today, iso);
	if (*day == DAY_NONE)
		message_set(m, true, _("%s is no date: write %s, or %s, or %s."), text,
			iso, iso + 5, iso + 8);
	else if (*day > today)
		message_set(m, true, _("%s lies ahead: today is %s."), text, iso);
	return *day != DAY_NONE && *day <= today;
}

void typing_short_date(int32_t day, int32_t today, char out[static DAY_ISO_SIZE])
{
	static const size_t start[] = { 8, 5, 0 };
	char iso[DAY_ISO_SIZE];

	day_iso(day, iso);
	for (size_t i = 0; i < sizeof start / sizeof *start; i++) {
		text_copy(out, DAY_ISO_SIZE, iso + start[i]);
		if (start[i] == 0 || day_typed(out, today) == day)
			return;
	}
}

/* Once, of a date that may be a slip of the finger. */
static bool asks_date(struct run_page *p, int32_t day)
{
	char text[DAY_TEXT_SIZE];

	if (p->asked_date || p->run->today - day <= DATE_FAR_DAYS)
		return false;
	day_long(day, text, sizeof text);
	p->asked_date = true;
	p->fresh = true;
	message_set(&p->message, false,
		_("Run of %s, %d days back? Enter once more goes there."), text,
		(int)(p->run->today - day));
	return true;
}

static struct wish take_date(struct run_page *p)
{
	struct wish w = page_wish(WANT_RUN_DAY);
	char text[DAY_TEXT_SIZE];

	if (p->line[0] == '\0') {
		stop(p);
		return page_wish(WANT_NOTHING);
	}
	if (!typing_date(p->line, p->run->today, &w.day, &p->message)) {
		p->fresh = true;
		return page_wish(WANT_NOTHING);
	}
	if (asks_date(p, w.day))
		return page_wish(WANT_NOTHING);
	w.farm = p->run->farm;
	stop(p);
	day_long(w.day, text, sizeof text);
	message_set(&p->message, false, _("This is the run of %s."), text);
	return w;
}

static void take_line(struct run_page *p, const struct run_trap *t)
{
	struct run_entry start = run_entry_start(t), *e = &p->entry;

	if (p->typing == TYPING_NOTE)
		text_copy(e->note, sizeof e->note, p->line);
	else if (p->typing == TYPING_FEMALES)
		text_copy(e->females, sizeof e->females, p->line);
	else if (p->typing == TYPING_OTHERS)
		text_copy(e->others, sizeof e->others, p->line);
	else
		text_copy(p->scout, sizeof p->scout, p->line);
	e->touched = !run_entry_same(e, &start);
	stop(p);
}

struct wish typing_key(struct run_page *p, const struct run_trap *t, struct input in)
{
	if (in.kind != INPUT_ENTER)
		p->asked_date = false;
	if (in.kind == INPUT_CHAR)
		add_char(p, in.ch);
	else if (in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE)
		erase_char(p);
	else if (in.kind == INPUT_ESC) {
		stop(p);
		message_set(&p->message, false, _("Left as it was."));
	} else if (in.kind == INPUT_ENTER && p->typing == TYPING_DATE)
		return take_date(p);
	else if (in.kind == INPUT_ENTER)
		take_line(p, t);
	else
		message_set(
			&p->message, false, _("Enter ends the line, Esc drops it."));
	return page_wish(WANT_NOTHING);
}
