/* merging_open.c - what merges left open, as questions with numbered answers. */
#include "merging_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void merging_open_free(struct open_matters *m)
{
	book_matters_free(&m->book);
	free(m->items);
	*m = (struct open_matters){ 0 };
}

static void add_choice(struct open_matter *m, const char *text)
{
	if (m->n_choices < MERGING_CHOICES)
		text_copy(m->choices[m->n_choices++], SAY_LINE, text);
}

static const char *who(const char *by)
{
	return *by ? by : _("somebody");
}

/* ", lure CM 1 mg"; ", no new lure" where it has none. */
static void add_kind(
	const char *name, const char *head, const char *none, struct buf *out)
{
	buf_add(out, *name ? head : none);
	buf_add(out, words_shipped(name));
}

static void add_number(int32_t n, const char *head, const char *none, struct buf *out)
{
	buf_add(out, n == COUNT_NONE ? none : head);
	if (n != COUNT_NONE)
		buf_addf(out, "%d", (int)n);
}

/* What a choice has otherwise than any other one that reads the same. */
struct differing {
	bool lure, card, females, others;
};

static void compare(const struct visit *a, const struct visit *b, struct differing *d)
{
	d->lure |= a->new_lure != b->new_lure;
	d->card |= a->new_card != b->new_card;
	d->females |= a->females != b->females;
	d->others |= a->others != b->others;
}

static void add_differing(
	const struct matter_choice *c, const struct differing *d, struct buf *out)
{
	if (d->lure)
		add_kind(c->lure, _(", lure "), _(", no new lure"), out);
	if (d->card)
		add_kind(c->card, _(", card "), _(", no new card"), out);
	if (d->females)
		add_number(c->visit.females, _(", females: "),
			_(", females not counted"), out);
	if (d->others)
		add_number(c->visit.others, _(", other moths: "),
			_(", other moths not counted"), out);
}

void merging_say_choice(const struct matter *m, size_t i, char out[static SAY_LINE])
{
	const struct matter_choice *c = &m->choices[i];
	char visit[SAY_SHORT], other[SAY_SHORT];
	struct differing differing = { false };
	struct buf text = { 0 };

	say_visit(&c->visit, visit);
	buf_add(&text, visit);
	for (size_t k = 0; k < m->n_choices; k++) {
		say_visit(&m->choices[k].visit, other);
		if (strcmp(visit, other) == 0)
			compare(&c->visit, &m->choices[k].visit, &differing);
	}
	add_differing(c, &differing, &text);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
}

/* "14, counted by JR, saved 27 Jul 2026 09:12 by Office" */
static void say_choice(const struct matter *m, size_t i, char out[static SAY_LINE])
{
	const struct matter_choice *c = &m->choices[i];
	char visit[SAY_LINE], time[SAY_SHORT];
	const char *scout = *c->words.scout ? c->words.scout : c->changed_by;

	merging_say_choice(m, i, visit);
	say_time(c->changed_at, time);
	snprintf(out, SAY_LINE,
		c->rival ? _("%s by %s, saved %s by %s")
			 : _("%s by %s, saved %s by %s: it stands in the diary"),
		visit, who(scout), time, who(c->changed_by));
}

/* One place is kept for the answer that there was no visit. */
static void ask_visit(const struct matter *from, struct open_matter *m)
{
	char text[SAY_LINE], day[DAY_TEXT_SIZE];

	day_long(from->day, day, sizeof day);
	snprintf(m->title, sizeof m->title,
		from->what == MATTER_COUNTS
			? _("%s, %s: put in twice")
			: _("%s, %s: removed by one, changed by another; not shown"),
		from->name, day);
	for (size_t i = 0; i < from->n_choices && m->n_choices < MERGING_CHOICES - 1;
		i++) {
		say_choice(from, i, text);
		add_choice(m, text);
	}
	add_choice(m, _("there was no visit that day"));
	m->takes_count = true;
}

static void say_times(const struct matter *from, char *removed, char *changed)
{
	say_time(from->removed_at, removed);
	say_time(from->changed_at, changed);
}

/* What was counted for the first pest stays counted for it. */
static void ask_other_pest(const struct matter *from, struct open_matter *m)
{
	char removed[SAY_SHORT], changed[SAY_SHORT];

	say_times(from, removed, changed);
	snprintf(m->title, sizeof m->title,
		_("%.60s: %s made it a trap of another pest (%s), here it is still "
		  "that of the first (%s, %s)"),
		from->name, who(from->removed_by), removed, who(from->changed_by),
		changed);
	add_choice(m, _("two traps hang there: keep both"));
	add_choice(m, _("there is only the other one: remove this one, if no visit "
			"is entered for it"));
}

/* A setting, or a biofix where another one holds for the season. */
static void ask_unfit(const struct matter *from, struct open_matter *m)
{
	char changed[SAY_SHORT];

	say_time(from->changed_at, changed);
	snprintf(m->title, sizeof m->title,
		_("%.80s: does not go with a later entry and is not used (%s, %s)"),
		from->name, who(from->changed_by), changed);
	add_choice(m, _("bring it back, if it goes with the others by now"));
	add_choice(m, _("leave it out; it is not shown now"));
}

static void ask_row(const struct matter *from, struct open_matter *m)
{
	char removed[SAY_SHORT], changed[SAY_SHORT], name[SAY_LINE], day[DAY_TEXT_SIZE];

	say_times(from, removed, changed);
	text_copy(name, sizeof name, from->name);
	if (from->day != DAY_NONE) {
		day_long(from->day, day, sizeof day);
		snprintf(name, sizeof name, "%.90s, %s", from->name, day);
	}
	snprintf(m->title, sizeof m->title,
		_("%.70s: removed by %s (%s), needed or changed by %s (%s)"), name,
		who(from->removed_by), removed, who(from->changed_by), changed);
	if (from->what == MATTER_KEPT) {
		add_choice(m, _("keep it; it is shown now"));
		add_choice(m, _("remove it"));
	} else {
		add_choice(m, _("bring it back"));
		add_choice(m, _("leave it out; it is not shown now"));
	}
}

static void ask_name(const struct matter *from, struct open_matter *m)
{
	snprintf(m->title, sizeof m->title,
		_("%s: two are named %s, and this one got another name"), from->name,
		from->typed);
	add_choice(m, _("leave it that name; or give either one a better name in its "
			"list"));
}

void merging_ask(const struct matter *from, struct open_matter *m)
{
	*m = (struct open_matter){ 0 };
	if (from->what == MATTER_COUNTS || from->what == MATTER_REMOVED)
		ask_visit(from, m);
	else if (from->what == MATTER_NAMES)
		ask_name(from, m);
	else if (from->other_pest)
		ask_other_pest(from, m);
	else if (*from->removed_at == '\0')
		ask_unfit(from, m);
	else
		ask_row(from, m);
}

bool merging_open(struct book *b, struct open_matters *out, struct err *e)
{
	out->n = 0;
	if (!book_open_matters(b, &out->book, e))
		return false;
	out->items =
		mem_grow(out->items, &out->cap, out->book.n + 1, sizeof *out->items);
	for (; out->n < out->book.n; out->n++)
		merging_ask(&out->book.items[out->n], &out->items[out->n]);
	return true;
}

static bool settle_count(
	struct book *b, const struct matter *m, int32_t count, struct err *e)
{
	struct visit v = m->choices[0].visit;

	v.outcome = OUTCOME_COUNTED;
	v.reason = REASON_NONE;
	v.count = count;
	v.females = v.others = COUNT_NONE;
	return book_settle_visit(b, m->id, m->day, &v, &m->choices[0].words, e);
}

static bool settle_visit(struct book *b, const struct matter *m, int choice,
	int n_choices, struct err *e)
{
	if (choice == n_choices - 1)
		return book_settle_visit(b, m->id, m->day, NULL, NULL, e);
	return book_settle_visit(b, m->id, m->day, &m->choices[choice].visit,
		&m->choices[choice].words, e);
}

bool merging_settle(struct book *b, const struct open_matters *all,
	const struct settling *how, char said[static SAY_LINE], struct err *e)
{
	const size_t at = how->at;
	const int choice = how->choice;
	const int32_t count = how->count;

	if (at >= all->n || choice >= all->items[at].n_choices ||
		(count < 0 && choice < 0))
		return err_set(e, ERR_INPUT, _("there is no such answer"));
	const struct matter *m = &all->book.items[at];
	bool visit = all->items[at].takes_count;
	bool ok = !visit ? book_settle_row(b, m, choice == 0, e)
		  : count >= 0
			  ? settle_count(b, m, count, e)
			  : settle_visit(b, m, choice, all->items[at].n_choices, e);

	if (ok && count >= 0)
		snprintf(said, SAY_LINE, _("%s: %d holds."), m->name, (int)count);
	else if (ok)
		snprintf(said, SAY_LINE, _("Settled: %.140s."),
			all->items[at].choices[choice]);
	return ok;
}
