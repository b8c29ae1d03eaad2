/* published_changes.c - an own threshold beside the published one that it was taken
 * from. */
#include "base/text.h"
#include "base/words.h"
#include "say_parts.h"
#include "trial_parts.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

static bool same_where(const struct rule *a, const struct rule *b)
{
	return strcasecmp(a->crop, b->crop) == 0 && a->condition == b->condition &&
	       a->lure == b->lure && a->place == b->place && a->farm == b->farm &&
	       a->block == b->block;
}

static bool same_when(const struct rule *a, const struct rule *b)
{
	return a->flight == b->flight && a->from == b->from && a->to == b->to &&
	       a->until_dd == b->until_dd;
}

static bool same_what(const struct rule *a, const struct rule *b)
{
	if (a->measure != b->measure || a->measure == MEASURE_NONE)
		return a->measure == b->measure;
	return a->span_kind == b->span_kind &&
	       (a->span_kind != SPAN_NUMBER || a->span == b->span) &&
	       a->comparator == b->comparator && a->value_x100 == b->value_x100;
}

bool rule_same(const struct rule *a, const struct rule *b)
{
	return a->pest == b->pest && same_where(a, b) && same_when(a, b) &&
	       same_what(a, b);
}

static void say_md(int md, char out[static SAY_SHORT])
{
	enum { LEAP_YEAR = 2000 };

	say_day(day_from_ymd(LEAP_YEAR, md / 100, md % 100), out);
}

void say_window(const struct rule *r, char *out, size_t size)
{
	char from[SAY_SHORT], to[SAY_SHORT];

	say_md(r->from, from);
	say_md(r->to, to);
	snprintf(out, size, _("%s to %s"), from, to);
}

static void add_places(
	const struct log *l, const struct rule *r, char *out, size_t size)
{
	const struct farm *f = log_farm(l, r->farm);
	const struct block *b = log_block(l, r->block);
	const struct lure_kind *k = log_lure(l, r->lure);
	char text[SAY_LINE];

	if (f)
		say_add(out, size, f->name);
	if (b)
		say_add(out, size, b->name);
	if (*r->crop)
		say_add(out, size, words_shipped(r->crop));
	if (r->condition != CONDITION_NONE)
		say_add(out, size, _(condition_word(r->condition)));
	if (r->place != PLACE_NONE)
		say_add(out, size, _(place_word(r->place)));
	if (k) {
		snprintf(text, sizeof text, _("lure %s"), words_shipped(k->name));
		say_add(out, size, text);
	}
}

static void add_times(const struct rule *r, char *out, size_t size)
{
	char text[SAY_LINE];

	if (r->from != 0) {
		say_window(r, text, sizeof text);
		say_add(out, size, text);
	}
	if (r->flight != 0) {
		snprintf(text, sizeof text, _("flight %d"), r->flight);
		say_add(out, size, text);
	}
	if (r->until_dd != 0) {
		snprintf(
			text, sizeof text, _("until %d degree-days"), (int)r->until_dd);
		say_add(out, size, text);
	}
}

void say_where(const struct log *l, const struct rule *r, char *out, size_t size)
{
	text_copy(out, size, "");
	add_places(l, r, out, size);
	add_times(r, out, size);
	if (!*out)
		text_copy(out, size, _("everywhere"));
}

/* "CM2" of "CM2: NIAB (UK), ..." */
static void source_id(const char *source, char out[static SAY_SHORT])
{
	size_t n = strcspn(source, ":");

	snprintf(out, SAY_SHORT, "%.*s", n < SAY_SHORT - 1 ? (int)n : SAY_SHORT - 1,
		source);
}

/* The published one that the rule came from: the likest of those of its source. */
static const struct rule *origin(const struct published_rows *p, const struct rule *own)
{
	const struct rule *found = NULL;
	int best = -1;

	for (size_t i = 0; *own->source && i < p->n; i++) {
		const struct rule *r = &p->items[i].rule;
		int like = same_where(r, own) + same_when(r, own) + same_what(r, own);
		if (r->pest != own->pest || strcmp(r->source, own->source) != 0 ||
			like <= best)
			continue;
		best = like;
		found = r;
	}
	return found;
}

static void add_was(const struct log *l, const struct rule *was, const struct rule *own,
	char *out, size_t size)
{
	char text[SAY_LINE], brief[SAY_SHORT];

	text_copy(out, size, "");
	if (!same_what(was, own)) {
		say_rule_short(was, brief);
		say_add(out, size, brief);
	}
	text_copy(text, sizeof text, "");
	if (!same_where(was, own))
		add_places(l, was, text, sizeof text);
	if (!same_where(was, own) && !*text)
		text_copy(text, sizeof text, _("everywhere"));
	if (*text)
		say_add(out, size, text);
	text_copy(text, sizeof text, "");
	if (!same_when(was, own))
		add_times(was, text, sizeof text);
	if (!same_when(was, own) && !*text)
		text_copy(text, sizeof text, _("the whole season"));
	if (*text)
		say_add(out, size, text);
}

void published_changes(const struct published_rows *p, const struct log *l,
	const struct rule *own, char *out, size_t size)
{
	const struct rule *was = origin(p, own);
	char id[SAY_SHORT], differs[SAY_LINE];

	text_copy(out, size, "");
	if (!was || rule_same(was, own))
		return;
	source_id(was->source, id);
	add_was(l, was, own, differs, sizeof differs);
	snprintf(out, size, _("changed from %s: was %s"), id, differs);
}
