#include "screen/run_typing.h"

#include "base/text.h"
#include "base/words.h"
#include "screen/run_entry.h"

#include <string.h>

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
}

void typing_start(struct run_page *p, enum typing typing, const struct run_trap *t)
{
	p->typing = typing;
	p->line[0] = '\0';
	if (t && !p->entry.touched)
		p->entry = entry_start(t);
	if (typing == TYPING_NOTE)
		text_copy(p->line, sizeof p->line, p->entry.note);
	if (typing == TYPING_SCOUT)
		text_copy(p->line, sizeof p->line, p->scout);
}

static void add_char(struct run_page *p, uint32_t ch)
{
	const char *only = lines[p->typing].only;
	size_t at = strlen(p->line), n = 0;
	char text[5];

	n = text_encode(ch, text);
	if (text_control(ch) || (only && (ch > 0x7F || !strchr(only, (int)ch))))
		message_set(&p->message, true,
			_("Only digits here: Enter ends it, Esc drops it."));
	else if (at + n >= lines[p->typing].bytes)
		message_set(&p->message, true, _("No more fits here."));
	else
		memcpy(p->line + at, text, n + 1);
}

/* Takes back one character with the combining ones on it. */
static void erase_char(struct run_page *p)
{
	size_t at = 0, last = 0, n = 0;
	uint32_t cp = 0;

	while ((n = text_decode(p->line + at, strlen(p->line + at), &cp)) > 0) {
		if (text_char_cols(cp) > 0)
			last = at;
		at += n;
	}
	p->line[last] = '\0';
}

/* "7-14" or "14" in the year or month of today, or the one before. */
static int32_t short_date(const char *text, int32_t today)
{
	struct ymd now = day_to_ymd(today);
	const char *dash = strchr(text, '-');
	char head[4] = "";
	int32_t month = now.month, day = 0, got = DAY_NONE;

	if (dash && dash - text < 3)
		memcpy(head, text, (size_t)(dash - text));
	if (dash && !text_int(head, 1, 12, &month))
		return DAY_NONE;
	if (!text_int(dash ? dash + 1 : text, 1, 31, &day))
		return DAY_NONE;
	got = day_from_ymd(now.year, month, day);
	if (dash && (got == DAY_NONE || got > today))
		return day_from_ymd(now.year - 1, month, day);
	if (got != DAY_NONE && got <= today)
		return got;
	return now.month > 1 ? day_from_ymd(now.year, now.month - 1, day)
			     : day_from_ymd(now.year - 1, 12, day);
}

bool typing_date(const char *text, int32_t today, int32_t *day, struct message *m)
{
	char iso[DAY_ISO_SIZE];

	if (!day_parse(text, day))
		*day = short_date(text, today);
	day_iso(today, iso);
	if (*day == DAY_NONE)
		message_set(m, true, _("%s is no date: write %s, or %s, or %s."), text,
			iso, iso + 5, iso + 8);
	else if (*day > today)
		message_set(m, true, _("%s lies ahead: today is %s."), text, iso);
	return *day != DAY_NONE && *day <= today;
}

static struct wish take_date(struct run_page *p)
{
	struct wish w = page_wish(WANT_RUN_DAY);

	if (p->line[0] == '\0') {
		stop(p);
		return page_wish(WANT_NOTHING);
	}
	if (!typing_date(p->line, p->run->today, &w.day, &p->message))
		return page_wish(WANT_NOTHING);
	w.farm = p->run->farm;
	stop(p);
	return w;
}

static void take_line(struct run_page *p, const struct run_trap *t)
{
	struct entry start = entry_start(t), *e = &p->entry;

	if (p->typing == TYPING_NOTE)
		text_copy(e->note, sizeof e->note, p->line);
	else if (p->typing == TYPING_FEMALES)
		text_copy(e->females, sizeof e->females, p->line);
	else if (p->typing == TYPING_OTHERS)
		text_copy(e->others, sizeof e->others, p->line);
	else
		text_copy(p->scout, sizeof p->scout, p->line);
	e->touched = !entry_same(e, &start);
	stop(p);
}

struct wish typing_key(struct run_page *p, const struct run_trap *t, struct input in)
{
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
