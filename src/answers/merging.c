#include "answers/merging.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

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
			addf(out, TONE_PLAIN, 2, _("%s: %lld come in"), c->words,
				(long long)c->came);
		if (c->theirs)
			addf(out, TONE_PLAIN, 2,
				_("%s: %lld become as they are in the other book"),
				c->words, (long long)c->theirs);
		if (c->gone)
			addf(out, TONE_PLAIN, 2,
				_("%s: %lld go, as they were removed there"), c->words,
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

static void say_difference(const struct merge_difference *d, struct merging *out)
{
	char ours[SAY_LINE], theirs[SAY_LINE];

	say_author(d->our_name, d->our_time, ours);
	say_author(d->their_name, d->their_time, theirs);
	if (d->how == MERGE_THEIRS)
		addf(out, TONE_PLAIN, 2,
			_("%s: theirs holds (%s), ours goes into the history (%s)"),
			d->name, theirs, ours);
	else
		addf(out, TONE_PLAIN, 2,
			_("%s: ours holds (%s), theirs goes into the history (%s)"),
			d->name, ours, theirs);
}

static void say_report(const struct merge_report *r, struct merging *out)
{
	const struct merge_differences *d = &r->differences;

	if (r->n_counts > 0)
		addf(out, TONE_TITLE, 0, "%s", _("From the other book"));
	say_counts(r, out);
	if (d->n > 0)
		addf(out, TONE_TITLE, 0, "%s",
			_("Changed in both books: the later change holds"));
	for (size_t i = 0; i < d->n; i++)
		say_difference(&d->items[i], out);
	if (d->all > (int64_t)d->n)
		addf(out, TONE_QUIET, 2, _("and %lld more"),
			(long long)(d->all - (int64_t)d->n));
	if (r->nothing_new)
		addf(out, TONE_PLAIN, 0, "%s",
			_("This book has all that the other one holds."));
	else if (r->n_counts + d->n == 0)
		addf(out, TONE_PLAIN, 0, "%s",
			_("No row changes; what the other book remembers of earlier "
			  "ones comes along."));
	out->nothing_new = r->nothing_new;
	out->open = r->open;
	text_copy(out->kept, sizeof out->kept, r->kept);
}

static void say_matter(const struct open_matter *m, struct merging *out)
{
	addf(out, TONE_UNSURE, 2, "%s", m->title);
	for (int i = 0; i < m->n_choices; i++)
		addf(out, TONE_PLAIN, 4, "%d  %s", i + 1, m->choices[i]);
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
	bool ok = keep ? book_merge(b, file, &report, e)
		       : book_merge_look(b, file, &report, e);

	out->n = 0;
	if (ok)
		say_report(&report, out);
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
