/* entry_rule_live.c - a threshold out of a form that is still being filled in. */
#include "answers/entry_forms.h"
#include "answers/entry_rules.h"
#include "base/text.h"
#include "entry_live.h"

/* What is wrong is said when the form is saved; here it only has no rule yet. */
static void hear_nothing(void *arg, const char *column, const char *what)
{
	(void)arg, (void)column, (void)what;
}

static bool has_all(void *arg, const char *column)
{
	(void)arg, (void)column;
	return true;
}

static const char *no_value(void *arg, const char *column)
{
	(void)arg, (void)column;
	return "";
}

bool live_row(const struct entry *r, bool all, void *row)
{
	const struct entry_family *f = &entry_families[r->kind];
	char text[ENTRY_TEXT];

	for (size_t i = 0; i < f->n_columns; i++) {
		const struct column *c = &f->columns[i];
		struct hearing h = { .bad = hear_nothing, .value = no_value };

		text_copy(text, sizeof text, r->text[i]);
		text_trim(text);
		c->type->clear(c, (char *)row + c->at);
		if (text[0] ? !field_of_text(&h, c, &r->manner, text, row)
			    : c->needed && all)
			return false;
	}
	return true;
}

struct hearing live_hearing(const struct log *l)
{
	return (struct hearing){ .bad = hear_nothing,
		.warn = hear_nothing,
		.has = has_all,
		.value = no_value,
		.today = l->today,
		.zone = &l->zone,
		.clears = true };
}

struct known live_known(const struct log *l)
{
	return (struct known){ .farms = l->farms,
		.blocks = l->blocks,
		.traps = l->traps,
		.pests = l->pests,
		.lures = l->lures,
		.cards = l->cards };
}

bool entry_rule(const struct entry *r, const struct log *l, struct rule *out)
{
	struct hearing h = live_hearing(l);
	const struct known k = live_known(l);
	struct threshold_row row = { 0 };

	*out = (struct rule){ 0 };
	if (r->kind != ENTRY_THRESHOLDS || !live_row(r, true, &row) ||
		!rule_from(&h, &k, &row, out))
		return false;
	out->id = r->id;
	return true;
}
