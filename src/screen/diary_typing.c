/* diary_typing.c - a visit of the diary under the hand: a run of one trap on its
 * day. */
#include "base/text.h"
#include "base/words.h"
#include "diary_parts.h"
#include "screen/run_entry.h"
#include "screen/run_keys.h"
#include "screen/run_typing.h"
#include "screen/why_page.h"

#include <string.h>

static const struct key_row rows[] = {
	{ { INPUT_CHAR, 0 }, { INPUT_NONE, 0 }, RUN_DIGIT, "0-9", N_("count"), "" },
	{ { INPUT_ENTER, 0 }, { INPUT_NONE, 0 }, RUN_KEEP, "Enter", N_("keep"), "" },
	{ { INPUT_CHAR, '-' }, { INPUT_NONE, 0 }, RUN_SKIP, "-", N_("skip"), "" },
	{ { INPUT_CHAR, '+' }, { INPUT_NONE, 0 }, RUN_PLUS, "+", N_("card"), "" },
	{ { INPUT_CHAR, '*' }, { INPUT_NONE, 0 }, RUN_LURE, "*", N_("lure"), "" },
	{ { INPUT_CHAR, '/' }, { INPUT_NONE, 0 }, RUN_SPOIL, "/", N_("spoiled"), "" },
	{ { INPUT_CHAR, '.' }, { INPUT_NONE, 0 }, RUN_NOTE, ".", N_("note"), "" },
	{ { INPUT_ESC, 0 }, { INPUT_NONE, 0 }, RUN_LEAVE, "Esc", N_("drop"), "" },
};

static struct key_rows visit_keys(const struct diary_page *p)
{
	if (p->typed.typing != TYPING_COUNT)
		return prompt_keys(PROMPT_LINE);
	return (struct key_rows){ rows, sizeof rows / sizeof *rows };
}

/* What was changed is read as help is. */
struct key_rows diary_line_keys(struct diary_page *p)
{
	switch (p->mode) {
	case DIARY_VISIT:
		return visit_keys(p);
	case DIARY_DAY:
		return prompt_keys(PROMPT_LINE);
	case DIARY_KIND:
		return chooser_keys(&p->kinds);
	case DIARY_CHANGES:
		return help_page_keys();
	default:
		return sift_keys(&p->sift, diary_page_keys());
	}
}

/* Rows later than the day. */
static size_t later_than(const struct trap_diary *d, int32_t day)
{
	size_t n = 0;

	while (n < d->n && d->rows[n].visit.day > day)
		n++;
	return n;
}

size_t diary_count(const struct diary_page *p)
{
	if (p->mode == DIARY_LIST)
		return p->sift.n;
	return p->diary->n + (p->mode == DIARY_VISIT && p->is_new);
}

size_t diary_place(const struct diary_page *p)
{
	return p->mode == DIARY_LIST ? sift_place(&p->sift, p->picked) : p->picked;
}

const struct diary_row *diary_row_at(const struct diary_page *p, size_t i)
{
	const struct trap_diary *d = p->diary;
	size_t at = later_than(d, p->day);

	if (p->mode == DIARY_LIST)
		return i < p->sift.n ? &d->rows[p->sift.rows[i]] : NULL;
	if (p->mode != DIARY_VISIT || !p->is_new || i < at)
		return i < d->n ? &d->rows[i] : NULL;
	return i == at ? NULL : &d->rows[i - 1];
}

/* Whether the trap hung before the visits from row `from` on were made. */
static bool hung_before(const struct trap_diary *d, size_t from)
{
	for (size_t i = from; i < d->n; i++) {
		enum outcome o = d->rows[i].visit.outcome;
		if (o != OUTCOME_SKIPPED)
			return o != OUTCOME_MISSING && o != OUTCOME_PULLED;
	}
	return d->hangs_over;
}

static void fill_counts(struct run_trap *t, const struct trap_diary *d, size_t from)
{
	t->n_last_count = 0;
	for (size_t i = from; i < d->n && t->n_last_count < RUN_LAST; i++) {
		const struct visit *v = &d->rows[i].visit;
		if (v->outcome == OUTCOME_COUNTED || v->outcome == OUTCOME_FLOOR)
			t->last_count[t->n_last_count++] = v->count;
	}
}

/* The kinds in the trap on a day are those of the visit then, or of the next one. */
static void fill_kinds(struct run_trap *t, const struct trap_diary *d, size_t at)
{
	if (at >= d->n)
		return;
	t->lure_kind = d->rows[at].lure_kind;
	t->card_kind = d->rows[at].card_kind;
	t->card_full_at = d->rows[at].card_full_at;
}

void diary_renew(struct diary_page *p)
{
	const struct trap_diary *d = p->diary;
	size_t at = later_than(d, p->day);
	bool there = at < d->n && d->rows[at].visit.day == p->day;

	p->is_new = !there;
	p->picked = at;
	p->trap = d->blank;
	if (p->day != d->today)
		p->trap.entry = WAITING_FREE; /* that bar is of today */
	p->trap.hangs = hung_before(d, there ? at + 1 : at);
	fill_counts(&p->trap, d, there ? at + 1 : at);
	fill_kinds(&p->trap, d, there || at == 0 ? at : at - 1);
	if (there) {
		p->trap.open = false;
		p->trap.visit = d->rows[at].visit;
		p->trap.words = d->rows[at].words;
	}
	p->run = (struct run){
		.day = p->day, .today = d->today, .traps = &p->trap, .n = 1
	};
}

void diary_open(struct diary_page *p, bool is_new)
{
	struct run_page fresh = { .limits = p->typed.limits };

	text_copy(fresh.scout, sizeof fresh.scout, p->typed.scout);
	p->typed = fresh;
	p->mode = DIARY_VISIT;
	p->is_new = is_new;
	diary_renew(p);
	run_page_show(&p->typed, &p->run, true);
	run_page_pick(&p->typed, p->trap.trap);
}

void diary_close(struct diary_page *p)
{
	p->mode = DIARY_LIST;
	p->is_new = false;
	diary_page_pick(p, p->day);
}

/* What a run does that has more than this visit is left to its page. */
static bool is_for_a_visit(int action)
{
	return action >= RUN_DIGIT && action <= RUN_ERASE && action != RUN_DATE;
}

static bool has_changed(const struct diary_page *p)
{
	const struct run_trap t = run_entry_trap(&p->trap, p->day);
	struct run_entry start = run_entry_start(&t);

	return p->typed.entry.touched && !run_entry_same(&p->typed.entry, &start);
}

static bool closes(const struct diary_page *p, int action)
{
	if (action == RUN_KEEP)
		return !p->is_new && !has_changed(p);
	return action == RUN_LEAVE && !p->typed.entry.touched;
}

struct wish diary_visit_key(struct diary_page *p, struct input in)
{
	int action = keys_find(run_page_keys(), in);
	bool typing = p->typed.typing != TYPING_COUNT;

	if (!typing && closes(p, action)) {
		diary_close(p);
		message_set(&p->message, false, _("Left as it was."));
		return page_wish(WANT_NOTHING);
	}
	if (!typing && action != RUN_LEAVE &&
		(!is_for_a_visit(action) ||
			(action == RUN_UNDO && !p->typed.entry.touched))) {
		message_set(&p->message, false,
			_("This visit is open: Enter keeps what is typed, Esc drops "
			  "it."));
		return page_wish(WANT_NOTHING);
	}
	bool asked = p->typed.entry.asked_entry;
	struct wish w = run_page_key(&p->typed, in);
	p->message = p->typed.message;
	if (!asked && p->typed.entry.asked_entry)
		message_set(&p->message, false,
			_("%s: %s; Enter again if it was read all the same, Esc drops "
			  "it."),
			p->trap.block, p->trap.barred);
	w.want = w.want == WANT_SAVE ? WANT_SAVE_PAST : WANT_NOTHING;
	if (w.want == WANT_SAVE_PAST)
		p->before = p->trap.open ? (struct visit){ 0 } : p->trap.visit;
	return w;
}

void diary_ask_day(struct diary_page *p)
{
	p->mode = DIARY_DAY;
	p->line[0] = '\0';
}

static void take_day(struct diary_page *p)
{
	const struct trap_diary *d = p->diary;
	int32_t day = DAY_NONE;

	if (!typing_date(p->line, d->today, &day, &p->message))
		return;
	if (day < d->first || day > d->last) {
		message_set(&p->message, true,
			_("%s is of another season: Esc, then y shows it."), p->line);
		return;
	}
	size_t at = later_than(d, day);
	bool there = at < d->n && d->rows[at].visit.day == day;
	p->day = day;
	diary_open(p, !there);
	if (there)
		message_set(&p->message, false,
			_("There is a visit on that day: type what is right, Enter "
			  "keeps it."));
	else
		message_set(&p->message, false,
			_("New visit: type the count (0 for none), or - for skipped."));
}

static void add_char(struct diary_page *p, uint32_t ch)
{
	size_t n = strlen(p->line);

	if ((ch < '0' || ch > '9') && ch != '-')
		message_set(&p->message, true,
			_("Only digits and - here: Enter ends it, Esc drops it."));
	else if (n + 1 < sizeof p->line) {
		p->line[n] = (char)ch;
		p->line[n + 1] = '\0';
	}
}

void diary_day_key(struct diary_page *p, struct input in)
{
	size_t n = strlen(p->line);

	if (in.kind == INPUT_CHAR)
		add_char(p, in.ch);
	else if ((in.kind == INPUT_BACKSPACE || in.kind == INPUT_DELETE) && n > 0)
		p->line[n - 1] = '\0';
	else if (in.kind == INPUT_ENTER && n > 0)
		take_day(p);
	else if (in.kind == INPUT_ENTER || in.kind == INPUT_ESC) {
		p->mode = DIARY_LIST;
		message_set(&p->message, false, _("No visit is added."));
	}
}
