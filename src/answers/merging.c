#include "merging_parts.h"

#include "answers/entry_changes.h"
#include "answers/entry_rules.h"
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void merging_free(struct merging *m)
{
	free(m->lines);
	*m = (struct merging){ 0 };
}

static struct merging_line *add(struct merging *m, enum tone tone, int indent)
{
	m->lines = mem_grow(m->lines, &m->cap, m->n + 1, sizeof *m->lines);
	struct merging_line *l = &m->lines[m->n++];

	*l = (struct merging_line){ .tone = tone, .indent = indent };
	return l;
}

static void __attribute__((format(printf, 4, 5)))
addf(struct merging *m, enum tone tone, int indent, const char *fmt, ...)
{
	struct merging_line *l = add(m, tone, indent);
	va_list values;

	va_start(values, fmt);
	vsnprintf(l->text, sizeof l->text, fmt, values);
	va_end(values);
}

static void say_counts(const struct merge_report *r, struct merging *out)
{
	for (size_t i = 0; i < r->n_counts; i++) {
		const struct merge_count *c = &r->counts[i];
		if (c->came)
			addf(out, TONE_PLAIN, 2, _("%s: %lld new"), c->words,
				(long long)c->came);
		if (c->theirs)
			addf(out, TONE_PLAIN, 2,
				_("%s: %lld changed to what the other book has"),
				c->words, (long long)c->theirs);
		if (c->gone)
			addf(out, TONE_PLAIN, 2,
				_("%s: %lld removed, as in the other book"), c->words,
				(long long)c->gone);
	}
}

/* "JR, 27 Jul 2026 09:12" */
static void say_author(const char *by, const char *at, char out[static SAY_LINE])
{
	char time[SAY_SHORT];

	say_time(at, time);
	snprintf(out, SAY_LINE, "%s, %s", *by ? by : _("somebody"), time);
}

/* "75 %", as its form shows it. */
static void show_setting(const char *name, char value[static ENTRY_TEXT])
{
	struct setting_row row = { 0 };

	while (row.name < SETTING_COUNT &&
		strcmp(setting_facts[row.name].name, name) != 0)
		row.name++;
	if (row.name == SETTING_COUNT || !*value)
		return;
	text_copy(row.value, sizeof row.value, value);
	setting_show(&row);
	text_copy(value, ENTRY_TEXT, row.value);
}

static void say_field(const struct merge_difference *d, const struct merge_field *f,
	const struct manner *m, struct merging *out)
{
	char label[SAY_SHORT], ours[ENTRY_TEXT], theirs[ENTRY_TEXT];

	entry_say_value(d->kind, m, f->field, f->ours, label, ours);
	entry_say_value(d->kind, m, f->field, f->theirs, label, theirs);
	if (strcmp(d->kind, "setting") == 0) {
		show_setting(d->name, ours);
		show_setting(d->name, theirs);
	}
	addf(out, TONE_PLAIN, 4, _("%s: here %.80s, there %.80s"), label,
		*ours ? ours : _("empty"), *theirs ? theirs : _("empty"));
}

static void say_difference(
	const struct merge_difference *d, const struct manner *m, struct merging *out)
{
	char ours[SAY_LINE], theirs[SAY_LINE];

	say_author(d->our_name, d->our_time, ours);
	say_author(d->their_name, d->their_time, theirs);
	if (d->how == MERGE_THEIRS)
		addf(out, TONE_PLAIN, 2,
			_("%s: theirs holds (%s); ours stays in the history (%s)"),
			d->name, theirs, ours);
	else
		addf(out, TONE_PLAIN, 2,
			_("%s: ours holds (%s); theirs stays in the history (%s)"),
			d->name, ours, theirs);
	for (size_t i = 0; i < d->n_fields; i++)
		say_field(d, &d->fields[i], m, out);
}

static void say_report(
	const struct merge_report *r, const struct manner *m, struct merging *out)
{
	const struct merge_differences *d = &r->differences;

	if (r->n_counts > 0)
		addf(out, TONE_TITLE, 0, "%s", _("From the other book"));
	say_counts(r, out);
	if (d->n > 0)
		addf(out, TONE_TITLE, 0, "%s",
			_("Changed in both books: the later change holds"));
	for (size_t i = 0; i < d->n; i++)
		say_difference(&d->items[i], m, out);
	if (d->all > (int64_t)d->n)
		addf(out, TONE_QUIET, 2, _("and %lld more"),
			(long long)(d->all - (int64_t)d->n));
	if (r->nothing_new)
		addf(out, TONE_PLAIN, 0, "%s",
			_("This book has all that the other one holds."));
	else if (r->n_counts + d->n + r->matters.n == 0)
		addf(out, TONE_PLAIN, 0, "%s",
			_("No row changes; what the other book remembers of earlier "
			  "ones comes along."));
	out->nothing_new = r->nothing_new;
	out->open = (int64_t)r->matters.n;
	text_copy(out->kept, sizeof out->kept, r->kept);
}

static void say_matter(const struct open_matter *m, struct merging *out)
{
	addf(out, TONE_UNSURE, 2, "%s", m->title);
	for (int i = 0; i < m->n_choices; i++)
		addf(out, TONE_PLAIN, 4, "%d  %s", i + 1, m->choices[i]);
}

/* Whether the book has this version: in its diary, or beside it from an earlier
 * merge. */
static bool find_here(struct book *b, const struct matters *open,
	const struct matter_choice *c, bool *here, struct err *e)
{
	struct visit v;
	struct err none = { 0 };
	bool found = book_visit(b, c->visit.trap, c->visit.day, &v, NULL, &none);

	*here = found && visit_same(&v, &c->visit);
	for (size_t i = 0; i < open->n; i++)
		for (size_t k = 0; k < open->items[i].n_choices; k++)
			*here |=
				visit_same(&open->items[i].choices[k].visit, &c->visit);
	return found || none.kind == ERR_NOT_FOUND ||
	       err_set(e, none.kind, "%s", none.text);
}

static void say_version(
	const struct matter *m, size_t i, bool here, struct merging *out)
{
	const struct matter_choice *c = &m->choices[i];
	const char *scout = *c->words.scout ? c->words.scout : c->changed_by;
	char visit[SAY_LINE];

	merging_say_choice(m, i, visit);
	if (*scout)
		addf(out, TONE_PLAIN, 4,
			here ? _("here %s by %s") : _("there %s by %s"), visit, scout);
	else
		addf(out, TONE_PLAIN, 4, here ? _("here %s") : _("there %s"), visit);
}

/* What will be asked once it is done. */
static bool say_coming(
	struct book *b, const struct matters *all, struct merging *out, struct err *e)
{
	struct matters open = { 0 };
	bool ok = book_open_matters(b, &open, e), here = false;

	if (all->n > 0)
		addf(out, TONE_TITLE, 0, "%s",
			_("To be settled by a person once it is merged"));
	for (size_t i = 0; ok && i < all->n; i++) {
		struct open_matter m;
		merging_ask(&all->items[i], &m);
		addf(out, TONE_UNSURE, 2, "%s", m.title);
		for (size_t k = 0; ok && k < all->items[i].n_choices; k++) {
			ok = find_here(b, &open, &all->items[i].choices[k], &here, e);
			if (ok)
				say_version(&all->items[i], k, here, out);
		}
	}
	book_matters_free(&open);
	return ok;
}

void merging_say_open(const struct open_matters *m, struct merging *out)
{
	if (m->n > 0)
		addf(out, TONE_TITLE, 0, "%s", _("To be settled by a person"));
	for (size_t i = 0; i < m->n; i++)
		say_matter(&m->items[i], out);
}

static bool merge(
	struct book *b, const char *file, bool keep, struct merging *out, struct err *e)
{
	struct merge_report report = { 0 };
	struct manner manner;
	bool ok = manner_read(&manner, b, e) &&
		  (keep ? book_merge(b, file, &report, e)
			: book_merge_look(b, file, &report, e));

	out->n = 0;
	if (ok)
		say_report(&report, &manner, out);
	if (ok && !keep && !report.nothing_new)
		ok = say_coming(b, &report.matters, out, e);
	book_merge_free(&report);
	return ok;
}

bool merging_look(struct book *b, const char *file, struct merging *out, struct err *e)
{
	return merge(b, file, false, out, e);
}

bool merging_do(struct book *b, const char *file, struct merging *out, struct err *e)
{
	return merge(b, file, true, out, e);
}
