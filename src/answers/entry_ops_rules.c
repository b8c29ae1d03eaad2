/* entry_ops_rules.c - thresholds and settings on the Book page. */
#include "entry_family.h"

#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"

#include <stdio.h>
#include <string.h>

static size_t thresholds_count(const struct shelves *s)
{
	return s->known.rules.n;
}

static int64_t thresholds_id(const struct shelves *s, size_t i)
{
	return s->known.rules.items[i].id;
}

/* Those that hold for the farm too. */
static bool thresholds_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	const struct rule *r = &s->known.rules.items[i];
	const struct block *b = known_block(&s->known, r->block);
	int64_t farm = b ? b->farm : r->farm;

	return (!ask->pest || r->pest == ask->pest) &&
	       (!ask->farm || !farm || farm == ask->farm);
}

static void thresholds_row(const struct shelves *s, size_t i, void *row)
{
	*(struct threshold_row *)row =
		threshold_row_of(&s->known, &s->known.rules.items[i]);
}

static void thresholds_name(const void *row, char *out, size_t size)
{
	const struct threshold_row *r = row;

	snprintf(out, size, _("threshold of %s"), r->pest);
}

static void thresholds_note(
	const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	say_rule(&s->known.rules.items[i], out, SAY_LINE);
}

static void thresholds_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct threshold_row *r = row;

	text_copy(r->pest, sizeof r->pest, known_pest(&s->known, ask->pest));
	r->measure = MEASURE_TRAP_WEEK;
	r->span = (struct span){ SPAN_NUMBER, 1 };
	r->comparator = AT_LEAST;
}

static bool thresholds_put(struct putting *p, const void *row)
{
	struct rule r;

	if (!rule_from(&p->hear, &p->shelves->known, row, &r))
		return false;
	r.id = p->id;
	if (!book_put_rule(p->book, &r, p->e))
		return false;
	p->id = r.id;
	return true;
}

const struct family_ops thresholds_ops = { "threshold", sizeof(struct threshold_row),
	thresholds_count, thresholds_id, thresholds_wanted, NULL, thresholds_row,
	thresholds_name, thresholds_note, thresholds_guess, thresholds_put, NULL };

static size_t settings_count(const struct shelves *s)
{
	(void)s;
	return SETTING_COUNT;
}

/* In the list who is out and how things are shown come first: they are looked for. */
static size_t nth(size_t i)
{
	enum { SHOWN = SETTING_COUNT - SETTING_SCOUT };

	return i < SHOWN ? i + SETTING_SCOUT : i - SHOWN;
}

static int64_t settings_id(const struct shelves *s, size_t i)
{
	(void)s;
	return (int64_t)nth(i) + 1;
}

static bool settings_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	(void)s;
	(void)i;
	(void)ask;
	return true;
}

static void settings_row(const struct shelves *s, size_t i, void *row)
{
	struct setting_row *r = row;

	r->name = (int)nth(i);
	text_copy(r->value, sizeof r->value, s->settings.value[r->name]);
	setting_show(r);
}

static void settings_name(const void *row, char *out, size_t size)
{
	const struct setting_row *r = row;

	text_copy(out, size, _(setting_facts[r->name].label));
}

/* "1 to 31, usual: 5"; "ha or acre" */
static void settings_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct setting_facts *f = &setting_facts[nth(i)];
	struct setting_row usual = { .name = (int)nth(i) };

	(void)s;
	setting_usual(usual.name, usual.value);
	setting_show(&usual);
	if (f->words)
		snprintf(out, SAY_LINE, _("%s or %s"), _(f->words[0]), _(f->words[1]));
	else if (f->look == SETTING_YES_NO)
		snprintf(out, SAY_LINE, _("yes or no, usual: %.8s"), usual.value);
	else if (f->hi)
		snprintf(out, SAY_LINE, _("%d to %d, usual: %.8s"), (int)f->lo,
			(int)f->hi, usual.value);
}

/* Whether a number goes with the others is the book's to say. */
static bool settings_put(struct putting *p, const void *row)
{
	struct setting_row r = *(const struct setting_row *)row;

	return setting_form_good(&p->hear, &r) &&
	       book_put_setting(p->book, setting_facts[r.name].name, r.value, p->e);
}

const struct family_ops settings_ops = { "setting", sizeof(struct setting_row),
	settings_count, settings_id, settings_wanted, NULL, settings_row, settings_name,
	settings_note, NULL, settings_put, NULL };
