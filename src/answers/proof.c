#include "answers/proof.h"

#include "base/mem.h"
#include "base/words.h"
#include "proof_parts.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct {
	enum remark remark;
	const char *text;
} remark_texts[] = {
	{ BARE, N_("a bare number: the comparator is inferred") },
	{ UNSAID, N_("any one trap or the mean: not said, checked both ways") },
	{ WEEK, N_("over how long: not said, taken as a week") },
	{ DERIVED, N_("our arithmetic on the printed rule") },
	{ NO_COUNTS, N_("no counts are printed: these are made to its words") },
	{ SUMMER, N_("summer is taken as June to August") },
	{ PRACTICE, N_("common practice, no source") },
};

static const struct published *find(const struct published *table, const char *id)
{
	for (; table->id != NULL; table++)
		if (strcmp(table->id, id) == 0)
			return table;
	return NULL;
}

const struct published *proof_published(const char *id)
{
	const struct published *p = find(published_thresholds, id);

	return p != NULL ? p : find(published_examples, id);
}

static void write_remarks(char *out, size_t size, unsigned remarks)
{
	size_t at = 0;

	for (size_t i = 0; i < sizeof remark_texts / sizeof *remark_texts; i++) {
		if ((remarks & remark_texts[i].remark) == 0)
			continue;
		int n = snprintf(out + at, size - at, "%s%s", at > 0 ? "; " : "",
			_(remark_texts[i].text));
		if (n < 0 || (size_t)n >= size - at)
			return;
		at += (size_t)n;
	}
}

struct proof_case *proof_add(struct proof *p, const char *id)
{
	const struct published *from = proof_published(id);

	assert(from != NULL);
	p->items = mem_grow(p->items, &p->cap, p->n + 1, sizeof *p->items);
	struct proof_case *c = &p->items[p->n++];
	*c = (struct proof_case){
		.id = from->id, .source = from->source, .printed = _(from->printed)
	};
	write_remarks(c->remark, sizeof c->remark, from->remarks);
	return c;
}

void proof_say_input(struct proof_case *c, const char *counts)
{
	int nights = (int)strtol(counts, NULL, 10);

	snprintf(c->input, sizeof c->input,
		ngettext("%d night: %s", "%d nights: %s", (unsigned)nights), nights,
		strchr(counts, ':') + 2);
}

void proof_note(struct proof_case *c, const char *expected, const char *ours)
{
	snprintf(c->expected, sizeof c->expected, "%s", expected);
	snprintf(c->ours, sizeof c->ours, "%s", ours);
	c->holds = strcmp(expected, ours) == 0;
}

void proof_note_verdict(struct proof_case *c, char want, enum verdict ours)
{
	enum verdict expected = want == 'o'   ? VERDICT_OVER
				: want == 'u' ? VERDICT_UNDER
					      : VERDICT_UNKNOWN;
	enum verdict seen = ours == VERDICT_NEAR ? VERDICT_UNDER : ours;

	proof_note(c, _(verdict_word(expected)), _(verdict_word(seen)));
}

size_t proof_run(struct proof_case **out)
{
	struct proof p = { 0 };

	proof_thresholds(&p);
	proof_examples(&p);
	proof_seasons(&p);
	proof_service(&p);
	*out = p.items;
	return p.n;
}

const char *proof_legend(void)
{
	return _(
		"Input: nights between visits, then the counts of a trap; - is a visit "
		"skipped, | comes before the next trap.");
}
