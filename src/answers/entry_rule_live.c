/* A threshold out of a form that is still being filled in. */
#include "answers/entry_forms.h"
#include "answers/entry_rules.h"
#include "base/text.h"

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

static bool read_row(const struct entry *r, struct threshold_row *row)
{
	char text[ENTRY_TEXT];

	for (size_t i = 0; i < THRESHOLD_COLUMNS; i++) {
		const struct column *c = &threshold_columns[i];
		void *field = (char *)row + c->at;

		text_copy(text, sizeof text, r->text[i]);
		text_trim(text);
		c->type->clear(c, field);
		if (text[0] ? !c->type->read(c, text, field) : c->needed)
			return false;
	}
	return true;
}

bool entry_rule(const struct entry *r, const struct log *l, struct rule *out)
{
	struct hearing h = { .bad = hear_nothing,
		.warn = hear_nothing,
		.has = has_all,
		.value = no_value,
		.today = l->today,
		.clears = true };
	const struct known k = { .farms = l->farms,
		.blocks = l->blocks,
		.traps = l->traps,
		.pests = l->pests,
		.lures = l->lures,
		.cards = l->cards };
	struct threshold_row row = { 0 };

	*out = (struct rule){ 0 };
	if (r->kind != ENTRY_THRESHOLDS || !read_row(r, &row) ||
		!rule_from(&h, &k, &row, out))
		return false;
	out->id = r->id;
	return true;
}
